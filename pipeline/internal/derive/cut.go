package derive

import (
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// cut is a piece cut from fabric, whole or halved.
type cut struct {
	op plan.Cut
	p  *Part
	s  *Size
}

// Cut implements plan.Maker.
func (o *opening) Cut(op plan.Cut) { o.room = &cut{op: op, p: o.p, s: o.s} }

// Seams implements Operation: it is only cut.
func (r *cut) Seams() (l measure.Surd, ok bool) { return l, true }
