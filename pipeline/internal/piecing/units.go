package piecing

import "yardproof/schema/measure"

// plus2s is an unfinished size, plus2s(finished, s) = finished + 2s.
func plus2s(finished measure.Surd, s measure.Length) measure.Surd {
	return finished.Add((2 * s).Surd())
}

func rootOf2(l measure.Length) measure.Surd { return l.Surd().Mul(measure.Root2()) }

func one() measure.Surd { return measure.Rational(1, 1) }

// HalfSquareAdd is what the square for half-square triangles cut once, or two
// at a time, exceeds the finished size by: (2 + sqrt2)s. Offsetting an
// isosceles right triangle outward by s lengthens each leg by s + s(1+sqrt2).
// Derived from geometry; at s = 1/4 in the trade says 7/8 in, widely
// published, no authority.
func HalfSquareAdd(s measure.Length) measure.Surd { return (2 * s).Surd().Add(rootOf2(s)) }

// QuarterSquareAdd is what the square for triangles cut twice exceeds their
// finished long side by: (2 + 2 sqrt2)s. Derived from geometry; at s = 1/4 in
// the trade says 1 1/4 in, widely published, no authority.
func QuarterSquareAdd(s measure.Length) measure.Surd { return (2 * s).Surd().Add(rootOf2(2 * s)) }

// QuarterSquareFit is the square for quarter-square units of unfinished side
// u, rounded to grid: four triangles from a square cut twice, or an hourglass
// unit cut from two half-square units laid together. Exact u + 2s*sqrt2,
// derived from geometry.
func QuarterSquareFit(u measure.Surd, s, grid measure.Length, r Rounding) Fit {
	return fit(QuarterSquareCut(u, s), one(), grid, r)
}

// HourglassHalf is the unfinished side of the half-square units between the
// two sewings of an hourglass unit of unfinished side u: u + s*sqrt2. Derived
// from geometry.
func HourglassHalf(u measure.Surd, s measure.Length) measure.Surd { return u.Add(rootOf2(s)) }

// Geese4 is flying geese four at a time: one large square gives four geese,
// four small squares their skies.
type Geese4 struct {
	Large Fit // leaves its error in the width
	Small Fit // leaves its error in the height
}

// FourGeese is the squares for flying geese of unfinished size u, four at a
// time: large W + (2 + 2 sqrt2)s, small H + (2 + sqrt2)s for a finished W by
// H, rounded to grid. The method makes only W = 2H, exactly; ok is false for
// any other shape. Derived from geometry.
func FourGeese(u Box, s, grid measure.Length, r Rounding) (g Geese4, ok bool) {
	g.Large = fit(u.Width.Add(rootOf2(2*s)), one(), grid, r)
	g.Small = fit(u.Height.Add(rootOf2(s)), one(), grid, r)
	f := u.Finished(s)
	return g, f.Width.Equal(f.Height.MulInt(2))
}

// Geese4Unit is the unfinished size of flying geese, four at a time, from a
// large and four small squares: width L - 2s*sqrt2, height Q - s*sqrt2.
// Derived from geometry.
func Geese4Unit(large, small, s measure.Length) Box {
	return Box{large.Surd().Sub(rootOf2(2 * s)), small.Surd().Sub(rootOf2(s))}
}

// GoosePoint is how far below the unit's raw edge the goose's point lies, for
// squares L and Q four at a time: Q - L/2. Less than s, the seam cuts the point
// off. Derived from geometry.
func GoosePoint(large, small measure.Length) measure.Surd {
	return small.Surd().Sub(large.Surd().DivInt(2))
}

// Geese1 is one flying goose by stitch and flip: a rectangle and two squares.
type Geese1 struct {
	Body   Box          // the unit's unfinished size
	Square measure.Surd // each of two: as high as the unit
}

// OneGoose is the pieces of a flying goose of unfinished size u, singly: a
// rectangle u and two squares of its height. Exact, nothing left. The method
// makes only W = 2H finished; ok is false for any other shape.
func OneGoose(u Box, s measure.Length) (g Geese1, ok bool) {
	f := u.Finished(s)
	return Geese1{Body: u, Square: u.Height}, f.Width.Equal(f.Height.MulInt(2))
}

// FlipSquare is the cut side of the square for a stitch-and-flip corner of
// finished leg k: k + 2s, exact.
func FlipSquare(k, s measure.Length) measure.Length { return k + 2*s }

// BonusUnit is the unfinished side of the half-square unit sewn from the two
// triangles that a flip square q leaves: q - 2s*sqrt2, nothing to trim to when
// it is not above 2s. Derived from geometry.
func BonusUnit(q, s measure.Length) measure.Surd { return q.Surd().Sub(rootOf2(2 * s)) }

// Corner is a corner of a rectangular unit, clockwise from the top left.
type Corner int

// The corners.
const (
	TopLeft Corner = iota
	TopRight
	BottomRight
	BottomLeft
)

// FlipCornersFit reports whether stitch-and-flip corners of finished legs
// fit a body of finished size: along every side the two legs together are no
// longer than the side, and no leg is longer than its sides. Legs that meet
// (2k = f) fit: that is the square in a square. No corner is a leg of zero.
// Derived from geometry.
func FlipCornersFit(finished Box, legs [4]measure.Length) bool {
	for i, leg := range legs {
		side := finished.Width // from TopLeft and from BottomRight the next corner is across
		if i%2 == 1 {
			side = finished.Height
		}
		if leg < 0 || (leg+legs[(i+1)%4]).Surd().Cmp(side) > 0 {
			return false
		}
	}
	return true
}

// SquareInSquare is the pieces of a square in a square with cut triangles.
type SquareInSquare struct {
	Centre Fit // f/sqrt2 + 2s
	Corner Fit // f/2 + (2 + sqrt2)s, two squares cut once
}

// SquareInSquareFit is the centre and the corner squares for a square in a
// square of unfinished side u, each rounded to grid its own way. What the
// centre is over shows in the unit 1/sqrt2 times, what the corner squares are
// over in full. Derived from geometry.
func SquareInSquareFit(u measure.Surd, s, grid measure.Length, centre, corner Rounding) SquareInSquare {
	f := u.Sub((2 * s).Surd())
	half := measure.Root2().DivInt(2)
	return SquareInSquare{
		Centre: fit(plus2s(f.Mul(half), s), half, grid, centre),
		Corner: fit(f.DivInt(2).Add(HalfSquareAdd(s)), one(), grid, corner),
	}
}

// SquareInSquareCorner is the corner squares that bring a square in a square with a
// given centre to an unfinished side u: u - centre/sqrt2 + 2s*sqrt2. What the centre
// is short of, they make up for. Derived from geometry.
func SquareInSquareCorner(u measure.Surd, centre, s measure.Length) measure.Surd {
	return u.Sub(centre.Surd().Div(measure.Root2())).Add(rootOf2(2 * s))
}

// SquareInSquarePoint is how far the centre's points lie from the raw edge of
// a unit of unfinished side u: u/2 - (centre - 2s)/sqrt2. Less than s, the seam
// cuts them off; more, they float. Derived from geometry.
func SquareInSquarePoint(u measure.Surd, centre, s measure.Length) measure.Surd {
	return u.DivInt(2).Sub((centre - 2*s).Surd().Div(measure.Root2()))
}

// SquareInSquareFlip is the four squares for a square in a square by stitch
// and flip on a body of unfinished side u: f/2 + 2s, exact.
func SquareInSquareFlip(u measure.Surd, s measure.Length) measure.Surd {
	return plus2s(u.Sub((2 * s).Surd()).DivInt(2), s)
}
