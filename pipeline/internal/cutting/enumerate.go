package cutting

// enumeration collects all maximal patterns of a class that are worth at least
// need, by depth-first search over the tables of the knapsack just solved. It
// gives up, and says so, beyond so many patterns or so many steps.
type enumeration struct {
	k     *knapsack
	need  int64
	count []int
	out   *[]pattern
	most  int // patterns still allowed
	steps int // search steps still allowed
}

// enumerate appends the maximal patterns of the class being visited that have
// a piece as tall as the class (any, where classes are stocks) and are worth at least need; false means that
// the limits cut it short.
func (k *knapsack) enumerate(need int64, out *[]pattern, most, steps int) (done bool, spent int) {
	e := enumeration{k: k, need: need, out: out, most: most - len(*out), steps: steps,
		count: make([]int, len(k.in.kinds))}
	done = e.search(len(k.order)-1, k.in.room(k.class), 0, k.in.stock != nil)
	return done, steps - e.steps
}

// search fixes the kind at position t and, through recursion, those before it;
// tall says that a piece of the class's own height is among those fixed.
func (e *enumeration) search(t, room int, value int64, tall bool) bool {
	if e.steps--; e.steps < 0 {
		return false
	}
	if value+e.k.table[t+1][e.k.in.cells.at(room)] < e.need {
		return true
	}
	if t < 0 {
		return !tall || !e.maximal(room) || e.keep()
	}
	i := e.k.order[t]
	w, v := e.k.width[t], e.k.value[i]
	if w == 0 {
		return e.search(t-1, room, value, tall)
	}
	own := e.k.in.fit(i, e.k.class).class == e.k.class
	for n := min(room/w, e.k.cap[i]); n >= 0; n-- {
		e.count[i] = n
		if !e.search(t-1, room-n*w, value+int64(n)*v, tall || own && n > 0) {
			return false
		}
	}
	e.count[i] = 0
	return true
}

// maximal reports whether no further piece fits beside those chosen.
func (e *enumeration) maximal(room int) bool {
	for t, i := range e.k.order {
		if w := e.k.width[t]; w > 0 && w <= room && e.count[i] < e.k.cap[i] {
			return false
		}
	}
	return true
}

func (e *enumeration) keep() bool {
	if e.most--; e.most < 0 {
		return false
	}
	*e.out = append(*e.out, pattern{class: e.k.class, count: append([]int(nil), e.count...)})
	return true
}
