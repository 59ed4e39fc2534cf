package plan_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

func prices(t testing.TB, text string) (*plan.PriceList, []string) {
	t.Helper()
	currency, _ := measure.ParseCurrency("USD")
	f := source.New("prices.csv", []byte(text))
	list, problems := plan.ReadPrices(f, currency)
	var out []string
	for _, p := range problems {
		pos := f.Position(p.Range.Start)
		same(t, "code", p.Code, plan.BadPriceList)
		out = append(out, fmt.Sprintf("%d:%d [%s] %s", pos.Line, pos.Column, f.Slice(p.Range), p.Message))
	}
	return list, out
}

func TestPrices(t *testing.T) {
	const text = "\ufeffprice,Unit , sku,extra,description\r\n" +
		"6.00,yd,Q-1,x,\"Cotton, \"\"grey\"\"\"\r\n" +
		",,,,\r\n" +
		"\r\n" +
		"0.085,each,label,,\r\n" +
		" 31 ,Pack,roll,,\"two\r\nlines\"\r\n" +
		"9.5,m,W-7,,Weiß"
	list, problems := prices(t, text)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	var got []string
	for _, p := range list.All() {
		got = append(got, fmt.Sprint(p.SKU, " ", p.Unit, " ", p.Amount.RatString(), " ", p.Description, " [", list.File.Slice(p.At), "]"))
	}
	want := []string{
		`Q-1 yd 6 Cotton, "grey" [6.00,yd,Q-1,x,"Cotton, ""grey"""]`,
		`label each 17/200  [0.085,each,label,,]`,
		"roll pack 31 two\nlines [ 31 ,Pack,roll,,\"two\r\nlines\"]",
		`W-7 m 19/2 Weiß [9.5,m,W-7,,Weiß]`,
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	p, ok := list.Find("roll")
	same(t, "found", ok, true)
	same(t, "unit", p.Unit, plan.PerPack)
	_, ok = list.Find("Roll")
	same(t, "a sku is exact", ok, false)
	_, ok = (*plan.PriceList)(nil).Find("roll")
	same(t, "no list", ok, false)
}

func TestPriceProblems(t *testing.T) {
	const head = "sku,description,unit,price\n"
	tests := []struct {
		text  string
		wants []string
	}{
		{"", []string{"1:1 [] the price list is empty"}},
		{"\n\n", []string{"1:1 [] the price list is empty"}},
		{"sku;description;unit;price\na;b;yd;6,00\n", []string{"1:1 [sku;description;unit;price] the columns of the price list are not separated by commas"}},
		{"sku,description,units,price\n", []string{`1:1 [sku,description,units,price] the header row of the price list has no column "unit"`}},
		{"sku,description,unit,price,sku\n", []string{`1:28 [sku] the price list has two columns "sku"`}},
		{head + "a,A,yd,6.00\nb,B,m,1\na,C,yd,7\n", []string{`4:1 [a] "a" stands in the price list twice: first on line 2`}},
		{head + "a,A,yards,6.00\n", []string{`2:5 [yards] "yards" is not a unit that a price can be for`}},
		{head + "a,A,yd,\"6,50\"\n", []string{`2:8 ["6,50"] "6,50" is not a price: write it without thousands marks or spaces and with a point before the decimals, like 1250.50`}},
		{head + "a,A,yd\n", []string{`2:7 [] "" is not a price: it is empty`}},
		{head + ",A,yd,6\n", []string{`2:1 [] this row of the price list has no sku`}},
		{head + "a,Ä \"x,yd,6\nb,B,yd,1\n", []string{`2:5 [] the price list cannot be read on from here: bare " in non-quoted-field`}},
		{head + "a,\xe4,yd,6\n", []string{"2:3 [\xe4] the price list is not UTF-8 here"}},
		{"\ufeff" + head + "a,A,box,6\n", []string{`2:5 [box] "box" is not a unit that a price can be for`}},
	}
	for _, tt := range tests {
		_, got := prices(t, tt.text)
		if diff := cmp.Diff(tt.wants, got); diff != "" {
			t.Errorf("%q (-want +got)\n%s", tt.text, diff)
		}
	}
}

// TestGoodRowsStay: one bad row does not cost the others.
func TestGoodRowsStay(t *testing.T) {
	list, problems := prices(t, "sku,description,unit,price\na,A,yd,x\nb,B,yd,2\n")
	same(t, "problems", len(problems), 1)
	_, ok := list.Find("b")
	same(t, "b", ok, true)
	_, ok = list.Find("a")
	same(t, "a", ok, false)
}

func TestManyPriceProblems(t *testing.T) {
	_, problems := prices(t, "sku,description,unit,price\n"+strings.Repeat("a,A,x,y\n", 5000))
	if len(problems) < 100 || len(problems) > 110 {
		t.Errorf("%d problems are told", len(problems))
	}
}

func FuzzPrices(f *testing.F) {
	f.Add("sku,description,unit,price\r\na,\"A\n\",yd,6\r\n,,,\r\nb")
	f.Add("\ufeffsku,description,unit,price\na,\"x")
	f.Fuzz(func(t *testing.T, text string) {
		file := source.New("prices.csv", []byte(text))
		list, problems := plan.ReadPrices(file, measure.Currency{})
		for _, p := range problems {
			if !p.Range.Valid() || p.Range.End > len(text) || p.Message == "" {
				t.Fatalf("%+v", p)
			}
		}
		for _, p := range list.All() {
			if !p.At.Valid() || p.At.End > len(text) || p.SKU == "" || p.Amount.Sign() < 0 {
				t.Fatalf("%+v", p)
			}
		}
	})
}
