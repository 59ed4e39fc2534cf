// Package cutting lays out pieces on fabric that is cut straight across: strips
// first, then pieces from each strip.
//
// It answers how much cloth (or how many fixed pieces, such as fat quarters, or
// how many stock lengths) a list of pieces needs, with a layout that shows it
// and a lower bound that limits what any other layout could save. Lengths are
// whole ticks throughout; nothing here reads a clock, draws a random number
// that is not seeded by a constant, or decides anything by a float.
//
// The package must not know what the pieces are for: blocks, borders, prices
// and printed figures belong to its callers.
//
// # What is offered
//
//   - [Plain] and [PlainPieces]: the trade's own method, each size from its own
//     strips or sheets.
//   - [AreaBound], [StraightBound], [SheetAreaBound] and [StraightSheets]: what no
//     straight cutting can go below.
//   - [Solve]: the shortest strips; [SolveSheets]: the fewest fixed pieces;
//     [SolveLengths]: one dimension, the cheapest of stocks of several lengths.
//     Each result says whether it is proved, and a [Certificate] lets others
//     check the bound.
//   - [SolveStacked]: more rounds of cuts, where they save a step of the buying grid.
//
// Borders cut lengthwise are taken first, and the panel beside them used
// (beside.go); so are, where that is asked for, long pieces that nobody has marked
// (panels.go).
//
// # How it works
//
// This is two-stage guillotine cutting. A problem is brought to a small integer
// [instance] whose strip classes are the heights that pieces can have. The
// master problem chooses patterns of strips; its rows are the demands and, for
// every class k, the number Z_k of strips at least so high. Columns are priced
// by a bounded knapsack over the width (Gilmore and Gomory 1965), and the search
// branches on Z, which changes prices of classes only: see master.go, tree.go
// and knapsack.go. A box of strip counts with few promising patterns is handed
// to an enumeration (enumerate.go) and a branch and bound over the patterns
// found (program.go), with reduced cost fixing throughout. The whole is repeated
// for rising aims, each refuted or met (solve.go). Sheets are the same problem
// with a second knapsack over the sheet's other side (bins.go, stacking.go), and
// columns are further items of the strip knapsack (stacks.go). Lengths are strips
// whose classes are the stocks (stock.go).
// On a grid too fine for a table, as one size cut to a root makes it, the columns of
// tables are the sums that sizes can have (cells.go); the heights of strips are
// rounded down at first (rounding.go), and the sides of sheets up for the layout and
// down for the bound. Plans of lengths are counted again (recount.go).
//
// The simplex method (simplex.go, pivot.go) works in floats and only guides.
// Every bound is computed again in integers from its duals rounded down
// (dual.go), in the spirit of Farley's bound (1990, from memory), and it is
// those integers that the certificate carries.
//
// Start reading at [Problem], [Plain] and [Solve].
package cutting
