package check

import (
	"slices"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/source"
)

// neighbours finds, among the findings of one size, those that may follow from
// another, without looking at all of them.
type neighbours struct {
	sizes map[string]*derive.Size
	about map[string]map[int][]int // by size and the number of what they are about
	at    map[placeOf][]int
}

type placeOf struct {
	size string
	at   source.Range
}

func newNeighbours(sizes []*derive.Size, all []found) neighbours {
	n := neighbours{map[string]*derive.Size{}, map[string]map[int][]int{}, map[placeOf][]int{}}
	for _, s := range sizes {
		if name := s.Of.Name.Text; n.sizes[name] == nil {
			n.sizes[name], n.about[name] = s, map[int][]int{}
		}
	}
	for i, f := range all {
		if s := n.sizes[f.size]; s != nil {
			about, at := s.Number(f.About), placeOf{f.size, f.at}
			n.about[f.size][about], n.at[at] = append(n.about[f.size][about], i), append(n.at[at], i)
		}
	}
	return n
}

// follow are those that follow from a root, the j-th of all: they are about
// something that depends on what the root is about, or only compare a printed figure
// with the very thing that is at fault. From a root that covers figures only
// follows that one of those is more than the recipe takes, or where she who
// follows them comes no further: the first of two such roots, by the order of the
// rules, is also the first in the order of the work.
func (n neighbours) follow(all []found, j int) []int {
	root := &all[j]
	s := n.sizes[root.size]
	if !root.Root || s == nil {
		return nil
	}
	var out []int
	if len(root.Covers) > 0 {
		for _, at := range root.Covers {
			for _, i := range n.at[placeOf{root.size, at}] {
				if f := &all[i]; len(f.Covers) > 0 && j < i || slices.Contains(surplusRules, f.check.Rule) {
					out = append(out, i)
				}
			}
		}
		return out
	}
	about := n.about[root.size]
	if !root.printed() {
		for _, i := range about[s.Number(root.About)] {
			if all[i].printed() {
				out = append(out, i)
			}
		}
	}
	for _, e := range s.Effects(root.About) {
		out = append(out, about[e]...)
	}
	return out
}
