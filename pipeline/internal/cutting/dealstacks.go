package cutting

import (
	"slices"

	"yardproof/schema/measure"
)

// layoutStacked deals a three-stage plan back to the caller's pieces. Rows are
// named one by one and equal neighbours joined.
func (in *instance) layoutStacked(p Problem, best plan) Layout {
	l := wholeRows(p)
	d := newDealer(in)
	for _, r := range best {
		for n := 0; n < r.times; n++ {
			row := d.stackedRow(p, r.pattern)
			if last := len(l.Rows) - 1; last >= 0 && alikeRows(withRepeat(l.Rows[last], 1), row) {
				l.Rows[last].Repeat++
				l.Length += row.Height
				continue
			}
			l.add(row)
		}
	}
	l.byHeight()
	return l
}

// stackedRow names the pieces of one strip; columns are cut short of what the
// plan has trimmed.
func (d *dealer) stackedRow(p Problem, q pattern) Row {
	if q.stacks == nil || d.in.fits(q, q.class) {
		row, _ := d.row(p, q, 1)
		return row
	}
	row := Row{Height: measure.Length(d.in.heights[q.class]) * d.in.unitH, Strip: -1, Repeat: 1}
	left := slices.Clone(q.count)
	for i := range d.in.kinds {
		n := min(q.stacks[i], left[i])
		left[i] -= n
		if n > 0 {
			width := d.in.fit(i, q.class).across
			d.deal(p.Pieces, &row, i, n, 1, func(q Piece) bool { return q.Across != width })
		}
	}
	for t, column := range d.in.stacks.column {
		for n := 0; n < q.stacks[len(d.in.kinds)+t]; n++ {
			d.stack(p, &row, d.in.stacks.wide.kinds[len(d.in.kinds)+t].shapes[0].across, column, left)
		}
	}
	return row
}

// stack names the pieces of one column and joins it to the last if that is
// alike.
func (d *dealer) stack(p Problem, row *Row, width measure.Length, column, left []int) {
	s := Stack{Width: width, Count: 1}
	var inner Row
	for i, c := range column {
		n := min(c, left[i])
		left[i] -= n
		if n > 0 {
			d.deal(p.Pieces, &inner, i, n, 1, func(q Piece) bool { return q.Across != s.Width })
		}
	}
	s.Cuts = inner.Cuts
	if len(s.Cuts) == 0 {
		return
	}
	if last := len(row.Stacks) - 1; last >= 0 && row.Stacks[last].Width == s.Width && slices.Equal(row.Stacks[last].Cuts, s.Cuts) {
		row.Stacks[last].Count++
		return
	}
	row.Stacks = append(row.Stacks, s)
}
