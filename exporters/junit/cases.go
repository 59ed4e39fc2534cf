package junit

import (
	"slices"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

// group is the findings of one case.
type group struct {
	name     string
	unread   bool // the plan could not be read
	findings []diag.Finding
}

// sortOut gives a plan's groups: the plan as such, then every size in the
// plan's order. Sizes are unknown as long as a plan cannot be read. A finding
// about sizes that the plan does not have is one about the plan.
func sortOut(p report.Outcome) []group {
	groups := []group{{name: "the plan", unread: len(p.Sizes) == 0}}
	for _, size := range p.Sizes {
		groups = append(groups, group{name: size})
	}
	for _, f := range diag.Sort(append([]diag.Finding{}, p.Findings...)) {
		placed := false
		for i := range groups[1:] {
			g := &groups[i+1]
			if holds(f, g.name) {
				g.findings = append(g.findings, f)
				placed = true
			}
		}
		if !placed {
			groups[0].findings = append(groups[0].findings, f)
		}
	}
	return groups
}

func holds(f diag.Finding, size string) bool { return slices.Contains(f.Sizes, size) }
