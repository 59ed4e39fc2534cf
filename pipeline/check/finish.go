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

var finishChecks = []Check{
	{
		Rule: "finish/backing-panels", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the backing cannot be sewn of its fabric",
		Why:     "A backing is lengths of fabric sewn side by side, each losing its seams. Panels no wider than their seams never cover the quilt, and a pack of 5-in squares has no lengths to sew.",
		Fix:     "take a fabric that is sold by length, or wider fabric, or narrower seams",
		Run:     backingPanels,
	},
	{
		Rule: "finish/backing-short", Level: diag.Error, Lesser: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the printed backing does not reach beyond the quilt by its overhang",
		Why:     "A 60-in quilt with 4 in beyond it on each side needs 68 in. Whoever adds the overhang once cuts 64 in, and the quilting frame has nothing to hold on two sides. Two 68-in panels are 3 7/8 yd; 3 1/2 yd is 10 in short. Where all that is lacking is some of what straightening the ends takes, and 1/2 in (1 cm) of it is left, it is a warning.",
		Fix:     "print the finished size with the overhang twice, and all its panels",
		Run:     backingShort,
	},
	{
		Rule: "finish/batting-short", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the batting does not reach beyond the quilt by its overhang, either way round",
		Why:     "A quilt of 66 x 80 in with 4 in on each side needs 74 x 88 in. A packaged 72 x 90 in is long enough and 2 in too narrow, and turning it does not help.",
		Fix:     "name a larger package, or a smaller overhang",
		Run:     battingShort,
	},
	{
		Rule: "finish/binding-short", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the printed strips, joined, do not go round the quilt",
		Why:     "Each diagonal join costs a strip width. Five 2 1/2-in strips of 40 in are 190 in, not 200, and do not go round a quilt that needs 198 in with corners.",
		Fix:     "print as many strips as the way round, corners and joins take",
		Run:     bindingShort,
	},
	{
		Rule: "finish/border-short", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the printed strips, joined, are shorter than the border's four sides",
		Why:     "Each join costs length. A 5 1/2-in border of 198 in takes six 40-in strips with diagonal joins, which give 212 1/2 in; five give 178 in, and the last side of the quilt has no border.",
		Fix:     "print as many strips as the four sides and the joins take",
		Run:     borderShort,
	},
	{
		Rule: "finish/joins", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "joining strips costs as much length as a strip has",
		Why:     "A diagonal join costs the strip's width. Strips 21 in long cut 22 in wide get no longer by joining.",
		Fix:     "join the strips straight, use longer strips, or make the border narrower",
		Run:     hopelessJoins,
	},
}

// joinedLength is a border, the binding or the sleeve, which are strips joined
// end to end.
type joinedLength struct {
	name   string // under which its strips are printed
	what   string
	at     source.Range
	joins  plan.Joins
	strips derive.Joined
	cut    measure.Length
	apart  string    // why the strips are not one joined length, and how many that takes
	label  plan.Text // under which they are counted
}

// joinedBorder is a border's strips. Only strips that are all joined into one
// give a length to compare with.
func joinedBorder(b derive.Border) joinedLength {
	j := joinedLength{b.Said.Name.Text, fmt.Sprintf("border %q", b.Said.Name.Text), b.Said.Name.At, b.Said.Joins, b.Strips, b.Cut, "", b.Said.Name}
	switch {
	case b.Along != nil:
		j.strips = derive.Joined{Need: b.Needed, Count: int64(len(b.Lengths())), OK: true}
		j.apart = "cut along the fabric, each side in one piece"
	case b.Said.Copes() && b.Ends.IsZero():
	case b.Said.Copes() && b.Sides.IsZero():
		j.strips, j.cut = b.EndStrips, b.EndCut
	case b.Said.Copes():
		j.strips.Count += b.EndStrips.Count
		j.strips.OK = j.strips.OK && b.EndStrips.OK
		j.apart = "joined for the sides and for the ends"
	case b.Said.EachSide:
		j.apart = "joined for each side by itself"
	}
	return j
}

// joinedLengths are those whose strips were derived.
func (p *Pass) joinedLengths() []joinedLength {
	s := p.Size
	var all []joinedLength
	if !s.Top.Known {
		return nil
	}
	for _, b := range s.Top.Borders {
		if s.Fabric(b.Said.Fabric.Text) != nil {
			all = append(all, joinedBorder(b))
		}
	}
	if b := s.Binding; b != nil && b.Bias == nil && s.Fabric(b.Said.Fabric.Text) != nil {
		all = append(all, joinedLength{"binding", "the binding", b.Said.Cut.At, b.Said.Joins, b.Strips, b.Said.Cut.Length, "", plan.Text{Text: "binding", At: b.Said.At}})
	}
	if b := s.Sleeve; b != nil && b.Depth.Sign() > 0 && s.Fabric(b.Said.Fabric.Text) != nil {
		all = append(all, joinedLength{"sleeve", "the sleeve", b.Said.Cut.At, plan.Straight, b.Strips, b.Said.Cut.Length, "", plan.Text{Text: "sleeve", At: b.Said.At}})
	}
	return all
}

// joined is the joined length of a name; its strips are not OK where there is
// none.
func (p *Pass) joined(name string) joinedLength {
	for _, j := range p.joinedLengths() {
		if j.name == name {
			return j
		}
	}
	return joinedLength{}
}

// saidStrips is the printed number of all of a joined length's strips. A part
// of the same name takes precedence.
func (p *Pass) saidStrips(j joinedLength) (plan.PrintedCount, bool) {
	if p.Size.Of.Printed == nil || !j.strips.OK || p.Size.Of.Part(j.name) != nil {
		return plan.PrintedCount{}, false
	}
	all := p.allStrips(j.name)
	return all, all.Given()
}

func borderShort(p *Pass) {
	for _, j := range p.joinedLengths() {
		if p.border(j.name) != nil {
			p.joinedShort(j)
		}
	}
}

func bindingShort(p *Pass) {
	for _, j := range p.joinedLengths() {
		if p.border(j.name) == nil {
			p.joinedShort(j)
		}
	}
}

func (p *Pass) joinedShort(j joinedLength) {
	said, ok := p.saidStrips(j)
	if !ok || int64(said.N) >= j.strips.Count {
		return
	}
	if j.apart != "" {
		p.Report(said.At, Finding{
			Message: fmt.Sprintf("the pattern prints %s for %s; %s, %s %d", count(said.N, "strip"), j.what, j.apart, say.Goes(j.strips.Count, "it is", "they are"), j.strips.Count),
			Ways:    ways(p.printCount(said.At, j.strips.Count)),
			About:   Subject{Kind: derive.Finish, Name: j.name},
			Root:    true,
		})
		return
	}
	given := piecing.JoinedLength(int64(said.N), j.strips.Each, j.strips.Loss)
	p.Report(said.At, Finding{
		Message: fmt.Sprintf("the pattern prints %s for %s; with %s joins %s %s, and %s are needed", count(said.N, "strip"), j.what,
			joinWord(j.joins), say.Goes(int64(said.N), "it gives", "they give"), p.there(given), j.strips.Need.AsCut(p.Plan.Units)),
		Ways:  ways(noted(p.printCount(said.At, j.strips.Count), fmt.Sprintf(", which %s %s", say.Goes(j.strips.Count, "gives", "give"), p.there(j.strips.Length)))),
		About: Subject{Kind: derive.Finish, Name: j.name},
		Root:  true,
	})
}

func joinWord(j plan.Joins) string {
	if j == plan.Straight {
		return "straight"
	}
	return "diagonal"
}

func hopelessJoins(p *Pass) {
	for _, j := range p.joinedLengths() {
		if j.strips.OK {
			continue
		}
		var straight diag.Way
		if j.joins == plan.Diagonal {
			straight = mend(p.setIn(p.text().Parent(j.at), "joins", "straight"))
		}
		p.Report(j.at, Finding{
			Message: fmt.Sprintf("%s needs %s of strips cut %s wide; a %s join costs %s and a strip is only %s long", j.what,
				j.strips.Need.AsCut(p.Plan.Units), p.needs(j.cut), joinWord(j.joins), p.needs(j.strips.Loss), p.there(j.strips.Each)),
			Ways:  ways(straight, advise("use longer strips or cut them narrower")),
			About: Subject{Kind: derive.Finish, Name: j.name},
		})
	}
}

func backingPanels(p *Pass) {
	b := p.Size.Backing
	if b == nil || b.Known {
		return
	}
	f := p.Size.Fabric(b.Said.Fabric.Text)
	if f == nil {
		return // reference/unknown-fabric
	}
	finding := Finding{
		Message: fmt.Sprintf("the backing is sewn of lengths of fabric, and %q is sold as pieces of %s", f.Role.Text,
			p.pairThere(f.Piece[0].Length, f.Piece[1].Length)),
		Ways:    ways(advise("take a fabric that is sold by length")),
		About:   Subject{Kind: derive.Finish, Name: "backing"},
		Related: []Related{{f.Role.At, "the fabric"}},
	}
	if f.Form == plan.Yardage {
		finding.Message = fmt.Sprintf("the panels of the backing are %s wide and each seam between two takes %s of them", p.there(f.Width), p.needs(2*b.Said.Seam.Length))
		finding.Ways = ways(advise("make the seam less than "+p.there(f.Width/2)), advise("use wider fabric"))
	}
	p.Report(b.Said.Fabric.At, finding)
}

// eased is how much a printed size of backing or batting may lack: as much as
// the printed finished size may be off unsaid, since it is worked out from
// that.
func eased(said *plan.Printed) measure.Length { return said.Rounding.Length / 2 }

// coversBox reports whether a sheet covers a size, turned if need be.
func coversBox(w, h measure.Length, size piecing.Box, turnable bool) bool {
	fits := w.Surd().Cmp(size.Width) >= 0 && h.Surd().Cmp(size.Height) >= 0
	return fits || turnable && h.Surd().Cmp(size.Width) >= 0 && w.Surd().Cmp(size.Height) >= 0
}

func backingShort(p *Pass) {
	said, b := p.Size.Of.Printed, p.Size.Backing
	if said == nil || b == nil || !b.Known {
		return
	}
	f := p.Size.Fabric(b.Said.Fabric.Text)
	w, h, ease := said.Backing.Width.Length, said.Backing.Height.Length, eased(said)
	if said.Backing.Given() && !coversBox(w+ease, h+ease, b.Size, !f.Directional()) {
		at := said.Backing.Width.At
		if (w + ease).Surd().Cmp(b.Size.Width) >= 0 {
			at = said.Backing.Height.At
		}
		p.Report(at, Finding{
			Message: fmt.Sprintf("the pattern prints a backing of %s; the quilt with %s beyond it on every side is %s",
				p.pair(w, h), p.length(b.Said.Overhang.Length), p.boxCut(b.Size)),
			Ways:  ways(p.printUpTo(said.Backing.Width, said.Backing.Height, b.Size)),
			About: Subject{Kind: derive.Finish, Name: "backing"},
		})
	}
	for _, l := range said.Fabric {
		if l.Of.Text == f.Role.Text && onlyBacking(f) && l.Length.Length < f.Gross {
			p.backingCloth(b, f, l)
		}
	}
}

func (p *Pass) backingCloth(b *derive.Backing, f *derive.Fabric, said plan.PrintedLength) {
	level, lacks := diag.Error, ""
	if left := f.Straightens(said.Length.Length); left >= 0 {
		level, lacks = p.unstraight(left), fmt.Sprintf(", which leaves %s of the %s for squaring up", p.only(left.Surd()), p.needs(f.SquaringUp.Length))
	}
	p.Report(said.At, Finding{
		Level: level,
		Message: fmt.Sprintf("the pattern prints %s of %q; the backing takes %s, %s of %s and %s for squaring up%s", p.asPrinted(said), f.Role.Text,
			p.needs(f.Gross), count(int(b.Panels), "panel"), b.Each.AsCut(p.Plan.Units), p.needs(f.SquaringUp.Length), lacks),
		Ways:  ways(p.printCloth(said, f)),
		About: Subject{Kind: derive.Finish, Name: "backing"},
	})
}

// printUpTo prints a size rounded up to what the printed finished size is rounded to.
func (p *Pass) printUpTo(w, h plan.Length, size piecing.Box) diag.Way {
	grid := p.Size.Of.Printed.Rounding.Length
	return mend(p.putPair("print", w, h, size.Width.CeilTo(grid), size.Height.CeilTo(grid)))
}

func battingShort(p *Pass) {
	b := p.Size.Batting
	if b == nil {
		return
	}
	report := func(what string, w, h plan.Length) {
		p.Report(w.At, Finding{
			Message: fmt.Sprintf("the %s batting is %s; the quilt with %s beyond it on every side is %s", what,
				p.pair(w.Length, h.Length), p.length(b.Said.Overhang.Length), p.boxCut(b.Size)),
			Ways:  ways(mend(p.putPair("name a batting of at least", w, h, b.Size.Width.CeilTo(p.rulerGrid()), b.Size.Height.CeilTo(p.rulerGrid())))),
			About: Subject{Kind: derive.Finish, Name: "batting"},
		})
	}
	if pack := b.Said.Package; pack[0].Given() && !coversBox(pack[0].Length, pack[1].Length, b.Size, true) {
		report("packaged", pack[0], pack[1])
	}
	said := p.Size.Of.Printed
	if said == nil || !said.Batting.Given() {
		return
	}
	ease := eased(said)
	if !coversBox(said.Batting.Width.Length+ease, said.Batting.Height.Length+ease, b.Size, true) {
		report("printed", said.Batting.Width, said.Batting.Height)
	}
}
