package xlsx

import (
	"math/big"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"yardproof/exporters/internal/sample"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

func inch(num, den int64) measure.Surd { return measure.Rational(num*int64(measure.Inch), den) }

func TestLengthFormats(t *testing.T) {
	b := &book{heading: heading{currency: sample.Dollars()}}
	in := func(num, den int64) report.Cell { return report.L(inch(num, den), measure.In) }
	cm := func(mm int64) report.Cell {
		return report.L(measure.Rational(mm*int64(measure.Millimetre), 1), measure.Cm)
	}
	yd := func(num, den int64) report.Cell {
		return report.F(measure.Length(num*int64(measure.Yard)/den), measure.In)
	}
	typed := in(5, 2)
	typed.Input = true
	tests := []struct {
		cell   report.Cell
		format string
	}{
		{in(40, 1), "0"},
		{in(5, 2), "# ?/2"},
		{in(-5, 2), "# ?/2"},
		{in(3, 8), "# ?/8"},
		{in(6, 8), "# ?/4"},
		{in(1, 16), "# ?/16"},
		{in(15, 16), "# ??/16"},
		{in(63, 64), "# ??/64"},
		{in(33, 10), "0.0"},            // a decimal that is no 64th
		{in(1, 128), `"about "0.0000`}, // half of the last line
		{in(1, 3), `"about "0.0000`},   // not a ruler's fraction
		{report.L(measure.Root2().Mul(inch(6, 1)), measure.In), `"about "0.0000`},
		{typed, "General"},
		{cm(65), "0.0"},
		{cm(60), "0"},
		{report.L(measure.Root2().Mul(inch(6, 1)), measure.Cm), `"about "0.000`},
		{yd(5, 4), `# ?/4 "yd"`},
		{yd(2, 3), `# ?/3 "yd"`},
		{yd(11, 12), `# ??/12 "yd"`},
		{yd(2, 1), `0 "yd"`},
		{report.F(27*measure.Inch, measure.In), `# ?/4 "yd"`},
		{report.F(27*measure.Inch+measure.Tick, measure.In), `"about "0.000 "yd"`},
		{report.F(27*measure.Inch-measure.Tick, measure.In), `"about "0.000 "yd"`},
		{report.L((measure.Inch/64 + measure.Tick).Surd(), measure.In), `"about "0.0000`},
		{yd(1, 36), `"about "0.000 "yd"`},
		{yd(1, 32), `"about "0.000 "yd"`}, // no shop's fraction
		{report.F(110*measure.Centimetre, measure.Cm), `0.0 "m"`},
	}
	for _, test := range tests {
		unit := test.cell.Unit.String()
		if got := b.numberFormat(test.cell, unit); got != test.format {
			t.Errorf("%v: %s, want %s", test.cell.Exact, got, test.format)
		}
		shownTruly(t, test.cell, test.format)
	}
	if got := b.numberFormat(in(5, 2), ""); got != `# ?/2 "in"` {
		t.Errorf("in a column without a unit: %s", got)
	}
}

// shownTruly asks the library's own number formatter what a person sees.
// Where it shows a fraction or an unmarked decimal, that must be the value.
func shownTruly(t *testing.T, c report.Cell, format string) {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	check(t, f.SetCellValue("Sheet1", "A1", stored(c)))
	style, err := f.NewStyle(&excelize.Style{CustomNumFmt: &format})
	check(t, err)
	check(t, f.SetCellStyle("Sheet1", "A1", "A1", style))
	shown, err := f.GetCellValue("Sheet1", "A1")
	check(t, err)
	if strings.HasPrefix(shown, "about ") {
		return
	}
	value := new(big.Rat)
	for word := range strings.FieldsSeq(strings.TrimSuffix(strings.TrimSuffix(shown, "yd"), "m")) {
		part, ok := new(big.Rat).SetString(strings.TrimPrefix(word, "-"))
		if !ok {
			t.Errorf("%s shows %q", format, shown)
			return
		}
		value.Add(value, part)
	}
	if strings.HasPrefix(shown, "-") {
		value.Neg(value)
	}
	if want := new(big.Rat).SetFloat64(stored(c).(float64)); value.Cmp(want) != 0 {
		exact, _ := value.Float64()
		if exact != stored(c) {
			t.Errorf("%s shows %q for %v", format, shown, stored(c))
		}
	}
}

func TestMoneyFormats(t *testing.T) {
	yen, _ := measure.ParseCurrency("JPY")
	dinar, _ := measure.ParseCurrency("KWD")
	cell := func(num, den int64) report.Cell {
		return report.Cell{Kind: report.Money, Number: big.NewRat(num, den)}
	}
	typed := cell(6, 1)
	typed.Input = true
	formula := report.Cell{Kind: report.Money, Expr: &report.Expr{Value: big.NewRat(10, 3)}}
	tests := []struct {
		currency measure.Currency
		cell     report.Cell
		want     string
	}{
		{sample.Dollars(), cell(6, 1), `"USD "#,##0.00`},
		{sample.Dollars(), cell(85, 1000), `"USD "#,##0.00###`},
		{sample.Dollars(), cell(10, 3), `"about USD "#,##0.0000`},
		{sample.Dollars(), typed, `"USD "#,##0.00###`},
		{sample.Dollars(), formula, `"USD "#,##0.00`},
		{yen, cell(600, 1), `"JPY "#,##0`},
		{yen, typed, `"JPY "#,##0`},
		{yen, cell(1, 2), `"JPY "#,##0.0##`},
		{dinar, cell(6, 1), `"KWD "#,##0.000`},
		{measure.Currency{}, cell(6, 1), `#,##0`},
	}
	for _, test := range tests {
		b := &book{heading: heading{currency: test.currency}}
		if got := b.numberFormat(test.cell, ""); got != test.want {
			t.Errorf("%s %v: %s, want %s", test.currency, test.cell.Number, got, test.want)
		}
	}
}

// A formula of a length to buy is shown no less than it comes to, whatever a person
// types: 760 in are 21 1/9 yd.
func TestFormulaOfALengthToBuyIsRoundedUp(t *testing.T) {
	run := report.Cell{Kind: report.Fabric, Unit: measure.In, Toward: measure.Up, Expr: &report.Expr{Op: report.Ref, Name: "a", Value: big.NewRat(190, 9)}}
	up := upward(run)
	if up.Expr.Op != report.RoundUp || up.Expr.Digits != 3 || up.Expr.Value.Cmp(big.NewRat(21112, 1000)) != 0 {
		t.Errorf("%+v", up.Expr)
	}
	exact := run
	exact.Expr = &report.Expr{Op: report.Const, Value: big.NewRat(25, 8)}
	if got := upward(exact).Expr.Value; got.Cmp(big.NewRat(25, 8)) != 0 {
		t.Errorf("25/8 becomes %s", got)
	}
	nearest, named := run, run
	nearest.Toward, named.Name = measure.Nearest, "total"
	for _, c := range []report.Cell{nearest, named, report.F(measure.Yard, measure.In)} {
		if upward(c).Expr != c.Expr {
			t.Errorf("%+v is changed", c)
		}
	}
}
