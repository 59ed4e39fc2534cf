#!/bin/sh
# The benchmarks of a whole run: time beside gojsonschema alone, and memory.
# Takes some twenty minutes, fewer with -short; arguments go to "go test", for instance -cpuprofile FILE.
set -eu
cd "$(dirname "$0")/bench"
# Memory is collected as the program itself does it.
GOGC="${GOGC:-400}" exec go test -run '^$' -bench . -benchtime "${BENCHTIME:-3s}" -timeout 30m "$@" .
