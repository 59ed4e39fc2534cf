package cutting

import (
	"cmp"
	"slices"
)

// lying says which orientation a level heuristic uses for every kind.
type lying int

const (
	asGiven lying = iota // unturned where that fits
	flat                 // the lower strip
	tall                 // the taller strip, which holds more
)

func (in *instance) lie(l lying, k kind) shape {
	first, last := k.shapes[0], k.shapes[len(k.shapes)-1]
	switch l {
	case flat:
		return first
	case tall:
		return last
	}
	if last.across == k.across {
		return last
	}
	return first
}

// level is a run of equal strips being filled.
type level struct {
	run
	room int
}

// firstFit is the first-fit decreasing height heuristic: the kinds from tall
// to low, wider first, each piece into the first strip that has room. Strips
// filled alike are kept together, so that the work does not grow with the
// number of pieces.
func (in *instance) firstFit(l lying, demand []int) plan {
	order := make([]int, len(in.kinds))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		sa, sb := in.lie(l, in.kinds[a]), in.lie(l, in.kinds[b])
		return cmp.Or(cmp.Compare(sb.class, sa.class), cmp.Compare(sb.width, sa.width))
	})
	var levels []level
	for _, i := range order {
		levels = in.place(levels, i, in.lie(l, in.kinds[i]), demand[i])
	}
	var p plan
	for _, v := range levels {
		p = append(p, v.run)
	}
	return p
}

// place puts n pieces of kind i on the levels and opens new ones as needed.
func (in *instance) place(levels []level, i int, s shape, n int) []level {
	var out []level
	for _, v := range levels {
		width := in.fit(i, v.class).width
		per := v.room / width
		if per == 0 || n == 0 {
			out = append(out, v)
			continue
		}
		full := min(v.times, n/per)
		n -= full * per
		out = appendLevel(out, v, i, per, width, full)
		rest := v.times - full
		if rest > 0 && n > 0 {
			out = appendLevel(out, v, i, n, width, 1)
			n, rest = 0, rest-1
		}
		out = appendLevel(out, v, i, 0, width, rest)
	}
	empty := level{run{pattern{class: s.class, count: make([]int, len(in.kinds))}, 0}, in.width}
	per := in.width / s.width
	out = appendLevel(out, empty, i, per, s.width, n/per)
	if n%per > 0 {
		out = appendLevel(out, empty, i, n%per, s.width, 1)
	}
	return out
}

func appendLevel(out []level, v level, i, n, width, times int) []level {
	if times == 0 {
		return out
	}
	v.count = slices.Clone(v.count)
	v.count[i] += n
	v.room -= n * width
	v.times = times
	return append(out, v)
}

// ownLevels is the plain method: every kind in strips of its own, in the
// orientation that takes less length.
func (in *instance) ownLevels(demand []int) plan {
	var p plan
	for i, k := range in.kinds {
		var best shape
		least := int64(-1)
		for _, s := range k.shapes {
			if n := in.heights[s.class] * int64(ceilDiv(demand[i], in.width/s.width)); least < 0 || n <= least {
				best, least = s, n
			}
		}
		per := in.width / best.width
		for _, c := range []struct{ n, times int }{{per, demand[i] / per}, {demand[i] % per, min(1, demand[i]%per)}} {
			q := pattern{class: best.class, count: make([]int, len(in.kinds))}
			q.count[i] = c.n
			p = append(p, run{q, c.times})
		}
	}
	return p
}

// startPlan is the best of the plans that no search is needed for.
func (in *instance) startPlan(demand []int) plan {
	if in.sheets != nil {
		return in.startSheets(demand)
	}
	if in.stock != nil {
		return in.startStocks(demand)
	}
	best := in.tidy(in.ownLevels(demand), demand)
	for _, l := range []lying{asGiven, flat, tall} {
		p := in.tidy(in.firstFit(l, demand), demand)
		if a, b := in.length(p), in.length(best); a < b || a == b && p.strips() < best.strips() {
			best = p
		}
	}
	return best
}
