package tabulate

import (
	"fmt"
	"maps"
	"math/big"
	"slices"
	"strings"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/internal/supply"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// orderSheet is what to order of whom, which can be sent as it stands.
func (t takings) orderSheet() report.Sheet {
	list := t.orders(report.Table{ID: "orders", Heading: "Orders by supplier", Lead: []string{
		"The cheapest order that is enough for all kits to be made and those allowed for miscuts, at the supplier's price for the quantity. Stock on hand is used first.",
		"Beyond need is what is still there when all kits are cut.",
	}}, true)
	return report.Sheet{ID: "orders", Title: "Orders", Wide: true, Tables: append([]report.Table{list}, t.landed()...)}
}

// orders fills a table of orders, one row an article and a total for each
// supplier; whole says that remnants and other orders are told, too, and that the
// costs are worked out here, which other tables follow.
func (t takings) orders(table report.Table, whole bool) report.Table {
	table.Columns = []report.Column{
		{ID: "supplier", Title: "Supplier"}, {ID: "article", Title: "Article"}, {ID: "description", Title: "Description"}, {ID: "bolts", Title: "Bolts"},
		{ID: "quantity", Title: "Quantity", Right: true}, {ID: "per", Title: "Per"}, {ID: "price", Title: "Price", Unit: t.Code}, {ID: "cost", Title: "Cost", Unit: t.Code},
		{ID: "order_by", Title: "Order by"}, {ID: "lead", Title: "Lead time", Unit: "days"}, {ID: "beyond", Title: "Beyond need", Right: true},
	}
	if whole {
		table.Columns = append(table.Columns, report.Column{ID: "left", Title: "Left over", Wide: true})
	}
	all := t.Ordered
	var costs, everything []*report.Expr
	for i, a := range all {
		costs, everything = append(costs, costing.Of(a.Cost)), append(everything, costing.Of(a.Cost))
		table.Rows = append(table.Rows, row(t.order(a, whole)...))
		if last := i == len(all)-1 || all[i+1].Supplier != a.Supplier; last {
			table.Rows, costs = append(table.Rows, t.total(a.From(), costs)), nil
		}
	}
	if len(all) > 0 && all[0].Supplier != all[len(all)-1].Supplier {
		table.Rows = append(table.Rows, t.total("All suppliers", everything))
	}
	if len(all) == 0 {
		table.Lead = []string{"Nothing: what is on hand is enough, or no kits are planned."}
	}
	return table
}

// order is the row of an article. While a run is another than it was made for,
// what it says stands out.
func (t takings) order(a *line.Purchase, whole bool) []report.Cell {
	cost := follow(report.Money, a.Cost)
	if whole {
		cost = result(report.Money, a.Cost)
	}
	quantity := inUnit(a.Article, a.Order)
	quantity.Mark, cost.Mark = t.Stale(), t.Stale()
	cells := []report.Cell{
		report.T(a.From()), report.T(a.SKU), report.T(a.Description), report.T(boltsOf(a.Article)), quantity, report.T(string(a.Unit)),
		{Kind: report.Money, Expr: costing.Ref(a.Price.Name, a.Price.Value)}, cost, t.orderBy(a.Article), lead(a.Article), inUnit(a.Article, a.Beyond()).There(),
	}
	if whole {
		cells = append(cells, report.T(t.remains(a.Article)))
	}
	return cells
}

// total is a row of a sum of costs.
func (t takings) total(of string, costs []*report.Expr) report.Row {
	sum := report.Cell{Kind: report.Money, Expr: t.Holds(costing.Sum(costs...)), Mark: t.Stale()}
	return report.Row{Style: report.Total, Cells: []report.Cell{report.T(of), {}, {}, {}, {}, {}, {}, sum, {}, {}, {}}}
}

// orderBy is the last day for an order; empty where nobody says by when it is
// needed.
func (t takings) orderBy(a *supply.Article) report.Cell {
	if day := t.Supply.OrderBy(a); day.Given() {
		return report.T(day.String())
	}
	return report.Cell{}
}

// lead is how long an article takes; empty where the price list does not say.
func lead(a *supply.Article) report.Cell {
	if !a.LeadSaid {
		return report.Cell{}
	}
	return report.N(int64(a.LeadDays))
}

// inUnit is a quantity of an article as it is sold.
func inUnit(a *supply.Article, quantity *big.Rat) report.Cell {
	c := quantityOf(costing.Input{Value: quantity}, string(a.Unit))
	c.Number = nil
	if c.Kind == report.Number {
		c.Number = quantity
	}
	return c
}

// remains is what an order leaves over, and where a larger one is cheaper, what
// the smallest would have cost.
func (t takings) remains(a *supply.Article) string {
	words := remnants(a)
	if a.Order.Cmp(a.Smallest) > 0 {
		if words != "" {
			words += ". "
		}
		words += fmt.Sprintf("Cheaper than %s, which would do, for %s", amountOf(a, a.Smallest), t.money(new(big.Rat).Mul(a.Smallest, a.For(a.Smallest))))
	}
	return words
}

func (t takings) money(r *big.Rat) string {
	return strings.TrimSpace(costing.Round(&report.Expr{Op: report.Const, Value: r}, t.Digits).Value.FloatString(t.Digits) + " " + t.Code)
}

// amountOf is a quantity in words: "26 1/4 yd", "7 packs".
func amountOf(a *supply.Article, quantity *big.Rat) string {
	if !a.ByLength() {
		return pieces(a, supply.Up(quantity))
	}
	return measure.FormatFabric(ticks(a, quantity), unitOf(a))
}

// ticks is a quantity of what is sold by the length, as a length.
func ticks(a *supply.Article, quantity *big.Rat) measure.Length {
	return measure.Length(supply.Up(new(big.Rat).Mul(quantity, big.NewRat(int64(a.Unit.Length()), 1))))
}

// boltsOf is "2 bolts of 15 yd, 1 bolt of 8 yd"; longest first.
func boltsOf(a *supply.Article) string {
	var words []string
	for i, n := range slices.Backward(a.Plan.Order) {
		if n > 0 {
			words = append(words, say.Many(int64(n), "bolt")+" of "+measure.FormatFabric(a.Bolts[i], unitOf(a)))
		}
	}
	switch {
	case len(words) > 0:
		return strings.Join(words, ", ")
	case a.ByLength():
		return "cut to length"
	}
	return ""
}

// remnants are what bolts that are ordered leave over, longest first and rounded
// down to what fabric is sold in; shorter ones are not worth a word.
func remnants(a *supply.Article) string {
	step := measure.Yard / 8
	if unitOf(a) == measure.Cm {
		step = 10 * measure.Centimetre
	}
	many := map[measure.Length]int{}
	for _, c := range a.Plan.Cuts {
		if c.Offer >= 0 && c.Left >= step {
			many[c.Left/step*step] += c.Repeat
		}
	}
	var words []string
	for _, left := range slices.Backward(slices.Sorted(maps.Keys(many))) {
		words = append(words, fmt.Sprintf("%d of %s", many[left], measure.FormatFabric(left, unitOf(a))))
	}
	return strings.Join(words, ", ")
}

// boltSheet is how every bolt is cut, to be ticked off.
func (t takings) boltSheet() report.Sheet {
	table := report.Table{
		ID: "bolts", Heading: "Bolt plan",
		Lead: []string{
			"Cut each bolt in the order of its line. A kit's fabric is never joined from two bolts, and what several leave over does not add up.",
			"Measure each bolt before the first cut. Rotary cutter: close the blade after every cut and cut away from yourself; follow the maker's instructions.",
		},
		Columns: []report.Column{
			{ID: "article", Title: "Article"}, {ID: "from", Title: "From"}, {ID: "number", Title: "How many"}, {ID: "cut", Title: "Cut, of each", Wide: true},
			{ID: "left", Title: "Left of each", Right: true}, {ID: "done", Title: "Done"},
		},
	}
	for i := range t.Supply.Articles {
		table.Rows = append(table.Rows, t.cuts(&t.Supply.Articles[i])...)
	}
	if len(table.Rows) == 0 {
		table.Lead = []string{"Nothing is cut from bolts."}
	}
	return report.Sheet{ID: "bolts", Title: "Bolt plan", Wide: true, Tables: []report.Table{t.holdsNow(), table, t.madeFor()}}
}

// holdsNow says above the bolts whether they are still to be cut as it says below.
func (t takings) holdsNow() report.Table {
	return report.Table{
		ID: "bolt-plan-holds", Columns: []report.Column{{ID: "what", Title: "This sheet"}, {ID: "holds", Title: "Holds for the runs"}, {ID: "differ", Title: "Runs differ by", Unit: "kits"}},
		Rows: []report.Row{row(report.T("Bolt plan"), t.holds(), follow(report.Number, t.Differs()))},
	}
}

func (t takings) cuts(a *supply.Article) []report.Row {
	if !a.ByLength() || a.Err != nil {
		return nil
	}
	var rows []report.Row
	for _, c := range a.Plan.Cuts {
		from := "part-bolt of "
		if c.Offer >= 0 {
			from = "bolt of " + measure.FormatFabric(a.Bolts[c.Offer], unitOf(a))
		} else {
			from += measure.RoundedFabric(a.Stock.OnHand[c.OnHand], unitOf(a), measure.Down)
		}
		var cut []string
		for _, p := range c.Pieces {
			cut = append(cut, fmt.Sprintf("%d at %s for %s", p.Count, measure.FormatCut(a.Wants[p.Want].Length, unitOf(a)), a.Wants[p.Want].Name))
		}
		if len(cut) == 0 {
			cut = []string{"stays whole"}
		}
		rows = append(rows, row(report.T(a.SKU), report.T(from), report.N(int64(c.Repeat)), report.T(strings.Join(cut, ", then ")), report.F(c.Left, unitOf(a)).There(), report.Tick()))
	}
	for _, p := range a.Plan.Rest {
		from := "ordered length"
		if a.Discontinued {
			from = "missing"
		}
		w := a.Wants[p.Want]
		rows = append(rows, row(report.T(a.SKU), report.T(from), report.N(int64(p.Count)), report.T(measure.FormatCut(w.Length, unitOf(a))+" for "+w.Name), report.Cell{}, report.Tick()))
	}
	if len(rows) == 0 {
		return nil
	}
	heading := report.Row{Style: report.Group, Cells: []report.Cell{report.T(strings.TrimSuffix(a.SKU+", "+a.Description, ", ") + ". " + t.proof(a))}}
	return append([]report.Row{heading}, rows...)
}

// proof says how sure it is that no cheaper order would do.
func (t takings) proof(a *supply.Article) string {
	loss := ""
	if a.Loss.BasisPoints > 0 {
		loss = fmt.Sprintf(", %s %% of each bolt lost", strings.TrimSuffix(strings.TrimRight(big.NewRat(a.Loss.BasisPoints, 100).FloatString(2), "0"), "."))
	}
	if a.Discontinued || a.Order.Sign() == 0 {
		return "Nothing is ordered."
	}
	order := fmt.Sprintf("Order of %s for %s%s", amountOf(a, a.Order), t.money(a.Cost()), loss)
	if beyond := a.Beyond(); beyond.Sign() > 0 {
		order += fmt.Sprintf(", %s beyond need", measure.RoundedFabric(ticks(a, beyond), unitOf(a), measure.Down))
	}
	if a.Proved {
		return order + ": proved, no cheaper one is enough."
	}
	return order + ": for under " + t.money(a.Bound) + " none is enough; between the two nothing is proved."
}

// madeFor is the runs that the bolt plan holds for.
func (t takings) madeFor() report.Table {
	table := report.Table{
		ID: "made-for", Heading: "What the bolt plan was made for",
		Columns: []report.Column{{ID: "kit", Title: "Kit"}, {ID: "make", Title: "To cut", Unit: "kits"}, {ID: "made_for", Title: "Made for", Unit: "kits"}, {ID: "differs", Title: "Differs by", Unit: "kits"}, {ID: "bolt_plan", Title: "Bolt plan"}},
	}
	for _, r := range t.Runs {
		table.Rows = append(table.Rows, row(report.T(r.Name()), report.Cell{Kind: report.Number, Expr: r.ToCut()}, report.N(int64(r.Takes())), result(report.Number, r.Differs), state(r)))
	}
	table.Rows = append(table.Rows, report.Row{Style: report.Total, Cells: []report.Cell{report.T("All kits"), {}, {}, result(report.Number, t.Differs()), {}}})
	return table
}
