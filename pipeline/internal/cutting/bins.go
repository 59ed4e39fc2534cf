package cutting

import "slices"

// sheetAxes are the two strip problems in a sheet: strips across it, and strips
// along it with the roles of the sides exchanged. Both have the same kinds in
// the same order. A sheet is a stack of strips no taller than limit, so the
// problem of fewest sheets is that of Gilmore and Gomory's two-stage cutting
// stock with one stock size, the first cuts free to go either way.
type sheetAxes struct {
	axis  [2]*instance
	limit [2]int64
}

// sheetStrips is how a sheet is cut: its strips, across or along.
type sheetStrips struct {
	axis  int
	strip []pattern
}

// sheetKnapsack prices sheets: strips by the strip knapsack of each axis, then
// a knapsack over the other side for the best stack of them.
type sheetKnapsack struct {
	in     *instance
	demand []int
	stack  [2]*stackKnapsack
	value  []int64
	steps  *meter
}

type stackKnapsack struct {
	in    *instance
	knap  *knapsack
	limit int
	worth []int64   // by class: best strip
	strip []pattern // by class
	table []int64   // by height: best stack
}

func newSheetKnapsack(in *instance, demand []int, steps *meter) *sheetKnapsack {
	s := &sheetKnapsack{in: in, demand: demand, steps: steps}
	for a, axis := range in.sheets.axis {
		s.stack[a] = &stackKnapsack{
			in: axis, knap: newKnapsack(axis, demand), limit: int(in.sheets.limit[a]),
			worth: make([]int64, len(axis.heights)), strip: make([]pattern, len(axis.heights)),
			table: make([]int64, in.sheets.limit[a]+1),
		}
	}
	return s
}

func (s *sheetKnapsack) price(value []int64, visit func(class int, best int64)) {
	s.value = value
	most := int64(0)
	for _, k := range s.stack {
		most = max(most, k.price(value))
	}
	visit(0, most)
}

func (k *stackKnapsack) price(value []int64) int64 {
	k.knap.price(value, func(class int, best int64) {
		k.worth[class], k.strip[class] = best, k.knap.best()
	})
	for h := 1; h <= k.limit; h++ {
		k.table[h] = k.table[h-1]
		for class, tall := range k.in.heights {
			if tall > int64(h) {
				break
			}
			k.table[h] = max(k.table[h], k.table[h-int(tall)]+k.worth[class])
		}
	}
	return k.table[k.limit]
}

func (s *sheetKnapsack) best() pattern {
	a := 0
	if s.stack[1].table[s.stack[1].limit] > s.stack[0].table[s.stack[0].limit] {
		a = 1
	}
	best := s.in.sheet(a, s.stack[a].best(), s.demand)
	if worth(best, s.value) == s.stack[a].table[s.stack[a].limit] {
		return best
	}
	for a, k := range s.stack { // it held more of some kind than is wanted
		if q := s.in.sheet(a, k.frugal(s.value, s.demand, s.steps), s.demand); worth(q, s.value) > worth(best, s.value) {
			best = q
		}
	}
	return best
}

// frugal builds a stack strip by strip, pricing again after each for what is
// still wanted.
func (k *stackKnapsack) frugal(value []int64, demand []int, steps *meter) []pattern {
	left := slices.Clone(demand)
	var strips []pattern
	for room := int64(k.limit); ; {
		var best pattern
		most, tall := int64(0), int64(1)
		steps.toll(4*k.in.pricing() + k.in.pricing()/2)
		knap := newKnapsack(k.in, left)
		knap.price(value, func(class int, worth int64) {
			h := k.in.heights[class]
			if h <= room && worth > 0 && worth*tall > most*h {
				best, most, tall = knap.best(), worth, h
			}
		})
		if most == 0 {
			return strips
		}
		strips = append(strips, best)
		subtract(left, run{best, 1})
		room -= tall
	}
}

// best reads a best stack off the table.
func (k *stackKnapsack) best() []pattern {
	var strips []pattern
	for h := k.limit; h > 0; {
		if k.table[h] == k.table[h-1] {
			h--
			continue
		}
		for class, tall := range k.in.heights {
			if tall <= int64(h) && k.table[h] == k.table[h-int(tall)]+k.worth[class] {
				strips = append(strips, k.strip[class])
				h -= int(tall)
				break
			}
		}
	}
	return strips
}

// sheet is the pattern of a stack of strips; it counts no more of a kind than
// is wanted in all, and no odd ones of a kind whose pieces must match.
func (in *instance) sheet(axis int, strips []pattern, demand []int) pattern {
	p := pattern{count: make([]int, len(in.kinds)), strips: &sheetStrips{axis, strips}}
	for _, q := range strips {
		for i, n := range q.count {
			p.count[i] = min(demand[i], p.count[i]+n)
		}
	}
	for i, k := range in.kinds {
		p.count[i] -= p.count[i] % k.together
	}
	return p
}

// single is the fullest sheet of one kind, of the first kind still wanted.
func (s *sheetKnapsack) single(int) pattern {
	for i, d := range s.demand {
		if d > 0 {
			return s.in.ownSheet(i, s.demand)
		}
	}
	return pattern{count: make([]int, len(s.in.kinds))}
}

// enumerate lists the sheets that no other sheet contains.
func (s *sheetKnapsack) enumerate(need int64, out *[]pattern, most, steps int) (done bool, spent int) {
	var all []pattern
	for a, k := range s.stack {
		e := stackEnumeration{k: k, demand: s.demand, value: s.value, need: need, steps: steps / 10, meter: s.steps}
		stacks, ok := e.run()
		spent += steps/10 - e.steps
		if !ok {
			return false, 8 * spent
		}
		for _, strips := range stacks {
			all = append(all, s.in.sheet(a, strips, s.demand))
		}
	}
	compared := len(all)
	if all, done = undominated(all, most-len(*out), s.steps); !done {
		return false, 8*spent + compared*most/8
	}
	*out = append(*out, all...)
	return len(*out) <= most, 8*spent + len(all)*len(*out)/8
}

// undominated drops patterns that another one contains; of equal ones the
// first stays. It reports false once there are more than most.
func undominated(all []pattern, most int, steps *meter) ([]pattern, bool) {
	slices.SortStableFunc(all, func(a, b pattern) int { return sum(b.count) - sum(a.count) })
	var kept []pattern
	for _, p := range all {
		if !slices.ContainsFunc(kept, func(q pattern) bool { return contains(q.count, p.count) }) {
			kept = append(kept, p)
		}
		steps.toll(len(kept) / 16)
		if len(kept) > most || steps.halted(0) {
			return nil, false
		}
	}
	return kept, true
}

func contains(big, small []int) bool {
	for i, n := range small {
		if n > big[i] {
			return false
		}
	}
	return true
}

func sum(count []int) int {
	n := 0
	for _, v := range count {
		n += v
	}
	return n
}
