package tabulate

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/internal/supply"
	"yardproof/pipeline/report"
)

// Line is the sheets of the line's workbook. Summaries stand beside the run's
// plans; that of a plan which could not be derived is empty.
func Line(run *report.Run, summaries []line.Summary, taken ...supply.Line) []report.Sheet {
	w := whatif{Costing: line.Cost(run, summaries)}
	t := takings{w.Take(run, summaries, taken)}
	w.runs = t.Orders
	sheets := []report.Sheet{monday(run, w, t), everySize(run, summaries, w)}
	if t.Orders != nil {
		sheets = append(sheets, t.runSheet(), t.orderSheet(), t.boltSheet())
	}
	return append(sheets, w.sheets()...)
}

// stopped lists first what must not be printed or cut, and why.
func stopped(run *report.Run) report.Table {
	t := report.Table{
		ID: "do-not-print", Heading: "Do not print or cut",
		Columns: []report.Column{
			{ID: "plan", Title: "Plan"}, {ID: "place", Title: "Place"}, {ID: "why", Title: "Why", Wide: true}, {ID: "way_out", Title: "Fix", Wide: true},
		},
	}
	add := func(id string, fs []diag.Finding) {
		for _, f := range fs {
			if f.Level == diag.Error {
				t.Rows = append(t.Rows, report.Row{Style: report.Alert, Cells: []report.Cell{
					report.T(id), report.T(f.Place.String()), report.T(f.Message + " [" + f.Rule + "]"), report.T(f.Hint),
				}})
			}
		}
	}
	add("", run.Findings)
	for _, p := range run.Plans {
		id := p.ID
		if id == "" {
			id = p.File
		}
		add(id, p.Findings)
	}
	if len(t.Rows) == 0 {
		t.Lead = []string{"Nothing: no plan of the line has an error."}
	}
	return t
}

func everySize(run *report.Run, summaries []line.Summary, w whatif) report.Sheet {
	code := run.Currency.Code()
	t := report.Table{
		ID: "line", Heading: "Every plan by size",
		Columns: []report.Column{
			{ID: "plan", Title: "Plan"}, {ID: "status", Title: "Status"}, {ID: "size", Title: "Size"},
			{ID: "finished", Title: "Finished"}, {ID: "fabric", Title: "Fabric to buy", Wide: true},
			{ID: "cost", Title: "Kit cost", Unit: code}, {ID: "price", Title: "Price", Unit: code}, {ID: "margin", Title: "Margin", Unit: "% of price"},
			{ID: "slack", Title: "Smallest slack"}, {ID: "errors", Title: "Errors"}, {ID: "warnings", Title: "Warnings"}, {ID: "notes", Title: "Notes"},
		},
		Foot: []string{"Smallest slack: how much shorter strips may be before a tube or strip set loses a piece."},
	}
	if c := run.Cuttings; c.Asked > 0 {
		t.Foot = append(t.Foot, fmt.Sprintf("The cutting of %s was worked out, equal ones only once: %d in all.", say.Many(int64(c.Asked), "fabric"), c.Solved))
	}
	if w.Mixed {
		t.Foot = append(t.Foot, "The kits are priced in several currencies, so there is no what-if sheet.")
	}
	for i, p := range run.Plans {
		if i >= len(summaries) || len(summaries[i].Sizes) == 0 {
			t.Rows = append(t.Rows, row(append([]report.Cell{report.T(line.Name(p)), report.T(p.Status), {}, {}, {}, {}, {}, {}, {}}, counts(p.Findings)...)...))
			continue
		}
		for j, s := range summaries[i].Sizes {
			t.Rows = append(t.Rows, sizeRow(p, s, w.Of(i, j)))
		}
	}
	return report.Sheet{ID: "line", Title: "Line", Wide: true, Tables: []report.Table{t}}
}

func sizeRow(p report.Outcome, s line.SizeSummary, kit *line.Priced) report.Row {
	finished, slack := report.Cell{}, report.Cell{}
	if s.Finished != "" {
		finished = report.T(s.Finished)
	}
	if s.Slack != "" {
		slack = report.T(s.Slack)
	}
	cells := []report.Cell{report.T(line.Name(p)), report.T(p.Status), report.T(s.Name), finished, report.T(s.Fabric)}
	cells = append(cells, moneyCells(s, kit)...)
	cells = append(cells, slack)
	if diag.Worst(p.Findings) == diag.Error { // no figure of it may be ordered or priced by
		cells = append(cells[:3], report.T("not proved"), report.Cell{}, report.Cell{}, report.Cell{}, report.Cell{}, report.Cell{})
		return report.Row{Style: report.Alert, Cells: append(cells, counts(of(p.Findings, s))...)}
	}
	return row(append(cells, counts(of(p.Findings, s))...)...)
}

// moneyCells are cost, price and margin, as the what-if sheet works them out;
// where it does not, the first two as they are.
func moneyCells(s line.SizeSummary, kit *line.Priced) []report.Cell {
	switch {
	case kit != nil:
		return []report.Cell{follow(report.Money, kit.Costs.Unit), follow(report.Money, kit.Costs.Price), margin(kit)}
	case s.Cost == nil || s.Price == nil:
		return []report.Cell{{}, {}, {}}
	}
	plain := func(value *big.Rat) report.Cell { return report.Cell{Kind: report.Money, Number: value} }
	return []report.Cell{plain(s.Cost), plain(s.Price), {}}
}

// of are the findings about a size, and those about the plan as a whole. A colourway
// is called after its size, and no size has a comma in its name.
func of(fs []diag.Finding, s line.SizeSummary) []diag.Finding {
	size, _, _ := strings.Cut(s.Name, ", ")
	var all []diag.Finding
	for _, f := range fs {
		if len(f.Sizes) == 0 || slices.Contains(f.Sizes, size) {
			all = append(all, f)
		}
	}
	return all
}

func counts(fs []diag.Finding) []report.Cell {
	var n [diag.Error + 1]int64
	for _, f := range fs {
		n[f.Level]++
	}
	return []report.Cell{report.N(n[diag.Error]), report.N(n[diag.Warning]), report.N(n[diag.Note])}
}
