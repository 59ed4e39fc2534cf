package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// TradeCut is the square for some triangles by geometry, by the trade's round
// figures and in the plan.
type TradeCut struct {
	For      string       // the part, or "side triangles"
	Finished measure.Surd // of the unit, or of the block that is set in the triangles
	Exact    measure.Surd // that leaves nothing over, but the float that a plan states
	Trade    measure.Surd
	Told     bool           // the trade has a figure
	Cut      measure.Length // in the plan
}

// Larger is what the trade's square exceeds the exact one by, negative when it is
// short.
func (c TradeCut) Larger() measure.Surd { return c.Trade.Sub(c.Exact) }

// TradeCuts are the squares for half- and quarter-square units and for setting
// triangles, parts in their order and the layout last.
func (s *Size) TradeCuts() []TradeCut {
	var all []TradeCut
	for _, p := range s.Parts {
		if p.Needed == 0 || !p.Known {
			continue
		}
		if c, ok := s.tradeUnit(p); ok {
			all = append(all, c)
		}
		if p.Setting != nil {
			all = append(all, tradeSetting(p.Name, p.Setting, p.Seam.Allowance.Length)...)
		}
	}
	if st := s.Top.Setting; st != nil && st.Known {
		all = append(all, tradeSetting(plan.Text{}, st, s.Of.Seam.Allowance.Length)...)
	}
	return all
}

// tradeUnit is the square for a half- or quarter-square unit. What a unit that is
// not trimmed finishes at is what the trade's figures would make of its square,
// where that is a size as patterns print them; ok is false where it is none.
func (s *Size) tradeUnit(p *Part) (c TradeCut, ok bool) {
	t, seam := p.Triangle, p.Seam.Allowance.Length
	if t == nil {
		return c, false
	}
	trade, told := piecing.TradeAt(seam)
	c = TradeCut{For: p.Name.Text, Finished: p.Width.Sub((2 * seam).Surd()), Exact: t.Exact, Cut: t.Cut, Told: told}
	if p.Width.Equal(t.Untrimmed) {
		f, drafted := t.drafted(trade)
		if !told || !drafted || f <= 0 || !f.On(s.Plan.Defaults.FinishedRounding) {
			return c, false
		}
		c.Finished = f.Surd()
		c.Exact = t.exactFor(piecing.Grown(square(c.Finished), seam).Width, seam)
	}
	if told {
		c.Trade, c.Told = t.tradeFor(trade, c.Finished, seam)
	}
	return c, true
}

// exactFor is the square for units of an unfinished side.
func (t *Triangle) exactFor(unit measure.Surd, seam measure.Length) measure.Surd {
	if t.Quarter {
		return piecing.QuarterSquareCut(unit, seam)
	}
	return piecing.HalfSquareCut(unit, seam, t.fromPair())
}

// tradeFor is the trade's square for units of a finished side.
func (t *Triangle) tradeFor(trade piecing.Trade, f measure.Surd, seam measure.Length) (cut measure.Surd, ok bool) {
	if t.Quarter {
		return trade.QuarterSquare(f), true
	}
	return trade.HalfSquare(f, seam, t.fromPair())
}

// fromPair is how many half-square units come from two squares.
func (t *Triangle) fromPair() int {
	if t.AtATime == 0 {
		return 2
	}
	return t.AtATime
}

// drafted is the finished size that the trade would cut the square for; ok is
// false for four at a time, for which it has no round figure.
func (t *Triangle) drafted(trade piecing.Trade) (f measure.Length, ok bool) {
	switch {
	case t.Quarter:
		return t.Cut - trade.Quarter, true
	case t.AtATime == 8:
		return t.Cut/2 - trade.Half, t.Cut%2 == 0
	case t.AtATime == 4:
		return 0, false
	}
	return t.Cut - trade.Half, true
}

// tradeSetting is the squares for setting triangles. The trade has no one figure
// for those that let the blocks float, nor for those that are halved the other way.
func tradeSetting(part plan.Text, st *Setting, seam measure.Length) []TradeCut {
	o := st.OnPoint
	if o == nil {
		return nil
	}
	trade, told := piecing.TradeAt(seam)
	told = told && o.Float.IsZero()
	var all []TradeCut
	add := func(what string, t TriangleCut, usual plan.Halving, cut func(measure.Surd) measure.Length) {
		if t.Triangles == 0 {
			return
		}
		c := TradeCut{For: called(part, what, part.At).Text, Finished: o.Block, Exact: t.Wanted, Cut: t.Cut}
		if c.Told = told && t.Halving == usual; c.Told {
			c.Trade = cut(o.Block).Surd()
		}
		all = append(all, c)
	}
	add("side triangles", o.Side, plan.CutTwice, trade.Side)
	add("corner triangles", o.Corner, plan.CutOnce, trade.Corner)
	return all
}
