package tabulate

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/caution"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/report"
)

// checks is what is proved and what is not, and what a person has to check.
func (in Input) checks(pictures []report.Picture, undrawn []string) report.Sheet {
	sizes := in.sizes()
	if len(undrawn) > 0 {
		sizes.Foot = append(sizes.Foot, "There is no picture of the top of "+strings.Join(undrawn, ", ")+": it could not be derived patch by patch, or has too many of them to be told apart.")
	}
	tables := []report.Table{in.identity(), sizes, in.proof()}
	if t, ok := in.fragile(mostChecked); ok {
		tables = append(tables, t)
	}
	return report.Sheet{ID: "overview", Title: "Checks", Tables: append(tables, in.cautions(), byHand()), Pictures: pictures}
}

// mostChecked is how many yields the checks list.
const mostChecked = 40

func (in Input) identity() report.Table {
	p := in.Plan
	t := report.Table{
		ID: "plan", Heading: p.Title.Text,
		Columns: []report.Column{{ID: "what", Title: "Plan"}, {ID: "says", Title: p.ID.Text, Wide: true}},
	}
	add := func(what, says string) {
		if says != "" {
			t.Rows = append(t.Rows, row(report.T(what), report.T(says)))
		}
	}
	add("Description", p.Description.Text)
	add("Revision", p.Revision.Text)
	add("Status", p.Status.String())
	add("Skill level", p.Skill.Text)
	add("File", p.File.Name)
	if len(in.Sizes) > 0 {
		s := in.Sizes[0].Of.Seam
		add("Seam", strings.TrimSpace(fmt.Sprintf("%s %s", s.Allowance.Format(p.Units), stitch(s.Stitch.Text))))
		add("Pressing", s.Pressing.Text)
	}
	return t
}

func stitch(class string) string {
	if class == "" {
		return ""
	}
	return "(stitch class " + class + ", ISO 4915)"
}

func (in Input) sizes() report.Table {
	u := unitName(in.units())
	t := report.Table{
		ID: "sizes", Heading: "Sizes",
		Columns: []report.Column{
			{ID: "size", Title: "Size"}, {ID: "width", Title: "Finished width", Unit: u}, {ID: "length", Title: "Finished length", Unit: u},
			{ID: "use", Title: "Use"}, {ID: "blocks", Title: "Blocks", Wide: true}, {ID: "printed", Title: "Printed"},
		},
		Foot: []string{"A size that is no exact figure on a ruler is given with 'about'."},
	}
	for _, s := range in.Sizes {
		printed := "nothing said"
		switch {
		case s.Of.Printed != nil:
			printed = "yes"
		case !s.Of.NotPrinted.Empty():
			printed = "not printed"
		}
		w, h := report.Cell{}, report.Cell{}
		if s.Top.Known {
			w, h = report.L(s.Top.Finished.Width, in.units()), report.L(s.Top.Finished.Height, in.units())
			w.Why, h.Why = in.works.of(s, s.FinishedFigure(false)), in.works.of(s, s.FinishedFigure(true))
		}
		t.Rows = append(t.Rows, row(report.T(s.Of.Name.Text), w, h, report.T(s.Of.Use.Text), report.T(blocks(s)), report.T(printed)))
	}
	return t
}

func blocks(s *derive.Size) string {
	var all []string
	for _, b := range s.Top.Blocks {
		all = append(all, fmt.Sprintf("%d %s", b.Count, b.Part.Name.Text))
	}
	return strings.Join(all, ", ")
}

// proof says what the numbers of the workbook rest on, and what was found
// wrong.
func (in Input) proof() report.Table {
	t := report.Table{
		ID: "proof", Heading: "What is proved and what is not",
		Columns: []report.Column{{ID: "level", Title: "Verdict"}, {ID: "what", Title: "About", Wide: true}},
	}
	if slices.ContainsFunc(in.Findings, func(f diag.Finding) bool { return f.Hint != "" }) {
		t.Columns = append(t.Columns, report.Column{ID: "hint", Title: "Way out", Wide: true})
	}
	if diag.Worst(in.Findings) == diag.Error {
		t.Rows = append(t.Rows, report.Row{Style: report.Alert, Cells: []report.Cell{
			report.T("not proved"), report.T("The plan has errors. Do not print or cut from these sheets."),
		}})
	} else {
		t.Rows = append(t.Rows,
			row(report.T("proved"), report.T("Sizes, counts, strips, strip sets and tubes follow exactly from the layout, the seam and the usable lengths stated.")),
			row(report.T("proved"), report.T("The fabric listed is enough when it is cut as the cut lists say. Each says whether a shorter layout of strips is known or excluded.")))
	}
	t.Rows = append(t.Rows, row(report.T("not proved"), report.T("That no other way of cutting than strips needs less fabric. Texts, photographs and drawings of the pattern.")))
	t.Rows = append(t.Rows, in.unproved()...)
	for _, f := range in.Findings {
		where := ""
		if f.Place.Start.Line > 0 {
			where = fmt.Sprintf(" (line %d, %s)", f.Place.Start.Line, f.Rule)
		}
		t.Rows = append(t.Rows, row(report.T(f.Level.String()), report.T(f.Message+where)))
		if f.Hint != "" {
			last := &t.Rows[len(t.Rows)-1]
			last.Cells = append(last.Cells, report.T(f.Hint))
		}
	}
	return t
}

// cautions lists what the sizes' techniques call for, and what the pattern
// itself prints.
func (in Input) cautions() report.Table {
	t := report.Table{
		ID: "cautions", Heading: "Cautions",
		Columns: []report.Column{{ID: "caution", Title: "To be printed in the pattern and on the kit", Wide: true}},
		Foot:    []string{"Reminders, not legal advice: check your local rules for safety, labelling and sale."},
	}
	var keys []string
	for _, s := range in.Sizes {
		keys = append(keys, s.Cautions()...)
		for _, c := range s.Of.Cautions {
			keys = append(keys, c.Text)
		}
	}
	slices.Sort(keys)
	for _, k := range slices.Compact(keys) {
		if sentence, ok := caution.Sentence(k); ok {
			t.Rows = append(t.Rows, report.Row{Style: report.Alert, Cells: []report.Cell{report.T(sentence)}})
		}
	}
	return t
}

// byHand is what no program can judge.
func byHand() report.Table {
	t := report.Table{
		ID: "by-hand", Heading: "To be checked by a person before printing",
		Columns: []report.Column{{ID: "done", Title: "Done"}, {ID: "what", Title: "What", Wide: true}},
	}
	for _, what := range []string{
		"Steps stand in an order that can be followed: nothing is used before it is made.",
		"Each step gives a size to measure against, and the diagrams agree with it.",
		"Pressing directions let the seams nest; the two sets of a tube are pressed opposite ways where they meet.",
		"Right and wrong sides are named, and no diagram shows left for right.",
		"Borders and sashes are cut to the quilt as it measures through its middle.",
		"What is over of a strip is promised to one use only.",
		"Measures in a second system were worked out from finished sizes, and no yards stand where metres are meant.",
		"The skill level on the cover is that of the hardest step.",
		"Cover, text, diagrams and metadata give the same finished size.",
		"Photographs show the size that is sold, made of the fabric amounts that are printed.",
		"Somebody other than the designer has sewn it from the text, at the usable width printed.",
		"Fabric letters, names and terms are the same throughout.",
		"Fractions and symbols have survived typesetting.",
	} {
		t.Rows = append(t.Rows, row(report.Tick(), report.T(what)))
	}
	return t
}
