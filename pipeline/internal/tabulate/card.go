package tabulate

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/internal/caution"
	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Sizes of the pictures on a card in millimetres, and how many layouts a plan may have
// that are drawn on its cards.
const (
	cardTopTall    = 44.0
	cardLayoutTall = 40.0
	mostOnCards    = 60
	cardShare      = 66 // of the page's width that its lists have, in per cent
)

// cards are what each size is cut from: one page, or two, a size.
func (in Input) cards(tops []report.Picture, kits []*kit.Kit) []report.Sheet {
	layouts := 0
	for _, s := range in.Sizes {
		for _, f := range s.Fabrics {
			if f.Used() {
				layouts++
			}
		}
	}
	var sheets []report.Sheet
	for _, s := range in.Sizes {
		c := card{in: in, s: s, drawn: layouts <= mostOnCards}
		for _, k := range kits {
			if k.Of == s && k.Size.Of.Way.Text == "" {
				c.kit = k
			}
		}
		for i := range tops {
			if tops[i].ID == topID(s) {
				c.top = &tops[i]
			}
		}
		sheets = append(sheets, c.sheet())
	}
	return sheets
}

// card is what one size is cut from.
type card struct {
	in    Input
	s     *derive.Size
	kit   *kit.Kit // nil where no kit is sold
	top   *report.Picture
	drawn bool // its layouts
}

func (c card) sheet() report.Sheet {
	title := "Cutting card "
	if c.kit != nil {
		title = "Kit card "
	}
	tables := []report.Table{c.lengths()}
	for _, f := range c.fabrics() {
		t := c.fabric(f)
		t.Under = len(tables) > 1
		tables = append(tables, t)
	}
	if c.kit != nil {
		tables = append(tables, c.contents())
	}
	tables = append(tables, cautionsOf("card-cautions-"+c.s.Of.Name.Text, c.s))
	return report.Sheet{ID: "card-" + c.s.Of.Name.Text, Title: strings.TrimSuffix(title+c.s.Called(), " the quilt"), Pages: 1, Share: cardShare, Tables: tables}
}

// fabrics are those that the kit holds, or all.
func (c card) fabrics() []*derive.Fabric {
	var all []*derive.Fabric
	for _, f := range c.s.Fabrics {
		if held := c.kit == nil || c.holds(f); f.Used() && held {
			all = append(all, f)
		}
	}
	return all
}

func (c card) holds(f *derive.Fabric) bool {
	_, held := c.kit.Fabric(f.Role.Text)
	return held
}

// letter is how the pictures of the size call a fabric.
func (c card) letter(f *derive.Fabric) string { return fabricLetter(slices.Index(c.s.Fabrics, f)) }

// lengths is what is cut from the bolts first.
func (c card) lengths() report.Table {
	t := report.Table{
		ID: "lengths-" + c.s.Of.Name.Text, Heading: "Cut from the bolts first", Narrow: true,
		Columns: []report.Column{{ID: "done"}, {ID: "letter"}, {ID: "fabric", Title: "Fabric", Wide: true}, {ID: "article", Title: "Article"}, {ID: "length", Title: "Length", Right: true}},
	}
	if c.s.Top.Known {
		t.Lead = []string{"Finishes at " + measure.FormatBox(c.s.Top.Finished.Width, c.s.Top.Finished.Height, c.in.units()) + ". Straighten the end of each fabric before its strips are cut; the lengths hold it."}
	}
	for _, f := range c.fabrics() {
		article, length := f.SKU.Text, plainly(c.in.buyCell(c.s, f))
		if c.kit != nil {
			l, _ := c.kit.Fabric(f.Role.Text)
			if article = l.Article.Text; f.Form != plan.Precut && l.Length > 0 {
				length = report.T(measure.FormatCut(l.Length, c.in.units()))
			}
		}
		t.Rows = append(t.Rows, row(report.Tick(), report.T(c.letter(f)), report.T(kit.Title(f)), report.T(article), length))
	}
	if c.top != nil {
		top := withoutMeasures(*c.top)
		top.Title = ""
		t.Beside = []report.Beside{{Picture: top, Tall: cardTopTall}}
	}
	return t
}

// fabric is how one fabric is cut, by the plan's own method.
func (c card) fabric(f *derive.Fabric) report.Table {
	cut := cutter{s: c.s, f: f, u: c.in.units(), layout: f.Layout, sheets: f.Sheets}
	t := report.Table{
		ID: "card-" + c.s.Of.Name.Text + "-" + f.Role.Text, Heading: c.letter(f) + ": " + kit.Title(f), Narrow: true,
		Columns: []report.Column{
			{ID: "done"}, {ID: "strips", Title: "Strips"}, {ID: "width", Title: "Width", Unit: unitName(c.in.units())},
			{ID: "then", Title: "From each strip, and what for", Wide: true}, {ID: "pieces", Title: "Pieces"},
		},
	}
	if f.Err != nil || !c.s.SureOfCloth(f) {
		t.Lead = []string{"Not to be cut from this card: see the sheet Checks."}
		return t
	}
	if c.drawn && !cut.crowded() && cut.cutsUp() {
		if p, letters, ok := cut.drawing("layout-"+c.s.Of.Name.Text+"-"+f.Role.Text, "Cutting layout, "+c.s.Called()+": "+kit.Title(f)); ok {
			cut.letters, cut.brief = letters, true
			p.Plain = true
			p = withoutRunning(p)
			t.Beside = []report.Beside{{Picture: p, Tall: cardLayoutTall}}
		}
	}
	list := cut.empty("", "")
	if f.Form == plan.Precut {
		t.Lead = append(t.Lead, packs(f))
		cut.packs(&list)
	} else {
		cut.yardage(&list)
		t.Lead = slices.DeleteFunc(list.Lead, func(l string) bool { return strings.HasPrefix(l, "Cut strips across") })
	}
	for _, r := range list.Rows {
		if first := r.Cells[0]; first.Kind == report.Count || first.Kind == report.Text {
			t.Rows = append(t.Rows, report.Row{Style: r.Style, Cells: c.line(r, cut.brief)})
		}
	}
	if cut.brief {
		t.Rows = append(t.Rows, report.Row{Style: report.Total, Cells: []report.Cell{{}, {}, {}, report.T(cut.inAll()), {}}})
	}
	t.Foot = append(cut.unused(), cut.spares()...)
	return t
}

// cutsUp reports whether some strip is cut into pieces: where all are used whole there is
// nothing to draw.
func (c cutter) cutsUp() bool {
	cut := func(r cutting.Row) bool { return len(r.Cuts)+len(r.Stacks)+len(r.Panel) > 0 }
	return slices.ContainsFunc(c.layout.Rows, cut) || slices.ContainsFunc(c.sheets.Sheets, func(s cutting.CutSheet) bool { return slices.ContainsFunc(s.Rows, cut) })
}

// withoutRunning is a layout as it is drawn small: what lies along its sides stands in the
// list.
func withoutRunning(p report.Picture) report.Picture {
	p.Panels = slices.Clone(p.Panels)
	for i := range p.Panels {
		p.Panels[i].Dimensions = slices.DeleteFunc(slices.Clone(p.Panels[i].Dimensions), func(d report.Dimension) bool { return d.Edge != report.Top })
	}
	return p
}

// line is a row of a cut list with a box to tick, and what it is for in words.
func (c card) line(r report.Row, brief bool) []report.Cell {
	at := func(i int) report.Cell {
		if i < len(r.Cells) {
			return r.Cells[i]
		}
		return report.Cell{}
	}
	then := at(2)
	if users := at(3).Text; users != "" && users != "backing" && (!brief || strings.Contains(strings.ToLower(then.Text), "use ")) {
		then.Text = strings.TrimSuffix(then.Text, ".") + ", for " + users + "."
	}
	return []report.Cell{report.Tick(), at(0), at(1), then, at(4)}
}

// inAll counts what the list comes to, each size of piece once, with its letter and what it
// is for.
func (c cutter) inAll() string {
	var all []string
	pieces, strips := 0, 0
	for _, n := range c.f.Needs {
		if n.Strip {
			strips++
			all = append(all, c.lettered(-strips, fmt.Sprintf("%s %s wide, for %s", say.Many(n.Count, "strip"), n.Along.AsCut(c.u), n.For.Text)))
			continue
		}
		all = append(all, c.lettered(pieces, fmt.Sprintf("%d %s, for %s", n.Count, extents(n.Across, n.Along, c.u)+derive.Halved(n.Halving)+usedOf(n)+c.onBias(n), n.For.Text)))
		pieces++
	}
	if c.f.Panels > 0 && c.s.Backing != nil {
		all = append(all, say.Many(c.s.Backing.Panels, "backing panel"))
	}
	return "In all\n" + strings.Join(all, "\n")
}

// spares is what is left at the ends of strips, and what it is enough for.
func (c cutter) spares() []string {
	if c.f.Form == plan.Precut {
		return nil
	}
	var all []string
	for _, o := range c.f.Spares(c.layout, c.s.Plan.Defaults.UsefulOffcut) {
		text := fmt.Sprintf("%d of %s x %s", o.Count, strings.TrimSuffix(o.Height.AsThere(c.u), " "+c.u.String()), o.Width.AsThere(c.u))
		if o.For != nil {
			text += fmt.Sprintf(" (each enough for %s for %s, should one be miscut)", say.Many(o.Each, "piece"), o.For.For.Text)
		}
		all = append(all, text)
	}
	if all == nil {
		return nil
	}
	return []string{"Left at the ends of strips: " + strings.Join(all, ", ") + "."}
}

// contents are what else goes into the kit.
func (c card) contents() report.Table {
	t := report.Table{ID: "contents-" + c.s.Of.Name.Text, Heading: "And into the kit", Columns: []report.Column{{ID: "done"}, {ID: "what", Title: "What", Wide: true}, {ID: "number", Title: "Number"}}}
	for _, thing := range c.kit.Things {
		t.Rows = append(t.Rows, row(report.Tick(), report.T(thing.Title()), report.N(int64(thing.Thing.Count.N))))
	}
	if c.kit.Said.Pattern.Given() {
		t.Rows = append(t.Rows, row(report.Tick(), report.T("Printed pattern"), report.N(1)))
	}
	t.Rows = append(t.Rows, row(report.Tick(), report.T("Label of "+c.in.Plan.Title.Text+", "+c.kit.Name()), report.N(1)))
	if c.kit.Said.Cut != plan.Pieces {
		t.Lead = []string{"The kit holds the lengths, as cut from the bolts; the strips above are for who sews a sample, and are what its buyer cuts."}
	}
	return t
}

// cautionsOf are the safety lines of what is done to make some sizes.
func cautionsOf(id string, sizes ...*derive.Size) report.Table {
	t := report.Table{ID: id, Heading: "Cautions", Columns: []report.Column{{ID: "caution", Wide: true}}}
	var keys []string
	for _, s := range sizes {
		keys = append(keys, s.Cautions()...)
		for _, c := range s.Of.Cautions {
			keys = append(keys, c.Text)
		}
	}
	slices.Sort(keys)
	for _, k := range slices.Compact(keys) {
		if sentence, ok := caution.Sentence(k); ok {
			t.Rows = append(t.Rows, row(report.T(sentence)))
		}
	}
	return t
}
