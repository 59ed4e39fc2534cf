package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/schema/plan"
)

var labourChecks = []Check{
	{
		Rule: "cost/no-minutes", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "a kit's labour counts 0, for nothing says how long it takes",
		Why:     "At 18.00 an hour, 20 minutes of cutting and packing are 6.00 a kit. Where neither the kit says its minutes nor the project the rates to reckon them from, the cost lacks them, and the margin looks met when it is not.",
		Fix:     "give the kit its minutes, 0 where it takes no paid labour, or give the project its rates",
		Run:     noMinutes,
	},
}

// noMinutes reports a kit whose labour has a price but no length.
func noMinutes(p *Pass) {
	rate := p.Project.LabourRate
	if !rate.Given() || rate.Value.Sign() == 0 || p.Project.Rates.Given() {
		return
	}
	seen := map[*plan.Kit]bool{nil: true}
	for _, w := range p.wardrobe() {
		k := w.Of.Kit
		if seen[k] || k.Minutes.Given() {
			continue
		}
		seen[k] = true
		p.Report(k.At, Finding{
			Message: fmt.Sprintf("%slabour counts 0 in the kit's cost, at a labour rate of %s an hour: neither does the kit say its minutes, nor the project the rates to reckon them from", w.way, p.money(rate.Value)),
			Hint:    "give the kit its \"minutes\" (0 where it takes no paid labour), or the project its \"rates\"",
		})
	}
}
