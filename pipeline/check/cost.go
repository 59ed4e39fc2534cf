package check

import (
	"fmt"
	"math/big"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/kit"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

var costChecks = []Check{
	{
		Rule: "cost/below-cost", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the kit is sold for less than it costs",
		Why:     "Every kit that is sold loses money, and selling more loses more. A kit of 34.22 asked at 20.00 loses 14.22 each time.",
		Fix:     "ask more, or put less into the kit",
		Run:     belowCost,
	},
	{
		Rule: "cost/discontinued", Level: diag.Error, Lesser: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "a kit holds an article that is no longer made",
		Why:     "Once the last bolt is sold the kit cannot be packed. A substitute that is 38 in wide where the article was 42 takes a strip more, and the length on the label no longer does. As long as a piece on hand holds a kit, or all that are planned are packed, it is a warning.",
		Fix:     "name the substitute in the plan, or another article that serves, and print what it takes",
		Run:     discontinued,
	},
	{
		Rule: "cost/kit-contents", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "what the kit's label says is in it is not what is in it, or not enough for the pattern",
		Why:     "The label is a promise. A kit of a pattern that takes 1 1/8 yd, labelled and packed with 1 yd, cannot be sewn, and its buyer has paid for the rest of it too.",
		Fix:     "make the label say what the kit holds, and the kit hold what the pattern takes",
		Run:     kitContents,
	},
	{
		Rule: "cost/no-price", Level: diag.Error, Lesser: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "a fabric of the kit has no price",
		Why:     "A fabric without a price counts as nothing. A kit whose 34.00 strip roll is missing from the list seems to cost 9.00, and is sold at a loss.",
		Fix:     "name the article by its sku in the plan and give its price in the price list",
		Run:     noPrice,
	},
	{
		Rule: "cost/under-target", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the price asked leaves less than the target margin",
		Why:     "Margin is (price - cost) / price. A cost of 30.00 sold at 50.00 is a markup of two thirds but a margin of 40 %, not of 50 %.",
		Fix:     "ask the price for the target margin, or lower the target for this kit",
		Run:     underTarget,
	},
	{
		Rule: "cost/price-unit", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "a price is for a unit that the fabric is not sold in",
		Why:     "A pack of strips priced by the yard, or yardage priced by the pack, gives a cost of nothing at all or of something else.",
		Fix:     "price yardage per yd or m, and precut pieces per pack or each",
		Run:     priceUnit,
	},
}

// eachKit calls do for the kit of the size and for those of its colourways, and
// tells which at the start of a message.
func (p *Pass) eachKit(do func(way string, k *kit.Kit)) {
	for _, k := range p.Kits {
		if k.Of == p.Size {
			do(wayOf(k.Size), k)
		}
	}
}

// eachKitFabric calls do for the fabrics that kits hold. A colourway's fabric
// that is the recipe's own has been told of with the recipe's.
func (p *Pass) eachKitFabric(do func(w worn, role plan.Text, f *plan.Fabric)) {
	for _, w := range p.wardrobe() {
		if w.Of.Kit == nil {
			continue
		}
		for _, role := range w.Of.Kit.Fabrics {
			f := w.Fabric(role.Text)
			if f == nil || !f.Used() {
				continue
			}
			if own := p.Size.Fabric(role.Text); w.way != "" && own != nil && p.Size.Of.Kit != nil && own.SKU == f.SKU {
				continue
			}
			do(w, role, f.Fabric)
		}
	}
}

func noPrice(p *Pass) {
	p.eachKitFabric(func(w worn, role plan.Text, f *plan.Fabric) {
		if _, ok := p.Prices.Find(f.SKU.Text); ok && f.SKU.Given() {
			return
		}
		at := role.At
		finding := Finding{Message: fmt.Sprintf("%sthe kit holds %q, whose article %q has no price", w.way, role.Text, f.SKU.Text), Hint: "add it to the price list"}
		if f.SKU.Given() {
			finding.Related = []Related{{f.SKU.At, "the article"}}
		} else {
			finding.Message = fmt.Sprintf("%sthe kit holds %q, and the plan names no article for it", w.way, role.Text)
			finding.Hint = "give the fabric the sku of its price"
		}
		if p.Prices == nil { // a plan on its own, or a studio that prices elsewhere
			finding.Level = diag.Warning
			finding.Message = fmt.Sprintf("%sthe kit holds %q, and there is no price list", w.way, role.Text)
			finding.Hint = "name a price list in the project file, or fill the price in on the costing sheet"
		}
		p.Report(at, finding)
	})
	p.eachKit(func(_ string, k *kit.Kit) {
		for _, t := range k.Things {
			if t.Priced {
				continue
			}
			finding := Finding{Message: fmt.Sprintf("the kit holds %q, which has no price", t.Title()), Hint: "give its \"price\", or the sku of one in the price list"}
			if price, ok := p.Prices.Find(t.Article.Text); ok {
				finding.Message = fmt.Sprintf("the kit holds %q, and the price of its article %q is per %s", t.Title(), t.Article.Text, price.Unit)
			}
			p.Report(t.Thing.At, finding)
		}
	})
}

func priceUnit(p *Pass) {
	p.eachKitFabric(func(w worn, role plan.Text, f *plan.Fabric) {
		price, ok := p.Prices.Find(f.SKU.Text)
		if !ok || price.Fits(f.Form) {
			return
		}
		sold, want := "by length", "per yd, m or half-m"
		if f.Form == plan.Precut {
			sold, want = "in pieces", "per pack, roll or each"
		}
		p.Report(role.At, Finding{
			Message: fmt.Sprintf("%s%q is sold %s, and the price of its article %q is per %s", w.way, role.Text, sold, f.SKU.Text, price.Unit),
			Hint:    "price it " + want,
			Related: []Related{{f.SKU.At, "the article"}},
		})
	})
}

// asked calls do for the kits whose price is asked and all of which is priced;
// what a price leaves is not known otherwise.
func (p *Pass) asked(do func(way string, k *kit.Kit)) {
	p.priced(func(way string, k *kit.Kit) {
		if k.Said.Price.Given() {
			do(way, k)
		}
	})
}

// priced calls do for the kits that have a price and all of which is priced.
func (p *Pass) priced(do func(way string, k *kit.Kit)) {
	p.eachKit(func(way string, k *kit.Kit) {
		if !k.Known || k.Costs.Unit.Value == nil || k.Costs.Net.Value == nil {
			return
		}
		for _, g := range k.Fabrics {
			if !g.Priced {
				return
			}
		}
		for _, t := range k.Things {
			if !t.Priced {
				return
			}
		}
		do(way, k)
	})
}

func (p *Pass) money(r *big.Rat) string { return measure.RoundMoney(r, p.Project.Currency).Format() }

// left says what is left of the price asked after payment fees, where there
// are any.
func (p *Pass) left(k *kit.Kit) string {
	if k.Costs.Net.Value.Cmp(k.Said.Price.Value) == 0 {
		return ""
	}
	return fmt.Sprintf(", of which fees leave %s,", p.money(k.Costs.Net.Value))
}

func (p *Pass) askMore(k *kit.Kit) string {
	if k.Costs.ForMargin.Value == nil {
		return "lower the target margin: with the payment fees no price leaves it"
	}
	return "ask " + p.money(k.Costs.ForMargin.Value)
}

func belowCost(p *Pass) {
	p.asked(func(way string, k *kit.Kit) {
		if k.Costs.Net.Value.Cmp(k.Costs.Unit.Value) >= 0 {
			return
		}
		p.Report(k.Said.Price.At, Finding{
			Message: fmt.Sprintf("%sthe kit is sold for %s%s and costs %s", way, p.money(k.Said.Price.Value), p.left(k), p.money(k.Costs.Unit.Value)),
			Hint:    p.askMore(k) + " for the target margin",
		})
	})
}

func underTarget(p *Pass) {
	p.asked(func(way string, k *kit.Kit) {
		if k.Costs.Margin.Value == nil || k.Costs.Net.Value.Cmp(k.Costs.Unit.Value) < 0 || k.Costs.Margin.Value.Cmp(k.Cells.Margin.Value) >= 0 {
			return
		}
		p.Report(k.Said.Price.At, Finding{
			Message: fmt.Sprintf("%sa price of %s%s on a cost of %s leaves a margin of about %s %%, and the target is %s %%", way, p.money(k.Said.Price.Value),
				p.left(k), p.money(k.Costs.Unit.Value), hundredths(k.Costs.Margin.Value), hundredths(k.Cells.Margin.Value)),
			Hint: p.askMore(k),
		})
	})
}

// kitContents compares what a kit's label says of a fabric with what the kit
// holds and with what the pattern takes.
func kitContents(p *Pass) {
	p.eachKit(func(way string, k *kit.Kit) {
		if !k.Known || len(k.Said.Label) == 0 {
			return
		}
		goods := map[string]kit.Line{}
		for _, g := range k.Fabrics {
			goods[g.Role.Text] = g
		}
		for _, c := range k.Said.Label {
			g, ok := goods[c.Of.Text]
			delete(goods, c.Of.Text)
			if !ok {
				p.Report(c.Of.At, Finding{
					Message: fmt.Sprintf("%sthe kit's label says %q, and the kit holds none", way, c.Of.Text), Hint: "add it to the kit's fabrics, or take it off the label",
				})
				continue
			}
			p.claim(way, g, c)
		}
		for _, role := range k.Said.Fabrics {
			if _, left := goods[role.Text]; left {
				p.Report(role.At, Finding{
					Message: fmt.Sprintf("%sthe kit holds %q, and its label does not say so", way, role.Text), Hint: "say it on the label",
				})
			}
		}
	})
}

// claim judges one line of a label.
func (p *Pass) claim(way string, g kit.Line, c plan.Claimed) {
	at, holds, takes, says := c.Packs.At, count(int(g.Packs), "pack"), count(int(g.Packs), "pack"), count(c.Packs.N, "pack")
	short, over := int64(c.Packs.N) < g.Packs, int64(c.Packs.N) > g.Packs
	if g.Form == plan.Yardage {
		at = c.Length.At
		holds, takes, says = p.shopped(g.Length), p.shopped(measure.CeilTo(g.Gross, g.Grid)), p.shopped(c.Length.Length)
		short, over = c.Length.Length < g.Gross, c.Length.Length > g.Length
	}
	switch {
	case g.Form == plan.Yardage != c.Length.Given():
		p.Report(c.Of.At, Finding{Message: fmt.Sprintf("%sthe kit's label gives %q in another measure than the kit holds it, %s", way, c.Of.Text, holds), Hint: "write " + holds + " on the label"})
	case short:
		p.Report(at, Finding{Message: fmt.Sprintf("%sthe kit's label says %s of %q, and the pattern takes %s", way, says, c.Of.Text, takes), Hint: "write " + takes + " on the label"})
	case over:
		p.Report(at, Finding{Message: fmt.Sprintf("%sthe kit's label says %s of %q, and the kit holds %s", way, says, c.Of.Text, holds), Hint: "write " + holds + " on the label, or put more in"})
	}
}

// hundredths prints a share as a percentage with two decimals.
func hundredths(share *big.Rat) string {
	return new(big.Rat).Mul(share, big.NewRat(100, 1)).FloatString(2)
}
