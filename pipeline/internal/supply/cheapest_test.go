package supply

import (
	"fmt"
	"math/big"
	"math/rand"
	"strings"
	"testing"

	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Worked by hand: seven kits of 3 3/4 yd are 26 1/4 yd, 157.50 at 6.00 a yard, and
// 30 yd at 3.00 are 90.00. At 5.25 they are the same, and the shorter order is
// taken.
func TestTheCheapestOrderIsNotTheShortest(t *testing.T) {
	k := twenty("steps", map[string]int{"A": 30})
	k.Planned = 7
	for each, want := range map[string]string{"3.00": "30 at 3", "5.24": "30 at 131/25", "5.25": "105/4 at 6", "5.26": "105/4 at 6"} {
		l := Of([]Asked{k}, prices(t, "A,,yd,6.00", "A,,yd,"+each+",30"), nil)
		a := &l.Articles[0]
		if got := a.Order.RatString() + " at " + a.Each.RatString(); got != want || !a.Proved || a.Smallest.RatString() != "105/4" {
			t.Errorf("30 yd at %s: %s, proved %v, shortest %s", each, got, a.Proved, a.Smallest)
		}
		if a.Need.RatString() != "105/4" || a.Beyond().Cmp(new(big.Rat).Sub(a.Order, big.NewRat(105, 4))) != 0 {
			t.Errorf("%s beyond a need of %s", a.Beyond(), a.Need)
		}
	}
}

// Worked by hand: seven packs at 10.00 are 70.00, nine at 7.00 are 63.00; at 8.00
// they are 72.00.
func TestMorePacksForLess(t *testing.T) {
	k := Asked{Plan: "steps", Kit: Kit{Planned: 7, Takes: []Take{{SKU: "roll", Pieces: 1}}}}
	for each, want := range map[string]int64{"7.00": 9, "8.00": 7} {
		l := Of([]Asked{k}, prices(t, "roll,,pack,10.00", "roll,,pack,"+each+",9"), nil)
		if a := &l.Articles[0]; a.PiecesOrder != want || a.Order.Cmp(big.NewRat(want, 1)) != 0 || a.Beyond().Cmp(big.NewRat(want-7, 1)) != 0 || !a.Proved {
			t.Errorf("%s: %+v", each, a)
		}
	}
}

// Whole kits are allowed for miscuts: 2 % of 50 are one, of 51 a little more.
func TestSpoiledKitsAreOrderedFor(t *testing.T) {
	for _, c := range []struct {
		planned, shelf int
		spoilage       int64
		want           int
	}{{50, 0, 200, 51}, {51, 0, 200, 53}, {50, 49, 200, 2}, {50, 50, 200, 0}, {20, 0, 0, 20}, {1, 0, 1, 2}} {
		k := Asked{Plan: "steps", Kit: Kit{Size: "throw", Planned: c.planned, Spoilage: c.spoilage, Takes: []Take{{SKU: "roll", Pieces: 3}, {SKU: "A", Length: eighth}}}}
		stock := &plan.Stock{Kits: []plan.ShelfKits{{Plan: "steps", Size: "throw", Count: c.shelf}}}
		l := Of([]Asked{k}, prices(t, "roll,,pack,10.00", "A,,yd,8.00"), stock)
		if l.Runs[0].Takes() != c.want || l.Articles[1].PiecesOrder != int64(3*c.want) || l.Articles[0].Order.Cmp(big.NewRat(int64(c.want), 8)) != 0 {
			t.Errorf("%+v: %+v", c, l.Runs[0])
		}
	}
}

// TestAgainstEveryCheaperOrder holds invented articles with prices for more,
// smallest orders and multiples against every order of up to 14 bolts of each
// length, and every way to cut it.
func TestAgainstEveryCheaperOrder(t *testing.T) {
	r := rand.New(rand.NewSource(1873))
	proved, larger := 0, 0
	const runs = 500
	for n := range runs {
		rows, lengths, a := randomArticle(r)
		var kits []Asked
		for i := range 1 + r.Intn(3) {
			k := Asked{Plan: fmt.Sprint("plan", i), Kit: Kit{Size: "throw", Planned: 1 + r.Intn(3)}}
			k.Takes = []Take{{SKU: "A", Length: measure.Length(1+r.Intn(7)) * measure.Yard}}
			kits = append(kits, k)
		}
		stock := &plan.Stock{}
		for range r.Intn(3) {
			stock.Parts = append(stock.Parts, plan.PartBolt{SKU: "A", Length: measure.Length(1+r.Intn(8)) * measure.Yard})
		}
		l := Of(kits, prices(t, rows...), stock)
		got := &l.Articles[0]
		if got.Err != nil {
			t.Fatalf("run %d: %v", n, got.Err)
		}
		best := cheapestOrder(got, a, lengths, stock)
		if got.Cost().Cmp(best) < 0 || got.Bound.Cmp(best) > 0 || got.Proved && got.Cost().Cmp(best) != 0 {
			t.Errorf("run %d %q: %s for %s, bound %s, truly %s", n, rows, got.Order.RatString(), got.Cost().RatString(), got.Bound.RatString(), best.RatString())
		}
		if got.Proved {
			proved++
		}
		if got.Order.Cmp(got.Smallest) > 0 {
			larger++
		}
	}
	if proved < runs*99/100 || larger < 20 {
		t.Errorf("%d of %d are proved, %d larger than the smallest", proved, runs, larger)
	}
}

// randomArticle is an article as rows of a price list, its bolts in yards and its
// price.
func randomArticle(r *rand.Rand) (rows []string, lengths []measure.Length, a plan.Price) {
	lengths = []measure.Length{measure.Length(8 + r.Intn(4))}
	if r.Intn(2) == 0 {
		lengths = append(lengths, lengths[0]+measure.Length(1+r.Intn(6)))
	}
	var bolts []string
	for _, l := range lengths {
		bolts = append(bolts, fmt.Sprint(int64(l)))
	}
	a.Amount = big.NewRat(int64(4+r.Intn(6)), 1)
	row := fmt.Sprintf("A,,yd,%s,,%s,", a.Amount.RatString(), strings.Join(bolts, ";"))
	if n := r.Intn(40); r.Intn(3) == 0 {
		a.Minimum = big.NewRat(int64(n), 1)
		row += "," + fmt.Sprint(n)
	} else {
		row += ","
	}
	if n := 1 + r.Intn(3); r.Intn(4) == 0 {
		a.Multiple = big.NewRat(int64(n), 1)
		row += "," + fmt.Sprint(n)
	}
	rows = []string{row}
	from := 0
	for range r.Intn(3) {
		from += 5 + r.Intn(25)
		amount := big.NewRat(int64(2+r.Intn(7)), 1) // now and then it is dearer
		a.Breaks = append(a.Breaks, plan.Break{From: big.NewRat(int64(from), 1), Amount: amount})
		rows = append(rows, fmt.Sprintf("A,,yd,%s,%d,,", amount.RatString(), from))
	}
	return rows, lengths, a
}

// cheapestOrder tries them all; lengths are in yards.
func cheapestOrder(got *Article, a plan.Price, lengths []measure.Length, stock *plan.Stock) *big.Rat {
	var kits, bins []measure.Length
	for _, w := range got.Wants {
		for range w.Count {
			kits = append(kits, w.Length/measure.Yard)
		}
	}
	for _, p := range stock.Parts {
		bins = append(bins, p.Length/measure.Yard)
	}
	var best *big.Rat
	var try func(offer int, length int64, bins []measure.Length)
	try = func(offer int, length int64, bins []measure.Length) {
		if offer == len(lengths) {
			order := big.NewRat(length, 1)
			cost := new(big.Rat).Mul(order, a.For(order))
			allowed := length == 0 || (a.Minimum == nil || order.Cmp(a.Minimum) >= 0) && (a.Multiple == nil || new(big.Rat).Quo(order, a.Multiple).IsInt())
			if allowed && (best == nil || cost.Cmp(best) < 0) && fit(bins, kits) {
				best = cost
			}
			return
		}
		for n := range 15 {
			more := append([]measure.Length(nil), bins...)
			for range n {
				more = append(more, lengths[offer])
			}
			try(offer+1, length+int64(n)*int64(lengths[offer]), more)
		}
	}
	try(0, 0, bins)
	return best
}

// fit tries every place for every kit.
func fit(bins, kits []measure.Length) bool {
	if len(kits) == 0 {
		return true
	}
	tried := map[measure.Length]bool{}
	for i, b := range bins {
		if b < kits[0] || tried[b] {
			continue
		}
		tried[b] = true
		bins[i] -= kits[0]
		ok := fit(bins, kits[1:])
		bins[i] = b
		if ok {
			return true
		}
	}
	return false
}
