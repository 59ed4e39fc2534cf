package tabulate_test

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/internal/tabulate"
	"yardproof/pipeline/report"
)

// kept is an invented kit of so many minutes: 2 yd of one article, and 1 yd of
// the same again in another role.
func kept(size string, minutes int64, ownMargin bool) line.SizeSummary {
	in := func(name string, num, den int64) costing.Input {
		return costing.Input{Name: name, Value: big.NewRat(num, den)}
	}
	suffix := "." + size
	k := costing.Inputs{
		Suffix: suffix, Digits: 2,
		Minutes: in("minutes"+suffix, minutes, 1), Rate: in("labour_rate", 18, 1), Packaging: in("packaging"+suffix, 2, 1), Pattern: in("pattern"+suffix, 4, 1),
		Fixed: in("fixed_costs"+suffix, 100, 1), Margin: in("target_margin"+suffix, 1, 2), Asked: in("price_asked"+suffix, 0, 1), Run: in("kits_planned"+suffix, 20, 1),
		Spoilage: in("spoilage", 0, 1), FeeShare: in("fee_share", 0, 1), FeeEach: in("fee_each", 0, 1), Trade: in("trade_share", 1, 2), Bought: in("fabric_bought"+suffix, 0, 1),
	}
	fabrics := []line.Line{
		{Fabric: "Ground", SKU: "P-1", Article: "Plain", Unit: "yd", Item: k.Item(in("fabric_quantity.a"+suffix, 2, 1), in("fabric_price.a", 10, 1), nil)},
		{Fabric: "Binding", SKU: "P-1", Article: "Plain", Unit: "yd", Item: k.Item(in("fabric_quantity.b"+suffix, 1, 1), in("fabric_price.b", 10, 1), nil)},
	}
	costs := costing.Price(k, []costing.Item{fabrics[0].Item, fabrics[1].Item}, nil)
	return line.SizeSummary{Name: size, Cost: costs.Unit.Value, Price: costs.Price.Value,
		Kit: &line.Kit{Currency: "EUR", OwnMargin: ownMargin, Fabrics: fabrics, Inputs: k}}
}

func lineOf(plans int) (*report.Run, []line.Summary) {
	run := &report.Run{}
	var summaries []line.Summary
	for i := range plans {
		run.Plans = append(run.Plans, report.Outcome{ID: fmt.Sprint("p", i), Title: fmt.Sprint("Plan ", i)})
		summaries = append(summaries, line.Summary{Sizes: []line.SizeSummary{kept("cot", 20, false), kept("bed", 30, i == 0)}})
	}
	return run, summaries
}

// sheetOf finds a sheet by its ID; nil where there is none.
func sheetOf(sheets []report.Sheet, id string) *report.Sheet {
	for i := range sheets {
		if sheets[i].ID == id {
			return &sheets[i]
		}
	}
	return nil
}

func cellsOf(sheets []report.Sheet) (all []report.Cell) {
	for _, s := range sheets {
		for _, t := range s.Tables {
			for _, r := range t.Rows {
				all = append(all, r.Cells...)
			}
		}
	}
	return all
}

// Every cell of a line's workbook has a name of its own and every reference
// finds a cell, also where one article has two roles in a kit.
func TestWhatIfNames(t *testing.T) {
	names, wanted := map[string]int{}, map[string]bool{}
	for _, c := range cellsOf(tabulate.Line(lineOf(3))) {
		if c.Name != "" {
			names[strings.ToLower(c.Name)]++
		}
		refer(c.Expr, wanted)
		refer(c.Mark, wanted)
	}
	for name, n := range names {
		if n > 1 {
			t.Errorf("%d cells are called %s", n, name)
		}
	}
	for name := range wanted {
		if names[strings.ToLower(name)] == 0 {
			t.Errorf("no cell is called %s", name)
		}
	}
	if len(wanted) < 50 {
		t.Errorf("only %d cells are referred to", len(wanted))
	}
}

// What kits have in common is asked for once: one labour rate, one target, one
// price an article. A kit with a target of its own has an input of its own.
func TestWhatIfShares(t *testing.T) {
	s := sheetOf(tabulate.Line(lineOf(3)), "what-if")
	rates, prices, kits := s.Tables[0].Rows, s.Tables[1].Rows, s.Tables[2].Rows
	if len(rates) != 5 || rates[0].Cells[3].Int != 6 || rates[4].Cells[3].Int != 5 {
		t.Errorf("%d rates, used by %d and %d", len(rates), rates[0].Cells[3].Int, rates[4].Cells[3].Int)
	}
	if len(prices) != 1 || prices[0].Cells[0].Text != "P-1, Plain" {
		t.Errorf("%d prices", len(prices))
	}
	own := 0
	for _, r := range kits[:6] {
		if r.Cells[3].Input {
			own++
		}
		if !r.Cells[1].Input || r.Cells[4].Expr == nil || r.Cells[8].Mark == nil {
			t.Errorf("%s lacks an input, a formula or a mark", r.Cells[0].Text)
		}
	}
	if own != 1 {
		t.Errorf("%d kits have a target of their own", own)
	}
}

// Worked by hand: 3 yd at 10, 20 min at 18 an hour, 2 for packaging and 4 for
// the pattern are 42; at a margin of one half that sells for 84. Twenty kits
// cost 840 and 100, and earn 1,680.
func TestWhatIfWorkedKit(t *testing.T) {
	run, summaries := lineOf(1)
	cells := sheetOf(tabulate.Line(run, summaries), "what-if").Tables[2].Rows[0].Cells
	for i, want := range map[int]int64{4: 42, 5: 84, 6: 84, 7: 84, 9: 0, 10: 940, 11: 740} {
		if got := cells[i].Expr.Value; got.Cmp(big.NewRat(want, 1)) != 0 {
			t.Errorf("column %d is %v, want %d", i, got, want)
		}
	}
	if cells[8].Marked() {
		t.Error("a margin at its target stands out")
	}
	summaries[0].Sizes[0].Kit.Inputs.Asked.Value = big.NewRat(8399, 100)
	short := sheetOf(tabulate.Line(run, summaries), "what-if").Tables[2].Rows
	if c := short[0].Cells[8]; !c.Marked() || short[0].Cells[9].Expr.Value.Sign() != 1 {
		t.Errorf("a margin of %v does not stand out under a half", c.Expr.Value)
	}
	var losing, now report.Table
	for _, table := range sheetOf(tabulate.Line(run, summaries), "monday").Tables {
		switch table.ID {
		case "under-target":
			losing = table
		case "under-target-now":
			now = table
		}
	}
	if total := now.Rows[0].Cells[1].Expr; len(losing.Rows) != 1 || total.Value.Cmp(big.NewRat(1, 1)) != 0 || total.Name != "kits_under_target" {
		t.Errorf("Monday's sheet has %d rows and counts %v", len(losing.Rows), total.Value)
	}
	if which := now.Rows[0].Cells[2].Expr; which.Text != losing.Rows[0].Cells[0].Text+"; " || len(which.Args) != len(short) {
		t.Errorf("Monday's sheet names %q of %d kits", which.Text, len(which.Args)-1)
	}
}

// Worked by hand: fees of 60 % of the price and a target of 40 % leave nothing for
// the cost, so that without a price asked there is none. The kit is under its
// target, and the sums of the line keep what is known of the others.
func TestFeesAndTargetThatLeaveNoPrice(t *testing.T) {
	run, summaries := lineOf(1)
	in := &summaries[0].Sizes[0].Kit.Inputs
	in.FeeShare.Value, in.Margin.Value, summaries[0].Sizes[0].Kit.OwnMargin = big.NewRat(6, 10), big.NewRat(4, 10), true
	table := sheetOf(tabulate.Line(run, summaries), "what-if").Tables[2]
	kit, other, total := table.Rows[0].Cells, table.Rows[1].Cells, table.Rows[len(table.Rows)-1].Cells
	if kit[6].Expr.Text != "never" || kit[11].Expr.Value != nil || kit[9].Expr.Value.Cmp(big.NewRat(1, 1)) != 0 {
		t.Errorf("price %q, profit %v, under target %v", kit[6].Expr.Text, kit[11].Expr.Value, kit[9].Expr.Value)
	}
	if total[11].Expr.Value.Cmp(other[11].Expr.Value) != 0 || total[9].Expr.Value.Cmp(big.NewRat(1, 1)) != 0 || total[10].Expr.Value == nil {
		t.Errorf("in all %v, %v, %v", total[9].Expr.Value, total[10].Expr.Value, total[11].Expr.Value)
	}
	if foot := strings.Join(table.Foot, " "); !strings.Contains(foot, kit[0].Text+".") {
		t.Errorf("the table does not say which: %q", foot)
	}
	in.FeeShare.Value = big.NewRat(59, 100)
	if kit = sheetOf(tabulate.Line(run, summaries), "what-if").Tables[2].Rows[0].Cells; kit[6].Expr.Value == nil || kit[9].Expr.Value.Sign() != 0 {
		t.Errorf("one hundredth is left: price %v", kit[6].Expr)
	}
}

// Nothing is priced by a plan with errors, and amounts in two currencies are
// not added up.
func TestWhatIfLeavesOut(t *testing.T) {
	run, summaries := lineOf(2)
	run.Plans[0].Findings = []diag.Finding{{Level: diag.Error, Rule: "yield/none"}}
	table := sheetOf(tabulate.Line(run, summaries), "what-if").Tables[2]
	if len(table.Rows) != 3 || !strings.Contains(strings.Join(table.Foot, " "), "left out: Plan 0.") {
		t.Errorf("%d rows, %q", len(table.Rows), table.Foot)
	}
	run, summaries = lineOf(2)
	summaries[1].Sizes[0].Kit.Currency = "USD"
	sheets := tabulate.Line(run, summaries)
	if sheetOf(sheets, "what-if") != nil || !strings.Contains(strings.Join(sheetOf(sheets, "line").Tables[0].Foot, " "), "several currencies") {
		t.Error("kits in two currencies are added up")
	}
	if sheets := tabulate.Line(&report.Run{Plans: []report.Outcome{{ID: "p"}}}, []line.Summary{{Sizes: []line.SizeSummary{{Name: "cot"}}}}); len(sheets) != 2 {
		t.Errorf("a line without kits has %d sheets", len(sheets))
	}
}

// A long line has charts of a page each, which show every kit once as far as
// they go, and rows that are there.
func TestWhatIfCharts(t *testing.T) {
	for plans, charts := range map[int]int{1: 1, 12: 1, 13: 2, 96: 8, 500: 8} {
		s := sheetOf(tabulate.Line(lineOf(plans)), "cost-make-up")
		next := 0
		for _, c := range s.Charts {
			if c.From != next || c.To <= c.From || c.To > 2*plans {
				t.Errorf("%d plans: chart %s has the rows %d to %d", plans, c.ID, c.From, c.To)
			}
			next = c.To
		}
		if len(s.Charts) != charts || plans <= 96 && next != 2*plans {
			t.Errorf("%d plans: %d charts of %d rows", plans, len(s.Charts), next)
		}
	}
}
