package cutting

import "yardproof/schema/measure"

// Cut is so many of one piece side by side in a strip.
type Cut struct {
	Piece  int // index into the problem's Pieces
	Turned bool
	Count  int
}

// Part is a strip that shares its row: the last, partly used strip of a joined
// length, of which Width is used (or, in a sheet whose first cuts run along it,
// a whole strip).
type Part struct {
	Strip int // index into the problem's Strips
	Width measure.Length
}

// Stack is so many equal columns of a row, each Width wide and cut across into
// the pieces of Cuts, one below the other.
type Stack struct {
	Width measure.Length
	Count int
	Cuts  []Cut
}

// Row is a run of equal strips cut across the fabric, one below the other.
// Height is the cloth each takes (already rounded to the print's repeat). When
// Strip is an index into the problem's Strips, every strip of the row is used
// whole for that demand and nothing else is cut from it; otherwise it is -1
// and the row holds Cuts and Parts, and Stacks in a three-stage layout. Beside
// lengthwise cuts, Panel is strips of the width that is left, one below the other
// and together no taller than the row.
type Row struct {
	Height measure.Length
	Repeat int
	Cuts   []Cut
	Strip  int
	Parts  []Part
	Stacks []Stack
	Panel  []Row
}

// Layout is a complete set of strips. Length is the sum of heights times
// repeats, without squaring up.
type Layout struct {
	Rows   []Row
	Length measure.Length
}

func (l *Layout) add(r Row) {
	if r.Repeat <= 0 {
		return
	}
	l.Rows = append(l.Rows, r)
	l.Length += r.Height * measure.Length(r.Repeat)
}

// Strips is the number of strips cut across the fabric.
func (l Layout) Strips() int {
	n := 0
	for _, r := range l.Rows {
		n += r.Repeat
	}
	return n
}
