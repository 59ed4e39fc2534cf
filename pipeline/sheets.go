package pipeline

import (
	"yardproof/pipeline/internal/tabulate"
	"yardproof/schema/plan"
)

// known is all that the tables of the plan may show.
func (w *work) known() tabulate.Input {
	return tabulate.Input{
		Plan: w.plan, Sizes: w.sizes, Project: w.settings, Prices: w.prices(),
		Findings: w.outcome.Findings,
	}
}

// prices are those of the plan's articles, nil when its project names no list.
// It gets no others, so that its result cannot depend on them.
func (w *work) prices() *plan.PriceList {
	if w.project == nil {
		return nil
	}
	return w.project.prices.Only(w.skus)
}

// summaries are what was kept of each plan for the line's own tables.
func (l *line) summaries() []tabulate.Summary {
	var summaries []tabulate.Summary
	for _, p := range l.plans {
		summaries = append(summaries, p.summary)
	}
	return summaries
}
