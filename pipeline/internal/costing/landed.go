package costing

import "yardproof/pipeline/report"

// Extra is what an order costs besides its goods.
type Extra struct {
	Freight, Fees Input
	Duty          Input // a share of the goods' cost
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
