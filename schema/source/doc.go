// Package source holds the bytes of one file and answers where in it a byte
// stands: line, column, the line's text, and the excerpt that a report prints
// under a complaint.
//
// A place is a byte offset or a [Range] of them; lines and columns are worked
// out from the [File] only when somebody has to read them. Every part of the
// program that complains about a file does so with a Range or a [Problem].
//
// It must not know what the bytes mean: no JSON, no plan, no rule, no
// severity. It reads no file from disk either; whoever does hands the bytes to
// [New].
//
// Start reading at source.go for the nouns, then file.go for how an offset
// becomes a position, then excerpt.go.
package source
