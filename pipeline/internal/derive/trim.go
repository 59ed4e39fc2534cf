package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// trim is a part trimmed to size.
type trim struct {
	op plan.Trim
	p  *Part
	s  *Size
}

// line is what a side is trimmed to: as said, or the next line of the grid below
// what it measures, which stays where it lies on one. A side that is smaller than
// the grid has no line below it and is not trimmed.
func line(said, downTo plan.Length, side measure.Surd) plan.Length {
	if !downTo.Given() || said.Given() || downTo.Length <= 0 {
		return said
	}
	at := side.FloorTo(downTo.Length)
	if at <= 0 {
		return plan.Length{}
	}
	return plan.Length{Length: at, At: downTo.At}
}

// either is what a plan says a unit is trimmed to: a size, or else the grid.
func either(trim, downTo plan.Length) plan.Length {
	if trim.Given() {
		return trim
	}
	return downTo
}

// comesTo takes an operation for the part's own in which what follows from the
// part's size has been filled in.
func (p *Part) comesTo(op plan.Operation) {
	of := *p.Part
	of.Operation = op
	p.Part = &of
}

// Trim implements plan.Maker.
func (o *opening) Trim(op plan.Trim) { o.room = &trim{op: op, p: o.p, s: o.s} }

// Carries implements Carrier.
func (r *trim) Carries() plan.Cell { return r.op.Carries() }

// Cells implements celled.
func (r *trim) Cells() [][]plan.Cell { return alone(r.op.Part) }

// Measure implements Operation.
func (r *trim) Measure() {
	p := r.p
	q := r.s.byName[r.op.Part.Text]
	if q == nil || !q.Known {
		return
	}
	r.op.Width, r.op.Height = line(r.op.Width, r.op.DownTo, q.Width), line(r.op.Height, r.op.DownTo, q.Height)
	p.Known, p.Bias = true, q.Bias
	p.Box = q.Box // of a side that no line lies below
	if r.op.Width.Given() {
		p.Width = r.op.Width.Surd()
	}
	if r.op.Height.Given() {
		p.Height = r.op.Height.Surd()
	}
	p.comesTo(r.op)
}

// Ask implements Operation.
func (r *trim) Ask() { r.p.takes(r.s.byName[r.op.Part.Text], false) }

// Covers implements Operation.
func (r *trim) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	return r.p.rectangle(seam)
}

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
	return []Trimming{{r.op.Width, of.Width, r.op.DownTo}, {r.op.Height, of.Height, r.op.DownTo}}
}

// Wants implements Operation.
func (r *trim) Wants() []Want {
	return []Want{{Part: r.op.Part, To: FourSided, By: r.p.quoted()}}
}

// Serves implements Operation.
func (r *trim) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// Gives implements Operation.
func (r *trim) Gives() *Giving { return nil }

// How implements Operation.
func (r *trim) How() say.Sentence {
	return say.That("trim %s%s", r.op.Part.Text, KindOf(r.op.Kind)).And(down(r.op.DownTo))
}

// Notes implements Noted.
func (r *trim) Notes() []say.Sentence { return r.s.trimLost(r.p) }

// Traits implements Operation.
func (r *trim) Traits() Traits { return Traits{Sewn: true, Handed: true} }

// Draft implements Operation.
func (r *trim) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	if w, ok = d.Alone(r); !ok {
		return w, false
	}
	return w.TrimmedDown(r.p.Box)
}

// Lay implements Operation.
func (r *trim) Lay(l *Laying, n Turns) {
	l.Cell(plan.Cell{Part: r.op.Part}, n)
}

// SizeAt implements Sized.
func (r *trim) SizeAt() source.Range { return r.op.Width.At }

// Places implements Seating.
func (r *trim) Places() []plan.Cell { return r.op.Places() }
