package check

import (
	"fmt"
	"math/big"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
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

// eachKitFabric calls do for the fabrics of the size's kit that it uses.
func (p *Pass) eachKitFabric(do func(role plan.Text, f *plan.Fabric)) {
	if p.Size.Of.Kit == nil {
		return
	}
	for _, role := range p.Size.Of.Kit.Fabrics {
		if f := p.Size.Fabric(role.Text); f != nil && f.Used() {
			do(role, f.Fabric)
		}
	}
}

func noPrice(p *Pass) {
	p.eachKitFabric(func(role plan.Text, f *plan.Fabric) {
		if _, ok := p.Prices.Find(f.SKU.Text); ok && f.SKU.Given() {
			return
		}
		finding := Finding{Message: fmt.Sprintf("the kit holds %q, whose article %q has no price", role.Text, f.SKU.Text), Hint: "add it to the price list"}
		if f.SKU.Given() {
			finding.Related = []Related{{f.SKU.At, "the article"}}
		} else {
			finding.Message = fmt.Sprintf("the kit holds %q, and the plan names no article for it", role.Text)
			finding.Hint = "give the fabric the sku of its price"
		}
		if p.Prices == nil { // a plan on its own, or a studio that prices elsewhere
			finding.Level = diag.Warning
			finding.Message = fmt.Sprintf("the kit holds %q, and there is no price list", role.Text)
			finding.Hint = "name a price list in the project file, or fill the price in on the costing sheet"
		}
		p.Report(role.At, finding)
	})
}

func priceUnit(p *Pass) {
	p.eachKitFabric(func(role plan.Text, f *plan.Fabric) {
		price, ok := p.Prices.Find(f.SKU.Text)
		if !ok || price.Fits(f.Form) {
			return
		}
		sold, want := "by length", "per yd or m"
		if f.Form == plan.Precut {
			sold, want = "in pieces", "per pack or each"
		}
		p.Report(role.At, Finding{
			Message: fmt.Sprintf("%q is sold %s, and the price of its article %q is per %s", role.Text, sold, f.SKU.Text, price.Unit),
			Hint:    "price it " + want,
			Related: []Related{{f.SKU.At, "the article"}},
		})
	})
}

// asked is the size's kit where its price is asked and all of it is priced;
// what a price leaves is not known otherwise.
func (p *Pass) asked() *derive.Kit {
	k := p.Size.Kit(p.Project, p.Prices)
	if k == nil || !k.Said.Price.Given() || k.Costs.Unit.Value == nil {
		return nil
	}
	for _, g := range k.Goods {
		if !g.Priced {
			return nil
		}
	}
	return k
}

func (p *Pass) money(r *big.Rat) string { return measure.RoundMoney(r, p.Project.Currency).Format() }

func belowCost(p *Pass) {
	k := p.asked()
	if k == nil || k.Said.Price.Value.Cmp(k.Costs.Unit.Value) >= 0 {
		return
	}
	p.Report(k.Said.Price.At, Finding{
		Message: fmt.Sprintf("the kit is sold for %s and costs %s", p.money(k.Said.Price.Value), p.money(k.Costs.Unit.Value)),
		Hint:    fmt.Sprintf("ask %s for the target margin", p.money(k.Costs.ForMargin.Value)),
	})
}

func underTarget(p *Pass) {
	k := p.asked()
	if k == nil || k.Costs.Margin.Value == nil || k.Said.Price.Value.Cmp(k.Costs.Unit.Value) < 0 ||
		k.Costs.Margin.Value.Cmp(k.Cells.Margin.Value) >= 0 {
		return
	}
	p.Report(k.Said.Price.At, Finding{
		Message: fmt.Sprintf("a price of %s on a cost of %s leaves a margin of about %s %%, and the target is %s %%", p.money(k.Said.Price.Value),
			p.money(k.Costs.Unit.Value), hundredths(k.Costs.Margin.Value), hundredths(k.Cells.Margin.Value)),
		Hint: "ask " + p.money(k.Costs.ForMargin.Value),
	})
}

// hundredths prints a share as a percentage with two decimals.
func hundredths(share *big.Rat) string {
	return new(big.Rat).Mul(share, big.NewRat(100, 1)).FloatString(2)
}
