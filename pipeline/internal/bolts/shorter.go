package bolts

import (
	"cmp"
	"math/big"
	"slices"

	"yardproof/schema/measure"
)

// Saving is what a step less in a wanted length would save.
type Saving struct {
	Want int // index into the wants
	Cost int64
	Plan Plan // with the shorter length
}

// mostShorter is how many lengths are tried shorter. A run of hundreds of kits
// from one article has no use for a longer list.
const mostShorter = 40

// Shorter tries each wanted length its step shorter, alone. It tells
// of those that save as much as the cheapest bolt costs, or more: not of bolts
// exchanged for shorter ones. A saving is told only where it is proved: the
// shorter plan costs so much less than any plan for the length as it is. Of
// what is not ordered in bolts there is nothing to tell. The error is that of
// [Solve] for wants of which there is a plan: one of the program.
func Shorter(a Article, wants []Want, plan Plan) ([]Saving, error) {
	if a.Gone || len(a.Offers) == 0 {
		return nil, nil
	}
	cheapest := slices.MinFunc(a.Offers, func(x, y Offer) int { return cmp.Compare(x.Cost, y.Cost) })
	enough := plan.Bound - cheapest.Cost
	var savings []Saving
	tried := 0
	for i, w := range wants {
		if w.Count == 0 || w.Step == 0 || w.Step >= w.Length || tried == mostShorter {
			continue
		}
		less := slices.Clone(wants)
		less[i].Length -= w.Step
		if a.least(less) > enough {
			continue
		}
		if a.Work.spent() {
			return savings, nil
		}
		tried++
		limits := a.limits()
		limits.Settle = measure.Length(max(enough, 1))
		p, err := a.solve(less, limits)
		if err != nil {
			return nil, err
		}
		if p.Cost <= enough {
			savings = append(savings, Saving{i, plan.Cost - p.Cost, p})
		}
	}
	return savings, nil
}

// least is a cost below which no plan can be, as what is wanted has to come out
// of what is on hand and of bolts at the cheapest cost by length. It is a whole
// number of what all offers' costs are multiples of.
func (a Article) least(wants []Want) int64 {
	need := new(big.Int)
	for _, w := range wants {
		need.Add(need, new(big.Int).Mul(big.NewInt(int64(w.Length)), big.NewInt(int64(w.Count))))
	}
	for _, l := range a.OnHand {
		need.Sub(need, big.NewInt(int64(l)))
	}
	if need.Sign() <= 0 {
		return 0
	}
	var least *big.Int
	common := new(big.Int)
	for i, o := range a.Offers {
		cost := big.NewInt(o.Cost)
		common.GCD(nil, nil, common, cost)
		usable := big.NewInt(int64(a.Usable(i)))
		up := new(big.Int).Mul(need, cost)
		up.Add(up, usable).Sub(up, big.NewInt(1)).Quo(up, usable)
		if least == nil || up.Cmp(least) < 0 {
			least = up
		}
	}
	if common.Sign() > 0 {
		least.Add(least, common).Sub(least, big.NewInt(1)).Quo(least, common).Mul(least, common)
	}
	if !least.IsInt64() {
		return 0
	}
	return least.Int64()
}
