package derive

import (
	"fmt"
	"math/big"
	"strings"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/cutting"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Kit is what goes into the kit of a size, and what it costs.
type Kit struct {
	Said   *plan.Kit
	Known  bool // all that goes in could be counted; otherwise what it costs is not known
	Goods  []Good
	Things []Thing
	Work   KitWork
	Cells  costing.Kit
	Costs  costing.Costs
}

// Good is a fabric of a kit. Its numbers stand at the same place of the kit's
// materials.
type Good struct {
	*Fabric
	Length measure.Length // cut for the kit: what is bought and the generous cut; zero of a precut
	Unit   plan.PriceUnit // what the price is for
	Price  plan.Price     // of the list; without an amount where it has none that fits
	Priced bool           // the price list has a price that fits
}

// Thing is what goes in besides fabric and pattern.
type Thing struct {
	plan.Thing
	Unit   plan.PriceUnit
	Priced bool
}

// Kit works out the kit of the size; nil when the plan has none. A fabric that
// is not used in this size does not go in. A fabric without a price counts as nothing, which the rules tell.
func (s *Size) Kit(project *plan.Project, prices *plan.PriceList) *Kit {
	said := s.Of.Kit
	if said == nil {
		return nil
	}
	suffix := "." + cellKey(s.Of.Name.Text)
	if s.Of.Way.Given() {
		suffix += "." + cellKey(s.Of.Way.Text)
	}
	own := func(name string, value *big.Rat) costing.Input {
		return costing.Input{Name: name + suffix, Value: value}
	}
	k := &Kit{Said: said, Known: true, Cells: costing.Kit{
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
		k.Known = k.Known && f != nil && f.Err == nil && s.Sure(Quantity{Cloth, role.Text})
		if f != nil && f.Used() && f.Err == nil {
			k.add(f, suffix, s.priceCell(f, suffix), prices, s.Plan.Units)
		}
	}
	for i, t := range said.Things {
		k.put(i, t, suffix, prices)
	}
	k.Work = k.work()
	k.Cells.Minutes = own("minutes", k.minutes(project.Rates))
	k.Costs = costing.Price(k.Cells)
	return k
}

// priceCell names the cell of a fabric's price: one for all kits that hold the
// recipe's own article, and one for each kit that holds another.
func (s *Size) priceCell(f *Fabric, suffix string) string {
	name := "fabric_price." + cellKey(f.Role.Text)
	if own := s.Plan.Sizes[0].Fabric(f.Role.Text); own == nil || own.SKU.Text != f.SKU.Text || own.Form != f.Form {
		return name + suffix
	}
	return name
}

func (k *Kit) add(f *Fabric, suffix, priceCell string, prices *plan.PriceList, u measure.Unit) {
	g := Good{Fabric: f, Unit: plan.PerYard}
	switch {
	case f.Form == plan.Precut:
		g.Unit = plan.PerPack
	case u == measure.Cm:
		g.Unit = plan.PerMetre
	}
	if f.Form == plan.Yardage {
		g.Length = f.Buy + k.Said.Allowance.Length
	}
	price := new(big.Rat)
	if p, ok := prices.Find(f.SKU.Text); ok && p.Fits(f.Form) {
		price, g.Unit, g.Price, g.Priced = p.Amount, p.Unit, p, true
	}
	role := cellKey(f.Role.Text)
	k.Goods = append(k.Goods, g)
	k.Cells.Materials = append(k.Cells.Materials, costing.Material{
		Quantity: costing.Input{Name: "fabric_quantity." + role + suffix, Value: g.quantity()},
		Price:    costing.Input{Name: priceCell, Value: price},
	})
}

// put adds a thing. A price in the plan comes before that of the list.
func (k *Kit) put(i int, said plan.Thing, suffix string, prices *plan.PriceList) {
	t := Thing{Thing: said, Unit: plan.PerEach, Priced: said.Price.Given()}
	price := money(said.Price)
	if p, ok := prices.Find(said.SKU.Text); ok && !t.Priced && p.Unit.Length() == 0 {
		price, t.Unit, t.Priced = p.Amount, p.Unit, true
	}
	k.Things = append(k.Things, t)
	k.Cells.Things = append(k.Cells.Things, costing.Material{
		Quantity: costing.Input{Name: fmt.Sprintf("thing_count.%d%s", i+1, suffix), Value: big.NewRat(int64(said.Count.N), 1)},
		Price:    costing.Input{Name: fmt.Sprintf("thing_price.%d%s", i+1, suffix), Value: price},
	})
}

// KitWork is what the studio cuts for one kit.
type KitWork struct {
	Lengths  int64 // of fabric, from the bolt
	Strips   int64 // across a length or a precut piece
	Cuts     int64 // of pieces, from strips
	Settings int64 // different cut widths, of strips and of pieces
}

// work counts the cuts of a kit: its lengths, and those of every piece where
// the studio cuts them.
func (k *Kit) work() KitWork {
	var w KitWork
	for _, g := range k.Goods {
		if g.Form == plan.Yardage {
			w.Lengths++
		}
		if k.Said.Cut == plan.Pieces {
			w.add(g.Fabric)
		}
	}
	return w
}

// add counts the cuts of the layout by which a fabric is cut up. A precut
// strip that is used whole is not cut.
func (w *KitWork) add(f *Fabric) {
	widths := map[measure.Length]bool{}
	var row func(r cutting.Row, times int64, whole bool)
	row = func(r cutting.Row, times int64, whole bool) {
		if !whole {
			w.Strips += times * int64(r.Repeat)
			widths[r.Height] = true
		}
		for _, c := range r.Cuts {
			w.Cuts += times * int64(r.Repeat) * int64(c.Count)
			widths[f.across(c)] = true
		}
		for _, s := range r.Stacks {
			for _, c := range s.Cuts {
				w.Cuts += times * int64(r.Repeat) * int64(s.Count) * int64(c.Count)
			}
			widths[s.Width] = true
		}
		for _, beside := range r.Panel {
			row(beside, times*int64(r.Repeat), false)
		}
	}
	for _, r := range f.Layout.Rows {
		row(r, 1, false)
	}
	for _, s := range f.Sheets.Sheets {
		for _, r := range s.Rows {
			row(r, int64(s.Repeat), r.Height == f.StripWidth().Length)
		}
	}
	w.Settings += int64(len(widths))
}

// across is the width that a piece of a layout is cut to along its strip.
func (f *Fabric) across(c cutting.Cut) measure.Length {
	pieces, _ := f.split()
	if c.Turned {
		return pieces[c.Piece].Along
	}
	return pieces[c.Piece].Across
}

// minutes are the kit's own, or those that its cuts take at the project's
// rates.
func (k *Kit) minutes(r plan.Rates) *big.Rat {
	if k.Said.Minutes.Given() || !r.Given() {
		return big.NewRat(int64(k.Said.Minutes.N), 1)
	}
	total := new(big.Rat)
	for _, act := range k.Work.Acts(r) {
		total.Add(total, new(big.Rat).Mul(big.NewRat(act.Count, 1), act.Each))
	}
	return total
}

// Act is one kind of work and the minutes that each time takes.
type Act struct {
	Key   string
	Says  string
	Count int64
	Each  *big.Rat
}

// Acts are the kinds of work of one kit, in the order in which they are done.
func (w KitWork) Acts(r plan.Rates) []Act {
	acts := []Act{
		{"length", "Lengths cut from the bolt", w.Lengths, r.Length}, {"setting", "Settings of the ruler", w.Settings, r.Setting},
		{"strip", "Strips cut", w.Strips, r.Strip}, {"cut", "Pieces cut from strips", w.Cuts, r.Cut}, {"pack", "Packing", 1, r.Pack},
	}
	for i := range acts {
		if acts[i].Each == nil {
			acts[i].Each = new(big.Rat)
		}
	}
	return acts
}

// quantity is how much of the fabric is cut for a kit, in the price's unit.
func (g Good) quantity() *big.Rat {
	switch g.Unit {
	case plan.PerEach:
		return big.NewRat(int64(g.Sheets.Count), 1)
	case plan.PerPack, plan.PerRoll:
		return big.NewRat(g.Packs, 1)
	}
	return big.NewRat(int64(g.Length), int64(g.Unit.Length()))
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

func share(p plan.Percent) *big.Rat { return big.NewRat(p.BasisPoints, whole) }

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
