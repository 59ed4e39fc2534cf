package piecing_test

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// beyondSeam is what of a right triangle of a height, its long side on the y axis
// and its middle at y, lies beyond a seam at s.
func beyondSeam(t testing.TB, g geom.Geometry, s float64) geom.Geometry {
	low, high, _ := g.Envelope().MinMaxXYs()
	return intersection(t, g, rectangle(high.X-s, high.Y-low.Y).TransformXY(func(p geom.XY) geom.XY {
		return p.Add(geom.XY{X: s, Y: low.Y})
	}))
}

// A three-patch unit against polygons: two quarters of a square are sewn along a
// short side and opened, their long side is sewn to that of half of another, and that
// is opened. Each side of the diagonal then measures what its square gives.
func TestThreePatchAgainstPolygons(t *testing.T) {
	for _, s := range []measure.Length{quarter, inch * 3 / 8, 6 * mm} {
		for f := 2 * inch; f < 9*inch; f += inch * 5 / 8 {
			fit := piecing.ThreePatchFit((f + 2*s).Surd(), s, eighth, piecing.Up)
			half, square, seam := inches(fit.Half.Cut), inches(fit.Quarter.Cut), inches(s)

			leg := square / math.Sqrt2
			one := beyondSeam(t, polygon(geom.XY{}, geom.XY{X: leg}, geom.XY{Y: leg}), seam)
			pair := joined(t, one, reflect(one, geom.XY{X: seam}, geom.XY{X: seam, Y: 1}))
			// Its long side lies on the x axis; turned onto the y axis.
			pair = beyondSeam(t, pair.TransformXY(func(p geom.XY) geom.XY { return geom.XY{X: p.Y, Y: -p.X} }), seam)
			edge := half / math.Sqrt2
			large := beyondSeam(t, polygon(geom.XY{Y: -edge}, geom.XY{X: edge}, geom.XY{Y: edge}), seam)

			mirrored := func(g geom.Geometry) geom.Geometry { return reflect(g, geom.XY{X: seam}, geom.XY{X: seam, Y: 1}) }
			quarters, halves := squareSide(t, joined(t, pair, mirrored(pair))), squareSide(t, joined(t, large, mirrored(large)))
			agree(t, "quarters", quarterSquareUnit(fit.Quarter.Cut, s), quarters)
			agree(t, "half", halfSquareUnit(fit.Half.Cut, s, 2), halves)
			agree(t, "unit", threePatchUnit(fit.Half.Cut, fit.Quarter.Cut, s), min(quarters, halves))
			if least := inches(f + 2*s); min(quarters, halves) < least {
				t.Errorf("%v: cut up to the ruler's lines the unit is %g in, less than %g", f, min(quarters, halves), least)
			}
		}
	}
}

// The trade adds 7/8 in for the half and 1 1/4 in for the quarters (widely published,
// no authority); the exact cuts are f + (2 + sqrt2)/4 and f + (2 + 2 sqrt2)/4.
func TestThreePatchFit(t *testing.T) {
	fit := piecing.ThreePatchFit(unfinished(6*inch), quarter, eighth, piecing.Up)
	if fit.Half.Cut != inch*55/8 || fit.Quarter.Cut != inch*29/4 {
		t.Errorf("half %s, quarter %s", fit.Half.Cut.Format(measure.In), fit.Quarter.Cut.Format(measure.In))
	}
	if h, q := fit.Half.Exact.Decimal(measure.In, 6), fit.Quarter.Exact.Decimal(measure.In, 6); h != "6.853553" || q != "7.207107" {
		t.Errorf("half %s, quarter %s exactly", h, q)
	}
	// Exchanged, the quarters decide: 6.875 - sqrt2/2.
	if got := threePatchUnit(fit.Quarter.Cut, fit.Half.Cut, quarter).Decimal(measure.In, 6); got != "6.167893" {
		t.Errorf("exchanged: %s", got)
	}
}

// Half of the finished unit is the first fabric and a quarter each of the others,
// the first of which lies clockwise before the second: at the right.
func TestDraftThreePatch(t *testing.T) {
	w, ok := piecing.DraftThreePatch(unfinished(4 * inch)).Finished(quarter)
	if !ok || len(w.Patches) != 3 {
		t.Fatal(w, ok)
	}
	for i, want := range []struct{ area, x, y float64 }{{8, 0.5, 0.5}, {4, 3.5, 2}, {4, 2, 3.5}} {
		p := drawn(w.Patches[i].Outline)
		if math.Abs(p.Area()-want.area) > touching || w.Patches[i].Fabric != i {
			t.Errorf("patch %d: %g sq in of fabric %d", i, p.Area(), w.Patches[i].Fabric)
		}
		at := geom.XY{X: want.x + 0.25, Y: want.y + 0.25} // as the outline begins in the allowance
		if in, err := geom.Contains(p, at.AsPoint().AsGeometry()); err != nil || !in {
			t.Errorf("patch %d is not at %v: %v", i, at, err)
		}
	}
}
