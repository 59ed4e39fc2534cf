package piecing_test

import (
	"testing"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// boxes is the sizes of rows of patchwork.
func boxes(rows [][]piecing.Patchwork) [][]piecing.Box {
	var out [][]piecing.Box
	for _, row := range rows {
		var sizes []piecing.Box
		for _, w := range row {
			sizes = append(sizes, w.Size())
		}
		out = append(out, sizes)
	}
	return out
}

func ninePatch() piecing.Patchwork {
	var rows [][]piecing.Patchwork
	for r := range 3 {
		var row []piecing.Patchwork
		for c := range 3 {
			row = append(row, piecing.Plain(box(roll, roll), (r+c)%2))
		}
		rows = append(rows, row)
	}
	return piecing.SewRows(rows, quarter)
}

// A nine-patch of 2 1/2 in squares: 6 1/2 in, the middle shows 2 in and the
// corners 2 1/4 until they are sewn; finished all nine show 2 in, five of
// one fabric and four of the other.
func TestSewNinePatch(t *testing.T) {
	nine := ninePatch()
	sized(t, "nine-patch", nine, box(inch*13/2, inch*13/2))
	closes(t, "nine-patch", nine)
	for i, want := range map[int][2]measure.Length{0: {inch * 9 / 4, inch * 9 / 4}, 1: {2 * inch, inch * 9 / 4}, 4: {2 * inch, 2 * inch}} {
		_, size := nine.Patches[i].Outline.Bounds()
		wantBox(t, "patch", size, want[0], want[1])
	}
	finished, _ := nine.Finished(quarter)
	for fabric, want := range []measure.Length{20 * inch, 16 * inch} {
		if got := finished.AreaOf(fabric); !got.Equal(measure.Area(want.Surd(), inch.Surd())) {
			t.Errorf("fabric %d shows %s", fabric, measure.FormatArea(got, measure.In))
		}
	}
}

// Strips first, then segments: the same nine-patch, patch by patch.
func TestSegmentsMakeTheNinePatch(t *testing.T) {
	segment := func(fabrics ...int) piecing.Patchwork {
		set := piecing.StripSet(same(3, roll), (40 * inch).Surd(), quarter).InFabrics(fabrics...)
		first := piecing.Rectangle(piecing.Point{}, box(roll, inch*13/2))
		return set.CutTo(first)
	}
	a, b := segment(0, 1, 0), segment(1, 0, 1)
	nine := piecing.SewRows([][]piecing.Patchwork{{a, b, a}}, quarter)
	closes(t, "nine-patch of segments", nine)
	want := ninePatch()
	for _, p := range nine.Patches {
		found := false
		for _, q := range want.Patches {
			found = found || p.Fabric == q.Fabric && coincide(p.Outline, q.Outline)
		}
		if !found {
			t.Errorf("fabric %d at %v", p.Fabric, p.Outline)
		}
	}
}

// Patchwork sewn in rows is as large as Assemble says, also where parts of a
// row and rows disagree.
func TestSewRowsAgreesWithAssemble(t *testing.T) {
	half := piecing.DraftHalfSquare((inch * 7 / 2).Surd())
	tall := piecing.Plain(box(3*inch, 5*inch), 2)
	goose := piecing.DraftGoose(box(inch*13/2, inch*7/2))
	for _, rows := range [][][]piecing.Patchwork{
		{{half, half.Turned(1)}, {half.Turned(3), half.Turned(2)}},
		{{half, tall, half}, {goose}},
		{{tall, tall}, {goose, half}, {half}},
	} {
		w := piecing.SewRows(rows, quarter)
		sized(t, "rows", w, piecing.Assemble(boxes(rows), quarter).Box)
		closes(t, "rows", w)
	}
	if w := piecing.SewRows([][]piecing.Patchwork{{half}, {}}, quarter); len(w.Patches) != 0 {
		t.Error("an empty row is sewn")
	}
}

// A part is sewn to the side it is meant for.
func TestSewOnSides(t *testing.T) {
	w := piecing.Plain(box(4*inch, 4*inch), 0)
	for _, c := range []struct {
		side       piecing.Side
		add        piecing.Box
		wide, high measure.Length
		x, y       measure.Length // of the corner of the added piece
	}{
		{piecing.TopSide, box(4*inch, 2*inch), 4 * inch, inch * 11 / 2, 0, 0},
		{piecing.BottomSide, box(4*inch, 2*inch), 4 * inch, inch * 11 / 2, 0, inch * 15 / 4},
		{piecing.LeftSide, box(2*inch, 4*inch), inch * 11 / 2, 4 * inch, 0, 0},
		{piecing.RightSide, box(2*inch, 4*inch), inch * 11 / 2, 4 * inch, inch * 15 / 4, 0},
	} {
		sewn := w.On(c.side, piecing.Plain(c.add, 1), quarter)
		sized(t, "sewn on", sewn, box(c.wide, c.high))
		closes(t, "sewn on", sewn)
		for _, p := range sewn.Patches {
			corner, _ := p.Outline.Bounds()
			if p.Fabric == 1 && (!corner.X.Equal(c.x.Surd()) || !corner.Y.Equal(c.y.Surd())) {
				t.Errorf("side %d: at %v, %v", c.side, corner.X, corner.Y)
			}
		}
	}
}

// A nine-patch cut in four: each piece is 3 1/4 in and shows four patches; the
// pieces turned and sewn again close and finish 5 1/2 in. Every piece holds a
// quarter of the middle.
func TestRecutNinePatch(t *testing.T) {
	pieces := ninePatch().Split(2, 2)
	for r, row := range pieces {
		for c, p := range row {
			sized(t, "piece", p, box(inch*13/4, inch*13/4))
			closes(t, "piece", p)
			if len(p.Patches) != 4 {
				t.Errorf("piece %d, %d shows %d patches", r, c, len(p.Patches))
			}
			pieces[r][c] = p.Turned(2 * (c + r))
		}
	}
	again := piecing.SewRows(pieces, quarter)
	sized(t, "sewn again", again, box(6*inch, 6*inch))
	closes(t, "sewn again", again)
	finished, _ := again.Finished(quarter)
	sized(t, "finished", finished, box(inch*11/2, inch*11/2))
	if ninePatch().Split(0, 2) != nil {
		t.Error("no pieces are some")
	}
}

// Rings of a loop opened at different seams are all as large and show the
// strips in turn.
func TestOpenedRings(t *testing.T) {
	strips := []measure.Length{2 * inch, 3 * inch, roll, inch * 3 / 2}
	for first := range strips {
		var widths []measure.Length
		var order []int
		for i := range strips {
			at := (first + i) % len(strips)
			order, widths = append(order, at), append(widths, strips[at])
		}
		segment := piecing.StripSet(widths, roll.Surd(), quarter).InFabrics(order...)
		sized(t, "segment", segment, box(roll, setWidth(strips, quarter)))
		closes(t, "segment", segment)
		if segment.Patches[0].Fabric != first {
			t.Errorf("opened at %d begins with %d", first, segment.Patches[0].Fabric)
		}
	}
}

// Oblong work keeps its width and height apart when it is trimmed, split and
// sewn in rows.
func TestOblongWork(t *testing.T) {
	w := piecing.DraftGoose(box(inch*13/2, inch*7/2))
	trimmed := w.Trimmed(box(5*inch, 3*inch))
	sized(t, "trimmed", trimmed, box(5*inch, 3*inch))
	closes(t, "trimmed", trimmed)
	if left, right := trimmed.AreaOf(1), trimmed.AreaOf(2); left.IsZero() || left.Cmp(right) > 0 {
		t.Errorf("skies show %s and %s", measure.FormatArea(left, measure.In), measure.FormatArea(right, measure.In))
	}
	for _, c := range []struct {
		across, down int64
		wide, high   measure.Length
	}{{1, 2, inch * 13 / 2, inch * 7 / 4}, {2, 1, inch * 13 / 4, inch * 7 / 2}, {1, 1, inch * 13 / 2, inch * 7 / 2}} {
		pieces := w.Split(c.across, c.down)
		if int64(len(pieces)) != c.down || int64(len(pieces[0])) != c.across {
			t.Fatalf("%d rows of %d", len(pieces), len(pieces[0]))
		}
		for _, row := range pieces {
			for _, p := range row {
				sized(t, "piece", p, box(c.wide, c.high))
				closes(t, "piece", p)
			}
		}
	}
	// In thirds each strip of a set of three shows its own fabric most.
	for i, row := range piecing.StripSet(same(3, roll), (9*inch).Surd(), quarter).Split(1, 3) {
		for fabric := range 3 {
			if got := row[0].AreaOf(fabric); (got.MulInt(2).Cmp(row[0].Outline.Area()) > 0) != (fabric == i) {
				t.Errorf("third %d shows %s of fabric %d", i, measure.FormatArea(got, measure.In), fabric)
			}
		}
	}
	// Two rows of three, 3 in high and 4 wide: four seams of 3 in and one of 11.
	wantSurd(t, "seams", piecing.RowSeams(grid(2, 3, box(4*inch, 3*inch)), quarter, straight), 23*inch)
}

// Fabrics beyond the list stay as they are.
func TestInFabrics(t *testing.T) {
	w := piecing.DraftQuarterSquare((4 * inch).Surd()).InFabrics(7, 8)
	for i, want := range []int{7, 8, 2, 3} {
		if got := w.Patches[i].Fabric; got != want {
			t.Errorf("patch %d in fabric %d, want %d", i, got, want)
		}
	}
}

// In a drafted log block every log shows its finished length and the
// centre its own size, in sewing order, and the first of a spiral lies on its
// side.
func TestDraftedLogs(t *testing.T) {
	l := piecing.Logs{Centre: box(3*inch, 2*inch), Widths: [4]measure.Length{inch, inch / 2, inch, inch / 2}, Rounds: 2, First: piecing.RightSide}
	finished, ok := piecing.DraftLogs(l, quarter).Finished(quarter)
	if !ok {
		t.Fatal("nothing finishes")
	}
	sized(t, "block", finished, l.Finished())
	closes(t, "block", finished)
	if got := finished.AreaOf(0); !got.Equal(measure.Area(l.Centre.Width, l.Centre.Height)) {
		t.Errorf("centre shows %s", measure.FormatArea(got, measure.In))
	}
	for i, log := range l.List(quarter) {
		if got, want := finished.AreaOf(i+1), log.Finished.Mul(l.Widths[log.Side].Surd()); !got.Equal(want) {
			t.Errorf("log %d shows %s", i+1, measure.FormatArea(got, measure.In))
		}
	}
	for _, p := range finished.Patches {
		if corner, _ := p.Outline.Bounds(); p.Fabric == 1 && corner.X.Cmp((3*inch).Surd()) < 0 {
			t.Errorf("the first log begins at %v", corner.X)
		}
	}
}
