package plan_test

import (
	"fmt"
	"math/big"
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
	list := plan.NewPriceList(currency)
	problems := list.Read(f, plan.ListSource{})
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
		got = append(got, fmt.Sprint(p.SKU, " ", p.Unit, " ", p.Amount.RatString(), " ", p.Description, " [", p.File.Slice(p.At), "]"))
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
		{"sku;description;unit;price\na;b;yd;6,00\n", []string{`2:8 [6,00] "6,00" is not a price: write it without thousands marks or spaces and with a point before the decimals, like 1250.50`}},
		{"sku:description:unit:price\na:b:yd:6.00\n", []string{`1:1 [sku:description:unit:price] the header row of the price list has no column "sku" or "unit" or "price"`}},
		{"sku,description,units,price\n", []string{`1:1 [sku,description,units,price] the header row of the price list has no column "unit"`}},
		{"sku,description,unit,price,sku\n", []string{`1:28 [sku] the price list has two columns "sku"`}},
		{head + "a,A,yd,6.00\nb,B,m,1\na,C,yd,7\n", []string{`4:1 [a] "a" stands in the price list twice: first on line 2`}},
		{head + "a,A,yards,6.00\n", []string{`2:5 [yards] "yards" is not a unit that a price can be for`}},
		{head + "a,A,yd,\"6,50\"\n", []string{`2:8 ["6,50"] "6,50" is not a price: write it without thousands marks or spaces and with a point before the decimals, like 1250.50`}},
		{head + "a,A,yd\n", []string{`2:7 [] "" is not a price: it is empty`}},
		{"sku,description,unit,price,width\na,A,yd,6,126\nb,B,m,6,320\n", nil},
		{"sku,description,unit,price,width\na,A,yd,6,126 1/8\nb,B,m,6,321\n", []string{
			"2:10 [126 1/8] a width of 126 1/8 in is more than fabric is sold in: that is up to 126 in", "3:9 [321] a width of 321 cm is more than fabric is sold in: that is up to 320 cm"}},
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
		list := plan.NewPriceList(measure.Currency{})
		problems := list.Read(file, plan.ListSource{})
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

// A supplier's own sheet: other headings, marks and units, and a title above.
func TestSuppliersList(t *testing.T) {
	euro, _ := measure.ParseCurrency("EUR")
	text := "Weir Mill, spring\n\nArticle no.;Name;Per;Net;Bolt;Least;In steps of;Days;Width;Repeat;Of;Gone;Instead;Loss;Currency;From\n" +
		"Cottons\n" +
		"W-1;Rope;Meter;1.006,50;13,5;10;2,5;14;107;12,5 cm;2027-01-02;;;1,5%;EUR;\n" +
		"W-1;Rope;Meter;990;;;;;;;;;;;;50\n" +
		"W-2;Moss;Halb;3,20;15 yd; ;;;42 in;;;ja?;;;\n" +
		"W-3;Old;Meter;5;10 m; ;;;;;;yes;W-1;;;\n"
	from := plan.ListSource{
		HeaderRow: plan.Count{N: 3}, Decimal: plan.Text{Text: ","}, Thousands: plan.Text{Text: "."}, Separator: plan.Text{Text: ";"},
		Supplier: plan.Text{Text: "Weir Mill"},
		Units:    map[string]plan.Text{"meter": {Text: "m"}, "halb": {Text: "half-m"}},
		Columns: map[string]plan.Text{
			"sku": {Text: "article no."}, "description": {Text: "Name"}, "unit": {Text: "Per"}, "price": {Text: "Net"}, "bolt": {Text: "Bolt"},
			"minimum": {Text: "Least"}, "multiple": {Text: "In steps of"}, "lead_days": {Text: "Days"}, "width": {Text: "Width"}, "repeat": {Text: "Repeat"},
			"dated": {Text: "Of"}, "discontinued": {Text: "Gone"}, "substitute": {Text: "Instead"}, "loss": {Text: "Loss"},
		},
	}
	f := source.New("mill.csv", []byte(text))
	list := plan.NewPriceList(euro)
	problems := list.Read(f, from)
	if len(problems) != 1 {
		t.Fatal(problems)
	}
	same(t, "problem", f.Slice(problems[0].Range)+": "+problems[0].Message, `ja?: "ja?" is neither yes nor no`)

	rope, _ := list.Find("W-1")
	same(t, "price", rope.Amount.RatString(), "2013/2") // 1006.50
	same(t, "unit", rope.Unit, plan.PerMetre)
	same(t, "bolts", fmt.Sprint(rope.Bolts), fmt.Sprint([]measure.Length{1350 * measure.Centimetre}))
	same(t, "least", rope.Minimum.RatString(), "10")
	same(t, "steps", rope.Multiple.RatString(), "5/2")
	same(t, "days", rope.LeadDays, 14)
	same(t, "width", rope.Width, 107*measure.Centimetre)
	same(t, "repeat", rope.Repeat, 125*measure.Millimetre)
	same(t, "loss", rope.Loss.BasisPoints, 150)
	same(t, "supplier", rope.Supplier, "Weir Mill")
	same(t, "dated", rope.Dated.String(), "2027-01-02")
	// A price from 50 m on holds at 50 m and not just below.
	same(t, "price for 50", rope.For(big.NewRat(50, 1)).RatString(), "990")
	same(t, "price for less", rope.For(big.NewRat(499, 10)).RatString(), "2013/2")

	_, ok := list.Find("W-2")
	same(t, "a row with a fault", ok, false)
	old, _ := list.Find("W-3")
	same(t, "discontinued", old.Discontinued, true)
	same(t, "instead", old.Substitute, "W-1")

	some := list.Only([]string{"W-3"})
	same(t, "what a plan with W-3 looks at", len(some.All()), 2)
}

func TestFurtherPrices(t *testing.T) {
	const head = "sku,description,unit,price,from,currency\na,A,yd,6,,USD\n"
	for _, tt := range []struct{ rows, want string }{
		{"a,A,yd,5,20,\n", ""},
		{"a,A,yd,5,20,\na,A,yd,4,20,\n", `4:10 [20] the price of "a" from 20 on stands below that from 20 on`},
		{"a,A,m,5,20,\n", `3:5 [m] "a" is priced per m here and per yd on line 2`},
		{"b,B,m,5,20,\n", `3:9 [20] "b" has a price from 20 on and none for less`},
		{"a,A,yd,5,0,\n", `3:1 [a] "a" stands in the price list twice: first on line 2`},
		{"a,A,yd,5,-3,\n", `3:10 [-3] "-3" is no quantity`},
		{"b,B,yd,5,,EUR\n", `3:11 [EUR] a price in "EUR", and the project is in USD`},
	} {
		currency, _ := measure.ParseCurrency("USD")
		f := source.New("prices.csv", []byte(head+tt.rows))
		var got []string
		for _, p := range plan.NewPriceList(currency).Read(f, plan.ListSource{}) {
			pos := f.Position(p.Range.Start)
			got = append(got, fmt.Sprintf("%d:%d [%s] %s", pos.Line, pos.Column, f.Slice(p.Range), p.Message))
		}
		same(t, tt.rows, strings.Join(got, "; "), tt.want)
	}
}

// A price is stale the day after so many days, not on the day itself.
func TestStale(t *testing.T) {
	currency, _ := measure.ParseCurrency("USD")
	f := source.New("prices.csv", []byte("sku,description,unit,price,dated\na,A,yd,6,2026-03-31\nb,B,yd,6,2026-03-30\nc,C,yd,6,\n"))
	list := plan.NewPriceList(currency)
	list.Read(f, plan.ListSource{})
	for _, tt := range []struct {
		day  string
		want int
	}{{"2027-03-30", 0}, {"2027-03-31", 1}, {"2027-04-01", 1}} {
		today, _ := plan.ParseDate(tt.day)
		same(t, tt.day, len(list.Stale(f, today, 365)), tt.want)
	}
	today, _ := plan.ParseDate("2027-04-01")
	got := list.Stale(f, today, 365)[0]
	same(t, "message", got.Message, `2 of 2 dated prices are older than 365 days; the oldest, that of "b", is of 2026-03-30, 367 days ago`)
	today, _ = plan.ParseDate("2027-03-31")
	got = list.Stale(f, today, 365)[0]
	same(t, "message", got.Message, `the price of "b" is of 2026-03-30, 366 days ago`)
}

// Two lists of one project are one: what stands in both is told, with both
// places.
func TestSeveralLists(t *testing.T) {
	currency, _ := measure.ParseCurrency("USD")
	const head = "sku,description,unit,price\n"
	a, b := source.New("a.csv", []byte(head+"x,X,yd,6\n")), source.New("b.csv", []byte(head+"y,Y,yd,6\nx,X,yd,7\n"))
	list := plan.NewPriceList(currency)
	same(t, "first", len(list.Read(a, plan.ListSource{})), 0)
	problems := list.Read(b, plan.ListSource{})
	same(t, "second", len(problems), 1)
	same(t, "message", problems[0].Message, `"x" stands in the price list twice: first on line 2 of a.csv`)
	same(t, "prices", len(list.All()), 2)
}
