package cutting

import "math"

// program is the strip problem over an enumerated set of patterns, solved by
// branch and bound: strip counts Z first, tallest class first, then the use of
// single patterns. Each node is closed only by a bound computed in integers.
type program struct {
	in      *instance
	demand  []int
	pats    []pattern
	lp      *simplex
	scaling scaling
	terms   [][]term
	rc      []int64 // reduced costs of the patterns, scaled
	lo, up  []int64 // bounds on the use of each pattern
	nodes   int     // nodes still allowed
	search  *search
}

func newProgram(s *search, pats []pattern, nodes int) *program {
	p := &program{
		in: s.in, demand: s.demand, pats: pats, nodes: nodes, search: s,
		lp: newSimplex(len(s.in.kinds)+len(s.in.heights), len(s.in.kinds)), scaling: s.scaling,
		terms: make([][]term, len(pats)), rc: make([]int64, len(pats)),
		lo: make([]int64, len(pats)), up: make([]int64, len(pats)),
	}
	p.lp.gain = float64(2*s.goal + 2)
	for i, d := range s.demand {
		p.lp.lo[i] = float64(d)
	}
	for t, q := range pats {
		p.terms[t] = q.terms()
		p.up[t] = s.in.most(q.class, s.goal)
		p.lp.addColumn(s.in.column(q), float64(s.in.heights[q.class]), 0, float64(p.up[t]))
	}
	return p
}

// explore closes a box, or reports false when it runs out of nodes. Plans it
// meets on the way are offered to the search.
func (p *program) explore(b box) (*Proof, bool) {
	b = b.clone()
	if !p.in.tighten(b, p.search.goal) {
		return &Proof{Kind: ProofEmpty}, true
	}
	if p.nodes--; p.nodes < 0 || p.search.spent() {
		return nil, false
	}
	d, status := p.solve(b)
	p.reduce(d)
	if p.slack(d, b) < 0 {
		return leaf(d), true
	}
	if status != lpOptimal {
		return nil, false
	}
	split, whole := p.choose()
	if whole {
		p.offer()
		return leaf(d), p.slack(d, b) < 0
	}
	defer p.restore(p.fix(d, b))
	below, ok := split(b)
	return &Proof{Kind: ProofFixing, Item: d.item, Class: d.class, Low: below}, ok
}

// solve runs the linear program over a box and the present pattern bounds.
func (p *program) solve(b box) (duals, lpStatus) {
	p.setBounds(b)
	status := p.search.steps.solve(p.lp)
	p.search.steps.Nodes++
	return p.scaling.round(p.lp.y, len(p.in.kinds)), status
}

// slack is what a plan within the goal may cost beyond the bound of the duals;
// it is negative when there is no such plan.
func (p *program) slack(d duals, b box) int64 {
	return p.search.goal*p.scaling.scale - p.bound(d, b)
}

// choose finds something that is not whole, strip counts first, tallest class
// first, and returns how to split on it.
func (p *program) choose() (split func(box) (*Proof, bool), whole bool) {
	if k, v, ok := p.fractionalStrips(); ok {
		return func(b box) (*Proof, bool) { return p.splitStrips(b, k, v) }, false
	}
	if t, v, ok := p.fractionalPattern(); ok {
		return func(b box) (*Proof, bool) { return p.splitPattern(b, t, v) }, false
	}
	return nil, true
}

// change remembers a pattern's upper bound.
type change struct {
	t  int
	up int64
}

// fix tightens the box and the bounds of patterns by reduced costs.
func (p *program) fix(d duals, b box) []change {
	slack := p.slack(d, b)
	var undo []change
	for t, rc := range p.rc {
		if rc <= 0 || p.up[t] == p.lo[t] || p.lo[t]+slack/rc >= p.up[t] {
			continue
		}
		undo = append(undo, change{t, p.up[t]})
		p.setUp(t, p.lo[t]+slack/rc)
	}
	d.squeeze(b, slack)
	return undo
}

func (p *program) restore(undo []change) {
	for _, c := range undo {
		p.setUp(c.t, c.up)
	}
}

func (p *program) setLo(t int, v int64) {
	p.lo[t], p.lp.lo[p.lp.rows+t] = v, float64(v)
}

func (p *program) setUp(t int, v int64) {
	p.up[t], p.lp.up[p.lp.rows+t] = v, float64(v)
}

func leaf(d duals) *Proof {
	return &Proof{Kind: ProofDuals, Item: d.item, Class: d.class}
}

func (p *program) setBounds(b box) {
	for k := range b.lo {
		r := len(p.in.kinds) + k
		p.lp.lo[r], p.lp.up[r] = float64(b.lo[k]), float64(b.up[k])
	}
}

// bound is the scaled length that duals prove for the patterns within their
// bounds: a pattern worth more than it costs counts against it as often as it
// may be used.
func (p *program) bound(d duals, b box) int64 {
	sum := d.bound(p.demand, b)
	for t, rc := range p.rc {
		sum += pick(rc, p.lo[t], p.up[t])
	}
	return sum
}

// reduce computes the reduced costs of all patterns: the price of a strip of
// the class after the prices of Z, less what the pattern is worth.
func (p *program) reduce(d duals) {
	price := p.in.prices(d, p.scaling.scale)
	for t := range p.pats {
		rc := price[p.pats[t].class]
		for _, c := range p.terms[t] {
			rc -= c.n * d.item[c.kind]
		}
		p.rc[t] = rc
	}
}

// term is a count of a pattern that is not zero.
type term struct {
	kind int
	n    int64
}

func (q pattern) terms() []term {
	var all []term
	for i, n := range q.count {
		if n > 0 {
			all = append(all, term{i, int64(n)})
		}
	}
	return all
}

const integral = 1e-6

func fractional(v float64) bool { return math.Abs(v-math.Round(v)) > integral }

// fractionalStrips is the tallest class whose strip count is not whole.
func (p *program) fractionalStrips() (k int, v int64, ok bool) {
	for k = len(p.in.heights) - 1; k >= 0; k-- {
		if z := p.lp.solution(len(p.in.kinds) + k); fractional(z) {
			return k, int64(math.Floor(z)), true
		}
	}
	return 0, 0, false
}

// fractionalPattern is the pattern with the largest fractional part: rounding
// it up is tried first and decides most.
func (p *program) fractionalPattern() (t int, v int64, ok bool) {
	best := integral
	for u := range p.pats {
		x := p.lp.solution(p.lp.rows + u)
		if f := x - math.Floor(x); fractional(x) && f > best {
			t, v, ok, best = u, int64(math.Floor(x)), true, f
		}
	}
	return t, v, ok
}

func (p *program) splitStrips(b box, k int, v int64) (*Proof, bool) {
	high := b.clone()
	high.lo[k] = v + 1
	h, ok := p.explore(high)
	if !ok {
		return nil, false
	}
	b.up[k] = min(b.up[k], v)
	l, ok := p.explore(b)
	return &Proof{Kind: ProofStrips, At: k, Value: v, Low: l, High: h}, ok
}

// splitPattern tries more than v uses of a pattern first, then at most v; its
// bounds may exclude either side by now.
func (p *program) splitPattern(b box, t int, v int64) (*Proof, bool) {
	lo, up := p.lo[t], p.up[t]
	low, high := &Proof{Kind: ProofEmpty}, &Proof{Kind: ProofEmpty}
	ok := true
	if v < up {
		p.setLo(t, v+1)
		high, ok = p.explore(b)
		p.setLo(t, lo)
	}
	if ok && v >= lo {
		p.setUp(t, v)
		low, ok = p.explore(b)
		p.setUp(t, up)
	}
	return &Proof{Kind: ProofPattern, At: p.pats[t].class, Pattern: p.pats[t].count, Value: v, Low: low, High: high}, ok
}

// offer hands an integral solution to the search.
func (p *program) offer() {
	var q plan
	for t := range p.pats {
		if n := int(math.Round(p.lp.solution(p.lp.rows + t))); n > 0 {
			q = append(q, run{p.pats[t], n})
		}
	}
	if p.in.covers(q, p.demand) {
		p.search.offer(q)
	}
}

// covers recounts a plan in integers.
func (in *instance) covers(p plan, demand []int) bool {
	for i, d := range demand {
		for _, r := range p {
			d -= r.count[i] * r.times
		}
		if d > 0 {
			return false
		}
	}
	return true
}
