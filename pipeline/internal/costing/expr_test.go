package costing_test

import (
	"maps"
	"math/big"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/report"
)

// Every result, worked out anew from its tree and the values of the named
// cells alone, is the value stored beside it: a workbook's formula and its
// cached number cannot drift apart.
func TestTreesGiveTheirValues(t *testing.T) {
	for _, asked := range []string{"0", "57", "20"} {
		for _, margin := range []string{"1/2", "3/5", "1"} {
			k := kit(t, "16.25", "25", "18", "2.25", "2.50", "480", margin, asked)
			k.Things = []costing.Item{{Quantity: costing.Input{Name: "labels", Value: big.NewRat(2, 1)}, Price: costing.Input{Name: "label", Value: big.NewRat(2, 5)}}}
			k.Spoilage.Value, k.FeeShare.Value, k.FeeEach.Value, k.Bought.Value = big.NewRat(1, 50), big.NewRat(29, 1000), big.NewRat(3, 10), big.NewRat(885, 2)
			c := price(k)
			cells := map[string]*report.Expr{}
			for _, in := range []costing.Input{
				k.Minutes, k.Rate, k.Packaging, k.Pattern, k.Spoilage, k.FeeShare, k.FeeEach, k.Trade, k.Fixed, k.Margin, k.Asked, k.Run, k.Bought,
				k.Materials[0].Quantity, k.Materials[0].Price, k.Things[0].Quantity, k.Things[0].Price,
			} {
				cells[in.Name] = &report.Expr{Value: in.Value}
			}
			results := append(c.Materials, c.Things[0], c.Fabric, c.Other, c.Labour, c.Spoilage, c.Unit, c.ForMargin, c.Keystone, c.Price, c.Net, c.Margin, c.Markup,
				c.Contribution, c.BreakEven, c.RunCost, c.RunProfit, c.UnitBought, c.MarginBought, c.TradePrice, c.TradeMargin, c.RetailForTrade)
			for _, r := range results {
				cells[r.Name] = r.Expr
			}
			for _, r := range results {
				if got := evaluate(t, r.Expr, cells); !equal(got, r.Value) {
					t.Errorf("margin %s, asked %s: %s is stored as %v, and comes to %v", margin, asked, r.Name, r.Value, got)
				}
			}
		}
	}
}

func equal(a, b *big.Rat) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.Cmp(b) == 0
}

// evaluate works a tree out another way than its builder does: a Ref is
// looked up and worked out in turn, and rounding goes by whole numbers. Nil is
// what has no number.
func evaluate(t *testing.T, e *report.Expr, cells map[string]*report.Expr) *big.Rat {
	t.Helper()
	number, _ := workOut(t, e, cells)
	return number
}

// workOut gives a number, or a text where there is none.
func workOut(t *testing.T, e *report.Expr, cells map[string]*report.Expr) (*big.Rat, string) {
	t.Helper()
	switch e.Op {
	case report.Const:
		return e.Value, e.Text
	case report.Ref:
		cell := cells[e.Name]
		if cell == nil {
			t.Fatalf("no cell is named %s", e.Name)
		}
		return workOut(t, cell, cells)
	}
	var args []*big.Rat
	var texts []string
	missing := false
	for _, a := range e.Args {
		number, text := workOut(t, a, cells)
		args, texts = append(args, number), append(texts, text)
		missing = missing || number == nil
	}
	switch {
	case e.Op == report.Join:
		return nil, joined(args, texts, e.Digits)
	case e.Op == report.Equals && missing:
		return truth(args[0] == nil && args[1] == nil && strings.EqualFold(texts[0], texts[1])), ""
	case e.Op == report.If && args[0] == nil:
		return nil, report.Unknown
	case e.Op == report.If && args[0].Sign() == 0:
		return args[2], texts[2]
	case e.Op == report.If:
		return args[1], texts[1]
	case missing:
		return nil, report.Unknown
	}
	if number := apply(t, e, args); number != nil {
		return number, ""
	}
	return nil, report.Unknown
}

func joined(args []*big.Rat, texts []string, digits int) string {
	all := ""
	for i, a := range args {
		if a == nil {
			all += texts[i]
			continue
		}
		places, _ := steps(a, digits, big.NewRat(1, 2)).FloatPrec()
		all += steps(a, digits, big.NewRat(1, 2)).FloatString(places)
	}
	return all
}

func truth(holds bool) *big.Rat {
	if holds {
		return big.NewRat(1, 1)
	}
	return big.NewRat(0, 1)
}

func apply(t *testing.T, e *report.Expr, args []*big.Rat) *big.Rat {
	t.Helper()
	switch e.Op {
	case report.Add:
		total := new(big.Rat)
		for _, a := range args {
			total.Add(total, a)
		}
		return total
	case report.Sub:
		return new(big.Rat).Sub(args[0], args[1])
	case report.Mul:
		return new(big.Rat).Mul(args[0], args[1])
	case report.Div:
		if args[1].Sign() == 0 {
			return nil
		}
		return new(big.Rat).Quo(args[0], args[1])
	case report.Min:
		return slices.MinFunc(args, (*big.Rat).Cmp)
	case report.Max:
		return slices.MaxFunc(args, (*big.Rat).Cmp)
	case report.Round:
		return steps(args[0], e.Digits, big.NewRat(1, 2))
	case report.RoundUp:
		return steps(args[0], e.Digits, big.NewRat(0, 1))
	case report.RoundDown:
		return steps(args[0], e.Digits, big.NewRat(2, 1))
	case report.Exceeds:
		return truth(args[0].Cmp(args[1]) > 0)
	case report.Under:
		return truth(args[1].Cmp(args[0]) > 0)
	case report.Equals:
		return truth(args[0].Cmp(args[1]) == 0)
	case report.Not:
		return truth(args[0].Sign() == 0)
	}
	t.Fatalf("no such operation: %d", e.Op)
	return nil
}

// grow makes a random tree over the cells, of every operation there is.
func grow(r *rand.Rand, depth int, cells map[string]*report.Expr) *report.Expr {
	names := slices.Sorted(maps.Keys(cells))
	if depth == 0 || r.IntN(6) == 0 {
		switch r.IntN(4) {
		case 0:
			return costing.Fixed(r.Int64N(7) - 3)
		case 1:
			return costing.Words([]string{"never", "Never", "as planned"}[r.IntN(3)])
		}
		name := names[r.IntN(len(names))]
		return &report.Expr{Op: report.Ref, Name: name, Value: cells[name].Value, Text: cells[name].Text}
	}
	a := func() *report.Expr { return grow(r, depth-1, cells) }
	condition := []func(a, b *report.Expr) *report.Expr{costing.Exceeds, costing.Under, costing.Equals}[r.IntN(3)](a(), a())
	if r.IntN(3) == 0 {
		condition = costing.Not(condition)
	}
	switch r.IntN(10) {
	case 0:
		return costing.Sum(a(), a(), a())
	case 1:
		return costing.Less(a(), a())
	case 2:
		return costing.Times(a(), a())
	case 3:
		return costing.Quotient(a(), a())
	case 4:
		return costing.Most(a(), a(), a())
	case 5:
		return costing.Round(a(), r.IntN(3))
	case 6:
		return costing.RoundUp(a(), r.IntN(3))
	case 7:
		return costing.RoundDown(a(), r.IntN(3))
	case 8:
		return costing.Join(r.IntN(3), a(), costing.Words(" kits"), a())
	}
	return costing.If(condition, a(), a())
}

// Random trees of every operation come to what is stored beside them, text
// included.
func TestRandomTreesGiveTheirValues(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	cells := map[string]*report.Expr{"never": costing.Words("never")}
	for i, value := range []string{"0", "1", "-5/2", "20", "1/3", "2.005", "-0.004"} {
		cells["cell"+string(rune('a'+i))] = &report.Expr{Value: rat(t, value)}
	}
	numbers, texts := 0, 0
	for range 5000 {
		tree := grow(r, 3, cells)
		number, text := workOut(t, tree, cells)
		if !equal(number, tree.Value) || number == nil && text != tree.Text {
			t.Fatalf("%v comes to %v %q, stored is %v %q", tree, number, text, tree.Value, tree.Text)
		}
		if number != nil {
			numbers++
		} else if text != report.Unknown {
			texts++
		}
	}
	if numbers < 1000 || texts < 500 {
		t.Errorf("only %d numbers and %d texts", numbers, texts)
	}
}

// A bolt plan that was made for another number of kits says so; the number of
// kits that it was made for is still right, one more or less is not.
func TestMadeForOtherKits(t *testing.T) {
	for kits, want := range map[string]string{"20": "as planned", "21": "made for 20 kits: run again", "19": "made for 20 kits: run again"} {
		run, made := costing.Ref("kits", rat(t, kits)), costing.Ref("made_for", rat(t, "20"))
		got := costing.If(costing.Equals(run, made), costing.Words("as planned"),
			costing.Join(0, costing.Words("made for "), made, costing.Words(" kits: run again")))
		if got.Value != nil || got.Text != want {
			t.Errorf("%s kits: %q, want %q", kits, got.Text, want)
		}
	}
}

// steps rounds to so many decimals, away from zero from the given share of a
// step on; a share of zero is anything above none.
func steps(x *big.Rat, digits int, from *big.Rat) *big.Rat {
	step := big.NewRat(1, 1)
	for range digits {
		step.Mul(step, big.NewRat(1, 10))
	}
	n := new(big.Rat).Quo(new(big.Rat).Abs(x), step)
	whole := new(big.Rat).SetInt(new(big.Int).Quo(n.Num(), n.Denom()))
	rest := new(big.Rat).Sub(n, whole)
	if rest.Sign() > 0 && rest.Cmp(from) >= 0 {
		whole.Add(whole, big.NewRat(1, 1))
	}
	if x.Sign() < 0 {
		whole.Neg(whole)
	}
	return whole.Mul(whole, step)
}
