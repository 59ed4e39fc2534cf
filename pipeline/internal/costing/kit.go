package costing

import (
	"math/big"

	"yardproof/pipeline/report"
)

// Input is a number that a person may change, and the name of its cell.
type Input struct {
	Name  string
	Value *big.Rat
}

func (in Input) ref() *report.Expr { return Ref(in.Name, in.Value) }

// Kit is what goes into the kit of one size. Names are those of the cells
// that hold the numbers; results are named with Suffix, so that several sizes
// can stand in one workbook.
type Kit struct {
	Suffix    string
	Digits    int // decimals of the currency's minor unit
	Materials []Material
	Minutes   Input // of labour a kit
	Rate      Input // an hour
	Packaging Input
	Pattern   Input
	Fixed     Input // costs of the run that do not depend on the number of kits
	Margin    Input // wanted, as a share of the price
	Asked     Input // the price asked; zero when there is none yet
	Run       Input // kits planned; zero when there are none
}

// Material is one fabric of a kit.
type Material struct {
	Quantity Input // in the unit the price is for
	Price    Input
}

// Result is a worked-out figure and the name of the cell it stands in.
type Result struct {
	Name string
	*report.Expr
}

func (r Result) ref() *report.Expr {
	return &report.Expr{Op: report.Ref, Name: r.Name, Value: r.Value, Text: r.Text}
}

// Costs are the figures of a kit. Money lines round half away from zero to
// the minor unit, each line once.
type Costs struct {
	Materials []Result // quantity x price
	Fabric    Result   // their sum
	Labour    Result   // minutes / 60 x rate
	Unit      Result   // fabric + labour + packaging + pattern
	ForMargin Result   // least price that leaves the margin wanted: C / (1 - m), rounded up
	Keystone  Result   // twice the unit cost, a margin of one half
	Price     Result   // the price asked, or the price for the margin when none is asked
	Margin    Result   // (P - C) / P at that price
	Markup    Result   // (P - C) / C at that price
	BreakEven Result   // kits to sell until the fixed costs are met: fixed / (P - C), up
	RunCost   Result   // kits planned x C + fixed costs
	RunProfit Result   // kits planned x P - RunCost, if all are sold
}

// Never is the break-even of a kit that is sold at or below its cost.
const Never = "never"

// Price works out a kit's costs. The formulas are the trade's own, defined as
// any business dictionary does: markup (P-C)/C, margin (P-C)/P.
func Price(k Kit) Costs {
	var c Costs
	named := func(name string, e *report.Expr) Result { return Result{name + k.Suffix, e} }
	var lines []*report.Expr
	for i, m := range k.Materials {
		r := named("cost."+m.Price.Name, round(times(m.Quantity.ref(), m.Price.ref()), k.Digits))
		c.Materials = append(c.Materials, r)
		lines = append(lines, c.Materials[i].ref())
	}
	c.Fabric = named("fabric_cost", sum(lines...))
	c.Labour = named("labour_cost", round(times(over(k.Minutes.ref(), fixed(60)), k.Rate.ref()), k.Digits))
	c.Unit = named("unit_cost", sum(c.Fabric.ref(), c.Labour.ref(), k.Packaging.ref(), k.Pattern.ref()))
	unit := c.Unit.ref()
	c.ForMargin = named("price_for_margin", roundUp(over(unit, less(fixed(1), k.Margin.ref())), k.Digits))
	c.Keystone = named("keystone", times(fixed(2), unit))
	c.Price = named("price", ifOver(k.Asked.ref(), fixed(0), k.Asked.ref(), c.ForMargin.ref()))
	price := c.Price.ref()
	c.Margin = named("margin", over(less(price, unit), price))
	c.Markup = named("markup", over(less(price, unit), unit))
	c.BreakEven = named("break_even", ifOver(price, unit, roundUp(over(k.Fixed.ref(), less(price, unit)), 0), words(Never)))
	c.RunCost = named("run_cost", sum(times(k.Run.ref(), unit), k.Fixed.ref()))
	c.RunProfit = named("run_profit", less(times(k.Run.ref(), price), c.RunCost.ref()))
	return c
}

// Product is one input times another.
func Product(a, b Input) *report.Expr { return times(a.ref(), b.ref()) }

// MarginOf is the margin of a price over a cost: (P - C) / P.
func MarginOf(price, cost Input) *report.Expr {
	return over(less(price.ref(), cost.ref()), price.ref())
}
