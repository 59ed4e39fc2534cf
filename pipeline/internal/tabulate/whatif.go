package tabulate

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/report"
)

// whatif is the kits of a line over inputs that they share.
type whatif struct {
	code    string
	order   []*lineKit
	kits    map[[2]int]*lineKit // by plan and size
	rates   shared
	shares  shared
	margins shared
	prices  shared
	unfit   []string // plans left out because they are not proved
	mixed   bool     // the kits are in several currencies, and none is worked out
}

// lineKit is the kit of one size in the line.
type lineKit struct {
	label   string
	fabrics []line.Line
	things  []line.Line
	cells   costing.Inputs
	costs   costing.Costs
	target  costing.Input  // that it shares with other kits; without a name where it has its own
	under   costing.Result // 1 where the margin is under the target, 0 where it is not
}

// shared are inputs that several kits have in common: those of one key and of
// one value.
type shared struct {
	list  []sharedInput
	at    map[string]int
	names map[string]bool
}

type sharedInput struct {
	costing.Input
	says, per string
	users     int
}

// share is the input of a key and a value, under the name that it has in the
// line.
func (s *shared) share(key, says, per string, value *big.Rat) costing.Input {
	full := key + "|" + per + "|" + value.RatString()
	i, known := s.at[full]
	if !known {
		if s.at == nil {
			s.at, s.names = map[string]int{}, map[string]bool{}
		}
		i = len(s.list)
		name := "line_" + key
		if s.names[name] {
			name = fmt.Sprintf("%s.%d", name, i+1)
		}
		s.at[full], s.names[name] = i, true
		s.list = append(s.list, sharedInput{Input: costing.Input{Name: name, Value: value}, says: says, per: per})
	}
	s.list[i].users++
	return s.list[i].Input
}

// whatIf gathers the kits of the proved plans.
func whatIf(run *report.Run, summaries []line.Summary) *whatif {
	w := &whatif{kits: map[[2]int]*lineKit{}}
	currencies := map[string]bool{}
	for i, p := range run.Plans {
		if i >= len(summaries) {
			break
		}
		failed := diag.Worst(p.Findings) == diag.Error
		for j, s := range summaries[i].Sizes {
			switch {
			case s.Kit == nil:
			case failed:
				w.leaveOut(name(p))
			default:
				currencies[s.Kit.Currency] = true
				w.code = s.Kit.Currency
				w.add([2]int{i, j}, p, s)
			}
		}
	}
	if len(currencies) > 1 {
		return &whatif{mixed: true}
	}
	return w
}

func (w *whatif) leaveOut(plan string) {
	if !slices.Contains(w.unfit, plan) {
		w.unfit = append(w.unfit, plan)
	}
}

func (w *whatif) add(at [2]int, p report.Outcome, s line.SizeSummary) {
	k := &lineKit{label: name(p) + ", " + s.Name}
	k.cells = s.Kit.Inputs.WithSuffix(fmt.Sprintf(".%d", len(w.order)+1))
	k.cells.Rate = w.rates.share("labour_rate", "Labour", "hour", k.cells.Rate.Value)
	k.cells.FeeEach = w.rates.share("fee_each", "Payment fee, fixed part", "sale", k.cells.FeeEach.Value)
	k.cells.Spoilage = w.shares.share("spoilage", "Spoiled kits", "kits made well", k.cells.Spoilage.Value)
	k.cells.FeeShare = w.shares.share("fee_share", "Payment fee", "price", k.cells.FeeShare.Value)
	if !s.Kit.OwnMargin {
		k.target = w.margins.share("target_margin", "Target margin", "price", k.cells.Margin.Value)
	}
	k.fabrics = w.price(p, k.cells, s.Kit.Fabrics, "quantity_%d"+k.cells.Suffix)
	k.things = w.price(p, k.cells, s.Kit.Things, "things_%d"+k.cells.Suffix)
	k.costs = costing.Price(k.cells, items(k.fabrics), items(k.things))
	k.under = costing.Result{Name: "under_target" + k.cells.Suffix, Expr: costing.If(underTarget(k.cells, k.costs), costing.Fixed(1), costing.Fixed(0))}
	w.order = append(w.order, k)
	w.kits[at] = k
}

// price gives lines of a kit their quantities' names and the prices that they
// share with other kits.
func (w *whatif) price(p report.Outcome, cells costing.Inputs, lines []line.Line, quantity string) []line.Line {
	lines = slices.Clone(lines)
	for i := range lines {
		l := &lines[i]
		key, says := "price_"+l.SKU, strings.TrimSuffix(l.SKU+", "+l.Article, ", ")
		if l.SKU == "" {
			key, says = fmt.Sprintf("price_%s_%s", p.ID, l.Fabric), name(p)+", "+l.Fabric
		}
		l.Item = cells.Item(
			costing.Input{Name: fmt.Sprintf(quantity, i+1), Value: l.Quantity.Value},
			w.prices.share(key, says, l.Unit, l.Price.Value),
		)
	}
	return lines
}

func items(lines []line.Line) []costing.Item {
	var all []costing.Item
	for _, l := range lines {
		all = append(all, l.Item)
	}
	return all
}

// follow shows what another cell works out.
func follow(kind report.CellKind, r costing.Result) report.Cell {
	return report.Cell{Kind: kind, Expr: costing.Of(r)}
}

// margin is the margin at the price taken, and stands out under the target.
func (k *lineKit) margin() report.Cell {
	c := follow(report.Share, k.costs.Margin)
	c.Mark = underTarget(k.cells, k.costs)
	return c
}

func (w *whatif) sheets() []report.Sheet {
	if len(w.order) == 0 {
		return nil
	}
	return []report.Sheet{
		{ID: "what-if", Title: "What if", Wide: true, Still: 1,
			Tables: []report.Table{w.rateTable(), w.priceTable(), w.kitTable()}, Charts: w.marginCharts()},
		{ID: "cost-make-up", Title: "Cost make-up", Wide: true, Still: 1, Tables: []report.Table{w.makeUp()}, Charts: w.makeUpCharts()},
		{ID: "kit-fabrics", Title: "Kit fabrics", Tables: []report.Table{w.fabrics()}},
	}
}

func (w *whatif) rateTable() report.Table {
	t := report.Table{
		ID: "what-if-rates", Heading: "Labour, fees and target",
		Lead:    []string{"Change a price, a run or a target here, and every sheet of this workbook follows; no plan is changed by it."},
		Columns: []report.Column{{ID: "what", Title: "Input"}, {ID: "value", Title: "Value"}, {ID: "per", Title: "Per"}, {ID: "used", Title: "Used by", Unit: "kits"}},
	}
	t.Rows = append(t.Rows, w.rates.rows(report.Money)...)
	t.Rows = append(t.Rows, w.shares.rows(report.Share)...)
	t.Rows = append(t.Rows, w.margins.rows(report.Share)...)
	return t
}

func (w *whatif) priceTable() report.Table {
	t := report.Table{
		ID: "what-if-prices", Heading: "Prices",
		Columns: []report.Column{{ID: "article", Title: "Article"}, {ID: "price", Title: "Price", Unit: w.code}, {ID: "per", Title: "Per"}, {ID: "used", Title: "Used by", Unit: "kits"}},
	}
	t.Rows = w.prices.rows(report.Money)
	slices.SortStableFunc(t.Rows, func(a, b report.Row) int { return strings.Compare(a.Cells[0].Text, b.Cells[0].Text) })
	return t
}

// rows lists the inputs. Several may be called the same, where projects differ.
func (s *shared) rows(kind report.CellKind) []report.Row {
	var rows []report.Row
	for _, in := range s.list {
		rows = append(rows, row(report.T(in.says), input(kind, in.Input), report.T(in.per), report.N(int64(in.users))))
	}
	return rows
}
