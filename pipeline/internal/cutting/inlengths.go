package cutting

import (
	"cmp"
	"slices"

	"yardproof/schema/measure"
)

// shared are the strips of pieces that the trade cuts in lengths from strips as
// wide as they are high. Pieces longer than a strip are cut as others are.
type shared struct {
	pieces []Piece
	width  measure.Length
	dealt  map[measure.Length]bool // by height
}

func newShared(pieces []Piece, width measure.Length) shared {
	return shared{pieces, width, map[measure.Length]bool{}}
}

// rows are the strips of all pieces of the height of one, once; ok is false of
// a piece that is not cut in lengths.
func (s shared) rows(piece int, height measure.Length) (rows []Row, ok bool) {
	in := func(q Piece) bool {
		return q.InLengths && q.Count > 0 && q.Across <= s.width && q.Along == s.pieces[piece].Along
	}
	if !in(s.pieces[piece]) {
		return nil, false
	}
	if s.dealt[s.pieces[piece].Along] {
		return nil, true
	}
	s.dealt[s.pieces[piece].Along] = true
	var group []int
	for i, q := range s.pieces {
		if in(q) {
			group = append(group, i)
		}
	}
	slices.SortFunc(group, func(a, b int) int {
		return cmp.Or(cmp.Compare(s.pieces[b].Across, s.pieces[a].Across), cmp.Compare(a, b))
	})
	return endToEnd(s.pieces, group, s.width, height), true
}

// endToEnd cuts pieces from strips of their common height: each strip takes as
// many of the longest as go, then of the next, and is cut as often as there are
// enough of all (common practice, no source).
func endToEnd(pieces []Piece, group []int, width, height measure.Length) []Row {
	left := make([]int, len(group))
	for t, i := range group {
		left[t] = pieces[i].Count
	}
	var rows []Row
	for {
		row, room := Row{Height: height, Repeat: maxCount, Strip: -1}, width
		taken := make([]int, len(group))
		for t, i := range group {
			n := min(left[t], int(room/pieces[i].Across))
			if n == 0 {
				continue
			}
			taken[t], room = n, room-pieces[i].Across*measure.Length(n)
			row.Cuts = append(row.Cuts, Cut{Piece: i, Count: n})
			row.Repeat = min(row.Repeat, left[t]/n)
		}
		if len(row.Cuts) == 0 {
			return rows
		}
		for t, n := range taken {
			left[t] -= n * row.Repeat
		}
		rows = append(rows, row)
	}
}
