package figure

import (
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// F is an exact number and the expression that it came from. It is immutable: copy
// it freely. Two are equal by == where they are one number, told in one way. The
// zero value is not known.
type F struct{ n *node }

// Kind is what a number counts or measures.
type Kind uint8

// The kinds of number.
const (
	Count  Kind = iota // a plain number
	Length             // in ticks
	Sold               // a length in ticks, as a shop sells fabric
)

// op is the operation that a node is the result of.
type op uint8

const (
	leaf op = iota // the plan, or a default of the schema, says it
	whole
	root // of 2 or 3, which k says
	plus
	less
	by // k times a
	times
	over
	overInt // a by k
	floor
	ceil
	ceilTo  // a up to a multiple of b
	floorTo // a down to a multiple of b
	unless  // 0 where the second of more is less than the third, else the first
	orNone  // 0 where a is negative
	least
	most
	raised // the greater of a and b; b is told only where it is more
	sum
	given  // worked out by a method that is no formula
	lacks  // not known, and what it would follow from
	called // a under another name
)

// node is one number. It is never written to once it is made.
type node struct {
	value measure.Surd
	k     int64
	a, b  *node
	more  []*node
	label *label
	op    op
	kind  Kind
	known bool
}

// label is how a number is told.
type label struct {
	symbol, says string       // as a symbol of a formula
	spelt        bool         // its formula is told after what it stands for
	of, what     string       // its name: what it is of, and what it is
	words        string       // in place of the formula
	apart        F            // a symbol of the formula that is told after it, with its own
	at           source.Range // where the plan says it
	telling      []F          // what is told beside the formula
	behind       F            // the number whose working is told behind this one
	itself       *node        // the number as it was named
	quiet        bool         // no working is told behind it
}

func (f F) label() label {
	if f.n == nil || f.n.label == nil {
		return label{}
	}
	return *f.n.label
}

// Said is a length that the plan states, as a symbol of formulas.
func Said(symbol, says string, l measure.Length, at source.Range) F {
	return F{&node{op: leaf, kind: Length, known: true, value: l.Surd(), label: &label{symbol: symbol, says: says, at: at}}}
}

// Counted is a whole number that the plan states.
func Counted(symbol, says string, n int64, at source.Range) F {
	return F{&node{op: leaf, known: true, value: measure.Rational(n, 1), label: &label{symbol: symbol, says: says, at: at}}}
}

// Whole is a whole number that stands in a formula as it is.
func Whole(n int64) F { return F{&node{op: whole, known: true, value: measure.Rational(n, 1), k: n}} }

// Root2 is the square root of 2.
func Root2() F { return root2 }

// Root3 is the square root of 3.
func Root3() F { return root3 }

var (
	root2 = F{&node{op: root, known: true, value: measure.Root2(), k: 2}}
	root3 = F{&node{op: root, known: true, value: measure.Root3(), k: 3}}
)

// Given is a number that a method finds which is no formula, such as a cutting
// layout; words say how, and from are the numbers that it follows from.
func Given(k Kind, v measure.Surd, words string, from ...F) F {
	return F{&node{op: given, kind: k, known: true, value: v, more: nodes(from), label: &label{words: words}}}
}

// Unknown has no value, but keeps what it would follow from.
func Unknown(from ...F) F { return F{&node{op: lacks, more: nodes(from)}} }

func nodes(of []F) []*node {
	all := make([]*node, 0, len(of))
	for _, f := range of {
		if f.n != nil {
			all = append(all, f.n)
		}
	}
	return all
}

// Known reports whether it has a value.
func (f F) Known() bool { return f.n != nil && f.n.known }

// Surd is the value, a length in ticks; 0 of one that is not known.
func (f F) Surd() measure.Surd {
	if f.n == nil {
		return measure.Surd{}
	}
	return f.n.value
}

// Length is the value of a length, rounded down to a tick where it is no whole
// number of them.
func (f F) Length() measure.Length { return f.Surd().FloorTo(measure.Tick) }

// N is the value of a count, rounded down.
func (f F) N() int64 { return int64(f.Surd().FloorTo(measure.Tick)) }

// Kind is what it counts or measures.
func (f F) Kind() Kind {
	if f.n == nil {
		return Count
	}
	return f.n.kind
}
