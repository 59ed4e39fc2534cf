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
)

// monday is the sheet that the week begins with: what must not be printed or
// cut, what to cut, what to order, what loses money, what has changed.
func monday(run *report.Run, w whatif, t takings) report.Sheet {
	tables := []report.Table{stopped(run)}
	if t.Orders != nil {
		tables = append(tables, t.toCut(), t.orders(report.Table{ID: "order", Heading: "What to order"}, false))
	}
	if t.Orders != nil && len(t.Supply.Left) > 0 {
		tables = append(tables, t.discontinued())
	}
	if len(w.Kits) > 0 {
		tables = append(tables, w.losing(), w.underNow())
	}
	tables = append(tables, changes(run))
	return report.Sheet{ID: "monday", Title: "Monday", Wide: true, Tables: tables}
}

// changes is what is not as it was in the last edition.
func changes(run *report.Run) report.Table {
	t := report.Table{
		ID: "changed", Heading: "What changed since the last edition",
		Columns: []report.Column{
			{ID: "plan", Title: "Plan"}, {ID: "size", Title: "Size"}, {ID: "what", Title: "What"}, {ID: "before", Title: "Then", Wide: true}, {ID: "now", Title: "Now", Wide: true},
		},
	}
	for _, c := range run.Changes {
		t.Rows = append(t.Rows, row(report.T(c.Plan), report.T(c.Size), report.T(c.What), report.T(c.Before), report.T(c.Now)))
	}
	switch {
	case run.Edition == "":
		t.Lead = []string{"No edition is named. When one is published, keep its line.csv in the pattern folder and name that as \"edition\" in the project file."}
	case len(t.Rows) == 0:
		t.Lead = []string{"Nothing since " + run.Edition + "."}
	default:
		t.Lead = []string{"Since " + run.Edition + "."}
	}
	return t
}

// mostKits is how many kits Monday's sheet names for an article; the bolt plan
// names them all.
const mostKits = 3

// toCut is what to cut this week, kits by bolts.
func (t takings) toCut() report.Table {
	table := report.Table{
		ID: "cut", Heading: "What to cut and count out",
		Columns: []report.Column{
			{ID: "article", Title: "Article"}, {ID: "description", Title: "Description"}, {ID: "kits", Title: "Kits", Wide: true}, {ID: "from", Title: "From", Wide: true}, {ID: "holds", Title: "Bolt plan"}, {ID: "done", Title: "Done"},
		},
		Foot: []string{"How each bolt is cut is on the sheet Bolt plan; for how many kits it holds on the sheet Run."},
	}
	for i := range t.Supply.Articles {
		a := &t.Supply.Articles[i]
		if t.Idle(a) {
			continue
		}
		table.Rows = append(table.Rows, row(report.T(a.SKU), report.T(a.Description), report.T(t.kitsOf(a, mostKits)), report.T(t.from(a)), t.holds(), report.Tick()))
	}
	if len(table.Rows) == 0 {
		table.Lead, table.Foot = []string{"Nothing: all kits that are planned are on the shelf."}, nil
	}
	return table
}

// holds says whether what was worked out for the runs still holds, while somebody
// changes them.
func (t takings) holds() report.Cell {
	return report.Cell{Kind: report.Number, Mark: t.Stale(), Expr: costing.If(t.Stale(), costing.Words(line.RunAgain), costing.Words("as planned"))}
}

// from is where the kits' fabric comes from: part-bolts, then bolts.
func (t takings) from(a *supply.Article) string {
	if a.Err != nil {
		return "no bolt plan: see above"
	}
	var words []string
	if !a.ByLength() {
		if there := min(a.PiecesThere, a.Needs); there > 0 {
			words = append(words, pieces(a, there)+" on hand")
		}
		if a.PiecesOrder > 0 {
			words = append(words, pieces(a, a.PiecesOrder)+" ordered")
		}
		if missing := a.Missing(); missing > 0 {
			words = append(words, pieces(a, missing)+" missing")
		}
		return strings.Join(words, ", ")
	}
	for _, c := range a.Plan.Cuts {
		if c.OnHand >= 0 {
			words = append(words, "part-bolt of "+measure.RoundedFabric(a.Stock.OnHand[c.OnHand], unitOf(a), measure.Down))
		}
	}
	switch {
	case a.Discontinued && a.Plan.Length > 0:
		words = append(words, measure.FormatFabric(a.Plan.Length, unitOf(a))+" missing")
	case a.Plan.Length > 0 && len(a.Bolts) > 0:
		words = append(words, boltsOf(a))
	case a.Plan.Length > 0:
		words = append(words, fmt.Sprintf("%s ordered", measure.FormatFabric(a.Plan.Length, unitOf(a))))
	}
	return strings.Join(words, ", ")
}

// discontinued is what the planned kits leave of articles that are no longer made,
// and for how many more kits that is enough.
func (t takings) discontinued() report.Table {
	table := report.Table{
		ID: "discontinued", Heading: "What is left of discontinued articles",
		Columns: []report.Column{{ID: "article", Title: "Article"}, {ID: "description", Title: "Description"}, {ID: "left", Title: "Left when the planned kits are cut", Wide: true}, {ID: "more", Title: "Enough for", Wide: true}, {ID: "instead", Title: "Then take"}},
		Foot:    []string{"Each figure is of that kit alone: what is cut for one kit is not there for another. A kit's length is never joined from two pieces."},
	}
	for _, l := range t.Supply.Left {
		a := &supply.Article{Price: l.Price}
		var left, more []string
		for _, length := range l.Lengths {
			left = append(left, measure.RoundedFabric(length, unitOf(a), measure.Down))
		}
		if l.Pieces > 0 {
			left = append(left, pieces(a, l.Pieces))
		}
		for _, m := range l.More {
			more = append(more, say.Many(m.Kits, "more kit")+" of "+t.Runs[m.Run].Name())
		}
		if len(more) == 0 {
			more = []string{"no more of the planned kits: use it in a new one, or sell it"}
		}
		table.Rows = append(table.Rows, row(report.T(l.SKU), report.T(l.Description), report.T(strings.Join(left, ", ")), report.T(strings.Join(more, "; or ")), report.T(l.Substitute)))
	}
	return table
}

// losing lists the kits that were under their target when the book was made;
// their figures, and the count of all that are under it, follow the what-if
// sheet.
func (w whatif) losing() report.Table {
	t := report.Table{
		ID: "under-target", Heading: "What loses money, or earns less than its target",
		Columns: []report.Column{
			{ID: "kit", Title: "Kit"}, {ID: "cost", Title: "Cost of a kit", Unit: w.Code}, {ID: "price", Title: "Price", Unit: w.Code}, {ID: "margin", Title: "Margin", Unit: "% of price"},
			{ID: "target", Title: "Target", Unit: "% of price"}, {ID: "for_target", Title: "Price for the target", Unit: w.Code},
		},
	}
	for _, k := range w.Kits {
		if under := line.UnderTarget(k.Cells, k.Costs); under.Value == nil || under.Value.Sign() == 0 {
			continue
		}
		t.Rows = append(t.Rows, row(report.T(k.Label), follow(report.Money, k.Costs.Unit), follow(report.Money, k.Costs.Price), margin(k),
			report.Cell{Kind: report.Share, Expr: costing.Ref(k.Cells.Margin.Name, k.Cells.Margin.Value)}, follow(report.Money, k.Costs.ForMargin)))
	}
	if len(t.Rows) == 0 {
		t.Lead = []string{"None when this book was made."}
	}
	return t
}

// underNow names the kits that are under their target by the inputs as they are.
func (w whatif) underNow() report.Table {
	t := report.Table{
		ID: "under-target-now", Heading: "Under target by the inputs as they are now",
		Columns: []report.Column{{ID: "what", Title: ""}, {ID: "kits", Title: "Kits"}, {ID: "which", Title: "Which", Wide: true}},
		Foot:    []string{"It follows every price, run and target that is changed on the sheets What if and Run."},
	}
	for i, which := range w.Which() {
		cells := []report.Cell{{}, {}, {Kind: report.Number, Expr: which}}
		if i == 0 {
			cells[0], cells[1] = report.T("Kits under target now"), follow(report.Number, w.Short())
		}
		t.Rows = append(t.Rows, row(cells...))
	}
	return t
}
