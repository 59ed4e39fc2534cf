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

// OnRuler implements Operation.
func (r *trim) OnRuler() []OnRuler {
	return []OnRuler{{"trimmed width", r.op.Width}, {"trimmed height", r.op.Height}}
}

// Seamed implements Operation.
func (r *trim) Seamed() []Seamed { return nil }

// Trims implements Operation.
func (r *trim) Trims() []Trimming {
	of := r.s.byName[r.op.Part.Text]
	if of == nil || !of.Known {
		return nil
	}
	return []Trimming{{r.op.Width, of.Width}, {r.op.Height, of.Height}}
}

// Wants implements Operation.
func (r *trim) Wants() []Want {
	return []Want{{Part: r.op.Part, To: FourSided, By: r.p.quoted()}}
}

// Serves implements Operation.
func (r *trim) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// Gives implements Operation.
func (r *trim) Gives() *Giving { return nil }
