// Package measure holds the quantities of a quilt plan: lengths, derived
// lengths with square roots in them, areas, fabric lengths and money. It parses
// them, prints them and rounds them in a named direction.
//
// Everything here is exact. A Length is a whole number of ticks, so that every
// 1/64 in, every two-decimal inch and every 0.01 mm is represented without
// error; a Surd is an element of Q(sqrt2, sqrt3), which is closed under the
// geometry of this trade (45 and 60 degree cuts), and is compared exactly. A
// float64 leaves this package only for drawing and for spreadsheet cells.
// Wherever a printed figure is not the exact one, it begins with "about".
//
// The package must not know what is measured: no seams, fabrics, rulers, plans
// or findings, and no files.
//
// Start reading at Length in length.go, then Surd in surd.go; narrow.go and
// wide.go are its two representations and sign.go decides comparisons.
package measure
