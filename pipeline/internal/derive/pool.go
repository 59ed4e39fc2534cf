package derive

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// Pool is parts that are cut from the same strip sets: segments of one named
// set or of sets declared alike, at one angle, or rings of loops of one set.
// Their widths are cut from as few sets as hold them (bin packing, derived from
// geometry: on a set the widths lie side by side, and nothing is lost between).
type Pool struct {
	Parts  []*Part        // in the order of the parts, ingredients first; the first holds the sets
	Length measure.Length // of one set or loop, usable
	Sets   int64          // as few as were found
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

// poolWidth is the cut width of what a part takes of its sets or loops, and how
// many; each is 0 for a part that takes none.
func (p *Part) poolWidth() (width measure.Length, each int64) {
	switch op := p.Operation.(type) {
	case plan.StripSet:
		if p.Set != nil && p.Set.Cut != nil {
			return op.Segment.Length, 1
		}
	case plan.Loop:
		if p.Loop != nil {
			return op.Cut.Length, p.Loop.Rings
		}
	}
	return 0, 0
}

// CutWidth is the cut width of the segments or rings that a part is cut into.
func (p *Part) CutWidth() measure.Length {
	width, _ := p.poolWidth()
	return width
}

// from is the part whose strips a segment or ring is cut from: the set that is
// named, or the part itself.
func (p *Part) from() *Part {
	switch {
	case p.Loop != nil:
		return p.Loop.Set
	case p.Set.Of != nil:
		return p.Set.Of
	}
	return p
}

// poolKey is the same for parts that can come from one set: of the same strips,
// sewn and pressed alike, and cut in the same way.
func (p *Part) poolKey() string {
	set := p.from().setKey()
	switch op := p.Operation.(type) {
	case plan.Loop:
		return "loop of " + op.Set.Text + ", " + set
	case plan.StripSet:
		return fmt.Sprintf("%s at %d, %s", op.Of.Text, op.Angle.N, set)
	}
	return set
}

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
		if _, each := p.poolWidth(); each == 0 || !p.Derived() {
			continue
		}
		key := p.poolKey()
		if pools[key] == nil {
			pools[key] = &Pool{solver: s.solver}
			if other := sets[p.from().setKey()]; other != nil {
				other.mixed, pools[key].mixed = true, true
			}
			sets[p.from().setKey()] = pools[key]
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
	pool.lay()
	for _, p := range needed {
		p.Pool, p.Made = pool, p.Needed
		p.holdSegments()
	}
	first.takeSets(pool.Sets, pool.Least == pool.Sets && !pool.mixed)
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
		width, each := q.poolWidth()
		grid = gcd(grid, width)
		p.Wanted = append(p.Wanted, cutting.Wanted{Name: q.Name.Text, Length: width, Count: int(min(q.Needed*each, countless))})
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
		width, each := p.poolWidth()
		sum += piecing.Batches(min(p.Needed*each, countless), piecing.PerStrip(held, width))
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
		if width, _ := p.poolWidth(); width > held {
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
			width, _ := part.poolWidth()
			widths += width * measure.Length(c.Count)
			cut.Pieces = append(cut.Pieces, Taken{part, int64(c.Count)})
		}
		pool.Fill = max(pool.Fill, pool.lengthOf(widths))
		pool.Cuts = append(pool.Cuts, cut)
	}
}

// askSets counts the sets or loops of a part that shares them with no other;
// fewest tells that no other way of cutting could share them either.
func (p *Part) askSets(fewest bool) {
	sets := p.Needed // of sets that are used whole
	p.Made = p.Needed
	if _, each := p.poolWidth(); each > 0 {
		per := p.Yield().Each
		sets = piecing.Batches(min(p.Needed*each, countless), per)
		if p.Set != nil {
			p.Made = sets * per
		}
		p.holdSegments()
	}
	p.takeSets(sets, fewest)
}

// takeSets asks for so many sets or loops: of the set that is named, or of the
// strips of the part's own. Where fewer might do, its strips are bound to nothing
// but what is cut from them.
func (p *Part) takeSets(sets int64, fewest bool) {
	switch {
	case p.Loop != nil:
		p.Loop.Count = sets
		p.Loop.Set.Set.Free = p.Loop.Set.Set.Free || !fewest
		p.Loop.Set.call(sets, p)
	case p.Set.Of != nil:
		p.Set.Count = sets
		p.Set.Of.Set.Free = p.Set.Of.Set.Free || !fewest
		p.Set.Of.call(sets, p)
	default:
		p.Set.Count = sets
		for _, strip := range p.Set.Strips {
			f := strip.Fabric
			f.needWhole(p.Name, strip.Width, sets)
			f.Needs[len(f.Needs)-1].Free = p.Set.Free || !fewest
		}
	}
}

// holdSegments remembers the pieces of fabric in what is cut from the sets, which
// no way of cutting can do without.
func (p *Part) holdSegments() {
	width, each := p.poolWidth()
	n := min(p.Needed*each, countless)
	for _, strip := range p.from().Set.Strips {
		if p.Set != nil && p.Set.Slant != nil {
			strip.Fabric.mustCover(measure.Area(p.Set.Slant.Advance(), strip.Width.Surd()).MulInt(n))
			continue
		}
		strip.Fabric.mustHold(p.Name, width, strip.Width, n)
	}
}

// poolWork tells why a pool takes so many sets or loops.
func (s *Size) poolWork(pool *Pool) *report.Work {
	first := pool.Parts[0]
	return s.once(first.Name.Text+", sets shared", func() *report.Work {
		w := &report.Work{Formula: "fewest of length L that hold all that is cut", Value: report.N(pool.Sets)}
		w.Terms = []report.Term{term("L", "usable length of the shortest strip", s.length(pool.Length), s.lengthAt(first.from()))}
		if pool.slant != nil {
			w.Terms = append(w.Terms, term("", "of which the widths of the segments take", s.length(pool.held), source.Range{}))
		}
		for _, p := range pool.Parts {
			width, each := p.poolWidth()
			w.Terms = append(w.Terms, term("", fmt.Sprintf("%s, %d of", p.Name.Text, p.Needed*each), s.length(width), p.Name.At))
		}
		w.Terms = append(w.Terms, term("", "none fewer hold them than", report.N(pool.Least), source.Range{}))
		return w
	})
}
