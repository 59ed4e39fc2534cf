package piecing_test

import (
	"fmt"
	"testing"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// tubeOf is a tube of sets of n precut 2 1/2-inch strips.
func tubeOf(n int, s measure.Length, rawEdge bool) piecing.Tube {
	t := piecing.Tube{Width: setWidth(same(n, roll), s), Seam: s}
	if rawEdge {
		t.Beyond = s
	}
	return t
}

// row is a tube of n strips of 2 1/2 in at s = 1/4 in, in inches. The yields
// are for 40, 42 and 44 in, corners only and ears kept.
type row struct {
	n                              int
	raw                            bool
	width, height, side, advance   string
	cutLength, stub                string
	corners40, corners42, corner44 int64
	ears40, ears42, ears44         int64
}

func (r row) String() string {
	tip := "far seam"
	if r.raw {
		tip = "raw edge"
	}
	return fmt.Sprintf("sets of %d, tip at the %s", r.n, tip)
}

// Derived from geometry and worked by hand; the same numbers come out of
// polygons placed one after the other in TestTubeAgainstPolygons.
func rows() []row {
	return []row{
		{2, false, "4.500000", "4.000000", "5.656854", "4.000000", "6.010408", "0.000000", 9, 9, 10, 8, 9, 9},
		{2, true, "4.500000", "4.250000", "6.010408", "4.500000", "6.363961", "0.500000", 8, 8, 8, 7, 8, 8},
		{3, false, "6.500000", "6.000000", "8.485281", "6.000000", "8.838835", "0.000000", 5, 6, 6, 5, 5, 6},
		{3, true, "6.500000", "6.250000", "8.838835", "6.500000", "9.192388", "0.500000", 5, 5, 5, 5, 5, 5},
		{4, false, "8.500000", "8.000000", "11.313708", "8.000000", "11.667262", "0.000000", 4, 4, 4, 3, 4, 4},
		{4, true, "8.500000", "8.250000", "11.667262", "8.500000", "12.020815", "0.500000", 3, 4, 4, 3, 3, 4},
	}
}

func TestTubeGeometry(t *testing.T) {
	for _, r := range rows() {
		tube := tubeOf(r.n, quarter, r.raw)
		for _, c := range []struct {
			what, want string
			got        measure.Surd
		}{
			{"T", r.width, tube.Width.Surd()},
			{"h", r.height, tube.Height().Surd()},
			{"side", r.side, tube.Side()},
			{"advance", r.advance, tube.Advance().Surd()},
			{"cut", r.cutLength, tube.CutLength()},
			{"stub", r.stub, tube.Stub().Surd()},
		} {
			if got := c.got.Decimal(measure.In, 6); got != c.want {
				t.Errorf("%v: %s is %s in, want %s in", r, c.what, got, c.want)
			}
		}
	}
}

func TestTubeYield(t *testing.T) {
	for _, r := range rows() {
		tube := tubeOf(r.n, quarter, r.raw)
		for _, c := range []struct {
			length        measure.Length
			corners, ears int64
		}{{40, r.corners40, r.ears40}, {42, r.corners42, r.ears42}, {44, r.corner44, r.ears44}} {
			if got := tube.Yield(c.length*inch, false); got != c.corners {
				t.Errorf("%v, %d in, corners only: %d, want %d", r, c.length, got, c.corners)
			}
			if got := tube.Yield(c.length*inch, true); got != c.ears {
				t.Errorf("%v, %d in, ears kept: %d, want %d", r, c.length, got, c.ears)
			}
		}
	}
}

// The length that n squares need is the limit: a tick less gives one square
// less. So every boundary is tried on both sides.
func TestTubeYieldBoundary(t *testing.T) {
	for _, r := range rows() {
		tube := tubeOf(r.n, quarter, r.raw)
		for _, ears := range []bool{false, true} {
			for n := int64(1); n <= 12; n++ {
				l := tube.LengthFor(n, ears)
				if at, below := tube.Yield(l, ears), tube.Yield(l-tick, ears); at != n || below != n-1 {
					t.Errorf("%v, ears kept %v: %v gives %d and a tick less %d, want %d and %d",
						r, ears, l.Format(measure.In), at, below, n, n-1)
				}
			}
		}
	}
}

// The everyday case: six squares from the tube of a 2 1/2-inch strip roll
// need 42 in of strip with the tip at the far seam, 42 1/2 in with the ears
// kept, and with the tip on the raw edge it is five from 38 1/2 in up to, not
// including, 45 in. Strips sold as 42 in often give 41 1/2 (common practice,
// no source), and that is five.
func TestTubeOfStripRoll(t *testing.T) {
	far, raw := tubeOf(3, quarter, false), tubeOf(3, quarter, true)
	for _, c := range []struct {
		tube   piecing.Tube
		length string
		ears   bool
		want   int64
	}{
		{far, "36", false, 5},
		{far, "41 1/2", false, 5},
		{far, "42", false, 6},
		{far, "42", true, 5},
		{far, "42 1/2", true, 6},
		{raw, "38 1/2", false, 5},
		{raw, "38 31/64", false, 4},
		{raw, "44 63/64", false, 5},
		{raw, "45", false, 6},
		{far, "11 63/64", false, 0},
		{far, "12", false, 1},
		{far, "12", true, 0},
		{far, "12 1/2", true, 1},
	} {
		if got := c.tube.Yield(length(t, c.length), c.ears); got != c.want {
			t.Errorf("T %v, tip %v beyond, strips of %s in, ears kept %v: %d squares, want %d",
				c.tube.Width.Format(measure.In), c.tube.Beyond.Format(measure.In), c.length, c.ears, got, c.want)
		}
	}
}

// With e = 0 the corner rule is floor(L / (T-2s)) - 1, with e = s the ears
// rule is floor(L / T) - 1: half a triangle is lost at each end.
func TestTubeFirstCutWaste(t *testing.T) {
	for n := 2; n <= 4; n++ {
		far, raw := tubeOf(n, quarter, false), tubeOf(n, quarter, true)
		for l := 2 * far.Width; l < 90*inch; l += inch / 16 {
			if got, want := far.Yield(l, false), int64(l/(far.Width-2*quarter))-1; got != want {
				t.Fatalf("n=%d, %v, far seam: %d, want %d", n, l.Format(measure.In), got, want)
			}
			if got, want := raw.Yield(l, true), int64(l/raw.Width)-1; got != want {
				t.Fatalf("n=%d, %v, raw edge: %d, want %d", n, l.Format(measure.In), got, want)
			}
		}
	}
}

// Sets of three 2 1/2-inch strips by the width that a four-thread overlock
// seam takes. Derived from geometry; the widths are typed by hand, as ISO 4915
// gives the class (514) and no width.
func TestTubeOfOverlockedSets(t *testing.T) {
	for _, c := range []struct {
		seam        string
		width, side string
	}{
		{"6 mm", "6.555118", "8.602205"},
		{"1/4", "6.500000", "8.485281"},
		{"7 mm", "6.397638", "8.268138"},
		{"3/8", "6.000000", "7.424621"},
	} {
		tube := tubeOf(3, length(t, c.seam), false)
		if got := tube.Width.Surd().Decimal(measure.In, 6); got != c.width {
			t.Errorf("seam %s: T %s in, want %s in", c.seam, got, c.width)
		}
		if got := tube.Side().Decimal(measure.In, 6); got != c.side {
			t.Errorf("seam %s: side %s in, want %s in", c.seam, got, c.side)
		}
	}
}

// 8 1/2 in is more than the tube square gives, by less than 1/64 in, and no
// rounding may hide that; 8 3/8 in is less.
func TestTubeSideAgainstTrim(t *testing.T) {
	side := tubeOf(3, quarter, false).Side()
	if length(t, "8 1/2").Surd().Cmp(side) <= 0 {
		t.Error("8 1/2 in does not exceed the square")
	}
	if length(t, "8 31/64").Surd().Cmp(side) >= 0 {
		t.Error("8 31/64 in exceeds the square")
	}
	if got := side.FloorTo(inch / 8); got != length(t, "8 3/8") {
		t.Errorf("trims down to %v, want 8 3/8 in", got.Format(measure.In))
	}
}

// A tube whose seams eat it, or of no width, gives nothing rather than
// dividing by zero.
func TestTubeOfNothing(t *testing.T) {
	for _, tube := range []piecing.Tube{
		{}, {Width: 2 * quarter, Seam: quarter}, {Width: quarter, Seam: quarter},
		{Width: inch, Seam: quarter, Beyond: -inch},
	} {
		if got := tube.Yield(40*inch, false); got != 0 {
			t.Errorf("%+v gives %d squares", tube, got)
		}
	}
	if got := tubeOf(3, quarter, false).LengthFor(0, true); got != 0 {
		t.Errorf("no squares need %d", got)
	}
}

func TestOrientations(t *testing.T) {
	for _, c := range []struct{ n, first, second int64 }{{0, 0, 0}, {1, 1, 0}, {5, 3, 2}, {6, 3, 3}} {
		if first, second := piecing.Orientations(c.n); first != c.first || second != c.second {
			t.Errorf("%d squares: %d and %d, want %d and %d", c.n, first, second, c.first, c.second)
		}
	}
}

// Near and far squares of tubes counted one by one: every number of tubes begun
// either way is tried, and the fewest tubes of which some choice gives enough of
// both kinds, and enough in all, is what the formula says. Derived from geometry.
func TestTubesForKindsByCounting(t *testing.T) {
	for each := int64(1); each <= 7; each++ {
		for near := int64(0); near <= 14; near++ {
			for far := int64(0); far <= 14; far++ {
				for free := int64(0); free <= 5; free++ {
					want := countTubes(near, far, free, each)
					if got := piecing.TubesFor(near, far, free, each); got != want {
						t.Fatalf("%d near, %d far, %d free at %d a tube: %d tubes, counted %d", near, far, free, each, got, want)
					}
					first, ok := piecing.Starts(want, near, far, each)
					if gives := giveTubes(want, first, each); !ok || first < 0 || first > want || gives[0] < near || gives[1] < far {
						t.Fatalf("%d near, %d far at %d a tube: %d of %d tubes begun near give %v", near, far, each, first, want, gives)
					}
					if max(near, far) == 0 || want == 0 {
						continue
					}
					if _, ok := piecing.Starts(countTubes(near, far, 0, each)-1, near, far, each); ok && free == 0 && near+far > (want-1)*each {
						t.Fatalf("%d near, %d far at %d a tube: a tube less is said to do", near, far, each)
					}
				}
			}
		}
	}
	if got := piecing.TubesFor(3, 2, 0, 0); got != 0 {
		t.Errorf("tubes that give nothing: %d", got)
	}
}

// giveTubes cuts tubes square by square, the first so many begun with a near one.
func giveTubes(tubes, beginNear, each int64) (kinds [2]int64) {
	for tube := range tubes {
		for square := range each {
			kind := square % 2
			if tube >= beginNear {
				kind = 1 - kind
			}
			kinds[kind]++
		}
	}
	return kinds
}

// countTubes tries one tube more until some choice does.
func countTubes(near, far, free, each int64) int64 {
	for tubes := int64(0); ; tubes++ {
		for begin := range tubes + 1 {
			kinds := giveTubes(tubes, begin, each)
			if kinds[0] >= near && kinds[1] >= far && kinds[0]-near+kinds[1]-far >= free {
				return tubes
			}
		}
	}
}

// Works that show the same fabrics look alike however they are pieced; one patch
// of another fabric, or another size, tells them apart.
func TestLooksLike(t *testing.T) {
	whole := piecing.Plain(box(4*inch, 2*inch), 1)
	halves := piecing.SewRows([][]piecing.Patchwork{{piecing.Plain(box(9*inch/4, 2*inch), 1), piecing.Plain(box(9*inch/4, 2*inch), 1)}}, quarter)
	flipped := whole.Flip(piecing.TopLeft, inch.Surd(), 2)
	for _, c := range []struct {
		what string
		a, b piecing.Patchwork
		want bool
	}{
		{"one piece and two", whole, halves, true}, {"itself turned", flipped.Turned(2), flipped, false}, {"a corner", whole, flipped, false},
		{"another size", whole, piecing.Plain(box(4*inch, 2*inch+tick), 1), false}, {"turned about", flipped.Turned(2).Turned(2), flipped, true},
	} {
		if got := c.a.LooksLike(c.b); got != c.want {
			t.Errorf("%s: %v", c.what, got)
		}
	}
}
