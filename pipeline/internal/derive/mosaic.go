package derive

import (
	"math/big"
	"strconv"
	"strings"

	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Mosaic is a part sewn together as the pattern draws it: what its pieces
// cover, finished, against the size that the plan states. Areas are in square
// ticks. Of a template no more is known than that it covers no more than the box
// that it fills, and than its area.
type Mosaic struct {
	Least, Most measure.Surd // that the pieces cover
	Wanted      measure.Surd
	Reach       measure.Surd // pieces that lie within the edges, if only in part, cover no more than this
	Known       bool         // something is known of what every piece covers
}

// Exact reports whether it is known what the pieces cover.
func (m *Mosaic) Exact() bool { return m.Least.Equal(m.Most) }

// acrossBox is the diagonal of a box, rounded up to a tick: nothing in it is longer.
func acrossBox(b piecing.Box) measure.Length {
	w, h := b.Width.CeilTo(measure.Tick), b.Height.CeilTo(measure.Tick)
	sum := new(big.Int).Add(square64(w), square64(h))
	root := new(big.Int).Sqrt(sum)
	if new(big.Int).Mul(root, root).Cmp(sum) < 0 {
		root.Add(root, big.NewInt(1))
	}
	if !root.IsInt64() {
		return measure.MaxLength
	}
	return measure.Length(root.Int64())
}

func square64(l measure.Length) *big.Int {
	x := big.NewInt(int64(l))
	return x.Mul(x, x)
}

// reach is the area in which pieces lie of which some part lies within the
// edges: none reaches further over them than it is long. Derived from geometry.
func reach(op plan.Mosaic, longest measure.Length) measure.Surd {
	over := (2 * min(longest, measure.MaxLength)).Surd()
	return measure.Area(op.Finished[0].Surd().Add(over), op.Finished[1].Surd().Add(over))
}

// rectangle is what a part of four sides and square corners covers, which is
// neither more nor less.
func (p *Part) rectangle(seam measure.Length) (least, most measure.Surd, ok bool) {
	b := p.Box.Finished(seam)
	area := measure.Area(b.Width, b.Height)
	return area, area, p.Known
}

// exactArea is what a part covers of which the area is known.
func exactArea(area measure.Surd) (least, most measure.Surd, ok bool) { return area, area, true }

// parallelogram is cut across a strip at a slant: both its heights lose two
// seams, and their product over the sine is the area.
func parallelogram(c piecing.Slant, s measure.Length) measure.Surd {
	both := (2 * s).Surd()
	long := piecing.Slant{Strip: c.Strip, Width: c.Width.Sub(both), Angle: c.Angle}.Advance()
	return measure.Area(long, c.Strip.Sub(both))
}

// finishedArea of a triangle is h^2/sqrt3, of a hexagon 3 sqrt3/2 a^2, of a
// diamond its height squared over the sine; hexagons and diamonds as large as
// their strip makes them.
func (h *Shape) finishedArea(s measure.Length) measure.Surd {
	high := h.Height.Surd().Sub((2 * s).Surd()) // of a hexagon or diamond
	square := measure.Area(high, high)
	switch h.Kind {
	case plan.Hexagon:
		return square.Mul(measure.Root3()).DivInt(2)
	case plan.Diamond60, plan.Diamond45:
		return parallelogram(piecing.Slant{Strip: h.Height.Surd(), Width: h.Height.Surd(), Angle: DiamondAngle(h.Kind)}, s)
	}
	whole := measure.Area(h.Triangle60.Height, h.Triangle60.Height).Div(measure.Root3())
	if h.Kind == plan.HalfTriangle60 {
		return whole.DivInt(2)
	}
	return whole
}

// mosaic is shapes and parts sewn together as the pattern draws them.
type mosaic struct {
	op plan.Mosaic
	p  *Part
	s  *Size
}

// Mosaic implements plan.Maker.
func (o *opening) Mosaic(op plan.Mosaic) { o.room = &mosaic{op: op, p: o.p, s: o.s} }

// Measure implements Operation.
func (r *mosaic) Measure() {
	p := r.p
	m := &Mosaic{Known: true, Wanted: measure.Area(r.op.Finished[0].Surd(), r.op.Finished[1].Surd())}
	longest := measure.Length(0)
	for _, piece := range r.op.Pieces {
		q := r.s.byName[piece.Part.Text]
		if q == nil || !q.Known {
			return
		}
		least, most, ok := q.Room.Covers(p.Seam.Allowance.Length)
		m.Known = m.Known && ok
		n := int64(piece.Count.N)
		m.Least, m.Most = m.Least.Add(least.MulInt(n)), m.Most.Add(most.MulInt(n))
		longest = max(longest, acrossBox(q.Box.Finished(p.Seam.Allowance.Length)))
	}
	m.Reach = reach(r.op, longest)
	p.Mosaic, p.Known = m, true
	p.Box = *unfinished(r.op.Finished[0], r.op.Finished[1], p.Seam.Allowance.Length)
}

// Ask implements Operation.
func (r *mosaic) Ask() {
	for _, piece := range r.op.Pieces {
		if q := r.s.byName[piece.Part.Text]; q != nil {
			n := min(r.p.Needed*int64(piece.Count.N), countless)
			q.call(r.p.NeededFigure().By(int64(piece.Count.N)), r.p)
			q.kinds.free = min(q.kinds.free+n, countless)
		}
	}
}

// Covers implements Operation.
func (r *mosaic) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	return r.p.rectangle(seam)
}

// Seams implements Operation.
//
// How the pieces fit is not known.
func (r *mosaic) Seams() (l measure.Surd, ok bool) { return l, false }

// OnRuler implements Operation.
func (r *mosaic) OnRuler() []OnRuler { return nil }

// Seamed implements Operation.
func (r *mosaic) Seamed() []Seamed { return nil }

// Trims implements Operation.
func (r *mosaic) Trims() []Trimming { return nil }

// Wants implements Operation: of whatever shape, its pieces need only fit.
func (r *mosaic) Wants() []Want { return nil }

// Serves implements Operation.
func (r *mosaic) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// Gives implements Operation.
func (r *mosaic) Gives() *Giving { return nil }

// How implements Operation.
func (r *mosaic) How() say.Sentence {
	var of []string
	for _, piece := range r.op.Pieces {
		of = append(of, strconv.Itoa(piece.Count.N)+" "+piece.Part.Text)
	}
	text := say.That("sew %s together as the pattern draws it", strings.Join(of, ", "))
	if r.op.Trimmed {
		text = text.And(say.That(", and trim the edges to %s x %s", say.AsThere(r.p.Width), say.AsThere(r.p.Height)))
	}
	return text
}

// Traits implements Operation.
func (r *mosaic) Traits() Traits { return Traits{Sewn: true, Handed: true} }

// Draft implements Operation.
func (r *mosaic) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	return unproved(r.p.Box)
}

// Lay implements Operation.
func (r *mosaic) Lay(l *Laying, n Turns) {
	l.Untold(r.p)
}

// Faults implements Faulty: pieces that do not cover the finished size. What
// differs by less than an eighth of an inch on every side comes of sides that are on
// no ruler.
func (r *mosaic) Faults() []Fault {
	m := r.p.Mosaic
	if m == nil || !m.Known {
		return nil
	}
	off, why := r.coverage()
	if off.IsZero() {
		return nil
	}
	f := Fault{
		Kind: MosaicArea, At: r.op.Finished[0].At,
		Message: say.That("the pieces of %q cover %s", r.p.Name.Text, why),
		Hint:    say.That("count the pieces, and compare their finished sizes with the drawing"),
	}
	eighth := measure.Area(r.op.Finished[0].Surd().Add(r.op.Finished[1].Surd()), (measure.Inch / 4).Surd())
	if m.Exact() && measure.Max(off, off.Neg()).Cmp(eighth) <= 0 {
		f.Slight, f.Hint = true, say.That("nothing, if the sides were rounded to the ruler: ease it in, or trim")
	}
	return []Fault{f}
}

// coverage is by how much the pieces cannot be right, and what they cover against
// what they should; zero where nothing speaks against them.
func (r *mosaic) coverage() (off measure.Surd, why say.Sentence) {
	m := r.p.Mosaic
	covers := func(bound string, a measure.Surd) say.Sentence {
		if m.Exact() {
			bound = ""
		}
		return say.That("%s%s, and %s finished", bound, say.Area(a), say.By(r.op.Finished[0].Length, r.op.Finished[1]))
	}
	short, over := m.Most.Sub(m.Wanted), m.Least.Sub(m.Wanted)
	wanted := say.That(" are %s", say.Area(m.Wanted))
	switch {
	case short.Sign() < 0:
		return short, covers("at most ", m.Most).And(wanted)
	case over.Sign() > 0 && !r.op.Trimmed:
		return over, covers("at least ", m.Least).And(wanted)
	case r.op.Trimmed && m.Least.Cmp(m.Reach) > 0:
		return m.Least.Sub(m.Reach), covers("at least ", m.Least).And(say.That(" are reached by no more than %s of them, if all others are trimmed away", say.Area(m.Reach)))
	}
	return off, why
}
