package tabulate

import (
	"fmt"
	"strings"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/internal/supply"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// takings is what the planned kits of a line take, as sheets; empty where nothing
// is known of it.
type takings struct{ *line.Orders }

// runSheet is how many of each kit are to be made.
func (t takings) runSheet() report.Sheet {
	table := report.Table{
		ID: "run", Heading: "Planned run by kit",
		Lead: []string{"Change a run or what is on the shelf here, and every sheet of this workbook follows, or says 'run again' where the orders and the bolt plan have to be worked out anew.", "What is packed already is taken off the run; fabric and notions are ordered for the allowance for miscuts, too. The bolt plan holds for the kits that it was made for."},
		Columns: []report.Column{
			{ID: "kit", Title: "Kit"}, {ID: "title", Title: "Title"}, {ID: "planned", Title: "Planned", Unit: "kits"}, {ID: "shelf", Title: "On the shelf", Unit: "kits"},
			{ID: "make", Title: "To make", Unit: "kits"}, {ID: "miscuts", Title: "Allowance for miscuts", Unit: "kits"}, {ID: "needed_by", Title: "Needed by"}, {ID: "bolt_plan", Title: "Bolt plan"},
			{ID: "bought", Title: "Ordered for them", Unit: t.Code}, {ID: "unit_used", Title: "Cost of a kit, used basis", Unit: t.Code}, {ID: "unit_bought", Title: "Cost of a kit, bought basis", Unit: t.Code},
		},
		Foot: []string{"Used basis: fabric and notions as cut and counted for the kit. Bought basis: all that is ordered for the kits to be made, each article's order shared by what each kit takes of it, with what is beyond need; stock on hand is free of charge.",
			"The bought basis fills itself from the orders for these runs, and says 'run again' while any run is another than they were made for."},
	}
	for _, r := range t.Runs {
		cells := []report.Cell{report.T(r.Name()), report.T(r.Title), wholeNumber(r.Wanted, "How many of these kits are to be made."), wholeNumber(r.Packed, "How many are packed and on the shelf."),
			result(report.Number, r.ToMake), result(report.Number, r.Spoil), dated(r.NeededBy), state(r)}
		if r.Bought.Name != "" {
			cells = append(cells, result(report.Money, r.Bought), follow(report.Money, r.Kit.Costs.Unit), result(report.Money, r.Unit))
		}
		table.Rows = append(table.Rows, row(cells...))
	}
	return report.Sheet{ID: "run", Title: "Run", Wide: true, Still: 1, Tables: []report.Table{table, t.shared()}}
}

func dated(day string) report.Cell {
	if day == "" {
		return report.Cell{}
	}
	return report.T(day)
}

// state says whether the bolt plan still holds for a run, while somebody changes
// it.
func state(r line.Run) report.Cell {
	return report.Cell{Kind: report.Number, Mark: costing.Not(r.Holds()),
		Expr: costing.If(r.Holds(), costing.Words("as planned"), costing.Join(0, costing.Words("made for "), r.MadeFor(), costing.Words(" kits: run again")))}
}

// shared lists the articles that several kits take.
func (t takings) shared() report.Table {
	table := report.Table{
		ID: "shared-fabrics", Heading: "Articles that several kits share",
		Columns: []report.Column{{ID: "article", Title: "Article"}, {ID: "description", Title: "Description"}, {ID: "kits", Title: "Kits", Wide: true}},
	}
	for i := range t.Supply.Articles {
		if a := &t.Supply.Articles[i]; len(a.Uses) > 1 {
			table.Rows = append(table.Rows, row(report.T(a.SKU), report.T(a.Description), report.T(t.kitsOf(a, len(a.Uses)))))
		}
	}
	if len(table.Rows) == 0 {
		table.Lead = []string{"None: no article goes into more than one kit."}
	}
	return table
}

// kitsOf is "20 of steps/throw at 1 3/8 yd; 12 of lamps/wall at 5/8 yd", or of more
// than so many kits only the first.
func (t takings) kitsOf(a *supply.Article, most int) string {
	var words []string
	for _, u := range a.Uses[:min(most, len(a.Uses))] {
		r := t.Runs[u.Run]
		each := pieces(a, u.Pieces)
		if a.ByLength() {
			each = measure.FormatCut(u.Length, unitOf(a))
		}
		words = append(words, fmt.Sprintf("%d of %s at %s", r.Takes(), r.Name(), each))
	}
	if more := len(a.Uses) - most; more > 0 {
		words = append(words, say.Many(int64(more), "more kit"))
	}
	return strings.Join(words, "; ")
}

// unitOf is what an article's lengths are told in.
func unitOf(a *supply.Article) measure.Unit {
	if a.Unit == plan.PerYard {
		return measure.In
	}
	return measure.Cm
}

func pieces(a *supply.Article, n int64) string {
	if a.Unit == plan.PerEach {
		return say.Many(n, "piece")
	}
	return say.Many(n, string(a.Unit))
}
