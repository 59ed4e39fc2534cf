package pipeline

import (
	ofLine "yardproof/pipeline/internal/line"
	"yardproof/pipeline/internal/tabulate"
	"yardproof/schema/plan"
)

// known is all that the tables of the plan may show.
func (w *work) known() tabulate.Input {
	return tabulate.Input{
		Plan: w.plan, Sizes: w.sizes, Project: w.settings, Kits: w.kits, Alone: ofLine.AsIfAlone(w.kits, w.prices(), w.solved.stop),
		Findings: w.outcome.Findings, Excused: w.outcome.Excused, Studio: w.settings.Studio.Text, Stop: w.solved.stop,
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

// stock is what there is of the plan's articles that are no longer made, and of
// its kits if there is such an article. Of others only the line's rules ask.
func (w *work) stock(skus []string) *plan.Stock {
	if w.project == nil {
		return nil
	}
	var gone []string
	for _, sku := range skus {
		if p, ok := w.project.prices.Find(sku); ok && p.Discontinued {
			gone = append(gone, sku)
		}
	}
	if len(gone) == 0 {
		return nil
	}
	return w.project.stock.Only(gone, w.id)
}

// summaries are what was kept of each plan for the line's own tables.
func (l *line) summaries() []ofLine.Summary {
	var summaries []ofLine.Summary
	for _, p := range l.plans {
		summaries = append(summaries, p.summary)
	}
	return summaries
}
