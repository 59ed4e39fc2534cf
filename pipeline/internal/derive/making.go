package derive

import (
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Operation is one operation at work on one part of one size. Each has a room,
// a file of its own, which holds whatever is peculiar to it; nothing else
// distinguishes operations.
type Operation interface {
	// Seams is the length of the seams in all that are sewn of the part, from
	// raw edge to raw edge; ok is false when it is not known how it is sewn.
	Seams() (l measure.Surd, ok bool)
}

// opening opens the room of a part's operation. Its methods, one for each
// operation, stand in the rooms.
type opening struct {
	s    *Size
	p    *Part
	room Operation
}

var _ plan.Maker = (*opening)(nil)

// open finds the room of a part's operation.
func (s *Size) open(p *Part) Operation {
	o := opening{s: s, p: p}
	p.Part.Operation.Make(&o)
	return o.room
}
