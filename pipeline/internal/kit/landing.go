package kit

import (
	"math/big"

	"yardproof/pipeline/internal/costing"
	"yardproof/schema/plan"
)

// landing is what comes on top of the list's price of a line where the project
// says what an order from its supplier usually comes to; nil where it does not, or
// where the price is the plan's own.
func landing(l Line, suffix string, project *plan.Project) *costing.Landing {
	from, ok := project.LandedFrom(l.Listed.Supplier)
	if !ok || !from.InKits() || l.Listed.SKU == "" || l.Thing != nil && l.Thing.Price.Given() {
		return nil
	}
	share, each := Landed(from, l.Listed)
	landing := &costing.Landing{Share: costing.Input{Name: "landed_share" + suffix, Value: share}}
	if from.ByLength {
		landing.Each = costing.Input{Name: "landed_each" + suffix, Value: each}
	}
	return landing
}

// Landed is what comes on top of an article's price over a usual order, as a share
// of the price and for one unit of it. What is sold by the piece bears no freight
// that is shared by length.
func Landed(from plan.Landed, article plan.Price) (share, each *big.Rat) {
	duty, loss := big.NewRat(from.Duty.BasisPoints, 10_000), big.NewRat(article.Loss.BasisPoints, 10_000)
	extra := new(big.Rat).Add(money(from.Freight), money(from.Fees))
	if !from.ByLength {
		return costing.LandedShare(duty, extra, from.Usual.Value, loss), new(big.Rat)
	}
	each = new(big.Rat)
	if unit := article.Unit.Length(); unit > 0 {
		each.Mul(extra, big.NewRat(int64(unit), int64(from.UsualLength.Length)))
		each.Quo(each, new(big.Rat).Sub(big.NewRat(1, 1), loss))
	}
	return costing.LandedShare(duty, new(big.Rat), big.NewRat(1, 1), loss), each
}
