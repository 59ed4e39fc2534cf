#!/bin/sh
# What a change of the program changes: the program of another commit, HEAD if
# none is named, and the one of this work tree export the same plans, and
# the differences of findings, tables, pictures and workbooks are shown. The plans are the demo line, the
# fixtures of the rules, the broken plans and the crossing, as they stand in this
# work tree. Status 1 where anything differs.
set -eu
cd "$(dirname "$0")/.."
scratch=$(mktemp -d)
trap 'git worktree remove --force "$scratch/tree" 2>/dev/null || true; rm -rf "$scratch"' EXIT
git worktree add --quiet --detach "$scratch/tree" "${1:-HEAD}"
(cd "$scratch/tree" && go build -buildvcs=false -o "$scratch/old.program" ./cmd/yardproof)
go build -buildvcs=false -o "$scratch/new.program" ./cmd/yardproof

mkdir "$scratch/plans"
cp -R testdata/line testdata/broken "$scratch/plans"
go run ./scripts/fixtures "$scratch/plans/checks"
go run ./scripts/crossing "$scratch/plans/crossing"
cd "$scratch/plans"

# export_all WHICH: each folder with plans is a line of its own. Workbooks are
# made of the demo line only, as their pictures take most of the time.
export_all() {
	find line broken crossing checks -name '*.plan.json' -exec dirname {} + | sort -u | while read -r folder; do
		formats="--format json --format csv --format svg"
		[ "$folder" != line ] || formats="$formats --format xlsx"
		mkdir -p "$scratch/$1/$folder"
		# shellcheck disable=SC2086 # the formats are words
		"$scratch/$1.program" export --quiet --draft --today 2026-01-01 $formats --out "$scratch/$1/$folder/out" \
			--report text="$scratch/$1/$folder/found.txt" --report json="$scratch/$1/$folder/found.json" "$folder" >/dev/null || true
		rm -f "$scratch/$1/$folder/out/.yardproof.json"
	done
}
export_all old
export_all new
cd "$scratch"
count=$(find new -type f | wc -l)
if diff -r -u old new; then
	echo "$count files, all the same"
else
	echo "of $count files: $(diff -rq old new | wc -l) differ or are on one side only" >&2
	exit 1
fi
