package check

import (
	"fmt"
	"slices"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// Rules about sizes of fabric that the trade states larger than every shop has
// them.
var carefulChecks = []Check{
	{
		Rule: "fabric/wide-only", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the printed length, strip sets or tubes are enough only at a usable width that bolts of that fabric cannot be relied on to have",
		Why:     "Fabric sold as 42 to 44 in wide gives 40 to 42 in between the selvages, by the mill and the bolt, and backing sold as 108 in gives 104 to 106. The buying list states the width that is reckoned with, and that is fair notice as long as bolts of that width can be bought: up to 42 in (107 cm), and 106 in (270 cm) of extra-wide backing. At 44 in seven 6 1/4-in squares come from a strip, at the careful 40 in six: 42 squares are six strips or seven, and whoever trusted the list looks for a width that is sold and not usable. The widths are common practice, no source.",
		Fix:     "print the length that the careful width takes, or state a usable width of 42 in (107 cm)",
		Run:     wideOnly,
	},
	{
		Rule: "fabric/quarter-size", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the printed packs are enough at the stated size of a fat quarter or eighth and not at the careful 20 in (50 cm) of its length",
		Why:     "A fat quarter is half a width of fabric: 18 in by 20 to 22, by the bolt it was cut from. Of 18 x 21 in come thirty squares of 3 1/2 in, of 18 x 20 in twenty-five, and one quarter in six is then missing. The careful size is common practice, no source.",
		Fix:     "state 18 x 20 in as the usable size, or tell the customer the size in the fabric list and accept this",
		Run:     eachPrintedPack(quarterSize),
	},
	{
		Rule: "fabric/widths-differ", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "fabrics of the common width are stated with different usable widths",
		Why:     "A pattern prints one usable width, and its customer buys every fabric by it. Where the blocks are reckoned at 42 in and the border at 40, one of the two lists is of another width than is printed: four strips of 42 in are cut where the 40 in that was bought needs five.",
		Fix:     "state one usable width for all fabrics that are sold as 42 to 44 in (110 cm)",
		Run:     widthsDiffer,
	},
}

// carefulWidth is what is usable of every bolt of the common width.
func (p *Pass) carefulWidth() measure.Length { return plan.DefaultsFor(p.Plan.Units).UsableWidth }

// hopesFor is the careful width of a fabric that is stated to be wider than
// that; ok is false where it is not, or is neither of the common width nor
// extra-wide backing.
func (p *Pass) hopesFor(f *derive.Fabric) (careful measure.Length, ok bool) {
	w := f.UsableWidth.Length
	if careful = p.carefulWidth(); w > careful && w <= widestCommon(p.Plan.Units) {
		return careful, true
	}
	careful, widest := 104*measure.Inch, 108*measure.Inch // common practice, no source
	if p.Plan.Units == measure.Cm {
		careful, widest = 264*measure.Centimetre, 275*measure.Centimetre
	}
	return careful, w > careful && w <= widest
}

// widestCommon is the greatest usable width that may be meant for the common
// quilting width, sold as 42 to 44 in or 110 cm; wider stated widths ask for
// another fabric. Common practice, no source.
func widestCommon(u measure.Unit) measure.Length {
	if u == measure.Cm {
		return 112 * measure.Centimetre
	}
	return 44 * measure.Inch
}

// fairNotice reports whether a stated usable width can be bought of every maker of
// such fabric, by those who look for it. Common practice, no source.
func fairNotice(w measure.Length, u measure.Unit) bool {
	common, extra := 42*measure.Inch, 106*measure.Inch
	if u == measure.Cm {
		common, extra = 107*measure.Centimetre, 270*measure.Centimetre
	}
	return w <= common || w > widestCommon(u) && w <= extra
}

func wideOnly(p *Pass) {
	eachPrintedCloth(wideLength)(p)
	wideSets(p)
}

// wideSets is about strip sets and tubes whose strips come from too wide a fabric.
func wideSets(p *Pass) {
	said := p.Size.Of.Printed
	if said == nil || len(said.Sets)+len(said.Tubes) == 0 {
		return
	}
	narrow := p.narrow()
	if narrow == nil {
		return
	}
	report := func(said plan.PrintedCount, thing string, takes, atCareful int64) {
		if n := int64(said.N); n >= takes && n < atCareful {
			p.Report(said.At, Finding{
				Message: fmt.Sprintf("the pattern prints %s of %q, as strips of the stated usable width take; at the careful width of %s, %d %s needed",
					count(said.N, thing), said.Of.Text, p.there(p.carefulWidth()), atCareful, is(atCareful)),
				Ways: ways(p.printCount(said.At, atCareful), advise("state a usable width that shops sell")),
			})
		}
	}
	for _, c := range said.Sets {
		if a, b := p.Size.Part(c.Of.Text), narrow.Part(c.Of.Text); a != nil && a.Set != nil && b != nil && b.Set != nil {
			report(c, "strip set", a.Set.Count, b.Set.Count)
		}
	}
	for _, c := range said.Tubes {
		if a, b := p.Size.Part(c.Of.Text), narrow.Part(c.Of.Text); a != nil && a.Tube != nil && b != nil && b.Tube != nil {
			report(c, "tube", a.Tube.Count, b.Tube.Count)
		}
	}
}

// narrow is the size at the careful usable width of every fabric of the common
// width that is stated to be wider than can be relied on; nil where none is.
func (p *Pass) narrow() *derive.Size {
	of := *p.Size.Of
	of.Fabrics = slices.Clone(of.Fabrics)
	found := false
	for i := range of.Fabrics {
		f := p.Size.Fabric(of.Fabrics[i].Role.Text)
		if f == nil || f.Form != plan.Yardage || fairNotice(f.UsableWidth.Length, p.Plan.Units) {
			continue
		}
		if careful, hopes := p.hopesFor(f); hopes && careful == p.carefulWidth() {
			of.Fabrics[i].UsableWidth.Length, found = careful, true
		}
	}
	if !found {
		return nil
	}
	return p.Size.Again(&of)
}

func wideLength(p *Pass, f *derive.Fabric, said plan.PrintedLength) {
	careful, hopes := p.hopesFor(f)
	if !hopes || fairNotice(f.UsableWidth.Length, p.Plan.Units) || said.Length.Length < f.Gross || !p.Size.SureOfCloth(f) {
		return
	}
	n, sure := atWidth(p.Size, f, careful)
	why := "it takes " + p.needs(n.Gross)
	switch {
	case n.Err != nil:
		why = "a piece is too long"
	case !sure:
		why = "a strip set or tube gives no piece"
	case n.Gross <= said.Length.Length:
		return
	}
	p.Report(said.At, Finding{
		Message: fmt.Sprintf("the pattern prints %s of %q; at a usable width of %s it takes %s; at the careful width of %s %s",
			p.asPrinted(said), f.Role.Text, p.there(f.UsableWidth.Length), p.needs(f.Gross), p.there(careful), why),
		Ways:  p.wideWays(said, n),
		About: cloth(f),
	})
}

func (p *Pass) wideWays(said plan.PrintedLength, narrow *derive.Fabric) []diag.Way {
	sold := advise("state a usable width that shops sell")
	if narrow.Err != nil {
		return ways(advise("sew the piece of two"), sold)
	}
	return ways(p.printCloth(said, narrow), sold)
}

// widthsDiffer tells of the first fabric that is reckoned at another width than
// those before it.
func widthsDiffer(p *Pass) {
	var first *derive.Fabric
	for _, f := range p.Size.Fabrics {
		w := f.UsableWidth.Length
		if f.Form != plan.Yardage || !f.Used() || w < p.carefulWidth()*9/10 || w > widestCommon(p.Plan.Units) {
			continue
		}
		if first == nil {
			first = f
		}
		if w == first.UsableWidth.Length {
			continue
		}
		p.Report(f.UsableWidth.At, Finding{
			Message: fmt.Sprintf("the usable width of %q is %s, and that of %q %s", f.Role.Text, p.there(w), first.Role.Text, p.there(first.UsableWidth.Length)),
			Ways:    ways(p.reckonAt(f, min(w, first.UsableWidth.Length)), p.reckonAt(first, min(w, first.UsableWidth.Length))),
			Related: []Related{{first.Role.At, "the other fabric"}},
		})
		return
	}
}

// reckonAt is the way out of reckoning a fabric at a usable width; none where it is
// reckoned so.
func (p *Pass) reckonAt(f *derive.Fabric, w measure.Length) diag.Way {
	if f.UsableWidth.Length == w {
		return diag.Way{}
	}
	yardage := p.text().Node(f.At).Get("yardage")
	if yardage == nil {
		return diag.Way{}
	}
	if said := yardage.Get("usable_width"); said != nil {
		return mend(p.putLength(fmt.Sprintf("state for %q", f.Role.Text), said.Range, w))
	}
	return mend(of(p.add(yardage.Range, "usable_width", p.lengthText(source.Range{}, w)), fmt.Sprintf("for %q", f.Role.Text)))
}

// carefulQuarter is the careful length of a fat quarter's or eighth's longer
// side; ok is false for precuts that are neither, or are not stated longer.
func (p *Pass) carefulQuarter(f *derive.Fabric) (careful measure.Length, ok bool) {
	short, widest := 18*measure.Inch, 22*measure.Inch
	careful = 20 * measure.Inch
	if p.Plan.Units == measure.Cm {
		short, careful, widest = 50*measure.Centimetre, 50*measure.Centimetre, 55*measure.Centimetre
	}
	across, long := min(f.Piece[0].Length, f.Piece[1].Length), f.StripLength().Length
	return careful, (across == short || across == short/2) && long > careful && long <= widest
}

// atQuarter derives the fabric anew, of quarters no longer than they may be.
func atQuarter(s *derive.Size, f *derive.Fabric, long measure.Length) *derive.Fabric {
	changed, _ := s.Changed(f, func(f *plan.Fabric) {
		for i := range f.Usable {
			f.Usable[i].Length = min(f.Usable[i].Length, long)
		}
	})
	return changed
}

// mostPacks is the precut of which a pattern may print most packs without printing
// too many: as it is, of the careful size, with slack in the strips, cut as the
// printed strips say, or as it is sold in a colourway.
func (p *Pass) mostPacks(f *derive.Fabric) *derive.Fabric {
	most := f
	ask := func(other *derive.Fabric) {
		if other != nil && other.Err == nil && other.Packs > most.Packs {
			most = other
		}
	}
	if careful, hopes := p.carefulQuarter(f); hopes {
		ask(atQuarter(p.Size, f, careful))
	}
	for _, s := range p.withSlack() {
		ask(s.Fabric(f.Role.Text))
	}
	ask(p.laidAsPrinted(f))
	for _, w := range p.wardrobe() {
		ask(w.Fabric(f.Role.Text))
	}
	return most
}

func quarterSize(p *Pass, f *derive.Fabric, said plan.PrintedCount) {
	careful, hopes := p.carefulQuarter(f)
	if !hopes || int64(said.N) < f.Packs || !p.Size.SureOfCloth(f) {
		return
	}
	small := atQuarter(p.Size, f, careful)
	takes := "it takes " + count(int(small.Packs), "pack")
	switch {
	case small.Err != nil:
		takes = "a piece is too long"
	case small.Packs <= int64(said.N):
		return
	}
	p.Report(said.At, Finding{
		Message: fmt.Sprintf("the pattern prints %s of %q; at %s a piece that is enough, at the careful size of %s %s", count(said.N, "pack"), f.Role.Text,
			p.pairThere(f.StripWidth().Length, f.StripLength().Length), p.pairThere(f.StripWidth().Length, careful), takes),
		Ways:  ways(p.usable(f, careful), advise("say in the fabric list how large a piece must be")),
		About: cloth(f),
	})
}

// usable is the way out of stating how much of a precut piece is usable.
func (p *Pass) usable(f *derive.Fabric, long measure.Length) diag.Way {
	precut := p.text().Node(f.At).Get("precut")
	if precut == nil {
		return diag.Way{}
	}
	width, height := min(f.Usable[0].Length, long), min(f.Usable[1].Length, long)
	if said := precut.Get("usable"); said != nil {
		return mend(p.putPair("state as usable", f.Usable[0], f.Usable[1], width, height))
	}
	value := fmt.Sprintf("[%s, %s]", p.lengthText(source.Range{}, width), p.lengthText(source.Range{}, height))
	return mend(p.add(precut.Range, "usable", value))
}

// atWidth is a fabric with another usable width, and whether all that is cut from
// it is counted then.
func atWidth(s *derive.Size, f *derive.Fabric, width measure.Length) (*derive.Fabric, bool) {
	return s.Changed(f, func(f *plan.Fabric) { f.UsableWidth.Length = width })
}
