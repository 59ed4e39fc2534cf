package tabulate

import (
	"fmt"
	"slices"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// runPapers are the sheets that all planned kits of a size are cut from, fabric by
// fabric, with a box to tick for each line.
func (in Input) runPapers(kits []*kit.Kit) []report.Sheet {
	var sheets []report.Sheet
	for _, k := range kits {
		if n := inRun(k); n > 0 {
			sheets = append(sheets, in.runPaper(k, n))
		}
	}
	return sheets
}

// inRun is how many kits are cut for a run: those planned, and whole kits for the
// allowance for miscuts.
func inRun(k *kit.Kit) int64 {
	planned := &report.Expr{Op: report.Const, Value: k.Cells.Run.Value}
	spoiled := costing.RoundUp(costing.Times(planned, &report.Expr{Op: report.Const, Value: k.Cells.Spoilage.Value}), 0)
	return costing.Sum(planned, spoiled).Value.Num().Int64()
}

func (in Input) runPaper(k *kit.Kit, n int64) report.Sheet {
	sheet := report.Sheet{ID: "run-" + columnID(k), Title: "Run " + k.Name()}
	for i, l := range k.Fabrics {
		t := report.Table{
			ID: "run-" + columnID(k) + "-" + l.Role.Text, Heading: l.Title(),
			Columns: []report.Column{
				{ID: "done", Title: "Done"}, {ID: "number", Title: "How many"}, {ID: "what", Title: "What", Wide: true}, {ID: "for", Title: "For"}, {ID: "pieces", Title: "Pieces"},
			},
		}
		if i == 0 {
			t.Lead = append(t.Lead, fmt.Sprintf("%s of %s: %s planned, the rest is the allowance for miscuts. What is packed already is not taken off.", say.Many(n, "kit"), k.Name(), k.Cells.Run.Value.RatString()))
		}
		t.Rows = append(t.Rows, in.fromTheBolt(l, n))
		if k.Said.Cut == plan.Pieces {
			t.Rows = append(t.Rows, cutsOfRun(cutter{s: k.Size, f: l.Fabric, u: in.units(), layout: l.Layout, sheets: l.Sheets}.table(), n)...)
		}
		sheet.Tables = append(sheet.Tables, t)
	}
	if t, ok := in.countedOut(k, n); ok {
		sheet.Tables = append(sheet.Tables, t)
	}
	return sheet
}

// fromTheBolt is the first line of a fabric: its lengths, or its packs.
func (in Input) fromTheBolt(l kit.Line, n int64) report.Row {
	what, many := "lengths of "+measure.FormatCut(l.Length, in.units())+", cut from the bolt", n
	if l.Form == plan.Precut {
		what, many = "packs, opened", n*l.Packs
	}
	if l.Article.Given() {
		what += ": " + l.Article.Text
	}
	return row(report.Tick(), report.N(many), report.T(what), report.Cell{}, report.Cell{})
}

// cutsOfRun are the lines of one kit's cut list, for so many kits.
func cutsOfRun(list report.Table, n int64) []report.Row {
	at := func(id string) int {
		return slices.IndexFunc(list.Columns, func(c report.Column) bool { return c.ID == id })
	}
	strips, width, then, used, pieces := at("strips"), at("width"), at("then"), at("for"), at("pieces")
	if min(strips, width, then, used, pieces) < 0 {
		return nil
	}
	var rows []report.Row
	for _, r := range list.Rows {
		cell := func(i int) report.Cell {
			if i < len(r.Cells) {
				return r.Cells[i]
			}
			return report.Cell{}
		}
		count, many, what := cell(strips), cell(pieces), cell(then).Text
		if count.Kind != report.Count {
			continue // straightening, and what is said of no strip
		}
		count.Int *= n
		if many.Kind == report.Count {
			many.Int *= n
		}
		if w := cell(width); w.Kind == report.Length {
			what = fmt.Sprintf("strips %s wide. From each: %s", w.Exact.AsCut(w.Unit), what)
		}
		rows = append(rows, row(report.Tick(), count, report.T(what), report.T(cell(used).Text), many))
	}
	return rows
}

// countedOut is what goes into the kits besides fabric.
func (in Input) countedOut(k *kit.Kit, n int64) (report.Table, bool) {
	t := report.Table{ID: "run-" + columnID(k) + "-notions", Heading: "Notions and papers", Columns: []report.Column{{ID: "done", Title: "Done"}, {ID: "number", Title: "How many"}, {ID: "what", Title: "What", Wide: true}}}
	for _, l := range k.Things {
		what := l.Title()
		if l.Article.Given() {
			what += ": " + l.Article.Text
		}
		t.Rows = append(t.Rows, row(report.Tick(), report.N(n*int64(l.Thing.Count.N)), report.T(what)))
	}
	if k.Said.Pattern.Given() {
		t.Rows = append(t.Rows, row(report.Tick(), report.N(n), report.T("Printed pattern")))
	}
	return t, len(t.Rows) > 0
}
