package plan

import (
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// Form is the form a fabric is bought in.
type Form int

// The two forms.
const (
	Yardage Form = iota // usable width of fabric, any length
	Precut              // fixed pieces, so many a pack
)

// Print is what the design on the cloth allows.
type Print int

// The kinds of print.
const (
	Plain  Print = iota // may be turned any way
	TwoWay              // may be turned end for end only
	OneWay              // may not be turned
)

// String is the word the plan uses.
func (p Print) String() string { return [...]string{"plain", "two-way", "one-way"}[p] }

// Instructions is which cutting instructions a pattern prints for a fabric.
type Instructions int

// The kinds of instructions.
const (
	Unsaid     Instructions = iota // the plan does not say: the plain method's
	PlainCuts                      // each size of piece from its own strips
	PackedCuts                     // the shortest layout found
)

// String is the word the plan uses.
func (i Instructions) String() string { return [...]string{"", "plain", "packed"}[i] }

// Fabric is one role of the recipe. Only the fields of its form are set.
type Fabric struct {
	Role  Text // the key by which parts name it
	Name  Text
	SKU   Text // of the studio's price list
	Form  Form
	Print Print
	At    source.Range
	Cuts  Instructions

	Colour Text // for pictures, "#rrggbb"

	// Yardage.
	UsableWidth  Length         // across, between the selvages
	Grid         measure.Length // what the shop's length is rounded up to
	SquaringUp   Length         // added once for straightening the ends
	Cushion      measure.Length // added after rounding, by the studio's habit
	ShrinkLength Percent        // lost along the fabric when prewashed
	ShrinkWidth  Percent        // lost across it
	Repeat       Length         // of the pattern along the fabric; zero when none

	// Precut.
	Piece    [2]Length // nominal width and length of one piece
	Usable   [2]Length // what is left of it to cut from; the piece when the plan does not say
	Pack     Count     // pieces in a pack
	Assorted bool      // pieces may be different prints
}

// Directional reports whether pieces of this fabric must keep their way up.
func (f *Fabric) Directional() bool { return f.Print != Plain }

// StripLength is the length of a strip that runs along the fabric's usable
// width, or the usable length of a precut piece's longer side.
func (f *Fabric) StripLength() Length {
	if f.Form == Yardage {
		return f.UsableWidth
	}
	if f.Usable[0].Length > f.Usable[1].Length {
		return f.Usable[0]
	}
	return f.Usable[1]
}

// StripWidth is the width of a precut strip: its shorter usable side.
func (f *Fabric) StripWidth() Length {
	if f.Usable[0].Length > f.Usable[1].Length {
		return f.Usable[1]
	}
	return f.Usable[0]
}

// Tools are what the pattern tells its maker to have.
type Tools struct {
	Rulers []Ruler
	Mat    [2]Length    // width and length; absent when the plan does not say
	At     source.Range // of the plan's list; empty when the rulers are the studio's
}

// Ruler is a flat cutting ruler.
type Ruler struct {
	Width, Length Length // Width <= Length
	Angles        []int  // degrees of its printed angle lines
	Lines         Length // how far apart its lines are; absent when it is not said
	At            source.Range
}

// Square reports whether the two sides are equal.
func (r Ruler) Square() bool { return r.Width.Length == r.Length.Length }

// Angle reports whether the ruler has a line at so many degrees.
func (r Ruler) Angle(degrees int) bool {
	for _, a := range r.Angles {
		if a == degrees {
			return true
		}
	}
	return false
}
