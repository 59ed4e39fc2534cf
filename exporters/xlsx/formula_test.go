package xlsx

import (
	"math"
	"math/big"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"yardproof/exporters/internal/sample"
	"yardproof/pipeline/report"
)

// eachFormula calls use for every formula of a workbook.
func eachFormula(t *testing.T, f *excelize.File, use func(sheet, cell, formula, cached string)) {
	t.Helper()
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
		check(t, err)
		for i, row := range rows {
			for j, cached := range row {
				cell, err := excelize.CoordinatesToCellName(j+1, i+1)
				check(t, err)
				formula, err := f.GetCellFormula(sheet, cell)
				check(t, err)
				if formula != "" {
					use(sheet, cell, formula, cached)
				}
			}
		}
	}
}

// A program that does not calculate shows the value beside a formula, one
// that does must come to the same. The library calculates on its own.
func TestCachedValuesAreWhatFormulasComeTo(t *testing.T) {
	f := open(t, planBytes(t, sample.Plan()))
	formulas := 0
	eachFormula(t, f, func(sheet, cell, formula, cached string) {
		formulas++
		calculated, err := f.CalcCellValue(sheet, cell, excelize.Options{RawCellValue: true})
		if err != nil {
			t.Errorf("%s!%s =%s: %v", sheet, cell, formula, err)
			return
		}
		want, err := strconv.ParseFloat(calculated, 64)
		if err != nil {
			if cached != calculated {
				t.Errorf("%s!%s =%s stores %q, comes to %q", sheet, cell, formula, cached, calculated)
			}
			return
		}
		if got, err := strconv.ParseFloat(cached, 64); err != nil || math.Abs(got-want) > 1e-9 {
			t.Errorf("%s!%s =%s stores %q, comes to %q", sheet, cell, formula, cached, calculated)
		}
	})
	if formulas != 8 {
		t.Errorf("%d formulas, the sample has 8", formulas)
	}
}

// Changing an input must move what depends on it.
func TestFormulasAreLive(t *testing.T) {
	f := open(t, planBytes(t, sample.Plan()))
	check(t, f.SetCellValue("Inputs", "B7", 20))
	for cell, want := range map[string]string{
		"B6": "25",   // 1 1/4 yd at 20
		"B8": "33.5", // and thread at 8.50
	} {
		got, err := f.CalcCellValue("Kit costing", cell, excelize.Options{RawCellValue: true})
		check(t, err)
		if got != want {
			t.Errorf("%s comes to %s, want %s", cell, got, want)
		}
	}
	check(t, f.SetCellValue("Inputs", "B9", 0))
	got, err := f.CalcCellValue("Kit costing", "B9", excelize.Options{RawCellValue: true})
	check(t, err)
	if got != report.Unknown {
		t.Errorf("the margin on a price of 0 is %q, want %q", got, report.Unknown)
	}
}

func TestFormulaKeepsTheTree(t *testing.T) {
	c := func(num, den int64) *report.Expr { return &report.Expr{Op: report.Const, Value: big.NewRat(num, den)} }
	n := func(name string) *report.Expr { return &report.Expr{Op: report.Ref, Name: name} }
	e := func(op report.Op, args ...*report.Expr) *report.Expr { return &report.Expr{Op: op, Args: args} }
	text := &report.Expr{Op: report.Const, Text: `say "never"`}
	up := e(report.RoundUp, e(report.Div, n("a"), c(3, 1)))
	up.Digits = 1
	tests := []struct {
		tree *report.Expr
		want string
	}{
		{e(report.Add, n("a"), n("b"), e(report.Sub, n("c"), n("d"))), "a + b + c - d"},
		{e(report.Sub, n("a"), e(report.Sub, n("b"), n("c"))), "a - (b - c)"},
		{e(report.Sub, n("a"), e(report.Add, n("b"), n("c"))), "a - (b + c)"},
		{e(report.Sub, e(report.Sub, n("a"), n("b")), n("c")), "a - b - c"},
		{e(report.Mul, e(report.Add, n("a"), n("b")), n("c")), "(a + b) * c"},
		{e(report.Mul, n("a"), e(report.Div, n("b"), n("c"))), "a * (b / c)"},
		{e(report.Div, n("a"), e(report.Mul, n("b"), n("c"))), "a / (b * c)"},
		{e(report.Div, e(report.Div, n("a"), n("b")), n("c")), "a / b / c"},
		{e(report.Div, n("a"), e(report.Sub, c(1, 1), c(1, 4))), "a / (1 - 0.25)"},
		{e(report.Sub, n("a"), c(-1, 2)), "a - (-0.5)"},
		{e(report.Mul, c(1, 3), n("a")), "1/3 * a"},
		{e(report.Div, n("a"), c(1, 3)), "a / (1/3)"},
		{c(1, 1_000_000_000_000_000), "1/1000000000000000"},
		{up, "ROUNDUP(ROUND(a / 3,10),1)"},
		{e(report.If, e(report.Exceeds, n("a"), e(report.Sub, n("b"), n("c"))), n("d"), text), `IF(ROUND(a - (b - c),9)>0,d,"say ""never""")`},
		{&report.Expr{Op: report.Round, Digits: 2, Args: []*report.Expr{e(report.Mul, c(3, 4), c(493, 50))}}, "ROUND(ROUND(0.75 * 9.86,11),2)"}, // 7.395, and less in binary
		{e(report.Add), "0"},
	}
	for _, test := range tests {
		f := formula{refer: func(name string) (string, bool) { return name, true }}
		if got, _ := f.write(test.tree); got != test.want {
			t.Errorf("got %s, want %s", got, test.want)
		}
	}
}

// In binary floating point 1.1 * 1.1 is over 1.21: a formula must still round it
// up to 1.21, not 1.22, and must not take it for more than 1.21.
//
// The library's own ROUND leaves a rest, so rounding up is followed step by
// step here; two spreadsheet programs that recalculated it came to 1.21.
func TestBoundariesSurviveFloatingPoint(t *testing.T) {
	product := &report.Expr{Op: report.Mul, Args: []*report.Expr{
		{Op: report.Const, Value: big.NewRat(11, 10)}, {Op: report.Const, Value: big.NewRat(11, 10)},
	}}
	limit := &report.Expr{Op: report.Const, Value: big.NewRat(121, 100)}
	over := &report.Expr{Op: report.If, Text: "no", Args: []*report.Expr{{Op: report.Exceeds, Args: []*report.Expr{product, limit}}, limit, {Op: report.Const, Text: "no"}}}
	f := open(t, planBytes(t, onePage(report.Cell{Kind: report.Number, Expr: over})))
	eachFormula(t, f, func(sheet, cell, formula, cached string) {
		got, err := f.CalcCellValue(sheet, cell, excelize.Options{RawCellValue: true})
		if err != nil || got != "no" || cached != "no" {
			t.Errorf("=%s comes to %s (%v)", formula, got, err)
		}
	})
	side := 1.1
	if naive := math.Ceil(side*side*100) / 100; naive != 1.22 {
		t.Fatalf("without dropping the dust it comes to %v, so the test shows nothing", naive)
	}
	clean := math.Round(side*side*1e11) / 1e11
	if got := math.Ceil(clean*100) / 100; got != 1.21 {
		t.Errorf("ROUNDUP(ROUND(1.1*1.1,11),2) comes to %v", got)
	}
}

func TestUnknownNameIsAnError(t *testing.T) {
	p := onePage(report.Cell{Kind: report.Money, Expr: &report.Expr{Op: report.Ref, Name: "nobody", Value: big.NewRat(1, 1)}})
	if _, err := Plan(p); err == nil || !strings.Contains(err.Error(), `"nobody"`) {
		t.Errorf("got %v", err)
	}
	if _, err := Plan(&report.Plan{}); err == nil {
		t.Error("a workbook without sheets was written")
	}
}
