package piecing_test

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"yardproof/schema/measure"
)

// The polygons of these tests are in inches, in floats: they are the check
// from outside, and their tolerance is far below a tick (5e-6 in).
const (
	touching = 1e-7 // area, square inches, that two polygons side by side may share
	near     = 1e-6 // inches
)

func inches(l measure.Length) float64 { return l.Surd().Float(measure.In) }

func polygon(corners ...geom.XY) geom.Geometry {
	var flat []float64
	for _, c := range append(corners, corners[0]) {
		flat = append(flat, c.X, c.Y)
	}
	ring := geom.NewLineString(geom.NewSequence(flat, geom.DimXY))
	return geom.NewPolygon([]geom.LineString{ring}).AsGeometry()
}

func rectangle(width, height float64) geom.Geometry {
	return polygon(geom.XY{}, geom.XY{X: width}, geom.XY{X: width, Y: height}, geom.XY{Y: height})
}

func overlap(t testing.TB, a, b geom.Geometry) float64 {
	t.Helper()
	shared, err := geom.Intersection(a, b)
	if err != nil {
		t.Fatal(err)
	}
	return shared.Area()
}

func intersection(t testing.TB, a, b geom.Geometry) geom.Geometry {
	t.Helper()
	shared, err := geom.Intersection(a, b)
	if err != nil {
		t.Fatal(err)
	}
	return shared
}

// joined is what polygons make when sewn: they may touch, not overlap.
func joined(t testing.TB, pieces ...geom.Geometry) geom.Geometry {
	t.Helper()
	area := 0.0
	for _, p := range pieces {
		area += p.Area()
	}
	whole, err := geom.UnionMany(pieces)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(whole.Area()-area) > touching {
		t.Errorf("the pieces overlap: %g sq in together, %g apart", whole.Area(), area)
	}
	return whole
}

// reflect mirrors a polygon in the line through a and b: what opening a unit
// along a seam does to the half that is turned over.
func reflect(g geom.Geometry, a, b geom.XY) geom.Geometry {
	d := b.Sub(a)
	return g.TransformXY(func(p geom.XY) geom.XY {
		along := p.Sub(a).Dot(d) / d.Dot(d)
		foot := a.Add(d.Scale(along))
		return foot.Scale(2).Sub(p)
	})
}

// squareSide checks that a polygon is a square and gives its side.
func squareSide(t testing.TB, g geom.Geometry) float64 {
	t.Helper()
	var corners []geom.XY
	ring := g.MustAsPolygon().ExteriorRing().Coordinates()
	n := ring.Length() - 1 // the last repeats the first
	for i := range n {
		before, here, after := ring.GetXY((i+n-1)%n), ring.GetXY(i), ring.GetXY((i+1)%n)
		if math.Abs(before.Sub(here).Cross(after.Sub(here))) > near {
			corners = append(corners, here)
		}
	}
	if len(corners) != 4 {
		t.Fatalf("%d corners", len(corners))
	}
	side := corners[1].Sub(corners[0])
	for i := range corners {
		next := corners[(i+1)%4].Sub(corners[i])
		after := corners[(i+2)%4].Sub(corners[(i+1)%4])
		if math.Abs(next.Length()-side.Length()) > near || math.Abs(next.Dot(after)) > near {
			t.Fatalf("no square: corners %v", corners)
		}
	}
	return side.Length()
}

func agree(t testing.TB, what string, formula measure.Surd, drawn float64) {
	t.Helper()
	if got := formula.Float(measure.In); math.Abs(got-drawn) > near {
		t.Errorf("%s: the formula gives %.7f in, the polygons %.7f in", what, got, drawn)
	}
}
