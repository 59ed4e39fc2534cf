package derive

import (
	"yardproof/pipeline/internal/piecing"

	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// stripSet is strips sewn side by side.
type stripSet struct {
	op plan.StripSet
	p  *Part
	s  *Size
}

// StripSet implements plan.Maker.
func (o *opening) StripSet(op plan.StripSet) { o.room = &stripSet{op: op, p: o.p, s: o.s} }

// Seams implements Operation.
func (r *stripSet) Seams() (l measure.Surd, ok bool) {
	set := r.p.Set
	if set == nil {
		return l, false
	}
	return piecing.SetSeams(int64(len(set.Strips)), set.Length).Surd().MulInt(set.Count), true
}
