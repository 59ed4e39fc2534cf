package piecing

import "yardproof/schema/measure"

// perRoot3 is x/sqrt3.
func perRoot3(x measure.Surd) measure.Surd { return x.Div(measure.Root3()) }

// Triangle60 is 60-degree triangles cut side by side, alternately up and
// down, from a strip. All formulas are derived from geometry.
type Triangle60 struct {
	Height measure.Surd   // h, finished
	Seam   measure.Length // s
	Blunt  bool           // the tip is cut off at s beyond the finished point
}

// Strip is the cut height of the strip: h + 3s pointed, h + 2s blunted.
func (t Triangle60) Strip() measure.Surd {
	if t.Blunt {
		return t.Height.Add((2 * t.Seam).Surd())
	}
	return t.Height.Add((3 * t.Seam).Surd())
}

// Side is the finished side: 2h/sqrt3.
func (t Triangle60) Side() measure.Surd { return perRoot3(t.Height.MulInt(2)) }

// CutSide is the cut side, tip to tip, before any blunting:
// P = 2(h+3s)/sqrt3, that is the finished side and 2 sqrt3*s.
func (t Triangle60) CutSide() measure.Surd {
	return perRoot3(t.Height.Add((3 * t.Seam).Surd()).MulInt(2))
}

// Tip is the width of the cut tip: 2s/sqrt3 blunted, none pointed.
func (t Triangle60) Tip() measure.Surd {
	if t.Blunt {
		return perRoot3((2 * t.Seam).Surd())
	}
	return measure.Surd{}
}

// Advance is how far along the strip each further triangle reaches: half of
// the cut side and the tip together.
func (t Triangle60) Advance() measure.Surd { return t.CutSide().Add(t.Tip()).DivInt(2) }

// Waste is what the slanted cuts at the two ends of the strip take together:
// half of the cut side less the tip.
func (t Triangle60) Waste() measure.Surd { return t.CutSide().Sub(t.Tip()).DivInt(2) }

// PerStrip is how many triangles a strip of length L gives, rounded down:
// floor(2L/P) - 1 pointed, floor((L - (P-t)/2) / ((P+t)/2)) blunted.
func (t Triangle60) PerStrip(l measure.Length) int64 {
	return wholeSteps(l, t.Waste(), t.Advance())
}

// HalfLegs is the cut legs of the right triangle that ends a row, half of a
// triangle: upright h + (3+sqrt3)s, along the row h/sqrt3 + (1+sqrt3)s. Its
// sharp tip reaches past the strip and is blunted; a triangle cut in half is
// too small.
func (t Triangle60) HalfLegs() (upright, along measure.Surd) {
	s := t.Seam.Surd()
	root := s.Mul(measure.Root3())
	return t.Height.Add(s.MulInt(3)).Add(root), perRoot3(t.Height).Add(s).Add(root)
}

// RowWidth is the finished width of a row of m triangles with a half one at
// each end: (m+1) times half the side.
func (t Triangle60) RowWidth(m int64) measure.Surd { return t.Side().MulInt(m + 1).DivInt(2) }

// wholeSteps is how many pieces, each a step further, lie in a length of which
// waste is lost at the ends; rounded down, never negative.
func wholeSteps(l measure.Length, waste, step measure.Surd) int64 {
	return max(0, measure.FloorDiv(l.Surd().Sub(waste), step))
}

// Hexagon is regular hexagons cut from strips with two sides along the strip.
// All formulas are derived from geometry.
type Hexagon struct {
	Side measure.Surd   // a, finished
	Seam measure.Length // s
}

// CutSide is a + 2s/sqrt3.
func (h Hexagon) CutSide() measure.Surd { return h.Side.Add(perRoot3((2 * h.Seam).Surd())) }

// Strip is the cut height of the strip: sqrt3*a + 2s.
func (h Hexagon) Strip() measure.Surd { return plus2s(h.Side.Mul(measure.Root3()), h.Seam) }

// Advance is the length of strip that each takes, point to point: twice the
// cut side.
func (h Hexagon) Advance() measure.Surd { return h.CutSide().MulInt(2) }

// PerStrip is how many a strip of length L gives, rounded down.
func (h Hexagon) PerStrip(l measure.Length) int64 {
	return wholeSteps(l, measure.Surd{}, h.Advance())
}

// Angle is the angle of a slanted cut to the strip's edge.
type Angle int

// The angles that a ruler carries.
const (
	Degrees45 Angle = 45
	Degrees60 Angle = 60
)

// sine and cotangent of the angle; those of any other angle are zero.
func (a Angle) sine() measure.Surd {
	switch a {
	case Degrees45:
		return measure.Root2().DivInt(2)
	case Degrees60:
		return measure.Root3().DivInt(2)
	}
	return measure.Surd{}
}

func (a Angle) cotangent() measure.Surd {
	switch a {
	case Degrees45:
		return one()
	case Degrees60:
		return perRoot3(one())
	}
	return measure.Surd{}
}

// Slant is parallelograms cut from a strip or strip set by parallel slanted
// cuts: segments of a strip set recut at an angle, and diamonds, whose
// distance between cuts is the strip's own height. All formulas are derived
// from geometry.
type Slant struct {
	Strip measure.Surd // cut height of the strip or strip set
	Width measure.Surd // cut width of a segment, square to the slanted cuts
	Angle Angle
}

// Advance is the length of strip from cut to cut: width/sin. For a diamond
// d + 4s/sqrt3 at 60 degrees, d + 2 sqrt2*s at 45.
func (c Slant) Advance() measure.Surd { return c.Width.Div(c.Angle.sine()) }

// Waste is what the first slanted cut takes, and the end with it: strip*cot,
// the strip's height at 45 degrees, height/sqrt3 at 60.
func (c Slant) Waste() measure.Surd { return c.Strip.Mul(c.Angle.cotangent()) }

// PerStrip is how many a strip of length L gives, rounded down:
// floor((L - waste) / advance).
func (c Slant) PerStrip(l measure.Length) int64 { return wholeSteps(l, c.Waste(), c.Advance()) }

// LengthFor is the length of strip that n take: waste and n advances.
func (c Slant) LengthFor(n int64) measure.Surd {
	if n <= 0 {
		return measure.Surd{}
	}
	return c.Waste().Add(c.Advance().MulInt(n))
}
