package piecing_test

import (
	"testing"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

const eighth = inch / 8

// decimals compares a derived length with a figure worked by hand.
func decimals(t *testing.T, what string, got measure.Surd, want string) {
	t.Helper()
	places := len(want) - 1
	for i, r := range want {
		if r == '.' {
			places = len(want) - 1 - i
		}
	}
	if text := got.Decimal(measure.In, places); text != want {
		t.Errorf("%s: %s in, want %s", what, text, want)
	}
}

func marks(t *testing.T, what string, got measure.Length, want string) {
	t.Helper()
	if got != length(t, want) {
		t.Errorf("%s: %s, want %s in", what, got.Format(measure.In), want)
	}
}

// unfinished is a finished size with a quarter-inch seam round it.
func unfinished(f measure.Length) measure.Surd { return (f + 2*quarter).Surd() }

// The trade's cuts at a quarter-inch seam and what they leave: 7/8, 1 1/4 and
// 1 3/4 in are widely published, with no authority to name; oversize cuts (1,
// 1 1/4, 1 1/2, 2 in over) are common practice, no source. What is left is
// derived from geometry.
func TestTradeCutsLeave(t *testing.T) {
	u := unfinished(6 * inch)
	half := func(n int) piecing.Fit { return piecing.HalfSquareFit(u, quarter, n, eighth, piecing.Up) }
	cross := piecing.QuarterSquareFit(u, quarter, eighth, piecing.Up)
	for _, c := range []struct {
		what      string
		fit       piecing.Fit
		cut, left string
	}{
		{"half square, 2 at a time", half(2), "6 7/8", "0.0214"},
		{"the same, 1 in over", half(2).With(7 * inch), "7", "0.1464"},
		{"the same, 1 1/4 in over", half(2).With(length(t, "7 1/4")), "7 1/4", "0.3964"},
		{"half square, 8 at a time", half(8), "13 3/4", "0.0214"},
		{"the same, 2 in over", half(8).With(14 * inch), "14", "0.1464"},
		{"quarter square, hourglass", cross, "7 1/4", "0.0429"},
		{"hourglass, 1 1/2 in over", cross.With(length(t, "7 1/2")), "7 1/2", "0.2929"},
		{"half square, one mark too small", half(2).With(length(t, "6 3/4")), "6 3/4", "-0.1036"},
	} {
		marks(t, c.what, c.fit.Cut, c.cut)
		decimals(t, c.what, c.fit.Left, c.left)
	}
	// The trade's 1/8 in grid leaves at most 0.088 in in a unit made four at a
	// time: 1/8 in of square is 1/8/sqrt2 of unit.
	if most := eighth.Surd().Div(measure.Root2()); half(4).Left.Cmp(most) >= 0 || half(4).Left.Sign() < 0 {
		t.Errorf("4 at a time leaves %v", half(4).Left)
	}
	decimals(t, "4 at a time, the most left", eighth.Surd().Div(measure.Root2()), "0.088")
}

// What a Fit says is left is the unit's own formula less the wanted size, for
// any cut size.
func TestFitAgreesWithUnit(t *testing.T) {
	u := unfinished(4 * inch)
	for c := 2 * inch; c < 12*inch; c += inch * 3 / 16 {
		for _, n := range []int{2, 4, 8} {
			want := halfSquareUnit(c, quarter, n).Sub(u)
			if got := piecing.HalfSquareFit(u, quarter, n, eighth, piecing.Up).With(c).Left; !got.Equal(want) {
				t.Fatalf("%d at a time from %v: %v left, want %v", n, c.Format(measure.In), got, want)
			}
		}
		want := quarterSquareUnit(c, quarter).Sub(u)
		if got := piecing.QuarterSquareFit(u, quarter, eighth, piecing.Up).With(c).Left; !got.Equal(want) {
			t.Fatalf("quarter square from %v: %v left, want %v", c.Format(measure.In), got, want)
		}
	}
	if f := piecing.HalfSquareFit(u, quarter, 3, eighth, piecing.Up); !f.Exact.IsZero() || f.Cut != 0 {
		t.Errorf("three at a time: %+v", f)
	}
}

// 2.5 and 3.5 cm added at a seam of 0.75 cm, as a published metric tutorial
// has it, are short by 0.6 and 1.2 mm; 3 and 4 cm are safe. Across 10 units
// the first is 6 mm.
func TestMetricAddsAreShort(t *testing.T) {
	s := 75 * mm / 10
	u := (10*cm + 2*s).Surd()
	half := piecing.HalfSquareFit(u, s, 2, cm/2, piecing.Nearest)
	cross := piecing.QuarterSquareFit(u, s, cm/2, piecing.Nearest)
	for _, c := range []struct {
		what string
		fit  piecing.Fit
		cut  measure.Length
		left string
	}{
		{"half square", half, 125 * mm, "-0.060660"},
		{"quarter square", cross, 135 * mm, "-0.121320"},
		{"half square, 3 cm", half.With(13 * cm), 13 * cm, "0.439340"},
		{"quarter square, 4 cm", cross.With(14 * cm), 14 * cm, "0.378680"},
	} {
		if got := c.fit.Left.Decimal(measure.Cm, 6); got != c.left || c.fit.Cut != c.cut {
			t.Errorf("%s: cut %v leaves %s cm, want %s", c.what, c.fit.Cut.Format(measure.Cm), got, c.left)
		}
	}
	if got := half.Across(10).Decimal(measure.Cm, 3); got != "-0.607" {
		t.Errorf("ten units: %s cm", got)
	}
}

// Converting a cut size while the seam changes: 4 7/8 in is 12.38 cm; cut
// 12.4 and sewn at 0.75 cm the unit is 11.339 cm beside a square of 11.5 cm,
// and that is 1.6 mm. Derived from geometry.
func TestConvertedCutSize(t *testing.T) {
	u := halfSquareUnit(124*mm, 75*mm/10, 2)
	if got := u.Decimal(measure.Cm, 3); got != "11.339" {
		t.Errorf("unit %s cm", got)
	}
	if got := (115 * mm).Surd().Sub(u).Decimal(measure.Cm, 2); got != "0.16" {
		t.Errorf("beside the square %s cm", got)
	}
}

func TestRounding(t *testing.T) {
	x := inch.Surd().Mul(measure.Root2()) // 1.4142 in
	for _, c := range []struct {
		r    piecing.Rounding
		want string
	}{{piecing.Up, "1 1/2"}, {piecing.Nearest, "1 3/8"}, {piecing.Down, "1 3/8"}} {
		marks(t, "sqrt2 in", c.r.Round(x, eighth), c.want)
		marks(t, "on the grid", c.r.Round(length(t, "4 7/8").Surd(), eighth), "4 7/8")
	}
}

// Flying geese 3 x 6 in, four at a time: large W + 1 1/4, small H + 7/8 in,
// leaving 0.0429 in in the width and 0.0214 in in the height. Derived from
// geometry.
func TestFourGeese(t *testing.T) {
	u := piecing.Box{Width: unfinished(6 * inch), Height: unfinished(3 * inch)}
	g, ok := piecing.FourGeese(u, quarter, eighth, piecing.Up)
	if !ok {
		t.Fatal("3 x 6 in is no goose")
	}
	marks(t, "large", g.Large.Cut, "7 1/4")
	marks(t, "small", g.Small.Cut, "3 7/8")
	decimals(t, "large, exactly", g.Large.Exact, "7.207107")
	decimals(t, "small, exactly", g.Small.Exact, "3.853553")
	decimals(t, "wide", g.Large.Left, "0.0429")
	decimals(t, "high", g.Small.Left, "0.0214")
	unit := piecing.Geese4Unit(g.Large.Cut, g.Small.Cut, quarter)
	if !unit.Width.Equal(u.Width.Add(g.Large.Left)) || !unit.Height.Equal(u.Height.Add(g.Small.Left)) {
		t.Errorf("unit %v", unit)
	}
	// The trade's two constants leave the point exactly at the seam.
	wantSurd(t, "point", piecing.GoosePoint(g.Large.Cut, g.Small.Cut), quarter)
	for _, wrong := range []measure.Length{6*inch - tick, 6*inch + tick} {
		off := piecing.Box{Width: unfinished(wrong), Height: u.Height}
		if _, ok := piecing.FourGeese(off, quarter, eighth, piecing.Up); ok {
			t.Errorf("%v by 3 in passes for a goose", wrong.Format(measure.In))
		}
		if _, ok := piecing.OneGoose(off, quarter); ok {
			t.Errorf("%v by 3 in passes for a goose, singly", wrong.Format(measure.In))
		}
	}
	single, ok := piecing.OneGoose(u, quarter)
	wantSurd(t, "flip square", single.Square, inch*7/2)
	if wantBox(t, "body", single.Body, inch*13/2, inch*7/2); !ok {
		t.Error("3 x 6 in is no goose, singly")
	}
}

// A flip square of 3 1/2 in leaves a bonus unit of 2.792893 in: trim 2 3/4,
// finishes 2 1/4. Derived from geometry.
func TestBonusUnit(t *testing.T) {
	q := piecing.FlipSquare(3*inch, quarter)
	marks(t, "flip square", q, "3 1/2")
	bonus := piecing.BonusUnit(q, quarter)
	decimals(t, "bonus", bonus, "2.792893")
	trim := bonus.FloorTo(eighth)
	marks(t, "trim", trim, "2 3/4")
	marks(t, "finishes", trim-2*quarter, "2 1/4")
	// It is what two cut-off triangles make as a half-square unit.
	leg := q.Surd().Sub(quarter.Surd().Mul(measure.Root2()))
	if two := leg.Sub(quarter.Surd().Mul(measure.Root2())); !two.Equal(bonus) {
		t.Errorf("two triangles of leg %v make %v", leg, two)
	}
}

// Corners of one side may meet (2k = f), not overlap; unequal corners are
// judged together.
func TestFlipCornersFit(t *testing.T) {
	f := box(6*inch, 4*inch)
	for _, c := range []struct {
		legs [4]measure.Length
		want bool
	}{
		{[4]measure.Length{2 * inch, 2 * inch, 2 * inch, 2 * inch}, true},
		{[4]measure.Length{2 * inch, 2 * inch, 2*inch + tick, 2 * inch}, false},
		{[4]measure.Length{4 * inch, 2 * inch, 0, 0}, true},
		{[4]measure.Length{4 * inch, 2*inch + tick, 0, 0}, false},
		{[4]measure.Length{4*inch + tick, 0, 0, 0}, false},
		{[4]measure.Length{4 * inch, 0, 4 * inch, 0}, true}, // opposite corners share no side
		{[4]measure.Length{-tick, 0, 0, 0}, false},
		{[4]measure.Length{}, true},
	} {
		if got := piecing.FlipCornersFit(f, c.legs); got != c.want {
			t.Errorf("legs %v: %v, want %v", c.legs, got, c.want)
		}
	}
}

// The centre of a square in a square by finished size, nearest mark, and what
// it is over. Derived from geometry.
func TestSquareInSquareCentre(t *testing.T) {
	for _, c := range []struct {
		f           measure.Length
		exact, mark string
		over        string
	}{
		{4, "3.328427", "3 3/8", "0.047"},
		{5, "4.035534", "4", "-0.036"},
		{6, "4.742641", "4 3/4", "0.007"},
		{8, "6.156854", "6 1/8", "-0.032"},
		{12, "8.985281", "9", "0.015"},
	} {
		q := piecing.SquareInSquareFit(unfinished(c.f*inch), quarter, eighth, piecing.Nearest, piecing.Up)
		decimals(t, "centre", q.Centre.Exact, c.exact)
		marks(t, "centre", q.Centre.Cut, c.mark)
		decimals(t, "over", q.Centre.Over(), c.over)
		// Corner squares f/2 + 7/8.
		if q.Corner.Cut != c.f*inch/2+inch*7/8 {
			t.Errorf("f=%d: corners %v", c.f, q.Corner.Cut.Format(measure.In))
		}
	}
	up := piecing.SquareInSquareFit(unfinished(8*inch), quarter, eighth, piecing.Up, piecing.Up)
	marks(t, "8 in, up", up.Centre.Cut, "6 1/4")
	decimals(t, "8 in, up", up.Centre.Over(), "0.093")
}

// A square in a square sewn from given cuts: both errors show in the unit,
// and the exact cuts put the points at the seam.
func TestSquareInSquareUnit(t *testing.T) {
	u := unfinished(6 * inch)
	q := piecing.SquareInSquareFit(u, quarter, eighth, piecing.Nearest, piecing.Up)
	got := squareInSquareUnit(q.Centre.Cut, q.Corner.Cut, quarter)
	if want := u.Add(q.Centre.Left).Add(q.Corner.Left); !got.Equal(want) {
		t.Errorf("unit %v, want %v", got, want)
	}
	// Corner squares that make up for a centre bring the unit to its size exactly.
	for _, centre := range []measure.Length{inch * 9 / 2, inch * 19 / 4, inch * 5} {
		corner := piecing.SquareInSquareCorner(u, centre, quarter)
		wantSurd(t, "made up for", corner.Add(squareInSquareUnit(centre, 0, quarter)), 13*inch/2)
	}
	// A finished side of 6*sqrt2 in has a centre of 6 1/2 in exactly.
	f := (6 * inch).Surd().Mul(measure.Root2())
	exact := f.Add((2 * quarter).Surd())
	wantSurd(t, "point", piecing.SquareInSquarePoint(exact, inch*13/2, quarter), quarter)
	if p := piecing.SquareInSquarePoint(exact, inch*53/8, quarter); p.Cmp(quarter.Surd()) >= 0 {
		t.Errorf("too large a centre keeps its points: %v", p)
	}
	wantSurd(t, "flip squares", piecing.SquareInSquareFlip(u, quarter), inch*7/2)
}

// An hourglass goes through a half-square unit that is s*sqrt2 larger.
func TestHourglassHalf(t *testing.T) {
	c := length(t, "7 1/4")
	if got := piecing.HourglassHalf(quarterSquareUnit(c, quarter), quarter); !got.Equal(halfSquareUnit(c, quarter, 2)) {
		t.Errorf("half %v", got)
	}
}
