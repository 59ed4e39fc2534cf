package plan_test

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

func stock(t *testing.T, text string, list *plan.PriceList) (*plan.Stock, []string) {
	t.Helper()
	f := source.New("stock.csv", []byte(text))
	s, problems := plan.ReadStock(f, plan.ListSource{}, list)
	var out []string
	for _, p := range problems {
		pos := f.Position(p.Range.Start)
		same(t, "code", p.Code, plan.BadStock)
		out = append(out, fmt.Sprintf("%d:%d [%s] %s", pos.Line, pos.Column, f.Slice(p.Range), p.Message))
	}
	return s, out
}

func TestStock(t *testing.T) {
	list, _ := prices(t, "sku,description,unit,price\nQ-1,,yd,6.00\nW-7,,m,7.00\nroll,,pack,31\n")
	s, problems := stock(t, "item,quantity,unit\nQ-1,4 3/8,yd\nQ-1,0.5,yd\nQ-1,0,yd\nW-7,250,cm\nroll,3,pack\nharbour-lamps/throw,4,kit\nharbour-lamps/throw/fog,2,kits\n", list)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	var got []string
	for _, p := range s.Parts {
		got = append(got, fmt.Sprint(p.SKU, " ", int64(p.Length), " ", p.Pieces))
	}
	for _, k := range s.Kits {
		got = append(got, fmt.Sprint(k.Plan, " ", k.Size, " ", k.Colourway, " ", k.Count))
	}
	want := []string{
		fmt.Sprint("Q-1 ", int64(35*measure.Yard/8), " 0"), fmt.Sprint("Q-1 ", int64(measure.Yard/2), " 0"),
		fmt.Sprint("W-7 ", int64(250*measure.Centimetre), " 0"), "roll 0 3",
		"harbour-lamps throw  4", "harbour-lamps throw fog 2",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// Each row that cannot be used is told once, at the field.
func TestStockProblems(t *testing.T) {
	list, _ := prices(t, "sku,description,unit,price\nQ-1,,yd,6.00\nroll,,pack,31\n")
	_, got := stock(t, `item,quantity,unit
,3,yd
Q-2,3,yd
Q-1,3,pack
roll,3,yd
Q-1,-3,yd
Q-1,3 3,yd
Q-1,1e9,yd
Q-1,100001,yd
Q-1,,yd
roll,2.5,pack
Q-1,3,bolt
throw,3,kit
a/b/c/d,3,kit
a/b,3,kit
a/b,4,kit
a/c,some,kit
`, list)
	want := []string{
		"2:1 [] this row of the stock list has no item",
		`3:1 [Q-2] the price list has no article "Q-2"`,
		`4:7 [pack] "Q-1" is sold per yd, and the stock list counts it in "pack"`,
		`5:8 [yd] "roll" is sold per pack, and the stock list counts it in "yd"`,
		`6:5 [-3] "-3" is no length of one piece of fabric`,
		`7:5 [3 3] "3 3" is no length of one piece of fabric`,
		`8:5 [1e9] "1e9" is no length of one piece of fabric`,
		`9:5 [100001] "100001" is no length of one piece of fabric`,
		`10:5 [] "" is no length of one piece of fabric`,
		`11:6 [2.5] "2.5" is no number of pieces`,
		`12:7 [bolt] "bolt" is not a unit that stock is counted in`,
		`13:1 [throw] "throw" does not name kits of a size`,
		`14:1 [a/b/c/d] "a/b/c/d" does not name kits of a size`,
		`16:1 [a/b] kits of "a/b" stand in the stock list twice: first on line 15`,
		`17:5 [some] "some" is no number of kits`,
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	if _, got = stock(t, "item,quantity\n", nil); len(got) != 1 {
		t.Errorf("a column is missing: %v", got)
	}
	if s, got := stock(t, "item,quantity,unit\nQ-2,3,yd\n", nil); len(got) != 0 || len(s.Parts) != 1 {
		t.Errorf("without a price list: %v", got)
	}
}
