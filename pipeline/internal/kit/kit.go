package kit

import (
	"fmt"
	"math/big"
	"strings"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Kit is what goes into the kit of a size, in the fabrics of the recipe or in a
// colourway, and what it costs.
type Kit struct {
	Said    *plan.Kit
	Of      *derive.Size // in the recipe's own fabrics
	Size    *derive.Size // in its colourway, cut from the articles of the price list
	Known   bool         // all that goes in could be counted; otherwise what it costs is not known
	Fabrics []Line
	Things  []Line // what goes in besides fabric and pattern
	Work    Work
	Cells   costing.Inputs
	Costs   costing.Costs
}

// Line is an article of a kit: how much of it goes in, what it is sold by and
// what it costs.
type Line struct {
	*derive.Fabric             // nil of a thing
	Thing          *plan.Thing // nil of a fabric

	Article     plan.Text      // that the plan names
	Description string         // as the price list calls it; empty where it has none
	Listed      plan.Price     // in the price list; without an amount where it has none that fits
	Length      measure.Length // cut for the kit: what is bought and the generous cut; zero of a precut and of a thing
	Unit        plan.PriceUnit // what the price is for
	Priced      bool           // there is a price that fits
	costing.Item
}

// Ordered reports whether so many as the plan counts are bought as an article of
// the price list. What has a price of its own may be one of many of a pack, or of
// a roll, and then nobody says how many these are.
func (l Line) Ordered() bool {
	own := l.Thing != nil && l.Thing.Price.Given()
	return l.Listed.SKU != "" && !(own && (l.Unit == plan.PerPack || l.Unit == plan.PerRoll))
}

// Title is what the plan calls it.
func (l Line) Title() string {
	if l.Thing != nil {
		return l.Thing.Name.Text
	}
	return Title(l.Fabric)
}

// Title is how a fabric is called: its name, or its role when it has none.
func Title(f *derive.Fabric) string {
	if f.Name.Given() {
		return f.Name.Text
	}
	return f.Role.Text
}

// All are the kits of every size, after each those of its colourways, cut from
// the articles of the price list, which may be nil.
func All(sizes []*derive.Size, project *plan.Project, prices *plan.PriceList) []*Kit {
	var kits []*Kit
	for _, s := range sizes {
		for _, worn := range append([]*derive.Size{s}, s.Colourways()...) {
			if worn.Of.Kit != nil {
				kits = append(kits, of(s, worn.InArticles(prices), project, prices))
			}
		}
	}
	return kits
}

// Costed are those of a size, and of its colourways, of which is known all that
// goes in.
func Costed(kits []*Kit, s *derive.Size) []*Kit {
	var all []*Kit
	for _, k := range kits {
		if k.Known && k.Of == s {
			all = append(all, k)
		}
	}
	return all
}

// of works out the kit of a size. A fabric that is not used in this size does not
// go in. A fabric without a price counts as nothing, which the rules tell.
func of(recipe, s *derive.Size, project *plan.Project, prices *plan.PriceList) *Kit {
	said := s.Of.Kit
	suffix := "." + cellKey(s.Of.Name.Text)
	if s.Of.Way.Given() {
		suffix += "." + cellKey(s.Of.Way.Text)
	}
	own := func(name string, value *big.Rat) costing.Input {
		return costing.Input{Name: name + suffix, Value: value}
	}
	k := &Kit{Said: said, Of: recipe, Size: s, Known: true, Cells: costing.Inputs{
		Suffix:    suffix,
		Digits:    digits(project.Currency),
		Rate:      costing.Input{Name: "labour_rate", Value: money(project.LabourRate)},
		Spoilage:  costing.Input{Name: "spoilage", Value: share(project.Spoilage)},
		FeeShare:  costing.Input{Name: "fee_share", Value: share(project.Payment.Share)},
		FeeEach:   costing.Input{Name: "fee_each", Value: money(project.Payment.Each)},
		Trade:     costing.Input{Name: "trade_share", Value: share(project.Wholesale)},
		Packaging: own("packaging", money(said.Packaging)),
		Pattern:   own("pattern", money(said.Pattern)),
		Fixed:     own("fixed_costs", money(said.Fixed)),
		Margin:    own("target_margin", targetMargin(project, said)),
		Asked:     own("price_asked", money(said.Price)),
		Run:       own("kits_planned", big.NewRat(int64(planned(project, said)), 1)),
		Bought:    own("fabric_bought", new(big.Rat)),
	}}
	for _, role := range said.Fabrics {
		f := s.Fabric(role.Text)
		k.Known = k.Known && f != nil && f.Err == nil && s.Sure(derive.Quantity{Kind: derive.Cloth, Name: role.Text})
		if f != nil && f.Used() && f.Err == nil {
			k.add(f, priceCell(s, f, suffix), prices, project)
		}
	}
	for i := range said.Things {
		k.put(i, &said.Things[i], prices, project)
	}
	k.Work = k.work()
	k.Cells.Minutes = own("minutes", k.minutes(project.Rates))
	k.Costs = costing.Price(k.Cells, items(k.Fabrics), items(k.Things))
	return k
}

// Reprice works the costs out anew with what is ordered for the run.
func (k *Kit) Reprice(ordered costing.Ordered) {
	k.Cells.Ordered = &ordered
	k.Costs = costing.Price(k.Cells, items(k.Fabrics), items(k.Things))
}

// items are what lines cost.
func items(lines []Line) []costing.Item {
	var all []costing.Item
	for _, l := range lines {
		all = append(all, l.Item)
	}
	return all
}

// Name is what the kit's size is called, "throw", or in a colourway "throw,
// Heather".
func (k *Kit) Name() string { return Worn(k.Size) }

// Worn is what a size in its colourway is called.
func Worn(s *derive.Size) string {
	if !s.Of.Way.Given() {
		return s.Of.Name.Text
	}
	way := s.Plan.Colourway(s.Of.Way.Text)
	if way != nil && way.Title.Given() {
		return s.Of.Name.Text + ", " + way.Title.Text
	}
	return s.Of.Name.Text + ", " + s.Of.Way.Text
}

// Fabric is the line of a role; false where the kit holds none.
func (k *Kit) Fabric(role string) (Line, bool) {
	for _, l := range k.Fabrics {
		if l.Role.Text == role {
			return l, true
		}
	}
	return Line{}, false
}

// priceCell names the cell of a fabric's price: one for all kits that hold the
// recipe's own article, and one for each kit that holds another.
func priceCell(s *derive.Size, f *derive.Fabric, suffix string) string {
	name := "fabric_price." + cellKey(f.Role.Text)
	if own := s.Plan.Sizes[0].Fabric(f.Role.Text); own == nil || own.SKU.Text != f.SKU.Text || own.Form != f.Form {
		return name + suffix
	}
	return name
}

func (k *Kit) add(f *derive.Fabric, priceCell string, prices *plan.PriceList, project *plan.Project) {
	l := Line{Fabric: f, Article: f.SKU, Unit: plan.PerYard}
	switch {
	case f.Form == plan.Precut:
		l.Unit = plan.PerPack
	case k.Size.Plan.Units == measure.Cm:
		l.Unit = plan.PerMetre
	}
	if f.Form == plan.Yardage {
		l.Length = f.Buy + k.Said.Allowance.Length
	}
	price := new(big.Rat)
	if p, ok := prices.Find(f.SKU.Text); ok {
		l.Description = p.Description
		if p.Fits(f.Form) {
			price, l.Unit, l.Listed, l.Priced = p.Amount, p.Unit, p, true
		}
	}
	l.Item = k.Cells.Item(
		costing.Input{Name: "fabric_quantity." + cellKey(f.Role.Text) + k.Cells.Suffix, Value: l.quantity()},
		costing.Input{Name: priceCell, Value: price},
		landing(l, strings.TrimPrefix(priceCell, "fabric_price"), project),
	)
	k.Fabrics = append(k.Fabrics, l)
}

// put adds a thing. A price in the plan comes before that of the list.
func (k *Kit) put(i int, said *plan.Thing, prices *plan.PriceList, project *plan.Project) {
	l := Line{Thing: said, Article: said.SKU, Unit: plan.PerEach, Priced: said.Price.Given()}
	price := money(said.Price)
	if p, ok := prices.Find(said.SKU.Text); ok && p.Unit.Length() == 0 {
		l.Unit, l.Listed, l.Description = p.Unit, p, p.Description
		if !l.Priced {
			price, l.Priced = p.Amount, true
		}
	}
	l.Item = k.Cells.Item(
		costing.Input{Name: fmt.Sprintf("thing_count.%d%s", i+1, k.Cells.Suffix), Value: big.NewRat(int64(said.Count.N), 1)},
		costing.Input{Name: fmt.Sprintf("thing_price.%d%s", i+1, k.Cells.Suffix), Value: price},
		landing(l, fmt.Sprintf(".notion_%d%s", i+1, k.Cells.Suffix), project),
	)
	k.Things = append(k.Things, l)
}

// quantity is how much of the fabric is cut for a kit, in the price's unit.
func (l Line) quantity() *big.Rat {
	switch l.Unit {
	case plan.PerEach:
		return big.NewRat(int64(l.Sheets.Count), 1)
	case plan.PerPack, plan.PerRoll:
		return big.NewRat(l.Packs, 1)
	}
	return big.NewRat(int64(l.Length), int64(l.Unit.Length()))
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

func share(p plan.Percent) *big.Rat { return big.NewRat(p.BasisPoints, 10_000) }

// targetMargin is the kit's own, be it none at all, or the project's.
func targetMargin(project *plan.Project, k *plan.Kit) *big.Rat {
	if k.Margin.Given() {
		return share(k.Margin)
	}
	return share(project.Margin)
}

// planned is how many kits are planned: the kit's own number or the project's.
func planned(project *plan.Project, k *plan.Kit) int {
	if k.Run.Given() {
		return k.Run.N
	}
	return project.Run.N
}
