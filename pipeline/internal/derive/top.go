package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
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

// joinLoss is the length that each join of two strips costs: the strip's width on
// the diagonal, two seam allowances straight.
func joinLoss(j plan.Joins, width, seam figure.F) figure.F {
	if j == plan.Straight {
		return seam.By(2)
	}
	return width
}

// join is how many strips, joined end to end, give a length: the smallest k with
// k x U - (k-1) x join >= need. Derived from geometry.
func join(need, each, loss figure.F) Joined {
	j := Joined{Need: need.Surd(), Each: each.Length(), Loss: loss.Length()}
	_, j.OK = piecing.JoinedStrips(j.Need, j.Each, j.Loss)
	if !j.OK || j.Need.Sign() <= 0 {
		j.Told = figure.Unknown(need, each, loss)
		return j
	}
	need, each, loss = need.As("need", "length wanted"), each.As("U", "usable length of a strip"), loss.As("join", "length each join costs")
	k := figure.Most(one, need.Less(loss).Over(each.Less(loss)).Ceil()).As("k", "strips")
	long := k.Times(each).Less(k.Less(one).Times(loss)).As("", "length they give")
	j.Told = k.InWords("smallest k with k x U - (k-1) x join >= need").Telling(need, each, loss, long)
	j.Count, j.Length = j.Told.N(), long.Length()
	return j
}

// round is the way round the finished quilt.
func (s *Size) round() figure.F {
	w, l := s.FinishedFigure(false).As("W", "finished width"), s.FinishedFigure(true).As("L", "finished length")
	return w.Plus(l).By(2)
}

// join joins strips of a fabric for something that is named.
func (s *Size) join(what string, need figure.F, f *Fabric, joins plan.Joins, width figure.F, seam plan.Seam) Joined {
	j := join(need, f.longFigure(), joinLoss(joins, width, seamFigure(seam)))
	j.Told = j.Told.Is(what, "strips")
	return j
}
