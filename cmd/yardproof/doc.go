// Command yardproof proves a line of quilt plans and writes the workbooks that
// a studio works from.
//
// This package is wiring only: it reads flags, opens what is written to, runs
// the pipeline, and turns what the run found into an exit status. It must not
// know a rule, a format's bytes, or what a plan says. Start reading at run in
// run.go; each command has a file of its own.
package main
