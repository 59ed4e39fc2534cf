package bolts

import (
	"cmp"
	"slices"
)

// mostFewer is how many orders of the same cost are tried for one of fewer bolts.
const mostFewer = 40

// fewer is a plan of the same cost with fewer bolts, fewest first; the plan itself
// where none is found.
func (a Article) fewer(plan Plan, wants []Want) (Plan, error) {
	if a.Gone || len(a.Offers) < 2 || bolts(plan.Order) < 2 {
		return plan, nil
	}
	same, _ := a.orders(plan.Cost, plan.Cost+1)
	same = slices.DeleteFunc(same, func(order []int) bool { return bolts(order) >= bolts(plan.Order) })
	slices.SortStableFunc(same, func(x, y []int) int { return cmp.Compare(bolts(x), bolts(y)) })
	for _, order := range same[:min(len(same), mostFewer)] {
		if a.Work.spent() {
			return plan, nil
		}
		r, err := a.cutFrom(order, wants)
		if err != nil {
			return Plan{}, err
		}
		if r.Cost == 0 {
			found := a.whole(a.read(r, wants), order, plan.Bound, !plan.Proved)
			return found, Recount(a, wants, found)
		}
	}
	return plan, nil
}

// bolts are how many an order has.
func bolts(order []int) int {
	total := 0
	for _, n := range order {
		total += n
	}
	return total
}
