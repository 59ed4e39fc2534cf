package cutting

import (
	"fmt"

	"yardproof/schema/measure"
)

// rect is a placed rectangle, in ticks.
type rect struct{ x, y, w, h measure.Length }

// illegal recounts a layout from the problem alone: every rectangle is placed,
// none leaves the cloth or touches the inside of another, every piece and
// strip is there as often as it was asked for, and the length is what the
// rows take. It shares no code with the solver.
func illegal(p Problem, l Layout) error {
	pieces := make([]int, len(p.Pieces))
	whole := make([]int, len(p.Strips))
	parts := make([]int, len(p.Strips))
	y := measure.Length(0)
	for _, r := range l.Rows {
		if r.Repeat <= 0 {
			return fmt.Errorf("row %+v is repeated %d times", r, r.Repeat)
		}
		if err := illegalRow(p, r); err != nil {
			return err
		}
		for _, c := range r.Cuts {
			pieces[c.Piece] += c.Count * r.Repeat
		}
		for _, q := range r.Parts {
			parts[q.Strip] += r.Repeat
		}
		for _, s := range r.Stacks {
			for _, c := range s.Cuts {
				pieces[c.Piece] += c.Count * s.Count * r.Repeat
			}
		}
		if r.Strip >= 0 {
			whole[r.Strip] += r.Repeat
		}
		if err := illegalPanel(p, r, pieces, parts); err != nil {
			return err
		}
		y += r.Height * measure.Length(r.Repeat)
	}
	if y != l.Length {
		return fmt.Errorf("the rows take %d, the layout says %d", y, l.Length)
	}
	for i, q := range p.Pieces {
		if pieces[i] != q.Count {
			return fmt.Errorf("piece %d is cut %d times, wanted %d", i, pieces[i], q.Count)
		}
	}
	for i, s := range p.Strips {
		wantWhole, wantParts := s.Count, 0
		if s.Count > 0 && s.Last > 0 && s.Last < p.Cloth.Width {
			wantWhole, wantParts = s.Count-1, 1
		}
		if whole[i] != wantWhole || parts[i] != wantParts {
			return fmt.Errorf("strip %d is cut %d times whole and %d in part", i, whole[i], parts[i])
		}
	}
	return nil
}

// illegalPanel checks the strips beside lengthwise cuts, and counts their pieces.
func illegalPanel(p Problem, r Row, pieces, parts []int) error {
	beside := p
	for _, c := range r.Cuts {
		q := p.Pieces[c.Piece]
		if c.Turned && (q.Lengthwise || !q.Turnable) {
			return fmt.Errorf("piece %d must not be turned", c.Piece)
		}
		across := q.Across
		if c.Turned {
			across = q.Along
		}
		beside.Cloth.Width -= across * measure.Length(c.Count)
	}
	high := measure.Length(0)
	for _, q := range r.Panel {
		if err := illegalRow(beside, q); err != nil || q.Strip >= 0 || q.Repeat <= 0 || len(q.Stacks)+len(q.Panel) > 0 {
			return fmt.Errorf("panel row %+v: %v", q, err)
		}
		for _, c := range q.Cuts {
			pieces[c.Piece] += c.Count * q.Repeat * r.Repeat
		}
		for _, part := range q.Parts {
			parts[part.Strip] += q.Repeat * r.Repeat
		}
		high += q.Height * measure.Length(q.Repeat)
	}
	if high > r.Height {
		return fmt.Errorf("a panel of %d in a row of %d", high, r.Height)
	}
	return nil
}

func illegalRow(p Problem, r Row) error {
	if p.Cloth.Repeat > 0 && r.Height%p.Cloth.Repeat != 0 {
		return fmt.Errorf("row height %d is no multiple of the repeat", r.Height)
	}
	var placed []rect
	x := measure.Length(0)
	put := func(w, h measure.Length) {
		placed = append(placed, rect{x, 0, w, h})
		x += w
	}
	if r.Strip >= 0 {
		put(p.Cloth.Width, p.Strips[r.Strip].Height)
	}
	for _, q := range r.Parts {
		if q.Width != p.Strips[q.Strip].Last {
			return fmt.Errorf("part %+v is not the last of its strip", q)
		}
		put(q.Width, p.Strips[q.Strip].Height)
	}
	for _, c := range r.Cuts {
		q := p.Pieces[c.Piece]
		if c.Turned && !q.Turnable || c.Count <= 0 {
			return fmt.Errorf("cut %+v of a piece that must not be turned, or of nothing", c)
		}
		w, h := q.Across, q.Along
		if c.Turned {
			w, h = h, w
		}
		for n := 0; n < c.Count; n++ {
			put(w, h)
		}
	}
	for _, s := range r.Stacks {
		for n := 0; n < s.Count; n++ {
			y := measure.Length(0)
			for _, c := range s.Cuts {
				q := p.Pieces[c.Piece]
				w, h := q.Across, q.Along
				if c.Turned {
					w, h = h, w
				}
				if c.Turned && !q.Turnable || w > s.Width {
					return fmt.Errorf("cut %+v does not belong in a column of %d", c, s.Width)
				}
				for m := 0; m < c.Count; m++ {
					placed = append(placed, rect{x, y, w, h})
					y += h
				}
			}
			x += s.Width
		}
	}
	return overlap(placed, rect{0, 0, p.Cloth.Width, r.Height})
}

func overlap(placed []rect, in rect) error {
	for i, a := range placed {
		if a.x < in.x || a.y < in.y || a.x+a.w > in.x+in.w || a.y+a.h > in.y+in.h {
			return fmt.Errorf("%+v leaves %+v", a, in)
		}
		for _, b := range placed[:i] {
			if a.x < b.x+b.w && b.x < a.x+a.w && a.y < b.y+b.h && b.y < a.y+a.h {
				return fmt.Errorf("%+v overlaps %+v", a, b)
			}
		}
	}
	return nil
}
