package check

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// unitChecks are about units of pieces that are cut for them.
var unitChecks = []Check{
	{
		Rule: "piecing/bonus-nothing", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the corners cut away are kept and nothing would be left of them once sewn",
		Why:     "The two triangles that a flip square of cut side q leaves sew into a unit of q - 2s x sqrt2, derived from geometry. From a 1-in square at a 1/4-in seam that is 5/16 in unfinished: both seams meet and nothing shows.",
		Fix:     "say \"bonus\": \"waste\", or use larger squares",
		Run:     bonusNothing,
	},
	{
		Rule: "piecing/corners-overlap", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "stitch-and-flip corners overlap on a side of their part",
		Why:     "Two corners whose finished legs together are longer than the side between them cover each other: the first one's point disappears under the second. Legs that just meet are a square in a square.",
		Fix:     "use smaller squares: the two legs of a side, each its square less two seam allowances, may come to the finished side and no more",
		Run:     faults(derive.CornersOverlap),
	},
	{
		Rule: "piecing/geese-shape", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "flying geese are not twice as wide as high",
		Why:     "The seams of a goose run at 45 degrees from its lower corners and meet at its point, so it is as high as half its width, derived from geometry. A 4 by 3 unit has no place for its point.",
		Fix:     "make the unit twice as wide as high, finished",
		Run:     faults(derive.GeeseShape),
	},
	{
		Rule: "piecing/no-trim-step", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "a unit is cut oversize by more than 1/8 in and never trimmed",
		Why:     "Cutting oversize is good practice if the unit is trimmed to size. Where no step says so, every unit goes into its row too large. Common practice, no source; the limit is this project's.",
		Fix:     "give the unit a trim, or cut it closer to the exact size",
		Run:     noTrimStep,
	},
	{
		Rule: "piecing/points-cut-off", Level: diag.Warning, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the points of a unit lie in its seam allowance by more than 1/16 in",
		Why:     "A point is to lie one seam allowance inside the raw edge. Where it lies farther out, the next seam sews it off. A sixteenth is lost in the fold. Derived from geometry; the limit is this project's.",
		Fix:     "cut the pieces to the sizes that geometry gives, which follow from the finished size when the plan names none",
		Run:     pointsCutOff,
	},
	{
		Rule: "piecing/squares-exchanged", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "a three-patch unit has the square of its half cut as those of its quarters take, and the other way round",
		Why:     "A half is a square cut once diagonally and takes the finished side and (2 + sqrt2) seams, 7/8 in at a 1/4-in seam; a quarter is a square cut twice and takes (2 + 2 sqrt2) seams, 1 1/4 in. Exchanged, the quarters come out too small for the half: the unit is 1/3 in short, and so is every row for each of them. Derived from geometry; the round figures are widely published, no authority.",
		Fix:     "exchange the two cut sizes",
		Run:     faults(derive.SquaresExchanged),
	},
	{
		Rule: "piecing/trim-not-finished", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "a unit is trimmed to another size than its finished size takes",
		Why:     "A unit that is to finish 6 by 3 in at a 1/4-in seam is trimmed to 6 1/2 by 3 1/2. Trimmed to 6 by 3 it finishes half an inch smaller both ways.",
		Fix:     "trim to the finished size and two seam allowances",
		Run:     trimNotFinished,
	},
	{
		Rule: "piecing/unit-short", Level: diag.Error, Lesser: diag.Warning, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "a unit comes out smaller than it is to finish",
		Why:     "Fabric can be trimmed off, not on. 7/8 in where 1 1/4 in is to be added, or 3.5 cm added at a full 0.75 cm seam, leaves every unit short, and the row by as much again for each of them. A warning above 1/16 in for one unit or 1/8 in for a row, an error above 1/4 in for a row; the limits are this project's.",
		Fix:     "cut the pieces larger: up to the ruler's grid, and trim the unit",
		Run:     unitShort,
	},
	{
		Rule: "yield/units-over", Level: diag.Note, Since: "0.1.0", Scope: Size,
		Summary: "units come several at a time, and the number needed is no multiple of that",
		Why:     "Geese come four at a time and hourglass units in pairs. For thirty geese eight lots are cut, and two geese are left: a maker who counts thirty thinks that she has gone wrong.",
		Fix:     "tell the maker how many are left over, or make the odd ones one at a time",
		Run:     unitsOver,
	},
}

// eachUnit runs a rule over the units that could be derived.
func (p *Pass) eachUnit(rule func(*derive.Part, *derive.Unit)) {
	for _, part := range p.Size.Parts {
		if part.Unit != nil && part.Known {
			rule(part, part.Unit)
		}
	}
}

func bonusNothing(p *Pass) {
	p.eachUnit(func(part *derive.Part, u *derive.Unit) {
		seams := 2 * part.Seam.Allowance.Length
		for _, b := range u.Bonus {
			if !u.Keep || b.Side.Cmp(seams.Surd()) > 0 {
				continue
			}
			unit := "do not reach across their seams"
			if b.Side.Sign() > 0 {
				unit = fmt.Sprintf("give a unit of %s, and its seams take %s", b.Side.AsThere(p.Plan.Units), p.needs(seams))
			}
			p.Report(part.Name.At, Finding{
				Message: fmt.Sprintf("the corners cut away from the %s squares of %q %s", p.length(b.Square), part.Name.Text, unit),
				Ways:    ways(mend(p.setIn(p.making(part), "bonus", "waste"))),
			})
		}
	})
}

func noTrimStep(p *Pass) {
	p.eachUnit(func(part *derive.Part, u *derive.Unit) {
		if u.Trim[0].Given() || u.Wanted == nil {
			return
		}
		for _, c := range u.Pieces {
			if c.Over().Cmp(driftWarns.Surd()) <= 0 {
				continue
			}
			out := ways(p.trimToWanted(part))
			if u.CutSaid() {
				out = append(out, ways(mend(p.putLength("cut", c.At, c.Exact.Width.NearestTo(p.rulerGrid()))))...)
			}
			p.Report(c.At, Finding{
				Message: fmt.Sprintf("the %s of %q is cut %s, %s more than it takes, and the unit is not trimmed", c.What, part.Name.Text,
					p.needs(c.Width), c.Over().AsThere(p.Plan.Units)),
				Ways:  out,
				About: geometryOf(part), Root: true,
			})
			return
		}
	})
}

func pointsCutOff(p *Pass) {
	p.eachUnit(func(part *derive.Part, u *derive.Unit) {
		if u.Point == nil {
			return
		}
		seam := part.Seam.Allowance.Length.Surd()
		lost := seam.Sub(*u.Point)
		if lost.Cmp(easedHeight.Surd()) <= 0 {
			return
		}
		p.Report(cutAt(part), Finding{
			Message: fmt.Sprintf("the points of %q lie %s inside the seam allowance: the next seam sews them off", part.Name.Text, lost.AsCut(p.Plan.Units)),
			Ways:    p.exactCuts(u),
			About:   geometryOf(part),
		})
	})
}

// cutAt is where the plan first says a cut size of a unit.
func cutAt(part *derive.Part) source.Range {
	for _, c := range part.Unit.Pieces {
		if c.Said {
			return c.At
		}
	}
	return part.Name.At
}

// exactCuts are the sizes that geometry gives: those that the program would cut
// where the unit is trimmed, else up to the ruler's grid.
func (p *Pass) exactCuts(u *derive.Unit) []diag.Way {
	var cuts []string
	var edits []diag.Edit
	for _, c := range u.Pieces {
		w, h := c.Exact.Width.CeilTo(p.rulerGrid()), c.Exact.Height.CeilTo(p.rulerGrid())
		if u.Trim[0].Given() && c.Fitted > 0 {
			w, h = c.Fitted, c.Fitted
		}
		size := p.length(w)
		if w != h {
			size = p.pair(w, h)
		}
		if cut := fmt.Sprintf("the %s %s", c.What, size); !slices.Contains(cuts, cut) {
			cuts = append(cuts, cut)
		}
		if e := p.putSides(c, w, h); c.Said && e.Act != 0 && e.Text != p.Plan.File.Slice(e.Range) {
			edits = append(edits, e)
		}
	}
	if len(edits) == 0 {
		return ways(advise("cut " + strings.Join(cuts, " and ")))
	}
	return ways(mend(edits...))
}

// putSides writes what a piece of a unit is cut, where the plan says it.
func (p *Pass) putSides(c derive.Piece, w, h measure.Length) diag.Edit {
	n := p.text().Node(c.At)
	switch {
	case n == nil:
		return diag.Edit{}
	case w == h && n.Kind != jsontree.Array:
		return p.putLength("cut the "+c.What, c.At, w)
	}
	return p.put("cut the "+c.What, c.At, p.pairValue(w, h))
}

// trimToWanted is the way out of trimming a unit to what it is to measure.
func (p *Pass) trimToWanted(part *derive.Part) diag.Way {
	w, exact := part.Unit.Wanted.Width.Length()
	h, ok := part.Unit.Wanted.Height.Length()
	if !exact || !ok {
		return diag.Way{}
	}
	return p.addTrim(part, w, h)
}

func trimNotFinished(p *Pass) {
	p.eachUnit(func(part *derive.Part, u *derive.Unit) {
		trim := u.Trim
		if !trim[0].Given() || u.Wanted == nil || trim[0].Surd().Equal(u.Wanted.Width) && trim[1].Surd().Equal(u.Wanted.Height) {
			return
		}
		at := trim[0].At
		if trim[0].Surd().Equal(u.Wanted.Width) {
			at = trim[1].At
		}
		p.Report(at, Finding{
			Message: fmt.Sprintf("%q is trimmed to %s and is to finish %s, which takes %s", part.Name.Text, p.pair(trim[0].Length, trim[1].Length),
				p.finishedBox(part), p.box(u.Wanted.Width, u.Wanted.Height)),
			Ways:  ways(p.retrimmed(u)),
			About: geometryOf(part), Root: true,
		})
	})
}

// retrimmed is the way out of trimming a unit to what its finished size takes.
func (p *Pass) retrimmed(u *derive.Unit) diag.Way {
	w, exact := u.Wanted.Width.Length()
	h, ok := u.Wanted.Height.Length()
	if !exact || !ok {
		return diag.Way{}
	}
	return mend(p.putPair("trim to", u.Trim[0], u.Trim[1], w, h))
}

func (p *Pass) finishedBox(part *derive.Part) string {
	f := part.Unit.Wanted.Finished(part.Seam.Allowance.Length)
	return p.box(f.Width, f.Height)
}

func unitShort(p *Pass) {
	p.eachUnit(func(part *derive.Part, u *derive.Unit) {
		left, ok := part.Left()
		if !ok || u.Trim[0].Given() {
			return // what is trimmed is measured by its trim
		}
		short, line, n := left.Width.Neg(), "row", p.Size.InRow(part, false)
		if down := p.Size.InRow(part, true); left.Height.Neg().MulInt(down).Cmp(short.MulInt(n)) > 0 {
			short, line, n = left.Height.Neg(), "column", down
		}
		level := shortLevel(short, n)
		if level == 0 {
			return
		}
		sum := ""
		if n > 1 {
			sum = fmt.Sprintf(": over the %d of a %s %s", n, line, short.MulInt(n).AsCut(p.Plan.Units))
		}
		if !u.CutSaid() {
			p.wantsTrim(part, short, sum)
			return
		}
		p.Report(cutAt(part), Finding{
			Level: level,
			Message: fmt.Sprintf("%q comes out %s and is to measure %s, %s short%s", part.Name.Text, p.box(u.Sewn.Width, u.Sewn.Height),
				p.box(u.Wanted.Width, u.Wanted.Height), short.AsCut(p.Plan.Units), sum),
			Ways:  p.exactCuts(u),
			About: geometryOf(part), Root: true,
		})
	})
}

// wantsTrim reports a unit whose cuts, which the plan leaves to the program, have no
// marks that bring it to its size.
func (p *Pass) wantsTrim(part *derive.Part, short measure.Surd, sum string) {
	u := part.Unit
	p.Report(part.Name.At, Finding{
		Level: diag.Warning,
		Message: fmt.Sprintf("%q is not trimmed, and cut to the nearest marks of a ruler it comes out %s where it is to measure %s, %s short%s", part.Name.Text,
			p.box(u.Sewn.Width, u.Sewn.Height), p.box(u.Wanted.Width, u.Wanted.Height), short.AsCut(p.Plan.Units), sum),
		Ways:  ways(noted(p.trimToWanted(part), "(the pieces are then cut larger)")),
		About: geometryOf(part), Root: true,
	})
}

// shortLevel is how badly n units short by as much each are missed; 0 when
// they can be eased.
func shortLevel(short measure.Surd, n int64) diag.Level {
	sum := short.MulInt(max(1, n))
	switch {
	case sum.Cmp(driftFails.Surd()) > 0:
		return diag.Error
	case sum.Cmp(driftWarns.Surd()) > 0 || short.Cmp(easedHeight.Surd()) > 0:
		return diag.Warning
	}
	return 0
}

func unitsOver(p *Pass) {
	p.eachUnit(func(part *derive.Part, u *derive.Unit) {
		spare := part.Made - part.Needed
		if part.Needed == 0 || spare == 0 || !p.Size.Sure(countOf(part)) {
			return
		}
		p.Report(part.Name.At, Finding{
			Message: fmt.Sprintf("%d of %q %s needed and they come %s: %d are made", part.Needed, part.Name.Text, is(part.Needed), u.Comes(), part.Made),
			Ways:    ways(advise(fmt.Sprintf("tell the maker that %d %s left over", spare, is(spare)))),
		})
	})
}
