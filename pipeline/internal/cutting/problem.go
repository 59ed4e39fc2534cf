package cutting

import (
	"fmt"

	"yardproof/schema/measure"
)

// Piece is a rectangle to be cut some number of times. Across lies along the
// usable width of the fabric and Along runs down its length while the piece is
// unturned. A turnable piece may also be cut a quarter turn round.
//
// Together matters only for sheets of assorted prints: so many of the piece
// must come from one sheet, because they must match (a block's four corners).
// Zero means that it does not matter; otherwise Count is a multiple of it.
//
// Lengthwise pieces run along the cloth and are cut before anything else, side
// by side (borders cut lengthwise); the panel beside them may be cut into strips
// of its own. They cannot be turnable.
//
// InLengths pieces, such as logs, are cut by the plain method from strips as
// wide as they are high, which those of other lengths share.
type Piece struct {
	Name       string
	Across     measure.Length
	Along      measure.Length
	Count      int
	Turnable   bool
	Together   int
	Lengthwise bool
	InLengths  bool
}

// WholeStrip is a strip used across the whole usable width: strip sets,
// borders, binding. When a joined length needs only part of its last strip,
// Last says how much of that strip is used and the rest of it may be cut into
// pieces; zero means that the last strip is used whole as well.
type WholeStrip struct {
	Name   string
	Height measure.Length
	Count  int
	Last   measure.Length
}

// Cloth is yardage of one fabric. SquaringUp is lost once, at the cut end, and
// is never part of a [Layout]'s length. A positive Repeat rounds the height of
// every strip up to a whole number of repeats of the print.
type Cloth struct {
	Width      measure.Length
	SquaringUp measure.Length
	Repeat     measure.Length
}

// Problem asks for pieces and whole strips from one cloth.
type Problem struct {
	Cloth  Cloth
	Pieces []Piece
	Strips []WholeStrip
}

// A TooWide error names the piece, or the whole strip when Piece is -1, that
// fits the cloth in no allowed orientation. Needs is the smallest width that
// would do (for a sheet, of the side that is short).
type TooWide struct {
	Piece int // index into the problem's Pieces, or -1
	Strip int // index into the problem's Strips, or -1
	Name  string
	Needs measure.Length
	Width measure.Length
}

func (e *TooWide) Error() string {
	return fmt.Sprintf("cutting %q needs a width of %d ticks and %d are usable", e.Name, e.Needs, e.Width)
}

// An Unusable error names a number of the problem that no layout can have: a
// length that is not positive, a negative count, or more cloth than the
// arithmetic holds. Piece and Strip are -1 where they do not apply.
type Unusable struct {
	Piece int
	Strip int
	Name  string
	What  string
}

func (e *Unusable) Error() string {
	return fmt.Sprintf("cutting %q: %s", e.Name, e.What)
}

// Limits on sizes and counts keep every sum inside an int64: the longest side
// is 2^36 ticks (over 338 000 inches) and no problem asks for more than a
// million pieces or strips.
const (
	maxSide  = measure.Length(1) << 36
	maxCount = 1_000_000
)

func side(v measure.Length) bool { return v > 0 && v <= maxSide }

// check refuses a problem whose numbers have no meaning. It does not ask
// whether the pieces fit.
func (p Problem) check() error {
	c := p.Cloth
	if !side(c.Width) {
		return &Unusable{Piece: -1, Strip: -1, Name: "cloth", What: "the usable width must be positive"}
	}
	if c.Repeat < 0 || c.Repeat > maxSide || c.SquaringUp < 0 || c.SquaringUp > maxSide {
		return &Unusable{Piece: -1, Strip: -1, Name: "cloth", What: "the repeat and the squaring-up must not be negative"}
	}
	return checkDemand(p.Pieces, p.Strips, c.Width)
}

func checkDemand(pieces []Piece, strips []WholeStrip, width measure.Length) error {
	total := 0
	for i, q := range pieces {
		if !side(q.Across) || !side(q.Along) || q.Count < 0 || q.Count > maxCount {
			return &Unusable{Piece: i, Strip: -1, Name: q.Name, What: "sides must be positive and the count not negative"}
		}
		if q.Lengthwise && q.Turnable {
			return &Unusable{Piece: i, Strip: -1, Name: q.Name, What: "what is cut lengthwise cannot be turned"}
		}
		if q.Together < 0 || q.Together > 1 && q.Count%q.Together != 0 {
			return &Unusable{Piece: i, Strip: -1, Name: q.Name, What: fmt.Sprintf("the count of %d is no multiple of the %d that must match", q.Count, q.Together)}
		}
		total += q.Count
	}
	for i, s := range strips {
		if !side(s.Height) || s.Count < 0 || s.Count > maxCount || s.Last < 0 || s.Last > width {
			return &Unusable{Piece: -1, Strip: i, Name: s.Name, What: "the height must be positive, the count not negative, and the last strip's use no more than the width"}
		}
		total += s.Count
	}
	if total > maxCount {
		return &Unusable{Piece: -1, Strip: -1, Name: "problem", What: "more than a million pieces"}
	}
	return nil
}

// whole rounds a strip's height up to a whole number of repeats.
func (c Cloth) whole(height measure.Length) measure.Length {
	if c.Repeat == 0 {
		return height
	}
	return (height + c.Repeat - 1) / c.Repeat * c.Repeat
}

// matching is how many of the piece must come from one sheet, at least one.
func (q Piece) matching() int { return max(1, q.Together) }

// sides gives a piece's extent across and along the fabric.
func (q Piece) sides(turned bool) (across, along measure.Length) {
	if turned {
		return q.Along, q.Across
	}
	return q.Across, q.Along
}

// orientations lists the ways a piece may lie, unturned first; turning a
// square changes nothing.
func (q Piece) orientations() []bool {
	if q.Turnable && q.Across != q.Along {
		return []bool{false, true}
	}
	return []bool{false}
}
