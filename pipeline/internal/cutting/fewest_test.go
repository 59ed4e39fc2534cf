package cutting

import (
	"testing"

	"yardproof/schema/measure"
)

func TestTheRulerIsSetOnceForEachHeight(t *testing.T) {
	for i, p := range quilts(30, 16) {
		seen := map[measure.Length]bool{}
		last := measure.Length(0)
		for _, r := range solved(t, p).Layout.Rows {
			if r.Height != last && seen[r.Height] {
				t.Errorf("%d: strips of %d are cut twice", i, r.Height)
			}
			seen[r.Height], last = true, r.Height
		}
	}
}

func TestStripsOfOneSizeAreFilledOneByOne(t *testing.T) {
	// 60 squares of 2 1/2 in: three strips of 16 and one of 12, whose end is
	// longer than four ends of 2 1/2 in (worked by hand).
	p := Problem{Cloth: Cloth{Width: in(320)}, Pieces: []Piece{{Name: "square", Across: in(20), Along: in(20), Count: 60}}}
	l := solved(t, p).Layout
	if len(l.Rows) != 2 || l.Rows[0].Repeat != 3 || l.Rows[0].Cuts[0].Count != 16 || l.Rows[1].Cuts[0].Count != 12 {
		t.Errorf("got %+v", l)
	}
}

func TestMixedStripsAreCutAlikeWhereTheyCan(t *testing.T) {
	// Strips of 5 + 3 and 3 + 5 hold no more than two of 4 + 4; strips of one size
	// stay as they are (worked by hand).
	in := &instance{width: 16, heights: []int64{1}}
	for range 2 {
		in.kinds = append(in.kinds, kind{demand: 8, shapes: []shape{{width: 2}}})
	}
	mixed := plan{{pattern{count: []int{5, 3}}, 1}, {pattern{count: []int{3, 5}}, 1}}
	if got := in.fewestPatterns(mixed, in.demands()); len(got) != 1 || got[0].times != 2 || got[0].count[0] != 4 || got[0].count[1] != 4 {
		t.Errorf("got %+v", got)
	}
	single := plan{{pattern{count: []int{8, 0}}, 1}, {pattern{count: []int{0, 8}}, 1}}
	if got := in.fewestPatterns(single, in.demands()); len(got) != 2 {
		t.Errorf("got %+v", got)
	}
}
