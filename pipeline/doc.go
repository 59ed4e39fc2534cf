// Package pipeline runs the whole line: it finds plans, reads them, has them
// validated, derived and checked, and hands each plan's report on as soon as
// it is done.
//
// It is the only package with goroutines and the only one that turns an error
// into a finding, so that every report is complete whatever went wrong. It
// must not know any arithmetic of the trade, any rule's reasons, or any format
// that a report is written in.
//
// Start reading at Run in run.go; find.go says which files are plans, work.go
// what is done with one of them.
package pipeline
