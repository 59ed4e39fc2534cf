package figure

import (
	"slices"

	"yardproof/schema/source"
)

// told is the number with another label that says how its working is told.
func (f F) told(change func(*label)) F {
	g := f.named(change)
	if g.n != nil {
		g.n.label.itself = g.n
	}
	return g
}

// named is the number with another label.
func (f F) named(change func(*label)) F {
	if f.n == nil {
		return f
	}
	l := f.label()
	change(&l)
	of := f.n
	if of.op == called {
		of = of.a
	}
	return F{&node{op: called, kind: f.n.kind, known: of.known, value: of.value, a: of, label: &l}}
}

// As is the number as a symbol of the next formula, and what that stands for.
// Without a symbol it is told beside the formula.
func (f F) As(symbol, says string) F {
	return f.named(func(l *label) { l.symbol, l.says, l.spelt = symbol, says, false })
}

// Spelt is As where the number's own formula is told after what it stands for.
func (f F) Spelt(symbol, says string) F {
	return f.named(func(l *label) { l.symbol, l.says, l.spelt = symbol, says, true })
}

// Where is the number as said at a place of the plan.
func (f F) Where(at source.Range) F { return f.named(func(l *label) { l.at = at }) }

// Is gives the number a name, by which its working is told: what it is of, if
// of anything, and what it is.
func (f F) Is(of, what string) F {
	return f.told(func(l *label) { l.of, l.what, l.behind = of, what, F{} })
}

// Telling is what is told beside the number's formula, in this order, in place of
// the symbols in it.
func (f F) Telling(terms ...F) F { return f.told(func(l *label) { l.telling = terms }) }

// InWords tells the number in words in place of its formula.
func (f F) InWords(words string) F { return f.told(func(l *label) { l.words = words }) }

// Apart tells the formula of a symbol after the formula that it stands in:
// "..., t = 2s / sqrt3".
func (f F) Apart(symbol F) F { return f.told(func(l *label) { l.apart = symbol }) }

// Behind has another number's working told behind this one where it stands as a
// term: what a unit measured before it was trimmed to what the plan says.
func (f F) Behind(g F) F { return f.named(func(l *label) { l.behind = g }) }

// Working is the number whose working is told behind this one where it stands as a
// term; not known where there is none.
func (f F) Working() F {
	l := f.label()
	switch {
	case l.quiet:
		return F{}
	case l.behind.n != nil:
		return l.behind.Itself()
	}
	return f.Itself()
}

// Quiet is the number as a term behind which a table tells no working.
func (f F) Quiet() F { return f.named(func(l *label) { l.quiet = true }) }

// Why is the number whose formula tells how this one came about where it stands as a
// term, named or not; not known of what the plan states.
func (f F) Why() F {
	switch g := f.label().behind; {
	case g.Known():
		return g.Why()
	case f.Itself().Known():
		return f.Itself()
	case f.Input() || f.Formula() == "":
		return F{}
	}
	return f
}

// Itself is a number as it was named, whatever symbol it is in another formula; not
// known where it has no name.
func (f F) Itself() F {
	if l := f.label(); l.what != "" {
		return F{l.itself}
	}
	return F{}
}

// Name is what it is called, "" where it has no name.
func (f F) Name() string {
	switch l := f.label(); {
	case l.of == "":
		return l.what
	default:
		return l.of + ", " + l.what
	}
}

// Worded reports whether its formula is told in words, or some of it.
func (f F) Worded() bool {
	if f.n == nil {
		return false
	}
	return f.label().words != "" || base(f.n).worded()
}

// worded reports whether a formula says something in words where it would say a
// symbol.
func (n *node) worded() bool {
	return slices.ContainsFunc(n.operands(), func(m *node) bool {
		l := m.label
		return l != nil && l.symbol == "" && l.words != "" || (l == nil || l.symbol == "") && base(m).worded()
	})
}

// Of is what the number is of, and What is what it is, which make its name.
func (f F) Of() string { return f.label().of }

// What is the second part of its name.
func (f F) What() string { return f.label().what }

// Symbol is what it is in a formula, "" where it is told beside one.
func (f F) Symbol() string { return f.label().symbol }

// Says is what the symbol stands for.
func (f F) Says() string {
	l := f.label()
	if l.spelt {
		return l.says + ", " + f.Formula()
	}
	return l.says
}

// At is where the plan says it, empty for what is derived and for defaults.
func (f F) At() source.Range { return f.label().at }

// Input reports whether the plan states it, or a default does.
func (f F) Input() bool { return f.n != nil && base(f.n).op == leaf }

// Terms are what is told beside the formula: what was given to be told, or else
// the symbols in it, each once in the order of their appearance.
func (f F) Terms() []F {
	if f.n == nil {
		return nil
	}
	if l := f.label(); l.telling != nil {
		return l.telling
	}
	var all []F
	seen := map[*node]bool{}
	for _, n := range base(f.n).operands() {
		all = n.symbols(all, seen)
	}
	return all
}

// symbols adds the symbols that stand in a node's part of a formula.
func (n *node) symbols(all []F, seen map[*node]bool) []F {
	if seen[n] {
		return all
	}
	seen[n] = true
	if n.label != nil && (n.label.symbol != "" || n.op == leaf) {
		return append(all, F{n})
	}
	for _, m := range n.operands() {
		all = m.symbols(all, seen)
	}
	return all
}

// operands are what a node was made of, in the order of the formula.
func (n *node) operands() []*node {
	switch {
	case n.a == nil:
		return n.more
	case n.b == nil:
		return []*node{n.a}
	case n.op == raised && n.a.value.Cmp(n.b.value) >= 0:
		return []*node{n.a}
	}
	return []*node{n.a, n.b}
}

// base is a number without its names.
func base(n *node) *node {
	for n.op == called {
		n = n.a
	}
	return n
}
