package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
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

// How implements Operation.
func (r *bordered) How() say.Sentence {
	var borders []say.Sentence
	for i := range r.p.Borders {
		borders = append(borders, r.p.Borders[i].told())
	}
	return say.That("round %s: %s", r.op.Part.Text, say.List("; ", borders...))
}

// told is one border round a part, in one line.
func (b *Border) told() say.Sentence {
	name := b.Said.Name.Text
	if b.Units != nil {
		text := say.That("%s of %s", name, b.Said.Part.Text)
		if b.Sides.Sign() > 0 {
			text = text.And(say.That(", %d on each side", b.Units.Sides))
		}
		if b.Ends.Sign() > 0 {
			text = text.And(say.That(", %d on each end", b.Units.Ends))
		}
		return text.And(b.cornersTold())
	}
	text := say.That("%s, %s%s", name, b.stripsTold(), b.cornersTold())
	if b.Said.Copes() {
		text = text.And(say.That(", trimmed to %s finished", say.ThereBy(b.Said.To[0].Length, b.Said.To[1])))
	}
	return text
}

// stripsTold is the strips of a border in the order in which they are sewn on.
func (b *Border) stripsTold() say.Sentence {
	sides := say.That("sides %s", say.CutBy(b.Cut, b.Sides))
	ends := say.That("top and bottom %s", say.CutBy(b.EndCut, b.Ends))
	switch {
	case b.Ends.IsZero():
		return sides.And(say.That(" only"))
	case b.Sides.IsZero():
		return ends.And(say.That(" only"))
	}
	strips := say.List(", ", sides, ends)
	if b.Said.EndsOn && b.Corners == 0 {
		strips = say.List(", ", ends, sides)
	}
	return say.That("%s%s: %s", b.Said.Corners.String(), b.LongerTold(), strips)
}

// LongerTold says what mitred strips are cut longer than they must be.
func (b *Border) LongerTold() say.Sentence {
	if b.Said.Allowance.Length == 0 {
		return say.Sentence{}
	}
	return say.That(", each %s longer than its exact length, to be cut off with the mitre", say.AsCut(b.Said.Allowance))
}

// cornersTold is what a border has in its corners, to be said after its strips.
func (b *Border) cornersTold() say.Sentence {
	switch {
	case b.Corners == 0:
		return say.Sentence{}
	case b.Corner != nil:
		return say.That(", %s in the corners", b.Corner.Name.Text)
	}
	return say.That(", corner squares %s", say.AsCut(b.Cut))
}

// Traits implements Operation.
func (r *bordered) Traits() Traits { return Traits{Sewn: true, Handed: true} }

// Draft implements Operation.
func (r *bordered) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	if w, ok = d.Alone(r); !ok {
		return w, false
	}
	return d.Round(w, r.p.Borders)
}

// Lay implements Operation.
func (r *bordered) Lay(l *Laying, n Turns) {
	l.Cell(plan.Cell{Part: r.op.Part}, n)
	l.bordered(r.p, n)
}

// Places implements Seating.
func (r *bordered) Places() []plan.Cell { return r.op.Places() }
