// Package starter holds the shapes that a new plan can begin as.
//
// Each is a whole, small plan in inches and in centimetres, that a designer
// then makes her own. The package must not know where a plan is written to.
//
// Start reading at Shapes in starter.go; the plans are in shapes.
package starter
