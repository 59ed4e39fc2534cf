package cutting

import (
	"cmp"
	"slices"
)

// pattern is one way to cut a strip of some class: counts by kind. It may
// hold more of a kind than is needed. For sheets it is one way to cut a whole
// sheet, and strips says how; with stacks it is a strip of columns.
type pattern struct {
	class  int
	count  []int
	strips *sheetStrips
	stacks []int // counts of kinds and stacks behind count, in a three-stage plan
}

// run is a pattern used so many times.
type run struct {
	pattern
	times int
}

// plan is a set of strips that covers the demands.
type plan []run

func (in *instance) length(p plan) int64 {
	var sum int64
	for _, r := range p {
		sum += in.heights[r.class] * int64(r.times)
	}
	return sum
}

func (p plan) strips() int {
	n := 0
	for _, r := range p {
		n += r.times
	}
	return n
}

// tidy puts a plan in its one order, merges equal runs, trims what is not
// needed and lowers strips whose tall pieces were trimmed. The result covers
// exactly the demands.
func (in *instance) tidy(p plan, demand []int) plan {
	p = merged(p)
	left := slices.Clone(demand)
	var out plan
	for _, r := range p {
		for times := r.times; times > 0; {
			q, n := take(r.pattern, left, times)
			if q.count != nil {
				q.class = in.lowest(q)
				out = append(out, run{q, n})
			}
			times -= n
		}
	}
	return merged(out)
}

// take trims a pattern to what is left of the demands, says how often it can
// be repeated so, and takes that away; a nil count means nothing was needed.
func take(p pattern, left []int, times int) (pattern, int) {
	q := pattern{class: p.class, count: make([]int, len(p.count)), strips: p.strips, stacks: p.stacks}
	n, useful := times, false
	for i, c := range p.count {
		if q.count[i] = min(c, left[i]); q.count[i] > 0 {
			useful = true
			if q.count[i] == c {
				n = min(n, left[i]/c)
			} else {
				n = 1
			}
		}
	}
	if !useful {
		return pattern{}, times
	}
	for i := range left {
		left[i] -= q.count[i] * n
	}
	return q, n
}

// lowest is the lowest class in which the pattern still fits across the width.
func (in *instance) lowest(p pattern) int {
	if in.stock != nil {
		return p.class // others may be used up
	}
	for class := 0; class < p.class; class++ {
		if in.fits(p, class) {
			return class
		}
	}
	return p.class
}

func (in *instance) fits(p pattern, class int) bool {
	room := in.room(class)
	for i, c := range p.count {
		if c == 0 {
			continue
		}
		s := in.fit(i, class)
		if s == nil {
			return false
		}
		room -= s.width * c
	}
	return room >= 0
}

// comparePatterns puts taller strips first, then those with more of the first
// kinds.
func comparePatterns(a, b pattern) int {
	return cmp.Or(cmp.Compare(b.class, a.class), slices.Compare(b.count, a.count))
}

func merged(p plan) plan {
	p = slices.Clone(p)
	slices.SortStableFunc(p, func(a, b run) int { return comparePatterns(a.pattern, b.pattern) })
	var out plan
	for _, r := range p {
		if r.times == 0 {
			continue
		}
		if n := len(out); n > 0 && comparePatterns(out[n-1].pattern, r.pattern) == 0 {
			out[n-1].times += r.times
			continue
		}
		out = append(out, r)
	}
	return out
}
