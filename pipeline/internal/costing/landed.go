package costing

import (
	"math/big"

	"yardproof/pipeline/report"
)

// Extra is what an order costs besides its goods.
type Extra struct {
	Freight, Fees Input
	Duty          Input // a share of the goods' cost
}

// Landing is what comes on top of an article's price in every kit: duty, and
// freight and fees as they are shared over a usual order, over what can be used.
// It is kept from run to run, as JSON.
type Landing struct {
	Share Input `json:"share"`         // of the price
	Each  Input `json:"each,omitzero"` // for one unit, whatever its price; without a name where freight and fees are shared by value
}

// finer is how many decimals a price has beyond the minor unit once it is landed.
const finer = 2

// Of is the landed price of one unit, rounded half away from zero to two decimals
// more than the minor unit has.
func (l Landing) Of(price Input, digits int) *report.Expr {
	parts := []*report.Expr{times(price.ref(), sum(fixed(1), l.Share.ref()))}
	if l.Each.Name != "" {
		parts = append(parts, l.Each.ref())
	}
	return round(sum(parts...), digits+finer)
}

// LandedShare is the share of an article's price that duty, freight and fees come
// to where these are shared by value over a usual order, with the loss of bolts:
// (1 + duty + extra / order) / (1 - loss) - 1.
func LandedShare(duty, extra, order, loss *big.Rat) *big.Rat {
	total := new(big.Rat).Quo(extra, order)
	total.Add(total, duty).Add(total, big.NewRat(1, 1))
	total.Quo(total, new(big.Rat).Sub(big.NewRat(1, 1), loss))
	return total.Sub(total, big.NewRat(1, 1))
}

// Landed is what an article of an order costs with its share of freight and
// fees, and the duty on it: rounded half away from zero to so many decimals.
// Freight and fees are shared in proportion to weights, of which all add up to
// more than zero: the goods' costs, or their lengths. Landed cost is defined so in
// cost accounting: goods, freight, duty and fees over what can be used.
func Landed(goods, weight, all *report.Expr, extra Extra, digits int) *report.Expr {
	share := over(times(sum(extra.Freight.ref(), extra.Fees.ref()), weight), all)
	return round(sum(goods, times(goods, extra.Duty.ref()), share), digits)
}
