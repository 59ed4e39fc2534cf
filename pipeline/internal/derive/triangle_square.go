package derive

import (
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// triangleSquare is a square of two or four triangles cut beforehand.
type triangleSquare struct {
	op plan.TriangleSquare
	p  *Part
	s  *Size
}

// TriangleSquare implements plan.Maker.
func (o *opening) TriangleSquare(op plan.TriangleSquare) {
	o.room = &triangleSquare{op: op, p: o.p, s: o.s}
}

// Seams implements Operation.
func (r *triangleSquare) Seams() (l measure.Surd, ok bool) {
	t := r.p.Triangle
	if t == nil {
		return l, false
	}
	return triangleSeams(t.Cut, r.p.Seam.Allowance.Length, len(r.op.Of)).MulInt(r.p.Made), true
}
