package costing_test

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/report"
)

func rat(t testing.TB, text string) *big.Rat {
	t.Helper()
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		t.Fatalf("%q is no number", text)
	}
	return r
}

// kit has one material that costs as much as given.
func kit(t testing.TB, fabric, minutes, rate, packaging, pattern, fixed, margin, asked string) inKit {
	t.Helper()
	in := func(name, value string) costing.Input { return costing.Input{Name: name, Value: rat(t, value)} }
	return inKit{
		Materials: []costing.Item{{Quantity: in("yards", "1"), Price: in("cloth", fabric)}},
		Inputs: costing.Inputs{
			Digits:  2,
			Minutes: in("minutes", minutes), Rate: in("rate", rate),
			Packaging: in("packaging", packaging), Pattern: in("pattern", pattern),
			Spoilage: in("spoilage", "0"), FeeShare: in("fee_share", "0"), FeeEach: in("fee_each", "0"),
			Trade: in("trade", "1/2"), Run: in("run", "20"), Bought: in("bought", "0"),
			Fixed: in("fixed", fixed), Margin: in("margin_wanted", margin), Asked: in("asked", asked),
		},
	}
}

// inKit is what goes into a kit, with the other inputs.
type inKit struct {
	costing.Inputs
	Materials, Things []costing.Item
}

// priced are the costs of a kit, and of what goes in.
type priced struct {
	costing.Costs
	Materials, Things []costing.Result
}

func price(k inKit) priced {
	var p priced
	cost := func(items []costing.Item) (all []costing.Item, costs []costing.Result) {
		for _, i := range items {
			i = k.Item(i.Quantity, i.Price, i.Landed)
			all, costs = append(all, i), append(costs, i.Cost)
		}
		return all, costs
	}
	var fabrics, things []costing.Item
	fabrics, p.Materials = cost(k.Materials)
	things, p.Things = cost(k.Things)
	p.Costs = costing.Price(k.Inputs, fabrics, things)
	return p
}

func want(t *testing.T, r costing.Result, value string) {
	t.Helper()
	switch {
	case r.Value == nil:
		t.Errorf("%s is %q, want %s", r.Name, r.Text, value)
	case r.Value.Cmp(rat(t, value)) != 0:
		t.Errorf("%s is %s, want %s", r.Name, r.Value.FloatString(6), value)
	}
}

// A worked kit of ours: fabric 16.25, 25 minutes at 18 an hour, packaging
// 2.25, pattern 2.50, fixed costs of 480, sold at keystone. Keystone is twice
// the cost, a margin of one half, as business dictionaries define it.
func TestWorkedKit(t *testing.T) {
	c := price(kit(t, "16.25", "25", "18", "2.25", "2.50", "480", "1/2", "57"))
	want(t, c.Fabric, "16.25")
	want(t, c.Labour, "7.50")
	want(t, c.Unit, "28.50")
	want(t, c.Keystone, "57")
	want(t, c.ForMargin, "57")
	want(t, c.Price, "57")
	want(t, c.Margin, "1/2")
	want(t, c.Markup, "1")
	want(t, c.BreakEven, "17") // 480 / 28.50 = 16.84
}

// The same kit where a run of 20 takes 30, 30 and 15 yd in 15-yd bolts, at 6.00,
// 6.00 and 5.50 a yard: 442.50, which is 22.125 a kit and 22.13 as money. At 57
// that leaves 39.7 %, where the used basis promised a half.
func TestWorkedKitBought(t *testing.T) {
	k := kit(t, "16.25", "25", "18", "2.25", "2.50", "480", "1/2", "57")
	want(t, price(k).Unit, "28.50")
	if c := price(k); c.UnitBought.Value != nil || c.UnitBought.Text != report.Unknown || c.MarginBought.Text != report.Unknown {
		t.Errorf("where nothing is known of what was bought: %v %q", c.UnitBought.Value, c.UnitBought.Text)
	}
	k.Bought.Value = rat(t, "442.50")
	c := price(k)
	want(t, c.UnitBought, "34.38")
	if got := c.MarginBought.Value.FloatString(3); got != "0.397" {
		t.Errorf("margin %s, want 0.397", got)
	}
	k.Run.Value = rat(t, "0")
	if c := price(k); c.UnitBought.Text != report.Unknown {
		t.Errorf("of no kits: %v", c.UnitBought.Value)
	}
}

// Fees, spoilage, things and shops, worked by hand: 16.25 + 0.80 of things +
// 7.50 + 2.25 + 2.50 = 29.30; 2 % spoiled are 0.586, as money 0.59; 29.89. At
// 57.00 with 2.9 % and 0.30 a sale 55.047 are left: 25.157 of 57, 44.1 %. For a
// margin of one half (29.89 + 0.30) / (1 - 0.029 - 0.5) = 64.0977 are asked. A
// shop that pays half of 57.00 leaves a loss of 1.39; for a margin of one half it
// would have to be 29.89 / 0.5 / 0.5 = 119.56 in the shop.
func TestFeesAndShops(t *testing.T) {
	k := kit(t, "16.25", "25", "18", "2.25", "2.50", "480", "1/2", "57")
	in := func(name, value string) costing.Input { return costing.Input{Name: name, Value: rat(t, value)} }
	k.Things = []costing.Item{{Quantity: in("labels", "2"), Price: in("label", "0.40")}}
	k.Spoilage.Value, k.FeeShare.Value, k.FeeEach.Value = rat(t, "0.02"), rat(t, "0.029"), rat(t, "0.30")
	c := price(k)
	want(t, c.Other, "0.80")
	want(t, c.Spoilage, "0.59")
	want(t, c.Unit, "29.89")
	want(t, c.Net, "55.047")
	want(t, c.ForMargin, "64.10")
	if got := c.Margin.Value.FloatString(3); got != "0.441" {
		t.Errorf("margin %s, want 0.441", got)
	}
	want(t, c.TradePrice, "28.50")
	want(t, c.RetailForTrade, "119.56")
	want(t, c.Contribution, "25.157")
	want(t, c.BreakEven, "20") // 480 / 25.157 = 19.08
	if c.TradeMargin.Value.Sign() >= 0 {
		t.Errorf("a shop's margin of %s", c.TradeMargin.Value)
	}
}

// At the price for the margin the margin is reached, and a cent below it is not,
// with fees and without.
func TestPriceForMarginBoundary(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 5))
	for range 300 {
		k := kit(t, "16.25", "25", "18", "2.25", "2.50", "480", "1/2", "0")
		k.Minutes.Value = big.NewRat(random.Int64N(90), 1)
		k.Margin.Value = big.NewRat(random.Int64N(80), 100)
		k.FeeShare.Value, k.FeeEach.Value = big.NewRat(random.Int64N(60), 1000), big.NewRat(random.Int64N(60), 100)
		c := price(k)
		if c.Margin.Value.Cmp(k.Margin.Value) < 0 {
			t.Fatalf("%v leaves %v of %v", c.Price.Value, c.Margin.Value, k.Margin.Value)
		}
		k.Asked.Value = new(big.Rat).Sub(c.ForMargin.Value, big.NewRat(1, 100))
		if below := price(k); below.Margin.Value.Cmp(k.Margin.Value) >= 0 {
			t.Fatalf("%v leaves %v of %v, too", below.Price.Value, below.Margin.Value, k.Margin.Value)
		}
	}
	// Where fees and margin are the whole price, there is none.
	k := kit(t, "16.25", "25", "18", "2.25", "2.50", "480", "97/100", "0")
	k.FeeShare.Value = rat(t, "3/100")
	if c := price(k); c.ForMargin.Text != costing.Never || c.Price.Text != costing.Never || c.Margin.Value != nil {
		t.Errorf("for a price: %v %q", c.ForMargin.Value, c.ForMargin.Text)
	}
}

// 60 % margin on 28.50 is 71.25, and it is what is charged when no price is
// asked. A price of 1.6 times the cost is a markup of 60 % and a margin of
// 37 1/2 %: the trade's commonest slip.
func TestMarginIsNoMarkup(t *testing.T) {
	c := price(kit(t, "16.25", "25", "18", "2.25", "2.50", "480", "3/5", "0"))
	want(t, c.ForMargin, "71.25")
	want(t, c.Price, "71.25")
	want(t, c.Margin, "3/5")
	want(t, c.BreakEven, "12") // 480 / 42.75 = 11.23

	c = price(kit(t, "16.25", "25", "18", "2.25", "2.50", "480", "3/5", "45.60"))
	want(t, c.Markup, "3/5")
	want(t, c.Margin, "3/8")
	want(t, c.ForMargin, "71.25")

	c = price(kit(t, "16.25", "25", "18", "2.25", "2.50", "0", "1/2", "42.75"))
	want(t, c.Markup, "1/2")
	want(t, c.Margin, "1/3")
}

// All bolts bought charged to 20 kits: 442.50 of fabric, 22.125 a kit, and
// keystone on the net cost leaves 39.7 % instead of a half. Money rounds half
// away from zero: the line is 22.13.
func TestBoltsChargedToTheRun(t *testing.T) {
	c := price(kit(t, "22.125", "25", "18", "2.25", "2.50", "480", "1/2", "57"))
	want(t, c.Fabric, "22.13")
	want(t, c.Unit, "34.38")
	want(t, c.Margin, "2262/5700") // 22.62 of 57.00: 39.7 %
	if got := c.Margin.Value.FloatString(3); got != "0.397" {
		t.Errorf("margin %s, want 0.397", got)
	}
}

// Markup and margin of one price say the same: (1 + markup)(1 - margin) = 1.
func TestMarkupAndMargin(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 9))
	for range 200 {
		k := kit(t, "16.25", "25", "18", "2.25", "2.50", "480", "1/2", "57")
		k.Asked.Value = big.NewRat(1+random.Int64N(20000), 100)
		k.Minutes.Value = big.NewRat(random.Int64N(90), 1)
		c := price(k)
		one := big.NewRat(1, 1)
		product := new(big.Rat).Mul(new(big.Rat).Add(one, c.Markup.Value), new(big.Rat).Sub(one, c.Margin.Value))
		if product.Cmp(one) != 0 {
			t.Fatalf("price %v: markup %v, margin %v", k.Asked.Value, c.Markup.Value, c.Margin.Value)
		}
	}
}

// Sold at 57.00, a kit that costs 28.50 leaves 28.50 towards the fixed costs, of
// which 480 take 16.84 kits, so 17. At its cost it leaves nothing, below it less.
// Fixed costs over price less variable costs is the definition of any business
// dictionary.
func TestContribution(t *testing.T) {
	for asked, left := range map[string]string{"57": "28.50", "28.51": "0.01", "28.50": "0", "28.49": "-0.01"} {
		want(t, price(kit(t, "16.25", "25", "18", "2.25", "2.50", "480", "1/2", asked)).Contribution, left)
	}
	c := price(kit(t, "16.25", "25", "18", "2.25", "2.50", "480", "1", "0"))
	if c.Contribution.Value != nil || c.Contribution.Text == "" {
		t.Errorf("without a price: %v %q", c.Contribution.Value, c.Contribution.Text)
	}
}

// At or below its cost a kit never pays back, a cent above it does.
func TestBreakEvenBoundary(t *testing.T) {
	for _, c := range []struct{ asked, kits string }{
		{"28.51", "48000"}, {"57", "17"}, {"58.50", "16"}, {"58.49", "17"}, // 480 / 30 = 16 exactly
	} {
		want(t, price(kit(t, "16.25", "25", "18", "2.25", "2.50", "480", "1/2", c.asked)).BreakEven, c.kits)
	}
	for _, asked := range []string{"28.50", "28.49", "1"} {
		b := price(kit(t, "16.25", "25", "18", "2.25", "2.50", "480", "1/2", asked)).BreakEven
		if b.Value != nil || b.Text != costing.Never {
			t.Errorf("at %s: %v %q, want never", asked, b.Value, b.Text)
		}
	}
	want(t, price(kit(t, "16.25", "25", "18", "2.25", "2.50", "0", "1/2", "57")).BreakEven, "0")
}

// Money lines round half away from zero to the minor unit, on both sides of
// the half, whatever the sign and whatever the unit.
func TestMoneyLinesRound(t *testing.T) {
	for _, c := range []struct {
		quantity, price string
		digits          int
		line            string
	}{
		{"1", "0.005", 2, "0.01"},
		{"1", "0.00499", 2, "0"},
		{"3/8", "6.00", 2, "2.25"},
		{"11/8", "6.10", 2, "8.39"}, // 8.3875
		{"7/8", "5.50", 2, "4.81"},  // 4.8125
		{"1/8", "1.00", 2, "0.13"},  // 0.125
		{"-1", "0.005", 2, "-0.01"},
		{"-1", "0.00499", 2, "0"},
		{"-1/8", "1.00", 2, "-0.13"},
		{"5/2", "1", 0, "3"}, // a currency without a minor unit
		{"-5/2", "1", 0, "-3"},
		{"249/100", "1", 0, "2"},
		{"1/8", "1", 3, "0.125"},
	} {
		k := kit(t, c.price, "0", "0", "0", "0", "0", "0", "0")
		k.Digits, k.Materials[0].Quantity.Value = c.digits, rat(t, c.quantity)
		want(t, price(k).Materials[0], c.line)
	}
}

// Each fabric is a line, rounded once, and the cost is the sum of the lines:
// two lines of 0.125 are 0.26, not 0.25.
func TestLinesAddUp(t *testing.T) {
	k := kit(t, "0.125", "0", "0", "0", "0", "0", "0", "0")
	k.Materials = append(k.Materials, k.Materials[0])
	want(t, price(k).Fabric, "0.26")
	k.Materials = nil
	want(t, price(k).Fabric, "0")
}

// A margin of the whole price has no price, and a kit that costs nothing and
// sells for nothing neither margin nor markup: told, not divided by zero.
func TestWhatCannotBeWorkedOut(t *testing.T) {
	c := price(kit(t, "16.25", "25", "18", "2.25", "2.50", "480", "1", "0"))
	for _, r := range []costing.Result{c.ForMargin, c.Price, c.Margin, c.Markup, c.BreakEven} {
		if r.Value != nil || r.Text == "" {
			t.Errorf("%s: %v %q", r.Name, r.Value, r.Text)
		}
	}
	want(t, c.Unit, "28.50")
	c = price(kit(t, "0", "0", "0", "0", "0", "0", "0", "0"))
	for _, r := range []costing.Result{c.Margin, c.Markup} {
		if r.Value != nil || r.Text == "" {
			t.Errorf("%s: %v %q", r.Name, r.Value, r.Text)
		}
	}
}

// Several sizes stand in one workbook: every result has the size's suffix.
func TestSuffix(t *testing.T) {
	k := kit(t, "16.25", "25", "18", "2.25", "2.50", "480", "1/2", "57")
	k.Suffix = "_wall"
	c := price(k)
	for _, r := range append(c.Materials, c.Fabric, c.Labour, c.Unit, c.ForMargin, c.Keystone, c.Price, c.Margin, c.Markup, c.Contribution, c.BreakEven) {
		if len(r.Name) < 6 || r.Name[len(r.Name)-5:] != "_wall" {
			t.Errorf("%s has no suffix", r.Name)
		}
	}
}
