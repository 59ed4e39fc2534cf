package costing

import "yardproof/pipeline/report"

// Extra is what an order costs besides its goods.
type Extra struct {
	Freight, Fees Input
	Duty          Input // a share of the goods' cost
}

// Landed is what each article of an order costs with its share of freight and
// fees, and the duty on it: rounded half away from zero to so many decimals.
// Freight and fees are shared in proportion to weights, of which not all may be
// zero: the goods' costs, or their lengths. Landed cost is defined so in cost
// accounting: goods, freight, duty and fees over what can be used.
func Landed(goods, weights []*report.Expr, extra Extra, digits int) []*report.Expr {
	shared, all := sum(extra.Freight.ref(), extra.Fees.ref()), sum(weights...)
	var landed []*report.Expr
	for i := range goods {
		duty := times(goods[i], extra.Duty.ref())
		share := over(times(shared, weights[i]), all)
		landed = append(landed, round(sum(goods[i], duty, share), digits))
	}
	return landed
}
