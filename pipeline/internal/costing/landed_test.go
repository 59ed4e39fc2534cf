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
