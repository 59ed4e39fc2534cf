package costing_test

import (
	"math/big"
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
			c := costing.Price(k)
			cells := map[string]*report.Expr{}
			for _, in := range []costing.Input{k.Minutes, k.Rate, k.Packaging, k.Pattern, k.Fixed, k.Margin, k.Asked, k.Materials[0].Quantity, k.Materials[0].Price} {
				cells[in.Name] = &report.Expr{Value: in.Value}
			}
			results := append(c.Materials, c.Fabric, c.Labour, c.Unit, c.ForMargin, c.Keystone, c.Price, c.Margin, c.Markup, c.BreakEven)
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
	switch e.Op {
	case report.Const:
		return e.Value
	case report.Ref:
		cell := cells[e.Name]
		if cell == nil {
			t.Fatalf("no cell is named %s", e.Name)
		}
		return evaluate(t, cell, cells)
	}
	var args []*big.Rat
	for _, a := range e.Args {
		args = append(args, evaluate(t, a, cells))
	}
	if e.Op == report.IfOver {
		switch {
		case args[0] == nil || args[1] == nil:
			return nil
		case args[0].Cmp(args[1]) > 0:
			return args[2]
		}
		return args[3]
	}
	for _, a := range args {
		if a == nil {
			return nil
		}
	}
	return apply(t, e, args)
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
	case report.Round:
		return steps(args[0], e.Digits, big.NewRat(1, 2))
	case report.RoundUp:
		return steps(args[0], e.Digits, big.NewRat(0, 1))
	}
	t.Fatalf("no such operation: %d", e.Op)
	return nil
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
