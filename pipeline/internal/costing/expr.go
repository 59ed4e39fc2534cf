package costing

import (
	"math/big"

	"yardproof/pipeline/report"
)

// fixed is a number written into the formula itself.
func fixed(n int64) *report.Expr {
	return &report.Expr{Op: report.Const, Value: big.NewRat(n, 1)}
}

// Ref is the value of a named cell.
func Ref(name string, value *big.Rat) *report.Expr {
	return &report.Expr{Op: report.Ref, Name: name, Value: value}
}

// known reports whether every argument came out as a number: what is worked out
// from "never" or from nothing has no value.
func known(args ...*report.Expr) bool {
	for _, a := range args {
		if a.Value == nil {
			return false
		}
	}
	return true
}

func result(e *report.Expr, value func() *big.Rat) *report.Expr {
	if known(e.Args...) {
		e.Value = value()
	}
	if e.Value == nil {
		e.Text = report.Unknown
	}
	return e
}

func sum(args ...*report.Expr) *report.Expr {
	return result(&report.Expr{Op: report.Add, Args: args}, func() *big.Rat {
		total := new(big.Rat)
		for _, a := range args {
			total.Add(total, a.Value)
		}
		return total
	})
}

func less(a, b *report.Expr) *report.Expr {
	return result(&report.Expr{Op: report.Sub, Args: []*report.Expr{a, b}}, func() *big.Rat {
		return new(big.Rat).Sub(a.Value, b.Value)
	})
}

func times(a, b *report.Expr) *report.Expr {
	return result(&report.Expr{Op: report.Mul, Args: []*report.Expr{a, b}}, func() *big.Rat {
		return new(big.Rat).Mul(a.Value, b.Value)
	})
}

func over(a, b *report.Expr) *report.Expr {
	return result(&report.Expr{Op: report.Div, Args: []*report.Expr{a, b}}, func() *big.Rat {
		if b.Value.Sign() == 0 {
			return nil
		}
		return new(big.Rat).Quo(a.Value, b.Value)
	})
}

// round is to so many decimals, half away from zero, as money is.
func round(a *report.Expr, digits int) *report.Expr {
	return result(&report.Expr{Op: report.Round, Args: []*report.Expr{a}, Digits: digits}, func() *big.Rat {
		return rounded(a.Value, digits, func(twiceLeft, den *big.Int) bool { return twiceLeft.Cmp(den) >= 0 })
	})
}

// roundUp is away from zero to so many decimals.
func roundUp(a *report.Expr, digits int) *report.Expr {
	return result(&report.Expr{Op: report.RoundUp, Args: []*report.Expr{a}, Digits: digits}, func() *big.Rat {
		return rounded(a.Value, digits, func(twiceLeft, den *big.Int) bool { return twiceLeft.Sign() > 0 })
	})
}

// rounded cuts the size of r to so many decimals and adds one in the last
// place where up says so of what was cut off.
func rounded(r *big.Rat, digits int, up func(twiceLeft, den *big.Int) bool) *big.Rat {
	scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(digits)), nil)
	size := new(big.Rat).Abs(r)
	size.Mul(size, new(big.Rat).SetInt(scale))
	whole, left := new(big.Int).QuoRem(size.Num(), size.Denom(), new(big.Int))
	if up(left.Lsh(left, 1), size.Denom()) {
		whole.Add(whole, big.NewInt(1))
	}
	out := new(big.Rat).SetFrac(whole, scale)
	if r.Sign() < 0 {
		out.Neg(out)
	}
	return out
}

// roundDown is towards zero to so many decimals.
func roundDown(a *report.Expr, digits int) *report.Expr {
	return result(&report.Expr{Op: report.RoundDown, Args: []*report.Expr{a}, Digits: digits}, func() *big.Rat {
		return rounded(a.Value, digits, func(_, _ *big.Int) bool { return false })
	})
}

// ifOver is then when a exceeds b, else otherwise.
func ifOver(a, b, then, otherwise *report.Expr) *report.Expr {
	return If(Exceeds(a, b), then, otherwise)
}

// words is a text in place of a number.
func words(text string) *report.Expr {
	return &report.Expr{Op: report.Const, Text: text}
}
