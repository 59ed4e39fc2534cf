package piecing_test

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// allowance checks in floats that a cut polygon is the finished one with the
// seam round it: beyond every edge of the finished polygon the cut one reaches
// by the seam along a whole edge, and nowhere less. blunt edges of the cut
// polygon belong to no finished edge.
func allowance(t *testing.T, what string, cut, finished []geom.XY, seam float64) {
	t.Helper()
	for i, a := range finished {
		along := finished[(i+1)%len(finished)].Sub(a)
		reach, corners := math.Inf(-1), 0
		for _, c := range cut {
			reach = math.Max(reach, -along.Cross(c.Sub(a))/along.Length())
		}
		for _, c := range cut {
			if math.Abs(-along.Cross(c.Sub(a))/along.Length()-reach) < near {
				corners++
			}
		}
		if math.Abs(reach-seam) > near || corners < 2 {
			t.Errorf("%s, edge %d: %g beyond at %d corners, want %g at two", what, i, reach, corners, seam)
		}
	}
}

func corners(p piecing.Polygon) []geom.XY {
	var out []geom.XY
	for _, c := range p {
		out = append(out, geom.XY{X: c.X.Float(measure.In), Y: c.Y.Float(measure.In)})
	}
	return out
}

// Cut shapes against finished ones drawn here in floats from the finished
// size alone.
func TestShapesHaveTheirSeam(t *testing.T) {
	const h, s = 6.0, 0.25
	root3 := math.Sqrt(3)
	for _, blunt := range []bool{false, true} {
		tri := triangle(6*inch, blunt)
		strip, base := tri.Strip().Float(measure.In), tri.CutSide().Float(measure.In)
		half := h / root3
		finished := []geom.XY{{X: base / 2, Y: strip - s - h}, {X: base/2 + half, Y: strip - s}, {X: base/2 - half, Y: strip - s}}
		allowance(t, "triangle", corners(tri.Outline()), finished, s)
		_, along := tri.HalfLegs()
		right := along.Float(measure.In) - s
		ends := []geom.XY{{X: right - half, Y: s}, {X: right, Y: s}, {X: right, Y: s + h}}
		allowance(t, "half triangle", corners(tri.HalfOutline()), ends, s)
		if _, size := tri.HalfOutline().Bounds(); !size.Height.Equal(tri.Strip()) {
			t.Errorf("half triangle %v high in a strip of %v", size.Height, tri.Strip())
		}
	}
	hex := piecing.Hexagon{Side: (2 * inch).Surd(), Seam: quarter}
	middle := geom.XY{X: hex.CutSide().Float(measure.In), Y: hex.Strip().Float(measure.In) / 2}
	var ring []geom.XY
	for i := range 6 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 3)
		ring = append(ring, middle.Add(geom.XY{X: 2 * cos, Y: 2 * sin}))
	}
	allowance(t, "hexagon", corners(hex.Outline()), ring, s)
	for _, a := range []piecing.Angle{piecing.Degrees45, piecing.Degrees60} {
		diamond := diamond((3 * inch).Surd(), quarter, a)
		sin, cos := math.Sincos(float64(a) * math.Pi / 180)
		// The lower left corner lies s above the edge and s from the slanted
		// side: along the edge (s + s*cos)/sin from the cut corner.
		low := geom.XY{X: (s + s*cos) / sin, Y: diamond.Strip.Float(measure.In) - s}
		up := geom.XY{X: 3 * cos, Y: -3 * sin}
		level := geom.XY{X: 3}
		finished := []geom.XY{low.Add(up), low.Add(up).Add(level), low.Add(level), low}
		allowance(t, "diamond", corners(diamond.Outline()), finished, s)
	}
}

// Inset gives the finished shape of every cut one, exactly: its area is the
// finished area. Derived from geometry.
func TestInsetShapes(t *testing.T) {
	root3 := measure.Root3()
	sq := func(l measure.Length) measure.Surd { return measure.Area(l.Surd(), l.Surd()) }
	hex := piecing.Hexagon{Side: (2 * inch).Surd(), Seam: quarter}
	for _, c := range []struct {
		what    string
		outline piecing.Polygon
		corners int
		area    measure.Surd
	}{
		{"triangle", triangle(6*inch, false).Outline(), 3, sq(6 * inch).Div(root3)},
		{"blunted triangle", triangle(6*inch, true).Outline(), 3, sq(6 * inch).Div(root3)},
		{"half triangle", triangle(6*inch, false).HalfOutline(), 3, sq(6 * inch).Div(root3).DivInt(2)},
		{"half of a blunted one", triangle(6*inch, true).HalfOutline(), 3, sq(6 * inch).Div(root3).DivInt(2)},
		{"hexagon", hex.Outline(), 6, sq(2 * inch).Mul(root3).MulInt(3).DivInt(2)},
		{"45 diamond", diamond((3 * inch).Surd(), quarter, piecing.Degrees45).Outline(), 4, sq(3 * inch).Div(measure.Root2())},
		{"60 diamond", diamond((3 * inch).Surd(), quarter, piecing.Degrees60).Outline(), 4, sq(3 * inch).Mul(root3).DivInt(2)},
	} {
		inner, ok := c.outline.Inset(quarter)
		if !ok || len(inner) != c.corners {
			t.Errorf("%s: %d corners, %v", c.what, len(inner), ok)
		}
		if got := inner.Area(); !got.Equal(c.area) {
			t.Errorf("%s: %s, want %s", c.what, measure.FormatArea(got, measure.In), measure.FormatArea(c.area, measure.In))
		}
	}
	if _, ok := piecing.Rectangle(piecing.Point{}, box(inch/2, 4*inch)).Inset(quarter); ok {
		t.Error("a piece no wider than its seams finishes")
	}
	if _, ok := (piecing.Polygon{{}, {X: (2 * inch).Surd()}, {X: (2 * inch).Surd(), Y: inch.Surd()}}).Inset(tick); ok {
		t.Error("an edge in no direction of the trade is inset")
	}
}

// Pieces placed side by side along a strip lie inside it, do not overlap and
// are as many as the count says; one more reaches over the end.
func TestShapesAlongTheStrip(t *testing.T) {
	const l = 40 * inch
	hex := piecing.Hexagon{Side: (2 * inch).Surd(), Seam: quarter}
	for _, c := range []struct {
		what           string
		outline        piecing.Polygon
		strip, advance measure.Surd
		count          int64
		flips          bool
	}{
		{"triangle", triangle(6*inch, false).Outline(), triangle(6*inch, false).Strip(), triangle(6*inch, false).Advance(), 9, true},
		{"blunted", triangle(6*inch, true).Outline(), triangle(6*inch, true).Strip(), triangle(6*inch, true).Advance(), 8, true},
		{"hexagon", hex.Outline(), hex.Strip(), hex.Advance(), hex.PerStrip(l), false},
		{"diamond", diamond45().Outline(), diamond45().Strip, diamond45().Advance(), diamond45().PerStrip(l), false},
	} {
		var placed []geom.Geometry
		for n := range c.count + 1 {
			w := piecing.Patchwork{Outline: c.outline}
			if c.flips && n%2 == 1 {
				w = w.Turned(2)
			}
			placed = append(placed, drawn(w.Moved(piecing.Point{X: c.advance.MulInt(n)}).Outline))
		}
		strip := rectangle(inches(l), c.strip.Float(measure.In))
		whole := joined(t, placed[:c.count]...)
		if out := whole.Area() - overlap(t, whole, strip); out > touching {
			t.Errorf("%s: %g sq in outside the strip", c.what, out)
		}
		last := placed[c.count]
		if last.Area()-overlap(t, last, strip) < touching {
			t.Errorf("%s: one more than %d fits", c.what, c.count)
		}
	}
}

// A row with its seam allowance fills its rectangle, and shows the finished row
// once it is sewn on all round, piece by piece; also where the triangles are so
// small that a seam runs over several of them.
func TestSewnTriangleRowFinishes(t *testing.T) {
	for _, height := range []measure.Length{6 * inch, quarter, quarter / 2} {
		for m := range 8 {
			finishes(t, triangle(height, m%2 == 0), m)
		}
	}
}

func finishes(t *testing.T, tri piecing.Triangle60, m int) {
	t.Helper()
	sewn, want := piecing.SewTriangleRow(tri, m), piecing.DraftTriangleRow(tri, m)
	closes(t, "sewn row", sewn)
	both := (2 * tri.Seam).Surd()
	sized(t, "sewn row", sewn, piecing.Box{Width: tri.RowWidth(int64(m)).Add(both), Height: tri.Height.Add(both)})
	got, ok := sewn.Finished(tri.Seam)
	if !ok {
		t.Fatalf("row of %d: nothing left", m)
	}
	closes(t, "finished row", got)
	for _, p := range want.Patches {
		var shown measure.Surd
		for _, q := range got.Patches {
			if q.Fabric == p.Fabric {
				shown = shown.Add(q.Outline.Overlap(p.Outline).Area())
			}
		}
		if !shown.Equal(p.Outline.Area()) {
			t.Errorf("row of %d, piece %d does not lie where the finished row has it", m, p.Fabric)
		}
	}
}

func diamond45() piecing.Slant { return diamond((3 * inch).Surd(), quarter, piecing.Degrees45) }

// A finished row of triangles with half ones at its ends is a rectangle, filled
// exactly; whole triangles show h*side/2 each, the ends half of that.
func TestTriangleRowCloses(t *testing.T) {
	tri := triangle(6*inch, false)
	for _, m := range []int{1, 2, 7, 8} {
		row := piecing.DraftTriangleRow(tri, m)
		closes(t, "row", row)
		sized(t, "row", row, piecing.Box{Width: tri.RowWidth(int64(m)), Height: tri.Height})
		whole := tri.Side().Mul(tri.Height).DivInt(2)
		for i := range m + 2 {
			want := whole
			if i == 0 || i == m+1 {
				want = whole.DivInt(2)
			}
			if got := row.AreaOf(i); !got.Equal(want) {
				t.Errorf("row of %d, piece %d: %s", m, i, measure.FormatArea(got, measure.In))
			}
		}
	}
}

// Slanted segments and triangles cut from a strip set are filled with its
// bands, and the set holds as many as counted.
func TestCutFromStripSet(t *testing.T) {
	set := piecing.StripSet(same(3, roll), (40 * inch).Surd(), quarter)
	width := set.Size().Height
	for _, a := range []piecing.Angle{piecing.Degrees45, piecing.Degrees60} {
		c := piecing.Slant{Strip: width, Width: roll.Surd(), Angle: a}
		for n := range c.PerStrip(40 * inch) {
			segment := c.Segment(set, n)
			closes(t, "segment", segment)
			if len(segment.Patches) != 3 {
				t.Errorf("segment %d shows %d strips", n, len(segment.Patches))
			}
			if !segment.Outline.Area().Equal(c.Advance().Mul(width)) {
				t.Errorf("segment %d at %d degrees is not whole", n, a)
			}
		}
		if beyond := c.Segment(set, c.PerStrip(40*inch)); beyond.Outline.Area().Equal(c.Advance().Mul(width)) {
			t.Errorf("at %d degrees one more is whole", a)
		}
	}
	for _, blunt := range []bool{false, true} {
		tri := piecing.TriangleFromStrip(inch*13/2, quarter, blunt)
		for n := range tri.PerStrip(40 * inch) {
			cut := tri.CutTriangle(set, n)
			closes(t, "triangle", cut)
			if !cut.Outline.Area().Equal(tri.Outline().Area()) {
				t.Errorf("triangle %d is not whole", n)
			}
			finished, ok := cut.Finished(quarter)
			if !ok || !finished.Size().Width.Equal(tri.Side()) {
				t.Errorf("triangle %d finishes %v wide", n, finished.Size().Width)
			}
			// The base lies on one outer strip or the other.
			first, last := cut.AreaOf(0), cut.AreaOf(2)
			if (first.Cmp(last) > 0) != (n%2 == 1) {
				t.Errorf("triangle %d shows more of the wrong strip", n)
			}
		}
		if beyond := tri.CutTriangle(set, tri.PerStrip(40*inch)); beyond.Outline.Area().Equal(tri.Outline().Area()) {
			t.Error("one triangle more is whole")
		}
	}
}
