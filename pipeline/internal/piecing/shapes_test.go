package piecing_test

import (
	"testing"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

func triangle(h measure.Length, blunt bool) piecing.Triangle60 {
	return piecing.Triangle60{Height: h.Surd(), Seam: quarter, Blunt: blunt}
}

// h = 6 in: strip 6 3/4, side 6.928203, cut side 7.794229, nine from 40 in;
// blunted strip 6 1/2, eight from 40 in. Derived from geometry. The trade's
// 7/8 in on the side is 0.009 in over.
func TestTriangle60(t *testing.T) {
	pointed, blunt := triangle(6*inch, false), triangle(6*inch, true)
	wantSurd(t, "strip, pointed", pointed.Strip(), inch*27/4)
	wantSurd(t, "strip, blunted", blunt.Strip(), inch*13/2)
	decimals(t, "side", pointed.Side(), "6.928203")
	decimals(t, "cut side", pointed.CutSide(), "7.794229")
	decimals(t, "cut side, blunted", blunt.CutSide(), "7.794229")
	decimals(t, "tip", blunt.Tip(), "0.288675")
	add := pointed.CutSide().Sub(pointed.Side())
	decimals(t, "added to the side", add, "0.866025")
	decimals(t, "7/8 in over", (inch * 7 / 8).Surd().Sub(add), "0.009")
	if got := pointed.PerStrip(40 * inch); got != 9 {
		t.Errorf("pointed: %d", got)
	}
	if got := blunt.PerStrip(40 * inch); got != 8 {
		t.Errorf("blunted: %d", got)
	}
}

// n triangles take the waste and n advances, exactly: a tick less is one
// fewer. Pointed, that is floor(2L/P) - 1.
func TestTriangle60Limits(t *testing.T) {
	for _, blunt := range []bool{false, true} {
		tri := triangle(6*inch, blunt)
		for n := int64(1); n < 14; n++ {
			need := tri.Waste().Add(tri.Advance().MulInt(n))
			limit(t, "triangles", tri.PerStrip, need, n)
		}
		for _, l := range []measure.Length{0, inch, tri.CutSide().FloorTo(tick)} {
			if got := tri.PerStrip(l); got != 0 {
				t.Errorf("%v: %d triangles", l.Format(measure.In), got)
			}
		}
	}
	tri := triangle(6*inch, false)
	for l := 8 * inch; l < 100*inch; l += inch / 4 {
		want := measure.FloorDiv(l.Surd().MulInt(2), tri.CutSide()) - 1
		if got := tri.PerStrip(l); got != want {
			t.Fatalf("%v: %d, want %d", l.Format(measure.In), got, want)
		}
	}
}

// limit checks a count at the length that n pieces need and a tick below.
func limit(t *testing.T, what string, count func(measure.Length) int64, need measure.Surd, n int64) {
	t.Helper()
	if got := count(need.CeilTo(tick)); got != n {
		t.Errorf("%s: %d from %v, want %d", what, got, need, n)
	}
	if got := count(need.CeilTo(tick) - tick); got != n-1 {
		t.Errorf("%s: %d from a tick less than %v, want %d", what, got, need, n-1)
	}
}

// A strip set gives the triangle whose strip is as high as the set is wide.
func TestTriangleFromStrip(t *testing.T) {
	set := setWidth(same(3, roll), quarter)
	for _, blunt := range []bool{false, true} {
		wantSurd(t, "strip", piecing.TriangleFromStrip(set, quarter, blunt).Strip(), set)
	}
	wantSurd(t, "h", piecing.TriangleFromStrip(inch*27/4, quarter, false).Height, 6*inch)
}

// A row of m triangles and two half ones is (m+1) half sides wide, and the
// half ones' cut legs are h + (3+sqrt3)s and h/sqrt3 + (1+sqrt3)s, in the ratio
// sqrt3 of a 30-60-90 triangle. Derived from geometry.
func TestTriangleRowEnds(t *testing.T) {
	tri := triangle(6*inch, false)
	if w := tri.RowWidth(7); !w.Equal(tri.Side().MulInt(4)) {
		t.Errorf("row of 7: %v", w)
	}
	upright, along := tri.HalfLegs()
	decimals(t, "upright", upright, "7.183013")
	decimals(t, "along", along, "4.147114")
	if !upright.Equal(along.Mul(measure.Root3())) {
		t.Error("no 30-60-90 triangle")
	}
	// A triangle cut in half would have a leg of half the cut side.
	if along.Cmp(tri.CutSide().DivInt(2)) <= 0 {
		t.Error("half of a cut triangle would do")
	}
}

// A hexagon of finished side a: cut side a + 2s/sqrt3, strip sqrt3*a + 2s, one
// every two cut sides. Derived from geometry.
func TestHexagon(t *testing.T) {
	h := piecing.Hexagon{Side: (2 * inch).Surd(), Seam: quarter}
	decimals(t, "cut side", h.CutSide(), "2.288675")
	decimals(t, "strip", h.Strip(), "3.964102")
	if !h.Strip().Equal(h.CutSide().Mul(measure.Root3())) {
		t.Error("the strip is not sqrt3 cut sides high")
	}
	if got := h.PerStrip(40 * inch); got != 8 {
		t.Errorf("%d from 40 in", got)
	}
	for n := int64(1); n < 12; n++ {
		limit(t, "hexagons", h.PerStrip, h.Advance().MulInt(n), n)
	}
}

// Diamonds of finished side d: strip d*sqrt3/2 + 2s, advance d + 4s/sqrt3 and
// waste strip/sqrt3 at 60 degrees; d/sqrt2 + 2s, d + 2 sqrt2*s and the strip's
// height at 45. Derived from geometry.
func TestDiamonds(t *testing.T) {
	const d = 3 * inch
	s := quarter.Surd()
	sixty := diamond(d.Surd(), quarter, piecing.Degrees60)
	fortyFive := diamond(d.Surd(), quarter, piecing.Degrees45)
	for _, c := range []struct {
		what      string
		got, want measure.Surd
	}{
		{"60 strip", sixty.Strip, d.Surd().Mul(measure.Root3()).DivInt(2).Add(s.MulInt(2))},
		{"60 advance", sixty.Advance(), d.Surd().Add(s.MulInt(4).Div(measure.Root3()))},
		{"60 waste", sixty.Waste(), sixty.Strip.Div(measure.Root3())},
		{"45 strip", fortyFive.Strip, d.Surd().Div(measure.Root2()).Add(s.MulInt(2))},
		{"45 advance", fortyFive.Advance(), d.Surd().Add(s.MulInt(2).Mul(measure.Root2()))},
		{"45 waste", fortyFive.Waste(), fortyFive.Strip},
	} {
		if !c.got.Equal(c.want) {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
	for _, c := range []piecing.Slant{sixty, fortyFive} {
		for n := int64(1); n < 12; n++ {
			limit(t, "diamonds", c.PerStrip, c.LengthFor(n), n)
		}
		if !c.LengthFor(0).IsZero() || c.PerStrip(inch) != 0 {
			t.Error("something from nothing")
		}
	}
}

// Segments 2 1/2 in wide from a set of three 2 1/2 in strips, cut at 45
// degrees, stand 2.5*sqrt2 in apart, and 6 1/2 in are lost to the first cut.
// From 40 in: (40 - 6.5)/3.5355 is nine.
func TestSlantedSegments(t *testing.T) {
	c := piecing.Slant{Strip: (inch * 13 / 2).Surd(), Width: roll.Surd(), Angle: piecing.Degrees45}
	decimals(t, "advance", c.Advance(), "3.535534")
	wantSurd(t, "waste", c.Waste(), inch*13/2)
	if got := c.PerStrip(40 * inch); got != 9 {
		t.Errorf("%d segments", got)
	}
	// An angle that no ruler here carries gives nothing, not a division by zero.
	if got := (piecing.Slant{Strip: c.Strip, Width: c.Width, Angle: 50}).PerStrip(40 * inch); got != 0 {
		t.Errorf("50 degrees: %d", got)
	}
}

// One triangle takes as much of a strip as it is wide, whatever its tip; a
// hexagon reaches from point to point, twice its cut side. Derived from geometry.
func TestOnePieceOfAStrip(t *testing.T) {
	for _, blunt := range []bool{false, true} {
		tri := piecing.Triangle60{Height: (6 * inch).Surd(), Seam: quarter, Blunt: blunt}
		if !tri.LengthFor(1).Equal(tri.CutSide()) {
			t.Errorf("blunt %v: one takes %s, and is %s wide", blunt, tri.LengthFor(1).Format(measure.In), tri.CutSide().Format(measure.In))
		}
	}
	hexagon := piecing.Hexagon{Side: (2 * inch).Surd(), Seam: quarter}
	_, round := hexagon.Outline().Bounds()
	if !hexagon.Advance().Equal(round.Width) || !hexagon.Strip().Equal(round.Height) {
		t.Errorf("%s by %s, and the outline is %s by %s", hexagon.Advance().Format(measure.In), hexagon.Strip().Format(measure.In), round.Width.Format(measure.In), round.Height.Format(measure.In))
	}
}
