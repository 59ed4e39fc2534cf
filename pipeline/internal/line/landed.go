package line

import (
	"fmt"
	"math/big"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/report"
	"yardproof/schema/plan"
)

// Landed is what the articles ordered of a supplier cost on the shelf, with
// freight, duty and fees.
type Landed struct {
	N        int // that tables and cells are numbered by
	Supplier string
	SharedBy string // what freight and fees are shared by: value or length
	costing.Extra
	Articles []LandedArticle
}

// LandedArticle is one article of them.
type LandedArticle struct {
	*Purchase
	Goods  costing.Result // as Cost of the order
	Whole  costing.Result // with its share of freight, duty and fees
	Usable *big.Rat       // in the price's unit: what bolts do not lose
	Each   *report.Expr   // of what is usable; may be finer than the minor unit
}

// land works out the landed cost of each order that the project says anything of.
func (o *Orders) land() {
	for i, l := range o.Supply.Landed {
		var of []*Purchase
		for _, a := range o.Ordered {
			if a.Supplier == l.Supplier {
				of = append(of, a)
			}
		}
		if len(of) > 0 {
			o.Landed = append(o.Landed, o.landed(i+1, l, of))
		}
	}
}

func (o *Orders) landed(n int, l plan.Landed, of []*Purchase) Landed {
	landed := Landed{N: n, Supplier: l.Supplier, SharedBy: sharedBy(l, of), Extra: costing.Extra{
		Freight: amountCell("landed_freight", n, l.Freight), Fees: amountCell("landed_fees", n, l.Fees),
		Duty: costing.Input{Name: fmt.Sprintf("landed_duty.%d", n), Value: big.NewRat(l.Duty.BasisPoints, 10_000)},
	}}
	var weights []*report.Expr
	for i, a := range of {
		landed.Articles = append(landed.Articles, LandedArticle{Purchase: a, Goods: costing.Result{Name: fmt.Sprintf("landed_goods.%d.%d", n, i+1), Expr: a.Cost.Expr}})
		weights = append(weights, landed.weight(i))
	}
	for i := range landed.Articles {
		a := &landed.Articles[i]
		whole := costing.Landed(Ref(a.Goods), landed.weight(i), costing.Sum(weights...), landed.Extra, o.Digits)
		a.Whole = costing.Result{Name: fmt.Sprintf("landed.%d.%d", n, i+1), Expr: whole}
		a.Usable = new(big.Rat).Mul(a.Order, big.NewRat(10_000-a.Loss.BasisPoints, 10_000))
		a.Each = costing.Round(costing.Quotient(Ref(a.Whole), &report.Expr{Op: report.Const, Value: a.Usable}), o.Digits+2)
	}
	return landed
}

// weight is what an article's share of freight and fees goes by.
func (l *Landed) weight(i int) *report.Expr {
	a := l.Articles[i]
	if l.SharedBy == "length" {
		return &report.Expr{Op: report.Const, Value: a.Order}
	}
	return Ref(a.Goods)
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
func sharedBy(l plan.Landed, of []*Purchase) string {
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
