package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/schema/plan"
)

var labourChecks = []Check{
	{
		Rule: "cost/no-labour-rate", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "a kit's minutes cost nothing, for the project names no labour rate",
		Why:     "Twenty minutes of cutting and packing at 18.00 an hour are 6.00 a kit. Where the project names no rate they are counted and cost nothing, and the margin looks met when it is not.",
		Fix:     "give the project its labour rate, \"0\" where nobody is paid",
		Run:     noLabourRate,
	},
	{
		Rule: "cost/no-minutes", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "a kit's labour counts 0, for nothing says how long it takes",
		Why:     "At 18.00 an hour, 20 minutes of cutting and packing are 6.00 a kit. Where neither the kit says its minutes nor the project the rates to work them out from, the cost lacks them, and the margin looks met when it is not.",
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
			Message: fmt.Sprintf("%slabour counts 0 in the kit's cost, at a labour rate of %s an hour: neither does the kit say its minutes, nor the project the rates to work them out from", w.way, p.money(rate.Value)),
			Hint:    "give the kit its \"minutes\" (0 where it takes no paid labour), or the project its \"rates\"",
		})
	}
}

// noLabourRate reports a kit whose labour has a length but no price.
func noLabourRate(p *Pass) {
	if p.Project.File == nil || p.Project.LabourRate.Given() {
		return
	}
	seen := map[*plan.Kit]bool{nil: true}
	for _, w := range p.wardrobe() {
		k := w.Of.Kit
		if seen[k] {
			continue
		}
		seen[k] = true
		f := Finding{
			Message: fmt.Sprintf("%sthe kit takes %s, and the project names no labour rate: they count 0 in its cost", w.way, count(k.Minutes.N, "minute")),
			Hint:    "give the project its \"labour_rate\" (\"0\" where nobody is paid)",
		}
		switch {
		case !k.Minutes.Given() && !p.Project.Rates.Given() && p.Prices != nil:
			f.Message = w.way + "labour counts 0 in the kit's cost: neither does the kit say its minutes, nor the project a labour rate"
			f.Hint = "give the kit its \"minutes\" (0 where it takes no paid labour), and the project its \"labour_rate\""
			p.Report(k.At, f)
		case k.Minutes.N > 0:
			p.Report(k.Minutes.At, f)
		case !k.Minutes.Given() && p.Project.Rates.Given():
			f.Message = w.way + "the kit's minutes are worked out from the project's rates, and it names no labour rate: they count 0 in its cost"
			p.Report(k.At, f)
		}
	}
}
