package derive

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
)

// Pool is parts that are cut from the same strip sets: segments of one named
// set or of sets declared alike, at one angle, or rings of loops of one set.
// Their widths are cut from as few sets as hold them (bin packing, derived from
// geometry: on a set the widths lie side by side, and nothing is lost between).
type Pool struct {
	Parts  []*Part        // in the order of the parts, ingredients first; the first holds the sets
	Length measure.Length // of one set or loop, usable
	Told   figure.F       // sets or loops
	Sets   int64          // the same, as few as were found
	Least  int64          // none fewer hold them; equal to Sets where that is proved
	Cuts   []PoolCut
	Fill   measure.Length // the most length that is taken of one set

	held   measure.Length // the widths that one set holds side by side, rounded down to a tick
	slant  *piecing.Slant
	mixed  bool // other parts are cut from such sets in another way, which might share them too
	solver Solver
}

// PoolCut is a run of sets that are cut alike.
type PoolCut struct {
	Sets   int64
	Pieces []Taken // of each set
}

// Subcut is segments or rings, cut from strip sets or loops that other parts may
// be cut from, too.
type Subcut struct {
	Width measure.Length // cut width of one
	Each  int64          // to one of the part
	From  *Part          // whose strips they are of: the set that is named, or the part itself
	how   string         // the same for all that is cut in one way
}

// all are the segments or rings of all parts that are needed.
func (c *Subcut) all(p *Part) int64 { return min(p.Needed*c.Each, countless) }

// allFigure is the same as the symbol of a formula.
func (c *Subcut) allFigure(p *Part) figure.F {
	if c.Each == 1 {
		return p.neededTerm()
	}
	return p.NeededFigure().By(c.Each).As("N", "segments or rings of all that are needed")
}

// poolKey is the same for parts that can come from one set: of the same strips,
// sewn and pressed alike, and cut in the same way.
func (c *Subcut) poolKey() string { return c.how + ", " + c.From.setKey() }

// setKey is the same for strip sets that are alike.
func (p *Part) setKey() string {
	return fmt.Sprintf("%s, %d %s, %s", p.Set.likeness(), p.Seam.Allowance.Length, p.Seam.Stitch.Text, p.Press.Text)
}

// likeness is the strips of a set in order; a set turned end for end is alike.
func (set *Set) likeness() string {
	var strips []string
	for _, s := range set.Strips {
		strips = append(strips, fmt.Sprintf("%s %d", s.Fabric.Role.Text, s.Width))
	}
	forward := strings.Join(strips, ",")
	slices.Reverse(strips)
	return min(forward, strings.Join(strips, ","))
}

// share finds the parts that are cut from the same sets.
func (s *Size) share() {
	pools, sets := map[string]*Pool{}, map[string]*Pool{}
	for _, p := range s.Parts {
		if p.Subcut == nil || !p.Derived() {
			continue
		}
		key, set := p.Subcut.poolKey(), p.Subcut.From.setKey()
		if pools[key] == nil {
			pools[key] = &Pool{solver: s.solver}
			if other := sets[set]; other != nil {
				other.mixed, pools[key].mixed = true, true
			}
			sets[set] = pools[key]
		}
		p.Pool = pools[key]
		p.Pool.Parts = append(p.Pool.Parts, p)
	}
}

// settle works a pool out once all its parts have been counted. A part that is
// alone has no pool.
func (pool *Pool) settle() {
	var needed []*Part
	for _, p := range pool.Parts {
		p.Pool = nil
		if p.Needed > 0 {
			needed = append(needed, p)
		}
	}
	if pool.Parts = needed; len(needed) < 2 {
		for _, p := range needed {
			p.askSets(!pool.mixed)
		}
		return
	}
	first := needed[0]
	pool.measure(first)
	pool.Sets, pool.Least = pool.fewest(pool.held, pool.Parts...)
	pool.Told = pool.figure()
	pool.lay()
	for _, p := range needed {
		p.Pool, p.Made = pool, p.Needed
		p.holdSegments()
	}
	first.takeSets(pool.Told, pool.Least == pool.Sets && !pool.mixed)
}

// measure is how much one set holds: its length, and of a set that is cut at an
// angle what the first cut leaves, square to the cuts.
func (pool *Pool) measure(p *Part) {
	if p.Loop != nil {
		pool.Length = p.Loop.Yield.Length
		pool.held = pool.Length
		return
	}
	pool.Length, pool.slant = p.Set.Length, p.Set.Slant
	pool.held = pool.widths(pool.Length)
}

// widths are the cut widths that a length of set holds side by side, rounded
// down to a tick.
func (pool *Pool) widths(l measure.Length) measure.Length {
	if pool.slant == nil {
		return l
	}
	return l.Surd().Sub(pool.slant.Waste()).Mul(pool.slant.Width.Div(pool.slant.Advance())).FloorTo(measure.Tick)
}

// lengthOf is the length of set that widths side by side take, rounded up to a
// tick.
func (pool *Pool) lengthOf(widths measure.Length) measure.Length {
	if pool.slant == nil {
		return widths
	}
	along := widths.Surd().Mul(pool.slant.Advance().Div(pool.slant.Width))
	return pool.slant.Waste().Add(along).CeilTo(measure.Tick)
}

// problem is the widths of parts to be cut from sets that hold so much. The sets
// are brought down to the grid of the widths, of which every sum is a multiple.
func (pool *Pool) problem(held measure.Length, parts []*Part) cutting.LengthProblem {
	var grid measure.Length
	p := cutting.LengthProblem{}
	for _, q := range parts {
		grid = gcd(grid, q.Subcut.Width)
		p.Wanted = append(p.Wanted, cutting.Wanted{Name: q.Name.Text, Length: q.Subcut.Width, Count: int(q.Subcut.all(q))})
	}
	p.Stocks = []cutting.Stock{{Name: "set", Length: measure.FloorTo(held, grid), Cost: 1, Count: cutting.Unlimited}}
	return p
}

func gcd(a, b measure.Length) measure.Length {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// fewest is how many sets that hold so much parts take, as few as are found and
// as few as are not excluded.
func (pool *Pool) fewest(held measure.Length, parts ...*Part) (found, least int64) {
	apart := pool.apart(held, parts)
	r, err := pool.solver.Lengths(pool.problem(held, parts))
	if err != nil || r.Cost > apart {
		return apart, 1
	}
	return r.Cost, r.Bound
}

// apart is how many sets parts take with each width cut from sets of its own.
func (pool *Pool) apart(held measure.Length, parts []*Part) int64 {
	sum := int64(0)
	for _, p := range parts {
		sum += piecing.Batches(p.Subcut.all(p), piecing.PerStrip(held, p.Subcut.Width))
	}
	return sum
}

// Fewest is how many sets some parts of the pool take without the others; apart
// is how many they take with each width cut from sets of its own.
func (pool *Pool) Fewest(parts ...*Part) (found, least, apart int64) {
	found, least = pool.fewest(pool.held, parts...)
	return found, least, pool.apart(pool.held, parts)
}

// Shorter is how many sets the pool takes at the least when each is so much
// shorter.
func (pool *Pool) Shorter(by measure.Length) int64 {
	held := pool.widths(pool.Length - by)
	for _, p := range pool.Parts {
		if p.Subcut.Width > held {
			return countless
		}
	}
	_, least := pool.fewest(held, pool.Parts...)
	return least
}

// lay writes down how the sets are cut.
func (pool *Pool) lay() {
	r, err := pool.solver.Lengths(pool.problem(pool.held, pool.Parts))
	if err != nil || r.Cost != pool.Sets {
		return // more than can be laid out: the fabrics say so
	}
	for _, stock := range r.Stocks {
		cut := PoolCut{Sets: int64(stock.Repeat)}
		var widths measure.Length
		for _, c := range stock.Cuts {
			part := pool.Parts[c.Wanted]
			widths += part.Subcut.Width * measure.Length(c.Count)
			cut.Pieces = append(cut.Pieces, Taken{part, int64(c.Count)})
		}
		pool.Fill = max(pool.Fill, pool.lengthOf(widths))
		pool.Cuts = append(pool.Cuts, cut)
	}
}

// askSets counts the sets or loops of a part that shares them with no other;
// fewest tells that no other way of cutting could share them either.
func (p *Part) askSets(fewest bool) {
	sets := p.NeededFigure() // of sets that are used whole
	p.Made = p.Needed
	if p.Subcut != nil {
		y := p.Yield()
		sets = p.inBatches(p.Room.Gives().From+"s", p.Subcut.allFigure(p), y.Told)
		if p.Set != nil {
			p.Made, p.Figures.Count = sets.N()*y.Each, sets
		}
		p.holdSegments()
	}
	p.takeSets(sets, fewest)
}

// takeSets asks for so many sets or loops: of the set that is named, or of the
// strips of the part's own. Where fewer might do, its strips are bound to nothing
// but what is cut from them.
func (p *Part) takeSets(told figure.F, fewest bool) {
	sets := min(told.N(), countless)
	switch {
	case p.Loop != nil:
		p.Loop.Count = sets
		p.Loop.Set.Set.Free = p.Loop.Set.Set.Free || !fewest
		p.Loop.Set.call(told, p)
	case p.Set.Of != nil:
		p.Set.Count = sets
		p.Set.Of.Set.Free = p.Set.Of.Set.Free || !fewest
		p.Set.Of.call(told, p)
	default:
		p.Set.Count = sets
		for _, strip := range p.Set.Strips {
			f := strip.Fabric
			f.needWhole(p.Name, strip, sets)
			f.last().Free = p.Set.Free || !fewest
		}
	}
}

// holdSegments remembers the pieces of fabric in what is cut from the sets, which
// no way of cutting can do without.
func (p *Part) holdSegments() {
	n := p.Subcut.all(p)
	for _, strip := range p.Subcut.From.Set.Strips {
		if p.Set != nil && p.Set.Slant != nil {
			strip.Fabric.mustCover(measure.Area(p.Set.Slant.Advance(), strip.Width.Surd()).MulInt(n))
			continue
		}
		strip.Fabric.mustHold(p.Name, p.Subcut.Width, strip.Width, n)
	}
}

// figure is why the pool takes so many sets or loops.
func (pool *Pool) figure() figure.F {
	first := pool.Parts[0]
	l := first.Subcut.From.Set.Long
	from := []figure.F{l}
	terms := []figure.F{l.Where(first.Subcut.From.Set.lengthAt())}
	if pool.slant != nil {
		held := figure.Given(figure.Length, pool.held.Surd(), "what the widths of segments cut at an angle take", l)
		terms = append(terms, held.As("", "of which the widths of the segments take"))
	}
	for _, p := range pool.Parts {
		from = append(from, p.NeededFigure(), p.Yield().Told)
		terms = append(terms, figure.Said("", fmt.Sprintf("%s, %d of", p.Name.Text, p.Needed*p.Subcut.Each), p.Subcut.Width, p.Name.At))
	}
	words := "fewest of length L that hold all that is cut"
	least := figure.Given(figure.Count, measure.Rational(pool.Least, 1), "what no cutting can do without", from...)
	terms = append(terms, least.As("", "none fewer hold them than"))
	return figure.Given(figure.Count, measure.Rational(pool.Sets, 1), words, from...).Is(first.Name.Text, "sets shared").Telling(terms...)
}

// others names the parts that share sets with the first of them.
func (pool *Pool) others() string {
	var names []string
	for _, q := range pool.Parts[1:] {
		names = append(names, q.Name.Text)
	}
	return " and those of " + strings.Join(names, ", ")
}

// told says what is cut from each set or loop: "2 sets into 8 of 2 in (slim), 4 of 3
// in (wide) each".
func (pool *Pool) told(from string) say.Sentence {
	var runs []say.Sentence
	for _, c := range pool.Cuts {
		var pieces []say.Sentence
		for _, piece := range c.Pieces {
			pieces = append(pieces, say.That("%d of %s (%s)", piece.Count, say.AsCut(piece.Part.Subcut.Width), piece.Part.Name.Text))
		}
		run := say.That("%s into %s", say.Many(c.Sets, from), say.List(", ", pieces...))
		if c.Sets > 1 {
			run = run.And(say.That(" each"))
		}
		runs = append(runs, run)
	}
	return say.List("; ", runs...)
}

// notes says with the first of its parts how full the fullest set is, and whether
// fewer are excluded.
func (pool *Pool) notes(p *Part) []say.Sentence {
	if pool.Parts[0] != p {
		return nil
	}
	out := []say.Sentence{say.That("the fullest takes %s of %s: %s to spare", say.AsCut(pool.Fill), say.AsThere(pool.Length), say.AsThere(pool.Length-pool.Fill))}
	if pool.Least < pool.Sets {
		out = append(out, say.That("whether fewer do is not proved, but %d at least", pool.Least))
	}
	return out
}
