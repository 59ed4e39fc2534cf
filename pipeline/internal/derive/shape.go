package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Shape is derived triangles of 60 degrees, or their halves, cut side by side
// from strips.
type Shape struct {
	piecing.Triangle60
	Fabric *Fabric
	Half   bool
	Height measure.Length // cut height of the strip
	Cut    piecing.Box    // round one piece as it is cut
	Yield  Yield          // pieces from one strip
	Count  int64          // strips, rounded up
}

// measureShape gives a triangle the place that it takes in a row: half its
// finished side, and a quarter for a half one, so that m triangles between two
// halves come to (m+1) halves of the side. Derived from geometry.
func (s *Size) measureShape(p *Part, op plan.Shape) {
	f := s.byFabric[op.Fabric.Text]
	if f == nil {
		return
	}
	seam := p.Seam.Allowance.Length
	t := piecing.Triangle60{Height: op.Finished.Surd(), Seam: seam, Blunt: op.Blunt}
	strip, _ := t.Strip().Length() // exact: the plan's height and whole seams
	shape := &Shape{Triangle60: t, Fabric: f, Half: op.Half, Height: strip}
	place := t.Side().DivInt(2)
	shape.Cut = piecing.Box{Width: t.CutSide(), Height: t.Strip()}
	if op.Half {
		place = place.DivInt(2)
		_, shape.Cut.Width = t.HalfLegs()
	}
	shape.Yield = shape.yield(f.stripLength())
	p.Shape, p.Known = shape, true
	both := (2 * seam).Surd()
	p.Box = piecing.Box{Width: place.Add(both), Height: op.Finished.Surd().Add(both)}
}

func (h *Shape) yield(l measure.Length) Yield {
	n := h.PerStrip(l)
	if h.Half {
		n = h.HalfPerStrip(l)
	}
	return Yield{Each: n, Length: l, Used: h.length(n), Next: h.length(n + 1)}
}

// length is the length of strip that n pieces take, up to a tick.
func (h *Shape) length(n int64) measure.Length {
	if h.Half {
		return h.HalfLengthFor(n).CeilTo(measure.Tick)
	}
	return h.LengthFor(n).CeilTo(measure.Tick)
}

// askShape asks for strips. Of the last one only what its pieces take is used.
func (s *Size) askShape(p *Part) {
	h := p.Shape
	if h == nil || h.Yield.Each == 0 {
		return
	}
	h.Count = piecing.Batches(p.Needed, h.Yield.Each)
	last := h.length(p.Needed - (h.Count-1)*h.Yield.Each)
	h.Fabric.Needs = append(h.Fabric.Needs, Need{For: p.Name, Strip: true, Across: h.Fabric.stripLength(), Along: h.Height, Count: h.Count, Last: last})
	each := h.length(2).Surd().Sub(h.length(1).Surd())
	if h.Half {
		each = h.length(2).Surd().DivInt(2)
	}
	h.Fabric.mustHold(each.FloorTo(measure.Tick)-measure.Tick, h.Height, p.Needed) // no less than a piece's area
}

// tellShape is why a strip gives so many triangles.
func (s *Size) tellShape(p *Part, op plan.Shape) *report.Work {
	h := p.Shape
	w := &report.Work{Value: report.N(h.Yield.Each), Terms: []report.Term{
		term("L", "usable length of a strip", s.length(h.Yield.Length), h.Fabric.StripLength().At),
		term("h", "height of the triangle, finished", s.length(op.Finished.Length), op.Finished.At),
		s.seamTerm(p.Seam),
	}}
	switch {
	case op.Half:
		w.Formula = "two head to tail in the length of their two widths"
		return w
	case op.Blunt:
		w.Formula = "floor((L - (P-t)/2) / ((P+t)/2)), t = 2s / sqrt3"
		w.Terms = append(w.Terms, term("t", "width of the cut tip", s.surd(h.Tip()), op.At))
	default:
		w.Formula = "floor(2L / P) - 1"
	}
	w.Terms = append(w.Terms, term("P", "cut side, 2(h + 3s) / sqrt3", s.surd(h.CutSide()), op.At))
	return w
}

// measureTemplate takes the plan's word for what the piece fills.
func (s *Size) measureTemplate(p *Part, op plan.Template) {
	f := s.byFabric[op.Fabric.Text]
	if f == nil {
		return
	}
	box := Piece{What: "box", Fabric: f, Width: op.Box[0].Length, Height: op.Box[1].Length, Count: 1, At: op.Box[0].At, Said: true, Fixed: op.Grain != plan.AnyGrain}
	switch op.Grain {
	case plan.GrainAcross:
		box.Width, box.Height = box.Height, box.Width
	case plan.GrainBias:
		// Turned by 45 degrees, a box takes a square of (w + h) / sqrt2. Derived
		// from geometry.
		side := (box.Width + box.Height).Surd().Div(measure.Root2()).CeilTo(s.rulerGrid())
		box.What, box.Width, box.Height, box.Said = "square round the box on the bias", side, side, false
	}
	box.Exact = piecing.Box{Width: box.Width.Surd(), Height: box.Height.Surd()}
	u := &Unit{Each: 1, Pieces: []Piece{box}}
	u.Sewn = piecing.Box{Width: op.Box[0].Surd(), Height: op.Box[1].Surd()}
	if op.Finished[0].Given() {
		u.Sewn = *unfinished(op.Finished[0], op.Finished[1], p.Seam.Allowance.Length)
	}
	p.becomes(u)
	p.Bias = op.Grain == plan.GrainBias
}
