package check

import (
	"fmt"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/buyer"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// Rules about printed figures that contradict each other: somebody who follows
// them cannot go on.
var followChecks = []Check{
	{
		Rule: "printed/short-of-cloth", Level: diag.Error, Lesser: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "what is printed to be cut does not come from the printed length of fabric",
		Why:     "Five border strips and five binding strips come from 1 1/8 yd. Where seven of each are printed, 4 1/2 in and 2 1/2 in wide, they are 49 in, and a maker who cuts as she is told has 8 in left for 17 1/2 in of binding. Strips across the fabric are a plain sum; where pieces could lie in them cleverly, the bound is proved. Where all that is lacking is some of what straightening the ends takes, and 1/2 in (1 cm) of it is left, it is a warning.",
		Fix:     "print what the recipe takes, or as much fabric as the printed figures take",
		Run:     eachStop(buyer.Cloth, shortOfCloth),
	},
	{
		Rule: "printed/short-of-length", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the printed strips of a border, joined, do not give its printed lengths",
		Why:     "A 4-in mitred border round 36 in takes sides and ends of 45 1/4 in: five strips of 4 1/2 in, joined, give 182 in. Printed as 60 in each, so that there is plenty for the mitre, the four take 240 in, and the last side is 58 in short.",
		Fix:     "print as many strips as the printed lengths take, or shorter lengths",
		Run:     eachStop(buyer.Length, shortOfLength),
	},
	{
		Rule: "printed/short-of-packs", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "what is printed to be cut does not come from the printed packs",
		Why:     "Fourteen strip sets of three are 42 strips, and a pack holds 40. Whether the quilt would do with 36 the maker cannot know: she looks for two strips of a print that is sold out.",
		Fix:     "print what the recipe takes, or as many packs as the printed figures take",
		Run:     eachStop(buyer.Packs, shortOfPacks),
	},
	{
		Rule: "printed/short-of-pieces", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the printed sets or tubes, cut up as printed, do not give the pieces",
		Why:     "Sixteen 2 1/2-in segments come from a 40-in set, so three sets give 48. A pattern that allows for the ends and prints 12 a set must print four sets: three give a maker who cuts twelve from each 36.",
		Fix:     "print as many sets or tubes as that takes, or what one gives",
		Run:     eachStop(buyer.Pieces, shortOfPieces),
	},
	{
		Rule: "printed/short-of-sets", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the printed tubes take more strip sets than are printed",
		Why:     "Two sets make a tube. Twelve sets make six, and a pattern that prints twelve sets and seven tubes has contradicted itself, whichever of the two is right.",
		Fix:     "print as many sets as the tubes take, or as many tubes as the quilt takes",
		Run:     eachStop(buyer.Sets, shortOfSets),
	},
	{
		Rule: "printed/short-of-strips", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the printed strip sets take more strips than are printed",
		Why:     "Thirty-six strips make twelve sets of three. A pattern that prints 36 strips and 14 sets leaves its maker two sets short, or with two sets to sew that nothing is made of.",
		Fix:     "print as many strips as the sets take, or as many sets as the quilt takes",
		Run:     eachStop(buyer.Strips, shortOfStrips),
	},
}

// surplusRules are those that tell of a printed figure above what is needed.
var surplusRules = []string{
	"fabric/generous", "fabric/packs-over", "printed/larger", "printed/per-set", "printed/per-tube", "printed/sets", "printed/strips", "printed/tubes",
	"yield/sets-left-over", "yield/strips-left-over",
}

// stopped is where somebody who follows the printed figures cannot go on.
type stopped struct {
	buyer.Stop
	in  *derive.Size
	way string // of a colourway, at the start of a message; empty for the recipe's own fabrics
}

// eachStop runs a rule over the stops of a kind.
func eachStop(short buyer.Short, say func(*Pass, stopped) (message string, out []diag.Way)) func(*Pass) {
	return func(p *Pass) {
		for _, s := range p.stops() {
			if s.Short != short {
				continue
			}
			message, out := say(p, s)
			p.Report(s.Figure.At, Finding{
				Level:   p.stopLevel(s),
				Message: s.way + "the pattern prints " + p.figure(s.Figure) + message, Ways: ways(out...),
				About: s.About, Root: true, Covers: covered(s.Stop),
				Related: []Related{{s.Limit.At, limits[s.Limit.What]}},
			})
		}
	}
}

// stopLevel is that of the rule, or a warning where all that is lacking of a
// cloth is some of what straightening its ends takes.
func (p *Pass) stopLevel(s stopped) diag.Level {
	if s.Short != buyer.Cloth || s.Taken == nil {
		return 0
	}
	takes := measure.Max(s.Needs, s.Bound)
	left := s.Fabric.SquaringUp.Surd().Sub(takes.Sub(s.There))
	return p.unstraight(left.FloorTo(measure.Tick))
}

// covered are the places of the figures that have a part in a stop.
func covered(s buyer.Stop) []source.Range {
	at := []source.Range{s.Figure.At, s.Limit.At}
	for _, f := range s.With {
		if f.Printed() {
			at = append(at, f.At)
		}
	}
	return at
}

// limits are what is said of the figure that there is too little of.
var limits = map[buyer.What]string{
	buyer.YardsOf: "the printed length", buyer.PacksOf: "the printed packs", buyer.StripsOf: "the printed strips",
	buyer.SetsOf: "the printed strip sets", buyer.TubesOf: "the printed tubes", buyer.PerTube: "the printed squares a tube",
	buyer.PerSet: "the printed segments a strip set",
}

// stops follows the printed figures, once for all rules that ask: in the plan's
// own fabrics, and where that works in those that are sold for them.
func (p *Pass) stops() []stopped {
	if all, done := p.followed[p.Size]; done {
		return all
	}
	var all []stopped
	told := map[source.Range]bool{}
	follow := func(s *derive.Size, way string) {
		for _, stop := range buyer.Follow(s, p.Size.Of.Printed) {
			if !told[stop.Figure.At] {
				all = append(all, stopped{stop, s, way})
				told[stop.Figure.At] = true
			}
		}
	}
	if p.Size.Of.Printed != nil {
		follow(p.Size, "")
		for _, w := range p.wardrobe() {
			if w.Size != p.Size {
				follow(w.Size, w.way)
			}
		}
	}
	if p.followed == nil {
		p.followed = map[*derive.Size][]stopped{}
	}
	p.followed[p.Size] = all
	return all
}

// figure says what is printed: "7 strips for the binding".
func (p *Pass) figure(f buyer.Figure) string {
	n := int(f.N)
	switch f.What {
	case buyer.StripsOf:
		return count(n, "strip") + p.which(f) + " for " + p.stripsOf(f.Name)
	case buyer.SetsOf:
		return fmt.Sprintf("%s of %q", count(n, "strip set"), f.Name)
	case buyer.TubesOf:
		return fmt.Sprintf("%s of %q", count(n, "tube"), f.Name)
	case buyer.PerTube:
		return fmt.Sprintf("%s from each tube of %q", count(n, "square"), f.Name)
	case buyer.PerSet:
		return fmt.Sprintf("%s from each strip set of %q", count(n, "segment"), f.Name)
	case buyer.PartsOf:
		return fmt.Sprintf("%d of %q", f.N, f.Name)
	case buyer.LeftOf:
		return fmt.Sprintf("%s of %q left over", count(n, "piece"), f.Name)
	case buyer.PacksOf:
		return fmt.Sprintf("%s of %q", count(n, "pack"), f.Name)
	case buyer.SidesOf:
		return fmt.Sprintf("the sides of border %q as %s long", f.Name, p.length(f.Width))
	case buyer.EndsOf:
		return fmt.Sprintf("the ends of border %q as %s long", f.Name, p.length(f.Width))
	case buyer.BackingOf:
		return "a backing of " + p.pair(f.Width, f.Height)
	}
	return p.asPrinted(plan.PrintedLength{Length: plan.Length{Length: f.Width, At: f.At}})
}

// which says of which strips a figure is, as far as it is printed.
func (p *Pass) which(f buyer.Figure) string {
	text := ""
	if f.Width > 0 {
		text += " " + p.length(f.Width) + " wide"
	}
	if f.Of != "" {
		text += fmt.Sprintf(" of %q", f.Of)
	}
	return text
}

// stripsOf names what strips are for. A part comes before a border of its name.
func (p *Pass) stripsOf(name string) string {
	switch {
	case p.Size.Part(name) != nil:
		return fmt.Sprintf("%q", name)
	case p.border(name) != nil:
		return fmt.Sprintf("border %q", name)
	case strings.ContainsAny(name, " _"): // a border's corners, what belongs to a part, and names that are keys
		return fmt.Sprintf("%q", name)
	}
	return "the " + name
}

func shortOfStrips(p *Pass, s stopped) (message string, out []diag.Way) {
	message = fmt.Sprintf("; that takes %s of %q at %d a set, and it prints %d", count(int(s.Takes), "strip"), s.Part.Name.Text, s.Each, s.Has)
	return message, ways(p.instead(s), p.printMany(s.Limit.At, s.Takes, "strip"))
}

func shortOfSets(p *Pass, s stopped) (message string, out []diag.Way) {
	message = fmt.Sprintf("; that takes %s of %q, and it prints %d", count(int(s.Takes), "strip set"), s.Part.Name.Text, s.Has)
	return message, ways(p.instead(s), p.printMany(s.Limit.At, s.Takes, "strip set"))
}

// instead is what to print for a count, as the recipe has it.
func (p *Pass) instead(s stopped) diag.Way {
	thing := map[buyer.What]string{
		buyer.StripsOf: "strip", buyer.SetsOf: "strip set", buyer.TubesOf: "tube", buyer.PerTube: "square", buyer.PerSet: "segment", buyer.LeftOf: "piece",
	}[s.Figure.What]
	text := things(s.Enough, thing)
	switch s.Figure.What {
	case buyer.PerTube:
		text += " a tube"
	case buyer.PerSet:
		text += " a set"
	case buyer.LeftOf:
		text += " left over"
	}
	return mend(of(p.putCount("print", s.Figure.At, s.Enough), text))
}

func shortOfPieces(p *Pass, s stopped) (message string, out []diag.Way) {
	from, piece, yield := "tube", "square", int64(0)
	if s.Part.Tube != nil {
		yield = s.Part.Tube.Yield.Each
	} else {
		from, piece, yield = "strip set", "segment", s.Part.Set.Cut.Each
	}
	message = fmt.Sprintf("; %s, as printed, at %d each %s %d", count(int(s.From), from), s.Each, say.Goes(s.From, "gives", "give"), s.Has)
	if s.Figure.What != buyer.PartsOf {
		message += fmt.Sprintf(", and %d %s needed", s.Takes, is(s.Takes))
	}
	var more diag.Way // where the tubes or sets themselves are printed
	if s.Limit.What == buyer.TubesOf && s.Part.Tube != nil || s.Limit.What == buyer.SetsOf && s.Part.Tube == nil {
		more = p.printMany(s.Limit.At, s.Enough, from)
	}
	each := mend(of(p.putCount("print", s.With[0].At, yield), things(yield, piece)+" from each"))
	if s.Each < yield && s.From*yield >= s.Takes { // what one gives is printed wrongly, and that alone
		return message, ways(each, more)
	}
	return message, ways(more, each)
}

func shortOfLength(p *Pass, s stopped) (message string, out []diag.Way) {
	b := s.Border
	message = fmt.Sprintf("; its four strips then take %s, and the printed %s with %s joins give %s", s.Needs.AsCut(p.Plan.Units),
		count(int(s.Has), "strip"), joinWord(b.Said.Joins), s.There.AsThere(p.Plan.Units))
	if b.Said.EachSide {
		message = fmt.Sprintf("; joined for each side by itself that takes %s, and it prints %d", count(int(s.Takes), "strip"), s.Has)
	}
	return message, ways(mend(p.putLength("print", s.Figure.At, s.Least.CeilTo(p.rulerGrid()))), p.printMany(s.Limit.At, s.Takes, "strip"))
}

func shortOfPacks(p *Pass, s stopped) (message string, out []diag.Way) {
	message = fmt.Sprintf("; cut as printed, %s of %q %s needed, and %s %s %d", count(int(s.Takes), "piece"), s.Fabric.Role.Text, is(s.Takes), p.figure(s.Limit), say.Goes(s.Limit.N, "holds", "hold"), s.Has)
	out = ways(p.instead(s), p.printMany(s.Limit.At, s.Taken.Packs, "pack"))
	if s.Figure.What == buyer.LeftOf {
		message = fmt.Sprintf("; %s %s printed too, and cut as printed %d of the %d %s needed", p.figure(s.Limit), is(s.Limit.N), s.Takes, s.Has, is(s.Takes))
		out = ways(p.instead(s))
	}
	return message, out
}

func shortOfCloth(p *Pass, s stopped) (message string, out []diag.Way) {
	if s.Taken == nil {
		return p.shortOfShared(s)
	}
	message = fmt.Sprintf("; %s %s of %q, and ", takesCloth(s.Figure), s.Needs.AsCut(p.Plan.Units), s.Fabric.Role.Text)
	if s.Needs.Sign() == 0 { // cut along the fabric, beside each other
		message = fmt.Sprintf("; of %q, ", s.Fabric.Role.Text)
	}
	if s.Bound.Sign() > 0 {
		message += fmt.Sprintf("with all else that is cut from it no layout of strips takes less than %s, which is proved; the printed %s leaves %s to cut",
			s.Bound.AsThere(p.Plan.Units), p.figure(s.Limit), s.There.AsThere(p.Plan.Units))
		return message, p.clothWays(s)
	}
	left := measure.Max(s.There, measure.Surd{})
	message += fmt.Sprintf("of the printed %s %s left for that%s", p.figure(s.Limit), p.isLeft(left), p.besides(s))
	return message, p.clothWays(s)
}

// shortOfShared is of strips of which the pattern does not say how many are of
// which fabric or width.
func (p *Pass) shortOfShared(s stopped) (message string, out []diag.Way) {
	bought := []string{p.bought(s.Limit)}
	for _, f := range s.With {
		bought = append(bought, p.bought(f))
	}
	message = fmt.Sprintf("; however they are shared out, %s hold at most %d of them", inWords(bought), s.Has)
	if len(bought) == 1 {
		message = fmt.Sprintf("; %s holds at most %d of them", bought[0], s.Has)
	}
	return message, ways(p.instead(s), advise("print more fabric"))
}

// bought says what is printed of a fabric, and of which.
func (p *Pass) bought(f buyer.Figure) string {
	if f.What == buyer.YardsOf {
		return fmt.Sprintf("%s of %q", p.figure(f), f.Name)
	}
	return p.figure(f)
}

// takesCloth begins what a figure takes of a fabric.
func takesCloth(f buyer.Figure) string {
	switch {
	case f.What == buyer.BackingOf, f.What == buyer.StripsOf && f.N == 1:
		return "it takes"
	case f.What == buyer.StripsOf:
		return "they take"
	case f.What == buyer.SidesOf, f.What == buyer.EndsOf:
		return "its strips then take"
	}
	return "their strips then take"
}

// isLeft says how much is left.
func (p *Pass) isLeft(l measure.Surd) string {
	if l.Sign() == 0 {
		return "nothing is"
	}
	return l.AsThere(p.Plan.Units) + " are"
}

// besides says what else the printed length is cut into.
func (p *Pass) besides(s stopped) string {
	var terms []string
	if l := s.Fabric.SquaringUp.Length; l > 0 {
		terms = append(terms, p.needs(l)+" for squaring up")
	}
	for _, u := range s.Beside {
		terms = append(terms, u.Length.AsCut(p.Plan.Units)+" for "+p.stripsOf(u.For))
	}
	if share := s.Fabric.ShrinkLength; share.BasisPoints > 0 {
		terms = append(terms, "shrinkage of "+percent(share)+"%")
	}
	if len(terms) == 0 {
		return ""
	}
	return ", beside " + inWords(terms)
}

func (p *Pass) clothWays(s stopped) []diag.Way {
	said := p.Size.Of.Printed
	first := p.instead(s)
	switch s.Figure.What {
	case buyer.BackingOf:
		first = p.printUpTo(said.Backing.Width, said.Backing.Height, s.in.Backing.Size)
	case buyer.SidesOf, buyer.EndsOf:
		first = mend(p.putLength("print", s.Figure.At, p.borderLeast(s).CeilTo(p.rulerGrid())))
	}
	if s.Taken.Err != nil {
		return ways(first)
	}
	enough := measure.FormatFabric(p.enough(s.Taken), p.Plan.Units)
	return ways(first, mend(of(p.putText("print", s.Limit.At, enough), fmt.Sprintf("of %q", s.Fabric.Role.Text))))
}

// borderLeast is the length that the printed strips of a border have to be.
func (p *Pass) borderLeast(s stopped) measure.Surd {
	for _, b := range s.in.Top.Borders {
		if b.Said.Name.Text == s.Figure.Name {
			if s.Figure.What == buyer.EndsOf {
				return b.Ends
			}
			return b.Sides
		}
	}
	return measure.Surd{}
}
