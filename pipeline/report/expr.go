package report

import (
	"math/big"

	"yardproof/schema/source"
)

// Op is what an expression does with its arguments. Each has a counterpart
// in every spreadsheet program.
type Op int

// The operations.
const (
	Const   Op = iota // Value itself
	Ref               // the named cell
	Add               // sum of all arguments
	Sub               // first less second
	Mul               // product of all arguments
	Div               // first over second
	Round             // first argument to Digits decimals, half away from zero
	RoundUp           // first argument up to Digits decimals
	IfOver            // when the first exceeds the second: the third, else the fourth
)

// Expr is an exact expression over named cells. Whoever builds it works its
// value out at the same time, so that a formula and the number stored beside
// it come from one place.
type Expr struct {
	Op     Op
	Args   []*Expr
	Name   string   // of a Ref
	Digits int      // of Round and RoundUp
	Value  *big.Rat // nil when it came out as text
	Text   string   // the text it came out as
}

// Unknown is shown where a number cannot be worked out.
const Unknown = "-"

// Work tells how a derived number came about: the formula in the trade's
// symbols and what stood for each symbol.
type Work struct {
	What    string // "squares a tube"
	Formula string // "1 + floor((L - 2h) / a)"
	Value   Cell   // what it came to
	Terms   []Term
}

// Term is one symbol of a formula. A value that was itself derived carries
// its own Work.
type Term struct {
	Symbol string
	Says   string // "usable strip length"
	Value  Cell
	At     source.Range // where the plan says it; empty for derived values and defaults
}
