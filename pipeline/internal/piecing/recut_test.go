package piecing_test

import (
	"testing"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// A nine-patch of 2 1/2 in squares is 6 1/2 in; cut in four the pieces are
// 3 1/4 in, and sewn again it is 6 in: the cut cost a seam each way. Derived
// from geometry.
func TestRecut(t *testing.T) {
	nine := piecing.Assemble(grid(3, 3, box(roll, roll)), quarter).Box
	piece, ok := piecing.Recut(nine, 2, 2)
	if wantBox(t, "piece", piece, inch*13/4, inch*13/4); !ok {
		t.Error("cannot be cut")
	}
	again := piecing.Assemble(grid(2, 2, piece), quarter)
	wantBox(t, "sewn again", again.Box, 6*inch, 6*inch)
	whole, ok := piecing.Recut(nine, 1, 1)
	if wantBox(t, "whole", whole, inch*13/2, inch*13/2); !ok {
		t.Error("one piece is no piece")
	}
	third, _ := piecing.Recut(box(inch*13/2, inch*13/2), 3, 1)
	if !third.Width.MulInt(3).Equal((inch * 13 / 2).Surd()) {
		t.Errorf("thirds %v", third.Width)
	}
	for _, c := range [][2]int64{{0, 1}, {1, 0}, {-1, 1}} {
		if _, ok := piecing.Recut(nine, c[0], c[1]); ok {
			t.Errorf("%v pieces", c)
		}
	}
}

// Forty strips of 2 1/2 x 42 in, joined on the diagonal, are 1582.5 in less
// 18 trimmed off; five times folded, 32 strips high, each finishes 2 in.
func TestChain(t *testing.T) {
	joined := piecing.JoinedLength(40, 42*inch, roll) - 18*inch
	c := piecing.Chain{Length: joined.Surd(), Width: roll, Strips: 1}
	wantSurd(t, "chain", c.Length, inch*3129/2)
	steps := c.Halvings(5, quarter)
	last := steps[5]
	if !last.Length.Equal(c.Length.DivInt(32)) || last.Strips != 32 || len(steps) != 6 {
		t.Errorf("after five folds %v, %d strips", last.Length, last.Strips)
	}
	for i, step := range steps {
		if want := setWidth(same(1<<i, roll), quarter); step.Width != want {
			t.Errorf("fold %d: %v wide, want %v", i, step.Width.Format(measure.In), want.Format(measure.In))
		}
	}
	// Raw area goes into seams and into what is left, nowhere else.
	before := measure.Area(c.Length, c.Width.Surd())
	first := steps[1]
	seam := measure.Area(first.Length, (2 * quarter).Surd())
	if after := measure.Area(first.Length, first.Width.Surd()).Add(seam); !after.Equal(before) {
		t.Errorf("a fold loses %s", measure.FormatArea(before.Sub(after), measure.In))
	}
}
