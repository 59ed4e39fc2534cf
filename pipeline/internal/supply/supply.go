package supply

import (
	"errors"
	"maps"
	"math/big"
	"slices"

	"yardproof/pipeline/internal/bolts"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Kit is the kit of a size of a plan, in a colourway or in the fabrics of the
// recipe, and what one kit takes. It is kept from run to run, as JSON.
type Kit struct {
	Size      string `json:"size"`
	Colourway string `json:"colourway,omitempty"`
	Planned   int    `json:"planned"`             // kits
	Spoilage  int64  `json:"spoilage,omitempty"`  // kits spoiled for each made well, in hundredths of a percent
	NeededBy  string `json:"needed_by,omitempty"` // ISO 8601 date; empty when the plan names none
	Takes     []Take `json:"takes,omitempty"`     // articles of the price list only
}

// Take is what one kit takes of one article: a length in one piece, or pieces
// of what is sold by the piece.
type Take struct {
	SKU    string         `json:"sku"`
	What   string         `json:"what"`             // the fabric or the notion, as the plan calls it
	Length measure.Length `json:"length,omitempty"` // in ticks, as bought
	Step   measure.Length `json:"step,omitempty"`   // that it can be shorter by and still be cut, in ticks; 0 where it cannot, or it was not asked
	Pieces int64          `json:"pieces,omitempty"`
}

// Asked is a kit of a plan that is wanted.
type Asked struct {
	Plan  string // id
	Title string
	Kit
}

// Name is plan/size, or plan/size/colourway.
func (a Asked) Name() string {
	name := a.Plan + "/" + a.Size
	if a.Colourway != "" {
		name += "/" + a.Colourway
	}
	return name
}

// Run is how many of a kit are to be made.
type Run struct {
	Asked
	Shelf int // packed already
	Make  int // planned less those, 0 at least
	Spoil int // allowed for miscuts besides: the share of those to make, rounded up to whole kits
}

// Takes is for how many kits a run takes fabric and notions.
func (r Run) Takes() int { return r.Make + r.Spoil }

// spoiled is how many kits are allowed for miscuts in so many made well: whole
// kits, rounded up, since half a kit's fabric mends none.
func spoiled(made int, basisPoints int64) int {
	return int((int64(made)*basisPoints + 9_999) / 10_000)
}

// Use is a kit that takes an article.
type Use struct {
	Run int // index into the line's runs
	Take
}

// Article is what a run takes of one article, and what is ordered for it. Its
// wants stand at the places of its uses.
type Article struct {
	plan.Price
	Uses  []Use
	Wants []bolts.Want
	Needs int64 // pieces, of what is sold by the piece

	Stock       bolts.Article // what the supplier and the shelf have of it
	PiecesThere int64
	PiecesOrder int64

	Plan    bolts.Plan // how it is cut from bolts
	Err     error      // why there is no plan: *bolts.TooLong or *bolts.Unorderable
	Enough  bolts.Plan // as Plan, from a supplier that takes any order
	Savings []bolts.Saving

	Order    *big.Rat // in the price's unit
	Each     *big.Rat // what a unit costs where so much is ordered
	Need     *big.Rat // what the kits take of the order, in the price's unit
	Bound    *big.Rat // no order that is enough costs less
	Proved   bool     // no order that is enough is cheaper: it costs the bound
	Smallest *big.Rat // order that is enough and that the supplier takes; the order itself unless a larger one is cheaper
}

// Cost is what the order costs, exactly.
func (a *Article) Cost() *big.Rat { return new(big.Rat).Mul(a.Order, a.Each) }

// Beyond is what is ordered beyond need, in the price's unit: it stays on the
// shelf when all kits are cut.
func (a *Article) Beyond() *big.Rat { return new(big.Rat).Sub(a.Order, a.Need) }

// ByLength reports whether it is sold by the length.
func (a *Article) ByLength() bool { return a.Unit.Length() > 0 }

// Line is what a whole run takes, by sku.
type Line struct {
	Runs     []Run
	Articles []Article
	Landed   []plan.Landed // what orders cost besides goods, by supplier
	Left     []Leftover    // what the kits leave of what can no longer be ordered

	solver Solver
	stop   func() bool
}

// Solver plans how wants are cut from an article, as [bolts.Solve] does.
type Solver func(bolts.Article, []bolts.Want) (bolts.Plan, error)

// Share is the part of an article's order that is for the kits of one run.
type Share struct {
	Article int
	Of      *big.Rat // of the order, more than 0 and at most 1
}

// Shares are the run's shares of what is ordered, remnants with it: of each
// article's order as much as it has of the length, or of the pieces, that all
// runs take. What is on hand has been paid for. False where an article that they
// take cannot be ordered, or none are to be made.
func (l Line) Shares(run int) ([]Share, bool) {
	var shares []Share
	for i := range l.Articles {
		a := &l.Articles[i]
		own, all := int64(0), int64(0)
		for _, u := range a.Uses {
			takes := int64(l.Runs[u.Run].Takes()) * max(u.Pieces, int64(u.Length))
			all += takes
			if u.Run == run {
				own += takes
			}
		}
		switch {
		case own == 0:
		case a.Err != nil:
			return nil, false
		case a.Order.Sign() > 0:
			shares = append(shares, Share{i, big.NewRat(own, all)})
		}
	}
	return shares, l.Runs[run].Make > 0
}

// Of works out what kits take together. Lists may be nil; an article that the
// price list lacks is left out, which the rules tell of the plan. A bolt plan that
// does not hold when it is counted again is an error of the program: Of panics.
func Of(kits []Asked, prices *plan.PriceList, stock *plan.Stock) Line {
	return Solver(bolts.Solve).Of(kits, prices, stock)
}

// Of is [Of] with another solver.
func (s Solver) Of(kits []Asked, prices *plan.PriceList, stock *plan.Stock) Line {
	return s.Until(nil, kits, prices, stock)
}

// Until is Of for as long as somebody waits for the answer: once stop, which may
// be nil, says so the rest is done with as little work as can be.
func (s Solver) Until(stop func() bool, kits []Asked, prices *plan.PriceList, stock *plan.Stock) Line {
	return s.Within(Budget, stop, kits, prices, stock)
}

// Within is Until for a budget of its own, in the unit of [bolts.Work].
func (s Solver) Within(budget int, stop func() bool, kits []Asked, prices *plan.PriceList, stock *plan.Stock) Line {
	l := Line{solver: s, stop: stop}
	uses := map[string][]Use{}
	for _, k := range kits {
		r := Run{Asked: k, Shelf: stock.Packed(k.Plan, k.Size, k.Colourway)}
		r.Make = max(0, k.Planned-r.Shelf)
		r.Spoil = spoiled(r.Make, k.Spoilage)
		for _, t := range k.Takes {
			uses[t.SKU] = append(uses[t.SKU], Use{len(l.Runs), t})
		}
		l.Runs = append(l.Runs, r)
	}
	for _, sku := range slices.Sorted(maps.Keys(uses)) {
		if price, ok := prices.Find(sku); ok {
			l.Articles = append(l.Articles, Article{Price: price, Uses: uses[sku]})
		}
	}
	l.share(budget, stock)
	l.Left = l.Leftovers(prices, stock)
	return l
}

func (l Line) article(price plan.Price, uses []Use, stock *plan.Stock, work *bolts.Work) Article {
	a := Article{Price: price, Uses: uses}
	a.Stock.Work = work
	a.Stock.OnHand, a.PiecesThere = stock.OnHand(price.SKU)
	if a.ByLength() {
		l.fromBolts(&a)
	} else {
		l.inPieces(&a)
	}
	return a
}

func (l Line) fromBolts(a *Article) {
	for _, u := range a.Uses {
		run := l.Runs[u.Run]
		a.Wants = append(a.Wants, bolts.Want{Name: run.Name(), Length: u.Length, Count: run.Takes(), Step: u.Step})
	}
	for _, length := range a.Bolts {
		a.Stock.Offers = append(a.Stock.Offers, bolts.Offer{Length: length, Cost: int64(length)})
	}
	a.Stock.Stop = l.stop
	a.Stock.Loss, a.Stock.Gone = a.Loss.BasisPoints, a.Discontinued
	if a.Enough, a.Err = l.solve(a); a.Err == nil {
		a.Err = l.cheapest(a)
	}
	if a.Err == nil {
		a.Savings, a.Err = bolts.Shorter(a.Stock, a.Wants, a.Plan)
		a.refuse(a.Err)
	}
	a.Stock.Stop, a.Stock.Work = nil, nil // what is handed on is data
	if a.Err != nil {
		a.ordered(new(big.Rat), new(big.Rat))
	}
}

// solve plans how an article is cut, and counts the plan again.
func (l Line) solve(a *Article) (bolts.Plan, error) {
	found, err := l.solver(a.Stock, a.Wants)
	a.refuse(err)
	if err == nil {
		a.refuse(bolts.Recount(a.Stock, a.Wants, found))
	}
	return found, err
}

// refuse stops at an error of the program: nothing that follows from such a plan
// may be told.
func (a *Article) refuse(err error) {
	if fault, ok := errors.AsType[*bolts.Fault](err); ok {
		panic("bolt plan of " + a.SKU + ": " + fault.Error())
	}
}

// mostTicks keeps sums of lengths inside an int64.
const mostTicks = int64(1) << 50

// stretch is a quantity in the price's unit as a length, rounded up to a tick; 0
// for none.
func (a *Article) stretch(quantity *big.Rat) measure.Length {
	if quantity == nil {
		return 0
	}
	return measure.Length(min(Up(new(big.Rat).Mul(quantity, big.NewRat(int64(a.Unit.Length()), 1))), mostTicks))
}

// Up rounds up to a whole number.
func Up(r *big.Rat) int64 {
	n := new(big.Int).Add(r.Num(), r.Denom())
	n.Sub(n, big.NewInt(1)).Quo(n, r.Denom())
	if !n.IsInt64() {
		return mostTicks
	}
	return n.Int64()
}

func (l Line) inPieces(a *Article) {
	for _, u := range a.Uses {
		a.Needs += u.Pieces * int64(l.Runs[u.Run].Takes())
	}
	a.cheapestPacks()
}

// Missing is how many pieces a run lacks of an article that can no longer be
// ordered.
func (a *Article) Missing() int64 {
	if !a.Discontinued {
		return 0
	}
	return max(0, a.Needs-a.PiecesThere)
}

// Alone is what the kits would have ordered of a supplier who takes any order, in
// the price's unit.
func (a *Article) Alone() *big.Rat {
	if a.ByLength() {
		return a.quantity(a.Enough.Length)
	}
	return new(big.Rat).SetInt64(max(0, a.Needs-a.PiecesThere))
}

// Short reports whether the order is raised to the smallest that the supplier
// takes, and what the kits alone would have ordered, in the price's unit.
func (a *Article) Short() (alone *big.Rat, short bool) {
	if a.Minimum == nil || a.Discontinued || a.Err != nil {
		return nil, false
	}
	alone = a.Alone()
	return alone, alone.Sign() > 0 && alone.Cmp(a.Minimum) < 0
}

// Soonest is the run that first needs what is ordered of an article, and by when;
// false when no plan says by when, or nothing is ordered.
func (l Line) Soonest(a *Article) (run int, needed plan.Date, ok bool) {
	if a.Order.Sign() == 0 {
		return 0, plan.Date{}, false
	}
	for _, u := range a.Uses {
		r := l.Runs[u.Run]
		if d, said := plan.ParseDate(r.NeededBy); said && r.Make > 0 && (!ok || d.Compare(needed) < 0) {
			run, needed, ok = u.Run, d, true
		}
	}
	return run, needed, ok
}

// OrderBy is the last day on which an article can be ordered for the kits that
// take it; the zero Date when no plan says by when it is needed, or nothing is
// ordered.
func (l Line) OrderBy(a *Article) plan.Date {
	_, needed, ok := l.Soonest(a)
	if !ok {
		return plan.Date{}
	}
	return needed.Before(a.LeadDays)
}
