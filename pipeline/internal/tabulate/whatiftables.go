package tabulate

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

func (w whatif) kitTable() report.Table {
	t := report.Table{
		ID: "what-if", Heading: "Every kit",
		Columns: []report.Column{
			{ID: "kit", Title: "Kit"}, {ID: "run", Title: "Kits planned"}, {ID: "asked", Title: "Price asked", Unit: w.Code}, {ID: "target", Title: "Target margin", Unit: "% of price"},
			{ID: "cost", Title: "Cost of a kit", Unit: w.Code}, {ID: "for_target", Title: "Price for the target", Unit: w.Code}, {ID: "price", Title: "Price taken", Unit: w.Code}, {ID: "net", Title: "Left after fees", Unit: w.Code},
			{ID: "margin", Title: "Margin", Unit: "% of price"}, {ID: "under", Title: "Under target", Unit: "1 is yes"}, {ID: "run_cost", Title: "Cost of the run", Unit: w.Code}, {ID: "run_profit", Title: "Profit of the run", Unit: w.Code},
		},
		Foot: []string{
			"A price asked of 0 stands for the price at the target margin. A margin under its target is bold, on grey and in a box.",
			"Cost of the run: kits planned times cost, and the fixed costs of the run. Profit of the run: if all kits are sold.",
		},
	}
	for _, k := range w.Kits {
		t.Rows = append(t.Rows, w.kitRow(k))
	}
	t.Rows = append(t.Rows, w.total())
	t.Foot = append(t.Foot, w.chartsSay()...)
	if none := w.Unpriced(); len(none) > 0 {
		t.Foot = append(t.Foot, "Payment fees and target leave no price, so that their profit is not in the sum: "+strings.Join(none, "; ")+".")
	}
	if len(w.Unfit) > 0 {
		t.Foot = append(t.Foot, "Not proved, and so left out: "+strings.Join(w.Unfit, "; ")+".")
	}
	return t
}

func (w whatif) kitRow(k *line.Priced) report.Row {
	planned := kitsPlanned(k.Cells)
	if w.runs.Has(k) {
		planned = report.Cell{Kind: report.Number, Expr: costing.Ref(k.Cells.Run.Name, k.Cells.Run.Value)}
	}
	margin := result(report.Share, k.Costs.Margin)
	margin.Mark = line.UnderTarget(k.Cells, k.Costs)
	return row(report.T(k.Label), planned, priceAsked(k.Cells), targetCell(k),
		result(report.Money, k.Costs.Unit), result(report.Money, k.Costs.ForMargin), result(report.Money, k.Costs.Price), result(report.Money, k.Costs.Net),
		margin, result(report.Number, k.Under), result(report.Money, k.Costs.RunCost), result(report.Money, k.Costs.RunProfit))
}

// targetCell is the kit's own target, or follows the one it shares.
func targetCell(k *line.Priced) report.Cell {
	if k.Target.Name == "" {
		return input(report.Share, k.Cells.Margin)
	}
	return report.Cell{Kind: report.Share, Name: k.Cells.Margin.Name, Expr: costing.Ref(k.Target.Name, k.Target.Value)}
}

func (w whatif) total() report.Row {
	runs, costs, profits := w.InAll()
	return report.Row{Style: report.Total, Cells: []report.Cell{
		report.T("All kits"), {Kind: report.Number, Expr: runs}, {}, {}, {}, {}, {}, {}, {}, result(report.Number, w.Short()),
		{Kind: report.Money, Expr: costs}, {Kind: report.Money, Expr: profits},
	}}
}

// makeUp is what the cost of each kit is made of.
func (w whatif) makeUp() report.Table {
	t := report.Table{
		ID: "cost-make-up", Heading: "What the cost of a kit is made of",
		Columns: []report.Column{
			{ID: "kit", Title: "Kit"}, {ID: "minutes", Title: "Labour", Unit: "min"}, {ID: "fixed", Title: "Fixed costs of the run", Unit: w.Code},
			{ID: "fabric", Title: "Fabric", Unit: w.Code}, {ID: "things", Title: "Notions", Unit: w.Code}, {ID: "labour", Title: "Labour", Unit: w.Code},
			{ID: "packaging", Title: "Packaging", Unit: w.Code}, {ID: "pattern", Title: "Printed pattern", Unit: w.Code}, {ID: "spoilage", Title: "Allowance for miscuts", Unit: w.Code},
			{ID: "cost", Title: "Cost of a kit", Unit: w.Code},
		},
	}
	for _, k := range w.Kits {
		named := func(r costing.Result) report.Cell { return report.Cell{Kind: report.Money, Name: r.Name, Expr: r.Expr} }
		t.Rows = append(t.Rows, row(report.T(k.Label), input(report.Number, k.Cells.Minutes), input(report.Money, k.Cells.Fixed),
			named(k.Costs.Fabric), named(k.Costs.Other), named(k.Costs.Labour), input(report.Money, k.Cells.Packaging), input(report.Money, k.Cells.Pattern), named(k.Costs.Spoilage), follow(report.Money, k.Costs.Unit)))
	}
	t.Foot = w.chartsSay()
	return t
}

// fabrics is what every kit holds of each fabric, as bought.
func (w whatif) fabrics() report.Table {
	t := report.Table{
		ID: "kit-fabrics", Heading: "What is in every kit",
		Columns: []report.Column{
			{ID: "kit", Title: "Kit"}, {ID: "fabric", Title: "Fabric or notion"}, {ID: "article", Title: "Article"}, {ID: "quantity", Title: "In the kit", Right: true},
			{ID: "per", Title: "Sold by the"}, {ID: "price", Title: "Price", Unit: w.Code}, {ID: "cost", Title: "Cost", Unit: w.Code},
		},
		Foot: []string{"Lengths as bought, not as used. Prices are those of the what-if sheet."},
	}
	for _, k := range w.Kits {
		for _, l := range slices.Concat(k.Fabrics, k.Things) {
			t.Rows = append(t.Rows, row(report.T(k.Label), report.T(l.Fabric), report.T(l.SKU), quantityOf(l.Quantity, l.Unit), report.T(l.Unit),
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
func (w whatif) chartsSay() []string {
	const shown = barsAChart * mostCharts
	if len(w.Kits) <= shown {
		return nil
	}
	return []string{fmt.Sprintf("The charts show the first %d kits of %d.", shown, len(w.Kits))}
}

// charts splits the rows of a table into charts of like length.
func (w whatif) charts(of report.Chart) []report.Chart {
	n := len(w.Kits)
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

func (w whatif) marginCharts() []report.Chart {
	return w.charts(report.Chart{
		ID: "margin", Title: "Margin and target of every kit", About: "Two bars a kit: the margin at the price taken, and the target.",
		Table: "what-if", Label: "kit", Values: []string{"margin", "target"}, Axis: "% of the price",
	})
}

func (w whatif) makeUpCharts() []report.Chart {
	return w.charts(report.Chart{
		ID: "cost-make-up", Title: "What the cost of a kit is made of", About: "One bar a kit, of fabric, notions, labour, packaging, printed pattern and the allowance for miscuts end to end.",
		Table: "cost-make-up", Label: "kit", Values: []string{"fabric", "things", "labour", "packaging", "pattern", "spoilage"}, Stacked: true, Axis: strings.TrimSpace(w.Code + " a kit"),
	})
}
