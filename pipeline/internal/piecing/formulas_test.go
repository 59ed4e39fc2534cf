package piecing_test

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// The formulas of units as sewn, by which the figures of derive are reckoned. The
// tests of this package hold them against placed polygons, and those of derive hold
// the figures against worked examples.

// setWidth is the width, raw edge to raw edge, of strips sewn side by side:
// T = w1 + ... + wn - 2(n-1)s. Derived from geometry; the seam is the drafted
// one, as "scant" is an instruction to the sewer and no number of the draft.
func setWidth(widths []measure.Length, s measure.Length) measure.Length {
	var t measure.Length
	for _, w := range widths {
		t += w
	}
	return t - 2*measure.Length(len(widths)-1)*s
}

// halfSquareUnit is the unfinished side of the half-square triangle units
// made from two squares of cut size c, so many at a time:
//
//	2 (or triangles cut once): c - s*sqrt2
//	4 (sewn all round, cut on both diagonals): (c/2 - s)*sqrt2
//	8: c/2 - s*sqrt2
//
// Derived from geometry; the trade's finished + 7/8 in for two at a time at
// s = 1/4 in is the first solved for c and rounded up. Any other number at a
// time gives zero.
func halfSquareUnit(c, s measure.Length, atATime int) measure.Surd {
	root2 := measure.Root2()
	diagonal := s.Surd().Mul(root2)
	switch atATime {
	case 2:
		return c.Surd().Sub(diagonal)
	case 4:
		return c.Surd().DivInt(2).Sub(s.Surd()).Mul(root2)
	case 8:
		return c.Surd().DivInt(2).Sub(diagonal)
	}
	return measure.Surd{}
}

// quarterSquareUnit is the unfinished side of four triangles, cut twice
// diagonally from squares of cut size c and sewn into a square:
// c - 2s*sqrt2. Derived from geometry; the trade's finished + 1 1/4 in is
// this solved for c and rounded up.
func quarterSquareUnit(c, s measure.Length) measure.Surd {
	return c.Surd().Sub(s.Surd().Mul(measure.Root2()).MulInt(2))
}

// squareInSquareUnit is the unfinished side of a square in a square sewn from
// a centre square and corner squares cut once: centre/sqrt2 + corner -
// 2s*sqrt2. Derived from geometry.
func squareInSquareUnit(centre, corner, s measure.Length) measure.Surd {
	return centre.Surd().Div(measure.Root2()).Add(corner.Surd()).Sub((2 * s).Surd().Mul(measure.Root2()))
}

// diamond is diamonds of finished side d with a 45 or 60 degree point: strip
// and width d*sin + 2s, d/sqrt2 + 2s or d*sqrt3/2 + 2s.
func diamond(d measure.Surd, s measure.Length, a piecing.Angle) piecing.Slant {
	strip := d.Mul(sine(a)).Add((2 * s).Surd())
	return piecing.Slant{Strip: strip, Width: strip, Angle: a}
}

// threePatchUnit is the unfinished side of a unit from a half's and the quarters'
// squares: what comes out of the smaller, half - s*sqrt2 or quarter - 2s*sqrt2. The
// larger sticks out beyond it. Derived from geometry.
func threePatchUnit(half, quarter, s measure.Length) measure.Surd {
	return measure.Min(halfSquareUnit(half, s, 2), quarterSquareUnit(quarter, s))
}

func sine(a piecing.Angle) measure.Surd {
	if a == piecing.Degrees45 {
		return measure.Root2().DivInt(2)
	}
	return measure.Root3().DivInt(2)
}
