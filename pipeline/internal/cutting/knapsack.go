package cutting

import (
	"cmp"
	"slices"
)

// knapsack prices strips: for values of the kinds it finds the best strip of
// every class, a bounded knapsack over the strip's width (Gilmore and Gomory
// 1965, as generally described). It is exact: values are scaled integers.
//
// A class differs from the one below it by the kinds that appear or turn
// there. Kinds are kept in the order in which they come to rest, so that the
// tables of those that are at rest serve all taller classes.
type knapsack struct {
	in    *instance
	cap   []int     // most copies of a kind in one strip
	order []int     // kinds by the class of their last shape
	table [][]int64 // table[t+1][c]: best of the first t+1 kinds of order in width c
	store [][]int64
	value []int64
	width []int // by position of order: width at the present class, 0 while absent
	class int
	safe  *knapsack // whose tables promise too little, where these promise too much; nil where they are exact
}

func newKnapsack(in *instance, demand []int) *knapsack {
	k := &knapsack{in: in, cap: demand}
	for i := range in.kinds {
		if demand[i] > 0 {
			k.order = append(k.order, i)
		}
	}
	rest := func(i int) int { return in.kinds[i].shapes[len(in.kinds[i].shapes)-1].class }
	slices.SortStableFunc(k.order, func(a, b int) int {
		return cmp.Or(cmp.Compare(rest(a), rest(b)), cmp.Compare(in.kinds[a].shapes[0].class, in.kinds[b].shapes[0].class))
	})
	k.store = make([][]int64, len(k.order)+1)
	for t := range k.store {
		k.store[t] = make([]int64, in.columns())
	}
	k.table = make([][]int64, len(k.order)+1)
	k.width = make([]int, len(k.order))
	if in.cells.above {
		below := *in
		below.cells.above = false
		k.safe = newKnapsack(&below, demand)
	}
	return k
}

// price visits the classes from low to high with the best value of a strip of
// each. During a visit best and enumerate read the tables of that class.
func (k *knapsack) price(value []int64, visit func(class int, best int64)) {
	k.begin(value)
	for class := range k.in.heights {
		k.rise(class)
		visit(class, k.table[len(k.order)][k.in.cells.at(k.in.room(class))])
	}
}

// begin empties the tables for new values.
func (k *knapsack) begin(value []int64) {
	if k.safe != nil {
		k.safe.begin(value)
	}
	k.value = value
	k.table[0] = k.store[0]
	clear(k.width)
}

// rise fills the tables for a class, all lower ones having been done.
func (k *knapsack) rise(class int) {
	if k.safe != nil {
		k.safe.rise(class)
	}
	k.class = class
	changed := len(k.order)
	for t := len(k.order) - 1; t >= 0; t-- {
		w := 0
		if s := k.in.fit(k.order[t], class); s != nil {
			w = s.width
		}
		if w != k.width[t] || class == 0 {
			k.width[t], changed = w, t
		}
	}
	for t := changed; t < len(k.order); t++ {
		k.step(t)
	}
}

// step adds the kind at position t to the table before it.
func (k *knapsack) step(t int) {
	w, v, n := k.width[t], k.value[k.order[t]], k.cap[k.order[t]]
	if w == 0 || v <= 0 {
		k.table[t+1] = k.table[t]
		return
	}
	cur := k.store[t+1]
	copy(cur, k.table[t])
	k.table[t+1] = cur
	if k.in.cells.room != nil {
		k.in.cells.add(cur, w, v, n)
		return
	}
	if n >= k.in.width/w {
		for c := w; c <= k.in.width; c++ {
			if u := cur[c-w] + v; u > cur[c] {
				cur[c] = u
			}
		}
		return
	}
	for part := 1; n > 0; part *= 2 { // copies in bundles of 1, 2, 4, ...
		part = min(part, n)
		n -= part
		bw, bv := part*w, int64(part)*v
		for c := k.in.width; c >= bw; c-- {
			if u := cur[c-bw] + bv; u > cur[c] {
				cur[c] = u
			}
		}
	}
}

// best is a best strip of the class being visited, filled up with whatever
// still fits.
func (k *knapsack) best() pattern {
	if k.safe != nil {
		return k.safe.best()
	}
	p := pattern{class: k.class, count: make([]int, len(k.in.kinds))}
	room := k.in.room(k.class)
	for t := len(k.order) - 1; t >= 0; t-- {
		w, v := k.width[t], k.value[k.order[t]]
		if w == 0 || v <= 0 {
			continue
		}
		n := k.often(t, room)
		p.count[k.order[t]] = n
		room -= n * w
	}
	k.fill(&p, room)
	return p
}

// often is how often the kind at position t is in a best strip of the kinds up
// to it.
func (k *knapsack) often(t, room int) int {
	w, v := k.width[t], k.value[k.order[t]]
	promised, most, often := k.table[t+1][k.in.cells.at(room)], int64(-1), 0
	for n := 0; n <= min(room/w, k.cap[k.order[t]]) && most < promised; n++ {
		if got := k.table[t][k.in.cells.at(room-n*w)] + int64(n)*v; got > most {
			most, often = got, n
		}
	}
	return often
}

// fill adds kinds while any fits, so that the pattern is maximal.
func (k *knapsack) fill(p *pattern, room int) {
	for t := len(k.order) - 1; t >= 0; t-- {
		i := k.order[t]
		if w := k.width[t]; w > 0 {
			n := min(room/w, k.cap[i]-p.count[i])
			p.count[i] += n
			room -= n * w
		}
	}
}
