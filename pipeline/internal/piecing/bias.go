package piecing

import "yardproof/schema/measure"

// ContinuousBias is the binding from a square of side A cut once diagonally,
// sewn to a parallelogram and then to a tube with seam s, and cut round and
// round at width w: loops K = floor((A-2s)/(w*sqrt2)), length K(A-2s)sqrt2.
// Both seams take 2s from the square: one from the distance between the bias
// edges, one from the way round. Derived from geometry.
func ContinuousBias(a, w, s measure.Length) (loops int64, length measure.Surd) {
	side := a - 2*s
	if side <= 0 || w <= 0 {
		return 0, measure.Surd{}
	}
	loops = measure.FloorDiv(side.Surd(), rootOf2(w))
	return loops, rootOf2(side).MulInt(loops)
}

// BiasSquare is the smallest square on a grid whose continuous bias, by whole
// loops, is at least need. ok is false when no square up to measure.MaxLength
// is, or width or grid is not positive. Derived from geometry.
func BiasSquare(need measure.Surd, w, s, grid measure.Length) (a measure.Length, ok bool) {
	return smallest(grid, w, func(a measure.Length) bool {
		_, length := ContinuousBias(a, w, s)
		return length.Cmp(need) >= 0
	})
}

// BiasByArea is A*A/w, the length that the area of the square would give: an
// upper bound that no cutting reaches, published in several tutorials.
func BiasByArea(a, w measure.Length) measure.Surd {
	if w <= 0 {
		return measure.Surd{}
	}
	return measure.Area(a.Surd(), a.Surd()).Div(w.Surd())
}

// BiasSquareByArea is the smallest square on a grid with A*A/w at least need:
// the side the area rule names before the trade adds an inch to it. It is the
// least that could do, and mostly too small: verify with ContinuousBias.
func BiasSquareByArea(need measure.Surd, w, grid measure.Length) (a measure.Length, ok bool) {
	return smallest(grid, w, func(a measure.Length) bool { return BiasByArea(a, w).Cmp(need) >= 0 })
}

// smallest is the smallest whole number of grids that is enough, found by
// halving, as more than enough stays enough.
func smallest(grid, w measure.Length, enough func(measure.Length) bool) (measure.Length, bool) {
	if grid <= 0 || w <= 0 || !enough(measure.FloorTo(measure.MaxLength, grid)) {
		return 0, false
	}
	low, high := measure.Length(-1), measure.MaxLength/grid
	for high-low > 1 {
		if middle := low + (high-low)/2; enough(middle * grid) {
			high = middle
		} else {
			low = middle
		}
	}
	return high * grid, true
}

// BiasStrips is the lengths of single bias strips of cut width w from a square
// of side A, cut from the diagonal outwards to both sides, longest first, each
// measured along its middle: A*sqrt2 - (2i+1)w twice for i = 0, 1, ... while
// there is any. Their ends lie on the straight grain. Derived from geometry.
func BiasStrips(a, w measure.Length) []measure.Surd {
	var strips []measure.Surd
	if w <= 0 {
		return nil
	}
	for length := rootOf2(a).Sub(w.Surd()); length.Sign() > 0; length = length.Sub((2 * w).Surd()) {
		// A strip shorter than it is wide has come to a point.
		if length.Cmp(w.Surd()) < 0 {
			break
		}
		strips = append(strips, length, length)
	}
	return strips
}

// DoubleFold is the cut width of a double-fold binding: w = 2(3d + t + o) for
// a finished front width d, which is its seam, the thickness t of the quilt's
// edge and the overlap o past the seam on the back. Derived from geometry.
func DoubleFold(d, t, o measure.Length) measure.Length { return 2 * (3*d + t + o) }

// DoubleFoldLeaves is what a double-fold binding cut w leaves for the edge's
// thickness and the overlap together: t + o = w/2 - 3d.
func DoubleFoldLeaves(w, d measure.Length) measure.Surd {
	return w.Surd().DivInt(2).Sub((3 * d).Surd())
}

// SingleFold is the cut width of a single-fold binding: w = 4d + t. Derived
// from geometry.
func SingleFold(d, t measure.Length) measure.Length { return 4*d + t }

// BindingCutsPoints reports whether a binding sewn at finished front width d
// cuts off points that lie within the seam allowance s of the quilt's edge.
func BindingCutsPoints(d, s measure.Length) bool { return d > s }
