package costing

import (
	"math/big"
	"strings"

	"yardproof/pipeline/report"
)

// Of is the value of the cell that a result stands in.
func Of(r Result) *report.Expr { return r.ref() }

// Fixed is a whole number written into the formula itself.
func Fixed(n int64) *report.Expr { return fixed(n) }

// Words is a text in place of a number.
func Words(text string) *report.Expr { return words(text) }

// Sum adds its arguments; of none it is 0.
func Sum(args ...*report.Expr) *report.Expr { return sum(args...) }

// SumKnown adds those of some cells that hold a number, and passes over texts.
func SumKnown(cells ...*report.Expr) *report.Expr {
	total := new(big.Rat)
	for _, c := range cells {
		if c.Value != nil {
			total.Add(total, c.Value)
		}
	}
	return &report.Expr{Op: report.AddKnown, Args: cells, Value: total}
}

// Less is a - b.
func Less(a, b *report.Expr) *report.Expr { return less(a, b) }

// Times is a x b.
func Times(a, b *report.Expr) *report.Expr { return times(a, b) }

// Quotient is a / b, and unknown where b is 0.
func Quotient(a, b *report.Expr) *report.Expr { return over(a, b) }

// Round is to so many decimals, half away from zero.
func Round(a *report.Expr, digits int) *report.Expr { return round(a, digits) }

// RoundUp is to so many decimals, away from zero.
func RoundUp(a *report.Expr, digits int) *report.Expr { return roundUp(a, digits) }

// RoundDown is to so many decimals, towards zero.
func RoundDown(a *report.Expr, digits int) *report.Expr { return roundDown(a, digits) }

// Most is the greatest of its arguments, of which there is at least one.
func Most(args ...*report.Expr) *report.Expr {
	return extreme(report.Max, args, func(order int) bool { return order > 0 })
}

func extreme(op report.Op, args []*report.Expr, better func(order int) bool) *report.Expr {
	return result(&report.Expr{Op: op, Args: args}, func() *big.Rat {
		best := args[0].Value
		for _, a := range args[1:] {
			if better(a.Value.Cmp(best)) {
				best = a.Value
			}
		}
		return best
	})
}

// Exceeds is the condition a > b.
func Exceeds(a, b *report.Expr) *report.Expr {
	return compared(report.Exceeds, a, b, func(order int) bool { return order > 0 })
}

// Under is the condition a < b.
func Under(a, b *report.Expr) *report.Expr {
	return compared(report.Under, a, b, func(order int) bool { return order < 0 })
}

func compared(op report.Op, a, b *report.Expr, holds func(order int) bool) *report.Expr {
	return result(&report.Expr{Op: op, Args: []*report.Expr{a, b}}, func() *big.Rat {
		return truth(holds(a.Value.Cmp(b.Value)))
	})
}

// Equals is the condition that a and b are the same number, or the same text
// but for upper and lower case, as spreadsheet programs compare texts.
func Equals(a, b *report.Expr) *report.Expr {
	e := &report.Expr{Op: report.Equals, Args: []*report.Expr{a, b}}
	if known(a, b) {
		e.Value = truth(a.Value.Cmp(b.Value) == 0)
	} else {
		e.Value = truth(a.Value == nil && b.Value == nil && strings.EqualFold(a.Text, b.Text))
	}
	return e
}

// Not is the condition that another does not hold.
func Not(condition *report.Expr) *report.Expr {
	return result(&report.Expr{Op: report.Not, Args: []*report.Expr{condition}}, func() *big.Rat {
		return truth(condition.Value.Sign() == 0)
	})
}

func truth(holds bool) *big.Rat {
	if holds {
		return big.NewRat(1, 1)
	}
	return new(big.Rat)
}

// If is then where the condition holds, else otherwise, and unknown where the
// condition is.
func If(condition, then, otherwise *report.Expr) *report.Expr {
	e := &report.Expr{Op: report.If, Args: []*report.Expr{condition, then, otherwise}}
	switch {
	case condition.Value == nil:
		e.Text = report.Unknown
	case condition.Value.Sign() != 0:
		e.Value, e.Text = then.Value, then.Text
	default:
		e.Value, e.Text = otherwise.Value, otherwise.Text
	}
	return e
}

// Join is one text of texts and numbers; numbers are rounded to so many
// decimals, half away from zero, and end in no zero behind the decimal point.
func Join(digits int, args ...*report.Expr) *report.Expr {
	e := &report.Expr{Op: report.Join, Args: args, Digits: digits}
	var s strings.Builder
	for _, a := range args {
		if a.Value == nil {
			s.WriteString(a.Text)
			continue
		}
		number := round(a, digits).Value.FloatString(digits)
		if strings.Contains(number, ".") {
			number = strings.TrimSuffix(strings.TrimRight(number, "0"), ".")
		}
		s.WriteString(number)
	}
	e.Text = s.String()
	return e
}
