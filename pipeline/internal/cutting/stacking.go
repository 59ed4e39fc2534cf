package cutting

import "slices"

// stackEnumeration lists the stacks of strips worth at least need that are not
// contained in another, by dynamic programming over the height used: the
// states at a height are the different contents reached there, less those
// that another one contains.
type stackEnumeration struct {
	k      *stackKnapsack
	demand []int
	value  []int64
	need   int64
	steps  int // states and comparisons still allowed
	meter  *meter
	levels [][]*stackState
	heads  []map[string]bool
}

type stackState struct {
	count []int
	from  *stackState
	strip int // of the strips listed
}

// run lists the stacks, or reports false when the limit cuts it short.
func (e *stackEnumeration) run() ([][]pattern, bool) {
	strips, ok := e.strips()
	if !ok {
		return nil, false
	}
	e.levels = make([][]*stackState, e.k.limit+1)
	e.heads = make([]map[string]bool, e.k.limit+1)
	e.levels[0] = []*stackState{{count: make([]int, len(e.demand))}}
	for t, p := range strips {
		tall := int(e.k.in.heights[p.class])
		for h := 0; h+tall <= e.k.limit; h++ {
			e.meter.toll(8 * len(e.levels[h]))
			if len(e.levels[h]) > 0 && e.meter.halted(0) {
				return nil, false
			}
			for n := 0; n < len(e.levels[h]); n++ {
				if !e.extend(e.levels[h][n], t, p, h+tall) {
					return nil, false
				}
			}
		}
	}
	return e.finished(strips), true
}

// strips lists the strips that can be part of a stack worth enough.
func (e *stackEnumeration) strips() ([]pattern, bool) {
	var all []pattern
	ok := true
	e.k.knap.price(e.value, func(class int, _ int64) {
		if tall := int(e.k.in.heights[class]); tall <= e.k.limit {
			if !ok {
				return
			}
			done, spent := e.k.knap.enumerate(e.need-e.k.table[e.k.limit-tall], &all, e.steps, e.steps)
			ok, e.steps = done, e.steps-spent/4
		}
	})
	slices.SortStableFunc(all, func(a, b pattern) int { return b.class - a.class })
	return all, ok
}

// extend puts one more strip on a stack.
func (e *stackEnumeration) extend(s *stackState, t int, p pattern, h int) bool {
	count := make([]int, len(s.count))
	worth, more := e.k.table[e.k.limit-h], false
	for i, n := range s.count {
		count[i] = min(e.demand[i], n+p.count[i])
		more = more || count[i] > n
		worth += int64(count[i]) * e.value[i]
	}
	if !more || worth < e.need {
		return true
	}
	key := patternKey(pattern{count: count})
	if e.heads[h] == nil {
		e.heads[h] = map[string]bool{}
	}
	if e.heads[h][key] {
		return true
	}
	if e.steps -= 1 + len(e.levels[h])/8; e.steps < 0 {
		return false
	}
	for _, other := range e.levels[h] {
		if contains(other.count, count) {
			return true
		}
	}
	e.heads[h][key] = true
	e.levels[h] = append(e.levels[h], &stackState{count, s, t})
	return true
}

// finished reads the stacks that leave no room for a further strip, or hold
// all that is wanted.
func (e *stackEnumeration) finished(strips []pattern) [][]pattern {
	var out [][]pattern
	least := int(e.k.in.heights[0])
	for h, level := range e.levels {
		for _, s := range level {
			if h+least <= e.k.limit && !slices.Equal(s.count, e.demand) && e.extendable(s, strips, h) {
				continue
			}
			var stack []pattern
			for t := s; t.from != nil; t = t.from {
				stack = append(stack, strips[t.strip])
			}
			slices.Reverse(stack)
			out = append(out, stack)
		}
	}
	return out
}

// extendable reports whether a strip that adds something still fits.
func (e *stackEnumeration) extendable(s *stackState, strips []pattern, h int) bool {
	for _, p := range strips {
		if h+int(e.k.in.heights[p.class]) > e.k.limit {
			continue
		}
		for i, n := range p.count {
			if n > 0 && s.count[i] < e.demand[i] {
				return true
			}
		}
	}
	return false
}
