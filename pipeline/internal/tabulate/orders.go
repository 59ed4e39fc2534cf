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
	"yardproof/schema/plan"
)

// orderSheet is what to order of whom, which can be sent as it stands.
func (t takings) orderSheet() report.Sheet {
	list := t.orders(report.Table{ID: "orders", Heading: "Orders by supplier",
		Lead: []string{"Money is the quantity times the price of the inputs; a supplier's price for larger quantities counts where the order reaches it."}}, true)
	return report.Sheet{ID: "orders", Title: "Orders", Wide: true, Tables: append([]report.Table{list}, t.landed()...)}
}

// orders fills a table of orders, one row an article and a total for each
// supplier; whole says that remnants and minimums are told, too, and that the costs are
// worked out here, which other tables follow.
func (t takings) orders(table report.Table, whole bool) report.Table {
	table.Columns = []report.Column{
		{ID: "supplier", Title: "Supplier"}, {ID: "article", Title: "Article"}, {ID: "description", Title: "Description"}, {ID: "bolts", Title: "Bolts"},
		{ID: "quantity", Title: "Quantity", Right: true}, {ID: "per", Title: "Per"}, {ID: "price", Title: "Price", Unit: t.Code}, {ID: "cost", Title: "Cost", Unit: t.Code}, {ID: "order_by", Title: "Order by"},
	}
	if whole {
		table.Columns = append(table.Columns, report.Column{ID: "left", Title: "Left over of the bolts", Wide: true})
	}
	all := t.Ordered
	var costs, everything []*report.Expr
	for i, a := range all {
		shown := follow(report.Money, a.Cost)
		if whole {
			shown = result(report.Money, a.Cost)
		}
		costs, everything = append(costs, costing.Of(a.Cost)), append(everything, costing.Of(a.Cost))
		cells := []report.Cell{
			report.T(a.From()), report.T(a.SKU), report.T(a.Description), report.T(boltsOf(a.Article)), quantity(a.Article), report.T(string(a.Unit)),
			{Kind: report.Money, Expr: costing.Ref(a.Price.Name, a.Price.Value)}, shown, t.orderBy(a.Article),
		}
		if whole {
			cells = append(cells, report.T(remnants(a.Article)))
		}
		table.Rows = append(table.Rows, row(cells...))
		if last := i == len(all)-1 || all[i+1].Supplier != a.Supplier; last {
			table.Rows, costs = append(table.Rows, total(a.From(), costs)), nil
		}
	}
	if len(all) > 0 && all[0].Supplier != all[len(all)-1].Supplier {
		table.Rows = append(table.Rows, total("All suppliers", everything))
	}
	if len(all) == 0 {
		table.Lead = []string{"Nothing: what is on hand is enough, or no kits are planned."}
	}
	return table
}

// total is a row of a sum of costs.
func total(of string, costs []*report.Expr) report.Row {
	return report.Row{Style: report.Total, Cells: []report.Cell{report.T(of), {}, {}, {}, {}, {}, {}, {Kind: report.Money, Expr: costing.Sum(costs...)}, {}}}
}

// orderBy is the last day for an order; where nobody says by when it is needed,
// how long it takes.
func (t takings) orderBy(a *supply.Article) report.Cell {
	switch day := t.Supply.OrderBy(a); {
	case day.Given():
		return report.T(day.String())
	case a.LeadDays > 0:
		return report.T("takes " + say.Many(int64(a.LeadDays), "day"))
	}
	return report.Cell{}
}

func quantity(a *supply.Article) report.Cell {
	c := report.Cell{Kind: report.Number, Number: a.Order}
	switch a.Unit {
	case plan.PerYard:
		return report.F(a.Plan.Length, measure.In)
	case plan.PerMetre:
		return report.F(a.Plan.Length, measure.Cm)
	}
	return c
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
	return report.Sheet{ID: "bolts", Title: "Bolt plan", Wide: true, Tables: []report.Table{table, t.madeFor()}}
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
	heading := report.Row{Style: report.Group, Cells: []report.Cell{report.T(strings.TrimSuffix(a.SKU+", "+a.Description, ", ") + ". " + proof(a))}}
	return append([]report.Row{heading}, rows...)
}

// proof says how sure it is that no shorter order would do.
func proof(a *supply.Article) string {
	loss := ""
	if a.Loss.BasisPoints > 0 {
		loss = fmt.Sprintf(", %s %% of each bolt lost", strings.TrimSuffix(strings.TrimRight(big.NewRat(a.Loss.BasisPoints, 100).FloatString(2), "0"), "."))
	}
	length := func(n int64) string { return measure.FormatFabric(measure.Length(n), unitOf(a)) }
	switch {
	case a.Discontinued || a.Plan.Length == 0:
		return "Nothing is ordered."
	case a.Plan.Proved:
		return "Order of " + length(a.Plan.Cost) + loss + ": proved, no shorter one is enough."
	}
	return "Order of " + length(a.Plan.Cost) + loss + ": under " + measure.RoundedFabric(measure.Length(a.Plan.Bound), unitOf(a), measure.Down) + " none is enough; between the two nothing is proved."
}

// madeFor is the runs that the bolt plan holds for.
func (t takings) madeFor() report.Table {
	table := report.Table{
		ID: "made-for", Heading: "What the bolt plan was made for",
		Columns: []report.Column{{ID: "kit", Title: "Kit"}, {ID: "make", Title: "To make", Unit: "kits"}, {ID: "made_for", Title: "Made for", Unit: "kits"}, {ID: "differs", Title: "Differs by", Unit: "kits"}, {ID: "bolt_plan", Title: "Bolt plan"}},
	}
	for _, r := range t.Runs {
		table.Rows = append(table.Rows, row(report.T(r.Name()), report.Cell{Kind: report.Number, Expr: line.Ref(r.ToMake)}, report.N(int64(r.Make)), result(report.Number, r.Differs), state(r)))
	}
	table.Rows = append(table.Rows, report.Row{Style: report.Total, Cells: []report.Cell{report.T("All kits"), {}, {}, result(report.Number, t.Differs()), {}}})
	return table
}
