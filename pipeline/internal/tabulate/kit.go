package tabulate

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/derive"
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
	tables := []report.Table{in.shared(kits), in.bySize(kits), quantities(kits)}
	if t, ok := in.cuttingTime(kits); ok {
		tables = append(tables, t)
	}
	results, made := in.results(kits)
	tables = append(tables, runTotals(kits), results, in.shops(kits), notInKit(kits))
	if t, ok := in.classes(kits); ok {
		tables = append(tables, t)
	}
	return report.Sheet{ID: "kit-costing", Title: "Kit costing", Tables: tables, Charts: []report.Chart{made}}, true
}

// kit is one size's kit, in one colourway, and its costs.
type kit struct {
	size *derive.Size
	name string // "throw", or "throw, Heather" in a colourway
	*derive.Kit
}

// kits are the kits of every size, after each those of its colourways.
func (in Input) kits() []kit {
	var kits []kit
	for _, s := range in.Sizes {
		kits = append(kits, in.kitsOf(s)...)
	}
	return kits
}

// kitsOf are the kits of a size of which is known what goes in.
func (in Input) kitsOf(s *derive.Size) []kit {
	var kits []kit
	for _, worn := range append([]*derive.Size{s}, s.Colourways()...) {
		worn = worn.InArticles(in.Prices)
		if k := worn.Kit(in.Project, in.Prices); k != nil && k.Known {
			kits = append(kits, kit{worn, in.worn(worn), k})
		}
	}
	return kits
}

// worn is what a size in its colourway is called.
func (in Input) worn(s *derive.Size) string {
	if !s.Of.Way.Given() {
		return s.Of.Name.Text
	}
	way := in.Plan.Colourway(s.Of.Way.Text)
	if way != nil && way.Title.Given() {
		return s.Of.Name.Text + ", " + way.Title.Text
	}
	return s.Of.Name.Text + ", " + s.Of.Way.Text
}

func input(kind report.CellKind, in costing.Input) report.Cell {
	return report.Cell{Kind: kind, Number: in.Value, Name: in.Name, Input: true}
}

func kitsPlanned(k costing.Kit) report.Cell {
	return wholeNumber(k.Run, "How many kits of this size are to be made.")
}

// wholeNumber is an input that counts something.
func wholeNumber(in costing.Input, prompt string) report.Cell {
	c := input(report.Number, in)
	c.Entry = &report.Entry{Whole: true, Prompt: prompt}
	return c
}

func priceAsked(k costing.Kit) report.Cell {
	c := input(report.Money, k.Asked)
	c.Entry = &report.Entry{Prompt: "What a kit is sold for; 0 for the price at the target margin."}
	return c
}

// underTarget is the condition that a margin stands out for.
func underTarget(k costing.Kit, c costing.Costs) *report.Expr {
	return costing.Under(costing.Of(c.Margin), costing.Ref(k.Margin.Name, k.Margin.Value))
}

func result(kind report.CellKind, r costing.Result) report.Cell {
	return report.Cell{Kind: kind, Expr: r.Expr, Name: r.Name}
}

// shared are the inputs that hold for every size: prices and the labour rate.
func (in Input) shared(kits []kit) report.Table {
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
		for i, m := range k.Cells.Materials {
			if seen[m.Price.Name] {
				continue
			}
			seen[m.Price.Name] = true
			g := k.Goods[i]
			input(report.Money, title(g.Fabric), m.Price, string(g.Unit), priceFrom(g.SKU, g.Priced))
		}
		for i, m := range k.Cells.Things {
			if seen[m.Price.Name] {
				continue
			}
			seen[m.Price.Name] = true
			from := priceFrom(k.Things[i].SKU, k.Things[i].Priced)
			if k.Things[i].Price.Given() {
				from = "plan"
			}
			input(report.Money, k.Things[i].Name.Text, m.Price, string(k.Things[i].Unit), from)
		}
	}
	cells := kits[0].Cells
	input(report.Money, "Labour", cells.Rate, "hour", "project file")
	input(report.Share, "Spoiled kits", cells.Spoilage, "% of kits made well", "project file")
	input(report.Share, "Payment fee", cells.FeeShare, "% of price", "project file")
	input(report.Money, "Payment fee, fixed part", cells.FeeEach, "sale", "project file")
	input(report.Share, "What a shop pays", cells.Trade, "% of price", "project file; half is common practice")
	return t
}

func priceFrom(sku plan.Text, priced bool) string {
	switch {
	case !sku.Given():
		return "no article named: fill in"
	case !priced:
		return "no price for " + sku.Text + ": fill in"
	}
	return "price list, " + sku.Text
}

// perSize is a table with a column for each kit's size.
func perSize(id, heading string, kits []kit) report.Table {
	t := report.Table{ID: id, Heading: heading, Columns: []report.Column{{ID: "what", Title: "", Wide: true}, {ID: "unit", Title: "Unit"}}}
	for _, k := range kits {
		t.Columns = append(t.Columns, report.Column{ID: k.columnID(), Title: k.name, Right: true})
	}
	return t
}

func line(style report.RowStyle, what, unit string, kits []kit, cell func(kit) report.Cell) report.Row {
	r := report.Row{Style: style, Cells: []report.Cell{report.T(what), report.T(unit)}}
	for _, k := range kits {
		r.Cells = append(r.Cells, cell(k))
	}
	return r
}

func (in Input) bySize(kits []kit) report.Table {
	code := in.Project.Currency.Code()
	t := perSize("inputs-by-size", "Inputs by size", kits)
	t.Rows = []report.Row{
		line(report.Body, "Labour", "min", kits, func(k kit) report.Cell {
			if k.timed(in.Project) {
				return report.Cell{Kind: report.Number, Number: k.Cells.Minutes.Value, Expr: in.minutes(k), Name: k.Cells.Minutes.Name}
			}
			return input(report.Number, k.Cells.Minutes)
		}),
		line(report.Body, "Packaging", code, kits, func(k kit) report.Cell { return input(report.Money, k.Cells.Packaging) }),
		line(report.Body, "Printed pattern", code, kits, func(k kit) report.Cell { return input(report.Money, k.Cells.Pattern) }),
		line(report.Body, "Fixed costs of the run", code, kits, func(k kit) report.Cell { return input(report.Money, k.Cells.Fixed) }),
		line(report.Body, "Target margin", "% of price", kits, func(k kit) report.Cell { return input(report.Share, k.Cells.Margin) }),
		line(report.Body, "Kits planned", "kits", kits, func(k kit) report.Cell { return kitsPlanned(k.Cells) }),
		line(report.Body, "Fabric bought for the whole run (0 where it is not known)", code, kits, func(k kit) report.Cell { return input(report.Money, k.Cells.Bought) }),
		line(report.Body, "Price asked (0 for the price at target margin)", code, kits, func(k kit) report.Cell { return priceAsked(k.Cells) }),
	}
	return t
}

func quantities(kits []kit) report.Table {
	t := perSize("quantities", "In the kit", kits)
	t.Lead = []string{"Lengths as bought, not as used, with what each is cut longer so that a crooked cut does no harm."}
	for _, role := range kitRoles(kits) {
		unit := ""
		r := line(report.Body, "", "", kits, func(k kit) report.Cell {
			i := k.material(role)
			if i < 0 {
				return report.Cell{}
			}
			unit = string(k.Goods[i].Unit)
			c := k.quantity(i)
			c.Why = k.size.GoodWork(k.Goods[i])
			return c
		})
		r.Cells[0], r.Cells[1] = report.T(titleOf(role, kits)), report.T(unit)
		t.Rows = append(t.Rows, r)
	}
	for i := range mostThings(kits) {
		t.Rows = append(t.Rows, line(report.Body, thingTitle(i, kits), thingUnit(i, kits), kits, func(k kit) report.Cell {
			if i >= len(k.Cells.Things) {
				return report.Cell{}
			}
			return wholeNumber(k.Cells.Things[i].Quantity, "How many go into one kit.")
		}))
	}
	return t
}

// runTotals is what all kits planned take of each fabric: whole kits only, so
// that bolts are still to be worked out from it.
func runTotals(kits []kit) report.Table {
	t := perSize("run", "Fabric for all kits planned", kits)
	t.Lead = []string{"Kits planned times the fabric of one kit. What bolts leave over is not in it."}
	for _, role := range kitRoles(kits) {
		unit := ""
		r := line(report.Body, titleOf(role, kits), "", kits, func(k kit) report.Cell {
			i := k.material(role)
			if i < 0 {
				return report.Cell{}
			}
			unit = string(k.Goods[i].Unit)
			c := k.quantity(i)
			return report.Cell{Kind: c.Kind, Unit: c.Unit, Toward: c.Toward, Expr: costing.Product(k.Cells.Run, k.Cells.Materials[i].Quantity)}
		})
		r.Cells[1] = report.T(unit)
		t.Rows = append(t.Rows, r)
	}
	return t
}

// quantity is how much of a fabric goes into the kit, as it is sold.
func (k kit) quantity(i int) report.Cell {
	q := k.Cells.Materials[i].Quantity
	c := report.Cell{Kind: report.Number, Number: q.Value, Name: q.Name}
	switch k.Goods[i].Unit {
	case plan.PerYard:
		c = report.Cell{Kind: report.Fabric, Exact: k.Goods[i].Length.Surd(), Unit: measure.In, Toward: measure.Up, Number: q.Value, Name: q.Name}
	case plan.PerMetre:
		c = report.Cell{Kind: report.Fabric, Exact: k.Goods[i].Length.Surd(), Unit: measure.Cm, Toward: measure.Up, Number: q.Value, Name: q.Name}
	}
	return c
}

// kitRoles are the roles that go into some kit, in order.
func kitRoles(kits []kit) []string {
	var roles []string
	seen := map[string]bool{}
	for _, k := range kits {
		for _, f := range k.Goods {
			if !seen[f.Role.Text] {
				seen[f.Role.Text] = true
				roles = append(roles, f.Role.Text)
			}
		}
	}
	return roles
}

func (k kit) material(role string) int {
	for i, f := range k.Goods {
		if f.Role.Text == role {
			return i
		}
	}
	return -1
}

func titleOf(role string, kits []kit) string {
	for _, k := range kits {
		if i := k.material(role); i >= 0 {
			return title(k.Goods[i].Fabric)
		}
	}
	return role
}

// results are the costs of the kits, and a chart of what they are made of.
func (in Input) results(kits []kit) (report.Table, report.Chart) {
	code := in.Project.Currency.Code()
	t := perSize("kit-cost", "Cost and price of a kit", kits)
	t.Foot = []string{
		"Margin is (what is left after payment fees - cost) / price; markup is (price - cost) / cost. Each money line is rounded once, half away from zero, and the price for the target margin up, so that it reaches the target.",
		"Contribution is what is left after payment fees - cost; break-even is the fixed costs / contribution, rounded up.",
		"Used basis: fabric is charged as cut for the kit. Bought basis: all fabric bought for the run is charged to its kits, remnants of bolts with it; it is worked out once that sum is filled in above.",
		"A margin under its target is bold, on grey and in a box.",
	}
	for _, role := range kitRoles(kits) {
		t.Rows = append(t.Rows, line(report.Body, titleOf(role, kits), code, kits, func(k kit) report.Cell {
			if i := k.material(role); i >= 0 {
				return result(report.Money, k.Costs.Materials[i])
			}
			return report.Cell{}
		}))
	}
	for i := range mostThings(kits) {
		t.Rows = append(t.Rows, line(report.Body, thingTitle(i, kits), code, kits, func(k kit) report.Cell {
			if i < len(k.Costs.Things) {
				return result(report.Money, k.Costs.Things[i])
			}
			return report.Cell{}
		}))
	}
	add := adder(&t, kits)
	made := report.Chart{
		ID: "cost-make-up", Title: "What the cost of a kit is made of", About: "One bar a kit, of fabric, things besides, labour, packaging, printed pattern and spoiled kits end to end.",
		Table: t.ID, From: len(t.Rows), To: len(t.Rows) + 6, Label: "what", Across: true, Stacked: true, Axis: strings.TrimSpace(code + " a kit"),
	}
	for _, k := range kits {
		made.Values = append(made.Values, k.columnID())
	}
	add(report.Body, "Fabric", code, report.Money, func(c costing.Costs) costing.Result { return c.Fabric })
	add(report.Body, "Things besides fabric", code, report.Money, func(c costing.Costs) costing.Result { return c.Other })
	add(report.Body, "Labour", code, report.Money, func(c costing.Costs) costing.Result { return c.Labour })
	same := func(what string, of func(costing.Kit) costing.Input) {
		t.Rows = append(t.Rows, line(report.Body, what, code, kits, func(k kit) report.Cell {
			return report.Cell{Kind: report.Money, Expr: costing.Ref(of(k.Cells).Name, of(k.Cells).Value)}
		}))
	}
	same("Packaging", func(k costing.Kit) costing.Input { return k.Packaging })
	same("Printed pattern", func(k costing.Kit) costing.Input { return k.Pattern })
	add(report.Body, "Share of spoiled kits", code, report.Money, func(c costing.Costs) costing.Result { return c.Spoilage })
	add(report.Total, "Cost of a kit, used basis", code, report.Money, func(c costing.Costs) costing.Result { return c.Unit })
	add(report.Body, "Price for the target margin", code, report.Money, func(c costing.Costs) costing.Result { return c.ForMargin })
	add(report.Body, "Keystone price (twice the cost)", code, report.Money, func(c costing.Costs) costing.Result { return c.Keystone })
	add(report.Total, "Price taken", code, report.Money, func(c costing.Costs) costing.Result { return c.Price })
	add(report.Body, "Left of it after payment fees", code, report.Money, func(c costing.Costs) costing.Result { return c.Net })
	t.Rows = append(t.Rows, line(report.Body, "Margin at that price", "% of price", kits, func(k kit) report.Cell {
		c := result(report.Share, k.Costs.Margin)
		c.Mark = underTarget(k.Cells, k.Costs)
		return c
	}))
	add(report.Body, "Markup at that price", "% of cost", report.Share, func(c costing.Costs) costing.Result { return c.Markup })
	add(report.Body, "Cost of a kit, bought basis", code, report.Money, func(c costing.Costs) costing.Result { return c.UnitBought })
	add(report.Body, "Margin on the bought basis", "% of price", report.Share, func(c costing.Costs) costing.Result { return c.MarginBought })
	add(report.Body, "Contribution of a kit to the fixed costs", code, report.Money, func(c costing.Costs) costing.Result { return c.Contribution })
	add(report.Total, "Break-even", "kits", report.Number, func(c costing.Costs) costing.Result { return c.BreakEven })
	add(report.Body, "Cost of the run, fixed costs included", code, report.Money, func(c costing.Costs) costing.Result { return c.RunCost })
	add(report.Body, "Profit of the run if all is sold", code, report.Money, func(c costing.Costs) costing.Result { return c.RunProfit })
	return t, made
}

// adder adds rows of one figure of every kit.
func adder(t *report.Table, kits []kit) func(report.RowStyle, string, string, report.CellKind, func(costing.Costs) costing.Result) {
	return func(style report.RowStyle, what, unit string, kind report.CellKind, of func(costing.Costs) costing.Result) {
		t.Rows = append(t.Rows, line(style, what, unit, kits, func(k kit) report.Cell { return result(kind, of(k.Costs)) }))
	}
}

// shops is what selling to shops leaves.
func (in Input) shops(kits []kit) report.Table {
	code := in.Project.Currency.Code()
	t := perSize("shops", "Selling to shops", kits)
	t.Foot = []string{"A shop pays a share of the price, by invoice. To sell both ways, the price must be no lower than the last line: the cost over what the target leaves of the shop's share."}
	add := adder(&t, kits)
	add(report.Body, "What a shop pays", code, report.Money, func(c costing.Costs) costing.Result { return c.TradePrice })
	add(report.Body, "Margin on that", "% of what it pays", report.Share, func(c costing.Costs) costing.Result { return c.TradeMargin })
	add(report.Body, "Price in the shop for the target margin", code, report.Money, func(c costing.Costs) costing.Result { return c.RetailForTrade })
	return t
}

func mostThings(kits []kit) int {
	most := 0
	for _, k := range kits {
		most = max(most, len(k.Things))
	}
	return most
}

// thingUnit is what the thing of a number is sold by.
func thingUnit(i int, kits []kit) string {
	for _, k := range kits {
		if i < len(k.Things) {
			return string(k.Things[i].Unit)
		}
	}
	return ""
}

// thingTitle is what the kits call their thing of a number.
func thingTitle(i int, kits []kit) string {
	var names []string
	for _, k := range kits {
		if i < len(k.Things) && !slices.Contains(names, k.Things[i].Name.Text) {
			names = append(names, k.Things[i].Name.Text)
		}
	}
	return strings.Join(names, " / ")
}

// notInKit says what the buyer has to find herself.
func notInKit(kits []kit) report.Table {
	t := report.Table{ID: "not-in-kit", Heading: "Not in the kit", Columns: []report.Column{{ID: "size", Title: "Size"}, {ID: "what", Title: "To be said on the kit", Wide: true}}}
	for _, k := range kits {
		t.Rows = append(t.Rows, row(report.T(k.name), report.T(fmt.Sprintf("not included: %s", strings.Join(k.excluded(), ", ")))))
	}
	return t
}

// excluded is what the buyer of the kit has to find herself.
func (k kit) excluded() []string {
	var out []string
	for _, f := range k.size.Fabrics {
		if f.Used() && k.material(f.Role.Text) < 0 {
			out = append(out, title(f))
		}
	}
	out = append(out, "batting")
	if !slices.ContainsFunc(k.Things, func(t derive.Thing) bool { return strings.Contains(strings.ToLower(t.Name.Text), "thread") }) {
		out = append(out, "thread")
	}
	for _, x := range k.Said.Excludes {
		if !slices.ContainsFunc(out, func(said string) bool { return strings.EqualFold(said, x.Text) }) {
			out = append(out, x.Text)
		}
	}
	return out
}
