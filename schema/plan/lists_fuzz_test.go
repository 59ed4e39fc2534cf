package plan_test

import (
	"testing"

	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// FuzzStock takes any text for a stock list beside a price list that sells by
// the length and by the piece.
func FuzzStock(f *testing.F) {
	f.Add("item,quantity,unit\r\na,2 1/2,yd\r\nb,3,each\r\nline/wall,2,kit\r\nline/wall/moss,1,kit\r\n,,\r\n\"", "", "")
	f.Add("Teil;Menge;Maß\na;1.250,5;m", ",", ".")
	prices := plan.NewPriceList(measure.Currency{})
	prices.Read(source.New("prices.csv", []byte("sku,description,unit,price\na,A,yd,6\nb,B,each,2\n")), plan.ListSource{})
	f.Fuzz(func(t *testing.T, text, decimal, thousands string) {
		from := plan.ListSource{Decimal: plan.Text{Text: decimal}, Thousands: plan.Text{Text: thousands}, Columns: map[string]plan.Text{"item": {Text: "Teil"}}}
		stock, problems := plan.ReadStock(source.New("stock.csv", []byte(text)), from, prices)
		inside(t, text, problems)
		for _, p := range stock.Parts {
			if p.SKU == "" || p.Length < 0 || p.Pieces < 0 {
				t.Fatalf("%+v", p)
			}
		}
		for _, k := range stock.Kits {
			if k.Plan == "" || k.Size == "" || k.Count < 0 {
				t.Fatalf("%+v", k)
			}
		}
	})
}

// FuzzEdition takes any text for the line as it was last published.
func FuzzEdition(f *testing.F) {
	f.Add("row,plan,size,fabric,cost,price,errors,warnings,notes\r\nbody,Line,wall,1 yd,12.5,40,0,1,2\r\n")
	f.Add("plan,size,cost (EUR),price (EUR)\nLine,wall,x,-1\n\"")
	euro, _ := measure.ParseCurrency("EUR")
	f.Fuzz(func(t *testing.T, text string) {
		for _, c := range []measure.Currency{{}, euro} {
			edition, problems := plan.ReadEdition(source.New("line.csv", []byte(text)), c)
			inside(t, text, problems)
			for _, s := range edition.Sizes {
				if s.Counts[0] < 0 || s.Counts[1] < 0 || s.Counts[2] < 0 {
					t.Fatalf("%+v", s)
				}
			}
		}
	})
}

// inside demands that problems say something of a place in the text.
func inside(t *testing.T, text string, problems []source.Problem) {
	t.Helper()
	for _, p := range problems {
		if !p.Range.Valid() || p.Range.End > len(text) || p.Message == "" {
			t.Fatalf("%+v", p)
		}
	}
}
