// Package figure turns the cells of a report into words and decimals, for
// every format that has no number formats of its own. Printing never changes a
// number in silence: one that its decimals cannot hold says "about".
//
// It must not know any file format. Start reading at figure.go; workings.go
// lists how the numbers of some sheets came about.
package figure
