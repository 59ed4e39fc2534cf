#!/bin/sh
# What a second export costs: a line of plans made of the demo line is exported
# to an empty folder, again unchanged, with one plan changed, and after the
# first export was killed half way. Prints processor time, as the system counts
# it, and demands the same bytes each time. Takes a few minutes; the argument is
# the number of plans, 2000 if there is none.
set -eu
cd "$(dirname "$0")/.."
plans=${1:-2000}
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
go build -o "$scratch/yardproof" ./cmd/yardproof

mkdir "$scratch/line"
cp testdata/line/yardproof.json testdata/line/prices.csv "$scratch/line"
set -- testdata/line/*.plan.json
i=0
while [ "$i" -lt "$plans" ]; do
	id=$(basename "$1" .plan.json)
	sed "s/\"$id\"/\"$id-$i\"/g" "$1" >"$scratch/line/$id-$i.plan.json"
	first=${first:-$id-$i}
	shift
	[ "$#" -gt 0 ] || set -- testdata/line/*.plan.json
	i=$((i + 1))
done
cd "$scratch"

# timed NAME COMMAND... prints the processor seconds of a command.
timed() {
	name=$1
	shift
	LC_ALL=C sh -c '"$@" && times' sh "$@" >times
	seconds=$(awk 'NR == 2 { for (i = 1; i <= 2; i++) { split($i, t, /[ms]/); s += t[1] * 60 + t[2] } printf "%.2f", s }' times)
	echo "$name: $seconds s"
}

# same FOLDER demands that a folder holds what the first one holds.
same() { diff -r first "$1" && echo "  the same bytes"; }

timed "first export of $plans plans" ./yardproof export --quiet line --out first
whole=$seconds
cp -R first second
timed "again, unchanged" ./yardproof export --quiet line --out second
same second
echo "  $(awk "BEGIN { printf \"1/%.0f\", $whole / ($seconds > 0 ? $seconds : 0.01) }") of the first"

./yardproof export --quiet line --out killed &
while [ "$(find killed -name '*.xlsx' 2>/dev/null | wc -l)" -lt $((plans / 2)) ]; do
	kill -0 $! 2>/dev/null || break
	sleep 0.2
done
kill -9 $! 2>/dev/null || echo "  (it was done before it could be killed)"
wait $! 2>/dev/null || :
timed "after one that was killed half way" ./yardproof export --quiet line --out killed
same killed

sed 's/"revision": "[^"]*"/"revision": "9"/' "line/$first.plan.json" >changed
mv changed "line/$first.plan.json"
timed "again, one plan changed" ./yardproof export --quiet line --out second
timed "all of that from nothing" ./yardproof export --quiet --fresh line --out first
same second
