// Package exporters lists what a run can be written as.
//
// A report format is a stream of findings (text, json); an export format turns
// a plan, and the whole line, into named files (csv, json, xlsx). Both are
// values in a sorted list, so that flags, documentation and tests loop over
// them. Each format lives in a package of its own that formats and calculates
// nothing, and touches no disk: package store writes what they make.
//
// It must not know where the numbers come from, what a flag is called, or
// which files a run reads. Start reading at exporters.go.
package exporters
