package derive

import (
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// bordered is a part with borders round it.
type bordered struct {
	op plan.Bordered
	p  *Part
	s  *Size
}

// Bordered implements plan.Maker.
func (o *opening) Bordered(op plan.Bordered) { o.room = &bordered{op: op, p: o.p, s: o.s} }

// Carries implements Carrier.
func (r *bordered) Carries() plan.Cell { return r.op.Carries() }

// Cells implements celled.
func (r *bordered) Cells() [][]plan.Cell { return alone(r.op.Part) }

// Measure implements Operation.
func (r *bordered) Measure() {
	p := r.p
	q := r.s.byName[r.op.Part.Text]
	if q == nil || !q.Known {
		return
	}
	p.Known, p.Box = true, q.Box
	p.Borders = r.s.frame(q.Box, r.op.Borders, p.Seam.Allowance.Length)
	for _, b := range p.Borders {
		p.Known, p.Box = p.Known && b.Known, b.Outer
	}
}

// Ask implements Operation.
func (r *bordered) Ask() {
	p := r.p
	p.takes(r.s.byName[r.op.Part.Text], false)
	for i := range p.Borders {
		b := &p.Borders[i]
		r.s.needBorder(called(p.Name, b.Said.Name.Text, b.Said.Name.At), b, p.Needed, p)
	}
}

// Covers implements Operation.
func (r *bordered) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	return r.p.rectangle(seam)
}

// Seams implements Operation.
func (r *bordered) Seams() (l measure.Surd, ok bool) {
	for _, b := range r.p.Borders {
		l = l.Add(b.seams())
	}
	return l.MulInt(r.p.Made), r.p.Known
}

// OnRuler implements Operation.
func (r *bordered) OnRuler() []OnRuler { return nil }

// Seamed implements Operation.
func (r *bordered) Seamed() []Seamed { return nil }

// Trims implements Operation.
func (r *bordered) Trims() []Trimming { return nil }

// Wants implements Operation.
func (r *bordered) Wants() []Want {
	body := Want{Part: r.op.Part, To: FourSided, By: r.p.quoted()}
	return append([]Want{body}, borderWants(r.op.Borders)...)
}

// Serves implements Operation.
func (r *bordered) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// Gives implements Operation.
func (r *bordered) Gives() *Giving { return nil }
