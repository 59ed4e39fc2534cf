package tabulate

import (
	"fmt"
	"math/big"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/supply"
	"yardproof/pipeline/report"
	"yardproof/schema/plan"
)

// landed is what the articles of each order cost on the shelf, with freight,
// duty and fees; none where the project says nothing of these.
func (t *takings) landed() []report.Table {
	var tables []report.Table
	for i, l := range t.Landed {
		var of []*supply.Article
		for _, a := range t.ordered() {
			if a.Supplier == l.Supplier {
				of = append(of, a)
			}
		}
		if len(of) > 0 {
			tables = append(tables, t.landedOf(i+1, l, of))
		}
	}
	return tables
}

func (t *takings) landedOf(n int, l plan.Landed, of []*supply.Article) report.Table {
	table := report.Table{
		ID: fmt.Sprintf("landed-%d", n), Heading: "Landed cost: " + l.Supplier,
		Columns: []report.Column{
			{ID: "article", Title: "Article"}, {ID: "description", Title: "Description"}, {ID: "goods", Title: "Goods", Unit: t.code},
			{ID: "landed", Title: "With freight, duty and fees", Unit: t.code}, {ID: "usable", Title: "Usable", Right: true}, {ID: "each", Title: "Landed, each", Unit: t.code}, {ID: "per", Title: "Per"},
		},
		Foot: []string{"Freight and fees are shared by " + sharedBy(l, of) + ". What bolts lose is not usable, and what is usable bears the cost."},
	}
	extra := costing.Extra{Freight: amountCell("landed_freight", n, l.Freight), Fees: amountCell("landed_fees", n, l.Fees), Duty: costing.Input{Name: fmt.Sprintf("landed_duty.%d", n), Value: big.NewRat(l.Duty.BasisPoints, 10_000)}}
	for _, r := range []struct {
		says string
		cell report.Cell
	}{{"Freight", input(report.Money, extra.Freight)}, {"Other fees", input(report.Money, extra.Fees)}, {"Duty, % of goods", input(report.Share, extra.Duty)}} {
		table.Rows = append(table.Rows, row(report.T(r.says), report.Cell{}, report.Cell{}, r.cell))
	}
	var goods, weights []*report.Expr
	for i, a := range of {
		goods = append(goods, costing.Ref(fmt.Sprintf("landed_goods.%d.%d", n, i+1), t.costOf(a).Value))
		weights = append(weights, &report.Expr{Op: report.Const, Value: a.Order})
	}
	if sharedBy(l, of) == "value" {
		weights = goods
	}
	for i, cost := range costing.Landed(goods, weights, extra, t.digits) {
		table.Rows = append(table.Rows, t.landedRow(of[i], goods[i].Name, fmt.Sprintf("landed.%d.%d", n, i+1), cost))
	}
	return table
}

// landedRow shows one article. A price each may be finer than the minor unit.
func (t *takings) landedRow(a *supply.Article, goods, name string, cost *report.Expr) report.Row {
	usable := new(big.Rat).Mul(a.Order, big.NewRat(10_000-a.Loss.BasisPoints, 10_000))
	each := costing.Round(costing.Quotient(costing.Ref(name, cost.Value), &report.Expr{Op: report.Const, Value: usable}), t.digits+2)
	return row(report.T(a.SKU), report.T(a.Description), report.Cell{Kind: report.Money, Name: goods, Expr: t.costOf(a)},
		report.Cell{Kind: report.Money, Name: name, Expr: cost}, quantityOf(costing.Input{Value: usable}, string(a.Unit)),
		report.Cell{Kind: report.Number, Expr: each}, report.T(string(a.Unit)))
}

func amountCell(name string, n int, a plan.Amount) costing.Input {
	in := costing.Input{Name: fmt.Sprintf("%s.%d", name, n), Value: new(big.Rat)}
	if a.Given() {
		in.Value = a.Value
	}
	return in
}

// sharedBy is length only where everything of the order is sold by one unit of
// it.
func sharedBy(l plan.Landed, of []*supply.Article) string {
	for _, a := range of {
		if a.Unit != of[0].Unit || !a.ByLength() {
			return "value"
		}
	}
	if l.ByLength {
		return "length"
	}
	return "value"
}
