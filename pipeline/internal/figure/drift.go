package figure

import "yardproof/schema/measure"

// Inputs are what the plan or a default states of all that the number follows
// from, each once.
func (f F) Inputs() []F {
	var all []F
	f.each(func(n *node) {
		if n.op == leaf {
			all = append(all, F{n})
		}
	})
	return all
}

// Follows reports whether the number follows from another, or is it.
func (f F) Follows(g F) bool {
	found := false
	if g.n != nil {
		of := base(g.n)
		f.each(func(n *node) { found = found || n == of })
	}
	return found
}

// each comes to every node behind the number once, what a formula says first
// before what it says later.
func (f F) each(visit func(*node)) {
	seen := map[*node]bool{}
	var walk func(n *node)
	walk = func(n *node) {
		if n == nil || seen[n] {
			return
		}
		seen[n] = true
		visit(n)
		walk(n.a)
		walk(n.b)
		for _, m := range n.more {
			walk(m)
		}
	}
	walk(f.n)
}

// With is the value that the number would have if an input were another. ok is
// false where it would have none, or follows from the input by a method that is no
// formula.
func (f F) With(input F, v measure.Surd) (value measure.Surd, ok bool) {
	if f.n == nil || input.n == nil {
		return value, false
	}
	return f.with(map[*node]measure.Surd{base(input.n): v})
}

func (f F) with(inputs map[*node]measure.Surd) (value measure.Surd, ok bool) {
	type answer struct {
		v  measure.Surd
		ok bool
	}
	known := map[*node]answer{}
	var of func(n *node) (measure.Surd, bool)
	of = func(n *node) (measure.Surd, bool) {
		if v, is := inputs[n]; is {
			return v, true
		}
		if a, seen := known[n]; seen {
			return a.v, a.ok
		}
		var a answer
		if n.op != given || !n.followsAny(inputs) {
			a.v, a.ok = n.work(of)
		}
		known[n] = a
		return a.v, a.ok
	}
	return of(f.n)
}

// followsAny reports whether a node follows from some input.
func (n *node) followsAny(inputs map[*node]measure.Surd) bool {
	for input := range inputs {
		if (F{n}).Follows(F{input}) {
			return true
		}
	}
	return false
}

// Drift is where the number changes as an input goes from its value towards a
// limit, tick by tick: the first length at which it is another, or has no value; and
// what it is there. Inputs that are alike go with it by as much, but not below 0. ok
// is false where the number is the same up to the limit. It is found by bisection,
// which holds for numbers that only grow, or only shrink, on the way.
func (f F) Drift(input F, limit measure.Length, alike ...F) (at measure.Length, there measure.Surd, ok bool) {
	if !f.Known() || !input.Known() {
		return 0, there, false
	}
	changes := func(l measure.Length) bool {
		inputs := map[*node]measure.Surd{base(input.n): l.Surd()}
		for _, g := range alike {
			inputs[base(g.n)] = max(0, g.Length()+l-input.Length()).Surd()
		}
		inputs[base(input.n)] = l.Surd()
		v, ok := f.with(inputs)
		there = v
		return !ok || !v.Equal(f.n.value)
	}
	same, other := input.Length(), limit
	if same == other || !changes(other) {
		return 0, there, false
	}
	for other-same > 1 || same-other > 1 {
		middle := same + (other-same)/2
		if changes(middle) {
			other = middle
		} else {
			same = middle
		}
	}
	changes(other)
	return other, there, true
}

// Change is a number of one plan and what stands for it in another.
type Change struct{ Was, Is F }

// Changed are the inputs because of which two numbers that are told alike differ,
// each once. Where they are worked out by different formulas, or by a method that is
// none from the same inputs, the change is those numbers themselves.
func Changed(was, is F) []Change {
	c := changes{seen: map[[2]*node]bool{}}
	c.compare(was.n, is.n)
	return c.all
}

type changes struct {
	seen map[[2]*node]bool
	all  []Change
}

func (c *changes) compare(was, is *node) {
	if was == is || was == nil && is == nil || c.seen[[2]*node{was, is}] {
		return
	}
	c.seen[[2]*node{was, is}] = true
	if was == nil || is == nil {
		c.all = append(c.all, Change{F{was}, F{is}})
		return
	}
	x, y := base(was), base(is)
	before := len(c.all)
	from, to := x.all(), y.all()
	alike := x.op == y.op && x.k == y.k && len(from) == len(to)
	if alike {
		for i := range from {
			c.compare(from[i], to[i])
		}
	}
	same := x.known == y.known && x.value.Equal(y.value)
	if !same && (!alike || len(c.all) == before && !c.differ(from, to)) {
		c.all = append(c.all, Change{F{was}, F{is}})
	}
}

// differ reports whether operands differ that were compared before.
func (c *changes) differ(from, to []*node) bool {
	for i := range from {
		if x, y := base(from[i]), base(to[i]); x.known != y.known || !x.value.Equal(y.value) {
			return true
		}
	}
	return false
}

// all are the operands of a node, told or not.
func (n *node) all() []*node {
	all := make([]*node, 0, 2+len(n.more))
	for _, m := range [2]*node{n.a, n.b} {
		if m != nil {
			all = append(all, m)
		}
	}
	return append(all, n.more...)
}
