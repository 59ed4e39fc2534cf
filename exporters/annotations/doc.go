// Package annotations writes a run's findings as workflow commands, lines that
// a continuous integration service finds in a job's output and shows beside
// the lines of the plan: "::error file=...,line=...::message". Services that
// understand them publish the commands and their escapes.
//
// Such a service shows ten annotations of each level a step and drops the
// others in silence. So only the first ten errors, ten warnings and nine notes
// are commands; the others follow as lines of the output that say the same,
// and the tenth note tells of them. Nothing is left out.
//
// A column is given only for a range within one line, as the services ask. Its
// end is left out: they do not say whether it belongs to the range.
//
// It must not know a rule. Start reading at annotations.go.
package annotations
