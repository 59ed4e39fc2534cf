package derive

import (
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// trim is a part trimmed to size.
type trim struct {
	op plan.Trim
	p  *Part
	s  *Size
}

// Trim implements plan.Maker.
func (o *opening) Trim(op plan.Trim) { o.room = &trim{op: op, p: o.p, s: o.s} }

// Seams implements Operation: it is only cut.
func (r *trim) Seams() (l measure.Surd, ok bool) { return l, true }
