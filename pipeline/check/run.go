package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
	"yardproof/schema/plan"
)

// Input is a plan and what was derived of it.
type Input struct {
	Plan     *plan.Plan
	Sizes    []*derive.Size
	Kits     []*kit.Kit      // of the sizes
	Project  *plan.Project   // nil for a plan on its own
	Prices   *plan.PriceList // may be nil
	Stock    *plan.Stock     // may be nil
	Thorough bool            // run the thorough rules too
	Stop     func() bool     // tells that nobody waits for the findings any more; may be nil
}

// All runs every rule of scope Plan and Size over a plan and its derived
// sizes, folds what follows from something else, and returns the findings in
// order. A rule that panics becomes a finding of run/crash; the others still
// run.
func All(in Input) []diag.Finding {
	pass := &Pass{Plan: in.Plan, Kits: in.Kits, Project: in.Project, Prices: in.Prices, Stock: in.Stock}
	if pass.Project == nil {
		pass.Project = &plan.Project{}
	}
	for i := range registry {
		c := &registry[i]
		switch {
		case c.Thorough && !in.Thorough:
		case c.Scope == Plan:
			pass.run(c, nil)
		case c.Scope == Size:
			for _, s := range in.Sizes {
				if in.Stop != nil && in.Stop() {
					return nil
				}
				pass.run(c, s)
			}
		}
	}
	return assemble(in.Plan, in.Sizes, pass.found)
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
