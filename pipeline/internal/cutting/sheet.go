package cutting

import (
	"fmt"
	"slices"

	"yardproof/schema/measure"
)

// Sheet is fabric that comes as fixed pieces: fat quarters, precut squares,
// panels, the strips of a roll. Across and Along are usable sizes; Across lies
// along the width of the fabric the piece was cut from, so that a directional
// print keeps its direction.
type Sheet struct {
	Across measure.Length
	Along  measure.Length
}

// SheetProblem asks for pieces and whole strips from equal sheets. A whole
// strip takes a sheet's Across.
type SheetProblem struct {
	Sheet  Sheet
	Pieces []Piece
	Strips []WholeStrip
}

// CutSheet is a run of sheets that are cut alike. When Turned, the first cuts
// run along the sheet instead of across it: the heights of the rows are then
// measured across the sheet. Cut.Turned is always about the piece and the
// fabric, not about the rows.
type CutSheet struct {
	Repeat int
	Turned bool
	Rows   []Row
}

// SheetLayout is a complete set of cut sheets; Count is their number.
type SheetLayout struct {
	Sheets []CutSheet
	Count  int
}

func (l *SheetLayout) add(s CutSheet) {
	if s.Repeat > 0 {
		l.Sheets = append(l.Sheets, s)
		l.Count += s.Repeat
	}
}

func (p SheetProblem) check() error {
	if !side(p.Sheet.Across) || !side(p.Sheet.Along) {
		return &Unusable{Piece: -1, Strip: -1, Name: "sheet", What: "its usable sizes must be positive"}
	}
	return checkDemand(p.Pieces, p.Strips, p.Sheet.Across)
}

// PlainPieces is the trade's own method for fixed pieces (common practice, no
// source): each size is cut from sheets of its own, in the orientation that
// gets more from a sheet (unturned at a tie), rows across the sheet. Pieces cut
// in lengths share sheets with those of their height. Whole strips come first,
// those of one height together.
//
// The error is a *[TooWide] or an *[Unusable].
func PlainPieces(p SheetProblem) (SheetLayout, error) {
	if err := p.check(); err != nil {
		return SheetLayout{}, err
	}
	var l SheetLayout
	if err := l.addWhole(p); err != nil {
		return SheetLayout{}, err
	}
	shared := newShared(p.Pieces, p.Sheet.Across)
	for _, group := range sizes(p.Pieces, true) {
		first := p.Pieces[group[0]]
		if first.Along <= p.Sheet.Along {
			if rows, ok := shared.rows(group[0], first.Along); ok {
				l.addRows(rows, int(p.Sheet.Along/first.Along))
				continue
			}
		}
		if err := l.addSize(p, group); err != nil {
			return SheetLayout{}, err
		}
	}
	return l, nil
}

// addSize cuts one size from sheets of its own.
func (l *SheetLayout) addSize(p SheetProblem, group []int) error {
	first := p.Pieces[group[0]]
	across, along, per := p.bestGrid(first)
	if per == 0 {
		return p.tooWide(group[0])
	}
	rows := int(p.Sheet.Along / along)
	if first.matching() == 1 {
		l.addRows(fill(p.Pieces, group, across, along, per), rows)
		return nil
	}
	n := per * rows / first.matching() * first.matching()
	if n == 0 {
		return &Unusable{Piece: group[0], Strip: -1, Name: first.Name,
			What: fmt.Sprintf("%d must match and a sheet holds %d", first.matching(), per*rows)}
	}
	for left := total(p.Pieces, group); left > 0; left -= n {
		l.append(CutSheet{Repeat: 1, Rows: fill(window(p.Pieces, group, left, n), group, across, along, per)})
	}
	return nil
}

// window returns the pieces with the counts of one sheet's worth: the next n of
// a size when so many are left.
func window(pieces []Piece, group []int, left, n int) []Piece {
	pieces = slices.Clone(pieces)
	skip := total(pieces, group) - left
	for _, i := range group {
		skipped := min(skip, pieces[i].Count)
		skip -= skipped
		pieces[i].Count = min(n, pieces[i].Count-skipped)
		n -= pieces[i].Count
	}
	return pieces
}

func (p SheetProblem) bestGrid(q Piece) (across, along measure.Length, per int) {
	most := measure.Length(0)
	for _, turned := range q.orientations() {
		a, b := q.sides(turned)
		if n := (p.Sheet.Across / a) * (p.Sheet.Along / b); n > most {
			most, across, along, per = n, a, b, int(p.Sheet.Across/a)
		}
	}
	return across, along, per
}

// tooWide names the side of the sheet that is short for a piece.
func (p SheetProblem) tooWide(i int) error {
	q := p.Pieces[i]
	e := &TooWide{Piece: i, Strip: -1, Name: q.Name, Needs: q.Across, Width: p.Sheet.Across}
	if q.Across <= p.Sheet.Across || q.Turnable && q.Along <= p.Sheet.Across {
		e.Needs, e.Width = q.Along, p.Sheet.Along
		if q.Across > p.Sheet.Across {
			e.Needs = q.Across
		}
	}
	return e
}

// addWhole cuts whole strips, those of one height, whoever asked for them, from
// sheets of their own.
func (l *SheetLayout) addWhole(p SheetProblem) error {
	var heights []measure.Length
	rows := map[measure.Length][]Row{}
	for i, s := range p.Strips {
		switch {
		case s.Count == 0:
			continue
		case s.Height > p.Sheet.Along:
			return &TooWide{Piece: -1, Strip: i, Name: s.Name, Needs: s.Height, Width: p.Sheet.Along}
		}
		if rows[s.Height] == nil {
			heights = append(heights, s.Height)
		}
		rows[s.Height] = append(rows[s.Height], s.rows(i, p.Sheet.Across)...)
	}
	for _, h := range heights {
		l.addRows(rows[h], int(p.Sheet.Along/h))
	}
	return nil
}

// rows is so many whole rows, and one of the part of the last that is used.
func (s WholeStrip) rows(i int, across measure.Length) []Row {
	full, part := s.split(across)
	rows := []Row{{Height: s.Height, Repeat: full, Strip: i}}
	if part > 0 {
		rows = append(rows, Row{Height: s.Height, Repeat: 1, Strip: -1, Parts: []Part{{i, part}}})
	}
	return rows
}

// addRows deals rows of one height onto sheets that hold per rows each.
func (l *SheetLayout) addRows(rows []Row, per int) {
	open, room := CutSheet{Repeat: 1}, per
	for _, r := range rows {
		for left := r.Repeat; left > 0; {
			if room == per && left >= per {
				full := r
				full.Repeat = per
				l.add(CutSheet{Repeat: left / per, Rows: []Row{full}})
				left %= per
				continue
			}
			part := r
			part.Repeat = min(left, room)
			open.Rows = append(open.Rows, part)
			left, room = left-part.Repeat, room-part.Repeat
			if room == 0 {
				l.add(open)
				open, room = CutSheet{Repeat: 1}, per
			}
		}
	}
	if len(open.Rows) > 0 {
		l.add(open)
	}
}
