package costing_test

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/report"
)

func extra(t testing.TB, freight, fees, duty string) costing.Extra {
	in := func(name, value string) costing.Input { return costing.Input{Name: name, Value: rat(t, value)} }
	return costing.Extra{Freight: in("freight", freight), Fees: in("fees", fees), Duty: in("duty", duty)}
}

func refs(t testing.TB, values ...string) []*report.Expr {
	var all []*report.Expr
	for _, v := range values {
		all = append(all, costing.Ref("cell", rat(t, v)))
	}
	return all
}

func landed(goods, weights []*report.Expr, e costing.Extra, digits int) []*report.Expr {
	var all []*report.Expr
	for i := range goods {
		all = append(all, costing.Landed(goods[i], weights[i], costing.Sum(weights...), e, digits))
	}
	return all
}

// Worked by hand: 300 and 100 of goods, 45 + 15 to share, 8 % duty. By value
// three quarters of 60 are 45: 300 + 24 + 45 = 369, and 100 + 8 + 15 = 123. By
// length, 30 yd and 30 yd, 30 each: 354 and 138.
func TestLanded(t *testing.T) {
	e := extra(t, "45", "15", "8/100")
	goods := refs(t, "300", "100")
	for _, tt := range []struct {
		weights []*report.Expr
		want    [2]string
	}{{goods, [2]string{"369", "123"}}, {refs(t, "30", "30"), [2]string{"354", "138"}}} {
		for i, got := range landed(goods, tt.weights, e, 2) {
			want(t, costing.Result{Name: "landed", Expr: got}, tt.want[i])
		}
	}
}

// Nothing of freight, fees and duty is lost or added, but for the rounding of
// each line by at most half a cent.
func TestLandedAddsUp(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 4))
	for range 200 {
		n := 1 + random.IntN(8)
		var goods, weights []*report.Expr
		total := new(big.Rat)
		for range n {
			cost := big.NewRat(random.Int64N(100_000), 100)
			total.Add(total, cost)
			goods = append(goods, costing.Ref("goods", cost))
			weights = append(weights, costing.Ref("weight", big.NewRat(1+random.Int64N(500), 8)))
		}
		e := extra(t, "61.37", "12.50", "83/1000")
		total.Mul(total, big.NewRat(1083, 1000))
		total.Add(total, rat(t, "73.87"))
		for _, l := range landed(goods, weights, e, 2) {
			total.Sub(total, l.Value)
		}
		if total.Abs(total).Cmp(big.NewRat(int64(n), 200)) > 0 {
			t.Fatalf("%d lines are out by %s", n, total.FloatString(4))
		}
	}
}

// Worked by hand: 6.5 % of duty and 50.50 over an order of 450.00 are 17.7222... % of
// the price, and 2 % of each bolt are lost: 7.00 a metre become 2119/252, 8.4087 to
// four decimals. By length there is an amount besides: 0.505 a metre more.
func TestLandedInAKit(t *testing.T) {
	share := costing.LandedShare(rat(t, "13/200"), rat(t, "50.5"), rat(t, "450"), rat(t, "1/50"))
	if share.Cmp(big.NewRat(355, 1764)) != 0 {
		t.Errorf("a share of %s", share)
	}
	price := costing.Input{Name: "price", Value: rat(t, "7")}
	l := costing.Landing{Share: costing.Input{Name: "share", Value: share}}
	want(t, costing.Result{Name: "by value", Expr: l.Of(price, 2)}, "8.4087")
	l.Each = costing.Input{Name: "each", Value: rat(t, "0.505")}
	want(t, costing.Result{Name: "by length", Expr: l.Of(price, 2)}, "8.9137")
}
