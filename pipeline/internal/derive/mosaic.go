package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Mosaic is a part sewn together as the pattern draws it: what its pieces
// cover, finished, against the size that the plan states.
type Mosaic struct {
	Covered measure.Surd // in square ticks
	Wanted  measure.Surd
	Known   bool // what every piece covers is known
}

func (s *Size) measureMosaic(p *Part, op plan.Mosaic) {
	m := &Mosaic{Known: true, Wanted: measure.Area(op.Finished[0].Surd(), op.Finished[1].Surd())}
	for _, piece := range op.Pieces {
		q := s.byName[piece.Part.Text]
		if q == nil || !q.Known {
			return
		}
		area, ok := finishedArea(q, p.Seam.Allowance.Length)
		m.Known = m.Known && ok
		m.Covered = m.Covered.Add(area.MulInt(int64(piece.Count.N)))
	}
	p.Mosaic, p.Known = m, true
	p.Box = *unfinished(op.Finished[0], op.Finished[1], p.Seam.Allowance.Length)
}

func (s *Size) askMosaic(p *Part, op plan.Mosaic) {
	for _, piece := range op.Pieces {
		if q := s.byName[piece.Part.Text]; q != nil {
			n := min(p.Needed*int64(piece.Count.N), countless)
			q.call(n, p)
			q.kinds.free = min(q.kinds.free+n, countless)
		}
	}
}

// finishedArea is what a part covers once it is sewn in with seam s all round;
// ok is false where that is not known. A triangle of a square c cut once has
// finished legs of c - (2 + sqrt2)s, of one cut twice a long side of
// c - (2 + 2 sqrt2)s. Derived from geometry.
func finishedArea(p *Part, s measure.Length) (area measure.Surd, ok bool) {
	squared := func(x measure.Surd) measure.Surd { return measure.Area(x, x) }
	switch op := p.Operation.(type) {
	case plan.Cut:
		switch op.Halving {
		case plan.CutOnce:
			return squared(op.Width.Surd().Sub(piecing.HalfSquareAdd(s))).DivInt(2), true
		case plan.CutTwice:
			return squared(op.Width.Surd().Sub(piecing.QuarterSquareAdd(s))).DivInt(4), true
		}
	case plan.Shape:
		return p.Shape.finishedArea(s), true
	case plan.StripSet:
		if p.Set != nil && p.Set.Slant != nil {
			return parallelogram(*p.Set.Slant, s), true
		}
		return area, p.Set != nil && p.Set.Cut != nil && rectangle(p, s, &area)
	case plan.Template:
		return area, op.Finished[0].Given() && rectangle(p, s, &area)
	}
	return area, rectangle(p, s, &area)
}

func rectangle(p *Part, s measure.Length, area *measure.Surd) bool {
	b := p.Box.Finished(s)
	*area = measure.Area(b.Width, b.Height)
	return p.Known
}

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
