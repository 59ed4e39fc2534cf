package tabulate

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
)

// What a proof sheet has room for.
const (
	mainTall      = 78.0 // of the first size's picture, in millimetres
	othersTall    = 34.0 // of those of the other sizes
	mostOthers    = 3
	mostFragile   = 3
	mostNamed     = 3 // exceptions, or errors, that the verdict names
	mostNarrow    = 3 // sizes beside a picture
	sizesAbreast  = 6 // beside each other in a table of one figure a size
	pairsAbreast  = 3 // beside each other in a table of two figures a size
	smallestProof = 9 // of its type, in points
)

// proofSheet is the page that an owner signs, and that a technical editor begins
// from.
func (in Input) proofSheet(tops []report.Picture, kits []*kit.Kit) report.Sheet {
	tables := []report.Table{in.verdict(), in.aboutPlan(), in.measures()}
	tables[1].Beside = in.proofPictures(tops)
	buying := in.buying()
	for i := range buying {
		buying[i].Narrow = len(in.Sizes) <= mostNarrow
	}
	tables = append(tables, buying...)
	said := in.toolsSaid()
	said.Narrow = len(in.Sizes) <= mostNarrow
	tables = append(tables, said)
	if t, ok := in.fragile(mostFragile); ok {
		tables = append(tables, t)
	}
	if t, ok := in.prices(kits); ok {
		tables = append(tables, t)
	}
	return report.Sheet{ID: "proof", Title: "Proof sheet", Pages: 1, Type: smallestProof, Again: true, Tables: append(tables, approval())}
}

// verdict says in a line whether the plan is proved, and what is not.
func (in Input) verdict() report.Table {
	t := report.Table{ID: "verdict", Columns: []report.Column{{ID: "verdict", Wide: true}}}
	add := func(text string) {
		t.Rows = append(t.Rows, report.Row{Style: report.Alert, Cells: []report.Cell{report.T(text)}})
	}
	var errors, warnings []string
	for _, f := range in.Findings {
		switch f.Level {
		case diag.Error:
			errors = append(errors, f.Message)
		case diag.Warning:
			warnings = append(warnings, f.Message)
		}
	}
	if len(errors) > 0 {
		add("Not proved: must not be printed or cut. " + say.Many(int64(len(errors)), "error") + ": " + some(errors) + ".")
		return t
	}
	text := "Proved: sizes, counts, strips and fabric of " + in.allSizes() + " follow from the plan, and the fabric is enough when it is cut as listed"
	if unproved := in.unproved(); len(unproved) > 0 {
		text += ", but for what the sheet Checks lists as not proved"
	}
	add(text + "." + in.exceptions())
	if len(warnings) > 0 {
		add("To look at first, " + say.Many(int64(len(warnings)), "warning") + ": " + some(warnings) + ".")
	}
	return t
}

// some names the first few of many.
func some(all []string) string {
	if len(all) <= mostNamed {
		return strings.Join(all, "; ")
	}
	return strings.Join(all[:mostNamed], "; ") + fmt.Sprintf("; and %d more, on the sheet Checks", len(all)-mostNamed)
}

func (in Input) allSizes() string {
	if len(in.Sizes) == 1 {
		return "the quilt"
	}
	return "all " + say.Many(int64(len(in.Sizes)), "size")
}

// exceptions names what the project accepts of this plan.
func (in Input) exceptions() string {
	var all []string
	for _, e := range in.Excused {
		said := e.Finding.Rule
		if e.Reason != "" {
			said += " (" + strings.TrimSuffix(e.Reason, ".") + ")"
		}
		all = append(all, said)
	}
	if len(all) == 0 {
		return ""
	}
	return " Accepted by the project: " + some(unique(all)) + "."
}

// facts is a table of what the plan says of itself.
func facts(id string) report.Table {
	return report.Table{ID: id, Columns: []report.Column{{ID: "what"}, {ID: "says", Wide: true}}}
}

func (in Input) aboutPlan() report.Table {
	p := in.Plan
	t := facts("about")
	t.Narrow = true
	add := func(what, says string) {
		if says != "" {
			t.Rows = append(t.Rows, row(report.T(what), report.T(says)))
		}
	}
	add("Description", p.Description.Text)
	add("Revision", p.Revision.Text)
	add("Status", p.Status.String())
	add("Skill level", p.Skill.Text)
	if len(in.Sizes) > 0 {
		s := in.Sizes[0].Of.Seam
		add("Seam", strings.TrimSpace(fmt.Sprintf("%s %s", s.Allowance.Format(p.Units), stitch(s.Stitch.Text))))
		add("Pressing", s.Pressing.Text)
	}
	return t
}

// measures are the finished sizes, and the blocks they are made of.
func (in Input) measures() report.Table {
	u := unitName(in.units())
	t := report.Table{ID: "measures", Heading: "Finished sizes", Narrow: true, Columns: []report.Column{
		{ID: "size", Title: "Size"}, {ID: "width", Title: "Width", Unit: u}, {ID: "length", Title: "Length", Unit: u}, {ID: "blocks", Title: "Blocks", Wide: true},
	}}
	for _, s := range in.Sizes {
		w, l := report.Cell{}, report.Cell{}
		if s.Top.Known {
			w, l = report.L(s.Top.Finished.Width, in.units()), report.L(s.Top.Finished.Height, in.units())
		}
		t.Rows = append(t.Rows, row(report.T(s.Called()), w, l, report.T(blocks(s))))
	}
	return t
}

// proofPictures are the top of the first size, and beside it those of a few others
// at one scale.
func (in Input) proofPictures(tops []report.Picture) []report.Beside {
	if len(tops) == 0 {
		return nil
	}
	all := []report.Beside{{Picture: withoutMeasures(tops[0]), Tall: mainTall}}
	if others := tops[1:min(len(tops), 1+mostOthers)]; len(others) > 0 {
		small := report.Picture{ID: "other-sizes", Title: "The other sizes", About: "The tops of other sizes, small, at one scale.", Unit: in.units(), Plain: true}
		for _, p := range others {
			add(&small, p, strings.TrimPrefix(p.Title, topTitle))
		}
		all = append(all, report.Beside{Picture: small, Tall: othersTall})
	}
	return all
}

// withoutMeasures is a picture as it is drawn small.
func withoutMeasures(p report.Picture) report.Picture {
	p.Panels = slices.Clone(p.Panels)
	for i := range p.Panels {
		p.Panels[i].Dimensions = nil
	}
	return p
}

// add puts the panels of a picture into another, without measures and labels; what
// has the same letter and name has one key.
func add(to *report.Picture, p report.Picture, caption string) {
	key := make([]int, len(p.Legend))
	for i, k := range p.Legend {
		key[i] = slices.Index(to.Legend, k)
		if key[i] < 0 {
			key[i] = len(to.Legend)
			to.Legend = append(to.Legend, k)
		}
	}
	for _, panel := range p.Panels {
		panel.Shapes = slices.Clone(panel.Shapes)
		for i := range panel.Shapes {
			if s := &panel.Shapes[i]; s.Kind == report.Patch {
				s.Key = key[s.Key]
			}
			if caption != "" {
				panel.Shapes[i].Labels = nil
			}
		}
		panel.Dimensions = nil
		if caption != "" {
			panel.Caption = []string{caption}
		}
		to.Panels = append(to.Panels, panel)
	}
}

// abreast divides sizes into as many as stand beside each other in a table.
func (in Input) abreast(most int) [][]*derive.Size {
	return slices.Collect(slices.Chunk(in.Sizes, most))
}

// numbered tells the parts of a table apart that is too wide for one page.
func numbered(id string, i int) string {
	if i == 0 {
		return id
	}
	return fmt.Sprintf("%s-%d", id, i+1)
}

// buying is what to buy by size, in the plan's own unit.
func (in Input) buying() []report.Table {
	var tables []report.Table
	for i, sizes := range in.abreast(sizesAbreast) {
		t := report.Table{ID: numbered("buying", i), Heading: "To buy", Columns: []report.Column{{ID: "fabric", Title: "Fabric", Wide: true}}}
		for _, s := range sizes {
			t.Columns = append(t.Columns, report.Column{ID: s.Of.Name.Text, Title: s.Called(), Right: true})
		}
		for _, role := range in.roles() {
			r := row(report.T(in.named(role)))
			for _, s := range sizes {
				r.Cells = append(r.Cells, plainly(in.buyCell(s, s.Fabric(role))))
			}
			t.Rows = append(t.Rows, r)
		}
		r, any := row(report.T("Batting, at least")), false
		for _, s := range sizes {
			c := report.Cell{}
			if s.Batting != nil {
				c, any = report.T(boxUp(s.Batting, in.units())), true
			}
			r.Cells = append(r.Cells, c)
		}
		if any {
			t.Rows = append(t.Rows, r)
		}
		tables = append(tables, t)
	}
	return tables
}

// plainly is a cell without its working, which stands on the sheet that it repeats.
func plainly(c report.Cell) report.Cell {
	c.Why = nil
	return c
}

// named is what a fabric is called.
func (in Input) named(role string) string {
	for _, s := range in.Sizes {
		if f := s.Fabric(role); f != nil && f.Used() {
			return kit.Title(f)
		}
	}
	return role
}

func (in Input) toolsSaid() report.Table {
	t := facts("tools-said")
	var names []string
	for _, r := range in.tools().Rows {
		names = append(names, r.Cells[0].Text)
	}
	t.Rows = []report.Row{row(report.T("Tools"), report.T(strings.Join(names, "; ")))}
	return t
}

// fragile lists the yields that depend on the least.
func (in Input) fragile(most int) (report.Table, bool) {
	u := in.units()
	t := report.Table{ID: "fragile", Heading: "What is fragile", Columns: []report.Column{
		{ID: "size", Title: "Size"}, {ID: "part", Title: "Part"}, {ID: "what", Title: "What the figures rest on", Wide: true}, {ID: "slack", Title: "To spare", Unit: unitName(u)},
	}}
	var all []derive.Fragile
	for _, s := range in.Sizes {
		all = append(all, s.Fragile()...)
	}
	slices.SortStableFunc(all, func(a, b derive.Fragile) int { return a.Slack().Surd().Cmp(b.Slack().Surd()) })
	said := map[string]bool{}
	for _, f := range all {
		if len(t.Rows) == most {
			break
		}
		if len(said) < most && said[f.Part.Name.Text] && most == mostFragile {
			continue // a size that depends on the same as one before
		}
		said[f.Part.Name.Text] = true
		t.Rows = append(t.Rows, row(report.T(f.Size.Called()), report.T(f.Part.Name.Text),
			report.T(fmt.Sprintf("%s from each %s, of %s: one fewer if it is shorter by more", say.Many(f.Yield.Each, f.Gives.Each), f.Gives.From, f.Yield.Length.AsThere(u))),
			report.L(f.Slack().Surd(), u).There()))
	}
	return t, len(t.Rows) > 0
}

// prices are cost, price and margin of each kit, as the costing has them.
func (in Input) prices(kits []*kit.Kit) (report.Table, bool) {
	code := in.Project.Currency.Code()
	t := report.Table{ID: "kit-prices", Heading: "Kit", Columns: []report.Column{
		{ID: "kit", Title: "Kit"}, {ID: "cost", Title: "Cost", Unit: code}, {ID: "price", Title: "Price", Unit: code}, {ID: "margin", Title: "Margin"}, {ID: "target", Title: "Target"}, {ID: "break_even", Title: "Break-even", Unit: "kits"},
	}}
	for _, k := range kits {
		margin := follow(report.Share, k.Costs.Margin)
		margin.Mark = line.UnderTarget(k.Cells, k.Costs)
		t.Rows = append(t.Rows, row(report.T(k.Name()), follow(report.Money, k.Costs.Unit), follow(report.Money, k.Costs.Price), margin,
			report.Cell{Kind: report.Share, Expr: costing.Ref(k.Cells.Margin.Name, k.Cells.Margin.Value)}, follow(report.Number, k.Costs.BreakEven)))
	}
	return t, len(t.Rows) > 0
}

// blankLine is written on.
const blankLine = "....................................."

// approval is signed by hand.
func approval() report.Table {
	return report.Table{ID: "approval", Heading: "Approved", Columns: []report.Column{{ID: "owner"}, {ID: "editor"}, {ID: "date"}},
		Rows: []report.Row{row(report.T("Owner: "+blankLine), report.T("Technical editor: "+blankLine), report.T("Date: "+blankLine))}}
}
