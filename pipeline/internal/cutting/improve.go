package cutting

import (
	"math"
	"slices"
)

// dive builds a plan from the linear program: take the whole part of every
// pattern's use, or one more of the largest where none is whole, and price
// again for what remains.
func (s *search) dive(seed []pattern) {
	left := slices.Clone(s.demand)
	var p plan
	for pieces(left) > 0 && !s.spent() {
		in := s.in.after(p)
		m := newMaster(in, left, s.length, []plan{in.startPlan(left)}, s.steps)
		m.budget = s.budget
		for _, q := range seed {
			m.add(capped(q, left))
		}
		m.generate(in.rootBox(s.length), math.MaxInt32)
		taken := m.wholePart()
		for _, r := range taken {
			subtract(left, r)
		}
		p = append(p, taken...)
		seed = m.pool
		if s.in.length(p) >= s.length {
			return
		}
	}
	if s.in.covers(p, s.demand) {
		s.offer(p)
	}
}

func pieces(d []int) int {
	n := 0
	for _, v := range d {
		n += v
	}
	return n
}

func subtract(left []int, r run) {
	for i, n := range r.count {
		left[i] = max(0, left[i]-n*r.times)
	}
}

// capped is a pattern without the pieces that are no longer needed.
func capped(q pattern, left []int) pattern {
	c := q
	c.count = slices.Clone(q.count)
	for i := range c.count {
		c.count[i] = min(c.count[i], left[i])
	}
	return c
}

// wholePart is the integer part of the master's solution, or one strip of the
// most used pattern.
func (m *master) wholePart() plan {
	var p plan
	best, most := 0, -1.0
	for t, q := range m.pool {
		x := m.x(t)
		if n := int(math.Floor(x + integral)); n > 0 {
			p = append(p, run{q, n})
		}
		if x > most+integral {
			best, most = t, x
		}
	}
	if p == nil {
		p = plan{{m.pool[best], 1}}
	}
	return p
}

// localSearch releases some strips, the wasteful ones first, and solves what
// they held anew, so many times: mostly a handful, and every fourth time a few
// dozen, which are only dived for. It stops early when nothing has come of it
// for long.
func (s *search) localSearch(rounds int) {
	random := lcg(1)
	idle := 0
	for ; rounds > 0 && idle < patient && s.goal >= 0 && !s.spent() && !s.met(); rounds-- {
		s.steps.Rounds++
		idle++
		size := handful - 4 + random.below(4)
		if rounds%4 == 0 {
			size = 20 + random.below(16)
		}
		kept, freed := s.release(&random, size)
		if len(freed) == 0 {
			return
		}
		left := slices.Clone(s.demand)
		for _, r := range kept {
			subtract(left, r)
		}
		if better, ok := s.resolve(left, kept, freed); ok {
			if s.offer(append(kept, better...)) {
				idle = 0
			}
		}
	}
}

// met reports whether the best plan needs no more than what is to be settled.
func (s *search) met() bool {
	return s.limits.Settle > 0 && s.length <= int64(s.limits.Settle)
}

// resolve looks for a shorter plan than the known one for a part of the
// demands, beside the strips that are kept.
func (s *search) resolve(left []int, kept, known plan) (plan, bool) {
	sub := newSearch(s.in.after(kept), left, s.limits, s.steps, s.in.tidy(known, left), s.sums)
	start := sub.length
	t := newTree(sub, sub.master())
	n := t.open[0]
	if !s.in.tighten(n.box, sub.goal) {
		return nil, false
	}
	t.price(n)
	switch {
	case sub.closed(n.bound):
	case known.strips() >= handful:
		sub.dive(t.m.pool)
	default:
		sub.sample(n.node, 300, 60)
	}
	return sub.best, sub.length < start
}

// lcg is Knuth's 64-bit linear congruential generator (MMIX; constants from
// memory). Its seed is a constant: equal problems get equal plans.
type lcg uint64

func (g *lcg) below(n int) int {
	*g = *g*6364136223846793005 + 1442695040888963407
	return int(uint64(*g) >> 33 % uint64(n))
}

// Fewer strips than a handful are few enough to try combinations of patterns;
// patient is how many rounds in a row may bring nothing.
const (
	handful = 12
	patient = 200
)

// release splits the best plan into strips that stay and so many that are
// solved anew: half of them the most wasteful not yet chosen, the rest random.
func (s *search) release(random *lcg, size int) (kept, freed plan) {
	var single []pattern
	for _, r := range s.best {
		for n := 0; n < min(r.times, 9); n++ {
			single = append(single, r.pattern)
		}
	}
	size = min(len(single), size)
	slices.SortStableFunc(single, func(a, b pattern) int { return int(s.in.waste(b) - s.in.waste(a)) })
	chosen := make([]bool, len(single))
	for n := 0; n < size; n++ {
		t := random.below(len(single))
		if n%2 == 0 {
			t = random.below(max(1, len(single)/3))
		}
		for chosen[t] {
			t = (t + 1) % len(single)
		}
		chosen[t] = true
		freed = append(freed, run{single[t], 1})
	}
	freed = merged(freed)
	kept = slices.Clone(s.best)
	for _, f := range freed {
		for t := range kept {
			if comparePatterns(kept[t].pattern, f.pattern) == 0 {
				kept[t].times -= f.times
			}
		}
	}
	return merged(kept), freed
}

// waste is the area of a strip that its pieces leave, in normalised units.
func (in *instance) waste(q pattern) int64 {
	if in.sheets != nil {
		return in.sheetWaste(q)
	}
	if in.stock != nil {
		return int64(in.left(q))
	}
	area := int64(in.width) * in.heights[q.class]
	for i, n := range q.count {
		if n > 0 {
			s := in.fit(i, q.class)
			area -= int64(n) * int64(s.width) * in.heights[s.class]
		}
	}
	return area
}
