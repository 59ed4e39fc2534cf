package piecing

import "yardproof/schema/measure"

// HalfSquareCut is the cut size of the squares c for half-square triangle units of
// unfinished side u, so many at a time. Solved for u it is:
//
//	2 (or triangles cut once): c - s*sqrt2
//	4 (sewn all round, cut on both diagonals): (c/2 - s)*sqrt2
//	8: c/2 - s*sqrt2
//
// Derived from geometry, exact; the trade's finished + 7/8 in for two at a time at
// s = 1/4 in is the first, rounded up. Any other number at a time gives zero.
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

// QuarterSquareCut is the cut size of squares of which four triangles, cut twice
// diagonally, are sewn into a square of unfinished side u: u + 2s*sqrt2. Derived from
// geometry, exact; the trade's finished + 1 1/4 in is this rounded up.
func QuarterSquareCut(u measure.Surd, s measure.Length) measure.Surd {
	return u.Add(s.Surd().Mul(measure.Root2()).MulInt(2))
}
