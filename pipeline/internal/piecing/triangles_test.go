package piecing_test

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// add is what a unit's cut square exceeds its finished size by, exactly.
func add(cut func(u measure.Surd, s measure.Length) measure.Surd, s measure.Length) measure.Surd {
	finished := (6 * inch).Surd()
	return cut(finished.Add((2 * s).Surd()), s).Sub(finished)
}

func halfCut(u measure.Surd, s measure.Length) measure.Surd { return piecing.HalfSquareCut(u, s, 2) }

// The constants that are added to a finished size: exact (2 + sqrt2)s and
// (2 + 2 sqrt2)s, derived from geometry. The trade's 7/8 and 1 1/4 in at a
// quarter-inch seam are widely published, with no authority to name: the
// algebra is the check. 2.5 and 3.5 cm at a seam of 0.75 cm are published in
// metric tutorials, and are short.
func TestTradeConstants(t *testing.T) {
	for _, c := range []struct {
		what        string
		cut         func(u measure.Surd, s measure.Length) measure.Surd
		seam, trade string
		unit        measure.Unit
		exact, left string
		safe        bool
	}{
		{"half square", halfCut, "1/4", "7/8", measure.In, "0.853553", "0.021447", true},
		{"quarter square", piecing.QuarterSquareCut, "1/4", "1 1/4", measure.In, "1.207107", "0.042893", true},
		{"half square, metric", halfCut, "0.75 cm", "2.5 cm", measure.Cm, "2.560660", "-0.060660", false},
		{"quarter square, metric", piecing.QuarterSquareCut, "0.75 cm", "3.5 cm", measure.Cm, "3.621320", "-0.121320", false},
		{"half square, metric, next centimetre", halfCut, "0.75 cm", "3 cm", measure.Cm, "2.560660", "0.439340", true},
		{"quarter square, metric, next centimetre", piecing.QuarterSquareCut, "0.75 cm", "4 cm", measure.Cm, "3.621320", "0.378680", true},
	} {
		exact, trade := add(c.cut, length(t, c.seam)), length(t, c.trade).Surd()
		if got := exact.Decimal(c.unit, 6); got != c.exact {
			t.Errorf("%s: exactly %s, want %s", c.what, got, c.exact)
		}
		if got := trade.Sub(exact).Decimal(c.unit, 6); got != c.left {
			t.Errorf("%s: %s left, want %s", c.what, got, c.left)
		}
		if got := trade.Cmp(exact) >= 0; got != c.safe {
			t.Errorf("%s: safe %v, want %v", c.what, got, c.safe)
		}
	}
}

// The trade's constants are the next marks of a 1/8 in ruler: the mark below
// would be short.
func TestTradeConstantsAreTheNextMark(t *testing.T) {
	if got := add(halfCut, quarter).CeilTo(inch / 8); got != inch*7/8 {
		t.Errorf("half square: %v", got.Format(measure.In))
	}
	if got := add(piecing.QuarterSquareCut, quarter).CeilTo(inch / 8); got != inch*5/4 {
		t.Errorf("quarter square: %v", got.Format(measure.In))
	}
}

// A finished 3 in unit is 3 1/2 in unfinished. Cut at 3 7/8 in it comes out a
// little larger, at 3 27/32 in a little smaller.
func TestHalfSquareUnitAboutItsLimit(t *testing.T) {
	want := length(t, "3 1/2").Surd()
	if u := halfSquareUnit(length(t, "3 7/8"), quarter, 2); u.Cmp(want) <= 0 {
		t.Errorf("from 3 7/8 in: %v", u.Format(measure.In))
	}
	if u := halfSquareUnit(length(t, "3 27/32"), quarter, 2); u.Cmp(want) >= 0 {
		t.Errorf("from 3 27/32 in: %v", u.Format(measure.In))
	}
}

// Squares for units four and eight at a time, at a quarter-inch seam: exact
// sqrt2*f + 2(sqrt2+1)s and 2f + 2(2+sqrt2)s, derived from geometry.
func TestHalfSquareCutByFinishedSize(t *testing.T) {
	for _, c := range []struct {
		finished    measure.Length
		four, eight string
		mark        string // of the 1/8 in ruler, for four at a time
	}{
		{2, "4.0355", "5.7071", "4 1/8"},
		{3, "5.4497", "7.7071", "5 1/2"},
		{4, "6.8640", "9.7071", "6 7/8"},
		{5, "8.2782", "11.7071", "8 3/8"},
		{6, "9.6924", "13.7071", "9 3/4"},
	} {
		u := (c.finished*inch + 2*quarter).Surd()
		four := piecing.HalfSquareCut(u, quarter, 4)
		if got := four.Decimal(measure.In, 4); got != c.four {
			t.Errorf("%d in finished, four at a time: %s, want %s", c.finished, got, c.four)
		}
		if got := four.CeilTo(inch / 8); got != length(t, c.mark) {
			t.Errorf("%d in finished, four at a time: up to %v, want %s", c.finished, got.Format(measure.In), c.mark)
		}
		if got := piecing.HalfSquareCut(u, quarter, 8).Decimal(measure.In, 4); got != c.eight {
			t.Errorf("%d in finished, eight at a time: %s, want %s", c.finished, got, c.eight)
		}
	}
}

// "Unfinished is 0.64 of the cut square" for four at a time is a rule of
// thumb (from memory). It promises too much below 5.27 in and too little above.
func TestFourAtATimeRuleOfThumb(t *testing.T) {
	for _, c := range []struct {
		cut     measure.Length
		unit    string
		promise int // of the rule, compared with the unit
	}{{5 * inch, "3.181981", 1}, {10 * inch, "6.717514", -1}} {
		u := halfSquareUnit(c.cut, quarter, 4)
		if got := u.Decimal(measure.In, 6); got != c.unit {
			t.Errorf("from %v: %s, want %s", c.cut.Format(measure.In), got, c.unit)
		}
		if got := c.cut.Surd().Mul(measure.Rational(64, 100)).Cmp(u); got != c.promise {
			t.Errorf("from %v: the rule compares %d, want %d", c.cut.Format(measure.In), got, c.promise)
		}
	}
}

// Setting triangles of blocks on point, at a quarter-inch seam: a side
// triangle's long side finishes b*sqrt2, a corner triangle's legs b/sqrt2.
// Derived from geometry.
func TestSettingTriangles(t *testing.T) {
	for _, c := range []struct {
		block        measure.Length
		side, corner string
	}{
		{6, "9.6924", "5.0962"}, {8, "12.5208", "6.5104"}, {9, "13.9350", "7.2175"}, {10, "15.3492", "7.9246"},
		{12, "18.1777", "9.3388"}, {14, "21.0061", "10.7530"}, {15, "22.4203", "11.4602"}, {16, "23.8345", "12.1673"},
	} {
		b, both := (c.block * inch).Surd(), (2 * quarter).Surd()
		side := piecing.QuarterSquareCut(b.Mul(measure.Root2()).Add(both), quarter)
		corner := halfCut(b.Div(measure.Root2()).Add(both), quarter)
		if got := side.Decimal(measure.In, 4); got != c.side {
			t.Errorf("%d in block, side: %s, want %s", c.block, got, c.side)
		}
		if got := corner.Decimal(measure.In, 4); got != c.corner {
			t.Errorf("%d in block, corner: %s, want %s", c.block, got, c.corner)
		}
	}
}

// Cut and unit undo each other, exactly.
func TestCutsGiveTheirUnits(t *testing.T) {
	for _, s := range []measure.Length{quarter, inch * 3 / 8, 75 * mm / 10} {
		for c := 2 * inch; c < 12*inch; c += inch * 3 / 16 {
			for _, atATime := range []int{2, 4, 8} {
				if back := piecing.HalfSquareCut(halfSquareUnit(c, s, atATime), s, atATime); !back.Equal(c.Surd()) {
					t.Fatalf("%d at a time: %v comes back as %v", atATime, c.Surd(), back)
				}
			}
			if back := piecing.QuarterSquareCut(quarterSquareUnit(c, s), s); !back.Equal(c.Surd()) {
				t.Fatalf("quarter square: %v comes back as %v", c.Surd(), back)
			}
		}
	}
}

func TestHalfSquaresOtherwise(t *testing.T) {
	if u := halfSquareUnit(5*inch, quarter, 3); !u.IsZero() {
		t.Errorf("three at a time: %v", u)
	}
	if c := piecing.HalfSquareCut((5 * inch).Surd(), quarter, 3); !c.IsZero() {
		t.Errorf("three at a time: %v", c)
	}
}

// openedTriangle sews a right triangle with its corner in the origin and legs
// along the axes along its long side, and opens it.
func openedTriangle(t testing.TB, leg, seam float64) geom.Geometry {
	half := polygon(geom.XY{}, geom.XY{X: leg}, geom.XY{Y: leg})
	reach := leg - seam*math.Sqrt2 // where the seam line crosses the legs
	kept := intersection(t, half, polygon(geom.XY{}, geom.XY{X: reach}, geom.XY{Y: reach}))
	return joined(t, kept, reflect(kept, geom.XY{X: reach}, geom.XY{Y: reach}))
}

// Half-square units against polygons: the triangles that each way of cutting
// leaves are sewn at the seam, opened, and measured.
func TestHalfSquaresAgainstPolygons(t *testing.T) {
	for _, s := range []measure.Length{quarter, inch * 3 / 8, 6 * mm} {
		for c := 3 * inch; c < 11*inch; c += inch * 5 / 8 {
			cut, seam := inches(c), inches(s)
			agree(t, "two at a time", halfSquareUnit(c, s, 2), squareSide(t, openedTriangle(t, cut, seam)))
			// Sewn all round and cut on both diagonals: the long side of each
			// triangle is the square's edge.
			agree(t, "four at a time", halfSquareUnit(c, s, 4), squareSide(t, openedTriangle(t, cut/math.Sqrt2, seam)))
			// Sewn beside both diagonals and cut on them and through the
			// middle both ways: triangles of half the square's side.
			agree(t, "eight at a time", halfSquareUnit(c, s, 8), squareSide(t, openedTriangle(t, cut/2, seam)))
		}
	}
}

// Cutting a square the way of 2, 4 and 8 at a time leaves so many triangles
// of one size: with the other square's, as many units.
func TestPiecesOfASquare(t *testing.T) {
	const c = 6.0
	corner := []geom.XY{{}, {X: c}, {X: c, Y: c}, {Y: c}}
	middle := geom.XY{X: c / 2, Y: c / 2}
	edge := func(i int) geom.XY { return corner[i].Add(corner[(i+1)%4]).Scale(0.5) }
	var four, eight []geom.Geometry
	for i := range corner {
		four = append(four, polygon(corner[i], corner[(i+1)%4], middle))
		eight = append(eight, polygon(corner[i], edge(i), middle), polygon(edge(i), corner[(i+1)%4], middle))
	}
	for _, pieces := range [][]geom.Geometry{four, eight} {
		if side := squareSide(t, joined(t, pieces...)); math.Abs(side-c) > near {
			t.Errorf("%d pieces make a square of %g", len(pieces), side)
		}
		for _, p := range pieces {
			if math.Abs(p.Area()-c*c/float64(len(pieces))) > near {
				t.Errorf("%d pieces: one of %g sq in", len(pieces), p.Area())
			}
		}
	}
}

// Quarter-square units against polygons: four triangles, their long sides c,
// lose the seam along both short sides and meet in the middle.
func TestQuarterSquaresAgainstPolygons(t *testing.T) {
	for _, s := range []measure.Length{quarter, inch * 3 / 8, 6 * mm} {
		for c := 3 * inch; c < 11*inch; c += inch * 5 / 8 {
			cut, seam := inches(c), inches(s)
			// The long side lies along y = c/2, the corner in the origin; what
			// is nearer than the seam to a short side is allowance.
			whole := polygon(geom.XY{}, geom.XY{X: cut / 2, Y: cut / 2}, geom.XY{X: -cut / 2, Y: cut / 2})
			inner := geom.XY{Y: seam * math.Sqrt2}
			kept := intersection(t, whole, polygon(inner, inner.Add(geom.XY{X: cut, Y: cut}), inner.Add(geom.XY{X: -cut, Y: cut})))
			var unit []geom.Geometry
			for turn := range 4 {
				unit = append(unit, kept.TransformXY(func(p geom.XY) geom.XY {
					p = p.Sub(inner)
					for range turn {
						p = geom.XY{X: -p.Y, Y: p.X}
					}
					return p
				}))
			}
			agree(t, "quarter square", quarterSquareUnit(c, s), squareSide(t, joined(t, unit...)))
		}
	}
}
