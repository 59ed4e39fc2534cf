package piecing_test

import (
	"math/rand/v2"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// flatTube is one layer of a tube as it lies on the table: y = 0 on the near
// raw edge, x along the strips, all in inches. Nothing in it comes from the
// formulas under test.
type flatTube struct{ width, seam, beyond float64 }

// half is one triangle of the tube whose tip is at x: what of it ends in the
// square. Above the near seam it is the triangle under the ruler, below it the
// seam's allowance, pressed back and trimmed flush with the square. The other
// way up for tips at the near side.
func (f flatTube) half(x float64, up bool) geom.Geometry {
	tip := f.width - f.seam + f.beyond // the tip is beyond the far seam
	base := tip - f.seam               // 45 degrees: as far to each side as it is high
	return f.side(polygon(
		geom.XY{X: x, Y: tip}, geom.XY{X: x - base, Y: f.seam}, geom.XY{X: x - base + f.seam},
		geom.XY{X: x + base - f.seam}, geom.XY{X: x + base, Y: f.seam}), up)
}

// ruled is all that the ruler cuts: the triangle down to the near raw edge.
func (f flatTube) ruled(x float64, up bool) geom.Geometry {
	tip := f.width - f.seam + f.beyond
	return f.side(polygon(geom.XY{X: x, Y: tip}, geom.XY{X: x - tip}, geom.XY{X: x + tip}), up)
}

func (f flatTube) side(g geom.Geometry, up bool) geom.Geometry {
	if up {
		return g
	}
	return reflect(g, geom.XY{Y: f.width / 2}, geom.XY{X: 1, Y: f.width / 2})
}

// place sets triangles alternately along a tube, each as far left as it goes
// without overlapping those before it, found by halving. It gives the right
// end of each: a tube that reaches there holds the triangle.
func (f flatTube) place(t testing.TB, count int, earsKept bool) (ends []float64) {
	outline := f.half
	if earsKept {
		outline = f.ruled
	}
	left, _ := extent(outline(0, true))
	tips := []float64{-left}
	for i := 1; i < count; i++ {
		low, high := tips[i-1], tips[i-1]+3*f.width
		for high-low > 1e-9 {
			if x := (low + high) / 2; f.clashes(t, tips, x) {
				low = x
			} else {
				high = x
			}
		}
		tips = append(tips, high)
	}
	for i, x := range tips {
		_, right := extent(outline(x, i%2 == 0))
		ends = append(ends, right)
	}
	return ends
}

func (f flatTube) clashes(t testing.TB, tips []float64, x float64) bool {
	up := len(tips)%2 == 0
	for i := max(0, len(tips)-2); i < len(tips); i++ {
		if overlap(t, f.half(tips[i], i%2 == 0), f.half(x, up)) >= touching {
			return true
		}
	}
	return false
}

// extent is how far a polygon reaches to the left and to the right.
func extent(g geom.Geometry) (left, right float64) {
	low, high, _ := g.Envelope().MinMaxXYs()
	return low.X, high.X
}

func flat(t piecing.Tube) flatTube {
	return flatTube{inches(t.Width), inches(t.Seam), inches(t.Beyond)}
}

// The number of squares, by polygons placed one after the other, is the
// formula's for every length: N fit and N+1 do not.
func TestTubeAgainstPolygons(t *testing.T) {
	for _, r := range rows() {
		tube := tubeOf(r.n, quarter, r.raw)
		for _, ears := range []bool{false, true} {
			ends := flat(tube).place(t, 12, ears)
			for l := length(t, "38 1/2"); l <= 45*inch; l += inch / 8 {
				for _, l := range []measure.Length{l - tick, l, l + tick} {
					comparePlaced(t, r.String(), tube, ends, l, ears)
				}
			}
		}
		checkOpened(t, tube)
	}
}

// comparePlaced compares a yield with the triangles placed that a tube as long
// as l holds. The tolerance is a fifth of a tick, so lengths a tick to either
// side of a limit are told apart.
func comparePlaced(t *testing.T, what string, tube piecing.Tube, ends []float64, l measure.Length, ears bool) {
	t.Helper()
	fit := int64(0)
	for _, right := range ends {
		if right <= inches(l)+near {
			fit++
		}
	}
	if got := tube.Yield(l, ears); got != fit {
		t.Errorf("%s, %v, ears kept %v: %d squares, %d triangles fit", what, l.Format(measure.In), ears, got, fit)
	}
}

// checkOpened opens a triangle along its near seam and compares the square.
func checkOpened(t *testing.T, tube piecing.Tube) {
	t.Helper()
	f := flat(tube)
	if out := f.ruled(50, true).Area() - overlap(t, f.ruled(50, true), rectangle(100, f.width)); out > touching {
		t.Errorf("%g sq in of the triangle lie outside the tube", out)
	}
	above := polygon(geom.XY{Y: f.seam}, geom.XY{X: 100, Y: f.seam}, geom.XY{X: 100, Y: 100}, geom.XY{Y: 100})
	half := intersection(t, f.half(50, true), above)
	opened := joined(t, half, reflect(half, geom.XY{Y: f.seam}, geom.XY{X: 1, Y: f.seam}))
	agree(t, "side of the square", tube.Side(), squareSide(t, opened))
	ring := f.ruled(50, true).MustAsPolygon().ExteriorRing().Coordinates()
	agree(t, "sloping cut", tube.CutLength(), ring.GetXY(0).Sub(ring.GetXY(1)).Length())
}

// The same for tubes of any strips, seams and tips between the far seam and
// the raw edge, with a fixed seed; lengths about each limit, on both sides.
func TestRandomTubesAgainstPolygons(t *testing.T) {
	random := rand.New(rand.NewPCG(45, 6))
	for range 12 {
		n := 2 + random.IntN(3)
		w := inch * measure.Length(12+random.IntN(20)) / 8
		s := measure.Length(random.Int64N(int64(inch/4))) + inch/8
		e := measure.Length(random.Int64N(int64(s) + 1))
		tube := piecing.Tube{Width: setWidth(same(n, w), s), Seam: s, Beyond: e}
		checkOpened(t, tube)
		for _, ears := range []bool{false, true} {
			ends := flat(tube).place(t, 6, ears)
			for k := int64(1); k < 6; k++ {
				for _, off := range []measure.Length{-tick, 0, inch / 8} {
					comparePlaced(t, "random tube", tube, ends, tube.LengthFor(k, ears)+off, ears)
				}
			}
		}
	}
}

// With the tip short of the far seam the gaps alternate, and the formula's
// advance is only safe: at a quarter inch short, 40 in hold six squares where
// it says five. It never says more than fit.
func TestTubeTipShortOfSeam(t *testing.T) {
	tube := piecing.Tube{Width: setWidth(same(3, roll), quarter), Seam: quarter, Beyond: -quarter}
	ends := flat(tube).place(t, 8, false)
	for l := 12 * inch; l <= 45*inch; l += inch / 8 {
		fit := int64(0)
		for _, right := range ends {
			if right <= inches(l)+near {
				fit++
			}
		}
		got := tube.Yield(l, false)
		if got > fit {
			t.Errorf("%v: %d squares promised, %d fit", l.Format(measure.In), got, fit)
		}
		if l == 40*inch && (got != 5 || fit != 6) {
			t.Errorf("40 in: %d promised and %d fit, want 5 and 6", got, fit)
		}
	}
}
