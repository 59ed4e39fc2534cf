package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/report"
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

// FinishedWork tells why the quilt finishes as wide as it does, or as long.
func (s *Size) FinishedWork(length bool) *report.Work {
	what := "finished width"
	if length {
		what = "finished length"
	}
	return s.once(what, func() *report.Work {
		w := &report.Work{Formula: "middle + 2 x each border", Value: s.surd(axis(s.Top.Finished, length))}
		middle := axis(s.Top.Setting.Box.Finished(s.Of.Seam.Allowance.Length), length)
		w.Terms = append(w.Terms, term("middle", "blocks as set, finished", because(s.surd(middle), s.middleWork(length)), s.Of.Layout.Grid.At))
		for _, b := range s.Top.Borders {
			each := axis(b.Outer, length).Sub(axis(b.Inner, length)).DivInt(2)
			if each.IsZero() {
				continue // it has no strips there
			}
			at := b.Said.Width.At
			if b.Said.Copes() {
				at = b.Said.To[0].At
			}
			w.Terms = append(w.Terms, term("", "border "+b.Said.Name.Text+", finished", s.surd(each), at))
		}
		return w
	})
}

// middleWork tells how sashed blocks, or blocks on point, come to their
// width; nil for blocks side by side.
func (s *Size) middleWork(length bool) *report.Work {
	what := "width of the middle"
	if length {
		what = "length of the middle"
	}
	st := s.Top.Setting
	value := s.surd(axis(st.Box.Finished(s.Of.Seam.Allowance.Length), length))
	at := s.Of.Layout.Grid.Columns.At
	if length {
		at = s.Of.Layout.Grid.Rows.At
	}
	switch {
	case !s.asFormula(length):
		return nil
	case st.OnPoint != nil:
		return s.once(what, func() *report.Work { return s.tellOnPoint(st.OnPoint, length, value, at) })
	case st.Sashing != nil && st.Sashing.RowsOnly:
		if !length {
			return nil
		}
		return s.once(what, func() *report.Work { return s.tellSashedRows(st, value) })
	case st.Sashing != nil:
		return s.once(what, func() *report.Work { return s.tellSashed(st.Sashing, length, value, at) })
	}
	return nil
}

// asFormula reports whether blocks between sashes are as large as each other, as the
// formula has it.
func (s *Size) asFormula(length bool) bool {
	st := s.Top.Setting
	return st.Sashing == nil || st.OnPoint != nil || st.Sashing.RowsOnly ||
		axis(st.Box.Finished(s.Of.Seam.Allowance.Length), length).Equal(axis(st.Sashing.Finished(), length))
}

func (s *Size) tellOnPoint(o *OnPoint, length bool, value report.Cell, at source.Range) *report.Work {
	n := o.Columns
	if length {
		n = o.Rows
	}
	w := &report.Work{Formula: "k x b x sqrt2 + 2 x float", Value: value}
	w.Terms = append(w.Terms, term("k", "full blocks point to point", report.N(n), at),
		term("b", "side of a block, finished", s.surd(o.Block), source.Range{}))
	if o.Sashing != nil {
		w.Formula = "k x (b + t) x sqrt2"
		w.Terms = append(w.Terms, term("t", "sashing, finished", s.length(o.Sashing.Width.Length), o.Sashing.Width.At))
		return w
	}
	w.Terms = append(w.Terms, term("float", "of the points inside the outer seam", s.surd(o.Float), o.Said.Float.At))
	return w
}

func (s *Size) tellSashedRows(st *Setting, value report.Cell) *report.Work {
	g := st.Sashing
	rows := st.Rows.Finished(s.Of.Seam.Allowance.Length).Height
	w := &report.Work{Formula: "rows + n x t", Value: value}
	w.Terms = append(w.Terms, term("rows", "rows side by side, finished", s.surd(rows), s.Of.Layout.Grid.At),
		term("n", "sashes between them, above and below", report.N(g.Runs()), g.Said.At),
		term("t", "sashing, finished", s.length(g.Said.Width.Length), g.Said.Width.At))
	return w
}

func (s *Size) tellSashed(g *Sashing, length bool, value report.Cell, at source.Range) *report.Work {
	n, block := g.Columns, g.Block.Width
	if length {
		n, block = g.Rows, g.Block.Height
	}
	w := &report.Work{Formula: "k x b + (k-1) x t", Value: value}
	if g.Outer {
		w.Formula = "k x b + (k+1) x t"
	}
	w.Terms = append(w.Terms, term("k", "blocks", report.N(n), at), term("b", "block, finished", s.surd(block), source.Range{}),
		term("t", "sashing, finished", s.length(g.Said.Width.Length), g.Said.Width.At))
	return w
}
