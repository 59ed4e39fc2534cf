package bolts

import (
	"fmt"
	"slices"

	"yardproof/pipeline/internal/cutting"
	"yardproof/schema/measure"
)

// A Fault is the error of a plan that does not hold. It is one of the program.
type Fault = cutting.Fault

// Recount counts a plan again from the article and the wants alone. The error is a
// *Fault: a want that is not cut, or cut twice, a bolt that holds more than its
// length, an order that is not what is cut, a cost below its bound.
func Recount(a Article, wants []Want, p Plan) error {
	cut, order, err := a.recountCuts(wants, p)
	if err != nil {
		return err
	}
	var rest measure.Length
	for _, q := range p.Rest {
		cut[q.Want] += q.Count
		rest += measure.Length(q.Count) * wants[q.Want].Length
	}
	for i, w := range wants {
		if cut[i] != w.Count {
			return fault("%q is cut %d times and wanted %d times", w.Name, cut[i], w.Count)
		}
	}
	if p.Bound > p.Cost || p.Proved != (p.Bound == p.Cost) {
		return fault("it costs %d, and nothing costs less than %d", p.Cost, p.Bound)
	}
	if a.Gone {
		return nil // nothing is ordered; the rest is what is missing
	}
	if len(a.Offers) > 0 {
		var length measure.Length
		var cost int64
		for i, n := range order {
			length, cost = length+measure.Length(n)*a.Offers[i].Length, cost+int64(n)*a.Offers[i].Cost
		}
		if !slices.Equal(order, p.Order) || rest > 0 || cost != p.Cost || length != p.Length {
			return fault("bolts of %d for %d are cut, %d for %d ordered", length, cost, p.Length, p.Cost)
		}
	} else if p.Length < rest || int64(p.Length) != p.Cost {
		return fault("%d are to be cut of an order of %d", rest, p.Length)
	}
	if p.Length > 0 && (p.Length < a.Least || a.Multiple > 0 && p.Length%a.Multiple != 0) {
		return fault("the supplier does not take an order of %d", p.Length)
	}
	return nil
}

// recountCuts counts how often each want is cut from bolts and part-bolts, and
// the bolts by offer.
func (a Article) recountCuts(wants []Want, p Plan) (cut, order []int, err error) {
	cut, order = make([]int, len(wants)), make([]int, len(a.Offers))
	there := slices.Repeat([]int{1}, len(a.OnHand))
	for _, c := range p.Cuts {
		var whole measure.Length
		if c.Offer >= 0 {
			whole = a.Usable(c.Offer)
			order[c.Offer] += c.Repeat
		} else {
			whole = a.OnHand[c.OnHand]
			there[c.OnHand] -= c.Repeat
		}
		used := c.Left
		for _, q := range c.Pieces {
			cut[q.Want] += q.Count * c.Repeat
			used += measure.Length(q.Count) * wants[q.Want].Length
		}
		if used != whole || c.Left < 0 {
			return nil, nil, fault("a bolt of %d is cut into %d, %d of it left", whole, used, c.Left)
		}
	}
	if slices.ContainsFunc(there, func(n int) bool { return n < 0 }) {
		return nil, nil, fault("a part-bolt is cut twice")
	}
	return cut, order, nil
}

func fault(format string, args ...any) error { return &Fault{What: fmt.Sprintf(format, args...)} }
