package piecing_test

import (
	"testing"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// Cells that are cut once show what is left of them where every seam is sewn and
// cut one after the other; the sizes are Assemble's, also where rows disagree.
func TestSew(t *testing.T) {
	half := piecing.DraftHalfSquare((inch * 7 / 2).Surd())
	tall := piecing.Plain(box(3*inch, 5*inch), 2)
	goose := piecing.DraftGoose(box(inch*13/2, inch*7/2))
	for name, rows := range map[string][][]piecing.Patchwork{
		"one":       {{goose}},
		"pinwheel":  {{half, half.Turned(1)}, {half.Turned(3), half.Turned(2)}},
		"with tall": {{half, tall, half}, {goose}},
		"uneven":    {{tall, tall}, {goose}, {half, half}},
	} {
		w, ok := piecing.Sew(rows, quarter)
		if !ok {
			t.Errorf("%s: not sewn", name)
			continue
		}
		sized(t, name, w, piecing.Assemble(boxes(rows), quarter).Box)
		closes(t, name, w)
		if model := piecing.SewRows(rows, quarter); !w.LooksLike(model) {
			t.Errorf("%s: %v, want %v", name, w, model)
		}
	}
}

// A cell between two seams that take all of it cannot be sewn, one that shows a
// tick can.
func TestSewNarrowCells(t *testing.T) {
	wide := piecing.Plain(box(3*inch, 3*inch), 0)
	for width, want := range map[measure.Length]bool{inch / 2: false, inch/2 + measure.Tick: true} {
		narrow := piecing.Plain(box(width, 3*inch), 1)
		if _, ok := piecing.Sew([][]piecing.Patchwork{{wide, narrow, wide}}, quarter); ok != want {
			t.Errorf("%d ticks: %v", width, ok)
		}
	}
	for _, none := range [][][]piecing.Patchwork{nil, {{}}, {{wide}, {}}} {
		if _, ok := piecing.Sew(none, quarter); ok {
			t.Errorf("%v is sewn", none)
		}
	}
}
