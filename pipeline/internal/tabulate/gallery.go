package tabulate

import (
	"slices"
	"strconv"
	"strings"

	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
)

// What a plan's pictures may come to. Many times a large pattern's are within it;
// a workbook beyond it takes long to write, and nobody to print.
const (
	mostPictures = 240
	mostPatches  = 100_000 // of quilt tops, and as many of what they are sewn from
)

// cutPictures is how many pictures of layouts each size may have: where all sizes
// together have more layouts than a plan is drawn with, an equal share.
func (in Input) cutPictures() int {
	layouts := 0
	for _, s := range in.Sizes {
		for _, f := range s.Fabrics {
			if f.Used() {
				layouts++
			}
		}
	}
	if layouts <= mostPictures {
		return mostPictures
	}
	return max(1, mostPictures/len(in.Sizes))
}

// hang leaves out pictures where there are more than most. Every sheet has an equal
// share, and those with fewer leave the rest to the others; of a sheet the first
// ones stay, and its last table says that others do not.
func hang(sheets []report.Sheet, most int) {
	wants := make([]int, len(sheets))
	total := 0
	for i, s := range sheets {
		wants[i] = len(s.Pictures)
		total += wants[i]
	}
	if total <= most {
		return
	}
	for i, n := range share(most, wants) {
		if n < wants[i] {
			sheets[i].Pictures = sheets[i].Pictures[:n]
			leaveOut(&sheets[i], n)
		}
	}
}

// leaveOut says, once, that a sheet has no more pictures than so many.
func leaveOut(s *report.Sheet, n int) {
	last := &s.Tables[len(s.Tables)-1]
	last.Foot = slices.DeleteFunc(last.Foot, func(said string) bool { return strings.HasPrefix(said, fewer) })
	last.Foot = append(last.Foot, fewer+say.Many(int64(n), "picture")+"; a plan is drawn in "+strconv.Itoa(mostPictures)+" at most.")
}

const fewer = "Not everything is drawn here. These are the first "

// share gives each as much as it wants of a whole, as far as equal parts go.
func share(whole int, wants []int) []int {
	got := make([]int, len(wants))
	order := make([]int, len(wants))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return wants[a] - wants[b] })
	for n, i := range order {
		got[i] = min(wants[i], whole/(len(order)-n))
		whole -= got[i]
	}
	return got
}
