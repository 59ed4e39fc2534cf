package tabulate

import (
	"fmt"
	"slices"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/report"
)

// landed is what the articles of each order cost on the shelf, with freight,
// duty and fees; none where the project says nothing of these.
func (t takings) landed() []report.Table {
	var tables []report.Table
	for _, l := range t.Landed {
		tables = append(tables, t.landedOf(l))
	}
	return tables
}

func (t takings) landedOf(l line.Landed) report.Table {
	table := report.Table{
		ID: fmt.Sprintf("landed-%d", l.N), Heading: "Landed cost: " + l.Supplier,
		Columns: []report.Column{
			{ID: "article", Title: "Article"}, {ID: "description", Title: "Description"}, {ID: "goods", Title: "Goods", Unit: t.Code},
			{ID: "landed", Title: "With freight, duty and fees", Unit: t.Code}, {ID: "usable", Title: "Usable", Right: true}, {ID: "each", Title: "Landed, each", Unit: t.Code}, {ID: "per", Title: "Per"},
		},
		Foot: []string{"Freight and fees are shared by " + l.SharedBy + ". What bolts lose is not usable, and what is usable bears the cost."},
	}
	bear := slices.ContainsFunc(l.Articles, func(a line.LandedArticle) bool { return a.InKits != nil })
	if bear {
		table.Columns = append(table.Columns, report.Column{ID: "in_kits", Title: "In kits, each", Unit: t.Code})
		table.Foot = append(table.Foot, "In kits: what a kit's cost bears, by the usual order of the project file. It is marked where this order's is higher.")
	}
	for _, r := range []struct {
		says string
		cell report.Cell
	}{{"Freight", input(report.Money, l.Freight)}, {"Other fees", input(report.Money, l.Fees)}, {"Duty, % of goods", input(report.Share, l.Duty)}} {
		table.Rows = append(table.Rows, row(report.T(r.says), report.Cell{}, report.Cell{}, r.cell))
	}
	for _, a := range l.Articles {
		cells := []report.Cell{report.T(a.SKU), report.T(a.Description), result(report.Money, a.Goods), result(report.Money, a.Whole),
			quantityOf(costing.Input{Value: a.Usable}, string(a.Unit)), report.Cell{Kind: report.Number, Expr: a.Each}, report.T(string(a.Unit))}
		if a.InKits != nil {
			cells = append(cells, report.Cell{Kind: report.Number, Expr: a.InKits, Mark: costing.Exceeds(a.Each, a.InKits)})
		}
		table.Rows = append(table.Rows, row(cells...))
	}
	return table
}
