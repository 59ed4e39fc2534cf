package costing

import (
	"math/big"
	"slices"
	"strings"

	"yardproof/pipeline/report"
)

// Input is a number that a person may change, and the name of its cell.
type Input struct {
	Name  string   `json:"name"`
	Value *big.Rat `json:"value"`
}

func (in Input) ref() *report.Expr { return Ref(in.Name, in.Value) }

// Kit is what goes into the kit of one size. Names are those of the cells
// that hold the numbers; results are named with Suffix, so that several sizes
// can stand in one workbook. It is kept from run to run, as JSON.
type Kit struct {
	Suffix    string     `json:"suffix"`
	Digits    int        `json:"digits"` // decimals of the currency's minor unit
	Materials []Material `json:"materials,omitempty"`
	Minutes   Input      `json:"minutes"` // of labour a kit
	Rate      Input      `json:"rate"`    // an hour
	Packaging Input      `json:"packaging"`
	Pattern   Input      `json:"pattern"`
	Fixed     Input      `json:"fixed"`  // costs of the run that do not depend on the number of kits
	Margin    Input      `json:"margin"` // wanted, as a share of the price
	Asked     Input      `json:"asked"`  // the price asked; zero when there is none yet
	Run       Input      `json:"run"`    // kits planned; zero when there are none
}

// Material is one fabric of a kit.
type Material struct {
	Quantity Input `json:"quantity"` // in the unit the price is for
	Price    Input `json:"price"`
}

// inputs lists all numbers that the kit's costs are worked out from.
func (k *Kit) inputs() []*Input {
	all := []*Input{&k.Minutes, &k.Rate, &k.Packaging, &k.Pattern, &k.Fixed, &k.Margin, &k.Asked, &k.Run}
	for i := range k.Materials {
		all = append(all, &k.Materials[i].Quantity, &k.Materials[i].Price)
	}
	return all
}

// WithSuffix is the kit with another suffix, also at the inputs that have the
// kit's own. What it shares with other kits keeps its name.
func (k Kit) WithSuffix(suffix string) Kit {
	own := k.Suffix
	k.Suffix = suffix
	k.Materials = slices.Clone(k.Materials)
	for _, in := range k.inputs() {
		if name, ok := strings.CutSuffix(in.Name, own); ok {
			in.Name = name + suffix
		}
	}
	return k
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
		r := named("cost."+strings.TrimSuffix(m.Quantity.Name, k.Suffix), round(times(m.Quantity.ref(), m.Price.ref()), k.Digits))
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
