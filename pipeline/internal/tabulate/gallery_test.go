package tabulate

import (
	"slices"
	"strings"
	"testing"

	"yardproof/pipeline/report"
)

func TestPicturesAreShared(t *testing.T) {
	sheets := func(counts ...int) (all []report.Sheet) {
		for _, n := range counts {
			all = append(all, report.Sheet{Tables: make([]report.Table, 2), Pictures: make([]report.Picture, n)})
		}
		return all
	}
	for _, c := range []struct{ counts, kept []int }{
		{[]int{3, 4, 3}, []int{3, 4, 3}},       // as many as there may be
		{[]int{1, 8, 0, 9}, []int{1, 4, 0, 5}}, // nine are left for two
		{[]int{20, 20}, []int{5, 5}},
	} {
		all := sheets(c.counts...)
		hang(all, 10)
		for i, s := range all {
			said := strings.Join(s.Tables[1].Foot, " ")
			if len(s.Pictures) != c.kept[i] || (said != "") != (c.kept[i] < c.counts[i]) || len(s.Tables[0].Foot) > 0 {
				t.Errorf("%v: sheet %d has %d pictures, want %d; it says %q", c.counts, i, len(s.Pictures), c.kept[i], said)
			}
		}
	}
	all := sheets(11)
	leaveOut(&all[0], 12)
	hang(all, 10)
	want := []string{"Not everything is drawn here. These are the first 10 pictures; a plan is drawn in 240 at most."}
	if !slices.Equal(all[0].Tables[1].Foot, want) {
		t.Errorf("%q", all[0].Tables[1].Foot)
	}
}
