// Package exporters lists what a run can be written as, and writes it.
//
// A report format is a stream of findings (text, json); an export format turns
// a plan, and the whole line, into named files (csv, json, xlsx). Both are
// values in a sorted list, so that flags, documentation and tests loop over
// them. Each format lives in a package of its own that formats and calculates
// nothing; only [Folder] and [WriteReport], here, touch the disk, and a file
// of theirs appears whole or not at all.
//
// It must not know where the numbers come from, what a flag is called, or
// which files a run reads. Start reading at exporters.go, then writer.go.
package exporters
