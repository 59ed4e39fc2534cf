package check

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

func printedStripCounts(p *Pass) {
	if p.Size.Of.Printed == nil {
		return
	}
	p.wholeStripCounts()
	p.joinedTooMany()
	for _, said := range p.Size.Of.Printed.Strips {
		if c, ok := p.stripsSaid(said); ok {
			p.compareStrips(c)
		}
	}
}

// wholeStripCounts compares the printed number of all strips of a part that
// takes them in one way only.
func (p *Pass) wholeStripCounts() {
	whole := func(s *plan.Printed) []plan.PrintedCount {
		var all []plan.PrintedCount
		for _, said := range s.Strips {
			if said.Whole() {
				all = append(all, plan.PrintedCount{Of: said.Of, Count: said.Count})
			}
		}
		return all
	}
	p.eachPrinted(whole, func(part *derive.Part, said plan.PrintedCount) {
		room, ok := part.Room.(derive.Stripwise)
		if !ok {
			return
		}
		all := room.Striping()
		if part.Pool != nil {
			p.sharedSets(part, said, whole(p.Size.Of.Printed), "strip", all.Group)
			return
		}
		b := batched{needed: all.Needed, group: all.Group, strips: 1, right: p.batches(part)}
		for i := range b.right {
			b.right[i] *= all.Group
		}
		p.tooFewOrMany(said, b, Finding{
			Message: fmt.Sprintf("the pattern prints %s for %q; %s %d", count(said.N, "strip"), part.Name.Text, all.Takes.In(p.Plan.Units), b.needed),
			Ways:    ways(p.printCount(said.At, b.needed)),
			About:   takes(part),
		})
	})
}

// joinedTooMany tells of more strips of a border or the binding than their
// length takes; too few are for family finish.
func (p *Pass) joinedTooMany() {
	for _, j := range p.joinedLengths() {
		if said, ok := p.saidStrips(j); ok && int64(said.N) > j.strips.Count {
			p.Report(said.At, Finding{
				Level: surplus(int64(said.N), j.strips.Count, surplusStrips),
				Message: fmt.Sprintf("the pattern prints %s for %s; %d %s the %s that are needed", count(said.N, "strip"), j.what,
					j.strips.Count, say.Goes(j.strips.Count, "gives", "give"), j.strips.Need.AsCut(p.Plan.Units)),
				Ways:  ways(p.printCount(said.At, j.strips.Count)),
				About: Subject{Kind: derive.Finish, Name: j.name},
			})
		}
	}
}

// stripsCompared is a printed number of strips and what it is held against.
type stripsCompared struct {
	said    plan.PrintedStrips
	what    string // what the strips are for
	about   Subject
	fabrics []derive.FabricStrips
	ways    []diag.Way // what to print, where not what the fabric at fault takes
}

// settingStrips are the names under which strips of the layout's own pieces are
// printed.
var settingStrips = []string{"sashing", "cornerstones", "side_squares", "corner_squares"}

// settingLabel is the name under which the layout's own pieces are counted; ok
// is false where it has none of them.
func settingLabel(l plan.Setting, name string) (label plan.Text, ok bool) {
	switch {
	case name == "sashing" && l.Sashing != nil,
		name == "cornerstones" && l.Sashing != nil && l.Sashing.Cornerstones.Given():
		return plan.Text{Text: name, At: l.Sashing.At}, true
	case name == "side_squares" && l.Triangles != nil:
		return plan.Text{Text: "side triangles", At: l.Triangles.At}, true
	case name == "corner_squares" && l.Triangles != nil:
		return plan.Text{Text: "corner triangles", At: l.Triangles.At}, true
	}
	return plan.Text{}, false
}

// stripsSaid finds what a printed number of strips is about; ok is false where
// it could not be derived, is unknown, or is compared elsewhere.
func (p *Pass) stripsSaid(said plan.PrintedStrips) (c stripsCompared, ok bool) {
	c = stripsCompared{said: said, what: fmt.Sprintf("%q", said.Of.Text)}
	name := said.Of.Text
	var label plan.Text
	switch part := p.Size.Part(name); {
	case part != nil:
		if !part.Derived() || !p.Size.Sure(countOf(part)) || said.Whole() && !cutInPieces(part) {
			return c, false
		}
		label, c.about = part.Name, takes(part)
	case p.border(name) != nil || slices.Contains(joinedFinish(p.Size.Of), name):
		j := p.joined(name)
		if _, whole := p.saidStrips(j); whole || !j.strips.OK {
			return c, false
		}
		label, c.what, c.about = j.label, j.what, finishAbout(name)
	case strings.Contains(name, " "):
		own, found := p.ownOf(name)
		if !found || !p.Size.Sure(own.about) || !p.Size.Sure(Subject{Kind: derive.TopSize}) {
			return c, false
		}
		label, c.about = own.label, own.about
	default:
		label, ok = settingLabel(p.Size.Of.Layout.Setting, name)
		if !ok || !p.Size.Sure(Subject{Kind: derive.TopSize}) {
			return c, false
		}
		c.about = Subject{Kind: derive.TopSize}
	}
	c.fabrics = p.Size.StripWays(label)
	return c, len(c.fabrics) > 0
}

// cutInPieces reports whether a part's strips are cut into pieces, which may lie
// in them one way or another.
func cutInPieces(part *derive.Part) bool {
	_, whole := part.Room.(derive.Stripwise)
	return !whole
}

// compareStrips compares a printed number of strips with every way of cutting
// them.
func (p *Pass) compareStrips(c stripsCompared) {
	if c.said.Fabric.Given() {
		c.fabrics = slices.DeleteFunc(c.fabrics, func(f derive.FabricStrips) bool { return f.Fabric.Role.Text != c.said.Fabric.Text })
		if len(c.fabrics) == 0 {
			return // reference/unknown-printed
		}
	}
	if c.said.Width.Given() && !p.widthCut(c) {
		return
	}
	if !c.said.Each {
		p.judgeStrips(c, c.fabrics)
		return
	}
	c.ways = p.eachWays(c)
	for _, f := range c.fabrics {
		if p.judgeStrips(c, []derive.FabricStrips{f}) {
			return // the first that is wrong is enough
		}
	}
}

// widthCut reports a printed width that no strip is cut.
func (p *Pass) widthCut(c stripsCompared) bool {
	var widths []measure.Length
	for _, f := range c.fabrics {
		for _, w := range f.Ways {
			for _, s := range w.Strips {
				if s.Width == c.said.Width.Length {
					return true
				}
				if !slices.Contains(widths, s.Width) {
					widths = append(widths, s.Width)
				}
			}
		}
	}
	slices.Sort(widths)
	var words []string
	var out []diag.Way
	for _, w := range widths {
		words = append(words, p.needs(w))
		out = append(out, choice(p.putLength("print", c.said.Width.At, w)))
	}
	p.Report(c.said.Width.At, Finding{
		Message: fmt.Sprintf("the pattern prints strips for %s as %s wide; they are cut %s", c.what, p.length(c.said.Width.Length), orWords(words)),
		Ways:    ways(out...), About: c.about,
	})
	return false
}

// stripTotal is a number of strips that one way of cutting gives.
type stripTotal struct {
	n      int64
	width  measure.Length // of all of them, 0 where they differ
	shared bool
}

// judgeStrips compares the printed number with what each way of cutting the
// fabrics gives, and reports whether it reported.
func (p *Pass) judgeStrips(c stripsCompared, fabrics []derive.FabricStrips) bool {
	totals := stripTotals(fabrics, c.said.Width)
	n := int64(c.said.N)
	above, exact := slices.BinarySearchFunc(totals, n, func(t stripTotal, n int64) int { return cmp.Compare(t.n, n) })
	if exact || len(totals) == 0 {
		return false
	}
	f := Finding{About: c.about, Level: diag.Error}
	if above > 0 {
		below := totals[above-1]
		f.Level = surplus(n, below.n, surplusStrips)
		if above < len(totals) && totals[above].n-n <= n-below.n {
			// Nearer to a way that takes more: a few short of it.
			f.Level = diag.Error
			if totals[above].width == below.width {
				f.Level = diag.Warning // the strips are the same, and fewer are enough with more care
			}
		}
	}
	f.Message = fmt.Sprintf("the pattern prints %s for %s; %s", p.stripsAsPrinted(c.said), c.what, p.stripsTaken(fabrics, totals, c.said))
	if f.Ways = c.ways; f.Ways == nil {
		f.Ways = p.printTotal(totals, c.said)
	}
	p.Report(c.said.At, f)
	return true
}

// stripTotals are the numbers that the ways of cutting give, each once, fewest
// first: of several fabrics every sum of one way for each.
func stripTotals(fabrics []derive.FabricStrips, width plan.Length) []stripTotal {
	sums, any := []stripTotal{{}}, false
	for _, f := range fabrics {
		var next []stripTotal
		for _, sum := range sums {
			for _, w := range f.Ways {
				t := totalOf(w, width)
				if width.Given() && t.n == 0 {
					continue // not a way with strips of that width
				}
				if any && t.width != sum.width {
					t.width = 0
				}
				next = append(next, stripTotal{sum.n + t.n, t.width, sum.shared || t.shared})
			}
		}
		if len(next) == 0 {
			continue // the fabric has none of that width
		}
		any = true
		slices.SortStableFunc(next, func(a, b stripTotal) int { return cmp.Compare(a.n, b.n) })
		sums = slices.CompactFunc(next, func(a, b stripTotal) bool { return a.n == b.n })
	}
	if !any {
		return nil
	}
	return sums
}

func totalOf(w derive.StripWay, width plan.Length) stripTotal {
	t := stripTotal{shared: w.Shared}
	if width.Given() {
		t.n, t.width = w.At(width.Length), width.Length
		return t
	}
	t.n = w.Total()
	if len(w.Strips) == 1 {
		t.width = w.Strips[0].Width
	}
	return t
}

// laidAsPrinted is the fabric with pieces lying in their strips as the printed
// strips say, by their width or by a number that only one way of lying takes.
func (p *Pass) laidAsPrinted(f *derive.Fabric) *derive.Fabric {
	needs := slices.Clone(f.Needs)
	changed := false
	for i, n := range needs {
		if width := p.stripWidth(f, n); f.Turnable(n) && width > 0 {
			if width != n.Along {
				needs[i].Across, needs[i].Along = n.Along, n.Across
			}
			needs[i].Fixed, changed = true, true
		}
	}
	if !changed {
		return f
	}
	return f.Taking(needs, f.Panels)
}

// stripWidth is the width of strip that the printed strips say for pieces, 0
// where they do not say it.
func (p *Pass) stripWidth(f *derive.Fabric, n derive.Need) measure.Length {
	if p.Size.Of.Printed == nil || n.Across == n.Along {
		return 0
	}
	for _, said := range p.Size.Of.Printed.Strips {
		switch {
		case said.Of.Text != n.For.Text || said.Fabric.Given() && said.Fabric.Text != f.Role.Text:
		case said.Width.Length == n.Along || said.Width.Length == n.Across:
			return said.Width.Length
		case !said.Width.Given():
			return widthOf(p.Size.StripWays(n.For), int64(said.N))
		}
	}
	return 0
}

// widthOf is the width of strip of the one way that takes so many.
func widthOf(fabrics []derive.FabricStrips, n int64) measure.Length {
	if len(fabrics) != 1 {
		return 0
	}
	for _, w := range fabrics[0].Ways {
		if len(w.Strips) == 1 && w.Total() == n {
			return w.Strips[0].Width
		}
	}
	return 0
}
