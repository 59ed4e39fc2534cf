package cutting

import (
	"math/rand"
	"testing"

	"yardproof/schema/measure"
)

// TestAStockHoldsItsOwnLength: kits of an inch and of a centimetre plan share no
// grid but the tick or two. Each is bought as it is, so that each has a stock
// that is just as long (worked by hand).
func TestAStockHoldsItsOwnLength(t *testing.T) {
	yards, metres := 61*measure.Yard/8, 70*measure.Centimetre
	p := LengthProblem{
		Stocks: []Stock{{Length: yards, Cost: int64(yards), Count: Unlimited}, {Length: metres, Cost: int64(metres), Count: Unlimited}},
		Wanted: []Wanted{{Length: yards, Count: 1}, {Length: metres, Count: 1}},
	}
	if r := lengths(t, p); r.Cost != int64(yards+metres) || r.Status != Proved {
		t.Errorf("%+v", r)
	}
}

// mixedRun is an invented line of inch and centimetre plans that share an
// article: kits in eighths and thirds of a yard and in tens of centimetres, bolts in
// yards or metres, one of them just as long as a kit or as two, part-bolts of any
// measured length.
func mixedRun(r *rand.Rand) LengthProblem {
	var p LengthProblem
	grids := []measure.Length{measure.Yard / 8, measure.Yard / 3, 10 * measure.Centimetre, 5 * measure.Centimetre}
	longest := measure.Length(0)
	for range 2 + r.Intn(3) {
		grid := grids[r.Intn(len(grids))]
		w := Wanted{Length: grid * measure.Length(2+r.Intn(int(2*measure.Yard/grid))), Count: 1 + r.Intn(3)}
		p.Wanted, longest = append(p.Wanted, w), max(longest, w.Length)
	}
	exact := p.Wanted[r.Intn(len(p.Wanted))].Length * measure.Length(1+r.Intn(2))
	for _, length := range []measure.Length{exact, measure.Length(3+r.Intn(4)) * measure.Yard, measure.Length(3+r.Intn(4)) * 100 * measure.Centimetre} {
		if s := (Stock{Length: length, Cost: int64(length / measure.Centimetre), Count: Unlimited}); r.Intn(3) > 0 || length < longest {
			p.Stocks, longest = append(p.Stocks, s), max(longest, s.Length)
		}
	}
	p.Stocks = append(p.Stocks, Stock{Length: max(longest, p.Wanted[0].Length), Cost: int64(longest / measure.Centimetre), Count: Unlimited})
	for range r.Intn(3) {
		p.Stocks = append(p.Stocks, Stock{Length: measure.Length(1 + r.Intn(int(3*measure.Yard))), Count: 1})
	}
	return p
}

func TestMixedUnitsAgreeWithTryingEverything(t *testing.T) {
	r := rand.New(rand.NewSource(17))
	for range 300 {
		p := mixedRun(r)
		if got, want := lengths(t, p), cheapestPlan(p); got.Cost != want || got.Status != Proved {
			t.Errorf("%+v:\ncost %d, %v, the cheapest %d", p, got.Cost, got.Status, want)
		}
	}
}

// TestTooManySumsForTheTable has tables of few columns. Plans must be legal and
// bounds and certificates hold all the same, and most be proved.
func TestTooManySumsForTheTable(t *testing.T) {
	r := rand.New(rand.NewSource(18))
	proved := 0
	for _, columns := range []int{2, 3, 5, 9} {
		for range 100 {
			p := mixedRun(r)
			got, err := p.solve(Limits{}, columns)
			if err != nil {
				t.Fatalf("%+v: %v", p, err)
			}
			if err := verifyLengths(p, got.Certificate); err != nil {
				t.Errorf("%+v: %v", p, err)
			}
			want := cheapestPlan(p)
			if got.Cost < want || got.Bound > want || got.Status == Proved && got.Cost != want {
				t.Errorf("%d columns, %+v: cost %d, bound %d, the cheapest %d", columns, p, got.Cost, got.Bound, want)
			}
			if got.Status == Proved {
				proved++
			}
		}
	}
	if proved < 380 {
		t.Errorf("%d of 400 are proved", proved)
	}
}

// Ten kit lengths without any grid have more sums than a table has columns.
func TestLengthsWithoutAGrid(t *testing.T) {
	r := rand.New(rand.NewSource(19))
	p := LengthProblem{Stocks: []Stock{{Length: 15*measure.Yard - 1, Cost: 15, Count: Unlimited}, {Length: 8 * measure.Yard, Cost: 9, Count: Unlimited}}}
	for range 10 {
		p.Wanted = append(p.Wanted, Wanted{Length: measure.Yard/3 + measure.Length(r.Intn(int(2*measure.Yard))), Count: 5 + r.Intn(20)})
	}
	got, err := SolveLengths(p, Limits{})
	if err != nil || got.Cost-got.Bound > 1 {
		t.Errorf("cost %d, bound %d, %v", got.Cost, got.Bound, err)
	}
}
