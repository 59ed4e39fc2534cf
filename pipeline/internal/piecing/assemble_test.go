package piecing_test

import (
	"slices"
	"testing"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

func grid(rows, columns int, b piecing.Box) [][]piecing.Box {
	var out [][]piecing.Box
	for range rows {
		out = append(out, slices.Repeat([]piecing.Box{b}, columns))
	}
	return out
}

// Finished, a straight grid is W = k*b by H = r*b; unfinished 2s more. Printing
// 6 blocks of 8 1/2 in as 51 in is a mistake of the trade: they finish 48.
func TestAssembleGrid(t *testing.T) {
	for _, c := range []struct {
		what                        string
		rows, columns               int
		block, rawWide, rawHigh     measure.Length
		finishedWide, finishedHeigh measure.Length
	}{
		{"nine-patch of 2 1/2 in squares", 3, 3, roll, inch * 13 / 2, inch * 13 / 2, 6 * inch, 6 * inch},
		{"6 x 6 trimmed to 8 3/8 in", 6, 6, inch * 67 / 8, inch * 191 / 4, inch * 191 / 4, inch * 189 / 4, inch * 189 / 4},
		{"6 x 6 of nominal 8 1/2 in", 6, 6, inch * 17 / 2, inch * 97 / 2, inch * 97 / 2, 48 * inch, 48 * inch},
		{"5 across, 6 down", 6, 5, inch * 67 / 8, inch * 319 / 8, inch * 191 / 4, inch * 315 / 8, inch * 189 / 4},
		{"one block", 1, 1, 5 * inch, 5 * inch, 5 * inch, inch * 9 / 2, inch * 9 / 2},
	} {
		a := piecing.Assemble(grid(c.rows, c.columns, box(c.block, c.block)), quarter)
		wantBox(t, c.what, a.Box, c.rawWide, c.rawHigh)
		wantBox(t, c.what+", finished", a.Finished(quarter), c.finishedWide, c.finishedHeigh)
	}
}

// Untrimmed tube squares keep their roots: 6 by 6 finish 47.911688 in, neither
// 47 7/8 nor 48.
func TestAssembleTubeSquares(t *testing.T) {
	side := tubeOf(3, quarter, false).Side()
	a := piecing.Assemble(grid(6, 6, piecing.Box{Width: side, Height: side}), quarter)
	finished := a.Finished(quarter).Width
	if got := finished.Decimal(measure.In, 6); got != "47.911688" {
		t.Errorf("%s in, want 47.911688 in", got)
	}
	if finished.Cmp((48*inch).Surd()) >= 0 || finished.Cmp(length(t, "47 7/8").Surd()) <= 0 {
		t.Error("not between 47 7/8 in and 48 in")
	}
}

// A rail fence of n strips finished g wide is n*g square, and its segment is
// as long as the set is wide: n*g + 2s.
func TestRailFence(t *testing.T) {
	set := setWidth(same(4, roll), quarter)
	a := piecing.Assemble([][]piecing.Box{{box(set, set)}}, quarter)
	wantBox(t, "finished", a.Finished(quarter), 8*inch, 8*inch)
}

// Where rows or the parts in them disagree the smaller size holds, and both
// sizes can be told.
func TestAssembleUneven(t *testing.T) {
	a := piecing.Assemble([][]piecing.Box{
		{box(3*inch, 4*inch), box(3*inch, 5*inch)},
		{box(5*inch, 2*inch)},
	}, quarter)
	wantSurd(t, "first row's width", a.RowWidths[0], inch*11/2)
	wantSurd(t, "second row's width", a.RowWidths[1], 5*inch)
	wantSurd(t, "first row's least height", a.RowHeights[0], 4*inch)
	wantSurd(t, "first row's greatest height", a.Tallest[0], 5*inch)
	wantBox(t, "all", a.Box, 5*inch, inch*11/2)
}

func TestTurned(t *testing.T) {
	wantBox(t, "turned", box(2*inch, 3*inch).Turned(), 3*inch, 2*inch)
}

func TestAssembleNothing(t *testing.T) {
	if a := piecing.Assemble(nil, quarter); !a.Width.IsZero() || !a.Height.IsZero() {
		t.Errorf("no rows make %v", a)
	}
}
