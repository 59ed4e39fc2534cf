package piecing

import "yardproof/schema/measure"

// Sew is work sewn into rows and the rows to each other, with allowance s. Each cell
// is cut but once, to what shows of it between its seams. Rows that are wider than
// others are trimmed. ok is false where nothing is left of a cell.
func Sew(rows [][]Patchwork, seam measure.Length) (w Patchwork, ok bool) {
	if len(rows) == 0 {
		return Patchwork{}, false
	}
	boxes := make([][]Box, len(rows))
	for r, row := range rows {
		if len(row) == 0 {
			return Patchwork{}, false
		}
		for _, w := range row {
			boxes[r] = append(boxes[r], w.Size())
		}
	}
	a := Assemble(boxes, seam)
	whole := Patchwork{Outline: Rectangle(Point{}, a.Box)}
	if len(rows) == 1 && len(rows[0]) == 1 {
		return rows[0][0], true
	}
	both, corner := (2 * seam).Surd(), Point{}
	for r, row := range rows {
		corner.X = measure.Surd{}
		down := between(r, len(rows), a.RowHeights[r], seam)
		for c, w := range row {
			width := boxes[r][c].Width
			across := between(c, len(row), width, seam)
			across.to = measure.Min(across.to, a.Width.Sub(corner.X)) // rows wider than others are trimmed
			if across.empty() || down.empty() {
				return Patchwork{}, false
			}
			shown := w.Shown(rectangle(across, down)).Moved(corner)
			whole.Patches = append(whole.Patches, shown.Patches...)
			corner.X = corner.X.Add(width).Sub(both)
		}
		corner.Y = corner.Y.Add(a.RowHeights[r]).Sub(both)
	}
	return whole, true
}

// span is a stretch of a cell that shows.
type span struct{ from, to measure.Surd }

func (s span) empty() bool { return s.from.Cmp(s.to) >= 0 }

// between is what shows of the i-th of n cells in a line: its allowances are
// taken up where it is sewn to a neighbour.
func between(i, n int, length measure.Surd, seam measure.Length) span {
	s := span{to: length}
	if i > 0 {
		s.from = seam.Surd()
	}
	if i < n-1 {
		s.to = length.Sub(seam.Surd())
	}
	return s
}

func rectangle(across, down span) Polygon {
	size := Box{Width: across.to.Sub(across.from), Height: down.to.Sub(down.from)}
	return Rectangle(Point{X: across.from, Y: down.from}, size)
}

// Shown is CutTo with a rectangle. Patches that lie inside it, which are most of a
// large top, are not worth cutting.
func (w Patchwork) Shown(rectangle Polygon) Patchwork {
	shown := Patchwork{Outline: rectangle}
	for _, p := range w.Patches {
		if !inside(p.Outline, rectangle[0], rectangle[2]) {
			p.Outline = p.Outline.Overlap(rectangle)
		}
		if p.Outline != nil {
			shown.Patches = append(shown.Patches, p)
		}
	}
	return shown
}

// inside reports whether every corner lies between two corners of a rectangle.
func inside(p Polygon, low, high Point) bool {
	for _, q := range p {
		if q.X.Cmp(low.X) < 0 || q.Y.Cmp(low.Y) < 0 || q.X.Cmp(high.X) > 0 || q.Y.Cmp(high.Y) > 0 {
			return false
		}
	}
	return true
}
