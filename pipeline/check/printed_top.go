package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

var printedTopChecks = []Check{
	{
		Rule: "printed/borders", Level: diag.Error, Lesser: diag.Warning, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the printed cut size of a border's strips is not the one that fits",
		Why:     "A border's strips are cut before anybody can see that they do not fit. On a 30 x 40 in middle, sides of 40 1/2 in go on first and the ends then take 34 1/2 in at 2 in finished; exchanged, both pairs are wrong, and a second border measured from the first one's inside is 4 in short. Mitred strips that end at the quilt's corners have blunted tips: a warning.",
		Fix:     "print the lengths that the layout comes to, and tell makers to measure through the middle",
		Run:     printedBorders,
	},
	{
		Rule: "printed/setting", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the printed number of sashes, cornerstones or setting triangles is not what the layout takes",
		Why:     "Three by four blocks with sashing all round take 31 sashes and 20 cornerstones; 17 and 6 are those between the blocks only. Fourteen side triangles come from four squares cut twice, and three squares leave two of them to be found.",
		Fix:     "print the number that the layout takes",
		Run:     printedSetting,
	},
}

// settingCount is how many of the setting's own pieces there are, and how many
// there would be by the commonest slip, where there is one.
type settingCount struct {
	n       int64
	slip    int64
	because string // what the slip leaves out
}

func printedSetting(p *Pass) {
	st := p.Size.Top.Setting
	if p.Size.Of.Printed == nil || st == nil || !st.Known {
		return
	}
	counts := settingCounts(st)
	for _, said := range p.Size.Of.Printed.Setting {
		c, ok := counts[said.Of.Text]
		n := int64(said.N)
		if !ok || n == c.n {
			continue
		}
		what := settingWords[said.Of.Text]
		message := fmt.Sprintf("the pattern prints %s%s; the layout takes %d", count(said.N, what[0]), what[1], c.n)
		if c.because != "" && n == c.slip {
			message += fmt.Sprintf(" (%d %s)", n, c.because)
		}
		p.Report(said.At, Finding{Message: message, Ways: ways(p.printCount(said.At, c.n)), About: Subject{Kind: derive.TopSize}})
	}
}

// settingWords are what is counted, one of it, and what for.
var settingWords = map[string][2]string{
	"sashes": {"sash"}, "cornerstones": {"cornerstone"},
	"side_triangles": {"side triangle"}, "side_squares": {"square", " for the side triangles"},
	"corner_triangles": {"corner triangle"}, "corner_squares": {"square", " for the corner triangles"},
}

func settingCounts(st *derive.Setting) map[string]settingCount {
	if o := st.OnPoint; o != nil {
		counts := map[string]settingCount{
			"side_triangles":   {n: o.Side.Triangles},
			"side_squares":     {o.Side.Squares, o.Side.Squares - 1, fmt.Sprintf("would leave the last of %d triangles uncut", o.Side.Triangles)},
			"corner_triangles": {n: o.Corner.Triangles},
			"corner_squares":   {o.Corner.Squares, 1, "square cut twice has its bias on the quilt's edge"},
		}
		if o.Sashing != nil {
			counts["sashes"] = settingCount{n: o.Sashes()}
			counts["cornerstones"] = settingCount{o.Cornerstones(), o.Cornerstones() - o.EdgeStones(), "are without those on the edge"}
		}
		return counts
	}
	g := st.Sashing
	if g == nil {
		return nil
	}
	const ring = "are those between the blocks, without those round the outside"
	inner := *g
	inner.Sashing.Outer = false
	counts := map[string]settingCount{"sashes": {sashes(g), sashes(&inner), ring}}
	if g.Said.Cornerstones.Given() {
		counts["cornerstones"] = settingCount{g.Cornerstones(), inner.Cornerstones(), ring}
	}
	return counts
}

// sashes counts sashes as they are cut: those that run through as one each.
func sashes(g *derive.Sashing) int64 {
	if g.Said.Cornerstones.Given() {
		return g.Sashes()
	}
	return g.Upright() + g.Runs()
}

func printedBorders(p *Pass) {
	if p.Size.Of.Printed == nil {
		return
	}
	for _, said := range p.Size.Of.Printed.Borders {
		for i, b := range p.Size.Top.Borders {
			if b.Known && b.Said.Name.Text == said.Of.Text {
				p.borderSaid(said, p.Size.Top.Borders[:i+1])
			}
		}
	}
}

// borderSaid compares what is printed of the last of borders.
func (p *Pass) borderSaid(said plan.PrintedBorder, borders []derive.Border) {
	b := borders[len(borders)-1]
	if said.Cut.Given() && !b.Said.Copes() && said.Cut.Length != b.Cut {
		message := fmt.Sprintf("the pattern prints the strips of border %q as %s wide; they are cut %s", said.Of.Text, p.length(said.Cut.Length), p.needs(b.Cut))
		if said.Cut.Length == b.Said.Width.Length {
			message += ", and what is printed is their finished width"
		}
		p.aboutBorder(said, said.Cut, Finding{Message: message, Ways: ways(mend(p.putLength("print", said.Cut.At, b.Cut)))})
	}
	p.borderLength(said, pairOf{"sides", "ends"}, said.Sides, b.Sides, b.Ends, borders, func(b piecing.Box) measure.Surd { return b.Height })
	p.borderLength(said, pairOf{"ends", "sides"}, said.Ends, b.Ends, b.Sides, borders, func(b piecing.Box) measure.Surd { return b.Width })
}

func (p *Pass) aboutBorder(said plan.PrintedBorder, at plan.Length, f Finding) {
	f.About = finishAbout(said.Of.Text)
	p.Report(at.At, f)
}

// pairOf is the name of a pair of strips, and of the other.
type pairOf struct{ this, other string }

// borderLength compares the printed length of one pair of strips with the
// exact one; other is that of the other pair, and along picks the side of a
// size that the pair lies along.
func (p *Pass) borderLength(said plan.PrintedBorder, which pairOf, printed plan.Length, exact, other measure.Surd, borders []derive.Border, along func(piecing.Box) measure.Surd) {
	b := borders[len(borders)-1]
	if !printed.Given() || p.reads(printed.Length, exact) {
		return
	}
	if exact.IsZero() {
		p.aboutBorder(said, printed, Finding{
			Message: fmt.Sprintf("the pattern prints the %s of border %q as %s long; it has strips on its %s only", which.this, said.Of.Text, p.length(printed.Length), which.other),
			Ways:    ways(mend(p.remove(printed.At))),
		})
		return
	}
	f := Finding{
		Message: fmt.Sprintf("the pattern prints the %s of border %q as %s long; they are cut %s", which.this, said.Of.Text, p.length(printed.Length), exact.AsCut(p.Plan.Units)),
		Ways:    ways(mend(p.putLength("print", printed.At, exact.CeilTo(rulerLine(p.Plan.Units))))),
	}
	length := printed.Surd()
	if b.Said.Corners == plan.Mitred {
		switch {
		case length.Cmp(exact) > 0:
			return // more is cut off with the mitre
		case length.Cmp(exact.Sub(b.Said.Allowance.Surd())) >= 0:
			f.Level = diag.Warning
			f.Message += fmt.Sprintf(", %s of it allowed for the mitre", p.length(b.Said.Allowance.Length))
		case length.Cmp(along(b.Outer)) >= 0:
			f.Level = diag.Warning
			f.Message += ", so that the tips are blunted"
		}
		f.Ways = ways(mend(p.putLength("print at least", printed.At, exact.CeilTo(p.rulerGrid()))))
		p.aboutBorder(said, printed, f)
		return
	}
	switch first := borders[0].Inner; {
	case length.Equal(other):
		f.Message += ", and what is printed is the length of the other pair"
	case length.Equal(exact.Sub((2 * b.Seam).Surd())):
		f.Message += ", and what is printed is their finished length"
	case len(borders) > 1 && length.Equal(exact.Sub(along(b.Inner).Sub(along(first)))):
		f.Message += ", and what is printed is measured from inside the first border"
	}
	p.aboutBorder(said, printed, f)
}
