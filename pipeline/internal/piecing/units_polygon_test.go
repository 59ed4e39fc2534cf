package piecing_test

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// union is what overlapping layers cover together: where one seam's allowance
// lies over another's, pieces of a unit do overlap.
func union(t testing.TB, pieces ...geom.Geometry) geom.Geometry {
	t.Helper()
	whole, err := geom.UnionMany(pieces)
	if err != nil {
		t.Fatal(err)
	}
	return whole
}

// fills checks that a polygon is the upright rectangle round it and gives
// its width and height.
func fills(t testing.TB, g geom.Geometry) (width, height float64) {
	t.Helper()
	low, high, _ := g.Envelope().MinMaxXYs()
	size := high.Sub(low)
	if math.Abs(size.X*size.Y-g.Area()) > touching {
		t.Errorf("no rectangle: %g sq in of %g by %g", g.Area(), size.X, size.Y)
	}
	return size.X, size.Y
}

// sky lays the half of a small square on the goose, its sharp corner on the
// left end of the base and its long side on the goose's left leg, sews it and
// opens it. Y goes up.
func sky(t testing.TB, small, seam float64) geom.Geometry {
	laid := polygon(geom.XY{}, geom.XY{X: small}, geom.XY{X: small, Y: small})
	in := geom.XY{X: seam * math.Sqrt2}
	far := in.Add(geom.XY{X: small, Y: small})
	kept := intersection(t, laid, polygon(in, geom.XY{X: 2 * small}, far))
	return reflect(kept, in, far)
}

// Flying geese four at a time against polygons: a quarter of the large square
// with both its skies sewn and opened.
func TestFourGeeseAgainstPolygons(t *testing.T) {
	for _, s := range []measure.Length{quarter, inch * 3 / 8, 6 * mm} {
		for h := inch; h < 6*inch; h += inch * 3 / 4 {
			u := piecing.Box{Width: (2*h + 2*s).Surd(), Height: (h + 2*s).Surd()}
			g, ok := piecing.FourGeese(u, s, eighth, piecing.Up)
			if !ok {
				t.Fatalf("%v is no goose", h)
			}
			large, small, seam := inches(g.Large.Cut), inches(g.Small.Cut), inches(s)
			ends := seam * math.Sqrt2
			goose := polygon(geom.XY{X: ends}, geom.XY{X: large - ends}, geom.XY{X: large / 2, Y: large/2 - ends})
			left := sky(t, small, seam)
			right := reflect(left, geom.XY{X: large / 2}, geom.XY{X: large / 2, Y: 1})
			width, height := fills(t, union(t, goose, left, right))
			unit := piecing.Geese4Unit(g.Large.Cut, g.Small.Cut, s)
			agree(t, "width", unit.Width, width)
			agree(t, "height", unit.Height, height)
			agree(t, "point", piecing.GoosePoint(g.Large.Cut, g.Small.Cut), height-(large/2-ends))
		}
	}
}

// Stitch and flip against polygons: a square sewn on its diagonal and turned
// back lies on its own corner again, and what is cut off beyond the seam makes
// the bonus unit.
func TestFlipAgainstPolygons(t *testing.T) {
	for _, s := range []measure.Length{quarter, inch * 3 / 8, 6 * mm} {
		for k := inch; k < 5*inch; k += inch * 5 / 8 {
			q := piecing.FlipSquare(k, s)
			side, seam := inches(q), inches(s)
			low, high := geom.XY{Y: side}, geom.XY{X: side} // the diagonal it is sewn on
			inner := polygon(geom.XY{X: side, Y: side}, low, high)
			corner := polygon(geom.XY{}, low, high)
			back := reflect(inner, low, high)
			if math.Abs(overlap(t, back, corner)-corner.Area()) > touching {
				t.Errorf("%v: turned back it does not cover the corner", k.Format(measure.In))
			}
			// Trimmed a seam beyond the stitching.
			reach := side - seam*math.Sqrt2
			waste := intersection(t, corner, polygon(geom.XY{}, geom.XY{X: reach}, geom.XY{Y: reach}))
			left, right := extent(waste)
			if reach > 2*seam {
				agree(t, "bonus", piecing.BonusUnit(q, s), squareSide(t, openedTriangle(t, right-left, seam)))
			}
		}
	}
}

// A square in a square against polygons: four cut triangles centred on the
// centre's sides, sewn and opened.
func TestSquareInSquareAgainstPolygons(t *testing.T) {
	for _, s := range []measure.Length{quarter, 6 * mm} {
		for f := 3 * inch; f < 13*inch; f += inch * 5 / 4 {
			cuts := piecing.SquareInSquareFit((f + 2*s).Surd(), s, eighth, piecing.Nearest, piecing.Up)
			centre, leg, seam := inches(cuts.Centre.Cut), inches(cuts.Corner.Cut), inches(s)
			edge := centre / 2
			long := leg / math.Sqrt2 // half the long side, and the height
			laid := polygon(geom.XY{X: -long, Y: edge}, geom.XY{X: long, Y: edge}, geom.XY{Y: edge - long})
			below := polygon(geom.XY{X: -long, Y: edge - seam}, geom.XY{X: long, Y: edge - seam},
				geom.XY{X: long, Y: edge - long}, geom.XY{X: -long, Y: edge - long})
			opened := reflect(intersection(t, laid, below), geom.XY{Y: edge - seam}, geom.XY{X: 1, Y: edge - seam})
			pieces := []geom.Geometry{rectangle(centre-2*seam, centre-2*seam).TransformXY(func(p geom.XY) geom.XY {
				return p.Sub(geom.XY{X: edge - seam, Y: edge - seam})
			})}
			for range 4 {
				pieces = append(pieces, opened)
				opened = opened.TransformXY(func(p geom.XY) geom.XY { return geom.XY{X: -p.Y, Y: p.X} })
			}
			side := squareSide(t, union(t, pieces...))
			unit := squareInSquareUnit(cuts.Centre.Cut, cuts.Corner.Cut, s)
			agree(t, "unit", unit, side)
			// The points of the finished centre lie on the unit's middle lines.
			point := side/2 - (edge-seam)*math.Sqrt2
			agree(t, "point", piecing.SquareInSquarePoint(unit, cuts.Centre.Cut, s), point)
		}
	}
}

// An hourglass is a half-square unit of the larger unit, cut and sewn again.
func TestHourglassAgainstPolygons(t *testing.T) {
	for c := 3 * inch; c < 9*inch; c += inch * 5 / 8 {
		u := quarterSquareUnit(c, quarter)
		half := squareSide(t, openedTriangle(t, inches(c), inches(quarter)))
		agree(t, "half", piecing.HourglassHalf(u, quarter), half)
		agree(t, "hourglass", u, squareSide(t, openedTriangle(t, half, inches(quarter))))
	}
}
