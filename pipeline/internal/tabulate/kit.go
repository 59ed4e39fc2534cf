package tabulate

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// kitSheet is the kit costing: inputs that a person may change, and live
// formulas down to price and break-even. ok is false for a plan without a kit.
func (in Input) kitSheet() (report.Sheet, bool) {
	kits := in.kits()
	if len(kits) == 0 {
		return report.Sheet{}, false
	}
	results, made := in.results(kits)
	tables := []report.Table{in.shared(kits), in.bySize(kits), results}
	below := []report.Table{in.moreCosts(kits), quantities(kits, in.works)}
	below[0].Begins = true
	if t, ok := in.cuttingTime(kits); ok {
		below = append(below, t)
	}
	below = append(below, in.runTotals(kits), in.shops(kits))
	if t, ok := in.classes(kits); ok {
		below = append(below, t)
	}
	sheet := report.Sheet{ID: "kit-costing", Title: "Costing", Pages: 2, Tables: append(tables, below...)}
	if len(kits) > 1 { // one bar compares nothing
		sheet.Charts = []report.Chart{made}
	}
	return sheet, true
}

// kits are those of every size of which is known what goes in, after each those
// of its colourways.
func (in Input) kits() []*kit.Kit {
	var kits []*kit.Kit
	for _, s := range in.Sizes {
		kits = append(kits, kit.Costed(in.Kits, s)...)
	}
	return kits
}

func input(kind report.CellKind, in costing.Input) report.Cell {
	return report.Cell{Kind: kind, Number: in.Value, Name: in.Name, Input: true}
}

func kitsPlanned(k costing.Inputs) report.Cell {
	return wholeNumber(k.Run, "How many kits of this size are to be made.")
}

// wholeNumber is an input that counts something.
func wholeNumber(in costing.Input, prompt string) report.Cell {
	c := input(report.Number, in)
	c.Entry = &report.Entry{Whole: true, Prompt: prompt}
	return c
}

func priceAsked(k costing.Inputs) report.Cell {
	c := input(report.Money, k.Asked)
	c.Entry = &report.Entry{Prompt: "What a kit is sold for; 0 for the price at the target margin."}
	return c
}

func result(kind report.CellKind, r costing.Result) report.Cell {
	return report.Cell{Kind: kind, Expr: r.Expr, Name: r.Name}
}

// shared are the inputs that hold for every size: prices and the labour rate.
func (in Input) shared(kits []*kit.Kit) report.Table {
	t := report.Table{
		ID: "inputs", Heading: "Inputs for every size",
		Lead: []string{"Change the marked cells: everything below follows. Prices come from the price list of the project."},
		Columns: []report.Column{
			{ID: "what", Title: "Input", Wide: true}, {ID: "value", Title: "Value", Unit: in.Project.Currency.Code()}, {ID: "per", Title: "Per"}, {ID: "from", Title: "From", Wide: true},
		},
	}
	seen := map[string]bool{}
	input := func(kind report.CellKind, what string, in costing.Input, per, from string) {
		t.Rows = append(t.Rows, row(report.T(what), input(kind, in), report.T(per), report.T(from)))
	}
	for _, k := range kits {
		for _, l := range slices.Concat(k.Fabrics, k.Things) {
			if seen[l.Price.Name] {
				continue
			}
			seen[l.Price.Name] = true
			input(report.Money, l.Title(), l.Price, string(l.Unit), priceFrom(l))
			if l.Landed != nil {
				from := "project file, a usual order of " + l.Listed.Supplier
				input(report.Share, "On top of "+l.Title()+": duty, freight, fees, loss", l.Landed.Share, "% of price", from)
				if l.Landed.Each.Name != "" {
					input(report.Money, "Freight and fees on "+l.Title(), l.Landed.Each, string(l.Unit), from)
				}
			}
		}
	}
	cells := kits[0].Cells
	input(report.Money, "Labour", cells.Rate, "hour", "project file")
	input(report.Share, "Allowance for miscuts", cells.Spoilage, "% of kits made well", "project file")
	input(report.Share, "Payment fee", cells.FeeShare, "% of price", "project file")
	input(report.Money, "Payment fee, fixed part", cells.FeeEach, "sale", "project file")
	input(report.Share, "What a shop pays", cells.Trade, "% of price", "project file; half is common practice")
	return t
}

func priceFrom(l kit.Line) string {
	switch {
	case l.Thing != nil && l.Thing.Price.Given():
		return "plan"
	case !l.Article.Given():
		return "no article named: fill in"
	case !l.Priced:
		return "no price for " + l.Article.Text + ": fill in"
	}
	return "price list, " + l.Article.Text
}

// perSize is a table with a column for each kit's size.
func perSize(id, heading string, kits []*kit.Kit) report.Table {
	t := report.Table{ID: id, Heading: heading, Columns: []report.Column{{ID: "what", Title: "", Wide: true}, {ID: "unit", Title: "Unit"}}}
	for _, k := range kits {
		t.Columns = append(t.Columns, report.Column{ID: columnID(k), Title: k.Name(), Right: true})
	}
	return t
}

func acrossKits(style report.RowStyle, what, unit string, kits []*kit.Kit, cell func(*kit.Kit) report.Cell) report.Row {
	r := report.Row{Style: style, Cells: []report.Cell{report.T(what), report.T(unit)}}
	for _, k := range kits {
		r.Cells = append(r.Cells, cell(k))
	}
	return r
}

func (in Input) bySize(kits []*kit.Kit) report.Table {
	code := in.Project.Currency.Code()
	t := perSize("inputs-by-size", "Inputs by size", kits)
	t.Rows = []report.Row{
		acrossKits(report.Body, "Labour", "min", kits, func(k *kit.Kit) report.Cell {
			if timed(k, in.Project) {
				return report.Cell{Kind: report.Number, Number: k.Cells.Minutes.Value, Expr: in.minutes(k), Name: k.Cells.Minutes.Name}
			}
			return input(report.Number, k.Cells.Minutes)
		}),
		acrossKits(report.Body, "Packaging", code, kits, func(k *kit.Kit) report.Cell { return input(report.Money, k.Cells.Packaging) }),
		acrossKits(report.Body, "Printed pattern", code, kits, func(k *kit.Kit) report.Cell { return input(report.Money, k.Cells.Pattern) }),
		acrossKits(report.Body, "Fixed costs of the run", code, kits, func(k *kit.Kit) report.Cell { return input(report.Money, k.Cells.Fixed) }),
		acrossKits(report.Body, "Target margin", "% of price", kits, func(k *kit.Kit) report.Cell { return input(report.Share, k.Cells.Margin) }),
		acrossKits(report.Body, "Kits planned", "kits", kits, func(k *kit.Kit) report.Cell { return kitsPlanned(k.Cells) }),
		acrossKits(report.Body, "Fabric paid for the whole run (0 for as ordered, below)", code, kits, func(k *kit.Kit) report.Cell { return input(report.Money, k.Cells.Bought) }),
		acrossKits(report.Body, "Price asked (0 for the price at target margin)", code, kits, func(k *kit.Kit) report.Cell { return priceAsked(k.Cells) }),
	}
	return t
}

func quantities(kits []*kit.Kit, works workings) report.Table {
	t := perSize("quantities", "In the kit", kits)
	t.Lead = []string{"Lengths as bought, not as used, with what each is cut longer so that a crooked cut does no harm."}
	for _, role := range kitRoles(kits) {
		unit := ""
		r := acrossKits(report.Body, "", "", kits, func(k *kit.Kit) report.Cell {
			l, ok := k.Fabric(role)
			if !ok {
				return report.Cell{}
			}
			unit = string(l.Unit)
			c := quantityIn(l)
			c.Why = works.of(k.Size, k.Size.KitFigure(l.Fabric, l.Length))
			return c
		})
		r.Cells[0], r.Cells[1] = report.T(titleOf(role, kits)), report.T(unit)
		t.Rows = append(t.Rows, r)
	}
	for i := range mostThings(kits) {
		t.Rows = append(t.Rows, acrossKits(report.Body, thingTitle(i, kits), thingUnit(i, kits), kits, func(k *kit.Kit) report.Cell {
			if i >= len(k.Things) {
				return report.Cell{}
			}
			return wholeNumber(k.Things[i].Quantity, "How many go into one kit.")
		}))
	}
	return t
}

// runTotals is what all kits planned take of each fabric: whole kits only, so
// that bolts are still to be worked out from it.
func (in Input) runTotals(kits []*kit.Kit) report.Table {
	t := perSize("run", "Fabric for all kits planned", kits)
	t.Lead = []string{"Kits planned times the fabric of one kit. What bolts leave over is not in it."}
	for _, role := range kitRoles(kits) {
		unit := ""
		r := acrossKits(report.Body, titleOf(role, kits), "", kits, func(k *kit.Kit) report.Cell {
			l, ok := k.Fabric(role)
			if !ok {
				return report.Cell{}
			}
			unit = string(l.Unit)
			c := quantityIn(l)
			return report.Cell{Kind: c.Kind, Unit: c.Unit, Toward: c.Toward, Expr: costing.Product(k.Cells.Run, l.Quantity)}
		})
		r.Cells[1] = report.T(unit)
		t.Rows = append(t.Rows, r)
	}
	return in.ordered(t, kits)
}

// ordered adds what is ordered for the runs of this plan alone.
func (in Input) ordered(t report.Table, kits []*kit.Kit) report.Table {
	if !slices.ContainsFunc(kits, func(k *kit.Kit) bool { _, ok := in.Alone.Of(k); return ok }) {
		return t
	}
	add := func(style report.RowStyle, what, unit string, kind report.CellKind, of func(line.Ordered) costing.Result) {
		t.Rows = append(t.Rows, acrossKits(style, what, unit, kits, func(k *kit.Kit) report.Cell {
			o, ok := in.Alone.Of(k)
			if !ok {
				return report.Cell{}
			}
			return result(kind, of(o))
		}))
	}
	add(report.Total, "Fabric ordered for the run", in.Project.Currency.Code(), report.Money, func(o line.Ordered) costing.Result { return o.Cost })
	add(report.Body, "Run differs from the one that it was worked out for by", "kits", report.Number, func(o line.Ordered) costing.Result { return o.Differs })
	t.Foot = append(t.Foot, "Fabric ordered: the cheapest order for the planned kits of this plan alone, with the allowance for miscuts and nothing on hand, shared by what each kit takes. "+
		"In the line's workbook kits of all plans share bolts, and stock is used first.")
	return t
}

// quantityIn is how much of a fabric goes into the kit, as it is sold.
func quantityIn(l kit.Line) report.Cell {
	q := l.Quantity
	c := report.Cell{Kind: report.Number, Number: q.Value, Name: q.Name}
	switch l.Unit {
	case plan.PerYard:
		c = report.Cell{Kind: report.Fabric, Exact: l.Length.Surd(), Unit: measure.In, Toward: measure.Up, Number: q.Value, Name: q.Name}
	case plan.PerMetre:
		c = report.Cell{Kind: report.Fabric, Exact: l.Length.Surd(), Unit: measure.Cm, Toward: measure.Up, Number: q.Value, Name: q.Name}
	}
	return c
}

// kitRoles are the roles that go into some kit, in order.
func kitRoles(kits []*kit.Kit) []string {
	var roles []string
	seen := map[string]bool{}
	for _, k := range kits {
		for _, f := range k.Fabrics {
			if !seen[f.Role.Text] {
				seen[f.Role.Text] = true
				roles = append(roles, f.Role.Text)
			}
		}
	}
	return roles
}

func titleOf(role string, kits []*kit.Kit) string {
	for _, k := range kits {
		if l, ok := k.Fabric(role); ok {
			return l.Title()
		}
	}
	return role
}

// results are the costs of the kits, and a chart of what they are made of.
func (in Input) results(kits []*kit.Kit) (report.Table, report.Chart) {
	code := in.Project.Currency.Code()
	t := perSize("kit-cost", "Cost and price of a kit", kits)
	t.Foot = []string{"Used basis: fabric is charged as cut for the kit. A margin under its target is bold, on grey and in a box."}
	for _, role := range kitRoles(kits) {
		t.Rows = append(t.Rows, acrossKits(report.Body, titleOf(role, kits), code, kits, func(k *kit.Kit) report.Cell {
			if l, ok := k.Fabric(role); ok {
				return result(report.Money, l.Cost)
			}
			return report.Cell{}
		}))
	}
	for i := range mostThings(kits) {
		t.Rows = append(t.Rows, acrossKits(report.Body, thingTitle(i, kits), code, kits, func(k *kit.Kit) report.Cell {
			if i < len(k.Things) {
				return result(report.Money, k.Things[i].Cost)
			}
			return report.Cell{}
		}))
	}
	add := adder(&t, kits)
	made := report.Chart{
		ID: "cost-make-up", Title: "What the cost of a kit is made of", About: "One bar a kit, of fabric, notions, labour, packaging, printed pattern and the allowance for miscuts end to end.",
		Table: t.ID, From: len(t.Rows), To: len(t.Rows) + 6, Label: "what", Across: true, Stacked: true, Axis: strings.TrimSpace(code + " a kit"),
	}
	for _, k := range kits {
		made.Values = append(made.Values, columnID(k))
	}
	add(report.Body, "Fabric", code, report.Money, func(c costing.Costs) costing.Result { return c.Fabric })
	add(report.Body, "Notions", code, report.Money, func(c costing.Costs) costing.Result { return c.Other })
	add(report.Body, "Labour", code, report.Money, func(c costing.Costs) costing.Result { return c.Labour })
	same := func(what string, of func(costing.Inputs) costing.Input) {
		t.Rows = append(t.Rows, acrossKits(report.Body, what, code, kits, func(k *kit.Kit) report.Cell {
			return report.Cell{Kind: report.Money, Expr: k.Cells.Line(of(k.Cells))}
		}))
	}
	same("Packaging", func(k costing.Inputs) costing.Input { return k.Packaging })
	same("Printed pattern", func(k costing.Inputs) costing.Input { return k.Pattern })
	add(report.Body, "Allowance for miscuts", code, report.Money, func(c costing.Costs) costing.Result { return c.Spoilage })
	add(report.Total, "Cost of a kit, used basis", code, report.Money, func(c costing.Costs) costing.Result { return c.Unit })
	add(report.Body, "Price for the target margin", code, report.Money, func(c costing.Costs) costing.Result { return c.ForMargin })
	add(report.Total, "Price taken", code, report.Money, func(c costing.Costs) costing.Result { return c.Price })
	add(report.Body, "Left of it after payment fees", code, report.Money, func(c costing.Costs) costing.Result { return c.Net })
	t.Rows = append(t.Rows, acrossKits(report.Body, "Margin at that price", "% of price", kits, func(k *kit.Kit) report.Cell {
		c := result(report.Share, k.Costs.Margin)
		c.Mark = line.UnderTarget(k.Cells, k.Costs)
		return c
	}))
	add(report.Body, "Contribution of a kit to the fixed costs", code, report.Money, func(c costing.Costs) costing.Result { return c.Contribution })
	add(report.Total, "Break-even", "kits", report.Number, func(c costing.Costs) costing.Result { return c.BreakEven })
	return t, made
}

// moreCosts are the figures of a kit that its price does not follow from.
func (in Input) moreCosts(kits []*kit.Kit) report.Table {
	code := in.Project.Currency.Code()
	t := perSize("kit-besides", "More of cost and price", kits)
	t.Foot = []string{
		"Margin is (what is left after payment fees - cost) / price; markup is (price - cost) / cost. Each money line is rounded once, half away from zero, and the price for the target margin up, so that it reaches the target.",
		"Contribution is what is left after payment fees - cost; break-even is the fixed costs / contribution, rounded up.",
		"Bought basis: all fabric ordered for the run is charged to its kits, with what is beyond need; where what was paid for it is filled in above, that. Stock on hand is free of charge.",
	}
	add := adder(&t, kits)
	add(report.Body, "Keystone price (twice the cost)", code, report.Money, func(c costing.Costs) costing.Result { return c.Keystone })
	add(report.Body, "Markup at that price", "% of cost", report.Share, func(c costing.Costs) costing.Result { return c.Markup })
	add(report.Body, "Cost of a kit, bought basis", code, report.Money, func(c costing.Costs) costing.Result { return c.UnitBought })
	add(report.Body, "Margin on the bought basis", "% of price", report.Share, func(c costing.Costs) costing.Result { return c.MarginBought })
	add(report.Body, "Cost of the run, fixed costs included", code, report.Money, func(c costing.Costs) costing.Result { return c.RunCost })
	add(report.Body, "Profit of the run if all is sold", code, report.Money, func(c costing.Costs) costing.Result { return c.RunProfit })
	return t
}

// adder adds rows of one figure of every kit.
func adder(t *report.Table, kits []*kit.Kit) func(report.RowStyle, string, string, report.CellKind, func(costing.Costs) costing.Result) {
	return func(style report.RowStyle, what, unit string, kind report.CellKind, of func(costing.Costs) costing.Result) {
		t.Rows = append(t.Rows, acrossKits(style, what, unit, kits, func(k *kit.Kit) report.Cell { return result(kind, of(k.Costs)) }))
	}
}

// shops is what selling to shops leaves.
func (in Input) shops(kits []*kit.Kit) report.Table {
	code := in.Project.Currency.Code()
	t := perSize("shops", "Selling to shops", kits)
	t.Foot = []string{"A shop pays a share of the price, by invoice. To sell both ways, the price must be no lower than the last line: the cost over what the target leaves of the shop's share."}
	add := adder(&t, kits)
	add(report.Body, "What a shop pays", code, report.Money, func(c costing.Costs) costing.Result { return c.TradePrice })
	add(report.Body, "Margin on that", "% of what it pays", report.Share, func(c costing.Costs) costing.Result { return c.TradeMargin })
	add(report.Body, "Price in the shop for the target margin", code, report.Money, func(c costing.Costs) costing.Result { return c.RetailForTrade })
	return t
}

func mostThings(kits []*kit.Kit) int {
	most := 0
	for _, k := range kits {
		most = max(most, len(k.Things))
	}
	return most
}

// thingUnit is what the thing of a number is sold by.
func thingUnit(i int, kits []*kit.Kit) string {
	for _, k := range kits {
		if i < len(k.Things) {
			return string(k.Things[i].Unit)
		}
	}
	return ""
}

// thingTitle is what the kits call their thing of a number.
func thingTitle(i int, kits []*kit.Kit) string {
	var names []string
	for _, k := range kits {
		if i < len(k.Things) && !slices.Contains(names, k.Things[i].Title()) {
			names = append(names, k.Things[i].Title())
		}
	}
	return strings.Join(names, " / ")
}

// notInKit says what the buyer has to find herself.
func notInKit(kits []*kit.Kit) report.Table {
	t := report.Table{ID: "not-in-kit", Heading: "Not in the kit", Columns: []report.Column{{ID: "size", Title: "Size"}, {ID: "what", Title: "To be said on the kit", Wide: true}}}
	for _, k := range kits {
		t.Rows = append(t.Rows, row(report.T(k.Name()), report.T(fmt.Sprintf("not included: %s", strings.Join(excluded(k), ", ")))))
	}
	return t
}

// excluded is what the buyer of the kit has to find herself.
func excluded(k *kit.Kit) []string {
	var out []string
	for _, f := range k.Size.Fabrics {
		if _, held := k.Fabric(f.Role.Text); f.Used() && !held {
			out = append(out, kit.Title(f))
		}
	}
	out = append(out, "batting")
	if !slices.ContainsFunc(k.Things, func(t kit.Line) bool { return strings.Contains(strings.ToLower(t.Title()), "thread") }) {
		out = append(out, "thread")
	}
	for _, x := range k.Said.Excludes {
		if !slices.ContainsFunc(out, func(said string) bool { return strings.EqualFold(said, x.Text) }) {
			out = append(out, x.Text)
		}
	}
	return out
}
