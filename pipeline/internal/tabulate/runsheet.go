package tabulate

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/internal/supply"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// takings is what the planned kits of a line take, over the cells that the
// what-if sheet has of them.
type takings struct {
	supply.Line
	code    string
	digits  int
	planned []costing.Input // of each run: the what-if sheet's cell, or one of its own
	own     []bool          // the run's sheet holds the cell
	kits    []*lineKit      // of each run, of the what-if sheet; nil where it has none
	make    []*report.Expr  // kits to make of each run, in words of the cell that holds it
	prices  map[string]costing.Input
	costs   []*report.Expr // of what is ordered of each article, in words of the cell that holds it; nil where nothing is
}

// take lays the line's runs over the what-if sheet. Kits of several projects
// have no common currency or supplier, and are left out.
func (w *whatif) take(run *report.Run, summaries []line.Summary, lines []supply.Line) *takings {
	var t *takings
	for _, l := range lines {
		if len(l.Runs) == 0 {
			continue
		}
		if t != nil {
			return nil
		}
		t = &takings{Line: l, code: run.Currency.Code(), digits: run.Currency.Digits(), prices: w.priceCells()}
	}
	if t == nil {
		return nil
	}
	w.orderPrices(t)
	t.costs = make([]*report.Expr, len(t.Articles))
	for i, a := range t.ordered() {
		t.costs[slices.IndexFunc(t.Articles, func(b supply.Article) bool { return b.SKU == a.SKU && b.Unit == a.Unit })] = costing.Ref(orderCost(i), t.costOf(a).Value)
	}
	kits := w.byRun(run, summaries)
	for i, r := range t.Runs {
		planned := costing.Input{Name: fmt.Sprintf("run_planned.%d", i+1), Value: big.NewRat(int64(r.Planned), 1)}
		k := kits[[3]string{r.Plan, r.Size, r.Colourway}]
		if k != nil {
			planned = k.cells.Run
		}
		t.planned, t.own, t.kits = append(t.planned, planned), append(t.own, k == nil), append(t.kits, k)
		t.make = append(t.make, costing.Ref(fmt.Sprintf("run_make.%d", i+1), big.NewRat(int64(r.Make), 1)))
	}
	return t
}

// byRun are the kits by plan, size and colourway.
func (w *whatif) byRun(run *report.Run, summaries []line.Summary) map[[3]string]*lineKit {
	kits := map[[3]string]*lineKit{}
	for at, k := range w.kits {
		if planned := summaries[at[0]].Sizes[at[1]].Planned; planned != nil {
			kits[[3]string{run.Plans[at[0]].ID, planned.Size, planned.Colourway}] = k
		}
	}
	return kits
}

// priceCells are the prices by article and unit. Of an article that projects
// price differently there is none.
func (w *whatif) priceCells() map[string]costing.Input {
	cells := map[string]costing.Input{}
	for _, k := range w.order {
		for _, l := range k.fabrics {
			if l.SKU != "" {
				cells[l.SKU+" "+l.Unit] = l.Price
			}
		}
	}
	return cells
}

// orderPrices gives articles of which as much is ordered that another price holds
// than in a kit a price of their own.
func (w *whatif) orderPrices(t *takings) {
	for _, a := range t.ordered() {
		key := a.SKU + " " + string(a.Unit)
		if in, ok := t.prices[key]; ok && in.Value.Cmp(a.Each) == 0 {
			continue
		}
		for range a.Uses {
			t.prices[key] = w.prices.share("order_price_"+a.SKU, strings.TrimSuffix(a.SKU+", "+a.Description, ", ")+", as ordered", string(a.Unit), a.Each)
		}
	}
}

// runSheet is how many of each kit are to be made.
func (t *takings) runSheet() report.Sheet {
	table := report.Table{
		ID: "run", Heading: "Planned run by kit",
		Lead: []string{"What is packed already is taken off the run. The bolt plan holds for the kits that it was made for."},
		Columns: []report.Column{
			{ID: "kit", Title: "Kit"}, {ID: "title", Title: "Title"}, {ID: "planned", Title: "Planned", Unit: "kits"}, {ID: "shelf", Title: "On the shelf", Unit: "kits"},
			{ID: "make", Title: "To make", Unit: "kits"}, {ID: "needed_by", Title: "Needed by"}, {ID: "bolt_plan", Title: "Bolt plan"},
			{ID: "bought", Title: "Ordered for them", Unit: t.code}, {ID: "unit_used", Title: "Cost of a kit, used basis", Unit: t.code}, {ID: "unit_bought", Title: "Cost of a kit, bought basis", Unit: t.code},
		},
		Foot: []string{"Used basis: fabric as cut for the kit. Bought basis: what is ordered for the kits to be made, each article's order shared by what each kit takes of it, remnants with it; what is on hand has been paid for.",
			"The bought basis is of the order that the bolt plan makes, and has no figure while any run is another than it was made for."},
	}
	for i, r := range t.Runs {
		shelf := costing.Input{Name: fmt.Sprintf("run_shelf.%d", i+1), Value: big.NewRat(int64(r.Shelf), 1)}
		planned := report.Cell{Kind: report.Number, Expr: costing.Ref(t.planned[i].Name, t.planned[i].Value)}
		if t.own[i] {
			planned = wholeNumber(t.planned[i], "How many of these kits are to be made.")
		}
		made := costing.Most(costing.Less(costing.Ref(t.planned[i].Name, t.planned[i].Value), costing.Ref(shelf.Name, shelf.Value)), costing.Fixed(0))
		table.Rows = append(table.Rows, row(report.T(r.Name()), report.T(r.Title), planned,
			wholeNumber(shelf, "How many are packed and on the shelf."),
			report.Cell{Kind: report.Number, Name: t.make[i].Name, Expr: costing.Round(made, 0)}, dated(r.NeededBy), t.state(i)))
		table.Rows[i].Cells = append(table.Rows[i].Cells, t.bought(i)...)
	}
	return report.Sheet{ID: "run", Title: "Run", Wide: true, Still: 1, Tables: []report.Table{table, t.shared()}}
}

// bought is what is ordered for a run, and what a kit costs on either basis.
func (t *takings) bought(i int) []report.Cell {
	shares, ok := t.Shares(i)
	k := t.kits[i]
	if !ok || k == nil {
		return nil
	}
	var parts []*report.Expr
	for _, s := range shares {
		parts = append(parts, costing.Times(t.costs[s.Article], &report.Expr{Op: report.Const, Value: s.Of}))
	}
	holds := func(e *report.Expr) *report.Expr {
		return costing.If(costing.Exceeds(costing.Of(t.differs()), costing.Fixed(0)), costing.Words("run again"), e)
	}
	bought := costing.Result{Name: fmt.Sprintf("run_bought.%d", i+1), Expr: holds(costing.Round(costing.Sum(parts...), t.digits))}
	each := costing.Round(costing.Quotient(costing.Of(bought), t.make[i]), t.digits)
	return []report.Cell{
		result(report.Money, bought), follow(report.Money, k.costs.Unit),
		{Kind: report.Money, Name: fmt.Sprintf("unit_bought.%d", i+1), Expr: holds(costing.Sum(costing.Less(costing.Of(k.costs.Unit), costing.Of(k.costs.Fabric)), each))},
	}
}

// differs is by how many kits the runs are other than those that the bolt plan was
// made for.
func (t *takings) differs() costing.Result {
	var all []*report.Expr
	for i := range t.Runs {
		all = append(all, costing.Of(t.differsBy(i)))
	}
	return costing.Result{Name: "bolt_plan_differs", Expr: costing.Round(costing.Sum(all...), 0)}
}

func (t *takings) differsBy(i int) costing.Result {
	made := costing.Fixed(int64(t.Runs[i].Make))
	return costing.Result{Name: fmt.Sprintf("bolt_plan_differs.%d", i+1), Expr: costing.Round(costing.Most(costing.Less(t.make[i], made), costing.Less(made, t.make[i])), 0)}
}

func dated(day string) report.Cell {
	if day == "" {
		return report.Cell{}
	}
	return report.T(day)
}

// state says whether the bolt plan still holds for a run, while somebody changes
// it.
func (t *takings) state(i int) report.Cell {
	made := costing.Fixed(int64(t.Runs[i].Make))
	same := costing.Equals(t.make[i], made)
	return report.Cell{Kind: report.Number, Mark: costing.Not(same),
		Expr: costing.If(same, costing.Words("as planned"), costing.Join(0, costing.Words("made for "), made, costing.Words(" kits: run again")))}
}

// shared lists the articles that several kits take.
func (t *takings) shared() report.Table {
	table := report.Table{
		ID: "shared-fabrics", Heading: "Fabrics that several kits share",
		Columns: []report.Column{{ID: "article", Title: "Article"}, {ID: "description", Title: "Description"}, {ID: "kits", Title: "Kits", Wide: true}},
	}
	for i := range t.Articles {
		if a := &t.Articles[i]; len(a.Uses) > 1 {
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
func (t *takings) kitsOf(a *supply.Article, most int) string {
	var words []string
	for _, u := range a.Uses[:min(most, len(a.Uses))] {
		r := t.Runs[u.Run]
		each := pieces(a, u.Pieces)
		if a.ByLength() {
			each = measure.FormatCut(u.Length, unitOf(a))
		}
		words = append(words, fmt.Sprintf("%d of %s at %s", r.Make, r.Name(), each))
	}
	if more := len(a.Uses) - most; more > 0 {
		words = append(words, many(int64(more), "more kit"))
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
		return many(n, "piece")
	}
	return many(n, string(a.Unit))
}
