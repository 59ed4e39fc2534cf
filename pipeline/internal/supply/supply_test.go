package supply

import (
	"errors"
	"math/big"
	"strings"
	"testing"

	"yardproof/pipeline/internal/bolts"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

const eighth = measure.Yard / 8

func prices(t *testing.T, rows ...string) *plan.PriceList {
	t.Helper()
	currency, _ := measure.ParseCurrency("EUR")
	list := plan.NewPriceList(currency)
	text := "sku,description,unit,price,from,bolt,loss,minimum,multiple,lead_days,discontinued\n" + strings.Join(rows, "\n")
	for _, p := range list.Read(source.New("prices.csv", []byte(text)), plan.ListSource{}) {
		if p.Code != plan.DearerBreak { // a warning
			t.Fatal(p)
		}
	}
	return list
}

// twenty are kits of a plan that take some eighths of a yard of each article.
func twenty(id string, takes map[string]int) Asked {
	a := Asked{Plan: id, Kit: Kit{Size: "throw", Planned: 20}}
	for sku, n := range takes {
		a.Takes = append(a.Takes, Take{SKU: sku, Length: measure.Length(n) * eighth, Step: eighth})
	}
	return a
}

// Worked by hand: 20 kits of 1 3/8, 7/8 and 1/2 yd from 15-yd bolts at 6.00,
// 6.00 and 5.50 a yard take 30, 30 and 15 yd, 442.50 in all.
func TestThreeFabrics(t *testing.T) {
	list := prices(t, "A,,yd,6.00,,15", "B,,yd,6.00,,15", "C,,yd,5.50,,15")
	l := Of([]Asked{twenty("steps", map[string]int{"A": 11, "B": 7, "C": 4})}, list, nil)
	total := new(big.Rat)
	for _, a := range l.Articles {
		total.Add(total, new(big.Rat).Mul(a.Order, a.Each))
	}
	if len(l.Articles) != 3 || total.Cmp(big.NewRat(44250, 100)) != 0 {
		t.Errorf("%s: %+v", total.FloatString(2), l)
	}
}

// Two plans share a fabric: apart each takes a bolt of its own, 8 kits of
// 1 1/4 yd and 5 of 1 yd, together 15 yd, one (worked by hand).
func TestPlansShareAFabric(t *testing.T) {
	list := prices(t, "A,,yd,6.00,,15")
	a, b := twenty("steps", map[string]int{"A": 10}), twenty("lamps", map[string]int{"A": 8, "X": 3})
	a.Planned, b.Planned = 8, 5
	l := Of([]Asked{a, b}, list, nil)
	if len(l.Articles) != 1 || len(l.Articles[0].Uses) != 2 || l.Articles[0].Plan.Order[0] != 1 || l.Articles[0].Plan.Cuts[0].Left != 0 {
		t.Errorf("%+v", l)
	}
	b.Planned = 6
	if l = Of([]Asked{a, b}, list, nil); l.Articles[0].Plan.Order[0] != 2 {
		t.Errorf("one kit more: %+v", l)
	}
}

func TestShelvesComeOffTheRun(t *testing.T) {
	list := prices(t, "A,,yd,6.00,,15", "roll,,pack,31.00")
	stock := &plan.Stock{
		Kits:  []plan.ShelfKits{{Plan: "steps", Size: "throw", Count: 10}, {Plan: "steps", Size: "throw", Colourway: "fog", Count: 20}, {Plan: "lamps", Size: "throw", Count: 30}},
		Parts: []plan.PartBolt{{SKU: "A", Length: 11 * eighth}, {SKU: "roll", Pieces: 3}, {SKU: "roll", Pieces: 2}, {SKU: "B", Length: 99}},
	}
	k := twenty("steps", map[string]int{"A": 11})
	k.Takes = append(k.Takes, Take{SKU: "roll", Pieces: 1})
	l := Of([]Asked{k, twenty("lamps", nil)}, list, stock)
	if r := l.Runs[0]; r.Shelf != 10 || r.Make != 10 || r.Name() != "steps/throw" {
		t.Errorf("%+v", r)
	}
	if r := l.Runs[1]; r.Make != 0 {
		t.Errorf("more on the shelf than planned: %+v", r)
	}
	fabric, rolls := l.Articles[0], l.Articles[1]
	if fabric.Plan.Order[0] != 1 || len(fabric.Plan.Cuts) != 2 {
		t.Errorf("nine kits of a bolt: %+v", fabric.Plan)
	}
	if rolls.Needs != 10 || rolls.PiecesThere != 5 || rolls.PiecesOrder != 5 {
		t.Errorf("%+v", rolls)
	}
}

// The order of 20 kits of 1/2 yd is one bolt of 15 yd (worked by hand).
func TestSmallestOrder(t *testing.T) {
	for _, c := range []struct {
		minimum string
		order   int64
		short   bool
	}{{"15", 15, false}, {"15.01", 30, true}, {"30", 30, true}, {"0", 15, false}} {
		l := Of([]Asked{twenty("steps", map[string]int{"A": 4})}, prices(t, "A,,yd,6.00,,15,,"+c.minimum), nil)
		a := &l.Articles[0]
		alone, short := a.Short()
		if a.Order.Cmp(big.NewRat(c.order, 1)) != 0 || short != c.short || alone.Cmp(big.NewRat(15, 1)) != 0 {
			t.Errorf("%+v: %+v", c, a)
		}
	}
	k := Asked{Plan: "steps", Kit: Kit{Planned: 7, Takes: []Take{{SKU: "roll", Pieces: 2}}}}
	l := Of([]Asked{k}, prices(t, "roll,,pack,31.00,,,,20,12"), nil)
	if a := &l.Articles[0]; a.PiecesOrder != 24 {
		t.Errorf("%+v", a)
	} else if alone, short := a.Short(); !short || alone.Cmp(big.NewRat(14, 1)) != 0 {
		t.Errorf("%v of 20", alone)
	}
}

func TestPriceOfTheQuantity(t *testing.T) {
	list := prices(t, "A,,yd,6.00,,15", "A,,yd,5.00,30,")
	for eighths, each := range map[int]int64{6: 6, 7: 5} { // one bolt, two bolts
		l := Of([]Asked{twenty("steps", map[string]int{"A": eighths})}, list, nil)
		if got := l.Articles[0].Each; got.Cmp(big.NewRat(each, 1)) != 0 {
			t.Errorf("%d eighths: %s", eighths, got)
		}
	}
}

func TestDiscontinued(t *testing.T) {
	list := prices(t, "A,,yd,6.00,,15,,30,,,yes", "roll,,pack,31.00,,,,,,,yes")
	stock := &plan.Stock{Parts: []plan.PartBolt{{SKU: "A", Length: 20 * eighth}, {SKU: "roll", Pieces: 19}}}
	k := twenty("steps", map[string]int{"A": 1})
	k.Takes = append(k.Takes, Take{SKU: "roll", Pieces: 1})
	l := Of([]Asked{k}, list, stock)
	fabric, rolls := &l.Articles[0], &l.Articles[1]
	if fabric.Order.Sign() != 0 || len(fabric.Plan.Rest) != 0 || rolls.Missing() != 1 || rolls.PiecesOrder != 0 {
		t.Errorf("%+v", l)
	}
	if _, short := fabric.Short(); short {
		t.Error("nothing is ordered of it")
	}
	stock.Parts[0].Length--
	l = Of([]Asked{k}, list, stock)
	if rest := l.Articles[0].Plan.Rest; len(rest) != 1 || rest[0].Count != 1 {
		t.Errorf("a tick short: %+v", rest)
	}
}

func TestWhatCannotBeOrdered(t *testing.T) {
	l := Of([]Asked{twenty("steps", map[string]int{"A": 119})}, prices(t, "A,,yd,6.00,,15,1%"), nil)
	var long *bolts.TooLong
	if !errors.As(l.Articles[0].Err, &long) || l.Articles[0].Order.Sign() != 0 {
		t.Errorf("%+v", l.Articles[0])
	}
	l = Of([]Asked{twenty("steps", map[string]int{"A": 4})}, prices(t, "A,,yd,6.00,,15,,,15.07"), nil)
	var order *bolts.Unorderable
	if !errors.As(l.Articles[0].Err, &order) || l.Articles[0].Enough.Order[0] != 1 {
		t.Errorf("%+v", l.Articles[0])
	}
}

func TestOrderBy(t *testing.T) {
	list := prices(t, "A,,yd,6.00,,15,,,,10")
	first, second := twenty("steps", map[string]int{"A": 4}), twenty("lamps", map[string]int{"A": 4})
	first.NeededBy, second.NeededBy = "2027-03-09", "2027-03-05"
	l := Of([]Asked{first, second}, list, nil)
	if got := l.OrderBy(&l.Articles[0]); got.String() != "2027-02-23" {
		t.Errorf("ten days before the first that needs it: %s", got)
	}
	second.Planned = 0
	if l = Of([]Asked{first, second}, list, nil); l.OrderBy(&l.Articles[0]).String() != "2027-02-27" {
		t.Errorf("no kits of the second are made: %s", l.OrderBy(&l.Articles[0]))
	}
	first.NeededBy = ""
	if l = Of([]Asked{first}, list, nil); l.OrderBy(&l.Articles[0]).Given() {
		t.Error("nobody says by when")
	}
}

// Whoever is told that nothing is ordered where fabric is needed has no fabric.
func TestAPlanThatDoesNotHoldStops(t *testing.T) {
	list := prices(t, "A,,yd,6.00,,15")
	for what, solver := range map[string]Solver{
		"nothing is cut": func(bolts.Article, []bolts.Want) (bolts.Plan, error) {
			return bolts.Plan{Order: []int{0}, Proved: true}, nil
		},
		"a fault": func(bolts.Article, []bolts.Want) (bolts.Plan, error) {
			return bolts.Plan{}, &bolts.Fault{What: "a kit is forgotten"}
		},
	} {
		t.Run(what, func(t *testing.T) {
			defer func() {
				if said, _ := recover().(string); !strings.Contains(said, "A: the answer does not hold") {
					t.Errorf("%q", said)
				}
			}()
			solver.Of([]Asked{twenty("steps", map[string]int{"A": 11})}, list, nil)
		})
	}
}
