#!/bin/sh
# Everything that a change must pass, from any folder: formatting, vet,
# staticcheck, tests (the direction of imports and the freshness of generated
# files are tests, too), the race detector, and yardproof on its own demo line.
set -eu
cd "$(dirname "$0")/.."

echo "gofmt"
unformatted=$(gofmt -l cmd exporters pipeline schema scripts)
[ -z "$unformatted" ] || {
	echo "not formatted: $unformatted" >&2
	exit 1
}

echo "go mod tidy"
go mod tidy -diff

echo "vet, here and for Windows"
go vet ./...
GOOS=windows go vet ./...

echo "staticcheck"
go run honnef.co/go/tools/cmd/staticcheck@v0.8.2 ./...

echo "tests"
go test ./...

echo "tests under the race detector"
go test -race -timeout 30m ./...

echo "every printed figure of the demo line, falsified"
go run ./scripts/slips figures

echo "yardproof on its own demo line"
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
go run ./cmd/yardproof export --quiet --fail-on note testdata/line --out "$out"
