package cutting

import (
	"cmp"
	"slices"

	"yardproof/schema/measure"
)

// layout deals a plan's kinds back to the caller's pieces and adds the strips
// that are used whole. Strips of one height follow each other, so that the ruler
// is set once for each height: the tallest first, whole strips before others.
func (in *instance) layout(p Problem, best plan) Layout {
	l := wholeRows(p)
	d := newDealer(in)
	for _, r := range best {
		for left := r.times; left > 0; {
			row, n := d.row(p, r.pattern, left)
			l.add(row)
			left -= n
		}
	}
	l.byHeight()
	return l
}

func (l *Layout) byHeight() {
	slices.SortStableFunc(l.Rows, func(a, b Row) int { return cmp.Compare(b.Height, a.Height) })
}

// wholeRows are the strips that are used whole.
func wholeRows(p Problem) Layout {
	var l Layout
	for i, s := range p.Strips {
		full, _ := s.split(p.Cloth.Width)
		l.add(Row{Height: p.Cloth.whole(s.Height), Repeat: full, Strip: i})
	}
	return l
}

// dealer keeps, by kind, how many of each source are still to be dealt.
type dealer struct {
	in   *instance
	left [][]source
}

func newDealer(in *instance) *dealer {
	d := &dealer{in: in}
	for _, k := range in.kinds {
		d.left = append(d.left, append([]source(nil), k.from...))
	}
	return d
}

// row names the pieces of a strip and says how often it can be repeated with
// these very names.
func (d *dealer) row(p Problem, q pattern, times int) (Row, int) {
	row := Row{Height: d.in.rowHeight(q), Strip: -1}
	n := times
	for i, c := range q.count {
		if c == 0 {
			continue
		}
		if first := d.left[i][0].count; first >= c {
			n = min(n, first/c)
		} else {
			n = 1
		}
	}
	for i, c := range q.count {
		if c > 0 {
			across := d.in.fit(i, q.class).across
			turned := func(q Piece) bool { return q.Across != across }
			d.deal(p.Pieces, &row, i, c, n, turned)
		}
	}
	row.Repeat = n
	return row, n
}

// deal puts c pieces of kind i into each of n equal rows.
func (d *dealer) deal(pieces []Piece, row *Row, i, c, n int, turned func(Piece) bool) {
	for c > 0 {
		f := &d.left[i][0]
		take := min(c, f.count)
		switch {
		case f.strip:
			for range take {
				row.Parts = append(row.Parts, Part{f.index, f.width})
			}
		default:
			row.Cuts = append(row.Cuts, Cut{Piece: f.index, Turned: turned(pieces[f.index]), Count: take})
		}
		f.count -= take * n
		c -= take
		if f.count == 0 {
			d.left[i] = d.left[i][1:]
		}
	}
}

func (in *instance) certificate(p Problem, b proved, s scaling) *Certificate {
	c := &Certificate{Unit: in.unitH, Scale: s.scale, Root: b.proof}
	for _, s := range p.Strips {
		full, _ := s.split(p.Cloth.Width)
		c.Whole += p.Cloth.whole(s.Height) * measure.Length(full)
	}
	c.Claim = c.Whole + measure.Length(b.bound)*in.unitH
	for _, h := range in.heights {
		c.Heights = append(c.Heights, measure.Length(h)*in.unitH)
	}
	for _, k := range in.kinds {
		c.Sizes = append(c.Sizes, Size{Across: k.across, Along: k.along, Count: k.demand, Turnable: k.turnable})
	}
	return c
}
