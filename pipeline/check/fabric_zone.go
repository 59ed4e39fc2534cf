package check

import (
	"fmt"
	"slices"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

var zoneChecks = []Check{
	{
		Rule: "fabric/could-ask-less", Level: diag.Note, Since: "0.1.0", Scope: Size, Thorough: true,
		Summary: "a packed cutting layout would need a step less of fabric",
		Why:     "Cut each size from its own strips, and the ends of the strips are lost. Where a packed layout needs 7/8 yd instead of 1 yd, a run of twenty kits takes 2 1/2 yd less. Only an export looks for it, as it means solving every fabric's cutting.",
		Fix:     "say \"cutting\": \"packed\" in the fabric and print its layout, or \"plain\" to keep the simple instructions",
		Run:     couldAskLess,
	},
	{
		Rule: "fabric/out-of-strips", Level: diag.Error, Lesser: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "no layout of strips gets the pieces out of the printed length",
		Why:     "Pattern instructions cut strips across the fabric and pieces from the strips. Six 13-in squares fit three to a 40-in strip, so they take two strips, 26 in, though their area alone is only 25.35 in of cloth. Whether any other straight cutting might do is told, too; but it is not what the pattern teaches. A warning where a print is to stand upright in logs: which way logs are cut is common practice and no more.",
		Fix:     "print the length that the plain method takes, or how the pieces are cut in another way",
		Run:     inZone(derive.OutOfStrips, outOfStrips),
	},
	{
		Rule: "fabric/pack-tight", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the printed packs are enough only with a packed cutting layout",
		Why:     "Each size cut from pieces of its own takes 11 fat quarters; packed, the same pieces come from 9. A maker who cuts size by size runs out of the ninth and last.",
		Fix:     "print the packs that the plain method takes, or say \"cutting\": \"packed\" and print the layout",
		Run:     eachPrintedPack(packTight),
	},
	{
		Rule: "fabric/tight", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the printed length is enough only with a packed cutting layout",
		Why:     "The plain method, each size of piece from its own strips, is how most makers cut. Where it does not fit, the pattern must print the layout that does, and a maker who cuts as usual runs out of fabric.",
		Fix:     "print the length that the plain method takes, or say \"cutting\": \"packed\" and print the layout",
		Run:     tightOnly,
	},
	{
		Rule: "fabric/unsettled", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "whether the printed length or packs are enough was not settled",
		Why:     "No layout was found that fits, and none was proved impossible. Petals of 18 sq in are cut from boxes of 6 x 6 in as far as yardproof knows; laid head to tail they may take half of that, and only the drawing shows it. A pattern should not rest on a length that nobody has a layout for.",
		Fix:     "print a length that a layout is known for",
		Run:     notSettled,
	},
	{
		Rule: "fabric/unsquared", Level: diag.Error, Lesser: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the printed length leaves too little to straighten the ends",
		Why:     "Fabric comes from the bolt with crooked ends. Six 4 1/2-in strips are 27 in, and 3/4 yd is 27 in to the thread: the first straightening cut spoils the sixth strip. Where at least 1/2 in (1 cm) is left, a careful hand may still do, and it is a warning.",
		Fix:     "print a step more",
		Run:     inZone(derive.Unsquared, unsquared),
	},
}

// inZone runs a rule on printed lengths of yardage that lie in a zone. Where
// not all was counted, only what is below a bound is known to lie there.
func inZone(zone derive.Zone, rule func(*Pass, *derive.Fabric, plan.PrintedLength)) func(*Pass) {
	return eachPrintedCloth(func(p *Pass, f *derive.Fabric, said plan.PrintedLength) {
		bound := zone == derive.Impossible || zone == derive.PlainShort || zone == derive.OutOfStrips
		if !onlyBacking(f) && f.Used() && (bound || p.Size.SureOfCloth(f)) && f.Zone(said.Length.Length) == zone && !enoughOnItsSide(f, said) {
			rule(p, f, said)
		}
	})
}

// printedCloth begins the message of a rule about a printed length.
func (p *Pass) printedCloth(f *derive.Fabric, said plan.PrintedLength) string {
	return fmt.Sprintf("the pattern prints %s of %q", p.asPrinted(said), f.Role.Text)
}

// printedShort is printedCloth for a length that no layout found does with; it
// names the slip of printing metres as yards.
func (p *Pass) printedShort(f *derive.Fabric, said plan.PrintedLength) string {
	text := p.printedCloth(f, said)
	if p.Plan.Units == measure.In && inMetres(said.Length.Length) == measure.CeilTo(f.Gross, 10*measure.Centimetre) {
		text += ", as many yards as it takes metres"
	}
	return text
}

// inMetres is as many metres as a length is yards, rounded down.
func inMetres(l measure.Length) measure.Length { return l * measure.Metre / measure.Yard }

// proof says how far the packed layout of a fabric is known to be the best.
func (p *Pass) proof(f *derive.Fabric) string {
	packed := f.Packed()
	if packed.Status == cutting.Proved && !f.Loose() {
		return "proved the shortest of its kind"
	}
	return "none below " + p.there(packed.Floor) + " is possible"
}

func tightOnly(p *Pass) {
	inZone(derive.Tight, tight)(p)
	inZone(derive.TightStacked, tightStacked)(p)
	inZone(derive.TightOnBias, tightOnBias)(p)
}

// tightOnBias says how bias strips are cut that do with less than squares.
func tightOnBias(p *Pass, f *derive.Fabric, said plan.PrintedLength) {
	var how []string
	for _, b := range f.BiasCut().Panels {
		how = append(how, fmt.Sprintf("%q from %s of %s, cut at 45 degrees into bias strips %s wide, %d of them from edge to edge and the rest from the corners",
			b.Of.Text, count(int(b.Count), "rectangle"), p.pairCut(b.Across, b.High), p.needs(b.Width), b.Strips))
	}
	p.Report(said.At, Finding{
		Message: fmt.Sprintf("%s; %s takes %s, and it fits only with %s: %s with squaring up",
			p.printedCloth(f, said), method(f), p.breakdown(f), inWords(how), p.needs(f.BiasCut().Gross)),
		Ways:  ways(p.printCloth(said, f), advise("print how these strips are cut")),
		About: cloth(f),
	})
}

// tightStacked: a layout that no proof about strips speaks of fits all the same.
func tightStacked(p *Pass, f *derive.Fabric, said plan.PrintedLength) {
	beside := "in columns"
	if f.Stacked().Panelled() {
		beside = "along the fabric and beside"
	}
	p.Report(said.At, Finding{
		Message: fmt.Sprintf("%s; %s takes %s, and only the stacked layout printed on sheet %q fits, %s: %s with squaring up",
			p.printedCloth(f, said), method(f), p.breakdown(f), p.Size.CutList(), f.Stacked().Rounds(), p.needs(f.Stacked().Gross)),
		Ways:  ways(p.printCloth(said, f), advise(fmt.Sprintf("print how the pieces of %q are cut %s", f.Role.Text, beside))),
		About: cloth(f),
	})
}

func tight(p *Pass, f *derive.Fabric, said plan.PrintedLength) {
	p.Report(said.At, Finding{
		Message: fmt.Sprintf("%s; the plain method takes %s, and only the packed layout printed on sheet %q fits: %s with squaring up, %s",
			p.printedCloth(f, said), p.breakdown(f), p.Size.CutList(), p.needs(f.Packed().Gross), p.proof(f)),
		Ways:  ways(p.printCloth(said, f), p.cutAs(f, "packed", "and print its cut list")),
		About: cloth(f),
	})
}

func unsquared(p *Pass, f *derive.Fabric, said plan.PrintedLength) {
	left := f.Straightens(said.Length.Length)
	p.Report(said.At, Finding{
		Level: p.unstraight(left),
		Message: fmt.Sprintf("%s; %s takes %s, and even the shortest layout found leaves %s of the %s for squaring up",
			p.printedCloth(f, said), method(f), p.breakdown(f), p.only(left.Surd()), p.needs(f.SquaringUp.Length)),
		Ways:  ways(p.printCloth(said, f)),
		About: cloth(f),
	})
}

// unstraight is the level of too little to straighten the ends of a fabric: a
// warning where a careful hand may still do with it.
func (p *Pass) unstraight(left measure.Length) diag.Level {
	if left >= slackWanted(p.Plan.Units) {
		return diag.Warning
	}
	return diag.Error
}

// only says how little is left of something.
func (p *Pass) only(l measure.Surd) string {
	if l.Sign() <= 0 {
		return "nothing"
	}
	return "only " + l.AsThere(p.Plan.Units)
}

func outOfStrips(p *Pass, f *derive.Fabric, said plan.PrintedLength) {
	level := diag.Error
	if f.LogsAcross() != nil { // which way logs are cut is common practice, no more
		level = diag.Warning
	}
	p.Report(said.At, Finding{
		Level: level,
		Message: fmt.Sprintf("%s; %s takes %s, and %s",
			p.printedShort(f, said), method(f), p.atLeast(f)+p.needs(f.Gross), p.outOfReach(f, said.Length.Length)),
		Ways:  ways(p.printCloth(said, f)),
		About: cloth(f),
	})
}

// outOfReach says what is proved of a length that is too short for strips: of these, and
// of every other way of straight cutting.
func (p *Pass) outOfReach(f *derive.Fabric, length measure.Length) string {
	strips, straight := f.Packed().Floor, f.StraightFloor()
	if straight >= strips {
		return fmt.Sprintf("no straight cutting%s takes less than %s, which is proved", asPlanned(f, "strips "), p.there(straight))
	}
	text := fmt.Sprintf("no layout of strips%s takes less than %s, which is proved", asPlanned(f, ""), p.there(strips))
	switch {
	case length < straight:
		return text + ", nor any other straight cutting less than " + p.there(straight)
	case f.Repeat.Length > 0: // other ways of cutting would match no print
		return text
	}
	return text + "; whether another way of straight cutting does with it is not known"
}

// asPlanned qualifies a proof about strips by what it takes as the plan does:
// strips (named where the proof does not) sewn whole, in sets or joined, squares cut into triangles, and the
// print's repeats.
func asPlanned(f *derive.Fabric, strips string) string {
	var how []string
	if slices.ContainsFunc(f.Needs, func(n derive.Need) bool { return n.Strip }) {
		how = append(how, strips+"used whole where the plan sews them whole")
	}
	if slices.ContainsFunc(f.Needs, func(n derive.Need) bool { return n.Halving != plan.Whole }) {
		how = append(how, "triangles cut from squares as the plan says")
	}
	if slices.ContainsFunc(f.Needs, func(n derive.Need) bool { return n.Stood }) {
		how = append(how, "the print upright in the logs")
	}
	if f.Repeat.Length > 0 {
		how = append(how, "in whole repeats of the print")
	}
	if len(how) == 0 {
		return ""
	}
	return ", " + inWords(how) + ","
}

func notSettled(p *Pass) {
	inZone(derive.Unsettled, unsettled)(p)
	eachPrintedPack(unsettledPacks)(p)
}

func unsettled(p *Pass, f *derive.Fabric, said plan.PrintedLength) {
	none := ""
	if floor := f.Packed().Floor; floor > 0 {
		none = fmt.Sprintf(", and none below %s is possible", p.there(floor))
	}
	p.Report(said.At, Finding{
		Message: fmt.Sprintf("%s; the shortest layout of strips found takes %s%s%s: whether the printed length is enough is not settled%s",
			p.printedShort(f, said), p.needs(f.Packed().Gross), p.asBoxes(f), none, within(f.Packed().Spent)),
		Ways:  ways(p.printCloth(said, f)),
		About: cloth(f),
	})
}

// within says that a search was ended by what one plan may cost.
func within(spent cutting.Spent) string {
	if spent.Short {
		return " with the work that the cuttings of one plan are allowed"
	}
	return ""
}

// asBoxes says what is laid out as it need not be cut.
func (p *Pass) asBoxes(f *derive.Fabric) string {
	for _, n := range f.Needs {
		if n.Free && n.Count > 0 {
			return fmt.Sprintf(" where %q is laid out as %s of %s", n.For.Text, count(int(n.Count), "piece"), p.pairCut(n.Across, n.Along))
		}
	}
	if f.Panels > 0 {
		return " with nothing cut beside the backing"
	}
	return ""
}

func couldAskLess(p *Pass) {
	for _, f := range p.Size.Fabrics {
		if f.Form != plan.Yardage || f.Cuts != plan.Unsaid || f.Err != nil || len(f.Needs) == 0 || !p.Size.SureOfCloth(f) {
			continue
		}
		if packed := f.Packed(); packed.Buy < f.Buy {
			p.Report(f.Role.At, Finding{
				Message: fmt.Sprintf("the plain method takes %s of %q and a packed layout %s, %s%s", p.shopped(f.Buy), f.Role.Text,
					p.shopped(packed.Buy), p.proof(f), p.overRun(f.Buy-packed.Buy)),
				Ways:  ways(p.cutAs(f, "packed", "to print that layout"), p.cutAs(f, "plain", "to keep the simple one")),
				About: cloth(f),
			})
		}
	}
}

// overRun says what a saving comes to over the kits planned.
func (p *Pass) overRun(saved measure.Length) string {
	kits := p.Project.Run.N
	if k := p.Size.Of.Kit; k == nil {
		return ""
	} else if k.Run.Given() {
		kits = k.Run.N
	}
	if kits == 0 {
		return ""
	}
	return fmt.Sprintf("; over %s that saves %s", count(kits, "kit"), measure.RoundedFabric(saved*measure.Length(kits), p.Plan.Units, measure.Down))
}
