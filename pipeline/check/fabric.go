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

var fabricChecks = []Check{
	{
		Rule: "fabric/generous", Level: diag.Warning, Lesser: diag.Note, Since: "0.1.0", Scope: Size,
		Summary: "the printed length is more than is needed, rounded up as the shop cuts it",
		Why:     "The customer pays for what is left over, and a kit costs more than it need. 1 1/2 yd printed where 33 in are needed is half a yard too much at every sale: a note. More than twice the need, and by more than 1 yd (1 m), is hardly meant: 11 1/4 yd for 1 1/4 is a warning.",
		Fix:     "print the shorter length, or state the studio's cushion in the fabric",
		Run:     eachPrintedCloth(generous),
	},
	{
		Rule: "fabric/impossible", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "no way of cutting gets the pieces out of the printed length",
		Why:     "The area of the pieces alone is more than the cloth has, or one of them is longer than it. Sixty 5-in squares cover 1,500 sq in; 1 yd of usable 40 in is 1,440. What is counted is what must be cut: triangles as the halves or quarters of their squares, bias binding as its strips, a template by the area that the plan states, and one without a stated area not at all.",
		Fix:     "print the length that the plain method takes",
		Run:     eachPrintedCloth(impossible),
	},
	{
		Rule: "fabric/no-strip-width", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "a strip is cut from yardage and no width is given",
		Why:     "Only a precut strip brings its own width. A strip set of three strips of yardage with no width can be cut 1 1/2 in or 6 in wide, and the quilt finishes accordingly.",
		Fix:     "give the strip's cut width",
		Run:     noStripWidth,
	},
	{
		Rule: "fabric/pack-piece", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "a piece is larger than the precut piece it is cut from",
		Why:     "Fabric cannot be cut longer. A 5 1/2-in square out of a pack of 5-in squares is half an inch short on two sides, and the whole pack is useless for it.",
		Fix:     "cut a smaller piece, or cut it from yardage or a larger precut",
		Run:     packPiece,
	},
	{
		Rule: "fabric/pack-short", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the printed number of packs does not hold the pieces that are needed",
		Why:     "Fifty-four strips are needed and a roll holds 40: one roll leaves the maker 14 strips short, and a second one of the same prints may be sold out.",
		Fix:     "print as many packs as are needed",
		Run:     eachPrintedPack(packShort),
	},
	{
		Rule: "fabric/packs-over", Level: diag.Warning, Lesser: diag.Note, Since: "0.1.0", Scope: Size,
		Summary: "more packs are printed than are needed",
		Why:     "Where 36 strips of a 40-strip roll are used, a second roll is bought to lie in a drawer: a note. More than twice as many as are needed, and by more than one, is hardly meant: 120 for 3 is a warning.",
		Fix:     "print as many packs as are needed",
		Run:     eachPrintedPack(packsOver),
	},
	{
		Rule: "fabric/piece-too-wide", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "a piece is longer than the usable width of its fabric, any way it may be turned",
		Why:     "Strips are cut from selvage to selvage. A 42-in centre panel that must stand upright cannot be had from fabric of which 40 in are usable, however many yards there are.",
		Fix:     "sew the piece of two, use wider fabric, or allow it to be turned",
		Run:     pieceTooWide,
	},
	{
		Rule: "fabric/too-many-pieces", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "more pieces are asked of a fabric than yardproof counts",
		Why:     "A slip in the layout multiplies. A grid of 200 by 200 blocks of 36 patches is 1,440,000 pieces, and nobody cuts those: rows and columns were meant to be 20.",
		Fix:     "check the rows and columns of the layout and of the blocks",
		Run:     tooManyPieces,
	},
}

func cloth(f *derive.Fabric) Subject { return Subject{Kind: derive.Cloth, Name: f.Role.Text} }

// shopped prints a length as it is sold and as it is measured: "7/8 yd (31 1/2 in)".
func (p *Pass) shopped(l measure.Length) string {
	sold := measure.FormatFabric(l, p.Plan.Units)
	if strings.HasPrefix(sold, "about ") {
		return p.needs(l)
	}
	return fmt.Sprintf("%s (%s)", sold, p.needs(l))
}

// asPrinted prints a length of fabric as the plan writes it, and what it
// measures.
func (p *Pass) asPrinted(said plan.PrintedLength) string {
	length := p.length(said.Length.Length)
	n := p.Plan.Tree.At(p.Plan.Tree.PointerAt(said.At.Start))
	if n == nil || n.Text == length {
		return length
	}
	return fmt.Sprintf("%s (%s)", n.Text, length)
}

// pair prints a width and a height.
func (p *Pass) pair(w, h measure.Length) string {
	return w.Bare(p.Plan.Units) + " x " + p.length(h)
}

// pairCut prints a width and a height that are cut, neither less than it is.
func (p *Pass) pairCut(w, h measure.Length) string {
	return w.BareRounded(p.Plan.Units, measure.Up) + " x " + p.needs(h)
}

// pairThere prints a width and a height that there are, neither more than it is.
func (p *Pass) pairThere(w, h measure.Length) string {
	return w.BareRounded(p.Plan.Units, measure.Down) + " x " + p.there(h)
}

// boxCut prints a size that has to be covered, no side less than it is.
func (p *Pass) boxCut(b piecing.Box) string {
	width, exact := b.Width.Length()
	if height, ok := b.Height.Length(); ok && exact {
		return p.pairCut(width, height)
	}
	return b.Width.AsCut(p.Plan.Units) + " x " + b.Height.AsCut(p.Plan.Units)
}

// box prints a derived width and height.
func (p *Pass) box(w, h measure.Surd) string {
	width, exact := w.Length()
	if height, ok := h.Length(); ok && exact {
		return p.pair(width, height)
	}
	return w.Format(p.Plan.Units) + " x " + h.Format(p.Plan.Units)
}

// eachPrintedCloth runs a rule over the yardage that has both a printed and a
// derived length.
func eachPrintedCloth(rule func(*Pass, *derive.Fabric, plan.PrintedLength)) func(*Pass) {
	return func(p *Pass) {
		if p.Size.Of.Printed == nil {
			return
		}
		for _, said := range p.Size.Of.Printed.Fabric {
			f := p.Size.Fabric(said.Of.Text)
			if f != nil && f.Form == plan.Yardage && f.Err == nil && said.Length.Given() { // 0 too
				rule(p, f, said)
			}
		}
	}
}

// onlyBacking reports whether the backing is all that a fabric is used for; such
// a length is finish/backing-short's to judge.
func onlyBacking(f *derive.Fabric) bool { return len(f.Needs) == 0 && f.Panels > 0 }

func impossible(p *Pass, f *derive.Fabric, said plan.PrintedLength) {
	if onlyBacking(f) || f.Zone(said.Length.Length) != derive.Impossible {
		return
	}
	p.Report(said.At, Finding{
		Message: fmt.Sprintf("%s; %s", p.printedShort(f, said), p.impossibility(f)),
		Ways:    ways(p.printCloth(said, f)),
		About:   cloth(f),
	})
}

// impossibility says what was shown: the area of what is cut, or a piece that is
// longer than the cloth.
func (p *Pass) impossibility(f *derive.Fabric) string {
	shrinkage := ""
	if f.ShrinkLength.BasisPoints > 0 {
		shrinkage = fmt.Sprintf(", with shrinkage of %s%%", percent(f.ShrinkLength))
	}
	if piece := f.Least.Piece; piece.Given() {
		return fmt.Sprintf("one piece of %q is longer: any way it is laid straight it takes %s of the length%s", piece.Text, p.there(f.Least.Length), shrinkage)
	}
	return fmt.Sprintf("the area alone of what is cut from it, %s, takes %s at the usable width of %s%s",
		measure.FormatArea(f.Least.Area, p.Plan.Units), p.there(f.Least.Length), p.there(f.Width), shrinkage)
}

// enough is what the pattern's instructions take, rounded up as the shop cuts it,
// of the fabric and of every article that is sold for it: what is printed then draws
// no other finding.
func (p *Pass) enough(f *derive.Fabric) measure.Length {
	most := f.Gross
	for _, w := range p.wardrobe() {
		if sold := w.Fabric(f.Role.Text); sold != nil && sold.Err == nil && sold.Form == f.Form {
			most = max(most, sold.Gross)
		}
	}
	return measure.CeilTo(most, f.Grid)
}

// printCloth is the way out of printing enough of a fabric.
func (p *Pass) printCloth(said plan.PrintedLength, f *derive.Fabric) diag.Way {
	return mend(p.putText("print "+p.atLeast(f), said.At, measure.FormatFabric(p.enough(f), p.Plan.Units)))
}

// atLeast qualifies a figure of a fabric of which not all could be counted.
func (p *Pass) atLeast(f *derive.Fabric) string {
	if p.Size.Sure(cloth(f)) {
		return ""
	}
	return "at least "
}

// method names the cutting instructions that the pattern prints.
func method(f *derive.Fabric) string {
	if f.Cuts == plan.PackedCuts {
		return "the packed layout"
	}
	return "the plain method"
}

// breakdown says what the pattern's cutting instructions take and of what it
// is made up.
func (p *Pass) breakdown(f *derive.Fabric) string {
	var terms []string
	if f.Layout.Length > 0 {
		terms = append(terms, p.needs(f.Layout.Length)+" of strips")
	}
	if f.Panels > 0 {
		terms = append(terms, p.needs(f.Panels)+" of backing")
	}
	cut := f.Layout.Length + f.Panels
	squaring := f.Net - cut
	if squaring > 0 {
		terms = append(terms, p.needs(squaring)+" for squaring up")
	}
	text := p.needs(f.Gross) + ": " + inWords(terms)
	if len(terms) == 1 && f.Gross == f.Net {
		text = terms[0]
	}
	if f.Gross > f.Net {
		text += fmt.Sprintf(", with shrinkage of %s%%", percent(f.ShrinkLength))
	}
	return text
}

// inWords joins terms as a sentence does: "a, b and c".
func inWords(terms []string) string {
	if len(terms) < 2 {
		return strings.Join(terms, "")
	}
	last := len(terms) - 1
	return strings.Join(terms[:last], ", ") + " and " + terms[last]
}

// percent prints a share without idle zeros: "3", "2.5".
func percent(share plan.Percent) string {
	return strings.TrimRight(strings.TrimRight(measure.Rational(share.BasisPoints, 100).Number(2), "0"), ".")
}

func generous(p *Pass, f *derive.Fabric, said plan.PrintedLength) {
	most, even := p.mostAsked(f)
	if said.Length.Length <= max(most.Buy, f.With(p.printedApart(f))) || !p.Size.SureOfCloth(f) {
		return
	}
	message := fmt.Sprintf("the pattern prints %s of %q and %s is enough%s: %s takes %s",
		p.asPrinted(said), f.Role.Text, p.shopped(most.Buy), even, method(most), p.breakdown(most))
	way := mend(p.putText("print", said.At, measure.FormatFabric(most.Buy, p.Plan.Units)))
	if !f.Used() {
		message = fmt.Sprintf("the pattern prints %s of %q and nothing is cut from it in this size", p.asPrinted(said), f.Role.Text)
		way = mend(p.remove(said.At))
	} else if f.Cushion > 0 {
		message += fmt.Sprintf(", and the cushion is %s", p.needs(f.Cushion))
	}
	p.Report(said.At, Finding{
		Level:   surplus(said.Length.Length, most.Buy, surplusCloth(p.Plan.Units)),
		Message: message, Ways: ways(way), About: cloth(f),
	})
}

// mostAsked is the fabric as a pattern may ask most of it without being generous:
// as it is reckoned, at the careful width, with slack in the strips, cut as the
// printed strips say, or as an article that is sold. It says in which of these
// it asks most.
func (p *Pass) mostAsked(f *derive.Fabric) (most *derive.Fabric, even string) {
	most = f
	ask := func(other *derive.Fabric, how string) {
		if other != nil && other.Err == nil && other.Buy > most.Buy {
			most, even = other, ", even "+how
		}
	}
	article := func(s *derive.Size) {
		if other := s.Fabric(f.Role.Text); other != nil {
			ask(other, p.article(other))
		}
	}
	if careful, hopes := p.hopesFor(f); hopes {
		narrow, _ := atWidth(p.Size, f, careful)
		ask(narrow, p.article(narrow))
	}
	for _, s := range p.withSlack() {
		ask(s.Fabric(f.Role.Text), "with room to straighten the strips")
	}
	ask(p.laidAsPrinted(f), "cut as the strips are printed")
	ask(f.LogsAcross(), "with all logs cut along the strips")
	for _, w := range p.wardrobe() {
		article(w.Size)
	}
	return most, even
}
