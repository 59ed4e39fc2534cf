package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/schema/plan"
)

var costChecks = []Check{
	{
		Rule: "cost/no-price", Level: diag.Error, Lesser: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "a fabric of the kit has no price",
		Why:     "A fabric without a price counts as nothing. A kit whose 34.00 strip roll is missing from the list seems to cost 9.00, and is sold at a loss.",
		Fix:     "name the article by its sku in the plan and give its price in the price list",
		Run:     noPrice,
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
		if !f.SKU.Given() {
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
