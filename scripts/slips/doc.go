// Command printedmoves falsifies every printed figure of every plan of a line,
// the demo line unless a folder is named, one at a time: a step up and down on
// the grid that the figure lives on, a tenth, doubled, and exchanged with its
// neighbour. Of each it asks whether a finding then stands at the figure, or
// names it as its second place. What draws none must be of a class that is
// listed with its reason, and the classes together must be few.
//
//	go run ./scripts/printedmoves            # all of it, half a minute
//	go run ./scripts/printedmoves -v         # also every move that draws nothing
//
// The figures come from the plan's own decoder, so that a new kind of figure
// is moved once it is listed in figures.go; a test fails while it is not.
package main
