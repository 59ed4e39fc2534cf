package check

import (
	"fmt"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

var toolChecks = []Check{
	{
		Rule: "tools/no-angle-line", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "no ruler that is long enough has a 45-degree line",
		Why:     "The squares of a tube are cut with the ruler's 45-degree line laid along the strips. Without the line the ruler cannot be set, and a guessed angle gives squares that are not square.",
		Fix:     "name a ruler with a 45-degree line, or add the line to a ruler that has it",
		Run:     eachTube(noAngleLine),
	},
	{
		Rule: "tools/no-ruler", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the plan cuts tubes and names no ruler",
		Why:     "Whether a tube can be cut in one placement depends on the ruler. A pattern that names none leaves its maker to find out with the fabric on the table.",
		Fix:     "list the rulers that the pattern asks for under tools, or the studio's own in the project file",
		Run:     eachTube(noRuler),
	},
	{
		Rule: "tools/ruler-short", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "no ruler spans the 45-degree cut of a tube",
		Why:     "A tube 6 1/2 in wide is cut along a slope, and the slope is longer than the tube is wide: (h+s) x sqrt2, 8 7/8 in here. A ruler that is wider than the tube may still be too short for the cut.",
		Fix:     "name a longer square ruler, use narrower strips, or lay the tip lower",
		Run:     eachTube(rulerShort),
	},
	{
		Rule: "tools/ruler-slides", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the ruler spans the square but not the whole cut, so it must be slid",
		Why:     "Below the seam on which the square opens lies another seam allowance. A ruler that spans the square but not that last s x sqrt2 leaves the cut unfinished: it has to be moved, twice a square, and may move off the line.",
		Fix:     "name a ruler that spans the whole cut, or tell the maker to slide the ruler",
		Run:     eachTube(rulerSlides),
	},
	{
		Rule: "tools/ruler-under-tube", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "every ruler is narrower than the tube it has to cut",
		Why:     "A ruler narrower than the tube cannot reach from one long edge to the other in any position, let alone at 45 degrees.",
		Fix:     "name a ruler that spans the cut, or use fewer or narrower strips in the set",
		Run:     eachTube(rulerUnderTube),
	},
}

// eachTube runs a rule over the derived tubes of a size.
func eachTube(rule func(*Pass, *derive.Part, fit)) func(*Pass) {
	return func(p *Pass) {
		for _, part := range p.Size.Parts {
			if part.Tube != nil && part.Known {
				rule(p, part, bestRuler(p.Size.Of.Tools.Rulers, part.Tube))
			}
		}
	}
}

// fit is how well the best of the rulers cuts a tube.
type fit struct {
	reach reach
	ruler *plan.Ruler // nil when there is none
}

// reach orders rulers: any one that fits settles it.
type reach int

const (
	noReach     reach = iota // there is no ruler
	underTube                // narrower than the tube
	underSquare              // cannot span the square in one placement
	noLine                   // long enough, but without the angle line
	slides                   // spans the square, must be slid to finish the cut
	spans                    // spans the whole cut
)

func bestRuler(rulers []plan.Ruler, t *derive.Tube) fit {
	var best fit
	for i := range rulers {
		if r := reachOf(rulers[i], t); best.ruler == nil || r > best.reach ||
			r == best.reach && rulers[i].Length.Length > best.ruler.Length.Length {
			best = fit{r, &rulers[i]}
		}
	}
	return best
}

// reachOf is how far a ruler goes for a tube. A square ruler cuts both slopes
// in one placement. Of a rectangular one the shorter side counts for that;
// its longer side cuts one slope at a time, which is sliding.
func reachOf(r plan.Ruler, t *derive.Tube) reach {
	short, long := r.Width.Surd(), r.Length.Surd()
	switch {
	case long.Cmp(t.Width.Surd()) < 0 || r.Square() && short.Cmp(t.Width.Surd()) < 0:
		return underTube
	case long.Cmp(t.Side()) < 0:
		return underSquare
	case !r.Angle(45):
		return noLine
	case short.Cmp(t.CutLength()) < 0:
		return slides
	}
	return spans
}

func noRuler(p *Pass, part *derive.Part, f fit) {
	if f.ruler == nil {
		p.Report(part.Name.At, Finding{
			Message: fmt.Sprintf("tube %q is cut with a ruler of at least %s, and no ruler is named", part.Name.Text, p.ruler(part.Tube.CutLength())),
			Ways:    ways(advise("list the ruler under tools")),
		})
	}
}

func rulerUnderTube(p *Pass, part *derive.Part, f fit) {
	if f.ruler == nil || f.reach != underTube {
		return
	}
	p.Report(p.rulersAt(part), Finding{
		Message: fmt.Sprintf("the %s tube %q is wider than %s; it needs a ruler whose edge spans %s",
			p.length(part.Tube.Width), part.Name.Text, p.theRulers(), p.ruler(part.Tube.CutLength())),
		Ways:    ways(advise(fmt.Sprintf("name a square ruler of %s or more with a 45-degree line", p.ruler(part.Tube.CutLength()))), advise("make the tube narrower")),
		Related: p.tubeMade(part),
	})
}

func rulerShort(p *Pass, part *derive.Part, f fit) {
	if f.reach != underSquare {
		return
	}
	p.Report(p.rulersAt(part), Finding{
		Message: fmt.Sprintf("the %s tube %q needs a ruler whose edge spans %s; %s is wider than the tube but too short for the cut",
			p.length(part.Tube.Width), part.Name.Text, p.ruler(part.Tube.CutLength()), p.describe(f.ruler)),
		Ways: ways(advise(fmt.Sprintf("name a square ruler of %s or more (the square itself is %s)",
			p.ruler(part.Tube.CutLength()), part.Tube.Side().AsCut(p.Plan.Units)))),
		Related: p.tubeMade(part),
	})
}

func noAngleLine(p *Pass, part *derive.Part, f fit) {
	if f.reach != noLine {
		return
	}
	p.Report(p.rulersAt(part), Finding{
		Message: fmt.Sprintf("%s is long enough for the %s tube %q but has no 45-degree line to lay along the strips",
			p.describe(f.ruler), p.length(part.Tube.Width), part.Name.Text),
		Ways:    append(p.addAngle(p.Size.Of.Tools.Rulers, 45), advise("name a ruler that has a 45-degree line")),
		Related: p.tubeMade(part),
	})
}

func rulerSlides(p *Pass, part *derive.Part, f fit) {
	if f.reach != slides {
		return
	}
	message := fmt.Sprintf("%s spans the square of tube %q (%s) but not the whole cut (%s): it must be slid to finish each cut",
		p.describe(f.ruler), part.Name.Text, part.Tube.Side().AsCut(p.Plan.Units), part.Tube.CutLength().AsCut(p.Plan.Units))
	if !f.ruler.Square() && f.ruler.Length.Surd().Cmp(part.Tube.CutLength()) >= 0 {
		message = fmt.Sprintf("%s reaches across tube %q only with its longer side: it cuts one slope at a time (%s) and must be laid anew for the other",
			p.describe(f.ruler), part.Name.Text, part.Tube.CutLength().AsCut(p.Plan.Units))
	}
	p.Report(p.rulersAt(part), Finding{
		Message: message,
		Ways:    ways(advise(fmt.Sprintf("name a square ruler of %s or more", p.ruler(part.Tube.CutLength()))), advise("have the pattern say how to move the ruler")),
		Related: p.tubeMade(part),
	})
}

// length prints a length in the plan's unit.
func (p *Pass) length(l measure.Length) string { return l.Format(p.Plan.Units) }

// needs prints a length that is to be bought or cut, never less than it is.
func (p *Pass) needs(l measure.Length) string { return l.AsCut(p.Plan.Units) }

// there prints a length that there is or is to spare, or that nothing goes below:
// never more than it is.
func (p *Pass) there(l measure.Length) string { return l.AsThere(p.Plan.Units) }

// ruler prints the least ruler that spans a length: up to the ruler's grid.
func (p *Pass) ruler(x measure.Surd) string {
	return p.needs(x.CeilTo(p.rulerGrid()))
}

func (p *Pass) rulerGrid() measure.Length { return p.Plan.Defaults.RulerGrid }

// rulersAt is where the plan lists its rulers, or the part when they are the
// studio's own.
func (p *Pass) rulersAt(part *derive.Part) source.Range {
	if at := p.Size.Of.Tools.At; at != (source.Range{}) {
		return at
	}
	return part.Name.At
}

// tubeMade points at the tube where the finding itself points at the rulers.
func (p *Pass) tubeMade(part *derive.Part) []Related {
	if p.rulersAt(part) == part.Name.At {
		return nil
	}
	return []Related{{part.Name.At, "the tube is made here"}}
}

func (p *Pass) describe(r *plan.Ruler) string {
	if r.Square() {
		return "the " + p.there(r.Width.Length) + " square ruler"
	}
	return "the " + p.pairThere(r.Width.Length, r.Length.Length) + " ruler"
}

func (p *Pass) theRulers() string {
	var all []string
	for i := range p.Size.Of.Tools.Rulers {
		all = append(all, p.describe(&p.Size.Of.Tools.Rulers[i]))
	}
	if len(all) == 1 {
		return all[0]
	}
	return "each of " + strings.Join(all, ", ")
}
