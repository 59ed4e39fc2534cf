package bolts

import (
	"math/rand"
	"testing"

	"yardproof/schema/measure"
)

// TestAgainstEveryOrder holds small random runs, smallest orders and multiples
// included, against trying every order with every way to cut it.
func TestAgainstEveryOrder(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	proved := 0
	for range 400 {
		a, wants := randomRun(r)
		p, err := Solve(a, wants)
		if err != nil {
			t.Fatalf("%+v %+v: %v", a, wants, err)
		}
		if fault := illegal(a, wants, p); fault != "" {
			t.Fatalf("%s: %+v %+v: %+v", fault, a, wants, p)
		}
		best := cheapest(a, wants)
		if p.Cost < best || p.Bound > best || p.Proved && p.Cost != best {
			t.Errorf("%+v %+v: cost %d, bound %d, truly %d", a, wants, p.Cost, p.Bound, best)
		}
		if p.Proved {
			proved++
		}
	}
	if proved < 396 {
		t.Errorf("only %d of 400 are proved", proved)
	}
}

func randomRun(r *rand.Rand) (Article, []Want) {
	a := Article{Offers: []Offer{{measure.Length(8 + r.Intn(5)), int64(5 + r.Intn(6))}}}
	if r.Intn(2) == 0 {
		a.Offers = append(a.Offers, Offer{measure.Length(13 + r.Intn(6)), int64(8 + r.Intn(6))})
	}
	if r.Intn(2) == 0 {
		a.Least = measure.Length(r.Intn(50))
	}
	if r.Intn(3) == 0 {
		a.Multiple = measure.Length(1 + r.Intn(3))
	}
	for range r.Intn(3) {
		a.OnHand = append(a.OnHand, measure.Length(1+r.Intn(9)))
	}
	var wants []Want
	for range 1 + r.Intn(3) {
		wants = append(wants, Want{Length: measure.Length(1 + r.Intn(8)), Count: 1 + r.Intn(3)})
	}
	return a, wants
}

// cheapest tries orders of up to 14 bolts of each length.
func cheapest(a Article, wants []Want) int64 {
	best := int64(-1)
	order := make([]int, len(a.Offers))
	var try func(offer int)
	try = func(offer int) {
		if offer < len(order) {
			for order[offer] = 0; order[offer] <= 14; order[offer]++ {
				try(offer + 1)
			}
			return
		}
		cost := a.cost(order)
		if best >= 0 && cost >= best {
			return
		}
		length := a.invoiced(order)
		if length > 0 && !a.takes(length) {
			return
		}
		bins := append([]measure.Length(nil), a.OnHand...)
		for i, n := range order {
			for range n {
				bins = append(bins, a.Usable(i))
			}
		}
		var kits []measure.Length
		for _, w := range wants {
			for range w.Count {
				kits = append(kits, w.Length)
			}
		}
		if fits(bins, kits) {
			best = cost
		}
	}
	try(0)
	return best
}

// fits tries every place for every kit.
func fits(bins, kits []measure.Length) bool {
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
		ok := fits(bins, kits[1:])
		bins[i] = b
		if ok {
			return true
		}
	}
	return false
}
