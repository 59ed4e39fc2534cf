// Package bench measures yardproof on generated lines of 1, 100 and 2,000
// plans, beside gojsonschema alone on the same plans, and the memory of the
// program. It holds only benchmarks; scripts/bench.sh runs them.
//
// BenchmarkWorkbooks holds the making of workbooks against two general-purpose
// writers of Python, which workbooks.py drives.
//
// It must not be imported. Start reading at bench_test.go; generate_test.go
// makes the plans.
package bench
