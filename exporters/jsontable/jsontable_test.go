package jsontable

import (
	"encoding/json"
	"math/big"
	"testing"

	"yardproof/exporters/internal/figure"
	"yardproof/exporters/internal/golden"
	"yardproof/exporters/internal/sample"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

func TestPlan(t *testing.T) {
	b, err := Plan(sample.Plan())
	if err != nil {
		t.Fatal(err)
	}
	if !json.Valid(b) || b[len(b)-1] != '\n' {
		t.Error("not one JSON document that ends its line")
	}
	golden.Check(t, "plan.json", b)
}

func TestLine(t *testing.T) {
	b, err := Line(sample.Line())
	if err != nil {
		t.Fatal(err)
	}
	golden.Check(t, "line.json", b)
}

func TestCellIsExact(t *testing.T) {
	w := writer{currency: sample.Dollars(), workings: figure.Collect(nil)}
	tests := []struct {
		cell report.Cell
		want string
	}{
		{report.Cell{}, `null`},
		{report.T("<b>&"), `"<b>&"`},
		{report.N(12), `{"kind":"count","text":"12","decimal":"12"}`},
		{report.L(measure.Root2().MulInt(int64(6*measure.Inch)), measure.In), `{"kind":"length","text":"about 8.4853 in","exact":"6*sqrt2 in","about":"8.485281374239"}`},
		{report.L((65 * measure.Millimetre).Surd(), measure.Cm), `{"kind":"length","text":"6.5 cm","exact":"13/2 cm","about":"6.5"}`},
		{report.L((40 * measure.Inch).Surd(), measure.In), `{"kind":"length","text":"40 in","exact":"40 in","about":"40"}`},
		{report.F(12*measure.Inch, measure.In), `{"kind":"fabric","text":"1/3 yd","exact":"1/3 yd","about":"0.333333333333"}`},
		{report.F(110*measure.Centimetre, measure.Cm), `{"kind":"fabric","text":"1.1 m","exact":"11/10 m","about":"1.1"}`},
		{report.Cell{Kind: report.Money, Number: big.NewRat(6, 1), Name: "asked", Input: true}, `{"kind":"money","text":"USD 6.00","decimal":"6.00","name":"asked","input":true}`},
		{report.Cell{Kind: report.Money, Number: big.NewRat(10, 3)}, `{"kind":"money","text":"about USD 3.3333","exact":"10/3"}`},
		{report.Cell{Kind: report.Share, Number: big.NewRat(1, 4)}, `{"kind":"share","text":"25 %","decimal":"0.25"}`},
		{report.Cell{Kind: report.Number, Expr: &report.Expr{Value: big.NewRat(-3, 2)}}, `{"kind":"number","text":"-1.5","decimal":"-1.5"}`},
		{report.Cell{Kind: report.Money, Expr: &report.Expr{Text: "never"}}, `"never"`},
	}
	for _, test := range tests {
		got, err := json.Marshal(object{{"x", w.cell(test.cell)}})
		if err != nil {
			t.Fatal(err)
		}
		var back, want any
		if json.Unmarshal(got, &back) != nil || json.Unmarshal([]byte(`{"x":`+test.want+`}`), &want) != nil {
			t.Fatalf("%s", got)
		}
		a, _ := json.Marshal(back)
		b, _ := json.Marshal(want)
		if string(a) != string(b) {
			t.Errorf("got  %s\nwant %s", a, b)
		}
	}
}
