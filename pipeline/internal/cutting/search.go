package cutting

// search looks for a shorter plan than the best one known and, failing that,
// for a proof that there is none. goal is the largest length it looks for: an
// improvement, and no more than its aim.
type search struct {
	in      *instance
	demand  []int
	limits  Limits
	steps   *meter
	best    plan
	length  int64 // of best
	goal    int64
	aim     int64
	budget  int // on Steps.Visits
	sums    sums
	scaling scaling
}

func newSearch(in *instance, demand []int, limits Limits, steps *meter, start plan, sums sums) *search {
	s := &search{in: in, demand: demand, limits: limits, steps: steps, best: start, length: in.length(start), budget: limits.Visits}
	s.sums = sums
	s.setAim(s.length)
	s.scaling = in.scaling(demand, s.length)
	return s
}

// offer keeps a plan if it is shorter than the best so far.
func (s *search) offer(p plan) bool {
	p = s.in.tidy(p, s.demand)
	n := s.in.length(p)
	if n > s.length || n == s.length && p.strips() >= s.best.strips() {
		return false
	}
	shorter := n < s.length
	s.best, s.length = p, n
	s.setAim(s.aim)
	return shorter
}

// setAim restricts the search to plans of at most that length. A small aim
// leaves few patterns and few boxes, so it is refuted or met quickly.
func (s *search) setAim(aim int64) {
	s.aim = aim
	s.goal = min(aim, s.sums.below(s.length))
}

func (s *search) master() *master {
	m := newMaster(s.in, s.demand, s.length, []plan{s.best}, s.steps)
	m.scaling, m.budget = s.scaling, s.limits.Visits
	return m
}

// spent reports whether the work allowed so far has been done.
func (s *search) spent() bool { return s.steps.beyond(s.budget) }

func (s *search) closed(bound int64) bool { return bound > s.goal*s.scaling.scale }

// exact enumerates every pattern that a better plan within the node's box
// could use and settles the box over them. It reports false when there are
// more than most patterns or the branch and bound takes more than nodes.
func (s *search) exact(n node, most, nodes int) (*Proof, bool) {
	pats, ok := s.enumerate(n, s.slack(n), most)
	if !ok {
		return nil, false
	}
	p := newProgram(s, pats, nodes)
	proof, ok := p.explore(n.box)
	if !ok {
		return nil, false
	}
	return &Proof{Kind: ProofFixing, Item: n.duals.item, Class: n.duals.class, Low: proof}, true
}

// slack is what a plan within the goal may cost beyond a node's bound.
func (s *search) slack(n node) int64 { return s.goal*s.scaling.scale - n.bound }

// sample looks for a better plan over the patterns of least reduced cost, as
// many as the limit allows. It proves nothing.
func (s *search) sample(n node, most, nodes int) {
	for slack := s.slack(n); slack > 0; slack /= 2 {
		pats, ok := s.enumerate(n, slack, most)
		if ok {
			newProgram(s, pats, nodes).explore(n.box)
			return
		}
	}
}

// enumerate lists the maximal patterns whose reduced cost is at most slack
// (reduced cost fixing, when slack is all that a plan within the goal may cost
// beyond the bound). It reports false when there are more than most.
func (s *search) enumerate(n node, slack int64, most int) ([]pattern, bool) {
	var pats []pattern
	ok, price := true, s.in.prices(n.duals, s.scaling.scale)
	knap := s.in.pricer(s.demand, s.steps)
	s.steps.toll(s.in.filling())
	knap.price(n.duals.item, func(class int, _ int64) {
		if ok {
			steps := s.steps.atMost(200 * most)
			done, spent := knap.enumerate(price[class]-slack, &pats, most, steps)
			ok = done
			s.steps.Visits += spent
			s.steps.cut(!done && steps < 200*most)
		}
	})
	s.steps.Patterns += len(pats)
	return pats, ok
}
