package slip

import (
	"fmt"

	"yardproof/schema/amend"
	"yardproof/schema/source"
)

// named reports whether the value names a fabric or a part.
func (v *value) named() bool {
	switch v.Means {
	case "name", "cell", "set_strip":
		return true
	}
	return false
}

// mostNames is how many names are tried in one place.
const mostNames = 8

// rename tries the plan's other fabrics and parts in the place of those that are named.
// Which of them the schema takes there is found out by trying.
func (s *search) rename() {
	fabrics, parts := map[string]bool{}, map[string]bool{}
	var all [2][]string
	size := &s.Plan.Sizes[0]
	for _, f := range size.Fabrics {
		fabrics[f.Role.Text] = true
		all[0] = append(all[0], f.Role.Text)
	}
	for _, p := range size.Parts {
		parts[p.Name.Text] = true
		all[1] = append(all[1], p.Name.Text)
	}
	for _, v := range s.values {
		if !v.named() {
			continue
		}
		others := all[0]
		if parts[v.Node.Text] && !fabrics[v.Node.Text] {
			others = all[1]
		}
		for _, name := range others[:min(mostNames, len(others))] {
			if name != v.Node.Text {
				s.try(candidate{of: v, edits: []source.Edit{s.put(v, amend.Quote(name))}, is: fmt.Sprintf("%q", name), weight: 6, solved: true, root: true})
			}
		}
	}
}
