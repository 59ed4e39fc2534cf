package derive

import (
	"fmt"

	"yardproof/pipeline/internal/piecing"

	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// stripSet is strips sewn side by side.
type stripSet struct {
	op plan.StripSet
	p  *Part
	s  *Size
}

// StripSet implements plan.Maker.
func (o *opening) StripSet(op plan.StripSet) { o.room = &stripSet{op: op, p: o.p, s: o.s} }

// Ask implements Operation. Of segments the pool asks.
func (r *stripSet) Ask() {
	if r.p.Set != nil && r.p.Set.Cut == nil {
		r.p.askSets(true)
	}
}

// Covers implements Operation: of a segment. What a set covers that is used whole
// is not known.
func (r *stripSet) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	switch set := r.p.Set; {
	case set == nil || set.Cut == nil:
		return least, most, false
	case set.Slant != nil:
		return exactArea(parallelogram(*set.Slant, seam))
	}
	return r.p.rectangle(seam)
}

// Seams implements Operation.
func (r *stripSet) Seams() (l measure.Surd, ok bool) {
	set := r.p.Set
	if set == nil {
		return l, false
	}
	if set.Of != nil {
		return l, true // the set has them
	}
	return piecing.SetSeams(int64(len(set.Strips)), set.Length).Surd().MulInt(set.Count), true
}

// OnRuler implements Operation.
func (r *stripSet) OnRuler() []OnRuler {
	out := []OnRuler{{"segment", r.op.Segment}}
	for _, strip := range r.op.Strips {
		out = append(out, OnRuler{"strip width", strip.Width})
	}
	return out
}

// Seamed implements Operation.
func (r *stripSet) Seamed() []Seamed {
	if r.p.Set == nil {
		return nil
	}
	var out []Seamed
	both := 2 * r.p.Seam.Allowance.Length
	for i, strip := range r.p.Set.Strips {
		if r.op.Of.Given() {
			break // the set says them
		}
		at := r.op.Strips[i].Width.At
		if at == (source.Range{}) {
			at = strip.At.At
		}
		out = append(out, Seamed{fmt.Sprintf("strip %d", i+1), strip.Width, both, at})
	}
	if r.op.Segment.Given() {
		out = append(out, Seamed{"the segment", r.op.Segment.Length, both, r.op.Segment.At})
	}
	return out
}

// Trims implements Operation.
func (r *stripSet) Trims() []Trimming { return nil }

// Wants implements Operation.
func (r *stripSet) Wants() []Want {
	if !r.op.Of.Given() {
		return nil
	}
	return []Want{{Part: r.op.Of, To: WholeSet, By: "segment " + r.p.quoted()}}
}

// Serves implements Operation.
func (r *stripSet) Serves(w Wanted) (Misfit, bool) {
	if w == WholeSet {
		return Misfit{Segment: r.op.Segment}, !r.op.Segment.Given()
	}
	if r.op.Angle.Given() {
		return Misfit{Loose: "segment cut at an angle", Sewn: "sew it into a mosaic and name that"}, false
	}
	return sewn(w)
}

// Gives implements Operation.
func (r *stripSet) Gives() *Giving {
	if r.p.Set == nil || r.p.Set.Cut == nil {
		return nil
	}
	return &Giving{"segment", "strip set", r.op.Segment.At}
}
