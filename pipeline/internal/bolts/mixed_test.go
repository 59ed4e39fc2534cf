package bolts

import (
	"math/rand"
	"testing"

	"yardproof/schema/measure"
)

// mixedLine is an invented line whose plans share an article: inch plans whose
// kits are cut to eighths or thirds of a yard, centimetre plans cut to 10 or 25 cm,
// sold by the length or in bolts by the yard or metre, one of which may be just as
// long as a kit, with part-bolts as they were measured.
func mixedLine(r *rand.Rand) (Article, []Want) {
	var a Article
	var wants []Want
	longest := measure.Length(0)
	grids := []measure.Length{yard / 8, yard / 3, 10 * measure.Centimetre, 25 * measure.Centimetre}
	r.Shuffle(len(grids), func(i, j int) { grids[i], grids[j] = grids[j], grids[i] })
	for _, grid := range grids[:2+r.Intn(2)] {
		w := Want{Length: grid * measure.Length(2+r.Intn(int(2*yard/grid))), Count: 1 + r.Intn(3), Step: grid}
		wants, longest = append(wants, w), max(longest, w.Length)
	}
	for range r.Intn(3) {
		a.OnHand = append(a.OnHand, measure.Length(1+r.Intn(int(3*yard))))
	}
	if r.Intn(3) == 0 {
		a.OnHand = append(a.OnHand, wants[0].Length)
	}
	if r.Intn(3) == 0 {
		return a, wants
	}
	for _, length := range []measure.Length{longest, 4 * yard, 5 * 100 * measure.Centimetre} {
		if r.Intn(2) == 0 || length == longest {
			a.Offers = append(a.Offers, Offer{length, int64(length)})
		}
	}
	a.Loss = 0
	if r.Intn(3) == 0 {
		a.Least = measure.Length(r.Intn(20)) * yard
	}
	return a, wants
}

// TestMixedUnits holds lines of mixed units against trying every order, and every
// way to cut what is on hand.
func TestMixedUnits(t *testing.T) {
	r := rand.New(rand.NewSource(54))
	for range 300 {
		a, wants := mixedLine(r)
		p := solve(t, a, wants...)
		best := leastByLength(a, wants)
		if len(a.Offers) > 0 {
			best = cheapest(a, wants)
		}
		if p.Cost != best || !p.Proved {
			t.Errorf("%+v %+v: cost %d, bound %d, truly %d", a, wants, p.Cost, p.Bound, best)
		}
	}
}

// leastByLength tries every choice of kits for the part-bolts; the others are
// bought.
func leastByLength(a Article, wants []Want) int64 {
	var kits []measure.Length
	for _, w := range wants {
		for range w.Count {
			kits = append(kits, w.Length)
		}
	}
	best := measure.Length(-1)
	for chosen := range 1 << len(kits) {
		var here []measure.Length
		var rest measure.Length
		for i, l := range kits {
			if chosen>>i&1 > 0 {
				here = append(here, l)
			} else {
				rest += l
			}
		}
		if (best < 0 || rest < best) && fits(append([]measure.Length(nil), a.OnHand...), here) {
			best = rest
		}
	}
	if best > 0 {
		best = a.up(best)
	}
	return int64(best)
}

// Worked by hand: an 8-yd kit of an inch plan and 70 cm of a centimetre plan, of
// what is sold by the length, are an order of 8 yd and 70 cm; a bolt as long as the
// kit holds it.
func TestAnInchAndACentimetrePlan(t *testing.T) {
	wants := []Want{eighths(64, 1), {Length: 70 * measure.Centimetre, Count: 1, Step: 10 * measure.Centimetre}}
	if p := solve(t, Article{}, wants...); p.Length != 8*yard+70*measure.Centimetre || len(p.Rest) != 2 || !p.Proved {
		t.Errorf("%+v", p)
	}
	wants[0] = eighths(61, 1) // 7.625 yd
	if p := solve(t, Article{Offers: []Offer{{61 * yard / 8, 61}}}, wants...); p.Order[0] != 2 || p.Cuts[0].Left != 0 || !p.Proved {
		t.Errorf("%+v", p)
	}
}
