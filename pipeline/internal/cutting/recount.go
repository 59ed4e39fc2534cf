package cutting

import (
	"fmt"

	"yardproof/schema/measure"
)

// A Fault is an error of the program and of nobody else: an answer that does not
// hold when it is counted again from the problem alone.
type Fault struct{ What string }

func (e *Fault) Error() string { return "the answer does not hold: " + e.What }

func fault(format string, args ...any) error { return &Fault{fmt.Sprintf(format, args...)} }

// recount counts a plan again: every length is cut as often as it is wanted, no
// stock holds more than its length or is cut more often than it is there, and the
// cost is that of the stocks and no less than the bound. It uses nothing of what
// the plan was found with.
func (p LengthProblem) recount(r LengthResult) error {
	stock, wanted := make([]int, len(p.Stocks)), make([]int, len(p.Wanted))
	var cost int64
	for _, c := range r.Stocks {
		left := p.Stocks[c.Stock].Length
		for _, q := range c.Cuts {
			wanted[q.Wanted] += q.Count * c.Repeat
			left -= p.Wanted[q.Wanted].Length * measure.Length(q.Count)
		}
		if left < 0 || left != c.Left || c.Repeat <= 0 {
			return fault("%d of stock %d leave %d of each, not %d", c.Repeat, c.Stock, left, c.Left)
		}
		stock[c.Stock] += c.Repeat
		cost += p.Stocks[c.Stock].Cost * int64(c.Repeat)
	}
	for i, s := range p.Stocks {
		if s.Count != Unlimited && stock[i] > s.Count {
			return fault("stock %d is cut %d times and there are %d", i, stock[i], s.Count)
		}
	}
	for i, w := range p.Wanted {
		if wanted[i] != w.Count {
			return fault("length %d is cut %d times and wanted %d times", i, wanted[i], w.Count)
		}
	}
	if cost != r.Cost || cost < r.Bound {
		return fault("the stocks cost %d; told are %d, and that nothing costs less than %d", cost, r.Cost, r.Bound)
	}
	return nil
}
