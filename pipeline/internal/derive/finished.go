package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// axis picks the width of a box, or its length.
func axis(b piecing.Box, length bool) measure.Surd {
	if length {
		return b.Height
	}
	return b.Width
}

// FinishedFigure is how wide the quilt finishes, or how long: its middle, and each
// border twice.
func (s *Size) FinishedFigure(length bool) figure.F {
	i, what := 0, "finished width"
	if length {
		i, what = 1, "finished length"
	}
	if s.Top.told[i] != (figure.F{}) {
		return s.Top.told[i]
	}
	middle := s.middle(length).As("middle", "blocks as set, finished").Where(s.Of.Layout.Grid.At)
	told, sum := []figure.F{middle}, middle
	for _, b := range s.Top.Borders {
		each := axis(b.Outer, length).Sub(axis(b.Inner, length)).DivInt(2)
		if each.IsZero() {
			continue // it has no strips there
		}
		border := b.wide(each).As("", "border "+b.Said.Name.Text+", finished")
		told, sum = append(told, border), sum.Plus(border.By(2))
	}
	s.Top.told[i] = sum.InWords("middle + 2 x each border").Is("", what).As("", "").Telling(told...)
	return s.Top.told[i]
}

// wide is how wide a border finishes: as the plan says, or what is missing to the
// size that it brings the quilt to.
func (b Border) wide(each measure.Surd) figure.F {
	if b.Said.Copes() {
		return figure.Given(figure.Length, each, "half of what is missing", b.Inside).Where(b.Said.To[0].At)
	}
	if l, ok := each.Length(); ok && l == b.Said.Width.Length {
		return figure.Said("", "border", l, b.Said.Width.At)
	}
	return figure.Given(figure.Length, each, "as its units or strips make it", b.Inside).Where(b.Said.Width.At)
}

// middle is how wide the blocks are as they are set, or how long, without borders:
// side by side, with sashing, or on point. All formulas are derived from geometry.
func (s *Size) middle(length bool) figure.F {
	st := s.Top.Setting
	value := axis(st.Box.Finished(s.Of.Seam.Allowance.Length), length)
	at, what := s.Of.Layout.Grid.Columns.At, "width of the middle"
	if length {
		at, what = s.Of.Layout.Grid.Rows.At, "length of the middle"
	}
	var f figure.F
	switch {
	case st.OnPoint != nil:
		f = st.OnPoint.middle(length, at)
	case st.Sashing != nil && st.Sashing.RowsOnly && length:
		f = st.sashedRows(s)
	case st.Sashing != nil && !st.Sashing.RowsOnly:
		f = st.Sashing.middle(length, at)
	}
	if f.Known() && f.Surd().Equal(value) {
		return f.Is("", what)
	}
	var from []figure.F
	for _, b := range st.Blocks {
		from = append(from, b.Part.side(length).As("", b.Part.Name.Text+", unfinished"))
	}
	return figure.Given(figure.Length, value, "the blocks side by side, less the seams", from...).Telling(from...)
}

// middle is k full blocks point to point, and what they float.
func (o *OnPoint) middle(length bool, at source.Range) figure.F {
	n := o.Columns
	if length {
		n = o.Rows
	}
	k := figure.Counted("k", "full blocks point to point", n, at)
	b := figure.Given(figure.Length, o.Block, "the least of them").As("b", "side of a block, finished")
	if o.Sashing != nil {
		t := figure.Said("t", "sashing, finished", o.Sashing.Width.Length, o.Sashing.Width.At)
		return k.Times(b.Plus(t)).Times(figure.Root2())
	}
	float := figure.Said("float", "of the points inside the outer seam", o.Said.Float.Length, o.Said.Float.At)
	return k.Times(b).Times(figure.Root2()).Plus(float.By(2))
}

// sashedRows is the length of rows with a sash between them.
func (st *Setting) sashedRows(s *Size) figure.F {
	g := st.Sashing
	high := st.Rows.Finished(s.Of.Seam.Allowance.Length).Height
	rows := figure.Given(figure.Length, high, "the rows, less the seams").As("rows", "rows side by side, finished").Where(s.Of.Layout.Grid.At)
	n := figure.Counted("n", "sashes between them, above and below", g.Runs(), g.Said.At)
	return rows.Plus(n.Times(g.told()))
}

func (g *Sashing) told() figure.F {
	return figure.Said("t", "sashing, finished", g.Said.Width.Length, g.Said.Width.At)
}

// middle is k blocks with sashes between them, and round them where the plan says so.
func (g *Sashing) middle(length bool, at source.Range) figure.F {
	n, block := g.Columns, g.Block.Width
	if length {
		n, block = g.Rows, g.Block.Height
	}
	k := figure.Counted("k", "blocks", n, at)
	b := figure.Given(figure.Length, block, "the least of them").As("b", "block, finished")
	between := k.Less(one)
	if g.Outer {
		between = k.Plus(one)
	}
	return k.Times(b).Plus(between.Times(g.told()))
}
