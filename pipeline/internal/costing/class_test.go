package costing_test

import (
	"math/big"
	"testing"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/report"
)

// Worked by hand: eight students at 65 are 520. Five hours at 18 are 90, the room
// 80, one sample and eight kits at 28.50 are 256.50: 426.50, and 93.50 are left.
// 198.50 do not depend on the students, of whom each leaves 36.50: six pay for it
// (5.44). Where each buys the kit at 57.00 as well, he leaves 93.50: three do.
// Where they bring their own fabric, each leaves 65.00: four do (3.05).
func TestClass(t *testing.T) {
	in := func(name, value string) costing.Input { return costing.Input{Name: name, Value: rat(t, value)} }
	cash := func(name string, num int64) costing.Result {
		return costing.Result{Name: name, Expr: &report.Expr{Value: big.NewRat(num, 100)}}
	}
	c := costing.Class{
		Digits: 2, Rate: in("labour_rate", "18"), Students: in("students", "8"), Fee: in("fee", "65"), Minutes: in("minutes", "300"),
		Costs: in("costs", "80"), Samples: in("samples", "1"), Unit: cash("unit_cost", 2850), Kits: true,
	}
	f := costing.Teach(c)
	want(t, f.Income, "520")
	want(t, f.Cost, "426.50")
	want(t, f.Profit, "93.50")
	want(t, f.BreakEven, "6")

	price := cash("price", 5700)
	c.KitPrice = &price
	f = costing.Teach(c)
	want(t, f.Income, "976")
	want(t, f.BreakEven, "3")

	c.Kits, c.KitPrice = false, nil
	f = costing.Teach(c)
	want(t, f.Cost, "198.50")
	want(t, f.BreakEven, "4")

	// A student who costs as much as he pays never pays for the room.
	c.Kits, c.Fee = true, in("fee", "28.50")
	if f = costing.Teach(c); f.BreakEven.Text != costing.Never {
		t.Errorf("%v %q", f.BreakEven.Value, f.BreakEven.Text)
	}
	c.Fee = in("fee", "28.51")
	want(t, costing.Teach(c).BreakEven, "19850")
}
