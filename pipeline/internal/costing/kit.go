package costing

import (
	"math/big"
	"strings"

	"yardproof/pipeline/report"
)

// Input is a number that a person may change, and the name of its cell.
type Input struct {
	Name  string   `json:"name"`
	Value *big.Rat `json:"value"`
}

func (in Input) ref() *report.Expr { return Ref(in.Name, in.Value) }

// Inputs are the numbers that the costs of a kit follow from, besides what goes
// into it. Names are those of the cells that hold the numbers; results are named
// with Suffix, so that several sizes can stand in one workbook. They are kept
// from run to run, as JSON.
type Inputs struct {
	Suffix    string `json:"suffix"`
	Digits    int    `json:"digits"`  // decimals of the currency's minor unit
	Minutes   Input  `json:"minutes"` // of labour a kit
	Rate      Input  `json:"rate"`    // an hour
	Packaging Input  `json:"packaging"`
	Pattern   Input  `json:"pattern"`
	Spoilage  Input  `json:"spoilage"`  // kits that are spoiled, as a share of those made well
	FeeShare  Input  `json:"fee_share"` // of the price, that being paid costs
	FeeEach   Input  `json:"fee_each"`  // what it costs besides, a sale
	Trade     Input  `json:"trade"`     // what a shop pays, as a share of the price
	Fixed     Input  `json:"fixed"`     // costs of the run that do not depend on the number of kits
	Margin    Input  `json:"margin"`    // wanted, as a share of the price
	Asked     Input  `json:"asked"`     // the price asked; zero when there is none yet
	Run       Input  `json:"run"`       // kits planned; zero when there are none
	Bought    Input  `json:"bought"`    // all fabric bought for the run; zero where it is not known

	Ordered *Ordered `json:"-"` // stands for what is bought where that is not known; may be nil
}

// Ordered is what is ordered for a run.
type Ordered struct {
	Cost  Result
	Stale *report.Expr // the condition that the run is another than it was worked out for
}

// RunAgain is shown in place of what follows from another run than the orders were
// worked out for.
const RunAgain = "run again"

// Item is one fabric of a kit, or another thing that goes in.
type Item struct {
	Quantity Input // in the unit the price is for
	Price    Input
	Landed   *Landing // what comes on top of the price; nil for nothing
	Cost     Result   // quantity x price, rounded half away from zero to the minor unit
}

// Item is so much of something at a price, with what comes on top of it, in the
// kit.
func (k Inputs) Item(quantity, price Input, landed *Landing) Item {
	each := price.ref()
	if landed != nil {
		each = landed.Of(price, k.Digits)
	}
	cost := round(times(quantity.ref(), each), k.Digits)
	return Item{quantity, price, landed, k.named("cost."+strings.TrimSuffix(quantity.Name, k.Suffix), cost)}
}

func (k Inputs) named(name string, e *report.Expr) Result { return Result{name + k.Suffix, e} }

// inputs lists all the numbers.
func (k *Inputs) inputs() []*Input {
	return []*Input{&k.Minutes, &k.Rate, &k.Packaging, &k.Pattern, &k.Spoilage, &k.FeeShare, &k.FeeEach, &k.Trade, &k.Fixed, &k.Margin, &k.Asked, &k.Run, &k.Bought}
}

// WithSuffix is the inputs with another suffix, also at those that have the
// kit's own. What is shared with other kits keeps its name.
func (k Inputs) WithSuffix(suffix string) Inputs {
	own := k.Suffix
	k.Suffix = suffix
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
// the minor unit, each line once. Two unit costs are told apart: that of fabric
// as cut for the kit (the used basis), and that of all fabric bought for the run
// (the bought basis), remnants with it.
type Costs struct {
	Fabric       Result // sum of the fabrics
	Other        Result // sum of the things
	Labour       Result // minutes / 60 x rate
	Spoilage     Result // share of all the above, packaging and pattern
	Unit         Result // used basis: fabric + things + labour + packaging + pattern + spoilage
	ForMargin    Result // least price that leaves the margin wanted: (C + f) / (1 - q - m), rounded up
	Keystone     Result // twice the unit cost, a margin of one half
	Price        Result // the price asked, or the price for the margin when none is asked
	Net          Result // what is left of the price when it has been paid: P (1 - q) - f
	Margin       Result // (net - C) / P
	Markup       Result // (P - C) / C
	BreakEven    Result // kits to sell until the fixed costs are met: fixed / contribution, up
	Contribution Result // what a kit sold leaves towards the fixed costs: net - C
	RunCost      Result // kits planned x C + fixed costs
	RunProfit    Result // kits planned x net - RunCost, if all are sold

	UnitBought   Result // bought basis: Unit with what was bought for the run in place of the fabric
	MarginBought Result // (net - that) / P

	TradePrice     Result // what a shop pays: its share of the price
	TradeMargin    Result // (W - C) / W
	RetailForTrade Result // least price at which the shop's share leaves the margin wanted: C / (1 - m) / share, rounded up
}

// Besides are the lines of a kit's cost that are no goods: labour, packaging and
// the printed pattern.
func Besides(k Inputs, c Costs) []*report.Expr {
	return []*report.Expr{c.Labour.ref(), k.Line(k.Packaging), k.Line(k.Pattern)}
}

// Leaves is the share of the price that payment fees and the margin wanted leave
// for the cost. Where it is none no price will do.
func (k Inputs) Leaves() *report.Expr {
	return less(less(fixed(1), k.FeeShare.ref()), k.Margin.ref())
}

// Line is an input as a line of money: rounded half away from zero to the minor
// unit.
func (k Inputs) Line(in Input) *report.Expr { return round(in.ref(), k.Digits) }

// Never is the break-even of a kit that is sold at or below its cost, and the
// price for a margin that no price leaves.
const Never = "never"

// Price works out what a kit of some fabrics and things costs. The formulas are the trade's own, defined as
// any business dictionary does: markup (P-C)/C, margin (P-C)/P, keystone 2C.
// Payment fees of q and f are taken from the price first, and are not rounded:
// they are settled over many sales.
func Price(k Inputs, fabrics, things []Item) Costs {
	p := pricing{k: k}
	p.c.Fabric, p.c.Other = p.named("fabric_cost", total(fabrics)), p.named("things_cost", total(things))
	p.cost()
	p.price()
	p.run()
	p.bought()
	p.trade()
	return p.c
}

type pricing struct {
	k Inputs
	c Costs
}

func (p *pricing) named(name string, e *report.Expr) Result { return p.k.named(name, e) }

// total is the sum of what items cost.
func total(items []Item) *report.Expr {
	var refs []*report.Expr
	for _, i := range items {
		refs = append(refs, i.Cost.ref())
	}
	return sum(refs...)
}

func (p *pricing) cost() {
	k, c := &p.k, &p.c
	c.Labour = p.named("labour_cost", round(times(over(k.Minutes.ref(), fixed(60)), k.Rate.ref()), k.Digits))
	parts := append([]*report.Expr{c.Fabric.ref(), c.Other.ref()}, Besides(*k, *c)...)
	c.Spoilage = p.named("spoilage_cost", round(times(k.Spoilage.ref(), sum(parts...)), k.Digits))
	c.Unit = p.named("unit_cost", sum(append(parts, c.Spoilage.ref())...))
}

func (p *pricing) price() {
	k, c := &p.k, &p.c
	unit := c.Unit.ref()
	left := k.Leaves()
	c.ForMargin = p.named("price_for_margin", ifOver(left, fixed(0), roundUp(over(sum(unit, k.FeeEach.ref()), left), k.Digits), words(Never)))
	c.Keystone = p.named("keystone", times(fixed(2), unit))
	c.Price = p.named("price", ifOver(k.Asked.ref(), fixed(0), k.Asked.ref(), c.ForMargin.ref()))
	price := c.Price.ref()
	c.Net = p.named("net_price", less(less(price, times(k.FeeShare.ref(), price)), k.FeeEach.ref()))
	c.Margin = p.named("margin", over(less(c.Net.ref(), unit), price))
	c.Markup = p.named("markup", over(less(price, unit), unit))
}

func (p *pricing) run() {
	k, c := &p.k, &p.c
	unit, net := c.Unit.ref(), c.Net.ref()
	c.Contribution = p.named("contribution", less(net, unit))
	each := c.Contribution.ref()
	c.BreakEven = p.named("break_even", ifOver(each, fixed(0), roundUp(over(k.Fixed.ref(), each), 0), words(Never)))
	c.RunCost = p.named("run_cost", sum(times(k.Run.ref(), unit), k.Fixed.ref()))
	c.RunProfit = p.named("run_profit", less(times(k.Run.ref(), net), c.RunCost.ref()))
}

// bought is known where both the run and what was bought for it are. The fabric
// of spoiled kits is in what was bought.
func (p *pricing) bought() {
	k, c := &p.k, &p.c
	rest := append([]*report.Expr{c.Other.ref()}, Besides(*k, *c)...)
	spoilage := round(times(k.Spoilage.ref(), sum(rest...)), k.Digits)
	each := func(bought *report.Expr) *report.Expr {
		return ifOver(k.Run.ref(), fixed(0), sum(append(rest, spoilage, round(over(bought, k.Run.ref()), k.Digits))...), words(report.Unknown))
	}
	all, left := words(report.Unknown), words(report.Unknown)
	if k.Ordered != nil {
		all = If(k.Ordered.Stale, words(RunAgain), each(k.Ordered.Cost.ref()))
	}
	c.UnitBought = p.named("unit_cost_bought", ifOver(k.Bought.ref(), fixed(0), each(k.Bought.ref()), all))
	margin := over(less(c.Net.ref(), c.UnitBought.ref()), c.Price.ref())
	if k.Ordered != nil {
		left = If(k.Ordered.Stale, words(RunAgain), margin)
	}
	c.MarginBought = p.named("margin_bought", ifOver(k.Bought.ref(), fixed(0), margin, left))
}

// trade is what selling to a shop leaves. Shops pay by invoice: no fee is taken.
func (p *pricing) trade() {
	k, c := &p.k, &p.c
	unit, whole := c.Unit.ref(), less(fixed(1), k.Margin.ref())
	c.TradePrice = p.named("trade_price", round(times(k.Trade.ref(), c.Price.ref()), k.Digits))
	c.TradeMargin = p.named("trade_margin", over(less(c.TradePrice.ref(), unit), c.TradePrice.ref()))
	c.RetailForTrade = p.named("retail_for_trade", roundUp(over(over(unit, whole), k.Trade.ref()), k.Digits))
}

// Product is one input times another.
func Product(a, b Input) *report.Expr { return times(a.ref(), b.ref()) }
