package tabulate

import (
	"fmt"
	"math/big"
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
	return report.Sheet{ID: "kit-costing", Title: "Kit costing", Wide: true, Tables: []report.Table{
		in.shared(kits), in.bySize(kits), in.quantities(kits), in.results(kits), in.notInKit(kits),
	}}, true
}

// kit is one size's kit and its costs.
type kit struct {
	size  *derive.Size
	said  *plan.Kit
	cells costing.Kit
	costs costing.Costs
	goods []*derive.Fabric // what goes in, beside cells.Materials
}

func (in Input) kits() []kit {
	var kits []kit
	for _, s := range in.Sizes {
		if s.Of.Kit != nil {
			kits = append(kits, in.kit(s))
		}
	}
	return kits
}

func (in Input) kit(s *derive.Size) kit {
	k := kit{size: s, said: s.Of.Kit}
	suffix := "." + cellKey(s.Of.Name.Text)
	k.cells = costing.Kit{
		Suffix:    suffix,
		Digits:    in.digits(),
		Minutes:   costing.Input{Name: "minutes" + suffix, Value: big.NewRat(int64(k.said.Minutes.N), 1)},
		Rate:      costing.Input{Name: "labour_rate", Value: money(in.Project.LabourRate)},
		Packaging: costing.Input{Name: "packaging" + suffix, Value: money(k.said.Packaging)},
		Pattern:   costing.Input{Name: "pattern" + suffix, Value: money(k.said.Pattern)},
		Fixed:     costing.Input{Name: "fixed_costs" + suffix, Value: money(k.said.Fixed)},
		Margin:    costing.Input{Name: "target_margin" + suffix, Value: in.margin(k.said)},
		Asked:     costing.Input{Name: "price_asked" + suffix, Value: money(k.said.Price)},
	}
	for _, role := range k.said.Fabrics {
		f := s.Fabric(role.Text)
		if f == nil || !f.Used() || f.Err != nil {
			continue
		}
		price, _ := in.price(f)
		k.goods = append(k.goods, f)
		k.cells.Materials = append(k.cells.Materials, costing.Material{
			Quantity: costing.Input{Name: "fabric_quantity." + cellKey(role.Text) + suffix, Value: in.quantity(f)},
			Price:    costing.Input{Name: "fabric_price." + cellKey(role.Text), Value: price},
		})
	}
	k.costs = costing.Price(k.cells)
	return k
}

// cellKey makes a name usable inside a cell's name, whose parts are separated
// by points, which no name of a plan holds.
func cellKey(name string) string { return strings.ReplaceAll(name, "-", "_") }

// digits are the decimals of the currency's minor unit; two where the project
// names no currency.
func (in Input) digits() int {
	if in.Project.Currency == (measure.Currency{}) {
		return 2
	}
	return in.Project.Currency.Digits()
}

func money(a plan.Amount) *big.Rat {
	if a.Value == nil {
		return new(big.Rat)
	}
	return a.Value
}

// margin is the margin wanted: the kit's own or the project's.
func (in Input) margin(k *plan.Kit) *big.Rat {
	points := in.Project.Margin.BasisPoints
	if k.Margin.BasisPoints != 0 {
		points = k.Margin.BasisPoints
	}
	return big.NewRat(points, 10_000)
}

// price is what one unit of a fabric costs, and for what unit; nothing when
// the price list has no price that fits the fabric's form.
func (in Input) price(f *derive.Fabric) (*big.Rat, string) {
	p, ok := in.Prices.Find(f.SKU.Text)
	switch {
	case ok && p.Fits(f.Form):
		return p.Amount, string(p.Unit)
	case f.Form == plan.Precut:
		return new(big.Rat), "pack"
	}
	return new(big.Rat), fabricUnit(in.units())
}

// quantity is how much of a fabric is bought for a kit, in the unit its price
// is for.
func (in Input) quantity(f *derive.Fabric) *big.Rat {
	_, unit := in.price(f)
	switch {
	case unit == string(plan.PerEach):
		return big.NewRat(int64(f.Sheets.Count), 1)
	case f.Form == plan.Precut:
		return big.NewRat(f.Packs, 1)
	case unit == string(plan.PerMetre):
		return big.NewRat(int64(f.Buy), int64(measure.Metre))
	}
	return big.NewRat(int64(f.Buy), int64(measure.Yard))
}

func input(kind report.CellKind, in costing.Input) report.Cell {
	return report.Cell{Kind: kind, Number: in.Value, Name: in.Name, Input: true}
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
	for _, k := range kits {
		for i, m := range k.cells.Materials {
			if seen[m.Price.Name] {
				continue
			}
			seen[m.Price.Name] = true
			_, unit := in.price(k.goods[i])
			t.Rows = append(t.Rows, row(report.T(title(k.goods[i])), input(report.Money, m.Price), report.T(unit), report.T(in.priceFrom(k.goods[i]))))
		}
	}
	t.Rows = append(t.Rows, row(report.T("Labour"), input(report.Money, kits[0].cells.Rate), report.T("hour"), report.T("project file")))
	return t
}

func (in Input) priceFrom(f *derive.Fabric) string {
	if !f.SKU.Given() {
		return "no article named: fill in"
	}
	if _, ok := in.Prices.Find(f.SKU.Text); !ok {
		return "no price for " + f.SKU.Text + ": fill in"
	}
	return "price list, " + f.SKU.Text
}

// perSize is a table with a column for each kit's size.
func perSize(id, heading string, kits []kit) report.Table {
	t := report.Table{ID: id, Heading: heading, Columns: []report.Column{{ID: "what", Title: "", Wide: true}, {ID: "unit", Title: "Unit"}}}
	for _, k := range kits {
		t.Columns = append(t.Columns, report.Column{ID: k.size.Of.Name.Text, Title: k.size.Of.Name.Text})
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
		line(report.Body, "Labour", "min", kits, func(k kit) report.Cell { return input(report.Number, k.cells.Minutes) }),
		line(report.Body, "Packaging", code, kits, func(k kit) report.Cell { return input(report.Money, k.cells.Packaging) }),
		line(report.Body, "Printed pattern", code, kits, func(k kit) report.Cell { return input(report.Money, k.cells.Pattern) }),
		line(report.Body, "Fixed costs of the run", code, kits, func(k kit) report.Cell { return input(report.Money, k.cells.Fixed) }),
		line(report.Body, "Target margin", "% of price", kits, func(k kit) report.Cell { return input(report.Share, k.cells.Margin) }),
		line(report.Body, "Price asked (0 for the price at target margin)", code, kits, func(k kit) report.Cell { return input(report.Money, k.cells.Asked) }),
	}
	return t
}

func (in Input) quantities(kits []kit) report.Table {
	t := perSize("quantities", "Fabric in the kit", kits)
	t.Lead = []string{"Lengths as bought, not as used."}
	for _, role := range kitRoles(kits) {
		unit := ""
		r := line(report.Body, "", "", kits, func(k kit) report.Cell {
			i := k.material(role)
			if i < 0 {
				return report.Cell{}
			}
			_, unit = in.price(k.goods[i])
			m := k.cells.Materials[i]
			c := report.Cell{Kind: report.Number, Number: m.Quantity.Value, Name: m.Quantity.Name}
			c.Why = k.size.BuyWork(k.goods[i])
			return c
		})
		r.Cells[0], r.Cells[1] = report.T(in.titleOf(role, kits)), report.T(unit)
		t.Rows = append(t.Rows, r)
	}
	return t
}

// kitRoles are the roles that go into some kit, in order.
func kitRoles(kits []kit) []string {
	var roles []string
	seen := map[string]bool{}
	for _, k := range kits {
		for _, f := range k.goods {
			if !seen[f.Role.Text] {
				seen[f.Role.Text] = true
				roles = append(roles, f.Role.Text)
			}
		}
	}
	return roles
}

func (k kit) material(role string) int {
	for i, f := range k.goods {
		if f.Role.Text == role {
			return i
		}
	}
	return -1
}

func (in Input) titleOf(role string, kits []kit) string {
	for _, k := range kits {
		if i := k.material(role); i >= 0 {
			return title(k.goods[i])
		}
	}
	return role
}

func (in Input) results(kits []kit) report.Table {
	code := in.Project.Currency.Code()
	t := perSize("kit-cost", "Cost and price of a kit", kits)
	t.Foot = []string{
		"Margin is (price - cost) / price; markup is (price - cost) / cost. Each money line is rounded once, half away from zero.",
		"Fabric is charged as bought for the kit; remnants of bolts are not included.",
	}
	for _, role := range kitRoles(kits) {
		t.Rows = append(t.Rows, line(report.Body, in.titleOf(role, kits), code, kits, func(k kit) report.Cell {
			if i := k.material(role); i >= 0 {
				return result(report.Money, k.costs.Materials[i])
			}
			return report.Cell{}
		}))
	}
	add := func(style report.RowStyle, what, unit string, kind report.CellKind, of func(costing.Costs) costing.Result) {
		t.Rows = append(t.Rows, line(style, what, unit, kits, func(k kit) report.Cell { return result(kind, of(k.costs)) }))
	}
	add(report.Body, "Fabric", code, report.Money, func(c costing.Costs) costing.Result { return c.Fabric })
	add(report.Body, "Labour", code, report.Money, func(c costing.Costs) costing.Result { return c.Labour })
	add(report.Total, "Cost of a kit (fabric, labour, packaging, pattern)", code, report.Money, func(c costing.Costs) costing.Result { return c.Unit })
	add(report.Body, "Price for the target margin", code, report.Money, func(c costing.Costs) costing.Result { return c.ForMargin })
	add(report.Body, "Keystone price (twice the cost)", code, report.Money, func(c costing.Costs) costing.Result { return c.Keystone })
	add(report.Total, "Price taken", code, report.Money, func(c costing.Costs) costing.Result { return c.Price })
	add(report.Body, "Margin at that price", "% of price", report.Share, func(c costing.Costs) costing.Result { return c.Margin })
	add(report.Body, "Markup at that price", "% of cost", report.Share, func(c costing.Costs) costing.Result { return c.Markup })
	add(report.Total, "Break-even", "kits", report.Number, func(c costing.Costs) costing.Result { return c.BreakEven })
	return t
}

// notInKit says what the buyer has to find herself.
func (in Input) notInKit(kits []kit) report.Table {
	t := report.Table{ID: "not-in-kit", Heading: "Not in the kit", Columns: []report.Column{{ID: "size", Title: "Size"}, {ID: "what", Title: "To be said on the kit", Wide: true}}}
	for _, k := range kits {
		var out []string
		for _, f := range k.size.Fabrics {
			if f.Used() && k.material(f.Role.Text) < 0 {
				out = append(out, title(f))
			}
		}
		if k.size.Batting != nil {
			out = append(out, "batting")
		}
		for _, x := range k.said.Excludes {
			if !slices.ContainsFunc(out, func(said string) bool { return strings.EqualFold(said, x.Text) }) {
				out = append(out, x.Text)
			}
		}
		t.Rows = append(t.Rows, row(report.T(k.size.Of.Name.Text), report.T(fmt.Sprintf("not included: %s", strings.Join(out, ", ")))))
	}
	return t
}
