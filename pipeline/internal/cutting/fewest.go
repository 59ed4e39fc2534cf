package cutting

import "slices"

// fewestStrips looks for a plan of the same length with fewer strips. The
// length times a large factor plus the number of strips is the length of
// another strip problem, so the same search serves; it is given little work
// and proves nothing.
func (s *search) fewestStrips() {
	n := s.best.strips()
	factor := int64(n + 1)
	if s.length > 1<<40/factor {
		return
	}
	in := *s.in
	in.heights = slices.Clone(s.in.heights)
	for k := range in.heights {
		in.heights[k] = in.heights[k]*factor + 1
	}
	sub := newSearch(&in, s.demand, s.limits, s.steps, s.best, sums{})
	sub.budget = s.steps.Visits + s.polish()
	s.steps.apart(func() {
		t := newTree(sub, sub.master())
		t.run(3, min(800, s.limits.Patterns), min(150, s.limits.Nodes))
	})
	if s.in.length(sub.best) == s.length && sub.best.strips() < n {
		s.best = s.in.tidy(sub.best, s.demand)
	}
}

// polish is how many visits go into fewer strips: as many as where all is allowed,
// unless less was already too little for the length.
func (s *search) polish() int {
	if s.limits.limited && !s.steps.short {
		return defaultLimits(len(s.in.kinds)).Visits / 100
	}
	return s.limits.Visits / 100
}

// fewestPatterns merges runs of strips while two of them can be cut alike:
// same total height, fewer ruler settings. A strip of one size only is left as it
// is, since it takes no setting of its own and leaves a better offcut.
func (in *instance) fewestPatterns(p plan, demand []int) plan {
	fewest := p
	p = slices.Clone(p)
	for again := true; again; {
		again = false
		for a := 0; a < len(p) && !again; a++ {
			for b := a + 1; b < len(p) && !again; b++ {
				if r, ok := in.alike(p[a], p[b]); ok {
					p = slices.Delete(p, b, b+1)
					p[a] = r
					again = true
				}
			}
		}
	}
	if p = in.tidy(p, demand); len(p) < len(fewest) && p.strips() <= fewest.strips() {
		return p
	}
	return fewest
}

// alike finds one pattern that does for two runs of a class, if there is one:
// it must hold its share of what both hold.
func (in *instance) alike(a, b run) (run, bool) {
	if a.class != b.class || len(a.terms()) < 2 || len(b.terms()) < 2 {
		return run{}, false
	}
	times := a.times + b.times
	q := pattern{class: a.class, count: make([]int, len(a.count))}
	for i := range q.count {
		q.count[i] = ceilDiv(a.count[i]*a.times+b.count[i]*b.times, times)
	}
	return run{q, times}, in.fits(q, a.class)
}
