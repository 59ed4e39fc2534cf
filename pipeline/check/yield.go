package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

var yieldChecks = []Check{
	{
		Rule: "yield/ears-lost", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the squares come out only if the outer dog ears of each tube are given up",
		Why:     "The first and last triangle of a tube need less length when their outer ears may be missing, which is usual, as the ears are trimmed anyway. A maker who keeps whole triangles gets a square less from each tube.",
		Fix:     "say \"ends\": \"corners only\" in the tube and in the pattern, or allow for the ears",
		Run:     earsLost,
	},
	{
		Rule: "yield/no-slack", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "a yield holds only if the strips are cut without losing half an inch",
		Why:     "Sixteen segments of 2 1/2 in need all of a 40-in strip. One cut to straighten the end, and there are fifteen, and a strip set is missing. A pattern that prints fewer from each set, a set more or the cloth for one leaves that room. Common practice, no source, for the half inch.",
		Fix:     "cut smaller segments, allow for another strip set, or ask for wider fabric and say so",
		Run:     noSlack,
	},
	{
		Rule: "yield/none", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "a strip, set or tube is too short for even one piece",
		Why:     "A tube of three 2 1/2-in strips needs 12 in for its first square. From a precut strip of 10 in there is none.",
		Fix:     "use longer strips, join strip sets end to end into a tube, or make the piece smaller",
		Run:     yieldNone,
	},
	{
		Rule: "yield/sets-left-over", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the printed number of strip sets does not pair into tubes",
		Why:     "A tube takes two sets. Thirteen sets make six tubes, and the thirteenth is sewn for nothing.",
		Fix:     "print an even number of sets, or print what is left over in \"left\"",
		Run:     setsLeftOver,
	},
	{
		Rule: "yield/strips-left-over", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the printed number of strips does not group into strip sets",
		Why:     "Forty strips in sets of three make thirteen sets, and one strip is left. A maker who is told to cut forty looks for the place of the fortieth.",
		Fix:     "print a whole number of sets' strips",
		Run:     stripsLeftOver,
	},
	{
		Rule: "yield/tube-kinds", Level: diag.Error, Lesser: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the layout wants more near or far squares than the tubes give",
		Why:     "A tube gives near and far squares in turn: of five, three at most of one kind. Thirty squares come from six tubes; but if twenty of them are to be near, there are eighteen, and the seventh tube gives the other two. A warning where nothing that is printed limits the tubes: they follow from the kind most wanted, and what is over of the other is waste.",
		Fix:     "let more places have the other kind, lay the second of two equal sets end for end, or print more tubes",
		Run:     tubeKinds,
	},
	{
		Rule: "yield/tube-squares", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the printed packs do not give the squares that the layout needs",
		Why:     "A tube gives whole squares, and half a triangle at each end is waste. Thirty-six squares from six tubes need six from each, and the sixth needs strips of 42 in: at 41 1/2 in there are thirty.",
		Fix:     "ask for fewer squares, longer strips, strip sets joined end to end or another pack",
		Run:     tubeSquares,
	},
}

// slackWanted is what straightening the ends of a strip may cost: 1/2 in, or
// 1 cm in a metric plan. Common practice, no source.
func slackWanted(u measure.Unit) measure.Length {
	if u == measure.Cm {
		return measure.Centimetre
	}
	return measure.Inch / 2
}

func countOf(part *derive.Part) Subject {
	return Subject{Kind: derive.Count, Name: part.Name.Text}
}

// pieceLength is what a set, tube, loop or strip is cut into, and how many.
type pieceLength struct {
	derive.Giving
	yield derive.Yield
	count int64 // sets or tubes
	tube  *derive.Tube
}

// strip is the shortest strip for a length that may be of several joined.
func (l pieceLength) strip(length measure.Length) measure.Length {
	if l.tube != nil {
		return l.tube.StripFor(length)
	}
	return length
}

// countAt is how many strips, sets or tubes there have to be if each gave so many
// pieces.
func (l pieceLength) countAt(needed, each int64) int64 {
	if l.tube != nil {
		return l.tube.CountAt(each)
	}
	return piecing.Batches(needed, each)
}

func pieces(part *derive.Part) (pieceLength, bool) {
	gives := part.Room.Gives()
	if gives == nil {
		return pieceLength{}, false
	}
	return pieceLength{*gives, *part.Yield(), part.Batches(), part.Tube}, true
}

func yieldNone(p *Pass) {
	for _, part := range p.Size.Parts {
		if y, ok := pieces(part); ok && y.yield.Each == 0 {
			p.Report(y.At, Finding{
				Message: fmt.Sprintf("%s %q is %s long%s and its first %s needs %s", y.From, part.Name.Text,
					p.there(y.yield.Length), ofJoined(y.yield), y.Each, p.needs(y.yield.Next)),
				Ways:  ways(advise("use strips of at least " + p.needs(y.strip(y.yield.Next)) + p.joinedForOne(part))),
				About: countOf(part), Root: true,
			})
		}
	}
}

func noSlack(p *Pass) {
	wanted := slackWanted(p.Plan.Units)
	for _, part := range p.slack().printed.Parts {
		y, ok := pieces(part)
		if ok && part.Pool != nil {
			p.sharedSlack(part, y)
			continue
		}
		if !ok || part.Needed == 0 || !p.Size.Sure(countOf(part)) || y.yield.Each == 0 || y.yield.Slack() >= wanted || p.leavesSlack(part) {
			continue
		}
		if y.yield.Each > 1 && y.countAt(part.Needed, y.yield.Each-1) == y.count {
			continue // one fewer from each would still do
		}
		p.Report(y.At, Finding{
			Message: fmt.Sprintf("%q needs %s from each %s: that takes %s of %s and leaves %s to straighten the ends%s",
				part.Name.Text, count(int(y.yield.Each), y.Each), y.From, p.needs(y.yield.Used), p.there(y.yield.Length), p.rest(y.yield.Rest()), ofSets(y.yield)),
			Ways:  p.slackWays(part, y, wanted),
			About: countOf(part),
		})
	}
}

// rest prints a length that is left over.
func (p *Pass) rest(l measure.Length) string {
	if l == 0 {
		return "nothing"
	}
	return l.AsThere(p.Plan.Units)
}

func earsLost(p *Pass) {
	for _, part := range p.Size.Parts {
		if part.Tube == nil || part.Needed == 0 || !p.Size.Sure(countOf(part)) || part.Tube.EndsAt != (source.Range{}) {
			continue
		}
		t := part.Tube
		kept := t.Tube.Yield(t.Yield.Length, true)
		if t.Yield.Slack() < slackWanted(p.Plan.Units) {
			continue // yield/no-slack says as much
		}
		if kept >= t.Yield.Each || kept > 0 && t.CountAt(kept) == t.Count {
			continue
		}
		p.Report(part.Name.At, Finding{
			Message: fmt.Sprintf("a tube of %q gives %d squares at %s with the outer dog ears given up and %d with whole triangles",
				part.Name.Text, t.Yield.Each, p.there(t.Yield.Length), kept),
			Ways: ways(
				choice(p.setIn(p.making(part), "ends", plan.CornersOnly.String())),
				choice(p.setIn(p.making(part), "ends", plan.EarsKept.String()))),
			About: countOf(part),
		})
	}
}

// printedFor finds a printed count about a part.
func printedFor(counts []plan.PrintedCount, name string) (plan.PrintedCount, bool) {
	for _, c := range counts {
		if c.Of.Text == name {
			return c, true
		}
	}
	return plan.PrintedCount{}, false
}

func stripsLeftOver(p *Pass) {
	if p.Size.Of.Printed == nil {
		return
	}
	for _, part := range p.Size.Parts {
		said := p.allStrips(part.Name.Text)
		if !said.Given() || part.Set == nil || !p.Size.Sure(countOf(part)) {
			continue
		}
		n := int64(len(part.Set.Strips))
		if int64(said.N) < n*part.Set.Count {
			continue // too few, which printed/strips says
		}
		if part.Pool != nil {
			continue // what is printed of several parts is judged together
		}
		if sets, left := piecing.Groups(int64(said.N), n); left != 0 {
			p.Report(said.At, Finding{
				Message: fmt.Sprintf("%s in sets of %d make%s %s of %q and leave%s %d over; %d %s used", count(said.N, "strip"), n,
					ending(int64(said.N)), count(int(sets), "set"), part.Name.Text, ending(int64(said.N)), left, n*part.Set.Count, is(n*part.Set.Count)),
				Ways:  ways(noted(p.printCount(said.At, n*part.Set.Count), fmt.Sprintf("and the %d left over in \"left\"", left))),
				About: countOf(part),
				Root:  true,
			})
		}
	}
}

func setsLeftOver(p *Pass) {
	if p.Size.Of.Printed == nil {
		return
	}
	for _, part := range p.Size.Parts {
		if part.Tube == nil {
			continue
		}
		p.setsOver(part, part.Tube.Sets[0])
		if part.Tube.Sets[0] != part.Tube.Sets[1] {
			p.setsOver(part, part.Tube.Sets[1])
		}
	}
}

// setsOver looks at the printed number of one of a tube's sets.
func (p *Pass) setsOver(part, set *derive.Part) {
	said, ok := printedFor(p.Size.Of.Printed.Sets, set.Name.Text)
	if !ok || !p.Size.Sure(countOf(set)) {
		return
	}
	fromStrips, _ := piecing.Groups(int64(p.allStrips(set.Name.Text).N), int64(len(set.Set.Strips)))
	if int64(said.N) < set.Needed || int64(said.N) == fromStrips {
		return // too few, which printed/sets says, or what the printed strips make
	}
	each := part.Tube.Takes(set)
	if tubes, left := piecing.Groups(int64(said.N), each); left != 0 {
		ofEach := ""
		if part.Tube.Aside > 1 {
			ofEach = fmt.Sprintf(", %d to each,", each)
		}
		p.Report(said.At, Finding{
			Message: fmt.Sprintf("%s of %q %s %s of %q%s and %s %d over", count(said.N, "set"), set.Name.Text, say.Goes(int64(said.N), "makes", "make"), count(int(tubes), "tube"), part.Name.Text, ofEach, say.Goes(int64(said.N), "leaves", "leave"), left),
			Ways:    ways(choice(p.putCount("print", said.At, tubes*each)), choice(p.putCount("print", said.At, (tubes+1)*each))),
			About:   countOf(set),
		})
	}
}

func tubeSquares(p *Pass) {
	if p.Size.Of.Printed == nil {
		return
	}
	for _, part := range p.Size.Parts {
		t := part.Tube
		if t == nil || !part.Known || part.Needed == 0 || t.Yield.Each == 0 {
			continue
		}
		f := onlyFabric(t)
		if f == nil || f.Form != plan.Precut || !p.Size.SureOfCloth(f) {
			continue
		}
		packs, ok := printedFor(p.Size.Of.Printed.Precuts, f.Role.Text)
		if !ok {
			continue
		}
		p.tubesFromPacks(part, f, packs)
	}
}

// tubesFromPacks compares the squares that the printed packs give, after all
// else that is cut from them, with those the layout needs.
func (p *Pass) tubesFromPacks(part *derive.Part, f *derive.Fabric, packs plan.PrintedCount) {
	t := part.Tube
	switch f.PackZone(int64(packs.N)) {
	case derive.Impossible, derive.PlainShort, derive.OutOfStrips:
	default:
		return
	}
	tubes, over := p.tubesOf(part, f, packs)
	squares := tubes * t.Yield.Each
	if squares >= part.Needed {
		return // yield/tube-kinds looks at which they are
	}
	piece := "piece" // of the pack
	if width := t.Sets[0].Set.Strips[0].Width; width*2 > f.StripWidth().Length {
		piece = "strip"
	}
	at, related := part.Name.At, []Related{{packs.At, "the packs, as printed"}}
	if g := p.Size.Of.Layout.Grid; g != nil {
		at = g.Rows.At
		related = append(related, Related{part.Name.At, "the tube is made here"})
	}
	p.Report(at, Finding{
		Message: fmt.Sprintf("%s of %q %s needed, and from %s of %s %s %d: %s of %s at %s%s, with %s over",
			count(int(part.Needed), "square"), part.Name.Text, is(part.Needed), count(packs.N, "pack"), count(f.Pack.N, piece), say.Goes(squares, "comes", "come"), squares,
			count(int(tubes), "tube"), count(int(t.Yield.Each), "square"), p.there(t.Yield.Length), ofJoined(t.Yield), count(int(over), piece)),
		Ways:    p.waysOut(part, packs, tubes, squares),
		About:   countOf(part),
		Root:    true,
		Related: related,
	})
}

// waysOut names the nearest of each kind: fewer squares, longer strips, sets
// joined end to end, more packs.
func (p *Pass) waysOut(part *derive.Part, packs plan.PrintedCount, tubes, squares int64) []diag.Way {
	t := part.Tube
	joined, asPrinted := p.joinedForPacks(part, packs)
	var out []diag.Way
	if asPrinted {
		out = ways(joined)
		joined = diag.Way{}
	}
	more := p.printMany(packs.At, p.Size.Fabric(onlyFabric(t).Role.Text).Packs, "pack")
	out = append(out, more, advise("ask for "+count(int(squares), "square")))
	if tubes > 0 {
		each := piecing.Batches(part.Needed, tubes)
		for t.CountAt(each) > tubes {
			each++
		}
		out = append(out, advise(fmt.Sprintf("use strips of at least %s (%s a tube)", p.needs(t.StripFor(t.LengthFor(each, t.Ends == plan.EarsKept))), count(int(each), "square"))))
	}
	return ways(append(out, joined)...)
}

// slackWays are the ways out of a yield that leaves nothing to straighten the ends: one
// piece less from each, where that leaves any, or more length.
func (p *Pass) slackWays(part *derive.Part, y pieceLength, wanted measure.Length) []diag.Way {
	var fewer diag.Way
	if n := y.yield.Each - 1; n > 0 {
		fewer = advise(fmt.Sprintf("allow for %d a %s", n, y.From))
	}
	return ways(fewer, advise(fmt.Sprintf("allow for %s more length%s", p.needs(wanted-y.yield.Slack()), ofEach(y.yield))+p.joinedForSlack(part)))
}

// onlyFabric is the one fabric of all the tube's strips, nil when there are
// several.
func onlyFabric(t *derive.Tube) *derive.Fabric {
	var only *derive.Fabric
	for _, set := range t.Sets {
		for _, s := range set.Set.Strips {
			if only != nil && only != s.Fabric {
				return nil
			}
			only = s.Fabric
		}
	}
	return only
}
