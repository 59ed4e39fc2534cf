package piecing

import "yardproof/schema/measure"

// What stands here is not in the program: models of patchwork and formulas of
// the trade that its geometry is held against.

// JoinedBias is the length of bias strips joined end to end on the straight
// grain: each join takes 2s*sqrt2 along the middle. Derived from geometry.
// Where their ends are cut square first, each loses w instead, and so does
// each join (JoinedStrips).
func JoinedBias(strips []measure.Surd, s measure.Length) measure.Surd {
	if len(strips) == 0 {
		return measure.Surd{}
	}
	return measure.Sum(strips...).Sub(rootOf2(2 * s).MulInt(int64(len(strips) - 1)))
}

// DraftTriangleRow is the finished row of m triangles and a half one at each
// end: fabrics 0 to m+1 from the left. The first whole triangle points up.
func DraftTriangleRow(t Triangle60, m int) Patchwork {
	half, h := t.Side().DivInt(2), t.Height
	w := Patchwork{Outline: Rectangle(Point{}, Box{t.RowWidth(int64(m)), h})}
	// Piece i lies between the slanted lines that cross the row's middle at
	// i - 1/2 and i + 1/2 half sides, leaning left and right in turn.
	for i := range m + 2 {
		start, end := half.MulInt(int64(i-1)), half.MulInt(int64(i+1))
		tip, base := measure.Surd{}, h
		if i%2 == 0 {
			tip, base = h, measure.Surd{}
		}
		piece := clockwise(Polygon{{half.MulInt(int64(i)), tip}, {end, base}, {start, base}})
		if kept := piece.Overlap(w.Outline); kept != nil {
			w.Patches = append(w.Patches, Patch{i, kept})
		}
	}
	return w
}

// clockwise is the polygon with its corners in the order that Polygon wants.
func clockwise(p Polygon) Polygon {
	if p.Area().Sign() < 0 {
		return p.mirrored(func(q Point) Point { return q })
	}
	return p
}

// Outline is the cut hexagon, two sides level, at the origin.
func (h Hexagon) Outline() Polygon {
	a, strip := h.CutSide(), h.Strip()
	quarter, middle := a.DivInt(2), strip.DivInt(2)
	return Polygon{
		{quarter, measure.Surd{}}, {quarter.Add(a), measure.Surd{}}, {a.MulInt(2), middle},
		{quarter.Add(a), strip}, {quarter, strip}, {Y: middle},
	}
}

// places is a finished top as patchwork, the kinds for fabrics, so that it can
// be shown to close.
func places(size Box, list []Place) Patchwork {
	w := Patchwork{Outline: Rectangle(Point{}, size)}
	for _, p := range list {
		w.Patches = append(w.Patches, Patch{int(p.Kind), p.Outline})
	}
	return w
}

// Closed reports whether places fill a top of finished size exactly.
func Closed(size Box, list []Place) bool { return places(size, list).Closed() }

// DraftFlipCorners is a body of unfinished size, fabric 0, with flip squares
// of cut side legs+2s on its corners, fabrics 1 to 4 clockwise from the top
// left. A finished leg of zero is no corner.
func DraftFlipCorners(body Box, legs [4]measure.Length, s measure.Length) Patchwork {
	w := Plain(body, 0)
	for i, leg := range legs {
		if leg > 0 {
			w = w.Flip(Corner(i), FlipSquare(leg, s).Surd(), i+1)
		}
	}
	return w
}

// SewRows sews rectangular work into rows and the rows together, as Assemble
// does with sizes. No rows, or an empty one, give no work.
func SewRows(rows [][]Patchwork, s measure.Length) Patchwork {
	var whole Patchwork
	for r, row := range rows {
		if len(row) == 0 {
			return Patchwork{}
		}
		sewn := row[0]
		for _, next := range row[1:] {
			sewn = sewn.Beside(next, s)
		}
		if r == 0 {
			whole = sewn
			continue
		}
		whole = whole.Below(sewn, s)
	}
	return whole
}

// TriangleFromStrip is the triangle that a strip or strip set of cut height t
// gives: h = t - 3s with pointed tips, t - 2s with blunted ones.
func TriangleFromStrip(t, s measure.Length, blunt bool) Triangle60 {
	if blunt {
		return Triangle60{(t - 2*s).Surd(), s, true}
	}
	return Triangle60{(t - 3*s).Surd(), s, false}
}

// LockstitchRatio is thread to seam of class 301: 2 + 2t*n for seam thickness
// t and n stitches a unit of length. A published formula.
func LockstitchRatio(t, stitch measure.Surd) measure.Surd {
	return ratio(2, 1).Add(perStitch(t, stitch).MulInt(2))
}

// ChainRatio is thread to seam of class 401: 4 + 2t*n. A published formula.
func ChainRatio(t, stitch measure.Surd) measure.Surd {
	return ratio(4, 1).Add(perStitch(t, stitch).MulInt(2))
}

// OveredgeRatio is thread to seam of class 504: 3 + 4n(W+t) for a stitch of
// width W. A published formula.
func OveredgeRatio(w, t, stitch measure.Surd) measure.Surd {
	return ratio(3, 1).Add(perStitch(w.Add(t), stitch).MulInt(4))
}

// OverlockRatio is an estimate, not published, of thread to seam of class
// 514: the formula of 504 and a second needle, 4 + n(4W+6t).
func OverlockRatio(w, t, stitch measure.Surd) measure.Surd {
	all := w.MulInt(4).Add(t.MulInt(6))
	return ratio(4, 1).Add(perStitch(all, stitch))
}

// perStitch is length*n, n stitches of length stitch to the unit.
func perStitch(length, stitch measure.Surd) measure.Surd { return length.Div(stitch) }

// HalfSquareFit is the square for half-square units of unfinished side u,
// 2, 4 or 8 at a time, rounded to grid. A unit grows by 1, 1/sqrt2 or 1/2 of
// what the square does. Derived from geometry. Any other number at a time
// gives the zero Fit.
func HalfSquareFit(u measure.Surd, s measure.Length, atATime int, grid measure.Length, r Rounding) Fit {
	exact := HalfSquareCut(u, s, atATime)
	switch atATime {
	case 2:
		return fit(exact, one(), grid, r)
	case 4:
		return fit(exact, measure.Root2().DivInt(2), grid, r)
	case 8:
		return fit(exact, measure.Rational(1, 2), grid, r)
	}
	return Fit{}
}
