package check

import (
	"fmt"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

var edgeChecks = []Check{
	{
		Rule: "finish/batting-roll", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the roll of batting is narrower than the quilt with its overhang, either way",
		Why:     "Batting off the roll is bought by length; its width is what it is. A quilt of 92 x 100 in, overhang included, has no side that 90 in of batting cover, however many yards there are.",
		Fix:     "take batting from a wider roll, or a smaller overhang",
		Run:     battingRoll,
	},
	{
		Rule: "finish/bed-size", Level: diag.Error, Lesser: diag.Note, Since: "0.1.0", Scope: Size,
		Summary: "the finished quilt does not fit the bed it is for",
		Why:     "A 60 x 80 in mattress with 12 in of drop takes 84 x 92 in, and 106 in with 14 in tucked under the pillows. A quilt of 84 x 92 in sold for pillows to be tucked leaves the mattress bare at the foot. A note where it is only larger.",
		Fix:     "change the rows, columns or borders, or state the drop and tuck that the quilt gives",
		Run:     bedSize,
	},
	{
		Rule: "finish/bias-square", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the square for the bias binding does not go round the quilt",
		Why:     "Only whole loops round the tube count, and its seams take two allowances of the square. By area a 24-in square gives 256 in of 2 1/4-in binding; it gives seven loops, about 232.64 in, and a quilt that needs 250 in has a gap.",
		Fix:     "cut the binding from a larger square, or leave the square out to have it derived",
		Run:     biasSquare,
	},
	{
		Rule: "finish/binding-deep", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the binding is sewn deeper than the seam allowance, and cuts off points",
		Why:     "Points that end at the seam line of the quilt's edge lie one seam allowance in. A binding that finishes 3/8 in wide on a top drafted with 1/4 in covers the last 1/8 in of every point, and needs batting that reaches beyond the top.",
		Fix:     "make the binding's finished width the seam allowance, or put a plain border outside the points",
		Run:     bindingDeep,
	},
	{
		Rule: "finish/binding-narrow", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the binding's strip is too narrow to be folded over the edge",
		Why:     "Double-fold binding takes three finished widths twice before anything is left for the quilt's thickness and the overlap on the back. At 1/4 in finished, strips of 1 1/2 in are used up at the edge itself; 2 1/4 in leave 3/8 in for both.",
		Fix:     "cut the binding wider, or make its finished width smaller",
		Run:     bindingNarrow,
	},
	{
		Rule: "finish/curved-edge", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "a curved edge is bound with straight-grain strips",
		Why:     "Cloth on the straight grain does not stretch round a curve: on scallops or rounded corners the binding cups and puckers. On the bias it lies flat.",
		Fix:     "bind a curved edge with continuous bias or bias strips",
		Run:     curvedEdge,
	},
	{
		Rule: "finish/sleeve-flat", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the hanging sleeve has no depth or no length",
		Why:     "A sleeve is folded and loses two seam allowances: 8 1/2 in make one 4 in deep, 1/2 in none at all. One that is to be as much shorter as the quilt is wide holds no rod.",
		Fix:     "cut the sleeve higher, or make it longer",
		Run:     sleeveFlat,
	},
}

func finishAbout(name string) Subject { return Subject{Kind: derive.Finish, Name: name} }

func battingRoll(p *Pass) {
	b := p.Size.Batting
	if b == nil || !b.Said.Roll.Given() || b.Cut > 0 {
		return
	}
	least := measure.Min(b.Size.Width, b.Size.Height)
	p.Report(b.Said.Roll.At, Finding{
		Message: fmt.Sprintf("the batting is %s wide off the roll; the quilt with %s beyond it on every side is %s",
			p.there(b.Said.Roll.Length), p.length(b.Said.Overhang.Length), p.boxCut(b.Size)),
		Ways:  ways(mend(p.putLength("take a roll of at least", b.Said.Roll.At, least.CeilTo(p.rulerGrid())))),
		About: finishAbout("batting"),
	})
}

func biasSquare(p *Pass) {
	b := p.Size.Binding
	if b == nil || b.Bias == nil || b.Bias.OK || p.Size.Fabric(b.Said.Fabric.Text) == nil {
		return
	}
	at, out := b.Said.At, ways(advise("take wider fabric for it"))
	if b.Said.Square.Given() {
		at, out = b.Said.Square.At, ways(noted(mend(p.remove(b.Said.Square.At)), "to have one derived"))
		if larger, ok := p.largerSquare(b); ok {
			out = append(ways(mend(p.putLength("cut a square of", b.Said.Square.At, larger))), out...)
		}
	}
	p.Report(at, Finding{
		Message: fmt.Sprintf("%s; the binding needs %s", p.biasGives(b), b.Strips.Need.AsCut(p.Plan.Units)),
		Ways:    out, About: finishAbout("binding"),
	})
}

// biasGives says what the squares give, and against the rule of thumb by
// area where that would have been enough.
func (p *Pass) biasGives(b *derive.Binding) string {
	u, bias := p.Plan.Units, b.Bias
	text := "one square of " + p.needs(bias.Square) + " gives "
	if bias.Squares != 1 {
		text = "12 squares of " + p.needs(bias.Square) + " give "
	}
	if b.Said.Kind == plan.ContinuousBias {
		text += count(int(bias.Loops), "loop") + " of continuous bias, " + bias.Length.AsThere(u)
	} else {
		text += bias.Length.AsThere(u) + " of joined bias strips"
	}
	if bias.ByArea.Cmp(b.Strips.Need) >= 0 {
		text += fmt.Sprintf(" (%s only by area)", bias.ByArea.AsThere(u))
	}
	return text
}

// largerSquare is the square that would do.
func (p *Pass) largerSquare(b *derive.Binding) (measure.Length, bool) {
	of := *p.Size.Of
	said := *b.Said
	said.Square = plan.Length{}
	of.Finish.Binding = &said
	again := p.Size.Again(&of).Binding
	if again == nil || again.Bias == nil || again.Bias.Squares != 1 {
		return 0, false
	}
	return again.Bias.Square, true
}

func bindingDeep(p *Pass) {
	b, seam := p.Size.Binding, p.Size.Of.Seam
	if b == nil || !piecing.BindingCutsPoints(b.Said.Finished.Length, seam.Allowance.Length) {
		return
	}
	p.Report(b.Said.Finished.At, Finding{
		Message: fmt.Sprintf("the binding finishes %s wide and the seam allowance is %s: it cuts %s off points at the quilt's edge",
			p.length(b.Said.Finished.Length), p.length(seam.Allowance.Length), p.length(b.Said.Finished.Length-seam.Allowance.Length)),
		Ways: ways(mend(p.putLength("make it", b.Said.Finished.At, seam.Allowance.Length)),
			advise("set the points in with a plain border and accept this")),
		Related: []Related{{seam.At, "the plan's seam"}},
	})
}

func bindingNarrow(p *Pass) {
	b := p.Size.Binding
	if b == nil {
		return
	}
	if !tooNarrow(b.Said) {
		return
	}
	fold := "double"
	if b.Said.Single {
		fold = "single"
	}
	least := foldTakes(b.Said)
	f := Finding{
		Message: fmt.Sprintf("%s-fold binding that finishes %s wide takes %s before anything is left for the edge's thickness and the overlap; it is cut %s",
			fold, p.length(b.Said.Finished.Length), p.needs(least), p.there(b.Said.Cut.Length)),
		Ways: ways(noted(mend(p.putLength("cut it", b.Said.Cut.At, measure.CeilTo(least+least/4, p.rulerGrid()))), "or wider")),
	}
	if s := bindingStrip(b.Said); !s.believes(s.Length.Length, p.Plan.Units) && p.written(s) != "" && p.otherUnit(s) {
		_, word := p.other()
		f.Message += ": the figure looks like " + word
		f.Ways = append(ways(p.withOther(s)), f.Ways...)
	}
	p.Report(b.Said.Cut.At, f)
}

// foldTakes is the width that a binding's folds use up, before the thickness of
// the edge.
func foldTakes(b *plan.Binding) measure.Length {
	if b.Single {
		return piecing.SingleFold(b.Finished.Length, 0)
	}
	return piecing.DoubleFold(b.Finished.Length, 0, 0)
}

// tooNarrow reports whether nothing is left of the binding's strip when it is
// folded.
func tooNarrow(b *plan.Binding) bool {
	return b.Cut.Length > 0 && b.Cut.Length <= foldTakes(b)
}

func curvedEdge(p *Pass) {
	b := p.Size.Of.Finish.Binding
	if b == nil || !b.Curved || b.Kind != plan.StraightGrain {
		return
	}
	p.Report(b.CurvedAt, Finding{
		Message: "the edge is curved and the binding is cut on the straight grain",
		Ways: ways(
			choice(p.setIn(p.text().Node(b.At), "kind", plan.ContinuousBias.String())),
			choice(p.setIn(p.text().Node(b.At), "kind", plan.BiasStrips.String()))),
	})
}

func sleeveFlat(p *Pass) {
	l := p.Size.Sleeve
	if l == nil {
		return
	}
	seam := p.Size.Of.Seam.Allowance.Length
	if l.Depth.Sign() <= 0 {
		p.Report(l.Said.Cut.At, Finding{
			Message: fmt.Sprintf("the sleeve is cut %s high and its seam takes %s: nothing is left", p.length(l.Said.Cut.Length), p.needs(2*seam)),
			Ways:    ways(advise("cut it higher than " + p.needs(2*seam))), About: finishAbout("sleeve"),
		})
		return
	}
	width := p.Size.Top.Finished.Width
	if width.Cmp(l.Said.Shorter.Surd()) > 0 {
		return
	}
	p.Report(l.Said.Shorter.At, Finding{
		Message: fmt.Sprintf("the sleeve is to be %s shorter than the quilt, which is %s wide", p.length(l.Said.Shorter.Length), width.AsThere(p.Plan.Units)),
		Ways:    ways(advise("make it less than " + width.AsThere(p.Plan.Units) + " shorter")), About: finishAbout("sleeve"),
	})
}

func bedSize(p *Pass) {
	b := p.Size.Bed
	if b == nil {
		return
	}
	top := p.Size.Top.Finished
	wide, long := top.Width.Sub(b.Wanted.Width), top.Height.Sub(b.Wanted.Height)
	f := Finding{Ways: ways(advise("change the rows, columns or borders"), advise("change the drop and tuck")), About: Subject{Kind: derive.TopSize}}
	off := p.beyond(b, wide.Neg(), "too narrow", long.Neg(), "too short")
	if off == "" {
		off, f.Level = p.beyond(b, wide, "wider", long, "longer"), diag.Note
	}
	if off == "" {
		return
	}
	f.Message = fmt.Sprintf("the quilt finishes %s; %s takes %s: it is %s", p.box(top.Width, top.Height), p.bedTakes(b), p.box(b.Wanted.Width, b.Wanted.Height), off)
	p.Report(b.Said.At, f)
}

// beyond words the differences that are more than the bed allows.
func (p *Pass) beyond(b *derive.Bed, wide measure.Surd, wideWord string, long measure.Surd, longWord string) string {
	var off []string
	within, u := b.Said.Within.Surd(), p.Plan.Units
	if wide.Cmp(within) > 0 {
		off = append(off, wide.Format(u)+" "+wideWord)
	}
	if long.Cmp(within) > 0 {
		off = append(off, long.Format(u)+" "+longWord)
	}
	return strings.Join(off, " and ")
}

// bedTakes says what the wanted size is made up of.
func (p *Pass) bedTakes(b *derive.Bed) string {
	text := fmt.Sprintf("a mattress of %s with a drop of %s", p.pair(b.Said.Mattress[0].Length, b.Said.Mattress[1].Length), p.length(b.Said.Drop.Length))
	if b.Said.Tuck.Length > 0 {
		text += " and a tuck of " + p.length(b.Said.Tuck.Length)
	}
	if b.Said.DrawIn.BasisPoints > 0 {
		text += ", before quilting draws it in,"
	}
	return text
}
