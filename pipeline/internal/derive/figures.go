package derive

import (
	"slices"
	"strconv"

	"yardproof/pipeline/internal/figure"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Figures are the numbers of a part that know how they came about.
type Figures struct {
	Size  figure.F // how large it is as sewn; not known where the plan states that, or nothing does
	Count figure.F // sets, tubes, pairs, batches or strips, where it is made in these; not known where none can be made
	seam  figure.F
}

// seamFigure is a seam allowance as the symbol of formulas.
func seamFigure(seam plan.Seam) figure.F {
	return figure.Said("s", "seam allowance", seam.Allowance.Length, seam.Allowance.At)
}

var one = figure.Whole(1)

// both is what two seams take.
func (p *Part) both() figure.F { return p.Figures.seam.By(2) }

// inRow is what strips or pieces side by side come to, which have a seam less than
// there are of them: less 2(n-1)s.
func (p *Part) inRow(words string, n figure.F, of ...figure.F) figure.F {
	return figure.Sum(words, of...).Less(n.Less(one).By(2).Times(p.Figures.seam))
}

// longFigure is the usable length of a strip across the fabric.
func (f *Fabric) longFigure() figure.F {
	if f.Form != plan.Yardage {
		l := f.StripLength()
		return figure.Said("L", "usable length of a strip", l.Length, l.At)
	}
	if !f.width.Known() {
		f.width = figure.Said("U", "usable width of fabric", f.UsableWidth.Length, f.UsableWidth.At)
		if f.ShrinkWidth.BasisPoints > 0 {
			f.width = f.width.Times(left(f.ShrinkWidth)).Floor().Where(f.UsableWidth.At)
		}
	}
	return f.width
}

// left is the share that is left after another is lost, given in hundredths of a
// per cent.
func left(loss plan.Percent) figure.F {
	lost := figure.Counted("shrinkage", "that is lost, in hundredths of a per cent", loss.BasisPoints, loss.At)
	return one.Less(lost.OverInt(whole))
}

// longest is the usable length of the shortest strip of a set, and where the plan
// says it.
func (set *Set) longFigure() figure.F {
	var all []figure.F
	var seen []*Fabric
	for _, strip := range set.Strips {
		if !slices.Contains(seen, strip.Fabric) {
			seen = append(seen, strip.Fabric)
			all = append(all, strip.Fabric.longFigure())
		}
	}
	l := all[0]
	if len(all) > 1 {
		l = figure.Least(all...)
	}
	return l.As("L", "usable length of the shortest strip").Where(set.lengthAt())
}

// NeededFigure is how many of a part are needed: the sum over all that use it.
func (p *Part) NeededFigure() figure.F {
	if !p.needed.Known() {
		p.needed = p.sumOfCalls().Is(p.Name.Text, "needed")
	}
	return p.needed
}

// sumOfCalls are told with the top first and then as they are made, from the last.
func (p *Part) sumOfCalls() figure.F {
	var all []figure.F
	of := len(p.Calls)
	for i, c := range p.Calls {
		if c.By != nil {
			of = i
			break
		}
		all = append(all, c.figure().As("", "in "+c.In.Text).Quiet().Where(c.In.At))
	}
	for _, c := range slices.Backward(p.Calls[of:]) {
		all = append(all, c.figure().As("", "for "+c.By.Name.Text).Quiet().Where(c.By.Name.At))
	}
	const words = "sum over all that use it"
	if p.Needed >= countless {
		return figure.Given(figure.Count, measure.Rational(p.Needed, 1), words, all...).Telling(all...)
	}
	return figure.Sum(words, all...).Telling(all...)
}

// figure is how many a call asks for.
func (c Call) figure() figure.F {
	if c.N >= countless {
		return figure.Given(figure.Count, measure.Rational(c.N, 1), "more than are counted", c.of)
	}
	if c.times == 1 {
		return c.of
	}
	return c.of.By(c.times)
}

// neededTerm is how many of a part are needed, as a symbol.
func (p *Part) neededTerm() figure.F { return p.NeededFigure().As("N", "needed") }

// inBatches is how many are made of what gives so many each, rounded up.
func (p *Part) inBatches(of string, n, each figure.F) figure.F {
	return n.Over(each.As("each", "from one")).Ceil().Is(p.Name.Text, of)
}

// CountFigure is how many sets, tubes, pairs or strips are made for a part, or how
// many of it where it is made in none of these.
func (p *Part) CountFigure() figure.F {
	switch {
	case p.Pool != nil:
		return p.Pool.Told
	case p.Figures.Count != figure.F{}:
		return p.Figures.Count
	}
	return p.NeededFigure()
}

// YieldFigure is how many pieces come from one set, tube, loop or strip; not known
// for parts that are cut from none.
func (p *Part) YieldFigure() figure.F {
	if y := p.Yield(); y != nil {
		return y.Told
	}
	return figure.F{}
}

// side is how wide a part is, or how high, where it goes into another.
func (p *Part) side(height bool) figure.F {
	l, size := p.Width, p.Figures.Size
	if height {
		l = p.Height
	}
	if size.Known() && size.Surd().Equal(l) && (!height || p.Width.Equal(p.Height)) {
		return size
	}
	return figure.Given(figure.Length, l, "as cut or trimmed", size, p.said(l)).Behind(size)
}

// said is a side of a part as the plan says it; not known where it says none.
func (p *Part) said(l measure.Surd) figure.F {
	room, ok := p.Room.(Sized)
	side, whole := l.Length()
	if !ok || !whole {
		return figure.F{}
	}
	return figure.Said("", "size of "+p.Name.Text, side, room.SizeAt())
}

// upTo numbers the symbols of what there are several of: w1, w2.
func upTo(symbol string, i int) string { return symbol + strconv.Itoa(i+1) }
