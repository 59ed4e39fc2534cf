#!/bin/sh
# Fuzzes every reader of a user's bytes, and all else that has a fuzz test, each
# for some seconds: ten, or FUZZTIME, such as FUZZTIME=5m. Arguments are
# packages, all if there are none.
#
# What is found interesting is not made small at length: some readers take
# another path through their code each time, and making small would be all that
# is done.
set -eu
cd "$(dirname "$0")/.."

go test -list '^Fuzz' "${@:-./...}" | awk '
	/^Fuzz/ { name[++n] = $1 }
	/^ok/ { for (i = 1; i <= n; i++) print $2, name[i]; n = 0 }' |
	while read -r package name; do
		echo "$package $name"
		go test "$package" -run '^$' -fuzz "^$name\$" -fuzztime "${FUZZTIME:-10s}" -fuzzminimizetime 10x </dev/null
	done
