// Package piecing is the geometry of sewn patchwork: how wide a strip set
// comes out, how many squares a tube yields, what a half-square triangle
// unit measures, how many strips go round a quilt. Every function is pure
// and exact; whole numbers come from exact comparison of lengths.
//
// It must not know plans, rules or fabrics by name. Start reading at Tube for the
// yields, at Fit for cut sizes and the error they leave, and at Patchwork for the
// polygons that prove and draw a unit.
//
// Symbols, as in the formulas of the comments: s seam allowance, w cut width
// of a strip, n strips in a set, T width of a set or tube, L usable strip
// length. Lengths that lie on a ruler are measure.Length; what may hold a
// square root is measure.Surd.
package piecing
