package derive

import (
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// Traits are what else tells the parts of an operation from those of others.
type Traits struct {
	Sewn    bool // it is not only cut
	Handed  bool // its mirror image is another part, and not the same one turned
	OnTrust bool // its outline and fit are the plan's word
	Cut     bool // fabric is cut for it itself
	Running bool // it is as long as its fabric is wide, which nobody measures
	From    Source
}

// Source is what the pieces of a part come from, whose number may be printed.
type Source int

// The sources.
const (
	FromNeither Source = iota
	FromTubes
	FromSets // that are used whole
	FromCutSets
)

// Some questions about where the plan says what, and what it says, have an answer
// for few operations only.
type (
	// Striped is a room that has strips cut across the fabric, as the plan says them.
	Striped interface{ Strips() []plan.Strip }

	// Stripwise is a room whose strips are counted whole.
	Stripwise interface{ Striping() Striping }

	// Sized is a room that knows where the plan says what the size of its part comes
	// from.
	Sized interface{ SizeAt() source.Range }

	// Resized is a room that knows how large squares are cut for its part to come out
	// with a side.
	Resized interface {
		CutFor(side measure.Surd) measure.Surd
	}

	// Angled is a room of which the part is cut at an angle to its strips, in degrees;
	// 0 where it is not.
	Angled interface{ Degrees() int }

	// Holding is a room of which the part is rows of others that have to close.
	Holding interface{ Rows() [][]plan.Cell }

	// Gridded is a room of which the part is a grid of others; nil where the plan gives
	// none.
	Gridded interface{ Grid() *plan.Grid }

	// Seating is a room that gives other parts a place, as the plan writes them.
	Seating interface{ Places() []plan.Cell }
)

// Striping is how many whole strips all of a part take.
type Striping struct {
	Needed int64
	Group  int64        // so many belong together
	Takes  say.Sentence // what takes them, as "4 strip sets of 3 strips take"
}
