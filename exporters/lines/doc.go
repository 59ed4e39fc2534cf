// Package lines writes a run's findings one a line, in the form that compilers
// have made common and editors jump by:
//
//	path:line:col: level: text [rule]
//
// Line and column are there always: 1:1 for a file as a whole and for a cell of
// a workbook, whose address then begins the text. A finding of no file is one of
// "yardproof", without them. Columns count code points from 1. The text ends
// with the sizes that it holds for and the number of findings that may follow.
// Hints, other places, sums and what the project accepts are left out.
//
// It must not know a rule. Start reading at lines.go.
package lines
