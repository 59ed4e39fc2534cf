package derive

import (
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// halfSquares is half-square triangle units of pairs of squares.
type halfSquares struct {
	op plan.HalfSquares
	p  *Part
	s  *Size
}

// HalfSquares implements plan.Maker.
func (o *opening) HalfSquares(op plan.HalfSquares) {
	o.room = &halfSquares{op: op, p: o.p, s: o.s}
}

// Seams implements Operation.
func (r *halfSquares) Seams() (l measure.Surd, ok bool) {
	t := r.p.Triangle
	if t == nil {
		return l, false
	}
	return pairSeams(t.Cut, r.p.Seam.Allowance.Length, r.op.AtATime).MulInt(t.Pairs), true
}
