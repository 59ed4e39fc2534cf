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
	Const     Op = iota // Value itself, or Text where there is none
	Ref                 // the named cell
	Add                 // sum of all arguments
	Sub                 // first less second
	Mul                 // product of all arguments
	Div                 // first over second
	Min                 // least of all arguments
	Max                 // greatest of all arguments
	Round               // first argument to Digits decimals, half away from zero
	RoundUp             // first argument to Digits decimals, away from zero
	RoundDown           // first argument to Digits decimals, towards zero
	If                  // when the first, a condition, holds: the second, else the third
	AddKnown            // sum of those arguments, all of them Refs, that are numbers
	Join                // one text of all arguments, numbers rounded to Digits decimals and no longer than they need to be
)

// Conditions have a Value of 1 where they hold and of 0 where they do not. They
// are for the first argument of an If, and for the Mark of a cell.
const (
	Exceeds Op = iota + 100 // the first is over the second
	Under                   // the first is under the second
	Equals                  // both are the same number, or the same text
	Not                     // the condition does not hold
)

// Expr is an exact expression over named cells. Whoever builds it works its
// value out at the same time, so that a formula and the number stored beside
// it come from one place.
type Expr struct {
	Op     Op
	Args   []*Expr
	Name   string   // of a Ref
	Digits int      // of the roundings and of Join
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

// Derived is a number of a size that can be asked for by its name.
type Derived struct {
	Size string
	Of   string // the part, fabric or border that it is of; empty where it is of the quilt
	Is   string // "squares from one tube"
	Work *Work
}

// Name is what the number is called: "step, squares from one tube".
func (n Derived) Name() string {
	if n.Of == "" {
		return n.Is
	}
	return n.Of + ", " + n.Is
}

// Term is one symbol of a formula. A value that was itself derived carries
// its own Work.
type Term struct {
	Symbol string
	Says   string // "usable strip length"
	Value  Cell
	At     source.Range // where the plan says it; empty for derived values and defaults
}
