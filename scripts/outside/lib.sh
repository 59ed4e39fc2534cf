# What the outside checks share. Read it in with "." from the module's root.

check=$(basename "$(dirname "$0")")

# needs PROGRAM... leaves the check when one is absent: with a message, or with
# a failure where YARDPROOF_OUTSIDE=require.
needs() {
	for program in "$@"; do
		command -v "$program" >/dev/null 2>&1 || absent "$program"
	done
}

absent() {
	if [ "${YARDPROOF_OUTSIDE:-}" = require ]; then
		echo "outside check $check: $1 is not installed, and here nothing may be skipped" >&2
		exit 1
	fi
	echo "outside check $check: skipped, as $1 is not installed" >&2
	exit 0
}

# The check's own folder, gone when it ends.
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
