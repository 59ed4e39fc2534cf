package cutting

import (
	"cmp"
	"slices"

	"yardproof/schema/measure"
)

// stackColumns adds a third stage to a strip problem: columns of two to four
// pieces of one width, one below the other in a strip, are further kinds of a
// wider instance, whose strip knapsack is the one of two stages.
type stackColumns struct {
	wide   *instance // the kinds, then the columns
	column [][]int   // by column: counts by kind

	listed [][]int // while growing: counts, heights and widths
	tall   []int64
	width  []shape
}

const inch = measure.Length(203200)

// mostColumns keeps the wider knapsack small; it holds all columns of most
// quilts.
const (
	mostColumns = 160
	mostStacked = 4
	mostHeights = 16
)

// withStacks is the instance with columns, no taller than limit, and with
// strips of their heights.
func (in *instance) withStacks(limit int64) *instance {
	s := &stackColumns{}
	for _, w := range in.widths() {
		s.grow(in, w, limit, make([]int, len(in.kinds)), 0, 0, 0)
	}
	out := *in
	out.stacks = s
	out.heights = slices.Clone(in.heights)
	for _, h := range s.tall {
		if !slices.Contains(out.heights, h) && len(out.heights) < len(in.heights)+mostHeights {
			out.heights = append(out.heights, h)
		}
	}
	slices.Sort(out.heights)
	out.kinds = nil
	for _, k := range in.kinds {
		k.shapes = slices.Clone(k.shapes)
		for t := range k.shapes {
			k.shapes[t].class = out.classOf(in.heights[k.shapes[t].class])
		}
		out.kinds = append(out.kinds, k)
	}
	wide := out
	wide.stacks, wide.kinds = nil, slices.Clone(out.kinds)
	for t, h := range s.tall {
		if class := out.classOf(h); class < len(out.heights) {
			wide.kinds = append(wide.kinds, kind{shapes: []shape{{width: s.width[t].width, class: class, across: s.width[t].across}}})
			s.column = append(s.column, s.listed[t])
		}
	}
	s.wide = &wide
	return &out
}

// rise moves a plan to an instance with more classes.
func (in *instance) rise(p plan, from *instance) plan {
	p = slices.Clone(p)
	for t := range p {
		p[t].class = in.classOf(from.heights[p[t].class])
	}
	return p
}

// widths are the widths of shapes, wide first: those columns save most.
func (in *instance) widths() []shape {
	var w []shape
	for _, k := range in.kinds {
		for _, s := range k.shapes {
			s.class = 0
			w = append(w, s)
		}
	}
	slices.SortFunc(w, func(a, b shape) int { return cmp.Compare(b.across, a.across) })
	return slices.Compact(w)
}

// grow lists the columns of width w from kind i on.
func (s *stackColumns) grow(in *instance, w shape, limit int64, count []int, i, n int, tall int64) {
	if len(s.listed) >= mostColumns {
		return
	}
	if n >= 2 {
		s.listed, s.tall, s.width = append(s.listed, slices.Clone(count)), append(s.tall, tall), append(s.width, w)
	}
	if n == mostStacked {
		return
	}
	for ; i < len(in.kinds); i++ {
		if slices.ContainsFunc(in.kinds[i].from, func(f source) bool { return f.strip }) {
			continue // the end of a joined length is used as it is
		}
		for _, q := range in.kinds[i].shapes {
			h := in.heights[q.class]
			if q.across != w.across || tall+h > limit || count[i] == in.kinds[i].demand {
				continue
			}
			count[i]++
			s.grow(in, w, limit, count, i, n+1, tall+h)
			count[i]--
		}
	}
}

// stackedKnapsack prices strips of single pieces and columns.
type stackedKnapsack struct {
	in     *instance
	demand []int
	inner  *knapsack
}

func newStackedKnapsack(in *instance, demand []int) *stackedKnapsack {
	wanted := slices.Clone(demand)
	for _, c := range in.stacks.column {
		n := -1
		for i, v := range c {
			if v > 0 && (n < 0 || demand[i]/v < n) {
				n = demand[i] / v
			}
		}
		wanted = append(wanted, n)
	}
	return &stackedKnapsack{in, demand, newKnapsack(in.stacks.wide, wanted)}
}

func (k *stackedKnapsack) price(value []int64, visit func(class int, best int64)) {
	all := slices.Clone(value)
	for _, c := range k.in.stacks.column {
		v := int64(0)
		for i, n := range c {
			v += int64(n) * value[i]
		}
		all = append(all, v)
	}
	k.inner.price(all, visit)
}

func (k *stackedKnapsack) best() pattern { return k.flatten(k.inner.best()) }

func (k *stackedKnapsack) single(class int) pattern { return k.flatten(k.inner.single(class)) }

func (k *stackedKnapsack) enumerate(need int64, out *[]pattern, most, steps int) (done bool, spent int) {
	var inner []pattern
	done, spent = k.inner.enumerate(need, &inner, most-len(*out), steps)
	seen := map[string]bool{}
	for _, p := range inner {
		q := k.flatten(p)
		if key := patternKey(q); !seen[key] {
			seen[key] = true
			*out = append(*out, q)
		}
	}
	return done, spent
}

// flatten counts the pieces of a strip of columns, no more of a kind than are
// wanted in all.
func (k *stackedKnapsack) flatten(p pattern) pattern {
	n := len(k.in.kinds)
	q := pattern{class: p.class, count: slices.Clone(p.count[:n]), stacks: p.count}
	for t, c := range k.in.stacks.column {
		for i, v := range c {
			q.count[i] += v * p.count[n+t]
		}
	}
	for i := range q.count {
		q.count[i] = min(q.count[i], k.demand[i])
	}
	return q
}

// SolveStacked looks for a layout in more rounds of cuts that saves at least one step
// of the buying grid over a two-stage result: yards are bought up to whole steps,
// squaring up included. It has columns of pieces of one width stacked in a strip, or
// panels beside long pieces that are cut along the cloth. It reports false when it
// finds none, which [StraightBound] often tells at once. A column is no taller than
// ruler (zero stands for 24 in or the tallest strip), since each is cut across along a
// ruler. What it returns is a layout and no bound. A quarter of the work that limits
// allow is spent on columns. Where pieces are marked as lengthwise nothing is tried.
func SolveStacked(p Problem, r Result, step, ruler measure.Length, limits Limits) (l Layout, spent Spent, ok bool) {
	lengthwise := func(q Piece) bool { return q.Lengthwise && q.Count > 0 }
	if p.check() != nil || step <= 0 || slices.ContainsFunc(p.Pieces, lengthwise) {
		return l, spent, false
	}
	most := (r.Length+p.Cloth.SquaringUp-1)/step*step - p.Cloth.SquaringUp
	in, err := newInstance(p, exact)
	if err != nil || len(in.kinds) == 0 || AreaBound(p) > most {
		return l, spent, false
	}
	limits.Settle = 0
	bound, _, paid := StraightBound(p, limits)
	if spent.add(paid); bound > most {
		return l, spent, false
	}
	l = panels(p, limits, &spent)
	if r.best != nil && bound < l.Length {
		if q := in.stackedLayout(p, r.best, ruler, limits, &spent); q.Length <= l.Length {
			l = q
		}
	}
	return l, spent, l.Length <= most
}

// stackedLayout stacks columns in the strips of a plan.
func (in *instance) stackedLayout(p Problem, best plan, ruler measure.Length, limits Limits, spent *Spent) Layout {
	if ruler <= 0 {
		ruler = max(24*inch, measure.Length(in.heights[len(in.heights)-1])*in.unitH)
	}
	stacked := in.withStacks(int64(ruler / in.unitH))
	allowance := limits.Allowance
	limits.Allowance = 0
	limits = limits.withDefaults(len(in.kinds))
	limits.Visits /= 4
	return stacked.layoutStacked(p, stacked.searchStacked(stacked.rise(best, in), limits.within(allowance), spent))
}

// searchStacked looks for a three-stage plan.
func (in *instance) searchStacked(start plan, limits Limits, spent *Spent) plan {
	steps := newMeter(limits, &Steps{}, spent)
	defer steps.hand(&Steps{}, spent)
	if steps.tooLittle(in) {
		return start
	}
	s := newSearch(in, in.demands(), limits, steps, start, newSums(in.heights, in.length(start)))
	m := s.master()
	b := in.rootBox(s.goal)
	if in.tighten(b, s.goal) {
		n := m.generate(b, s.goal)
		s.dive(m.pool)
		s.sample(n, min(1000, limits.Patterns), min(300, limits.Nodes))
		s.budget = limits.Visits / 2
		s.localSearch(limits.Rounds / 2)
		s.budget = limits.Visits
		s.climb(m, proved{s.sums.from(ceilUnits(n.bound, s.scaling.scale)), nil}, min(800, limits.Patterns), limits.Nodes)
	}
	return s.best
}
