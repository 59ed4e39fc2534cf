package derive

import (
	"math/big"
	"strings"

	"yardproof/pipeline/internal/costing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Kit is what goes into the kit of a size, and what it costs.
type Kit struct {
	Said  *plan.Kit
	Goods []Good
	Cells costing.Kit
	Costs costing.Costs
}

// Good is a fabric of a kit. Its numbers stand at the same place of the kit's
// materials.
type Good struct {
	*Fabric
	Unit   plan.PriceUnit // what the price is for
	Priced bool           // the price list has a price that fits
}

// Kit works out the kit of the size; nil when the plan has none. A fabric
// without a price counts as nothing, which the rules tell.
func (s *Size) Kit(project *plan.Project, prices *plan.PriceList) *Kit {
	said := s.Of.Kit
	if said == nil {
		return nil
	}
	suffix := "." + cellKey(s.Of.Name.Text)
	k := &Kit{Said: said, Cells: costing.Kit{
		Suffix:    suffix,
		Digits:    digits(project.Currency),
		Minutes:   costing.Input{Name: "minutes" + suffix, Value: big.NewRat(int64(said.Minutes.N), 1)},
		Rate:      costing.Input{Name: "labour_rate", Value: money(project.LabourRate)},
		Packaging: costing.Input{Name: "packaging" + suffix, Value: money(said.Packaging)},
		Pattern:   costing.Input{Name: "pattern" + suffix, Value: money(said.Pattern)},
		Fixed:     costing.Input{Name: "fixed_costs" + suffix, Value: money(said.Fixed)},
		Margin:    costing.Input{Name: "target_margin" + suffix, Value: targetMargin(project, said)},
		Asked:     costing.Input{Name: "price_asked" + suffix, Value: money(said.Price)},
		Run:       costing.Input{Name: "kits_planned" + suffix, Value: big.NewRat(int64(planned(project, said)), 1)},
	}}
	for _, role := range said.Fabrics {
		if f := s.Fabric(role.Text); f != nil && f.Used() && f.Err == nil {
			k.add(f, suffix, prices, s.Plan.Units)
		}
	}
	k.Costs = costing.Price(k.Cells)
	return k
}

func (k *Kit) add(f *Fabric, suffix string, prices *plan.PriceList, u measure.Unit) {
	g := Good{Fabric: f, Unit: plan.PerYard}
	switch {
	case f.Form == plan.Precut:
		g.Unit = plan.PerPack
	case u == measure.Cm:
		g.Unit = plan.PerMetre
	}
	price := new(big.Rat)
	if p, ok := prices.Find(f.SKU.Text); ok && p.Fits(f.Form) {
		price, g.Unit, g.Priced = p.Amount, p.Unit, true
	}
	role := cellKey(f.Role.Text)
	k.Goods = append(k.Goods, g)
	k.Cells.Materials = append(k.Cells.Materials, costing.Material{
		Quantity: costing.Input{Name: "fabric_quantity." + role + suffix, Value: f.quantity(g.Unit)},
		Price:    costing.Input{Name: "fabric_price." + role, Value: price},
	})
}

// quantity is how much of the fabric is bought for a kit, in a price's unit.
func (f *Fabric) quantity(unit plan.PriceUnit) *big.Rat {
	switch unit {
	case plan.PerEach:
		return big.NewRat(int64(f.Sheets.Count), 1)
	case plan.PerPack, plan.PerRoll:
		return big.NewRat(f.Packs, 1)
	}
	return big.NewRat(int64(f.Buy), int64(unit.Length()))
}

// cellKey makes a name usable inside a cell's name, whose parts are separated
// by points, which no name of a plan holds.
func cellKey(name string) string { return strings.ReplaceAll(name, "-", "_") }

// digits are the decimals of a currency's minor unit; two where the project
// names no currency.
func digits(c measure.Currency) int {
	if c == (measure.Currency{}) {
		return 2
	}
	return c.Digits()
}

func money(a plan.Amount) *big.Rat {
	if a.Value == nil {
		return new(big.Rat)
	}
	return a.Value
}

// targetMargin is the kit's own or the project's.
func targetMargin(project *plan.Project, k *plan.Kit) *big.Rat {
	points := project.Margin.BasisPoints
	if k.Margin.BasisPoints != 0 {
		points = k.Margin.BasisPoints
	}
	return big.NewRat(points, 10_000)
}

// planned is how many kits are planned: the kit's own number or the project's.
func planned(project *plan.Project, k *plan.Kit) int {
	if k.Run.Given() {
		return k.Run.N
	}
	return project.Run.N
}
