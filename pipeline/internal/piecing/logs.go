package piecing

import (
	"slices"

	"yardproof/schema/measure"
)

// Side is a side of a rectangular part, clockwise from the top.
type Side int

// The sides.
const (
	TopSide Side = iota
	RightSide
	BottomSide
	LeftSide
)

// Logs is a log block: rounds of four logs about a centre. A spiral (log
// cabin) goes round from First, each log reaching over the one before it;
// courthouse steps lay opposite pairs, first the pair with First in it.
type Logs struct {
	Centre     Box               // finished
	Widths     [4]measure.Length // finished width of the logs by side; unequal ones make an off-centre block
	Rounds     int
	First      Side
	Courthouse bool
	LeftHanded bool // a spiral that goes anticlockwise
}

// Log is one log of a block.
type Log struct {
	Round    int // from 1
	Side     Side
	Finished measure.Surd   // length
	Cut      measure.Surd   // length, finished + 2s
	CutWidth measure.Length // finished width + 2s
}

// List is the logs in sewing order. For a square centre c0 and logs of one
// width g, round j of a spiral is c0+(2j-2)g, c0+(2j-1)g, c0+(2j-1)g and
// c0+2jg long, finished, and of courthouse steps c0+(2j-2)g twice and c0+2jg
// twice; either sums to 4c0 + (8j-4)g. Derived from geometry.
func (l Logs) List(s measure.Length) []Log {
	var list []Log
	box := l.Centre
	for round := 1; round <= l.Rounds; round++ {
		for _, side := range l.order() {
			length := box.along(side)
			list = append(list, Log{round, side, length, plus2s(length, s), l.Widths[side] + 2*s})
			box = box.grow(side, l.Widths[side])
		}
	}
	return list
}

// Finished is the finished size of the block: c0 + 2Rg each way for a square
// centre and logs of one width.
func (l Logs) Finished() Box {
	rounds := measure.Length(max(0, l.Rounds))
	w := l.Widths
	return Box{
		l.Centre.Width.Add((rounds * (w[LeftSide] + w[RightSide])).Surd()),
		l.Centre.Height.Add((rounds * (w[TopSide] + w[BottomSide])).Surd()),
	}
}

// order is the sides of one round as they are sewn.
func (l Logs) order() []Side {
	first := (l.First%4 + 4) % 4
	if l.Courthouse {
		return []Side{first, (first + 2) % 4, (first + 1) % 4, (first + 3) % 4}
	}
	round := []Side{first, (first + 1) % 4, (first + 2) % 4, (first + 3) % 4}
	if l.LeftHanded {
		slices.Reverse(round[1:])
	}
	return round
}

// along is the length of a box's side.
func (b Box) along(side Side) measure.Surd {
	if side%2 == 0 {
		return b.Width
	}
	return b.Height
}

// grow is the box with a finished strip sewn to a side.
func (b Box) grow(side Side, width measure.Length) Box {
	if side%2 == 0 {
		return Box{b.Width, b.Height.Add(width.Surd())}
	}
	return Box{b.Width.Add(width.Surd()), b.Height}
}
