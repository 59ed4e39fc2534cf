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
		stones := of.Sashing.Cornerstones.Given()
		boxes = Sashed(boxes, of.Sashing.Outer, stones, g.UprightCut, g.LevelCut, g.Stone)
	}
	return piecing.RowSeams(boxes, seam, func(r int) bool { return of.Sashing == nil && s.slanted(of.Grid.Row(r)) }), true
}

// Sashed puts sashes between the things of a grid, and round them when outer.
// Without cornerstones a level sash runs through.
func Sashed[T any](grid [][]T, outer, stones bool, upright, level, stone T) [][]T {
	laced := func(row []T, between T) []T {
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
		joins = cut.MulInt(2 * max(0, b.Units.Sides+b.Units.Ends-2))
	case b.Said.Corners == plan.Mitred:
		joins = joins.Add(cut.Mul(measure.Root2()).MulInt(4))
	}
	if b.Corners > 0 {
		joins = joins.Add(cut.MulInt(4)).Add(b.Outer.Width.Sub(b.Ends).MulInt(2))
	}
	return b.Needed.Add(joins)
}
