package tabulate

import (
	"slices"
	"strings"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/report"
)

// whatif is the costing of a line's kits as sheets.
type whatif struct {
	*line.Costing
	runs *line.Orders // whose sheet has the runs to change; nil where there is none
}

// follow shows what another cell works out.
func follow(kind report.CellKind, r costing.Result) report.Cell {
	return report.Cell{Kind: kind, Expr: costing.Of(r)}
}

// margin is the margin at the price taken, and stands out under the target.
func margin(k *line.Priced) report.Cell {
	c := follow(report.Share, k.Costs.Margin)
	c.Mark = line.UnderTarget(k.Cells, k.Costs)
	return c
}

func (w whatif) sheets() []report.Sheet {
	if len(w.Kits) == 0 {
		return nil
	}
	return []report.Sheet{
		{ID: "what-if", Title: "What if", Wide: true, Still: 1,
			Tables: []report.Table{w.rateTable(), w.priceTable(), w.kitTable()}, Charts: w.marginCharts()},
		{ID: "cost-make-up", Title: "Cost make-up", Wide: true, Still: 1, Tables: []report.Table{w.makeUp()}, Charts: w.makeUpCharts()},
		{ID: "kit-fabrics", Title: "Kit fabrics", Tables: []report.Table{w.fabrics()}},
	}
}

func (w whatif) rateTable() report.Table {
	t := report.Table{
		ID: "what-if-rates", Heading: "Labour, fees and target",
		Lead:    []string{"Change a price or a target here, and every sheet of this workbook follows; no plan is changed by it." + w.whereRuns()},
		Columns: []report.Column{{ID: "what", Title: "Input"}, {ID: "value", Title: "Value"}, {ID: "per", Title: "Per"}, {ID: "used", Title: "Used by", Unit: "kits"}},
	}
	t.Rows = append(t.Rows, rows(w.Rates, report.Money)...)
	t.Rows = append(t.Rows, rows(w.Shares, report.Share)...)
	t.Rows = append(t.Rows, rows(w.Margins, report.Share)...)
	return t
}

// whereRuns says where the runs are changed, if not here.
func (w whatif) whereRuns() string {
	if w.runs == nil {
		return ""
	}
	return " Runs are changed on the sheet Run."
}

func (w whatif) priceTable() report.Table {
	t := report.Table{
		ID: "what-if-prices", Heading: "Prices",
		Columns: []report.Column{{ID: "article", Title: "Article"}, {ID: "price", Title: "Price", Unit: w.Code}, {ID: "per", Title: "Per"}, {ID: "used", Title: "Used by", Unit: "kits"}},
	}
	t.Rows = rows(w.Prices, report.Money)
	slices.SortStableFunc(t.Rows, func(a, b report.Row) int { return strings.Compare(a.Cells[0].Text, b.Cells[0].Text) })
	return t
}

// rows lists the inputs. Several may be called the same, where projects differ.
func rows(s line.Shared, kind report.CellKind) []report.Row {
	var rows []report.Row
	for _, in := range s.List {
		rows = append(rows, row(report.T(in.Says), input(kind, in.Input), report.T(in.Per), report.N(int64(in.Users))))
	}
	return rows
}
