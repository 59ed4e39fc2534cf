package xlsx

import (
	"yardproof/exporters/internal/figure"
	"yardproof/pipeline/report"
	"yardproof/schema/source"
)

// workingsSheet shows how the derived numbers of the sheets came about; there
// is none when nothing has work to show.
func workingsSheet(sheets []report.Sheet, file *source.File) (report.Sheet, bool) {
	workings := figure.Collect(sheets)
	t := report.Table{
		ID:   "workings",
		Lead: []string{"How the figures of the other sheets were worked out, with the line of the plan that each starting value stands on."},
		Columns: []report.Column{
			{ID: "symbol", Title: "Symbol"},
			{ID: "says", Title: "What it stands for", Wide: true},
			{ID: "value", Title: "Value"},
			{ID: "line", Title: "Plan line"},
		},
	}
	for _, work := range workings.List {
		t.Rows = append(t.Rows, rowsOf(work, file)...)
	}
	return report.Sheet{ID: "workings", Title: "Workings", Tables: []report.Table{t}}, len(workings.List) > 0
}

func rowsOf(work *report.Work, file *source.File) []report.Row {
	rows := []report.Row{{
		Style: report.Group,
		Cells: []report.Cell{{}, report.T(work.What + " = " + work.Formula), fixed(work.Value)},
	}}
	for _, term := range work.Terms {
		cells := []report.Cell{report.T(term.Symbol), report.T(term.Says), fixed(term.Value)}
		if file != nil && !term.At.Empty() {
			cells = append(cells, report.N(int64(file.Position(term.At.Start).Line)))
		}
		rows = append(rows, report.Row{Cells: cells})
	}
	return rows
}

// fixed is a cell as a value that stays: how a number came about is told for
// the plan as it is, not for what is typed into the inputs later.
func fixed(c report.Cell) report.Cell {
	if c.Expr != nil {
		c.Number, c.Text = c.Expr.Value, c.Expr.Text
		if c.Expr.Value == nil {
			c.Kind = report.Text
		}
	}
	c.Expr, c.Name, c.Input, c.Why = nil, "", false, nil
	return c
}
