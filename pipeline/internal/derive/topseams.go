package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// setSeams joins parts, and the sashes between them, into rows and the rows to
// each other; ok is false for what is unknown.
func (s *Size) setSeams(of plan.Setting, st *Setting, seam measure.Length) (l measure.Surd, ok bool) {
	if of.Grid == nil {
		return l, true
	}
	boxes, known := s.boxes(of.Grid.Rows.N, of.Grid.Row)
	if !known || !st.Known {
		return l, false
	}
	if st.OnPoint != nil {
		return st.OnPoint.seams(seam), true
	}
	if g := st.Sashing; g != nil {
		boxes = Sashed(boxes, of.Sashing, g.UprightCut, g.LevelCut, g.Stone)
	}
	return piecing.RowSeams(boxes, seam, func(r int) bool { return s.slanted(sashedRow(of, r)) }), true
}

// sashedRow is the cells of a row as sewn, among which rows of sashes count;
// none of those, and none of a row that has sashes in it.
func sashedRow(of plan.Setting, row int) []plan.Cell {
	g := of.Sashing
	if g == nil {
		return of.Grid.Row(row)
	}
	if !g.RowsOnly || (row%2 == 1) != g.Outer {
		return nil
	}
	return of.Grid.Row(row / 2)
}

// Sashed puts sashes between the things of a grid, and round them when they
// go round the outside. Without cornerstones a level sash runs through.
func Sashed[T any](grid [][]T, said *plan.Sashing, upright, level, stone T) [][]T {
	outer, stones := said.Outer, said.Cornerstones.Given()
	laced := func(row []T, between T) []T {
		if said.RowsOnly {
			return row
		}
		var out []T
		if outer {
			out = append(out, between)
		}
		for i, b := range row {
			if i > 0 {
				out = append(out, between)
			}
			out = append(out, b)
		}
		if outer {
			out = append(out, between)
		}
		return out
	}
	sash := []T{level}
	if stones && len(grid) > 0 {
		sash = make([]T, len(grid[0]))
		for i := range sash {
			sash[i] = level
		}
		sash = laced(sash, stone)
	}
	var out [][]T
	for i, row := range grid {
		if i > 0 || outer {
			out = append(out, sash)
		}
		out = append(out, laced(row, upright))
	}
	if outer {
		out = append(out, sash)
	}
	return out
}

// seams is the length of a border's seams: along its strips, where strips are
// joined and across its corners. Derived from geometry.
func (b *Border) seams() measure.Surd {
	joins := joinSeams(b.Said.Joins, b.Cut, b.Strips.Count).Add(joinSeams(b.Said.Joins, b.EndCut, b.EndStrips.Count))
	cut := b.Cut.Surd()
	switch {
	case b.Units != nil:
		joins = cut.MulInt(2 * (max(0, b.Units.Sides-1) + max(0, b.Units.Ends-1)))
	case b.Said.Corners == plan.Mitred:
		joins = joins.Add(cut.Mul(measure.Root2()).MulInt(4))
	}
	if b.Corners > 0 {
		joins = joins.Add(cut.MulInt(4)).Add(b.Outer.Width.Sub(b.Ends).MulInt(2))
	}
	return b.Needed.Add(joins)
}
