package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// layTop sets the blocks, then each border round what is inside it.
func (s *Size) layTop() {
	g := s.Of.Layout.Grid
	if g == nil {
		return
	}
	s.listBlocks(g)
	boxes, ok := s.boxes(g.Rows.N, func(r int) []plan.Cell {
		line := make([]plan.Cell, g.Columns.N)
		for c := range line {
			line[c] = g.Cell(r, c)
		}
		return line
	})
	if !ok || len(boxes) == 0 || len(boxes[0]) == 0 {
		return
	}
	seam := s.Of.Seam.Allowance.Length
	s.Top.Known = true
	s.Top.Grid = piecing.Assemble(boxes, seam)
	s.Top.Box = s.Top.Grid.Box
	for i := range s.Of.Layout.Borders {
		s.addBorder(&s.Of.Layout.Borders[i])
	}
	s.Top.Finished = s.Top.Box.Finished(seam)
}

// listBlocks counts the parts that stand in the grid.
func (s *Size) listBlocks(g *plan.Grid) {
	at := map[string]int{}
	for r := range g.Rows.N {
		for c := range g.Columns.N {
			name := g.Cell(r, c).Part.Text
			p := s.byName[name]
			if p == nil {
				continue
			}
			i, seen := at[name]
			if !seen {
				i = len(s.Top.Blocks)
				at[name] = i
				s.Top.Blocks = append(s.Top.Blocks, Block{Part: p})
			}
			s.Top.Blocks[i].Count++
		}
	}
}

func (s *Size) addBorder(b *plan.Border) {
	seam := s.Of.Seam.Allowance.Length
	if b.Seam != nil {
		seam = b.Seam.Allowance.Length
	}
	d := Border{Said: b, Seam: seam, Inner: s.Top.Box}
	d.Border = piecing.ButtedBorder(s.Top.Box, b.Width.Length, seam, b.EndsOn)
	if f := s.byFabric[b.Fabric.Text]; f != nil {
		d.Strips = join(d.Needed, f.stripLength(), joinLoss(b.Joins, d.Cut, seam))
	}
	s.Top.Borders = append(s.Top.Borders, d)
	s.Top.Box = d.Outer
}

// joinLoss is the length that each join of two strips costs: the strip's
// width on the diagonal, two seam allowances straight.
func joinLoss(j plan.Joins, width, seam measure.Length) measure.Length {
	if j == plan.Straight {
		return 2 * seam
	}
	return width
}

func join(need measure.Surd, each, loss measure.Length) Joined {
	j := Joined{Need: need, Each: each, Loss: loss}
	j.Count, j.OK = piecing.JoinedStrips(need, each, loss)
	j.Length = piecing.JoinedLength(j.Count, each, loss)
	return j
}
