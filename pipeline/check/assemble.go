package check

import (
	"cmp"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// assemble turns what the rules reported into findings: equal ones of several
// sizes become one, and those that follow from another are folded under it.
func assemble(p *plan.Plan, sizes []*derive.Size, all []found) []diag.Finding {
	causes := causes(sizes, all)
	places := newPlaces(p.File, p.Tree)
	var top []diag.Finding
	var follows [][]diag.Finding
	index := map[int]int{}
	for i := range all {
		if causes[i] < 0 {
			index[i] = len(top)
			top = append(top, places.finding(p, all[i]))
			follows = append(follows, nil)
		}
	}
	for i := range all {
		if root := causes[i]; root >= 0 {
			k := index[root]
			follows[k] = append(follows[k], places.finding(p, all[i]))
		}
	}
	for k := range top {
		top[k].Follows = merge(follows[k])
	}
	return merge(top)
}

// causes gives for every finding the index of the root finding that it follows
// from in the end, or -1.
func causes(sizes []*derive.Size, all []found) []int {
	direct := make([]int, len(all))
	for i := range direct {
		direct[i] = -1
	}
	near := newNeighbours(sizes, all)
	for j := range all {
		for _, i := range near.follow(all, j) {
			if i != j && all[i].Level <= all[j].Level && better(all, j, direct[i]) {
				direct[i] = j
			}
		}
	}
	last := make([]int, len(all))
	for i := range last {
		last[i] = direct[i]
		for range all { // no chain of causes is longer
			if last[i] < 0 || direct[last[i]] < 0 || direct[last[i]] == i {
				break
			}
			last[i] = direct[last[i]]
		}
	}
	return last
}

// better prefers a fault of the recipe to a printed figure that disagrees,
// which may just not have been updated, and otherwise the first found.
func better(all []found, j, than int) bool {
	return than < 0 || all[than].printed() && !all[j].printed()
}

// printed reports whether the finding only compares a printed figure.
func (f found) printed() bool { return strings.HasPrefix(f.check.Rule, "printed/") }

// merge sorts findings and makes one of those that say the same of several
// sizes.
func merge(fs []diag.Finding) []diag.Finding {
	slices.SortStableFunc(fs, func(a, b diag.Finding) int {
		return cmp.Or(diag.Compare(a, b), cmp.Compare(b.Level, a.Level))
	})
	var out []diag.Finding
	for _, f := range fs {
		if n := len(out); n > 0 && diag.Compare(out[n-1], f) == 0 {
			last := &out[n-1]
			for _, s := range f.Sizes {
				if !slices.Contains(last.Sizes, s) {
					last.Sizes = append(last.Sizes, s)
				}
			}
			last.Follows = merge(append(last.Follows, f.Follows...))
			continue
		}
		out = append(out, f)
	}
	return out
}

// places turns ranges into what people look places up by.
type places struct {
	file *source.File
	tree *jsontree.Node
}

func newPlaces(f *source.File, tree *jsontree.Node) places { return places{f, tree} }

func (ps places) finding(p *plan.Plan, f found) diag.Finding {
	out := diag.Finding{
		Rule: f.check.Rule, Level: f.Level, Plan: p.ID.Text,
		Place: ps.at(f.at), Message: f.Message, Hint: f.Hint, Ways: f.Ways,
	}
	if f.size != "" {
		out.Sizes = []string{f.size}
	}
	for _, r := range f.Related {
		out.Related = append(out.Related, diag.Related{Place: ps.at(r.At), Message: r.Message})
	}
	return out
}

func (ps places) at(r source.Range) diag.Place {
	if cell := ps.file.Cell(r.Start); cell != "" {
		return diag.Place{File: ps.file.Name, Range: r, Cell: cell}
	}
	place := diag.Place{
		File: ps.file.Name, Range: r,
		Start: ps.file.Position(r.Start), End: ps.file.Position(r.End),
		Excerpt: ps.file.Excerpt(r),
	}
	if ps.tree != nil {
		place.Pointer = ps.tree.PointerAt(r.Start)
	}
	return place
}

// Problems turns problems of reading a file into findings. The tree may be
// nil when the file could not be decoded.
func Problems(f *source.File, tree *jsontree.Node, planID string, problems []source.Problem) []diag.Finding {
	ps := newPlaces(f, tree)
	var out []diag.Finding
	for _, p := range problems {
		c := byRule[p.Code]
		if c == nil {
			c = byRule["run/crash"]
		}
		if p.Ways != nil {
			p.Hint = source.Hint(p.Ways)
		}
		out = append(out, diag.Finding{
			Rule: c.Rule, Level: c.Level, Plan: planID,
			Place: ps.at(p.Range), Message: p.Message, Hint: p.Hint, Ways: p.Ways,
		})
	}
	return diag.Sort(out)
}

// Trouble is a finding that yardproof could not do its work on a file or
// folder; err says which act failed.
func Trouble(rule, file, message, hint string) diag.Finding {
	c := byRule[rule]
	return diag.Finding{Rule: c.Rule, Level: c.Level, Place: diag.Place{File: file}, Message: message, Hint: hint}
}
