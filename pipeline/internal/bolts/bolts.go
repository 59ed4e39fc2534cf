package bolts

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"yardproof/pipeline/internal/cutting"
	"yardproof/schema/measure"
)

// Offer is a length of bolt that can be ordered, any number of times. Cost is
// that of one, in any whole unit that is the same for all offers: minor units of
// money, or ticks of length for the shortest order.
type Offer struct {
	Length measure.Length // as invoiced
	Cost   int64
}

// Article is one fabric that kits are cut from. Without offers it is sold by
// the length: each kit's length is bought as it is, and its cost is its length
// in ticks.
type Article struct {
	Offers   []Offer
	Loss     int64            // of an ordered bolt, in hundredths of a percent: ends, flaws, short measure
	Least    measure.Length   // the smallest order, as invoiced; 0 for any
	Multiple measure.Length   // an order is a multiple of it, as invoiced; 0 for any
	OnHand   []measure.Length // part-bolts, as measured: they lose nothing more
	Gone     bool             // nothing more can be ordered
	Stop     func() bool      // tells that nobody waits for the answer any more; may be nil
	Work     *Work            // what searching for its plans may cost; nil for whatever each takes
}

// Want is a length that some number of kits need.
type Want struct {
	Name   string
	Length measure.Length
	Count  int
	Step   measure.Length // that it may be shorter by; 0 when it may not
}

// Pieces are so many of one wanted length.
type Pieces struct {
	Want  int // index into the wants
	Count int
}

// Cut is how one bolt or part-bolt is cut, and how many are cut alike: longest
// lengths first. Without pieces it is a bolt that is ordered and stays whole.
type Cut struct {
	Offer  int // index into the article's offers, -1 for a part-bolt
	OnHand int // index into the part-bolts, -1 for an ordered bolt
	Repeat int
	Pieces []Pieces
	Left   measure.Length // of each; what the loss takes is not in it
}

// Plan is what to order and how to cut it. Of an article sold by the length
// there are no cuts but those of part-bolts, and Rest is what is cut from the
// length that is ordered; of one that is gone Rest is what is missing.
type Plan struct {
	Order  []int // bolts by offer
	Length measure.Length
	Cuts   []Cut
	Rest   []Pieces
	Cost   int64
	Bound  int64 // no plan costs less
	Proved bool  // no cheaper plan exists: Cost is Bound
}

// TooLong is the error of a kit's length that no bolt on offer holds.
type TooLong struct {
	Want           int
	Needs, Longest measure.Length
}

func (e *TooLong) Error() string {
	return fmt.Sprintf("want %d needs %d ticks of one bolt, and the longest holds %d", e.Want, e.Needs, e.Longest)
}

// Unorderable is the error of bolts of which no sensible number makes an order
// that the supplier takes.
type Unorderable struct{ Least, Multiple measure.Length }

func (e *Unorderable) Error() string {
	return fmt.Sprintf("no bolts make an order of %d ticks or more that is a multiple of %d", e.Least, e.Multiple)
}

// Usable is what an ordered bolt holds after its loss, rounded down to whole
// ticks.
func (a Article) Usable(offer int) measure.Length {
	whole := int64(a.Offers[offer].Length)
	hundred, rest := whole/10_000, whole%10_000 // the product would pass an int64
	return measure.Length(hundred*(10_000-a.Loss) + rest*(10_000-a.Loss)/10_000)
}

// Solve finds the plan of least cost: what is on hand is cut first, as far as it
// saves something. An order smaller than the least, or no multiple, is filled
// up with further bolts as cheaply as can be; whether that is proved is said
// of the whole. Where the search leaves it open the orders between its bound and its
// plan are tried one by one. Of orders that cost the same one of fewer bolts is taken where it
// is found to be enough. Errors are *TooLong, *Unorderable, or a number without
// meaning; a *[Fault], where a plan does not hold when it is counted again, is one
// of the program.
func Solve(a Article, wants []Want) (Plan, error) {
	plan, err := a.solve(wants, a.limits())
	if err != nil {
		return Plan{}, err
	}
	return a.fewer(plan, wants)
}

// limits are those of one search: all that is left of the work.
func (a Article) limits() cutting.Limits {
	l := cutting.Limits{Stop: a.Stop}
	if a.Work != nil {
		l.Allowance = max(1, a.Work.Allowed-a.Work.Done)
	}
	return l
}

// lengths searches for a plan, and counts what that costs.
func (a Article) lengths(p cutting.LengthProblem, l cutting.Limits) (cutting.LengthResult, error) {
	r, err := cutting.SolveLengths(p, l)
	if a.Work != nil {
		a.Work.Done, a.Work.Short = a.Work.Done+r.Spent.Work, a.Work.Short || r.Spent.Short
	}
	return r, err
}

func (a Article) solve(wants []Want, limits cutting.Limits) (Plan, error) {
	plan, err := a.find(wants, limits)
	if err == nil {
		err = Recount(a, wants, plan)
	}
	if err != nil {
		return Plan{}, err
	}
	return plan, nil
}

func (a Article) find(wants []Want, limits cutting.Limits) (Plan, error) {
	if a.Gone || len(a.Offers) == 0 {
		return a.byLength(wants)
	}
	p := a.problem(wants)
	for i, o := range a.Offers {
		p.Stocks = append(p.Stocks, cutting.Stock{Length: a.Usable(i), Cost: o.Cost, Count: cutting.Unlimited})
	}
	r, err := a.lengths(p, limits)
	if err != nil {
		return Plan{}, tooLong(err)
	}
	plan := a.read(r, wants)
	if plan.Length == 0 || a.takes(plan.Length) && (plan.Proved || limits.Settle > 0) {
		return plan, nil
	}
	return a.fill(plan, wants)
}

// problem is the part-bolts and the wants, to which stocks are to be added.
func (a Article) problem(wants []Want) cutting.LengthProblem {
	var p cutting.LengthProblem
	for _, w := range wants {
		p.Wanted = append(p.Wanted, cutting.Wanted{Name: w.Name, Length: w.Length, Count: w.Count})
	}
	for _, l := range a.OnHand {
		p.Stocks = append(p.Stocks, cutting.Stock{Length: l, Count: 1})
	}
	return p
}

func tooLong(err error) error {
	if wide, ok := errors.AsType[*cutting.TooWide](err); ok {
		return &TooLong{Want: wide.Piece, Needs: wide.Needs, Longest: wide.Width}
	}
	return err
}

// read turns the solver's answer into a plan.
func (a Article) read(r cutting.LengthResult, wants []Want) Plan {
	plan := Plan{Order: make([]int, len(a.Offers)), Cost: r.Cost, Bound: r.Bound, Proved: r.Status == cutting.Proved}
	for _, s := range r.Stocks {
		cut := Cut{Offer: -1, OnHand: s.Stock, Repeat: s.Repeat, Pieces: pieces(s.Cuts, wants), Left: s.Left}
		if offer := s.Stock - len(a.OnHand); offer >= 0 {
			cut.Offer, cut.OnHand = offer, -1
			plan.Order[offer] += s.Repeat
		}
		plan.Cuts = append(plan.Cuts, cut)
	}
	plan.Length = a.invoiced(plan.Order)
	return plan
}

// pieces are in the order in which a bolt is cut: longest first.
func pieces(cuts []cutting.LengthCut, wants []Want) []Pieces {
	var all []Pieces
	for _, c := range cuts {
		if c.Count > 0 {
			all = append(all, Pieces{c.Wanted, c.Count})
		}
	}
	slices.SortStableFunc(all, func(a, b Pieces) int {
		return cmp.Or(cmp.Compare(wants[b.Want].Length, wants[a.Want].Length), cmp.Compare(a.Want, b.Want))
	})
	return all
}

func (a Article) invoiced(order []int) measure.Length {
	var total measure.Length
	for i, n := range order {
		total += measure.Length(n) * a.Offers[i].Length
	}
	return total
}

// takes reports whether the supplier takes an order of a length.
func (a Article) takes(l measure.Length) bool {
	return l >= a.Least && (a.Multiple == 0 || l%a.Multiple == 0)
}

// byLength cuts what it can from the part-bolts and buys the rest as it is, or
// finds it missing: as short a length as can be, since each wanted length
// costs itself.
func (a Article) byLength(wants []Want) (Plan, error) {
	p := a.problem(wants)
	for _, w := range wants {
		p.Stocks = append(p.Stocks, cutting.Stock{Length: w.Length, Cost: int64(w.Length), Count: cutting.Unlimited})
	}
	r, err := a.lengths(p, a.limits())
	if err != nil {
		return Plan{}, tooLong(err)
	}
	plan := Plan{Cost: r.Cost, Bound: r.Bound, Proved: r.Status == cutting.Proved, Length: measure.Length(r.Cost)}
	rest := make([]int, len(wants))
	for _, s := range r.Stocks {
		if s.Stock < len(a.OnHand) {
			plan.Cuts = append(plan.Cuts, Cut{Offer: -1, OnHand: s.Stock, Repeat: s.Repeat, Pieces: pieces(s.Cuts, wants), Left: s.Left})
			continue
		}
		for _, c := range s.Cuts {
			rest[c.Wanted] += c.Count * s.Repeat
		}
	}
	for i, n := range rest {
		if n > 0 {
			plan.Rest = append(plan.Rest, Pieces{i, n})
		}
	}
	if !a.Gone && plan.Length > 0 {
		plan.Length = a.up(plan.Length)
		plan.Cost, plan.Bound = int64(plan.Length), int64(a.up(measure.Length(plan.Bound)))
		plan.Proved = plan.Cost == plan.Bound
	}
	return plan, nil
}

// up is the shortest order that is no shorter than a length.
func (a Article) up(l measure.Length) measure.Length {
	l = max(l, a.Least)
	if a.Multiple > 0 {
		l = (l + a.Multiple - 1) / a.Multiple * a.Multiple
	}
	return l
}

// Packs is how many packs to order for so many that are needed: what is on hand
// is taken off, and what is left rounded up to the smallest order and its
// multiple. 0 for either means any.
func Packs(needed, onHand, least, multiple int64) int64 {
	if needed <= onHand {
		return 0
	}
	n := max(needed-onHand, least)
	if multiple > 0 {
		n = (n + multiple - 1) / multiple * multiple
	}
	return n
}
