package check

import (
	"fmt"
	"math/big"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/kit"
	"yardproof/schema/plan"
)

var priceChecks = []Check{
	{
		Rule: "cost/no-margin", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "neither the kit nor the project names a target margin",
		Why:     "Without a target no price is too low but one below the cost: a kit of 34.22 asked at 34.50 draws no word, and one without a price is sold at what it costs.",
		Fix:     "give the project its margin, or the kit its own, \"0%\" where it is to earn nothing",
		Run:     noMargin,
	},
	{
		Rule: "cost/no-price-left", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "payment fees and target margin together leave nothing of a price for the cost",
		Why:     "Of a price, 2.9 % go to payment, and a target of 97.5 % leaves less than nothing for fabric and labour: no price will do, and the kit has none.",
		Fix:     "lower the target margin, or ask a price",
		Run:     noPriceLeft,
	},
	{
		Rule: "cost/pack-each", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the price of a pack is for each piece of it",
		Why:     "A roll of 40 strips that is listed at 34.00 each makes a kit of 28 strips cost 952.00: a roll is meant, and the list says a strip.",
		Fix:     "price the article per pack or roll; where pieces are bought singly, give the plan's pack a count of 1",
		Run:     packEach,
	},
	{
		Rule: "cost/shop-below-cost", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "what a shop pays for a kit is less than the kit costs",
		Why:     "A shop pays a share of the price. Half of 57.00 is 28.50: a kit of 30.00 loses 1.50 with each that a shop takes, though it earns when it is sold directly.",
		Fix:     "ask more, sell this kit only directly, or give shops a larger share to pay",
		Run:     shopBelowCost,
	},
}

// noMargin reports a kit that nothing says a target for.
func noMargin(p *Pass) {
	if p.Prices == nil || p.Project.Margin.Given() { // a studio that prices elsewhere
		return
	}
	seen := map[*plan.Kit]bool{nil: true}
	for _, w := range p.wardrobe() {
		k := w.Of.Kit
		if seen[k] || k.Margin.Given() {
			continue
		}
		seen[k] = true
		f := Finding{
			Message: w.way + "the kit has no target margin and the project names none: any price that covers the cost passes",
			Hint:    "give the project its \"margin\", or the kit its own",
		}
		if !k.Price.Given() {
			f.Message = w.way + "the kit has no price and no target margin, and the project names none: it is priced at what it costs"
			f.Hint = "give the project its \"margin\", or the kit its own or a price"
		}
		p.Report(k.At, f)
	}
}

// noPriceLeft reports a kit for which no price can be worked out. Where one is
// asked, what that leaves is told.
func noPriceLeft(p *Pass) {
	p.eachKit(func(way string, k *kit.Kit) {
		if k.Said.Price.Given() || k.Cells.Leaves().Value.Sign() > 0 {
			return
		}
		at := k.Said.At
		if k.Said.Margin.Given() {
			at = k.Said.Margin.At
		}
		p.Report(at, Finding{
			Message: fmt.Sprintf("%spayment takes %s %% of a price and the target margin is %s %%: no price leaves anything for the kit's cost of %s", way,
				hundredths(k.Cells.FeeShare.Value), hundredths(k.Cells.Margin.Value), p.money(k.Costs.Unit.Value)),
			Hint: fmt.Sprintf("lower the target margin below %s %%, or ask a price", hundredths(new(big.Rat).Sub(big.NewRat(1, 1), k.Cells.FeeShare.Value))),
		})
	})
}

// packEach reports a pack of several pieces whose price is for one piece.
func packEach(p *Pass) {
	p.eachKitFabric(func(w worn, role plan.Text, f *plan.Fabric) {
		price, ok := p.Prices.Find(f.SKU.Text)
		if !ok || f.Form != plan.Precut || price.Unit != plan.PerEach || f.Pack.N <= 1 || price.Amount.Sign() == 0 {
			return
		}
		pack := new(big.Rat).Mul(price.Amount, big.NewRat(int64(f.Pack.N), 1))
		p.Report(role.At, Finding{
			Message: fmt.Sprintf("%s%q comes in packs of %d, and its article %q is priced each: a pack would cost %s", w.way, role.Text, f.Pack.N, price.SKU, p.money(pack)),
			Hint:    fmt.Sprintf("price %q per pack; where its pieces are bought singly, give the plan's pack a \"count\" of 1", price.SKU),
			Related: []Related{{f.SKU.At, "the article"}},
		})
	})
}

// shopBelowCost reports a kit that loses money when a shop takes it, where the
// project says what shops pay.
func shopBelowCost(p *Pass) {
	if !p.Project.Wholesale.Given() {
		return
	}
	p.priced(func(way string, k *kit.Kit) {
		pays, cost := k.Costs.TradePrice.Value, k.Costs.Unit.Value
		if pays == nil || pays.Cmp(cost) >= 0 || k.Costs.Net.Value.Cmp(cost) < 0 { // the last is told as it is
			return
		}
		at := k.Said.At
		if k.Said.Price.Given() {
			at = k.Said.Price.At
		}
		hint := "ask more, or sell it only directly"
		if least := k.Costs.RetailForTrade.Value; least != nil {
			hint = fmt.Sprintf("ask %s for the target margin in shops, too, or sell it only directly", p.money(least))
		}
		p.Report(at, Finding{
			Message: fmt.Sprintf("%sa shop pays %s for the kit, %s %% of %s, and it costs %s", way, p.money(pays), hundredths(k.Cells.Trade.Value), p.money(k.Costs.Price.Value), p.money(cost)),
			Hint:    hint,
		})
	})
}
