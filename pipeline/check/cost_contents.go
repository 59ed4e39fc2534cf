package check

import (
	"fmt"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/plan"
)

var contentsChecks = []Check{
	{
		Rule: "cost/kit-lacks", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "a kit neither holds a fabric of the quilt nor says that it does not",
		Why:     "Whoever buys a kit takes it to hold the quilt. A kit of red and cream for a quilt with a green border is opened on the evening that was kept for it, and the green is not there; it is missing from the kit's cost, too.",
		Fix:     "add the fabric to the kit, or say on the label that it is not in it, by its role or name or by what it is for: backing, binding, border",
		Run:     kitLacks,
	},
}

// kitLacks reports the fabrics that are used in a size and that its kit leaves
// out without a word.
func kitLacks(p *Pass) {
	k := p.Size.Of.Kit
	if k == nil || len(k.Fabrics) == 0 {
		return
	}
	held := map[string]bool{}
	for _, role := range k.Fabrics {
		if p.Size.Fabric(role.Text) == nil {
			return // which fabric was meant is not known
		}
		held[role.Text] = true
	}
	var lacking []string
	var related []Related
	for _, f := range p.Size.Fabrics {
		if f.Used() && !held[f.Role.Text] && !p.excluded(k, f) {
			lacking = append(lacking, fmt.Sprintf("%q", f.Role.Text))
			related = append(related, Related{f.Role.At, "a fabric that it leaves out"})
		}
	}
	if len(lacking) == 0 {
		return
	}
	names := inWords(lacking)
	p.Report(k.Fabrics[0].At, Finding{
		Message: fmt.Sprintf("the quilt takes %s, and the kit neither holds %s nor says so", names, it(len(lacking))),
		Hint:    fmt.Sprintf("add %s to the kit's \"fabrics\", or what the label says to its \"excludes\"", names),
		Related: related,
	})
}

func it(n int) string {
	if n == 1 {
		return "it"
	}
	return "them"
}

// excluded reports whether a kit's label says that a fabric is not in it: by its
// role or name, or by all that it is for.
func (p *Pass) excluded(k *plan.Kit, f *derive.Fabric) bool {
	says := func(what string) bool {
		what = strings.ToLower(what)
		for _, e := range k.Excludes {
			if what != "" && strings.Contains(" "+strings.ToLower(e.Text), " "+what) { // "borders", too
				return true
			}
		}
		return false
	}
	if says(f.Role.Text) || says(f.Name.Text) {
		return true
	}
	uses := p.uses(f.Role.Text)
	for _, use := range uses {
		if !says(use) {
			return false
		}
	}
	return len(uses) > 0
}

// uses are what a fabric is for, in the words of a label; "top" for whatever
// has no word of its own.
func (p *Pass) uses(role string) []string {
	var all []string
	seen := map[string]bool{}
	for _, m := range p.Size.Of.Once() {
		if !m.Fabric || !m.Made || m.Name.Text != role {
			continue
		}
		use, ok := strings.CutPrefix(m.By, "the ")
		switch {
		case strings.HasPrefix(m.By, "border "):
			use = "border"
		case !ok || use == "layout":
			use = "top"
		}
		if !seen[use] {
			seen[use] = true
			all = append(all, use)
		}
	}
	return all
}
