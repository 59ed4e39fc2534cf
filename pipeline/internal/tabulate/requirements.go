package tabulate

import (
	"fmt"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

func (in Input) requirements() report.Sheet {
	sheet := report.Sheet{ID: "requirements", Title: "Requirements", Wide: true, Tables: []report.Table{in.toBuy()}}
	for _, s := range in.Sizes {
		sheet.Tables = append(sheet.Tables, in.need(s))
	}
	if t, ok := in.backings(); ok {
		sheet.Tables = append(sheet.Tables, t)
	}
	if t, ok := in.thread(); ok {
		sheet.Tables = append(sheet.Tables, t)
	}
	sheet.Tables = append(sheet.Tables, in.tools())
	return sheet
}

// toBuy is fabrics down and sizes across.
func (in Input) toBuy() report.Table {
	t := report.Table{
		ID: "to-buy", Heading: "To buy",
		Columns: []report.Column{{ID: "fabric", Title: "Fabric", Wide: true}, {ID: "form", Title: "Sold as", Wide: true}},
		Foot:    []string{"Fabric is rounded up to the step it is sold in; what that includes stands in the tables below."},
	}
	for _, s := range in.Sizes {
		t.Columns = append(t.Columns, report.Column{ID: s.Of.Name.Text, Title: s.Of.Name.Text, Right: true})
	}
	for _, role := range in.roles() {
		var cells []report.Cell
		var any *derive.Fabric
		for _, s := range in.Sizes {
			f := s.Fabric(role)
			cells = append(cells, in.buyCell(s, f))
			if any == nil {
				any = f
			}
		}
		t.Rows = append(t.Rows, row(append([]report.Cell{report.T(kit.Title(any)), report.T(in.form(any))}, cells...)...))
	}
	in.addBatting(&t)
	return t
}

// roles are the fabric roles used in some size, in the order of the plan.
func (in Input) roles() []string {
	var roles []string
	seen := map[string]bool{}
	for _, s := range in.Sizes {
		for _, f := range s.Fabrics {
			if f.Used() && !seen[f.Role.Text] {
				seen[f.Role.Text] = true
				roles = append(roles, f.Role.Text)
			}
		}
	}
	return roles
}

func (in Input) form(f *derive.Fabric) string {
	u := in.units()
	if f.Form == plan.Yardage {
		return fmt.Sprintf("fabric with a usable width of %s", f.UsableWidth.AsThere(u))
	}
	return fmt.Sprintf("pack of at least %d pieces %s x %s, usable %s x %s", f.Pack.N,
		f.Piece[0].BareRounded(u, measure.Up), f.Piece[1].AsCut(u), f.Usable[0].BareRounded(u, measure.Down), f.Usable[1].AsThere(u))
}

func (in Input) buyCell(s *derive.Size, f *derive.Fabric) report.Cell {
	switch {
	case f == nil || !f.Used():
		return report.Cell{}
	case f.Err != nil:
		return report.T("cannot be cut")
	case !s.SureOfCloth(f):
		return report.T(line.Bought(s, f))
	case f.Form == plan.Precut:
		c := report.T(say.Many(f.Packs, "pack"))
		c.Why = in.works.of(s, f.BuyFigure())
		return c
	}
	c := report.F(f.Buy, in.units())
	c.Why = in.works.of(s, f.BuyFigure())
	return c
}

func (in Input) addBatting(t *report.Table) {
	cells := []report.Cell{report.T("Batting"), report.T("sheet, at least")}
	any := false
	for _, s := range in.Sizes {
		if s.Batting == nil {
			cells = append(cells, report.Cell{})
			continue
		}
		any = true
		cells = append(cells, report.T(in.battingToBuy(s.Batting)))
	}
	if any {
		t.Rows = append(t.Rows, row(cells...))
	}
}

// need shows how each fabric's figure of one size is made up.
func (in Input) need(s *derive.Size) report.Table {
	u, yd := unitName(in.units()), fabricUnit(in.units())
	t := report.Table{
		ID: "need-" + s.Of.Name.Text, Heading: "How it adds up: " + s.Of.Name.Text,
		Columns: []report.Column{
			{ID: "fabric", Title: "Fabric"}, {ID: "strips", Title: "Strips"}, {ID: "strip_length", Title: "Strips, along", Unit: u},
			{ID: "squaring_up", Title: "Squaring up", Unit: u}, {ID: "backing", Title: "Backing panels", Unit: u},
			{ID: "need", Title: "Need", Unit: u}, {ID: "buy", Title: "Buy", Unit: yd}, {ID: "printed", Title: "Printed", Unit: yd},
		},
	}
	for _, f := range s.Fabrics {
		if f.Used() && f.Form == plan.Yardage && f.Err == nil {
			t.Rows = append(t.Rows, in.needRow(s, f))
		}
	}
	for _, f := range s.Fabrics {
		if f.Used() && f.Form == plan.Precut && f.Err == nil {
			t.Foot = append(t.Foot, packs(f))
		}
	}
	return t
}

func (in Input) needRow(s *derive.Size, f *derive.Fabric) report.Row {
	length := func(l measure.Length) report.Cell {
		if l == 0 {
			return report.Cell{}
		}
		return report.Cut(l.Surd(), in.units())
	}
	printed := report.Cell{}
	if s.Of.Printed != nil {
		for _, said := range s.Of.Printed.Fabric {
			if said.Of.Text == f.Role.Text {
				printed = report.Cell{Kind: report.Fabric, Exact: said.Length.Length.Surd(), Unit: in.units()}
			}
		}
	}
	return row(report.T(kit.Title(f)), strips(f), length(f.Layout.Length), length(f.SquaringUp.Length),
		length(f.Panels), length(f.Gross), in.buyCell(s, f), printed)
}

func strips(f *derive.Fabric) report.Cell {
	if n := f.Layout.Strips(); n > 0 {
		return report.N(int64(n))
	}
	return report.Cell{}
}

func packs(f *derive.Fabric) string {
	used := f.Packs*int64(f.Pack.N) - f.Left
	return fmt.Sprintf("%s: %s of %d %s cut into; %s left over.", kit.Title(f), say.Many(used, "piece"), f.Packs*int64(f.Pack.N), are(used), say.Many(f.Left, "piece"))
}

func (in Input) tools() report.Table {
	t := report.Table{
		ID: "tools", Heading: "Tools",
		Columns: []report.Column{{ID: "tool", Title: "Tool", Wide: true}},
	}
	seen := map[string]bool{}
	for _, s := range in.Sizes {
		for i := range s.Of.Tools.Rulers {
			name := rulerName(&s.Of.Tools.Rulers[i], in.units())
			if !seen[name] {
				seen[name] = true
				t.Rows = append(t.Rows, row(report.T(name)))
			}
		}
	}
	t.Rows = append(t.Rows, row(report.T("Rotary cutter and mat")))
	return t
}

func rulerName(r *plan.Ruler, u measure.Unit) string {
	if !r.Length.On(measure.Millimetre) {
		u = measure.In // a studio's inch ruler in a metric plan
	}
	name := "Ruler " + r.Width.Bare(u) + " x " + r.Length.Format(u)
	if r.Square() {
		name = "Square ruler " + r.Width.Format(u)
	}
	var lines []string
	for _, a := range r.Angles {
		lines = append(lines, fmt.Sprintf("%d", a))
	}
	if len(lines) > 0 {
		name += " with a line at " + strings.Join(lines, " and ") + " degrees"
	}
	return name
}
