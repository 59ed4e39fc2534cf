package piecing

import (
	"testing"

	"yardproof/schema/measure"
)

// Half triangles lie head to tail in a strip: the outlines of many, placed so,
// lie inside the length that is said and do not overlap, and one more would
// not. Checked against the polygons.
func TestHalfTrianglesInAStrip(t *testing.T) {
	for _, tri := range []Triangle60{
		{(6 * measure.Inch).Surd(), measure.Inch / 4, false}, {(6 * measure.Inch).Surd(), measure.Inch / 4, true},
		{(2 * measure.Inch).Surd(), measure.Inch / 4, false}, {(10 * measure.Centimetre).Surd(), 3 * measure.Centimetre / 4, true},
	} {
		strip := Patchwork{Outline: Rectangle(Point{}, Box{tri.HalfLengthFor(7), tri.Strip()})}
		half := tri.HalfOutline()
		wide, narrow := tri.halfPair()
		for i := range int64(7) {
			at := wide.Add(narrow).MulInt(i / 2)
			piece := shape(half, 0).Turned(2).Outline // its right angle at the lower left: the straight edge first
			if i%2 == 1 {
				piece = half // and its right angle at the upper right
				at = at.Add(narrow)
			}
			strip.Patches = append(strip.Patches, Patch{0, piece.each(Point{X: at}.plus)})
		}
		// The first, third and so on end where the length for so many does.
		for i := int64(0); i < 7; i += 2 {
			corner, size := strip.Patches[i].Outline.Bounds()
			if end := corner.X.Add(size.Width); !end.Equal(tri.HalfLengthFor(i + 1)) {
				t.Errorf("half triangle %d of %v ends at %v", i, tri, end)
			}
		}
		if !tri.HalfLengthFor(0).IsZero() || !tri.LengthFor(0).IsZero() {
			t.Errorf("none of %v take a length", tri)
		}
		if !strip.apart() {
			t.Errorf("half triangles of %v overlap", tri)
		}
		for i, p := range strip.Patches {
			if !p.Outline.Overlap(strip.Outline).Area().Equal(p.Outline.Area()) {
				t.Errorf("half triangle %d of %v lies outside the strip", i, tri)
			}
		}
		for n := int64(1); n < 8; n++ {
			l := tri.HalfLengthFor(n).CeilTo(measure.Tick)
			if got := tri.HalfPerStrip(l); got != n {
				t.Errorf("%v: %d from the length for %d", tri, got, n)
			}
			if got := tri.HalfPerStrip(l - 1); got != n-1 {
				t.Errorf("%v: %d from a tick less than the length for %d", tri, got, n)
			}
		}
	}
}

// A tick less than the length for n triangles gives one fewer.
func TestTriangleLengths(t *testing.T) {
	for _, blunt := range []bool{false, true} {
		tri := Triangle60{(6 * measure.Inch).Surd(), measure.Inch / 4, blunt}
		for n := int64(1); n < 12; n++ {
			l := tri.LengthFor(n).CeilTo(measure.Tick)
			if tri.PerStrip(l) != n || tri.PerStrip(l-1) != n-1 {
				t.Errorf("blunt %v, %d: %d and a tick less %d", blunt, n, tri.PerStrip(l), tri.PerStrip(l-1))
			}
		}
	}
}
