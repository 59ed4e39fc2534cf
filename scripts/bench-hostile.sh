#!/bin/sh
# What the plans at the limits of the schema cost, in processor time and beside the
# SHA-256 of 256 MiB in the same run; some five minutes. Arguments go to "go test", for
# instance -bench 'HostileCheck/map'. "go run ./scripts/hostile/worst -random 100" looks
# for harder ones.
set -eu
cd "$(dirname "$0")/bench"
GOGC="${GOGC:-400}" GOMEMLIMIT="${GOMEMLIMIT:-384MiB}" exec go test -run '^$' -bench Hostile -benchtime "${BENCHTIME:-1x}" -timeout 30m "$@" .
