package piecing_test

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// Loops and length of continuous bias from a square at a quarter-inch seam,
// and what the area rule (published in several tutorials) says. Loops derived
// from geometry.
func TestContinuousBias(t *testing.T) {
	for _, c := range []struct {
		a              measure.Length
		w              string
		loops          int64
		length, byArea string
	}{
		{20, "2 1/4", 6, "165.46", "177.78"}, {20, "2 1/2", 5, "137.89", "160.00"},
		{24, "2 1/4", 7, "232.64", "256.00"}, {24, "2 1/2", 6, "199.40", "230.40"},
		{26, "2 1/4", 8, "288.50", "300.44"}, {26, "2 1/2", 7, "252.44", "270.40"},
		{30, "2 1/4", 9, "375.47", "400.00"}, {30, "2 1/2", 8, "333.75", "360.00"},
		{36, "2 1/4", 11, "552.25", "576.00"}, {36, "2 1/2", 10, "502.05", "518.40"},
	} {
		w := length(t, c.w)
		loops, got := piecing.ContinuousBias(c.a*inch, w, quarter)
		if loops != c.loops {
			t.Errorf("%d in square at %s: %d loops, want %d", c.a, c.w, loops, c.loops)
		}
		decimals(t, "length", got, c.length)
		decimals(t, "by area", piecing.BiasByArea(c.a*inch, w), c.byArea)
	}
	for _, none := range []struct{ a, w measure.Length }{{inch / 2, inch}, {inch, 0}, {-inch, inch}} {
		if loops, got := piecing.ContinuousBias(none.a, none.w, quarter); loops != 0 || !got.IsZero() {
			t.Errorf("%+v: %d loops", none, loops)
		}
	}
}

// 250 in at 2 1/4: the area rule says 23.72 in, so 24, which gives 232.64;
// 26 in is needed on the half-inch grid, 25 7/8 (251.20 in) on the eighth.
func TestBiasSquare(t *testing.T) {
	need, w := (250 * inch).Surd(), length(t, "2 1/4")
	for _, c := range []struct {
		grid measure.Length
		want string
	}{{inch / 2, "26"}, {eighth, "25 7/8"}} {
		a, ok := piecing.BiasSquare(need, w, quarter, c.grid)
		if marks(t, "square", a, c.want); !ok {
			t.Error("no square")
		}
		if _, got := piecing.ContinuousBias(a-c.grid, w, quarter); got.Cmp(need) >= 0 {
			t.Errorf("one mark less gives %v", got)
		}
	}
	_, got := piecing.ContinuousBias(length(t, "25 7/8"), w, quarter)
	decimals(t, "from 25 7/8", got, "251.20")
	byArea, ok := piecing.BiasSquareByArea(need, w, inch)
	if marks(t, "by area", byArea, "24"); !ok {
		t.Error("no square by area")
	}
	exact, _ := piecing.BiasSquareByArea(need, w, inch/100)
	marks(t, "by area, to 1/100", exact, "23.72")
	if _, got := piecing.ContinuousBias(byArea, w, quarter); got.Cmp(need) >= 0 {
		t.Error("the area rule is enough")
	}
}

func TestBiasSquareLimits(t *testing.T) {
	need := (10 * inch).Surd()
	for _, c := range []struct{ w, grid measure.Length }{{0, inch}, {inch, 0}, {-inch, inch}} {
		if _, ok := piecing.BiasSquare(need, c.w, quarter, c.grid); ok {
			t.Errorf("%+v gives a square", c)
		}
	}
	if !piecing.BiasByArea(10*inch, 0).IsZero() {
		t.Error("strips of no width have a length by area")
	}
	// By area 20 in square are exactly 200 in of 2-in strips.
	for need, want := range map[measure.Length]measure.Length{200 * inch: 20 * inch, 200*inch + tick: inch * 41 / 2} {
		if a, ok := piecing.BiasSquareByArea(need.Surd(), 2*inch, inch/2); !ok || a != want {
			t.Errorf("%v by area: %v, want %v", need.Format(measure.In), a.Format(measure.In), want.Format(measure.In))
		}
	}
	if a, ok := piecing.BiasSquare(measure.Surd{}, inch, quarter, inch); !ok || a != 0 {
		t.Errorf("nothing needs a square of %v", a)
	}
	if _, ok := piecing.BiasSquare(measure.MaxLength.Surd().Mul(measure.MaxLength.Surd()), inch, quarter, inch); ok {
		t.Error("more than the longest length is found")
	}
	// The length that a square gives needs that square, a little more the next.
	_, reached := piecing.ContinuousBias(24*inch, inch*5/2, quarter)
	for _, c := range []struct {
		need measure.Surd
		want measure.Length
	}{{reached, 24 * inch}, {reached.Add(measure.Tick.Surd()), 24*inch + eighth}} {
		if a, _ := piecing.BiasSquare(c.need, inch*5/2, quarter, eighth); a != c.want {
			t.Errorf("%v needs %v", c.need, a.Format(measure.In))
		}
	}
}

// The square cut once and sewn to a parallelogram, against polygons: the two
// triangles lie seam on seam, and bias edges and straight edges are measured.
func TestContinuousBiasAgainstPolygons(t *testing.T) {
	for _, a := range []measure.Length{20 * inch, 24 * inch, inch * 207 / 8} {
		side, seam := inches(a), inches(quarter)
		// Cut from the bottom left to the top right; the upper half is moved
		// below so that the square's two level edges meet, and up again by
		// both allowances.
		lower := polygon(geom.XY{}, geom.XY{X: side}, geom.XY{X: side, Y: side})
		upper := polygon(geom.XY{Y: -side}, geom.XY{X: side}, geom.XY{}).
			TransformXY(func(p geom.XY) geom.XY { return geom.XY{X: p.X, Y: p.Y + 2*seam} })
		up := polygon(geom.XY{X: -1, Y: seam}, geom.XY{X: 2 * side, Y: seam}, geom.XY{X: 2 * side, Y: 2 * side}, geom.XY{X: -1, Y: 2 * side})
		down := polygon(geom.XY{X: -1, Y: seam}, geom.XY{X: 2 * side, Y: seam}, geom.XY{X: 2 * side, Y: -2 * side}, geom.XY{X: -1, Y: -2 * side})
		sheet := joined(t, intersection(t, lower, up), intersection(t, upper, down))
		// Between the straight edges' own seams, which close the tube, the
		// way round runs along the bias; the loops lie side by side across it.
		tube := intersection(t, sheet, polygon(geom.XY{X: seam, Y: -side}, geom.XY{X: side - seam, Y: -side},
			geom.XY{X: side - seam, Y: side}, geom.XY{X: seam, Y: side}))
		left, right := extent(tube)
		round := (right - left) * math.Sqrt2
		across := tube.Area() / round
		for _, w := range []measure.Length{inch * 9 / 4, inch * 5 / 2} {
			loops, got := piecing.ContinuousBias(a, w, quarter)
			if drawn := math.Floor(across/inches(w) + near); int64(drawn) != loops {
				t.Errorf("%v: %d loops, the drawing holds %g", a.Format(measure.In), loops, drawn)
			}
			agree(t, "length", got, round*float64(loops))
		}
	}
}

// Single strips from a 20 in square cut 2 1/2 in wide: 5 each side of the
// diagonal, 20*sqrt2 - 2.5 in along the middle and 5 in less for each
// further one; with no seams they cover their area and no more than the
// square's. Derived from geometry.
func TestBiasStrips(t *testing.T) {
	strips := piecing.BiasStrips(20*inch, roll)
	if len(strips) != 10 {
		t.Fatalf("%d strips", len(strips))
	}
	decimals(t, "longest", strips[0], "25.784271")
	decimals(t, "next", strips[2], "20.784271")
	decimals(t, "shortest", strips[9], "5.784271")
	area := measure.Sum(strips...).Mul(roll.Surd())
	square := measure.Area((20 * inch).Surd(), (20 * inch).Surd())
	if area.Cmp(square) >= 0 || area.Cmp(square.Mul(measure.Rational(9, 10))) < 0 {
		t.Errorf("strips cover %s", measure.FormatArea(area, measure.In))
	}
	// Joined: each join takes 2s*sqrt2 along the middle.
	join := measure.Sum(strips...).Sub(piecing.JoinedBias(strips, quarter)).DivInt(9)
	decimals(t, "join", join, "0.707107")
	if !piecing.JoinedBias(nil, quarter).IsZero() || piecing.BiasStrips(20*inch, 0) != nil {
		t.Error("something from nothing")
	}
	// A strip that comes to a point at its inner edge is the last: side
	// w*sqrt2 exactly gives one pair.
	if got := len(piecing.BiasStrips(roll*3/2, roll)); got != 2 {
		t.Errorf("3 3/4 in square: %d strips", got)
	}
	if got := len(piecing.BiasStrips(inch*7/2, roll)); got != 0 {
		t.Errorf("3 1/2 in square: %d strips", got)
	}
}

// A double-fold binding of 1/4 in: cut 2 1/4 leaves 3/8 in for edge and
// overlap, 2 1/2 leaves 1/2, 2 leaves 1/4. Derived from geometry.
func TestBindingWidths(t *testing.T) {
	for _, c := range []struct{ w, leaves string }{{"2 1/4", "3/8"}, {"2 1/2", "1/2"}, {"2", "1/4"}} {
		left := piecing.DoubleFoldLeaves(length(t, c.w), quarter)
		wantSurd(t, "leaves", left, length(t, c.leaves))
		marks(t, "cut", piecing.DoubleFold(quarter, length(t, c.leaves), 0), c.w)
	}
	marks(t, "thickness and overlap", piecing.DoubleFold(quarter, quarter, eighth), "2 1/4")
	marks(t, "single fold", piecing.SingleFold(quarter, eighth), "1 1/8")
	if piecing.BindingCutsPoints(quarter, quarter) || !piecing.BindingCutsPoints(quarter+tick, quarter) {
		t.Error("points are cut off by a binding wider than the seam, and by no other")
	}
}
