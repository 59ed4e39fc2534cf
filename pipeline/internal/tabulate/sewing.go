package tabulate

import (
	"fmt"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// sewing is one size's sewing: what to make, how many, and the size each
// should measure before it is sewn on.
func sewing(s *derive.Size, w workings) report.Sheet {
	name := s.Of.Name.Text
	tables := []report.Table{sewParts(s, w)}
	for _, more := range []func(*derive.Size) (report.Table, bool){tubeKinds, tradeCuts} {
		if t, ok := more(s); ok {
			tables = append(tables, t)
		}
	}
	return report.Sheet{ID: "sewing-" + name, Title: "Sewing " + name, Tables: append(tables, arrangement(s), sewTop(s, w))}
}

func sewParts(s *derive.Size, works workings) report.Table {
	u := unitName(s.Plan.Units)
	t := report.Table{
		ID: "parts-" + s.Of.Name.Text, Heading: "Parts, in the order they are made",
		Columns: []report.Column{
			{ID: "part", Title: "Part"}, {ID: "how", Title: "How", Wide: true}, {ID: "make", Title: "Make"},
			{ID: "needed", Title: "Needed"}, {ID: "width", Title: "Should measure, width", Unit: u}, {ID: "height", Title: "Height", Unit: u},
			{ID: "notes", Title: "Notes", Wide: true},
		},
		Foot: []string{"Sizes are unfinished: seam allowances all round are included."},
	}
	variants := s.Variants()
	for _, p := range s.Parts {
		if p.Needed == 0 || !p.Room.Traits().Sewn {
			continue
		}
		w, h := report.Cell{}, report.Cell{}
		if p.Known {
			box := asCut(p)
			w, h = report.L(box.Width, s.Plan.Units), report.L(box.Height, s.Plan.Units)
			w.Why = works.of(s, p.Figures.Size)
		}
		made := report.N(p.Made)
		made.Why = works.of(s, p.CountFigure())
		needed := report.N(p.Needed)
		needed.Why = works.of(s, p.NeededFigure())
		t.Rows = append(t.Rows, row(report.T(p.Name.Text), report.T(how(s, p)), made, needed, w, h, report.T(notes(s, p, variants[p]))))
	}
	return t
}

// how says how as many of a part as are needed are made.
func how(s *derive.Size, p *derive.Part) string {
	if !p.Known {
		return "cannot be derived; see the sheet Checks"
	}
	return p.Room.How().In(s.Plan.Units)
}

func notes(s *derive.Size, p *derive.Part, variants []derive.Variant) string {
	if !p.Known {
		return ""
	}
	u := s.Plan.Units
	var out []string
	if !s.Sure(derive.Quantity{Kind: derive.Count, Name: p.Name.Text}) {
		out = append(out, "at least so many: not all that is made of it could be counted")
	}
	if room, ok := p.Room.(derive.Noted); ok {
		out = append(out, in(u, room.Notes())...)
	}
	if p.Press.Given() {
		out = append(out, "press "+p.Press.Text)
	}
	if room, ok := p.Room.(derive.Fitted); ok {
		out = append(out, unique(in(u, room.Fit()))...) // pieces that are alike, once
	}
	if spare := p.Made - p.Needed; spare > 0 {
		out = append(out, fmt.Sprintf("%d spare", spare))
	}
	out = append(out, variantNotes(s, p, variants)...)
	if note := p.MirrorNote(); note != "" {
		out = append(out, note)
	}
	if p.Bias {
		out = append(out, "edges are on the bias")
	}
	return strings.Join(out, "; ")
}

// in is sentences in a unit.
func in(u measure.Unit, of []say.Sentence) []string {
	var out []string
	for _, s := range of {
		out = append(out, s.In(u))
	}
	return out
}

// sewTop is the top and the finishing.
func sewTop(s *derive.Size, works workings) report.Table {
	u := unitName(s.Plan.Units)
	t := report.Table{
		ID: "top-" + s.Of.Name.Text, Heading: "Top and finishing",
		Columns: []report.Column{
			{ID: "step", Title: "Step"}, {ID: "how", Title: "How", Wide: true}, {ID: "strips", Title: "Strips"},
			{ID: "width", Title: "Width", Unit: u}, {ID: "length", Title: "Length", Unit: u},
		},
	}
	if !s.Top.Known {
		t.Lead = []string{"The top cannot be derived; see the sheet Checks."}
		return t
	}
	length := func(x measure.Surd) report.Cell { return report.L(x, s.Plan.Units) }
	t.Rows = append(t.Rows, settingRows(s)...)
	for _, b := range s.Top.Borders {
		t.Rows = append(t.Rows, borderRows(s, b, works)...)
	}
	t.Rows = append(t.Rows, row(report.T("top"), report.T("should measure, unfinished"), report.Cell{}, length(s.Top.Width), length(s.Top.Height)))
	t.Rows = append(t.Rows, finishRows(s, works)...)
	return t
}
