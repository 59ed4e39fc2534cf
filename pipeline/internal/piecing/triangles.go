package piecing

import "yardproof/schema/measure"

// HalfSquareUnit is the unfinished side of the half-square triangle units
// made from two squares of cut size c, so many at a time:
//
//	2 (or triangles cut once): c - s*sqrt2
//	4 (sewn all round, cut on both diagonals): (c/2 - s)*sqrt2
//	8: c/2 - s*sqrt2
//
// Derived from geometry; the trade's finished + 7/8 in for two at a time at
// s = 1/4 in is the first solved for c and rounded up. Any other number at a
// time gives zero.
func HalfSquareUnit(c, s measure.Length, atATime int) measure.Surd {
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

// HalfSquareCut is the cut size of the squares for units of unfinished side
// u: HalfSquareUnit solved for c, exact.
func HalfSquareCut(u measure.Surd, s measure.Length, atATime int) measure.Surd {
	root2 := measure.Root2()
	diagonal := s.Surd().Mul(root2)
	switch atATime {
	case 2:
		return u.Add(diagonal)
	case 4:
		return u.Mul(root2).Add(s.Surd().MulInt(2))
	case 8:
		return u.Add(diagonal).MulInt(2)
	}
	return measure.Surd{}
}

// QuarterSquareUnit is the unfinished side of four triangles, cut twice
// diagonally from squares of cut size c and sewn into a square:
// c - 2s*sqrt2. Derived from geometry; the trade's finished + 1 1/4 in is
// this solved for c and rounded up.
func QuarterSquareUnit(c, s measure.Length) measure.Surd {
	return c.Surd().Sub(s.Surd().Mul(measure.Root2()).MulInt(2))
}

// QuarterSquareCut is QuarterSquareUnit solved for c, exact.
func QuarterSquareCut(u measure.Surd, s measure.Length) measure.Surd {
	return u.Add(s.Surd().Mul(measure.Root2()).MulInt(2))
}
