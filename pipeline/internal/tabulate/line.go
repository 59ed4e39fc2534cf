package tabulate

import (
	"fmt"
	"math/big"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/supply"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// Summary is what the line's sheets keep of a plan. It is kept from run to run,
// as JSON.
type Summary struct {
	Sizes []SizeSummary `json:"sizes,omitempty"`
}

// SizeSummary is one size of a plan in the line.
type SizeSummary struct {
	Name     string   `json:"name"`
	Finished string   `json:"finished,omitempty"` // in words; empty when it is not known
	Fabric   string   `json:"fabric,omitempty"`   // in words
	Slack    string   `json:"slack,omitempty"`    // the least, and what has it; empty when nothing has a yield
	Cost     *big.Rat `json:"cost,omitempty"`     // of a kit, like Price; nil when there is none
	Price    *big.Rat `json:"price,omitempty"`
	Kit      *KeptKit `json:"kit,omitempty"` // what both are worked out from

	Planned *supply.Kit `json:"planned,omitempty"` // what the kits that are planned take; nil when none are
}

// Summarise keeps what the line's sheets need of a plan.
func Summarise(in Input) Summary {
	var sum Summary
	for _, s := range in.Sizes {
		kits := in.kitsOf(s)
		if len(kits) == 0 || kits[0].size.Of.Way.Given() {
			sum.Sizes = append(sum.Sizes, in.summarise(s))
		}
		for _, k := range kits {
			of := in.summarise(k.size)
			of.Cost, of.Price, of.Kit, of.Planned = k.Costs.Unit.Value, k.Costs.Price.Value, in.keep(k.Kit), k.planned()
			sum.Sizes = append(sum.Sizes, of)
		}
	}
	return sum
}

// summarise keeps what the line needs of a size in a colourway.
func (in Input) summarise(s *derive.Size) SizeSummary {
	sum := SizeSummary{Name: in.worn(s)}
	if s.Top.Known {
		sum.Finished = box(s.Top.Finished.Width, s.Top.Finished.Height, in.units())
	}
	var fabric []string
	for _, f := range s.Fabrics {
		if f.Used() && f.Err == nil {
			fabric = append(fabric, title(f)+" "+in.bought(s, f))
		}
	}
	sum.Fabric = strings.Join(fabric, "; ")
	var least measure.Length
	for _, p := range s.Parts {
		if slack, ok := leastSlack(p); ok && p.Needed > 0 && (sum.Slack == "" || slack < least) {
			least, sum.Slack = slack, slack.AsThere(in.units())+", "+p.Name.Text
		}
	}
	return sum
}

func (in Input) bought(s *derive.Size, f *derive.Fabric) string {
	if f.Buy > 0 {
		return atLeast(s, f) + measure.FormatFabric(f.Buy, in.units())
	}
	return atLeast(s, f) + many(f.Packs, "pack")
}

// atLeast qualifies what is bought of a fabric of which not all could be
// counted, as a draft may show it.
func atLeast(s *derive.Size, f *derive.Fabric) string {
	if s.SureOfCloth(f) {
		return ""
	}
	return "at least "
}

func leastSlack(p *derive.Part) (measure.Length, bool) {
	switch {
	case p.Pool != nil:
		return p.Pool.Length - p.Pool.Fill, p.Pool.Parts[0] == p
	case p.Tube != nil && p.Known:
		return p.Tube.Yield.Slack(), true
	case p.Set != nil && p.Set.Cut != nil:
		return p.Set.Cut.Slack(), true
	}
	return 0, false
}

// Line is the sheets of the line's workbook. Summaries stand beside the run's
// plans; that of a plan which could not be derived is empty.
func Line(run *report.Run, summaries []Summary, taken ...supply.Line) []report.Sheet {
	w := whatIf(run, summaries)
	t := w.take(run, summaries, taken)
	sheets := []report.Sheet{monday(run, w, t), everySize(run, summaries, w)}
	if t != nil {
		sheets = append(sheets, t.runSheet(), t.orderSheet(), t.boltSheet())
	}
	return append(sheets, w.sheets()...)
}

// stopped lists first what must not be printed or cut, and why.
func stopped(run *report.Run) report.Table {
	t := report.Table{
		ID: "do-not-print", Heading: "Do not print or cut",
		Columns: []report.Column{
			{ID: "plan", Title: "Plan"}, {ID: "place", Title: "Place"}, {ID: "why", Title: "Why", Wide: true}, {ID: "way_out", Title: "Way out", Wide: true},
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

func everySize(run *report.Run, summaries []Summary, w *whatif) report.Sheet {
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
		t.Foot = append(t.Foot, fmt.Sprintf("The cutting of %s was worked out, equal ones only once: %d in all.", many(int64(c.Asked), "fabric"), c.Solved))
	}
	if w.mixed {
		t.Foot = append(t.Foot, "The kits are priced in several currencies, so there is no what-if sheet.")
	}
	for i, p := range run.Plans {
		if i >= len(summaries) || len(summaries[i].Sizes) == 0 {
			t.Rows = append(t.Rows, row(append([]report.Cell{report.T(name(p)), report.T(p.Status), {}, {}, {}, {}, {}, {}, {}}, counts(p.Findings)...)...))
			continue
		}
		for j, s := range summaries[i].Sizes {
			t.Rows = append(t.Rows, sizeRow(p, s, w.kits[[2]int{i, j}]))
		}
	}
	return report.Sheet{ID: "line", Title: "Line", Wide: true, Tables: []report.Table{t}}
}

// NameOf is what the line calls a plan.
func NameOf(p report.Outcome) string { return name(p) }

func name(p report.Outcome) string {
	if p.Title != "" {
		return p.Title
	}
	if p.ID != "" {
		return p.ID
	}
	return p.File
}

func sizeRow(p report.Outcome, s SizeSummary, kit *lineKit) report.Row {
	finished, slack := report.Cell{}, report.Cell{}
	if s.Finished != "" {
		finished = report.T(s.Finished)
	}
	if s.Slack != "" {
		slack = report.T(s.Slack)
	}
	cells := []report.Cell{report.T(name(p)), report.T(p.Status), report.T(s.Name), finished, report.T(s.Fabric)}
	cells = append(cells, moneyCells(s, kit)...)
	cells = append(cells, slack)
	if diag.Worst(p.Findings) == diag.Error { // no figure of it may be ordered or priced by
		cells = append(cells[:3], report.T("not proved"), report.Cell{}, report.Cell{}, report.Cell{}, report.Cell{}, report.Cell{})
		return report.Row{Style: report.Alert, Cells: append(cells, counts(p.Findings)...)}
	}
	return row(append(cells, counts(p.Findings)...)...)
}

// moneyCells are cost, price and margin, as the what-if sheet works them out;
// where it does not, the first two as they are.
func moneyCells(s SizeSummary, kit *lineKit) []report.Cell {
	switch {
	case kit != nil:
		return []report.Cell{follow(report.Money, kit.costs.Unit), follow(report.Money, kit.costs.Price), kit.margin()}
	case s.Cost == nil || s.Price == nil:
		return []report.Cell{{}, {}, {}}
	}
	plain := func(value *big.Rat) report.Cell { return report.Cell{Kind: report.Money, Number: value} }
	return []report.Cell{plain(s.Cost), plain(s.Price), {}}
}

func counts(fs []diag.Finding) []report.Cell {
	var n [diag.Error + 1]int64
	for _, f := range fs {
		n[f.Level]++
	}
	return []report.Cell{report.N(n[diag.Error]), report.N(n[diag.Warning]), report.N(n[diag.Note])}
}
