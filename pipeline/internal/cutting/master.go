package cutting

import (
	"math"
	"slices"
)

// master is the restricted master of the strip problem,
//
//	min  sum_p h(p) x_p
//	s.t. sum_p a_ip x_p >= d_i              for every kind i
//	     sum_(p of class k or taller) x_p = Z_k, lo_k <= Z_k <= up_k,
//
// over the patterns found so far. The Z_k are the logical variables of their
// rows, so branching on them changes bounds only and leaves pricing a plain
// knapsack. One artificial column that covers every demand at a penalty keeps
// it feasible in every box.
type master struct {
	in      *instance
	demand  []int
	lp      *simplex
	pricer  pricer
	pool    []pattern
	known   map[string]bool
	scaling scaling
	penalty float64
	best    []int64 // by class: worth of the best strip at the last pricing
	steps   *meter
	budget  int // on steps.Visits
}

// pricer finds the best strip of every class, or the best sheet, for given
// values of the kinds, and lists the good ones.
type pricer interface {
	// price visits the classes from low to high with the worth of the best
	// strip. best and enumerate may be called during a visit and concern the
	// class being visited.
	price(value []int64, visit func(class int, best int64))
	best() pattern
	// enumerate appends the maximal patterns worth at least need; false means
	// that there are more than most in all or that the search takes more
	// steps than allowed. spent is the number of steps taken.
	enumerate(need int64, out *[]pattern, most, steps int) (done bool, spent int)
	// single is some simple pattern of the class.
	single(class int) pattern
}

func (in *instance) pricer(demand []int, steps *meter) pricer {
	steps.toll(in.filling() / 8) // to make its tables
	if in.sheets != nil {
		return newSheetKnapsack(in, demand, steps)
	}
	if in.stacks != nil {
		return newStackedKnapsack(in, demand)
	}
	return newKnapsack(in, demand)
}

// newMaster starts from the patterns of some plans.
func newMaster(in *instance, demand []int, goal int64, plans []plan, steps *meter) *master {
	m := &master{
		in: in, demand: demand, lp: newSimplex(len(in.kinds)+len(in.heights), len(in.kinds)),
		pricer: in.pricer(demand, steps), known: map[string]bool{},
		scaling: in.scaling(demand, goal), penalty: 16 * float64(goal+1),
		best: make([]int64, len(in.heights)), steps: steps, budget: math.MaxInt,
	}
	m.lp.gain = float64(2*goal + 2)
	var cover sparse
	for i, d := range demand {
		m.lp.lo[i] = float64(d)
		if d > 0 {
			cover.row, cover.val = append(cover.row, i), append(cover.val, float64(d))
		}
	}
	m.lp.addColumn(cover, m.penalty, 0, math.Inf(1))
	for _, p := range plans {
		for _, r := range p {
			m.add(r.pattern)
		}
	}
	for class := range in.heights {
		m.add(m.pricer.single(class))
	}
	return m
}

func (in *instance) scaling(demand []int, goal int64) scaling {
	total := int64(pieces(demand))
	count := in.most(0, goal) + 1
	return newScaling(goal, max(count, total), len(in.heights))
}

// single is a strip of the class with one kind as tall as the class, filled up.
func (k *knapsack) single(class int) pattern {
	p := pattern{class: class, count: make([]int, len(k.in.kinds))}
	k.class = class
	room := k.in.room(class)
	for t, i := range k.order {
		k.width[t] = 0
		s := k.in.fit(i, class)
		if s == nil {
			continue
		}
		k.width[t] = s.width
		if s.class == class && room == k.in.room(class) {
			p.count[i] = min(k.cap[i], room/s.width)
			room -= p.count[i] * s.width
		}
	}
	k.fill(&p, room)
	return p
}

func (m *master) add(p pattern) bool {
	key := patternKey(p)
	if m.known[key] || !slices.ContainsFunc(p.count, func(n int) bool { return n > 0 }) {
		return false
	}
	m.known[key] = true
	m.pool = append(m.pool, p)
	m.lp.addColumn(m.in.column(p), float64(m.in.heights[p.class]), 0, math.Inf(1))
	return true
}

func patternKey(p pattern) string {
	b := make([]byte, 0, 3*len(p.count)+3)
	for _, n := range append([]int{p.class}, p.count...) {
		b = append(b, byte(n>>16), byte(n>>8), byte(n))
	}
	return string(b)
}

// column is a pattern's column: counts in the demand rows and a one in the row
// of every class up to its own (of its own alone, where classes are stocks).
func (in *instance) column(p pattern) sparse {
	c := sparse{ones: p.class + 1}
	if in.stock != nil {
		c = sparse{row: []int{len(in.kinds) + p.class}, val: []float64{1}}
	}
	for i, n := range p.count {
		if n > 0 {
			c.row, c.val = append(c.row, i), append(c.val, float64(n))
		}
	}
	return c
}

// setBox restricts the strip counts.
func (m *master) setBox(b box) {
	for k := range b.lo {
		r := len(m.in.kinds) + k
		m.lp.lo[r], m.lp.up[r] = float64(b.lo[k]), float64(b.up[k])
	}
}

// node is what column generation finds out about a box.
type node struct {
	box   box
	duals duals
	bound int64 // scaled, proved in integers
	exact bool  // column generation ran to its end
}

// generate solves the master over a box by column generation. It stops early
// once the integer bound exceeds goal.
func (m *master) generate(b box, goal int64) node {
	m.setBox(b)
	best := node{box: b, duals: noDuals(m.in)}
	raised := 0
	for {
		m.steps.Masters++
		status := m.steps.solve(m.lp)
		d, found := m.priceOut()
		m.in.repair(d, m.best, m.scaling.scale)
		if v := d.bound(m.demand, b); v > best.bound {
			best.bound, best.duals = v, d
		}
		if best.bound > goal*m.scaling.scale || status != lpOptimal || m.steps.beyond(m.budget) {
			return best
		}
		if found {
			continue
		}
		if m.lp.solution(m.lp.rows) < 1e-6 || raised == 3 {
			best.exact = true
			return best
		}
		raised++
		m.raisePenalty()
	}
}

// priceOut rounds the duals, prices every class exactly and adds the patterns
// that are worth more than they cost.
func (m *master) priceOut() (duals, bool) {
	d := m.scaling.round(m.lp.y, len(m.in.kinds))
	m.steps.Visits += m.in.pricing()
	m.steps.toll(m.in.filling() - m.in.pricing())
	found, price := false, m.in.prices(d, m.scaling.scale)
	var fresh []pattern
	m.pricer.price(d.item, func(class int, best int64) {
		m.best[class] = best
		cost := price[class]
		if best <= cost {
			return
		}
		if q := m.pricer.best(); worth(q, d.item) > cost {
			fresh = append(fresh, q)
			return
		}
		fresh = append(fresh, m.capped(class, cost, d.item)...)
	})
	for _, p := range fresh {
		found = m.add(p) || found
	}
	return d, found
}

// capped prices a class again where the best pattern is worth too little once
// it holds no more of a kind than is wanted: by enumeration of all that are
// worth more than they cost. Where that is too much work, the bound stays weak.
func (m *master) capped(class int, cost int64, item []int64) []pattern {
	if m.steps.halted(0) {
		return nil
	}
	var all, fresh []pattern
	steps := m.steps.atMost(300_000)
	done, spent := m.pricer.enumerate(cost+1, &all, math.MaxInt32, steps)
	m.steps.Visits += spent
	m.steps.cut(!done && steps < 300_000)
	if !done {
		return nil
	}
	m.best[class] = cost
	for _, q := range all {
		if w := worth(q, item); w > cost {
			m.best[class] = max(m.best[class], w)
			fresh = append(fresh, q)
		}
	}
	return fresh
}

func worth(q pattern, item []int64) int64 {
	sum := int64(0)
	for i, n := range q.count {
		sum += int64(n) * item[i]
	}
	return sum
}

// raisePenalty makes the artificial column dearer when a box still uses it.
func (m *master) raisePenalty() {
	m.penalty *= 16
	m.lp.cost[m.lp.rows] = m.penalty
}

// z reads the fractional strip counts.
func (m *master) z(k int) float64 { return m.lp.solution(len(m.in.kinds) + k) }

// x reads how often pattern p of the pool is used.
func (m *master) x(p int) float64 { return m.lp.solution(m.lp.rows + 1 + p) }
