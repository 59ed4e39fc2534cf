package pipeline

import (
	"yardproof/pipeline/internal/tabulate"
	"yardproof/pipeline/report"
	"yardproof/schema/plan"
)

// known is all that the tables of the plan may show.
func (w *work) known() tabulate.Input {
	return tabulate.Input{
		Plan: w.plan, Sizes: w.sizes, Project: w.settings, Prices: w.prices(),
		Findings: w.outcome.Findings,
	}
}

// prices are those of the plan's project, nil when it names none.
func (w *work) prices() *plan.PriceList {
	if w.project == nil {
		return nil
	}
	return w.project.prices
}

// sheets are the line's own tables, of what was kept of each plan.
func (l *line) sheets(run *report.Run) []report.Sheet {
	var summaries []tabulate.Summary
	for _, p := range l.plans {
		summaries = append(summaries, p.summary)
	}
	return tabulate.Line(run, summaries)
}
