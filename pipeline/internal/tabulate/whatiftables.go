package tabulate

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

func (w *whatif) kitTable() report.Table {
	t := report.Table{
		ID: "what-if", Heading: "Every kit",
		Columns: []report.Column{
			{ID: "kit", Title: "Kit"}, {ID: "run", Title: "Kits planned"}, {ID: "asked", Title: "Price asked", Unit: w.code}, {ID: "target", Title: "Target margin", Unit: "% of price"},
			{ID: "cost", Title: "Cost of a kit", Unit: w.code}, {ID: "for_target", Title: "Price for the target", Unit: w.code}, {ID: "price", Title: "Price taken", Unit: w.code}, {ID: "net", Title: "Left after fees", Unit: w.code},
			{ID: "margin", Title: "Margin", Unit: "% of price"}, {ID: "under", Title: "Under target", Unit: "1 is yes"}, {ID: "run_cost", Title: "Cost of the run", Unit: w.code}, {ID: "run_profit", Title: "Profit of the run", Unit: w.code},
		},
		Foot: []string{
			"A price asked of 0 stands for the price at the target margin. A margin under its target is bold, on grey and in a box.",
			"Cost of the run: kits planned times cost, and the fixed costs of the run. Profit of the run: if all kits are sold.",
		},
	}
	for _, k := range w.order {
		t.Rows = append(t.Rows, k.row())
	}
	t.Rows = append(t.Rows, w.total())
	t.Foot = append(t.Foot, w.chartsSay()...)
	if len(w.unfit) > 0 {
		t.Foot = append(t.Foot, "Not proved, and so left out: "+strings.Join(w.unfit, "; ")+".")
	}
	return t
}

func (k *lineKit) row() report.Row {
	margin := result(report.Share, k.costs.Margin)
	margin.Mark = underTarget(k.cells, k.costs)
	return row(report.T(k.label), kitsPlanned(k.cells), priceAsked(k.cells), k.targetCell(),
		result(report.Money, k.costs.Unit), result(report.Money, k.costs.ForMargin), result(report.Money, k.costs.Price), result(report.Money, k.costs.Net),
		margin, result(report.Number, k.under), result(report.Money, k.costs.RunCost), result(report.Money, k.costs.RunProfit))
}

// targetCell is the kit's own target, or follows the one it shares.
func (k *lineKit) targetCell() report.Cell {
	if k.target.Name == "" {
		return input(report.Share, k.cells.Margin)
	}
	return report.Cell{Kind: report.Share, Name: k.cells.Margin.Name, Expr: costing.Ref(k.target.Name, k.target.Value)}
}

func (w *whatif) total() report.Row {
	var runs, costs, profits []*report.Expr
	for _, k := range w.order {
		runs = append(runs, costing.Ref(k.cells.Run.Name, k.cells.Run.Value))
		costs = append(costs, costing.Of(k.costs.RunCost))
		profits = append(profits, costing.Of(k.costs.RunProfit))
	}
	money := func(list []*report.Expr) report.Cell {
		return report.Cell{Kind: report.Money, Expr: costing.Sum(list...)}
	}
	return report.Row{Style: report.Total, Cells: []report.Cell{
		report.T("All kits"), {Kind: report.Number, Expr: costing.Round(costing.Sum(runs...), 0)}, {}, {}, {}, {}, {}, {}, {}, result(report.Number, w.short()), money(costs), money(profits),
	}}
}

// short is how many kits are under their target.
func (w *whatif) short() costing.Result {
	var under []*report.Expr
	for _, k := range w.order {
		under = append(under, costing.Of(k.under))
	}
	return costing.Result{Name: "kits_under_target", Expr: costing.Round(costing.Sum(under...), 0)}
}

// makeUp is what the cost of each kit is made of.
func (w *whatif) makeUp() report.Table {
	t := report.Table{
		ID: "cost-make-up", Heading: "What the cost of a kit is made of",
		Columns: []report.Column{
			{ID: "kit", Title: "Kit"}, {ID: "minutes", Title: "Labour", Unit: "min"}, {ID: "fixed", Title: "Fixed costs of the run", Unit: w.code},
			{ID: "fabric", Title: "Fabric", Unit: w.code}, {ID: "things", Title: "Things besides", Unit: w.code}, {ID: "labour", Title: "Labour", Unit: w.code},
			{ID: "packaging", Title: "Packaging", Unit: w.code}, {ID: "pattern", Title: "Printed pattern", Unit: w.code}, {ID: "spoilage", Title: "Spoiled kits", Unit: w.code},
			{ID: "cost", Title: "Cost of a kit", Unit: w.code},
		},
	}
	for _, k := range w.order {
		named := func(r costing.Result) report.Cell { return report.Cell{Kind: report.Money, Name: r.Name, Expr: r.Expr} }
		t.Rows = append(t.Rows, row(report.T(k.label), input(report.Number, k.cells.Minutes), input(report.Money, k.cells.Fixed),
			named(k.costs.Fabric), named(k.costs.Other), named(k.costs.Labour), input(report.Money, k.cells.Packaging), input(report.Money, k.cells.Pattern), named(k.costs.Spoilage), follow(report.Money, k.costs.Unit)))
	}
	t.Foot = w.chartsSay()
	return t
}

// fabrics is what every kit holds of each fabric, as bought.
func (w *whatif) fabrics() report.Table {
	t := report.Table{
		ID: "kit-fabrics", Heading: "What is in every kit",
		Columns: []report.Column{
			{ID: "kit", Title: "Kit"}, {ID: "fabric", Title: "Fabric or thing"}, {ID: "article", Title: "Article"}, {ID: "quantity", Title: "In the kit", Right: true},
			{ID: "per", Title: "Sold by the"}, {ID: "price", Title: "Price", Unit: w.code}, {ID: "cost", Title: "Cost", Unit: w.code},
		},
		Foot: []string{"Lengths as bought, not as used. Prices are those of the what-if sheet."},
	}
	for _, k := range w.order {
		for _, l := range slices.Concat(k.fabrics, k.things) {
			t.Rows = append(t.Rows, row(report.T(k.label), report.T(l.Fabric), report.T(l.SKU), quantityOf(l.Quantity, l.Unit), report.T(l.Unit),
				report.Cell{Kind: report.Money, Expr: costing.Ref(l.Price.Name, l.Price.Value)},
				report.Cell{Kind: report.Money, Name: l.Cost.Name, Expr: l.Cost.Expr}))
		}
	}
	return t
}

// quantityOf shows how much of a fabric goes into a kit as it is sold.
func quantityOf(q costing.Input, unit string) report.Cell {
	c := report.Cell{Kind: report.Number, Number: q.Value, Name: q.Name}
	switch plan.PriceUnit(unit) {
	case plan.PerYard:
		c = report.Cell{Kind: report.Fabric, Exact: measure.FromRat(q.Value).MulInt(int64(measure.Yard)), Unit: measure.In, Toward: measure.Up, Number: q.Value, Name: q.Name}
	case plan.PerMetre:
		c = report.Cell{Kind: report.Fabric, Exact: measure.FromRat(q.Value).MulInt(int64(measure.Metre)), Unit: measure.Cm, Toward: measure.Up, Number: q.Value, Name: q.Name}
	}
	return c
}

// Charts are read on paper, where a page holds so many bars, and nobody turns
// over more than a few.
const (
	barsAChart = 24
	mostCharts = 8
)

// chartsSay tells which kits the charts leave out.
func (w *whatif) chartsSay() []string {
	const shown = barsAChart * mostCharts
	if len(w.order) <= shown {
		return nil
	}
	return []string{fmt.Sprintf("The charts show the first %d kits of %d.", shown, len(w.order))}
}

// charts splits the rows of a table into charts of like length.
func (w *whatif) charts(of report.Chart) []report.Chart {
	n := len(w.order)
	parts := min(mostCharts, (n+barsAChart-1)/barsAChart)
	each := min(barsAChart, (n+parts-1)/parts)
	var all []report.Chart
	for i := range parts {
		c := of
		c.From, c.To = i*each, min(n, (i+1)*each)
		if parts > 1 {
			c.ID = fmt.Sprintf("%s-%d", of.ID, i+1)
			c.Title = fmt.Sprintf("%s (%d of %d)", of.Title, i+1, parts)
		}
		all = append(all, c)
	}
	return all
}

func (w *whatif) marginCharts() []report.Chart {
	return w.charts(report.Chart{
		ID: "margin", Title: "Margin and target of every kit", About: "Two bars a kit: the margin at the price taken, and the target.",
		Table: "what-if", Label: "kit", Values: []string{"margin", "target"}, Axis: "% of the price",
	})
}

func (w *whatif) makeUpCharts() []report.Chart {
	return w.charts(report.Chart{
		ID: "cost-make-up", Title: "What the cost of a kit is made of", About: "One bar a kit, of fabric, things besides, labour, packaging, printed pattern and spoiled kits end to end.",
		Table: "cost-make-up", Label: "kit", Values: []string{"fabric", "things", "labour", "packaging", "pattern", "spoilage"}, Stacked: true, Axis: strings.TrimSpace(w.code + " a kit"),
	})
}
