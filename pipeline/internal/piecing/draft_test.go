package piecing_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

func drawn(p piecing.Polygon) geom.Geometry {
	var corners []geom.XY
	for _, c := range p {
		corners = append(corners, geom.XY{X: c.X.Float(measure.In), Y: c.Y.Float(measure.In)})
	}
	return polygon(corners...)
}

// closes checks that patches fill their outline: exactly by their own
// arithmetic, and by the geometry library's union.
func closes(t *testing.T, what string, w piecing.Patchwork) {
	t.Helper()
	if !w.Closed() {
		t.Errorf("%s does not close", what)
	}
	var pieces []geom.Geometry
	for _, p := range w.Patches {
		pieces = append(pieces, drawn(p.Outline))
	}
	whole, outline := joined(t, pieces...), drawn(w.Outline)
	if gap := math.Abs(whole.Area() - outline.Area()); gap > touching {
		t.Errorf("%s: union and outline differ by %g sq in", what, gap)
	}
	if out := whole.Area() - overlap(t, whole, outline); math.Abs(out) > touching {
		t.Errorf("%s: %g sq in outside the outline", what, out)
	}
}

// sized checks the size of a patchwork and that its outline begins at the
// origin.
func sized(t *testing.T, what string, w piecing.Patchwork, want piecing.Box) {
	t.Helper()
	corner, got := w.Outline.Bounds()
	if !got.Width.Equal(want.Width) || !got.Height.Equal(want.Height) {
		t.Errorf("%s: %v x %v, want %v x %v", what, got.Width, got.Height, want.Width, want.Height)
	}
	if !corner.X.IsZero() || !corner.Y.IsZero() {
		t.Errorf("%s begins at %v, %v", what, corner.X, corner.Y)
	}
}

func squareBox(side measure.Surd) piecing.Box { return piecing.Box{Width: side, Height: side} }

type drafted struct {
	what string
	work piecing.Patchwork
	size piecing.Box // unfinished
}

// drafts is one of every unit, with the size its formula gives.
func drafts() []drafted {
	goose := box(inch*13/2, inch*7/2)
	body := box(inch*13/2, inch*9/2)
	all := []drafted{
		{"plain", piecing.Plain(goose, 0), goose},
		{"half square", piecing.DraftHalfSquare((inch * 7 / 2).Surd()), box(inch*7/2, inch*7/2)},
		{"quarter square", piecing.DraftQuarterSquare((inch * 7 / 2).Surd()), box(inch*7/2, inch*7/2)},
		{"three-patch", piecing.DraftThreePatch((inch * 7 / 2).Surd()), box(inch*7/2, inch*7/2)},
		{"goose", piecing.DraftGoose(goose), goose},
		{"flip corners", piecing.DraftFlipCorners(body, [4]measure.Length{2 * inch, inch, 0, inch}, quarter), body},
		{"all corners meet", piecing.DraftFlipCorners(box(inch*13/2, inch*13/2),
			[4]measure.Length{3 * inch, 3 * inch, 3 * inch, 3 * inch}, quarter), box(inch*13/2, inch*13/2)},
	}
	u := unfinished(6 * inch)
	centre := (6 * inch).Surd().Div(measure.Root2()).Add((2 * quarter).Surd())
	all = append(all, drafted{"square in a square", piecing.DraftSquareInSquare(u, centre, quarter), squareBox(u)})
	for _, courthouse := range []bool{false, true} {
		l := logBlock(2*inch, inch, 3)
		l.Courthouse = courthouse
		all = append(all, drafted{"logs", piecing.DraftLogs(l, quarter), box(inch*17/2, inch*17/2)})
	}
	for n := 2; n <= 4; n++ {
		for _, raw := range []bool{false, true} {
			tube := tubeOf(n, quarter, raw)
			set := piecing.StripSet(same(n, roll), (30 * inch).Surd(), quarter)
			square := piecing.DraftTubeSquare(tube, set, set)
			all = append(all, drafted{fmt.Sprint("tube of ", n, raw), square, squareBox(tube.Side())})
		}
	}
	set := piecing.StripSet(same(3, roll), (40 * inch).Surd(), quarter)
	return append(all, drafted{"strip set", set, piecing.Box{Width: (40 * inch).Surd(), Height: setWidth(same(3, roll), quarter).Surd()}})
}

// Every unit's patches fill it exactly, it is as large as its formula says, and
// it stays so turned and mirrored and finished. Derived from geometry.
func TestDraftsClose(t *testing.T) {
	for _, d := range drafts() {
		sized(t, d.what, d.work, d.size)
		closes(t, d.what, d.work)
		finished, ok := d.work.Finished(quarter)
		if !ok {
			t.Fatalf("%s has no finished size", d.what)
		}
		sized(t, d.what+", finished", finished, d.size.Finished(quarter))
		closes(t, d.what+", finished", finished)
		for quarters := -1; quarters < 4; quarters++ {
			turned, size := d.work.Turned(quarters), d.size
			if quarters%2 != 0 {
				size = size.Turned()
			}
			sized(t, d.what+", turned", turned, size)
			if !turned.Closed() {
				t.Errorf("%s, turned %d, does not close", d.what, quarters)
			}
		}
		sized(t, d.what+", mirrored", d.work.Mirrored(), d.size)
		if !d.work.Mirrored().Closed() {
			t.Errorf("%s, mirrored, does not close", d.what)
		}
	}
}

// Four turns, two mirrors and a turn each way undo each other, patch by patch.
func TestTransformsUndo(t *testing.T) {
	w := piecing.DraftFlipCorners(box(7*inch, 5*inch), [4]measure.Length{2 * inch, inch}, quarter)
	for what, back := range map[string]piecing.Patchwork{
		"four quarters":    w.Turned(1).Turned(1).Turned(1).Turned(1),
		"two mirrors":      w.Mirrored().Mirrored(),
		"there and back":   w.Turned(1).Turned(-1),
		"mirror and turns": w.Mirrored().Turned(1).Mirrored().Turned(1),
		"eight eighths":    eighths(w, 8),
		"five and three":   w.Turned(5).Turned(3),
		"six back, two on": w.Turned(-6).Turned(2).Turned(4),
	} {
		for i, p := range back.Patches {
			if p.Fabric != w.Patches[i].Fabric || !coincide(p.Outline, w.Patches[i].Outline) {
				t.Errorf("%s: patch %d is %v", what, i, p)
			}
		}
	}
	if eighths(w, 1).Size().Width.Equal(w.Size().Width) {
		t.Error("an eighth of a turn does nothing")
	}
}

func eighths(w piecing.Patchwork, n int) piecing.Patchwork {
	for range n {
		w = w.TurnedBy(piecing.Degrees45)
	}
	return w.AtOrigin()
}

// coincide reports whether two convex polygons are one.
func coincide(p, q piecing.Polygon) bool {
	shared := p.Overlap(q).Area()
	return shared.Equal(p.Area()) && shared.Equal(q.Area())
}

// Turning goes clockwise: what was at the top left is at the top right, and
// mirrored too.
func TestTurnDirection(t *testing.T) {
	w := piecing.Plain(box(6*inch, 4*inch), 0).Flip(piecing.TopLeft, (2 * inch).Surd(), 1)
	for _, c := range []struct {
		what string
		work piecing.Patchwork
		x, y measure.Length // the corner that fabric 1 covers
	}{
		{"as sewn", w, 0, 0}, {"turned", w.Turned(1), 4 * inch, 0},
		{"half turn", w.Turned(2), 6 * inch, 4 * inch}, {"mirrored", w.Mirrored(), 6 * inch, 0},
		{"turned back", w.Turned(-1), 0, 6 * inch},
	} {
		found := false
		for _, p := range c.work.Patches {
			for _, q := range p.Outline {
				found = found || p.Fabric == 1 && q.X.Equal(c.x.Surd()) && q.Y.Equal(c.y.Surd())
			}
		}
		if !found {
			t.Errorf("%s: the corner is not at %v, %v", c.what, c.x.Format(measure.In), c.y.Format(measure.In))
		}
	}
}

// A gap, an overlap, a patch outside and a patch turned inside out do not
// close.
func TestClosedRefuses(t *testing.T) {
	whole := piecing.Rectangle(piecing.Point{}, box(4*inch, 4*inch))
	left := piecing.Rectangle(piecing.Point{}, box(2*inch, 4*inch))
	right := piecing.Rectangle(piecing.Point{X: (2 * inch).Surd()}, box(2*inch, 4*inch))
	narrow := piecing.Rectangle(piecing.Point{X: (2*inch + tick).Surd()}, box(2*inch-tick, 4*inch))
	beyond := piecing.Rectangle(piecing.Point{X: (2 * inch).Surd()}, box(2*inch+tick, 4*inch))
	for _, c := range []struct {
		what    string
		patches []piecing.Polygon
		want    bool
	}{
		{"halves", []piecing.Polygon{left, right}, true},
		{"a gap of a tick", []piecing.Polygon{left, narrow}, false},
		{"a tick outside", []piecing.Polygon{left, beyond}, false},
		{"twice the same", []piecing.Polygon{left, left}, false},
		{"one over the other", []piecing.Polygon{whole, left}, false},
		{"nothing", nil, false},
		{"inside out", []piecing.Polygon{left, {right[3], right[2], right[1], right[0]}}, false},
	} {
		w := piecing.Patchwork{Outline: whole}
		for i, p := range c.patches {
			w.Patches = append(w.Patches, piecing.Patch{Fabric: i, Outline: p})
		}
		if got := w.Closed(); got != c.want {
			t.Errorf("%s: closed %v", c.what, got)
		}
	}
}

// Finished, a goose is half its unit and its skies a quarter each; a square in
// a square half; a flip corner leg*leg/2. Derived from geometry.
func TestFinishedAreas(t *testing.T) {
	sq := func(l measure.Length) measure.Surd { return measure.Area(l.Surd(), l.Surd()) }
	u := unfinished(6 * inch)
	centre := (6 * inch).Surd().Div(measure.Root2()).Add((2 * quarter).Surd())
	for _, c := range []struct {
		what string
		work piecing.Patchwork
		want []measure.Surd
	}{
		{"goose", piecing.DraftGoose(box(inch*13/2, inch*7/2)), []measure.Surd{sq(3 * inch), sq(3 * inch).DivInt(2), sq(3 * inch).DivInt(2)}},
		{"square in a square", piecing.DraftSquareInSquare(u, centre, quarter),
			[]measure.Surd{sq(6 * inch).DivInt(2), sq(3 * inch).DivInt(2), sq(3 * inch).DivInt(2), sq(3 * inch).DivInt(2), sq(3 * inch).DivInt(2)}},
		{"flipped square in a square", piecing.DraftFlipCorners(squareBox(u), [4]measure.Length{3 * inch, 3 * inch, 3 * inch, 3 * inch}, quarter),
			[]measure.Surd{sq(6 * inch).DivInt(2), sq(3 * inch).DivInt(2), sq(3 * inch).DivInt(2), sq(3 * inch).DivInt(2), sq(3 * inch).DivInt(2)}},
		{"half square", piecing.DraftHalfSquare(u), []measure.Surd{sq(6 * inch).DivInt(2), sq(6 * inch).DivInt(2)}},
		{"hourglass", piecing.DraftQuarterSquare(u).InFabrics(0, 1, 0, 1), []measure.Surd{sq(6 * inch).DivInt(2), sq(6 * inch).DivInt(2)}},
		{"snowball", piecing.DraftFlipCorners(squareBox(u), [4]measure.Length{inch, 0, 2 * inch, 0}, quarter),
			[]measure.Surd{sq(6 * inch).Sub(sq(inch).MulInt(5).DivInt(2)), sq(inch).DivInt(2), {}, sq(2 * inch).DivInt(2)}},
	} {
		finished, ok := c.work.Finished(quarter)
		if !ok {
			t.Fatalf("%s has no finished size", c.what)
		}
		for fabric, want := range c.want {
			if got := finished.AreaOf(fabric); !got.Equal(want) {
				t.Errorf("%s, fabric %d: %s, want %s", c.what, fabric, measure.FormatArea(got, measure.In), measure.FormatArea(want, measure.In))
			}
		}
	}
}

// The corner band of a tube square of three 2 1/2 in strips shows
// (w-2s) - s*sqrt2 = 1.646447 in along the diagonal, the others 2 in. Derived
// from geometry.
func TestTubeBands(t *testing.T) {
	tube := tubeOf(3, quarter, false)
	set := piecing.StripSet(same(3, roll), (20 * inch).Surd(), quarter)
	square := piecing.DraftTubeSquare(tube, set, set.InFabrics(3, 4, 5))
	finished, ok := square.Finished(quarter)
	if !ok || len(finished.Patches) != 6 {
		t.Fatalf("%d bands", len(finished.Patches))
	}
	root2 := measure.Root2()
	for _, p := range finished.Patches {
		// Strips run along the diagonal from the bottom left, along which
		// x + y stays: a band's width is the spread of (x + y)/sqrt2.
		low, high := p.Outline[0].X.Add(p.Outline[0].Y), measure.Surd{}
		for _, q := range p.Outline {
			low, high = measure.Min(low, q.X.Add(q.Y)), measure.Max(high, q.X.Add(q.Y))
		}
		want := "2.000000"
		if p.Fabric%3 == 2 {
			want = "1.646447"
		}
		decimals(t, fmt.Sprint("band of fabric ", p.Fabric), high.Sub(low).Div(root2), want)
	}
	// Near is above the diagonal, its strip 0 beside it.
	for _, p := range finished.Patches {
		middle := p.Outline[0].X.Add(p.Outline[0].Y)
		if above := middle.Cmp(finished.Size().Width) <= 0; p.Fabric < 3 != above && p.Fabric%3 != 0 {
			t.Errorf("fabric %d lies on the wrong side", p.Fabric)
		}
	}
}

// Trimmed equally on opposite sides, a tube square keeps its diagonal in its
// corners.
func TestTrimmedKeepsTheDiagonal(t *testing.T) {
	tube := tubeOf(3, quarter, false)
	set := piecing.StripSet(same(3, roll), (20 * inch).Surd(), quarter)
	trimmed := piecing.DraftTubeSquare(tube, set, set.InFabrics(3, 4, 5)).Trimmed(box(inch*67/8, inch*67/8))
	sized(t, "trimmed", trimmed, box(inch*67/8, inch*67/8))
	closes(t, "trimmed", trimmed)
	var near measure.Surd
	for fabric := range 3 {
		near = near.Add(trimmed.AreaOf(fabric))
	}
	if half := trimmed.Outline.Area().DivInt(2); !near.Equal(half) {
		t.Errorf("near covers %s of %s", measure.FormatArea(near, measure.In), measure.FormatArea(half.MulInt(2), measure.In))
	}
}
