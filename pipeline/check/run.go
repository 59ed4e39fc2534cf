package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/plan"
)

// All runs every rule of scope Plan and Size over a plan and its derived
// sizes, folds what follows from something else, and returns the findings in
// order. The price list may be nil. A rule that panics becomes a finding of run/crash; the others still
// run.
func All(p *plan.Plan, sizes []*derive.Size, project *plan.Project, prices *plan.PriceList) []diag.Finding {
	pass := &Pass{Plan: p, Project: project, Prices: prices}
	for i := range registry {
		c := &registry[i]
		switch c.Scope {
		case Plan:
			pass.run(c, nil)
		case Size:
			for _, s := range sizes {
				pass.run(c, s)
			}
		}
	}
	return assemble(p, sizes, pass.found)
}

// run runs one rule over one size, or over the plan when size is nil.
func (p *Pass) run(c *Check, size *derive.Size) {
	p.check, p.Size = c, size
	defer func() {
		if r := recover(); r != nil {
			p.check = byRule["run/crash"]
			p.Report(p.Plan.At, Finding{
				Message: fmt.Sprintf("the rule %s stopped on plan %q: %v", c.Rule, p.Plan.ID.Text, r),
				Hint:    "report this with the plan; the other rules have run",
			})
		}
	}()
	c.Run(p)
}
