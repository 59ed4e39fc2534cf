// Command slips makes single mistakes in plans and asks what the program says of them.
//
//	go run ./scripts/slips           # the table of kinds, some three minutes
//	go run ./scripts/slips -v        # also every slip, with what is said of it
//	go run ./scripts/slips -every 5  # a fifth of them
//
// They are made in every plan of a line, the demo line unless a folder is named behind
// "slips", and in every shape that a new plan begins as, in inches and centimetres: values of
// the recipe, printed figures, names and keys, prices, cautions. Kinds, how many of each
// and the seed are fixed. A slip is seen if it draws a warning or an error that the plan as it
// is does not; it is restored if the first way out of the first such finding, made in the
// text, gives back what the plan says, or if following first ways out does. Every third
// plan by name is set aside: its figures are given apart, and nothing was tuned to them.
//
//	go run ./scripts/slips figures   # every printed figure, half a minute
//
// That falsifies every printed figure of a line in more ways, one at a time: a step up and
// down on the grid that the figure lives on, a tenth, doubled, and exchanged with its
// neighbour. Of each it asks whether a finding then stands at the figure, or
// names it as its second place. What draws none must be of a class that is
// listed with its reason, and the classes together must be few.
//
// The figures come from the plan's own decoder, so that a new kind of figure
// is moved once it is listed in figures.go; a test fails while it is not.
package main
