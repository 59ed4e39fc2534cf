package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// layTop sets the blocks, then each border round what is inside it.
func (s *Size) layTop() {
	l := &s.Of.Layout
	seam := s.Of.Seam.Allowance.Length
	t := &s.Top
	t.Setting = s.set(l.Setting, seam)
	t.Blocks, t.Grid = t.Setting.Blocks, t.Setting.Rows
	if !t.Setting.Known {
		return
	}
	t.Known, t.Box = true, t.Setting.Box
	t.Borders = s.frame(t.Box, l.Borders, seam)
	for _, b := range t.Borders {
		t.Known, t.Box = t.Known && b.Known, b.Outer
	}
	t.Finished = t.Box.Finished(seam)
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
