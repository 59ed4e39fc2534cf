package tabulate_test

import (
	"math/big"
	"slices"
	"strings"
	"testing"

	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/internal/supply"
	"yardproof/pipeline/internal/tabulate"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// threeFabrics is 20 kits of 1 3/8, 7/8 and 1/2 yd from 15-yd bolts at 6.00,
// 6.00 and 5.50 a yard, which take 442.50 in all (worked by hand).
func threeFabrics(t *testing.T) []report.Sheet {
	t.Helper()
	currency, _ := measure.ParseCurrency("EUR")
	list := plan.NewPriceList(currency)
	text := "sku,description,unit,price,supplier,bolt,lead_days\nA,,yd,6.00,Mill,15,10\nB,,yd,6.00,Mill,15,10\nC,,yd,5.50,Weavers,15,\n"
	if problems := list.Read(source.New("prices.csv", []byte(text)), plan.ListSource{}); len(problems) > 0 {
		t.Fatal(problems)
	}
	eighth := measure.Yard / 8
	kit := supply.Asked{Plan: "steps", Title: "Steps", Kit: supply.Kit{Size: "throw", Planned: 20, NeededBy: "2027-03-20", Takes: []supply.Take{
		{SKU: "A", What: "Ground", Length: 11 * eighth, Step: eighth}, {SKU: "B", What: "Edge", Length: 7 * eighth, Step: eighth}, {SKU: "C", What: "Back", Length: 4 * eighth, Step: eighth},
	}}}
	run := &report.Run{Currency: currency, Plans: []report.Outcome{{ID: "steps", Title: "Steps"}}}
	summaries := []line.Summary{{Sizes: []line.SizeSummary{{Name: "throw", Planned: &kit.Kit}}}}
	return tabulate.Line(run, summaries, supply.Of([]supply.Asked{kit}, list, nil))
}

func TestOrdersAddUp(t *testing.T) {
	sheets := threeFabrics(t)
	if sheets[0].ID != "monday" {
		t.Errorf("the book opens on %s", sheets[0].ID)
	}
	rows := sheetOf(sheets, "orders").Tables[0].Rows
	var words []string
	for _, r := range rows {
		words = append(words, r.Cells[0].Text+" "+r.Cells[1].Text+" "+r.Cells[3].Text+" "+r.Cells[7].Expr.Value.FloatString(2)+" "+r.Cells[8].Text)
	}
	want := []string{
		"Mill A 2 bolts of 15 yd 180.00 2027-03-10", "Mill B 2 bolts of 15 yd 180.00 2027-03-10", "Mill   360.00 ",
		"Weavers C 1 bolt of 15 yd 82.50 2027-03-20", "Weavers   82.50 ", "All suppliers   442.50 ",
	}
	if !slices.Equal(words, want) {
		t.Errorf("got %q", words)
	}
	if lead, beyond := rows[0].Cells[9], rows[0].Cells[10]; lead.Int != 10 || beyond.Exact != (5*measure.Yard/2).Surd() {
		t.Errorf("%+v, %+v", lead, beyond)
	}
	if none := rows[3].Cells[9]; none.Kind != report.Empty {
		t.Errorf("the list names no lead time of C: %+v", none)
	}
	if left := rows[0].Cells[11].Text; left != "2 of 1 1/4 yd" {
		t.Errorf("two bolts of ten kits leave %s", left)
	}
}

// A bolt plan says for how many kits it was made, and stands out while the run is
// another.
func TestBoltPlanSaysWhatItWasMadeFor(t *testing.T) {
	sheets := threeFabrics(t)
	row := sheetOf(sheets, "run").Tables[0].Rows[0]
	if state := row.Cells[7]; state.Expr.Text != "as planned" || state.Marked() {
		t.Errorf("%+v", state)
	}
	if planned, shelf := row.Cells[2], row.Cells[3]; !planned.Input || !shelf.Input || planned.Number.Cmp(big.NewRat(20, 1)) != 0 {
		t.Errorf("%+v, %+v", planned, shelf)
	}
	made := row.Cells[7].Expr.Args[2]
	if made.Text != "made for 20 kits: run again" {
		t.Errorf("%+v", made)
	}
	bolts := sheetOf(sheets, "bolts").Tables[1].Rows
	if cut := bolts[1].Cells; cut[1].Text != "bolt of 15 yd" || cut[2].Int != 2 || cut[3].Text != "10 at 1 3/8 yd for steps/throw" || cut[5].Kind != report.Box {
		t.Errorf("%+v", cut)
	}
	if !strings.Contains(bolts[0].Cells[0].Text, "Order of 30 yd for 180.00 EUR, 2 1/2 yd beyond need: proved") {
		t.Errorf("%+v", bolts[0])
	}
}

// What follows from the runs says so while one is another: orders, their totals
// and what Monday's sheet has of them.
func TestOrdersOfAnotherRun(t *testing.T) {
	sheets := threeFabrics(t)
	again := func(what string, c report.Cell) {
		t.Helper()
		if c.Expr == nil || c.Expr.Op != report.If || c.Expr.Args[1].Text != line.RunAgain || c.Marked() || c.Mark == nil {
			t.Errorf("%s: %+v", what, c)
		}
	}
	rows := sheetOf(sheets, "orders").Tables[0].Rows
	again("an order", rows[0].Cells[7])
	again("a supplier's total", rows[2].Cells[7])
	again("the total", rows[len(rows)-1].Cells[7])
	if quantity := rows[0].Cells[4]; quantity.Mark == nil || quantity.Marked() {
		t.Errorf("%+v", quantity)
	}
	again("the bolt plan", sheetOf(sheets, "bolts").Tables[0].Rows[0].Cells[1])
	monday := sheetOf(sheets, "monday")
	for _, table := range monday.Tables {
		switch table.ID {
		case "cut":
			again("what to cut", table.Rows[0].Cells[4])
		case "order":
			again("Monday's total", table.Rows[len(table.Rows)-1].Cells[7])
		}
	}
}
