package figure_test

import (
	"math/big"
	"testing"

	"yardproof/exporters/internal/figure"
	"yardproof/exporters/internal/sample"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

func TestText(t *testing.T) {
	half := (measure.Inch / 2).Surd()
	tests := []struct {
		cell report.Cell
		want string
	}{
		{report.Cell{}, ""},
		{report.T("words"), "words"},
		{report.N(-12), "-12"},
		{report.L(half.MulInt(5), measure.In), "2 1/2 in"},
		{report.L(measure.Root2().MulInt(int64(6*measure.Inch)), measure.In), "about 8.4853 in"},
		{report.F(27*measure.Inch, measure.In), "3/4 yd"},
		{report.F(27*measure.Inch+1, measure.In), "about 0.751 yd"},
		{report.F(110*measure.Centimetre, measure.Cm), "1.1 m"},
		{report.Cell{Kind: report.Fabric, Exact: measure.Root2().MulInt(int64(measure.Yard))}, "about 1.414 yd"},
		{report.Cell{Kind: report.Money, Number: big.NewRat(6, 1)}, "USD 6.00"},
		{report.Cell{Kind: report.Money, Number: big.NewRat(-1, 2)}, "USD -0.50"},
		{report.Cell{Kind: report.Money, Number: big.NewRat(10, 3)}, "about USD 3.3333"},
		{report.Cell{Kind: report.Money, Expr: &report.Expr{Text: "never"}}, "never"},
		{report.Cell{Kind: report.Money}, ""},
		{report.Cell{Kind: report.Share, Number: big.NewRat(1, 4)}, "25 %"},
		{report.Cell{Kind: report.Share, Number: big.NewRat(2, 3)}, "about 66.67 %"},
		{report.Cell{Kind: report.Number, Expr: &report.Expr{Value: big.NewRat(3, 2)}}, "1.5"},
		{report.Cell{Kind: report.Number, Number: big.NewRat(1, 1_000_000)}, "0.000001"},
		{report.Cell{Kind: report.Number, Number: big.NewRat(1, 10_000_000)}, "about 0.0000"},
	}
	for _, test := range tests {
		if got := figure.Text(test.cell, sample.Dollars()); got != test.want {
			t.Errorf("%+v: %q, want %q", test.cell, got, test.want)
		}
	}
	if got := figure.Text(report.Cell{Kind: report.Money, Number: big.NewRat(6, 1)}, measure.Currency{}); got != "6" {
		t.Errorf("without a currency: %q", got)
	}
}

// Work that two cells share is listed once, work behind a term after it.
func TestCollect(t *testing.T) {
	w := figure.Collect(sample.Plan().Sheets)
	if len(w.List) != 2 || w.List[0].What != "squares a tube" || w.List[1].What != "height of the half square" {
		t.Fatalf("%d listed", len(w.List))
	}
	if w.Number(w.List[1]) != 2 || w.Number(nil) != 0 || w.Number(&report.Work{}) != 0 {
		t.Error("numbers are wrong")
	}
}

// A circle of work would be the fault of whoever built it; it must not hang
// the export.
func TestCollectEndsInACircle(t *testing.T) {
	work := &report.Work{}
	work.Terms = []report.Term{{Value: report.Cell{Why: work}}}
	sheets := []report.Sheet{{Tables: []report.Table{{Rows: []report.Row{{Cells: []report.Cell{{Why: work}}}}}}}}
	if got := len(figure.Collect(sheets).List); got != 1 {
		t.Errorf("%d listed", got)
	}
}

// What a spreadsheet rounds to the nearest is handed to it rounded.
func TestShown(t *testing.T) {
	l := 27*measure.Inch + 1
	for _, c := range []struct {
		cell report.Cell
		want string
	}{
		{report.F(l, measure.In), "0.751"}, {report.F(l, measure.In).There(), "0.750"}, {report.F(2*27*measure.Inch-1, measure.In), "1.500"}, {report.F(2*27*measure.Inch-1, measure.In).There(), "1.499"},
		{report.Cut(l.Surd(), measure.Cm), "68.581"}, {report.L(l.Surd(), measure.Cm), "68.580"},
	} {
		if got := figure.Shown(c.cell, 3).Number(3); got != c.want {
			t.Errorf("%s is shown of %s, want %s", got, c.cell.Exact, c.want)
		}
	}
}
