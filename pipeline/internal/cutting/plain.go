package cutting

import "yardproof/schema/measure"

// Plain lays a problem out by the trade's own method (common practice, no
// source): each size of piece is cut from its own strips, in the better of its
// allowed orientations, and its last strip may be partly used. Fewer inches
// win; at equal inches the taller, hence fewer, strips. Pieces of equal size,
// whoever asked for them, count as one size. Pieces cut in lengths share strips
// of their height. Lengthwise pieces come first, then whole strips.
//
// The error is a *[TooWide] or an *[Unusable].
func Plain(p Problem) (Layout, error) {
	if err := p.check(); err != nil {
		return Layout{}, err
	}
	var l Layout
	groups := sizes(p.Pieces, false)
	if err := l.addSizes(p, groups, true); err != nil {
		return Layout{}, err
	}
	for i, s := range p.Strips {
		l.addWhole(p.Cloth, i, s)
	}
	if err := l.addSizes(p, groups, false); err != nil {
		return Layout{}, err
	}
	return l, nil
}

// addSizes cuts the sizes that are lengthwise, or those that are not.
func (l *Layout) addSizes(p Problem, groups [][]int, lengthwise bool) error {
	shared := newShared(p.Pieces, p.Cloth.Width)
	for _, group := range groups {
		first := p.Pieces[group[0]]
		if first.Lengthwise != lengthwise {
			continue
		}
		rows, ok := shared.rows(group[0], p.Cloth.whole(first.Along))
		if !ok {
			var err error
			if rows, err = ownStrips(p, group); err != nil {
				return err
			}
		}
		for _, r := range rows {
			l.add(r)
		}
	}
	return nil
}

func (l *Layout) addWhole(c Cloth, i int, s WholeStrip) {
	full, part := s.split(c.Width)
	l.add(Row{Height: c.whole(s.Height), Repeat: full, Strip: i})
	if part > 0 {
		l.add(Row{Height: c.whole(s.Height), Repeat: 1, Strip: -1, Parts: []Part{{i, part}}})
	}
}

// split gives the strips used whole and the width used of the last one, zero
// if that is used whole too.
func (s WholeStrip) split(width measure.Length) (full int, part measure.Length) {
	if s.Count > 0 && s.Last > 0 && s.Last < width {
		return s.Count - 1, s.Last
	}
	return s.Count, 0
}

// sizes groups the indices of wanted pieces by equal size, in order of first
// appearance. A turnable 2 x 3 and a turnable 3 x 2 are one size; pieces that
// must match in different numbers are not, if that matters.
func sizes(pieces []Piece, matching bool) [][]int {
	type key struct {
		a, b     measure.Length
		turnable bool
		together int
		first    bool
		lengths  bool
	}
	at := map[key]int{}
	var groups [][]int
	for i, q := range pieces {
		if q.Count == 0 {
			continue
		}
		k := key{q.Across, q.Along, q.Turnable, 1, q.Lengthwise, q.InLengths}
		if matching {
			k.together = q.matching()
		}
		if q.Turnable && q.Across > q.Along && !q.InLengths {
			k.a, k.b = k.b, k.a
		}
		if q.Across == q.Along {
			k.turnable = false
		}
		g, seen := at[k]
		if !seen {
			g = len(groups)
			at[k] = g
			groups = append(groups, nil)
		}
		groups[g] = append(groups[g], i)
	}
	return groups
}

// ownStrips cuts one size from strips of its own.
func ownStrips(p Problem, group []int) ([]Row, error) {
	first := p.Pieces[group[0]]
	count := total(p.Pieces, group)
	var best struct {
		height, length measure.Length
		across         measure.Length
		per            int
	}
	needs := first.Across
	for _, turned := range first.orientations() {
		across, along := first.sides(turned)
		needs = min(needs, across)
		per := int(p.Cloth.Width / across)
		if per == 0 {
			continue
		}
		height := p.Cloth.whole(along)
		length := height * measure.Length(ceilDiv(count, per))
		if best.per == 0 || length < best.length || length == best.length && height > best.height {
			best.height, best.length, best.across, best.per = height, length, across, per
		}
	}
	if best.per == 0 {
		return nil, &TooWide{Piece: group[0], Strip: -1, Name: first.Name, Needs: needs, Width: p.Cloth.Width}
	}
	return fill(p.Pieces, group, best.across, best.height, best.per), nil
}

func total(pieces []Piece, group []int) int {
	n := 0
	for _, i := range group {
		n += pieces[i].Count
	}
	return n
}

func ceilDiv(a, b int) int { return (a + b - 1) / b }

// fill deals the pieces of one size into strips that hold per of them each,
// keeping the callers' pieces apart by name.
func fill(pieces []Piece, group []int, across, height measure.Length, per int) []Row {
	var rows []Row
	blank := Row{Height: height, Repeat: 1, Strip: -1}
	open, room := blank, per
	for _, i := range group {
		left, turned := pieces[i].Count, pieces[i].Across != across
		for left > 0 {
			if room == per && left >= per {
				rows = append(rows, Row{Height: height, Repeat: left / per, Strip: -1,
					Cuts: []Cut{{Piece: i, Turned: turned, Count: per}}})
				left %= per
				continue
			}
			n := min(left, room)
			open.Cuts = append(open.Cuts, Cut{Piece: i, Turned: turned, Count: n})
			left, room = left-n, room-n
			if room == 0 {
				rows = append(rows, open)
				open, room = blank, per
			}
		}
	}
	if len(open.Cuts) > 0 {
		rows = append(rows, open)
	}
	return rows
}
