package check

import (
	"fmt"
	"strings"
	"unicode"

	"yardproof/pipeline/diag"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

var unlikelyChecks = []Check{
	{
		Rule: "piecing/unlikely-length", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "a length is outside what is sewn or sold, perhaps because it is written in the other unit",
		Why: "A seam allowance of 0.75 means 0.75 cm to whoever works in centimetres, and 3/4 in to a plan in inches: every piece then finishes an inch too small. Believed without a word are " +
			"seams of 1/8 to 1/2 in (0.3 to 1.5 cm), a backing's seams up to 1 in (2.5 cm), binding strips up to 4 in (3.5 to 10 cm, 2 to 10 cm folded single), overhangs up to 8 in (20 cm), a drop up to 30 in (80 cm), " +
			"mattresses up to 100 in or of 100 cm and more, rulers up to 36 in (100 cm), precut pieces up to 72 in (200 cm), and usable widths other than 39 to 46 cm and, of fabric that no backing is made of, 99 to 120 in, which are cotton's in the other unit. " +
			"Common practice, no source; the limits are this project's.",
		Fix: "write the unit with the length, or correct it",
		Run: unlikelyLengths,
	},
}

// span is the lengths between two limits, which belong to it. A greatest of
// zero means none.
type span struct{ least, most measure.Length }

func (s span) has(l measure.Length) bool {
	return l >= s.least && (s.most == 0 || l <= s.most)
}

// usual is what is sewn or sold, in plans of either unit.
type usual struct {
	what   string // "seams are sewn"
	in, cm span
	// Gaps are lengths that nothing is sold in and that are usual numbers of the
	// other unit. Their ends do not belong to them.
	inGap, cmGap span
}

func (u usual) of(unit measure.Unit) (fits, gap span) {
	if unit == measure.Cm {
		return u.cm, u.cmGap
	}
	return u.in, u.inGap
}

// believes reports whether a length is nothing out of the ordinary.
func (u usual) believes(l measure.Length, unit measure.Unit) bool {
	fits, gap := u.of(unit)
	return fits.has(l) && (gap.most == 0 || l <= gap.least || l >= gap.most)
}

const (
	inch = measure.Inch
	cm   = measure.Centimetre
	mm   = measure.Centimetre / 10
)

// What is believed; common practice, no source.
var (
	usualSeam     = usual{what: "seams are sewn", in: span{inch / 8, inch / 2}, cm: span{3 * mm, 15 * mm}}
	usualBacking  = usual{what: "seams of a backing are sewn", in: span{inch / 8, inch}, cm: span{3 * mm, 25 * mm}}
	usualBinding  = usual{what: "binding strips are cut", in: span{0, 4 * inch}, cm: span{35 * mm, 10 * cm}}
	usualSingle   = usual{what: "strips of single binding are cut", in: span{0, 4 * inch}, cm: span{2 * cm, 10 * cm}}
	usualOverhang = usual{what: "an overhang is", in: span{0, 8 * inch}, cm: span{0, 20 * cm}}
	usualDrop     = usual{what: "a drop is", in: span{0, 30 * inch}, cm: span{0, 80 * cm}}
	usualMattress = usual{what: "a mattress is", in: span{0, 100 * inch}, cm: span{100 * cm, 0}}
	usualRuler    = usual{what: "rulers are", in: span{0, 36 * inch}, cm: span{0, 100 * cm}}
	usualPiece    = usual{what: "precut pieces are", in: span{0, 72 * inch}, cm: span{0, 200 * cm}}
	usualWidth    = usual{what: "usable widths are", inGap: span{99 * inch, 120 * inch}, cmGap: span{39 * cm, 46 * cm}}
	usualWide     = usual{what: "usable widths are", cmGap: usualWidth.cmGap} // a backing's, of which 104 to 120 in are sold
)

// stated is a length of the plan and what is usual for it.
type stated struct {
	name string
	plan.Length
	usual
}

// statedLengths are the lengths of the plan that can be told from those of the
// other unit.
func (p *Pass) statedLengths() []stated {
	of := p.Size.Of
	all := []stated{{"the seam allowance", of.Seam.Allowance, usualSeam}}
	for _, part := range of.Parts {
		if part.Seam != nil {
			all = append(all, stated{fmt.Sprintf("the seam allowance of %q", part.Name.Text), part.Seam.Allowance, usualSeam})
		}
	}
	for _, b := range p.Size.AllBorders() {
		if b.Said.Seam != nil {
			all = append(all, stated{fmt.Sprintf("the seam allowance of border %q", b.Said.Name.Text), b.Said.Seam.Allowance, usualSeam})
		}
	}
	all = append(all, finishLengths(of)...)
	for i := range of.Fabrics {
		f := &of.Fabrics[i]
		b := of.Finish.Backing
		all = append(all, clothLengths(f, b != nil && b.Fabric.Text == f.Role.Text)...)
	}
	if of.Tools.At != (source.Range{}) {
		for _, r := range of.Tools.Rulers {
			all = append(all, stated{"a ruler", r.Length, usualRuler})
		}
	}
	return all
}

func finishLengths(of *plan.Size) []stated {
	var all []stated
	if b := of.Finish.Backing; b != nil {
		all = append(all, stated{"the backing's seam allowance", b.Seam, usualBacking}, stated{"the backing's overhang", b.Overhang, usualOverhang})
	}
	if b := of.Finish.Batting; b != nil {
		all = append(all, stated{"the batting's overhang", b.Overhang, usualOverhang})
	}
	if b := of.Finish.Binding; b != nil && !tooNarrow(b) {
		all = append(all, bindingStrip(b))
	}
	if b := of.Bed; b != nil {
		all = append(all, stated{"the mattress", longer(b.Mattress), usualMattress}, stated{"the drop", b.Drop, usualDrop})
	}
	return all
}

func bindingStrip(b *plan.Binding) stated {
	if b.Single {
		return stated{"the binding's strip", b.Cut, usualSingle}
	}
	return stated{"the binding's strip", b.Cut, usualBinding}
}

// clothLengths are those of a fabric; backs tells whether the backing is made
// of it.
func clothLengths(f *plan.Fabric, backs bool) []stated {
	if f.Form == plan.Yardage {
		width := usualWidth
		if backs {
			width = usualWide
		}
		return []stated{{fmt.Sprintf("the usable width of %q", f.Role.Text), f.UsableWidth, width}}
	}
	all := []stated{{fmt.Sprintf("a piece of %q", f.Role.Text), longer(f.Piece), usualPiece}}
	if short := min(f.Piece[0].Length, f.Piece[1].Length); longer(f.Piece).Length >= 5*short {
		all[0].what, all[0].cmGap = "precut strips are", usualWidth.cmGap // as long as fabric is wide
	}
	return all
}

func longer(sides [2]plan.Length) plan.Length {
	if sides[0].Length > sides[1].Length {
		return sides[0]
	}
	return sides[1]
}

// unlikelyLengths reports the lengths that are not believed. Those that would
// be usual in the other unit have one cause, and are told of together.
func unlikelyLengths(p *Pass) {
	var mistaken []stated
	seen := map[source.Range]bool{}
	for _, s := range p.statedLengths() {
		if s.Length.Length == 0 || seen[s.At] || p.written(s) == "" || s.believes(s.Length.Length, p.Plan.Units) {
			continue
		}
		seen[s.At] = true
		if p.otherUnit(s) {
			mistaken = append(mistaken, s)
			continue
		}
		p.Report(s.At, Finding{Message: p.unlikely(s), Ways: ways(advise("correct it"), advise("accept this where it is meant"))})
	}
	if len(mistaken) > 0 {
		p.mistaken(mistaken)
	}
}

// unlikely says what a length is and what is usual.
func (p *Pass) unlikely(s stated) string {
	fits, gap := s.of(p.Plan.Units)
	text := fmt.Sprintf("%s is %s; %s ", s.name, p.length(s.Length.Length), s.what)
	switch {
	case gap.most > 0 && fits.has(s.Length.Length):
		return text + fmt.Sprintf("up to %s or from %s", p.there(gap.least), p.needs(gap.most))
	case fits.most == 0:
		return text + "at least " + p.needs(fits.least)
	case fits.least == 0:
		return text + "at most " + p.there(fits.most)
	}
	return text + fmt.Sprintf("%s to %s", fits.least.BareRounded(p.Plan.Units, measure.Up), p.there(fits.most))
}

// otherUnit reports whether a length names no unit and would be believed as one
// of the other unit.
func (p *Pass) otherUnit(s stated) bool {
	if strings.ContainsFunc(p.written(s), func(r rune) bool { return unicode.IsLetter(r) || strings.ContainsRune("\"'\u2032\u2033", r) }) {
		return false
	}
	unit, l := p.inOther(s.Length.Length)
	return s.believes(l, unit)
}

// written is how the plan writes a length; empty for a default.
func (p *Pass) written(s stated) string {
	if n := p.Plan.Tree.At(p.Plan.Tree.PointerAt(s.At.Start)); n != nil {
		return n.Text
	}
	return ""
}

// inOther is the same number of the other unit, down to a tick.
func (p *Pass) inOther(l measure.Length) (measure.Unit, measure.Length) {
	if p.Plan.Units == measure.Cm {
		return measure.In, l.Surd().MulInt(int64(inch)).DivInt(int64(cm)).FloorTo(measure.Tick)
	}
	return measure.Cm, l.Surd().MulInt(int64(cm)).DivInt(int64(inch)).FloorTo(measure.Tick)
}

// other is the unit that the plan is not in, and its name in words.
func (p *Pass) other() (measure.Unit, string) {
	if p.Plan.Units == measure.Cm {
		return measure.In, "inches"
	}
	return measure.Cm, "centimetres"
}

// withOther is the way out of a length that is meant in the other unit.
func (p *Pass) withOther(s stated) diag.Way {
	unit, l := p.inOther(s.Length.Length)
	meant := mend(p.putText("write", s.At, l.Format(unit)))
	if meant.Kind == 0 {
		meant = advise("write its unit with it")
	}
	return noted(meant, "if that is meant")
}

func (p *Pass) mistaken(all []stated) {
	first := all[0]
	unit, word := p.other()
	whole := diag.Way{}
	if units := p.Plan.Tree.Get("units"); units != nil {
		e := p.putText("write", units.Range, unit.String())
		e.Shown = "\"units\": " + e.Shown
		whole = noted(mend(e), "where the whole plan is")
	}
	f := Finding{
		Message: fmt.Sprintf("%s: the figure looks like %s", p.unlikely(first), word),
		Ways:    ways(p.withOther(first), whole),
	}
	for _, s := range all[1:] {
		f.Related = append(f.Related, Related{s.At, "so does this: " + p.unlikely(s)})
	}
	p.Report(first.At, f)
}
