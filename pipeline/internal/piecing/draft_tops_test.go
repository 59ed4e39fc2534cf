package piecing_test

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// placesClose checks places of a top exactly and by the geometry library.
func placesClose(t *testing.T, what string, size piecing.Box, places []piecing.Place) {
	t.Helper()
	if !piecing.Closed(size, places) {
		t.Errorf("%s does not close", what)
	}
	var pieces []geom.Geometry
	for _, p := range places {
		pieces = append(pieces, drawn(p.Outline))
	}
	whole := joined(t, pieces...)
	outline := rectangle(size.Width.Float(measure.In), size.Height.Float(measure.In))
	if gap := outline.Area() - overlap(t, whole, outline); math.Abs(gap) > touching || math.Abs(whole.Area()-outline.Area()) > touching {
		t.Errorf("%s: %g sq in of its outline not covered", what, gap)
	}
}

func kinds(places []piecing.Place) map[piecing.PlaceKind]int64 {
	count := map[piecing.PlaceKind]int64{}
	for _, p := range places {
		count[p.Kind]++
	}
	return count
}

// On point, blocks, sides and corners as counted fill the finished size
// exactly; a side triangle has legs b and a corner one b/sqrt2. Derived from
// geometry.
func TestOnPointCloses(t *testing.T) {
	for _, o := range []piecing.OnPoint{
		{Columns: 4, Rows: 5, Block: (9 * inch).Surd()},
		{Columns: 1, Rows: 1, Block: (9 * inch).Surd()},
		{Columns: 3, Rows: 1, Block: (6 * inch).Surd().Mul(measure.Root2())},
		{Columns: 4, Rows: 3, Block: (9 * inch).Surd(), Sash: 2 * inch},
		{Columns: 1, Rows: 1, Block: (4 * inch).Surd(), Sash: 3 * inch},
	} {
		places := o.Places()
		placesClose(t, "on point", o.Finished(), places)
		count := kinds(places)
		for kind, want := range map[piecing.PlaceKind]int64{
			piecing.BlockPlace: o.Rows * o.Columns, piecing.AlternatePlace: o.Alternates(),
			piecing.SideTriangle: o.SideTriangles(), piecing.CornerTriangle: o.CornerTriangles(),
			piecing.SashPlace: o.Sashes(), piecing.CornerstonePlace: o.Cornerstones(),
		} {
			if count[kind] != want {
				t.Errorf("%d by %d: %d of kind %d, want %d", o.Columns, o.Rows, count[kind], kind, want)
			}
		}
		area := measure.Area(o.Block, o.Block)
		for _, p := range places {
			want := map[piecing.PlaceKind]int64{piecing.SideTriangle: 2, piecing.CornerTriangle: 4}[p.Kind]
			if p.Kind == piecing.SashPlace || p.Kind == piecing.CornerstonePlace {
				continue // TestSashedOnPoint
			}
			if got := p.Outline.Area().MulInt(max(1, want)); !got.Equal(area) {
				t.Errorf("kind %d covers %s", p.Kind, measure.FormatArea(p.Outline.Area(), measure.In))
			}
		}
	}
}

// Sashes on point are as long as a block and as wide as they are said to be;
// of the cornerstones those on the edge are halved by it. Derived from
// geometry.
func TestSashedOnPoint(t *testing.T) {
	o := piecing.OnPoint{Columns: 4, Rows: 3, Block: (9 * inch).Surd(), Sash: 2 * inch}
	sash, stone := measure.Area(o.Block, (2*inch).Surd()), measure.Area((2*inch).Surd(), (2*inch).Surd())
	halved := int64(0)
	for _, p := range o.Places() {
		area := p.Outline.Area()
		switch {
		case p.Kind == piecing.SashPlace && !area.Equal(sash):
			t.Errorf("a sash covers %s", measure.FormatArea(area, measure.In))
		case p.Kind == piecing.CornerstonePlace && area.MulInt(2).Equal(stone):
			halved++
		case p.Kind == piecing.CornerstonePlace && !area.Equal(stone):
			t.Errorf("a cornerstone covers %s", measure.FormatArea(area, measure.In))
		}
	}
	if halved != o.EdgeStones() || halved != 14 || o.Cornerstones() != 31 || o.Sashes() != 48 {
		t.Errorf("%d halved, %d said; %d cornerstones, %d sashes", halved, o.EdgeStones(), o.Cornerstones(), o.Sashes())
	}
	size := o.Finished()
	decimals(t, "width", size.Width, "62.225397") // 44 sqrt2
	decimals(t, "height", size.Height, "46.669048")
	cut, square := o.Pieces(quarter)
	decimals(t, "sash, long", cut.Width, "9.500000")
	decimals(t, "sash, wide", cut.Height, "2.500000")
	decimals(t, "cornerstone", square.Width, "2.500000")
}

// The setting triangles cut from the exact squares finish to their places: a
// side triangle's cut outline inset by the seam has the area of half a block,
// a corner triangle's of a quarter. Derived from geometry.
func TestSettingTrianglesFinish(t *testing.T) {
	b := (9 * inch).Surd()
	set := piecing.SettingTriangles(b, quarter, eighth)
	half, leg := set.Side.Exact.DivInt(2), set.Corner.Exact
	side := piecing.Polygon{{}, {X: set.Side.Exact}, {X: half, Y: half}}
	corner := piecing.Polygon{{}, {X: leg}, {Y: leg}}
	for _, c := range []struct {
		cut piecing.Polygon
		of  int64
	}{{side, 2}, {corner, 4}} {
		inner, ok := c.cut.Inset(quarter)
		if !ok || !inner.Area().MulInt(c.of).Equal(measure.Area(b, b)) {
			t.Errorf("1/%d of a block finishes %s", c.of, measure.FormatArea(inner.Area(), measure.In))
		}
	}
}

// Setting triangles that reach out to a floating edge and its seam allowance
// still fill the top, whatever its rows and columns.
func TestFloatingCloses(t *testing.T) {
	for _, o := range []piecing.OnPoint{
		{Columns: 4, Rows: 5, Block: (9 * inch).Surd()}, {Columns: 1, Rows: 1, Block: (9 * inch).Surd()}, {Columns: 3, Rows: 1, Block: (6 * inch).Surd()},
		{Columns: 3, Rows: 2, Block: (6 * inch).Surd(), Sash: inch},
	} {
		for _, edge := range []measure.Surd{{}, quarter.Surd(), (3 * quarter).Surd()} {
			placesClose(t, "floating", o.Floating(edge), o.Around(edge))
		}
	}
}

// A block turned an eighth lies in its place on point.
func TestBlockOnPointFits(t *testing.T) {
	block, _ := ninePatch().Finished(quarter)
	turned := block.TurnedBy(piecing.Degrees45).AtOrigin()
	o := piecing.OnPoint{Columns: 2, Rows: 2, Block: block.Size().Width}
	first := o.Places()[0].Outline
	if !coincide(turned.Outline, first) {
		t.Errorf("block %v, place %v", turned.Outline, first)
	}
	if !turned.Closed() {
		t.Error("the turned block does not close")
	}
}

// Sashed tops fill their size with as many sashes and cornerstones as counted.
func TestSashingCloses(t *testing.T) {
	for _, outer := range []bool{false, true} {
		for _, g := range []piecing.Sashing{
			{Rows: 4, Columns: 3, Block: box(10*inch, 10*inch), Width: 2 * inch, Outer: outer},
			{Rows: 2, Columns: 5, Block: box(10*inch, 8*inch), Width: inch, Outer: outer},
			{Rows: 1, Columns: 1, Block: box(10*inch, 8*inch), Width: inch, Outer: outer},
		} {
			places := g.Places()
			placesClose(t, "sashing", g.Finished(), places)
			count := kinds(places)
			if count[piecing.BlockPlace] != g.Rows*g.Columns || count[piecing.SashPlace] != g.Sashes() || count[piecing.CornerstonePlace] != g.Cornerstones() {
				t.Errorf("outer %v: %v", outer, count)
			}
		}
	}
}

// Borders of every kind, with the inner quilt, fill the outer size; mitred
// strips are trapezoids from corner to corner.
func TestBordersClose(t *testing.T) {
	inner := box(30*inch, 40*inch)
	middle := piecing.Place{Outline: piecing.Rectangle(piecing.Point{X: (3 * inch).Surd(), Y: (3 * inch).Surd()}, inner)}
	for _, c := range []struct {
		corners   piecing.Corners
		top, side measure.Length // finished lengths of the strips' outer edges
		pieces    int
	}{
		{piecing.SidesFirst, 36 * inch, 40 * inch, 4},
		{piecing.EndsFirst, 30 * inch, 46 * inch, 4},
		{piecing.SquareCorners, 30 * inch, 40 * inch, 8},
		{piecing.MitredCorners, 36 * inch, 46 * inch, 4},
	} {
		places := piecing.BorderPlaces(inner, 3*inch, c.corners)
		placesClose(t, "border", box(36*inch, 46*inch), append(places, middle))
		_, top := places[0].Outline.Bounds()
		_, side := places[1].Outline.Bounds()
		wantBox(t, "top", top, c.top, 3*inch)
		wantBox(t, "side", side, 3*inch, c.side)
		if len(places) != c.pieces {
			t.Errorf("%d pieces", len(places))
		}
	}
}

// A mitred strip cut at its exact length just holds its finished trapezoid
// with the seam round it. Derived from geometry.
func TestMitredLengthHoldsTheTrapezoid(t *testing.T) {
	b := piecing.MitredBorder(box(inch*61/2, inch*81/2), 3*inch, quarter)
	height := b.Cut.Surd()
	cut := piecing.Polygon{{}, {X: b.Ends}, {X: b.Ends.Sub(height), Y: height}, {X: height, Y: height}}
	inner, ok := cut.Inset(quarter)
	if !ok {
		t.Fatal("nothing is left")
	}
	_, size := inner.Bounds()
	wantBox(t, "trapezoid", size, 36*inch, 3*inch)
	short := inner[2].X.Sub(inner[3].X)
	wantSurd(t, "its short side", short, 30*inch)
}
