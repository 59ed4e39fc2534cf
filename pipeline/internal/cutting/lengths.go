package cutting

import (
	"fmt"

	"yardproof/schema/measure"
)

// Wanted is a length to be cut some number of times from stock: a kit's
// yardage from bolts, short strips from the strips of a roll.
type Wanted struct {
	Name   string
	Length measure.Length
	Count  int
}

// Stock is a length to cut from: whole bolts of one length, the strips of a
// roll, a part-bolt on hand. Cost is that of one, in whatever whole unit the
// caller adds up (minor units of money, ticks to buy); it is zero for what is
// there already. Count says how many there are, or [Unlimited].
type Stock struct {
	Name   string
	Length measure.Length
	Cost   int64
	Count  int
}

// Unlimited is the Count of a [Stock] of which any number can be had.
const Unlimited = -1

// LengthProblem asks for lengths from stock (one-dimensional cutting stock).
// No wanted length is joined from two.
type LengthProblem struct {
	Stocks []Stock
	Wanted []Wanted
}

// LengthCut is so many of one wanted length.
type LengthCut struct {
	Wanted int // index into the problem's Wanted
	Count  int
}

// CutStock is a run of lengths of one stock that are cut alike. Left is what
// remains of each.
type CutStock struct {
	Stock  int // index into the problem's Stocks
	Repeat int
	Cuts   []LengthCut
	Left   measure.Length
}

// LengthResult is a cutting plan with what is known about cheaper ones. Stock
// that costs nothing is cut first, in the order in which the plan lists it; what
// costs nothing and is not needed is not cut into. A Bound above the
// certificate's claim is the least cost of the sum of all lengths.
type LengthResult struct {
	Stocks      []CutStock
	Cost        int64
	Bound       int64 // no plan costs less
	Status      Status
	Certificate *LengthCertificate
	Steps       Steps
	Spent       Spent
}

// maxCost keeps every sum of costs inside an int64.
const maxCost = int64(1) << 40

func (p LengthProblem) check() error {
	total := 0
	unusable := func(piece int, name, what string) error {
		return &Unusable{Piece: piece, Strip: -1, Name: name, What: what}
	}
	longest := measure.Length(0)
	for _, s := range p.Stocks {
		if !side(s.Length) || s.Cost < 0 || s.Cost > maxCost || s.Count < Unlimited || s.Count > maxCount {
			return unusable(-1, s.Name, fmt.Sprintf("a stock's length must be positive, its cost from 0 to %d and its count not negative", maxCost))
		}
		if s.Count == Unlimited {
			longest = max(longest, s.Length)
		}
	}
	for i, w := range p.Wanted {
		if !side(w.Length) || w.Count < 0 || w.Count > maxCount {
			return unusable(i, w.Name, "the length must be positive and the count not negative")
		}
		if w.Count > 0 && w.Length > longest {
			return &TooWide{Piece: i, Strip: -1, Name: w.Name, Needs: w.Length, Width: longest}
		}
		total += w.Count
	}
	if total > maxCount {
		return unusable(-1, "problem", "more than a million lengths")
	}
	return nil
}

// SolveLengths finds the plan of least cost. It is strip cutting in which the
// classes of strips are the stocks and all pieces are one tick high, so the
// same search serves and the same may be called proved.
//
// Some stock without limit must hold each wanted length: otherwise the error is
// a *[TooWide], whose Width is the longest such stock. A number without meaning
// is an *[Unusable]. A plan is counted again before it is handed on; a *[Fault]
// would say that the program is wrong.
func SolveLengths(p LengthProblem, limits Limits) (LengthResult, error) {
	return p.solve(limits, mostLengthCells)
}

// solve uses no more than so many columns in a table.
func (p LengthProblem) solve(limits Limits, columns int) (LengthResult, error) {
	if err := p.check(); err != nil {
		return LengthResult{}, err
	}
	in := newLengthInstance(p, columns)
	limits = limits.withDefaults(len(in.kinds))
	if limits.Settle > 0 {
		limits.Settle /= measure.Length(in.stock.unit)
	}
	var r LengthResult
	best, bound, scaling := solveStrips(in, limits, known{}, &r.Steps, &r.Spent)
	r.Stocks, r.Cost = in.cutStocks(p, in.freeFirst(best))
	r.Certificate = in.lengthCertificate(p, bound, scaling)
	r.Bound = max(p.leastCost(), r.Certificate.Claim)
	if r.Bound == r.Cost {
		r.Status = Proved
	}
	return r, p.recount(r)
}

// leastCost is what the sum of all lengths costs at the best price by length,
// less what is there for nothing: no plan costs less.
func (p LengthProblem) leastCost() int64 {
	var free, wanted area
	for _, s := range p.Stocks {
		if s.Cost == 0 && s.Count == Unlimited {
			return 0
		}
		if s.Cost == 0 {
			free.add(s.Length, 1, s.Count)
		}
	}
	for _, w := range p.Wanted {
		wanted.add(w.Length, 1, w.Count)
	}
	left := wanted.over(1) - free.over(1)
	if left <= 0 {
		return 0
	}
	least := int64(1<<63 - 1)
	for _, s := range p.Stocks {
		if s.Cost > 0 && s.Count != 0 {
			var cost area
			cost.add(left, measure.Length(s.Cost), 1)
			least = min(least, int64(cost.over(s.Length)))
		}
	}
	return least
}
