package check

import (
	"errors"
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/amend"
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

func pieceTooWide(p *Pass) {
	for _, f := range p.Size.Fabrics {
		if f.Form != plan.Yardage {
			continue
		}
		for _, n := range f.Needs {
			if n.Strip || n.Count == 0 || leastAcross(f, n) <= f.Width {
				continue
			}
			p.Report(n.At, Finding{
				Message: fmt.Sprintf("%q is cut %s, and %s of %q are usable%s%s", n.For.Text, p.pairCut(n.Across, n.Along),
					p.there(f.Width), f.Role.Text, afterShrinkage(f), keepsItsWay(f)),
				Ways:    ways(advise("sew it of two"), advise(fmt.Sprintf("use fabric of which at least %s are usable", p.needs(p.widthFor(f, n))))),
				About:   Subject{Kind: derive.Geometry, Name: n.For.Text},
				Root:    true,
				Related: []Related{{f.Role.At, "the fabric"}},
			})
		}
	}
}

// leastAcross is the least width that a piece takes in the ways it may lie.
func leastAcross(f *derive.Fabric, n derive.Need) measure.Length {
	if !f.Turnable(n) {
		return n.Across
	}
	return min(n.Across, n.Along)
}

// whole is a share of one in the basis points of plan.Percent.
const whole = 10_000

// widthFor is the usable width, before shrinkage, that would hold the piece.
func (p *Pass) widthFor(f *derive.Fabric, n derive.Need) measure.Length {
	return leastAcross(f, n).Surd().MulInt(whole).DivInt(whole - f.ShrinkWidth.BasisPoints).CeilTo(p.rulerGrid())
}

func afterShrinkage(f *derive.Fabric) string {
	if f.ShrinkWidth.BasisPoints > 0 {
		return " after shrinkage"
	}
	return ""
}

func keepsItsWay(f *derive.Fabric) string {
	if f.Directional() {
		return "; its print may not be turned sideways"
	}
	if f.Matched() {
		return "; to show the same place of the print it may not be turned"
	}
	return ""
}

func packPiece(p *Pass) {
	for _, f := range p.Size.Fabrics {
		if f.Form != plan.Precut {
			continue
		}
		told := map[source.Range]bool{}
		for _, n := range f.Needs {
			if n.Count == 0 || fitsPack(f, n) || told[n.At] {
				continue
			}
			told[n.At] = true
			what := "is cut " + p.pairCut(n.Across, n.Along)
			if n.Strip {
				what = "takes strips cut " + p.needs(n.Along) + " wide"
			}
			p.Report(n.At, Finding{
				Message: fmt.Sprintf("%q %s, and of a piece of %q %s are usable%s", n.For.Text, what,
					f.Role.Text, p.pairThere(f.StripWidth().Length, f.StripLength().Length), keepsItsWay(f)),
				Ways:    ways(advise("cut it smaller"), advise("cut it from yardage or a larger precut")),
				About:   Subject{Kind: derive.Geometry, Name: n.For.Text},
				Root:    true,
				Related: []Related{{f.Role.At, "the precut"}},
			})
		}
	}
}

// fitsPack reports whether one precut piece holds what is cut. Its longer side
// lies across the fabric, as strips do.
func fitsPack(f *derive.Fabric, n derive.Need) bool {
	across, along := f.StripLength().Length, f.StripWidth().Length
	fits := n.Across <= across && n.Along <= along
	return fits || f.Turnable(n) && n.Along <= across && n.Across <= along
}

// count prints a number of things: "1 pack", "2 packs".
func count(n int, thing string) string { return say.Many(int64(n), thing) }

// is is the verb that goes with a number of things.
func is(n int64) string { return say.Goes(n, "is", "are") }

// ending is what other verbs end in: one strip gives, two give.
func ending(n int64) string { return say.Goes(n, "s", "") }

// withWidth gives a strip of a fabric its width, made up.
func (p *Pass) withWidth(fabric plan.Text) diag.Edit {
	width := map[measure.Unit]string{measure.In: "2 1/2", measure.Cm: "6.5"}[p.Plan.Units]
	if in := p.text().Parent(fabric.At); in != nil && in.Kind == jsontree.Object {
		return p.add(in.Range, "width", amend.Quote(width))
	}
	return p.put("write", fabric.At, fmt.Sprintf("{ \"fabric\": %s, \"width\": %s }", amend.Quote(fabric.Text), amend.Quote(width)))
}

func noStripWidth(p *Pass) {
	report := func(part *plan.Part, fabric plan.Text, width plan.Length) {
		f := p.Size.Of.Fabric(fabric.Text)
		if f == nil || f.Form != plan.Yardage || width.Given() {
			return
		}
		p.Report(fabric.At, Finding{
			Message: fmt.Sprintf("a strip of %q is cut from %q, which is sold by length, and no width is given", part.Name.Text, fabric.Text),
			Ways:    ways(example(p.withWidth(fabric))),
			About:   Subject{Kind: derive.Geometry, Name: part.Name.Text},
			Root:    true,
		})
	}
	for i := range p.Size.Of.Parts {
		part := &p.Size.Of.Parts[i]
		if room, ok := p.Size.Part(part.Name.Text).Room.(derive.Striped); ok {
			for _, s := range room.Strips() {
				report(part, s.Fabric, s.Width)
			}
		}
	}
}

func tooManyPieces(p *Pass) {
	for _, f := range p.Size.Fabrics {
		var unusable *cutting.Unusable
		if !errors.As(f.Err, &unusable) || !overCounted(f) {
			continue
		}
		p.Report(f.Role.At, Finding{
			Message: fmt.Sprintf("%s pieces and strips of %q are needed", manyNeeds(f), f.Role.Text),
			Ways:    ways(advise("check the rows and columns of the layout and of the blocks: yardproof counts to a million")),
			About:   cloth(f),
		})
	}
}

// manyNeeds says how many pieces are needed, as far as they can be counted.
func manyNeeds(f *derive.Fabric) string {
	const most = 1 << 40
	sum := int64(0)
	for _, n := range f.Needs {
		if n.Count < 0 || n.Count > most {
			return "too many"
		}
		sum = min(most, sum+n.Count)
	}
	return fmt.Sprint(sum)
}

// overCounted tells a fabric that too much is asked of from one whose pieces
// have no size, of which other rules speak.
func overCounted(f *derive.Fabric) bool {
	for _, n := range f.Needs {
		if n.Across <= 0 || n.Along <= 0 {
			return false
		}
	}
	return true
}
