package supply

import (
	"math/big"

	"yardproof/pipeline/internal/bolts"
	"yardproof/schema/measure"
)

// tier is a price of an article: it holds from a quantity on, as far as the next.
type tier struct{ from, next, each *big.Rat }

// tiers are the prices of an article, for the smallest quantities first.
func (a *Article) tiers() []tier {
	all := []tier{{from: new(big.Rat), each: a.Amount}}
	for _, b := range a.Breaks {
		all[len(all)-1].next = b.From
		all = append(all, tier{from: b.From, each: b.Amount})
	}
	return all
}

// holds reports whether a quantity is below the next price's.
func (t tier) holds(quantity *big.Rat) bool { return t.next == nil || quantity.Cmp(t.next) < 0 }

// ordered is how much is ordered, and how much of it the kits take.
func (a *Article) ordered(order, need *big.Rat) {
	a.Order, a.Need = order, need
	a.Each = a.For(order)
	if a.Smallest == nil {
		a.Smallest = order
	}
	if a.Bound == nil {
		a.Bound = a.Cost()
	}
	a.Proved = a.Bound.Cmp(a.Cost()) == 0
}

// cheapest finds the cheapest order of what is sold by the length, of the shorter
// of two that cost the same. As all of an order costs the same a yard or metre,
// the cheapest of a price's orders is its shortest, and each price is asked for
// that. An order that a price of another quantity holds counts there.
func (l Line) cheapest(a *Article) error {
	if a.Discontinued {
		a.Plan = a.Enough
		a.ordered(new(big.Rat), new(big.Rat))
		return nil
	}
	least := a.stretch(a.Minimum)
	a.Stock.Multiple = a.stretch(a.Multiple)
	var best *big.Rat
	kept := least
	for i, t := range a.tiers() {
		floor := max(least, a.stretch(t.from))
		if best != nil && best.Cmp(new(big.Rat).Mul(t.each, a.quantity(max(floor, measure.Length(a.Enough.Bound))))) <= 0 {
			continue // it can be no cheaper
		}
		plan, err := l.above(a, floor)
		if err != nil && i == 0 {
			return err
		}
		if err != nil {
			a.bounded(new(big.Rat).Mul(t.each, a.quantity(floor)))
			continue
		}
		order := a.quantity(plan.Length)
		if bound := a.quantity(measure.Length(plan.Bound)); t.holds(bound) {
			a.bounded(bound.Mul(bound, t.each))
		}
		if i == 0 {
			a.Smallest = order
		}
		if cost := new(big.Rat).Mul(order, a.For(order)); best == nil || cost.Cmp(best) < 0 {
			best, kept, a.Plan = cost, floor, plan
		}
	}
	a.Stock.Least = kept
	if a.Bound == nil || a.Bound.Cmp(best) > 0 {
		a.Bound = best
	}
	a.ordered(a.quantity(a.Plan.Length), a.quantity(a.bought()))
	return nil
}

// bounded notes that no order at one of the prices costs less than a sum.
func (a *Article) bounded(cost *big.Rat) {
	if a.Bound == nil || cost.Cmp(a.Bound) < 0 {
		a.Bound = cost
	}
}

// above is the shortest order of a length or more.
func (l Line) above(a *Article, floor measure.Length) (bolts.Plan, error) {
	if floor == 0 && a.Stock.Multiple == 0 {
		return a.Enough, nil
	}
	a.Stock.Least = floor
	return l.solve(a)
}

// bought is the length that kits take of what is ordered.
func (a *Article) bought() measure.Length {
	var total measure.Length
	for _, w := range a.Wants {
		total += w.Length * measure.Length(w.Count)
	}
	for _, c := range a.Plan.Cuts {
		if c.OnHand < 0 {
			continue
		}
		for _, p := range c.Pieces {
			total -= a.Wants[p.Want].Length * measure.Length(p.Count*c.Repeat)
		}
	}
	return total
}

// quantity is a length in the price's unit.
func (a *Article) quantity(l measure.Length) *big.Rat {
	return big.NewRat(int64(l), int64(a.Unit.Length()))
}

// cheapestPacks finds the cheapest order of what is sold by the piece, the
// smaller of two that cost the same.
func (a *Article) cheapestPacks() {
	lacking := max(0, a.Needs-a.PiecesThere)
	if lacking == 0 || a.Discontinued {
		a.ordered(new(big.Rat), new(big.Rat))
		return
	}
	var least, multiple int64
	if a.Minimum != nil {
		least = Up(a.Minimum)
	}
	if a.Multiple != nil {
		multiple = Up(a.Multiple)
	}
	var best, order *big.Rat
	for i, t := range a.tiers() {
		n := bolts.Packs(lacking, 0, max(least, Up(t.from)), multiple)
		quantity := new(big.Rat).SetInt64(n)
		if i == 0 {
			a.Smallest = quantity
		}
		if cost := new(big.Rat).Mul(quantity, a.For(quantity)); best == nil || cost.Cmp(best) < 0 {
			best, order, a.PiecesOrder = cost, quantity, n
		}
	}
	a.ordered(order, new(big.Rat).SetInt64(lacking))
}
