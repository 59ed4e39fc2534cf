// Package cutting lays out pieces on fabric that is cut straight across: strips
// first, then pieces from each strip.
//
// It answers how much cloth (or how many fixed pieces, such as fat quarters) a
// list of pieces needs, with a layout that shows it and a lower bound that
// limits what any other layout could save. Lengths are whole ticks throughout;
// nothing here reads a clock, draws a random number that is not seeded by a
// constant, or decides anything by a float.
//
// The package must not know what the pieces are for: blocks, borders, prices
// and printed figures belong to its callers.
//
// Start reading at [Problem] and [Plain], the trade's own method.
package cutting
