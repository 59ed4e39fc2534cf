package plan_test

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

func TestEdition(t *testing.T) {
	const text = "row,plan,status,size,finished,fabric,cost (USD),price (USD),margin (% of price),slack,errors,warnings,notes\r\n" +
		"heading,Every plan by size,,,,,,,,,,,\r\nlead,So it is.,,,,,,,,,,,\r\n" +
		"body,Steps,testing,throw,48 x 60 in,Ground 1 yd,31.20,62.00,49.7,,0,1,2\r\n" +
		"alert,Lamps,draft,wall,not proved,,,,,,3,0,0\r\n" +
		"body,Empty,draft,,,,,,,,0,0,0\r\n" +
		"body,Broken,draft,wall,,,much,5,,,0,x,0\r\n" +
		"foot,Smallest slack: how much shorter strips may be.,,,,,,,,,,,\r\n"
	currency, _ := measure.ParseCurrency("USD")
	f := source.New("line.csv", []byte(text))
	e, problems := plan.ReadEdition(f, currency)
	var got []string
	for _, p := range problems {
		same(t, "code", p.Code, plan.BadEdition)
		got = append(got, fmt.Sprintf("%d [%s]", f.Position(p.Range.Start).Line, f.Slice(p.Range)))
	}
	if diff := cmp.Diff([]string{"7 [much]", "7 [x]"}, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	s, ok := e.Find("Steps", "throw")
	if !ok || len(e.Sizes) != 2 || s.Cost.FloatString(2) != "31.20" || s.Counts != [3]int{0, 1, 2} || s.Fabric != "Ground 1 yd" {
		t.Errorf("%+v", e)
	}
	if s, ok := e.Find("Lamps", "wall"); !ok || s.Cost != nil || s.Counts[0] != 3 {
		t.Errorf("%+v", s)
	}
	if _, ok := e.Find("Steps", "wall"); ok {
		t.Error("a size is found that is not there")
	}
}
