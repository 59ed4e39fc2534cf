package line

import (
	"math/big"
	"slices"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
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
	InKits *report.Expr   // what kits bear in its place; nil where they are costed at the list's price
}

// land works out the landed cost of each order that the project says anything of.
func (o *Orders) land() {
	names := names{}
	for i, l := range o.Supply.Landed {
		var of []*Purchase
		for _, a := range o.Ordered {
			if a.Supplier == l.Supplier {
				of = append(of, a)
			}
		}
		if len(of) > 0 {
			o.Landed = append(o.Landed, o.landed(i+1, l, of, names))
		}
	}
}

func (o *Orders) landed(n int, l plan.Landed, of []*Purchase, names names) Landed {
	landed := Landed{N: n, Supplier: l.Supplier, SharedBy: sharedBy(l, of), Extra: costing.Extra{
		Freight: amountCell(names.of("landed_freight", l.Supplier), l.Freight), Fees: amountCell(names.of("landed_fees", l.Supplier), l.Fees),
		Duty: costing.Input{Name: names.of("landed_duty", l.Supplier), Value: big.NewRat(l.Duty.BasisPoints, 10_000)},
	}}
	var weights []*report.Expr
	for _, a := range of {
		landed.Articles = append(landed.Articles, LandedArticle{Purchase: a, Goods: costing.Result{Name: names.of("landed_goods", a.SKU), Expr: costing.Of(a.Cost)}})
		weights = append(weights, landed.weight(len(weights)))
	}
	for i := range landed.Articles {
		a := &landed.Articles[i]
		whole := costing.Landed(Ref(a.Goods), landed.weight(i), costing.Sum(weights...), landed.Extra, o.Digits)
		a.Whole = costing.Result{Name: names.of("landed", a.SKU), Expr: o.Holds(whole)}
		a.InKits = o.inKits[a.SKU]
		a.Usable = new(big.Rat).Mul(a.Order, big.NewRat(10_000-a.Loss.BasisPoints, 10_000))
		a.Each = o.Holds(costing.Round(costing.Quotient(Ref(a.Whole), &report.Expr{Op: report.Const, Value: a.Usable}), o.Digits+2))
	}
	return landed
}

// weight is what an article's share of freight and fees goes by.
func (l *Landed) weight(i int) *report.Expr {
	a := l.Articles[i]
	if l.SharedBy == "length" {
		return &report.Expr{Op: report.Const, Value: new(big.Rat).Mul(a.Order, big.NewRat(int64(a.Unit.Length()), int64(measure.Metre)))}
	}
	return Ref(a.Goods)
}

func amountCell(name string, a plan.Amount) costing.Input {
	in := costing.Input{Name: name, Value: new(big.Rat)}
	if a.Given() {
		in.Value = a.Value
	}
	return in
}

// sharedBy is length only where everything of the order is sold by the length, in
// whatever unit.
func sharedBy(l plan.Landed, of []*Purchase) string {
	if !l.ByLength || slices.ContainsFunc(of, func(a *Purchase) bool { return !a.ByLength() }) {
		return "value"
	}
	return "length"
}
