package figure

import "yardproof/schema/measure"

// joined is a node of two operands.
func joined(o op, k Kind, f, g F) F {
	if f.n == nil || g.n == nil {
		return Unknown(f, g)
	}
	return made(&node{op: o, kind: k, a: f.n, b: g.n})
}

// of is a node of one operand.
func (f F) of(o op, k Kind, times int64) F {
	if f.n == nil {
		return F{}
	}
	return made(&node{op: o, kind: k, a: f.n, k: times})
}

// among is a node of several operands.
func among(o op, fs []F) F {
	n := &node{op: o, more: nodes(fs)}
	if len(n.more) < len(fs) {
		return Unknown(fs...)
	}
	if len(n.more) > 0 {
		n.kind = n.more[0].kind
	}
	return made(n)
}

// made works out a node of known operands.
func made(n *node) F {
	n.value, n.known = n.work(func(m *node) (measure.Surd, bool) { return m.value, m.known })
	return F{n}
}

// Plus is f + g.
func (f F) Plus(g F) F { return joined(plus, f.Kind(), f, g) }

// Less is f - g.
func (f F) Less(g F) F { return joined(less, f.Kind(), f, g) }

// By is k times f.
func (f F) By(k int64) F { return f.of(by, f.Kind(), k) }

// Times is f times g, a length where either is one.
func (f F) Times(g F) F { return joined(times, max(f.Kind(), g.Kind()), f, g) }

// Over is f divided by g, exactly: a plain number of two lengths. It is not known
// where g is 0.
func (f F) Over(g F) F {
	k := f.Kind()
	if g.Kind() != Count {
		k = Count
	}
	return joined(over, k, f, g)
}

// OverInt is f divided by k, exactly; k may not be 0.
func (f F) OverInt(k int64) F { return f.of(overInt, f.Kind(), k) }

// Floor is f rounded down to a whole number, of ticks where it is a length.
func (f F) Floor() F { return f.of(floor, f.Kind(), 0) }

// Ceil is f rounded up to a whole number, of ticks where it is a length.
func (f F) Ceil() F { return f.of(ceil, f.Kind(), 0) }

// CeilTo is f rounded up to a multiple of a length.
func (f F) CeilTo(step F) F { return joined(ceilTo, f.Kind(), f, step) }

// FloorTo is f rounded down to a multiple of a length.
func (f F) FloorTo(step F) F { return joined(floorTo, f.Kind(), f, step) }

// Unless is f, or 0 where a is less than b: "f, none when a < b".
func (f F) Unless(a, b F) F { return among(unless, []F{f, a, b}) }

// OrNone is f, or 0 where it is negative. It reads as f does.
func (f F) OrNone() F { return f.of(orNone, f.Kind(), 0) }

// Raised is the greater of f and g. The formula is that of f, and tells g only
// where it is more.
func (f F) Raised(g F) F { return joined(raised, f.Kind(), f, g) }

// Least is the least of some numbers of one kind.
func Least(fs ...F) F { return among(least, fs) }

// Most is the greatest of some numbers of one kind.
func Most(fs ...F) F { return among(most, fs) }

// Sum is the sum of some numbers of one kind, 0 of none, told in words.
func Sum(words string, fs ...F) F {
	f := among(sum, fs)
	f.n.label = &label{words: words}
	return f
}

// AsSold is a length of fabric as a shop sells it.
func (f F) AsSold() F {
	if f.n == nil {
		return f
	}
	g := f.named(func(*label) {})
	g.n.kind = Sold
	return g
}

// work is the value of a node whose operands have the values that of tells.
func (n *node) work(of func(*node) (measure.Surd, bool)) (v measure.Surd, ok bool) {
	var x [2]measure.Surd
	for i, m := range [2]*node{n.a, n.b} {
		if m == nil {
			break
		}
		if x[i], ok = of(m); !ok {
			return v, false
		}
	}
	if n.a == nil {
		return n.workMany(of)
	}
	return n.op.apply(x[0], x[1], n.k)
}

// apply works an operation of one or two operands out; ok is false where it has no
// value.
func (o op) apply(x, y measure.Surd, k int64) (v measure.Surd, ok bool) {
	switch o {
	case plus:
		return x.Add(y), true
	case less:
		return x.Sub(y), true
	case by:
		return x.MulInt(k), true
	case times:
		return x.Mul(y), true
	case over:
		return x.Div(y), !y.IsZero()
	case overInt:
		return x.DivInt(k), k != 0
	case floor:
		return x.FloorTo(measure.Tick).Surd(), true
	case ceil:
		return x.CeilTo(measure.Tick).Surd(), true
	case ceilTo, floorTo:
		return o.toStep(x, y)
	case orNone:
		return measure.Max(x, measure.Surd{}), true
	case raised:
		return measure.Max(x, y), true
	case called:
		return x, true
	case leaf, whole, root, unless, least, most, sum, given, lacks: // of no operand, or of many
	}
	return v, false
}

func (o op) toStep(x, step measure.Surd) (v measure.Surd, ok bool) {
	grid := step.FloorTo(measure.Tick)
	if grid <= 0 {
		return v, false
	}
	if o == ceilTo {
		return x.CeilTo(grid).Surd(), true
	}
	return x.FloorTo(grid).Surd(), true
}

// workMany is work for a node of several operands, or of none.
func (n *node) workMany(of func(*node) (measure.Surd, bool)) (v measure.Surd, ok bool) {
	switch n.op {
	case leaf, whole, root, given:
		return n.value, n.known
	case lacks:
		return v, false
	}
	all := make([]measure.Surd, 0, 4)
	for _, m := range n.more {
		x, ok := of(m)
		if !ok {
			return v, false
		}
		all = append(all, x)
	}
	switch n.op {
	case sum:
		return measure.Sum(all...), true
	case unless:
		if all[1].Cmp(all[2]) < 0 {
			return v, true
		}
		return all[0], true
	}
	if len(all) == 0 {
		return v, false
	}
	v = all[0]
	for _, x := range all[1:] {
		if n.op == least {
			v = measure.Min(v, x)
		} else {
			v = measure.Max(v, x)
		}
	}
	return v, true
}
