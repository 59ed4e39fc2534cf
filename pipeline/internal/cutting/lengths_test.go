package cutting

import (
	"errors"
	"fmt"
	"math/rand"
	"slices"
	"testing"

	"yardproof/schema/measure"
)

// eighthYard is the grid on which fabric is sold by the yard.
const eighthYard = 9 * inch / 2

// bolts15 is as many 15-yd bolts as are needed and one kit length, in eighths
// of a yard.
func bolts15(kit measure.Length, kits int) LengthProblem {
	return LengthProblem{
		Stocks: []Stock{{Name: "bolt", Length: 120 * eighthYard, Cost: 1, Count: Unlimited}},
		Wanted: []Wanted{{Name: "kit", Length: kit * eighthYard, Count: kits}},
	}
}

func TestKitsFromABolt(t *testing.T) {
	// 15 yd at 1 3/8 yd a kit: ten kits, 13 3/4 yd, and 1 1/4 yd over; at 1 1/4 yd
	// twelve and nothing over (worked by hand).
	r := lengths(t, bolts15(11, 10))
	if r.Cost != 1 || len(r.Stocks) != 1 || r.Stocks[0].Left != 10*eighthYard {
		t.Errorf("ten kits: %+v", r)
	}
	if r = lengths(t, bolts15(11, 11)); r.Cost != 2 {
		t.Errorf("the eleventh needs a second bolt: %+v", r)
	}
	if r = lengths(t, bolts15(10, 12)); r.Cost != 1 || r.Stocks[0].Left != 0 {
		t.Errorf("twelve kits: %+v", r)
	}
	if r = lengths(t, bolts15(10, 13)); r.Cost != 2 {
		t.Errorf("the thirteenth needs a second bolt: %+v", r)
	}
}

func TestPartBoltsOnHandComeFirst(t *testing.T) {
	// 3 yd on hand hold two kits of 1 3/8 yd; 2 yd hold one; ten are left for a
	// bolt (worked by hand).
	p := bolts15(11, 13)
	p.Stocks = append(p.Stocks, Stock{Name: "on hand", Length: 24 * eighthYard, Count: 1}, Stock{Name: "end", Length: 16 * eighthYard, Count: 1})
	r := lengths(t, p)
	if r.Cost != 1 || r.Status != Proved || r.Stocks[len(r.Stocks)-1].Stock != 0 {
		t.Errorf("got %+v", r)
	}
	p.Wanted[0].Count = 14
	if r = lengths(t, p); r.Cost != 2 {
		t.Errorf("one kit more: %+v", r)
	}
	p.Wanted[0].Count = 4
	if r = lengths(t, p); r.Cost != 1 || len(r.Stocks) != 3 || r.Stocks[2].Cuts[0].Count != 1 {
		t.Errorf("the fourth kit alone comes from a bolt: %+v", r)
	}
	p.Wanted[0].Count = 2
	if r = lengths(t, p); r.Cost != 0 {
		t.Errorf("two kits need no bolt: %+v", r)
	}
}

func TestTheCheaperLengthIsBought(t *testing.T) {
	// Eight kits of 2 yd: two 8-yd bolts at 50.00 or one of 15 yd at 90.00 and one
	// of 8 yd, since 15 yd hold seven (worked by hand).
	p := LengthProblem{
		Stocks: []Stock{{Name: "long", Length: 120 * eighthYard, Cost: 9000, Count: Unlimited}, {Name: "short", Length: 64 * eighthYard, Cost: 5000, Count: Unlimited}},
		Wanted: []Wanted{{Name: "kit", Length: 16 * eighthYard, Count: 8}},
	}
	if r := lengths(t, p); r.Cost != 10000 || r.Status != Proved {
		t.Errorf("eight kits: %+v", r)
	}
	p.Wanted[0].Count = 7
	if r := lengths(t, p); r.Cost != 9000 {
		t.Errorf("seven kits: %+v", r)
	}
	p.Stocks[1].Count = 1
	p.Wanted[0].Count = 8
	if r := lengths(t, p); r.Cost != 14000 {
		t.Errorf("only one short bolt to be had: %+v", r)
	}
}

func TestLengthsThatCannotBeHad(t *testing.T) {
	p := bolts15(121, 1)
	var wide *TooWide
	if _, err := SolveLengths(p, Limits{}); !errors.As(err, &wide) || wide.Needs != 121*eighthYard || wide.Width != 120*eighthYard {
		t.Errorf("an eighth of a yard too long: %v", err)
	}
	p.Wanted[0].Length = 120 * eighthYard
	if r := lengths(t, p); r.Cost != 1 {
		t.Errorf("exactly a bolt: %+v", r)
	}
	p.Stocks[0].Count = 5
	if _, err := SolveLengths(p, Limits{}); !errors.As(err, &wide) {
		t.Errorf("no stock without limit: %v", err)
	}
	var unusable *Unusable
	for _, s := range []Stock{{Length: 0, Count: 1}, {Length: 8, Cost: -1, Count: 1}, {Length: 8, Count: -2}, {Length: 8, Cost: maxCost + 1}} {
		p := bolts15(1, 1)
		p.Stocks = append(p.Stocks, s)
		if _, err := SolveLengths(p, Limits{}); !errors.As(err, &unusable) {
			t.Errorf("%+v: %v", s, err)
		}
	}
	for _, w := range []Wanted{{Length: 0, Count: 1}, {Length: 8, Count: -1}, {Length: 8, Count: maxCount + 1}} {
		p := bolts15(1, 1)
		p.Wanted = append(p.Wanted, w)
		if _, err := SolveLengths(p, Limits{}); !errors.As(err, &unusable) {
			t.Errorf("%+v: %v", w, err)
		}
	}
}

// lengths solves a problem and checks what comes back in every way there is.
func lengths(t *testing.T, p LengthProblem) LengthResult {
	t.Helper()
	r, err := SolveLengths(p, Limits{})
	if err != nil {
		t.Fatalf("%+v: %v", p, err)
	}
	if err := illegalLengths(p, r); err != nil {
		t.Errorf("%+v: %v", p, err)
	}
	if err := verifyLengths(p, r.Certificate); err != nil {
		t.Errorf("%+v: %v", p, err)
	}
	return r
}

// cheapestPlan tries everything: from what is left over, every filling of every
// stock that holds the first length still wanted.
func cheapestPlan(p LengthProblem) int64 {
	memo := map[string]int64{}
	var solve func(stock, left []int) int64
	solve = func(stock, left []int) int64 {
		first := slices.IndexFunc(left, func(n int) bool { return n > 0 })
		if first < 0 {
			return 0
		}
		key := fmt.Sprint(stock, left)
		if n, ok := memo[key]; ok {
			return n
		}
		best := int64(1) << 60
		for k, s := range p.Stocks {
			if stock[k] == 0 || s.Length < p.Wanted[first].Length {
				continue
			}
			less := slices.Clone(stock)
			if less[k] > 0 {
				less[k]--
			}
			var fill func(i int, room measure.Length, rest []int)
			fill = func(i int, room measure.Length, rest []int) {
				if i == len(rest) {
					best = min(best, s.Cost+solve(less, slices.Clone(rest)))
					return
				}
				for n := 0; n <= left[i] && measure.Length(n)*p.Wanted[i].Length <= room; n++ {
					rest[i] = left[i] - n
					if i > first || n > 0 {
						fill(i+1, room-measure.Length(n)*p.Wanted[i].Length, rest)
					}
				}
				rest[i] = left[i]
			}
			fill(first, s.Length, slices.Clone(left))
		}
		memo[key] = best
		return best
	}
	var stock, left []int
	for _, s := range p.Stocks {
		stock = append(stock, s.Count)
	}
	for _, w := range p.Wanted {
		left = append(left, w.Count)
	}
	return solve(stock, left)
}

func TestLengthsAgreeWithTryingEverything(t *testing.T) {
	r := rand.New(rand.NewSource(11))
	for n := 0; n < 800; n++ {
		p := LengthProblem{}
		for range 1 + r.Intn(2) {
			p.Stocks = append(p.Stocks, Stock{Length: measure.Length(9 + r.Intn(12)), Cost: int64(1 + r.Intn(9)), Count: Unlimited})
		}
		for range r.Intn(4) {
			p.Stocks = append(p.Stocks, Stock{Length: measure.Length(1 + r.Intn(20)), Cost: int64(max(0, r.Intn(6)-3)), Count: r.Intn(3)})
		}
		for range 1 + r.Intn(3) {
			p.Wanted = append(p.Wanted, Wanted{Length: measure.Length(2 + r.Intn(8)), Count: r.Intn(6)})
		}
		if got, want := lengths(t, p), cheapestPlan(p); got.Cost != want || got.Status != Proved {
			t.Fatalf("%+v:\ncost %d, %v, the cheapest %d", p, got.Cost, got.Status, want)
		}
	}
}

// kitRuns are invented runs of kits: so many lengths on a grid of an eighth of
// a yard, bolts of two lengths, part-bolts on hand.
func kitRuns(r *rand.Rand, sizes int) LengthProblem {
	p := LengthProblem{Stocks: []Stock{
		{Name: "15 yd", Length: 120 * eighthYard, Cost: 9450, Count: Unlimited},
		{Name: "8 yd", Length: 64 * eighthYard, Cost: 5600, Count: Unlimited}}}
	for range r.Intn(6) {
		p.Stocks = append(p.Stocks, Stock{Name: "end", Length: measure.Length(4+r.Intn(60)) * eighthYard, Count: 1})
	}
	for i := range sizes {
		p.Wanted = append(p.Wanted, Wanted{Name: fmt.Sprint("kit ", i), Length: measure.Length(2+r.Intn(40)) * eighthYard, Count: 10 + r.Intn(300)})
	}
	return p
}

func TestRunsOfKitsAreProved(t *testing.T) {
	r := rand.New(rand.NewSource(12))
	for _, n := range []int{1, 2, 3, 4, 5, 6, 7, 8, 9, 20, 30} {
		p := kitRuns(r, n)
		got, err := SolveLengths(p, Limits{})
		if err != nil {
			t.Fatal(err)
		}
		if err := illegalLengths(p, got); err != nil || got.Status != Proved {
			t.Errorf("%d sizes: %v, cost %d, bound %d", n, err, got.Cost, got.Bound)
		}
		if n < 10 { // beyond, the naive knapsack takes too long
			if err := verifyLengths(p, got.Certificate); err != nil {
				t.Errorf("%d sizes: %v", n, err)
			}
		}
		slices.Reverse(p.Wanted)
		slices.Reverse(p.Stocks)
		if again, err := SolveLengths(p, Limits{}); err != nil || again.Cost != got.Cost || again.Steps != got.Steps {
			t.Errorf("%d sizes in another order: %+v, %+v, %v", n, again.Steps, got.Steps, err)
		}
	}
}

// A certificate that claims a unit too much, or forgets a stock, must be refused.
func TestLengthVerifierRefusesFalseCertificates(t *testing.T) {
	p := kitRuns(rand.New(rand.NewSource(13)), 5)
	c := lengths(t, p).Certificate
	more, fewer := *c, *c
	more.Claim += c.Unit
	if verifyLengths(p, &more) == nil {
		t.Error("a claim beyond the optimum is accepted")
	}
	if fewer.Stocks = c.Stocks[:len(c.Stocks)-1]; verifyLengths(p, &fewer) == nil {
		t.Error("a stock is forgotten and the certificate accepted")
	}
}

func TestLengthsOnAFineGrid(t *testing.T) {
	p := LengthProblem{
		Stocks: []Stock{{Length: 109_728_001, Cost: 70, Count: Unlimited}, {Length: 30_000_007, Count: 2}},
		Wanted: []Wanted{{Length: 10_058_401, Count: 31}, {Length: 7_000_003, Count: 17}},
	}
	// 430 810 482 wanted, less 60 000 014 on hand: 3.38 bolts by length alone.
	if r := lengths(t, p); r.Cost != 280 || r.Status != Proved {
		t.Errorf("cost %d, bound %d", r.Cost, r.Bound)
	}
}

func FuzzSolveLengths(f *testing.F) {
	f.Add([]byte{120, 9, 64, 5, 3, 24, 0, 11, 13, 40, 7})
	f.Add([]byte{20, 1, 20, 1, 0, 0, 0, 7, 200})
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) < 8 || len(data) > 40 {
			return
		}
		p := LengthProblem{Stocks: []Stock{
			{Length: measure.Length(data[0]), Cost: int64(data[1]), Count: Unlimited},
			{Length: measure.Length(data[2]), Cost: int64(data[3]), Count: int(data[4]) - 1},
			{Length: measure.Length(data[5]), Count: int(data[6] % 4)}}}
		for d := data[7:]; len(d) >= 2; d = d[2:] {
			p.Wanted = append(p.Wanted, Wanted{Length: measure.Length(d[0]), Count: int(d[1])})
		}
		r, err := SolveLengths(p, Limits{Visits: 300_000, Rounds: 10})
		if err != nil {
			return
		}
		if err := illegalLengths(p, r); err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
	})
}
