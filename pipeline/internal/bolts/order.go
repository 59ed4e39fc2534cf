package bolts

import (
	"cmp"
	"container/heap"
	"slices"

	"yardproof/pipeline/internal/cutting"
	"yardproof/schema/measure"
)

// mostSpare is how many bolts more than kits and smallest order take are tried
// to make a multiple: nobody buys a hundred for that. Of mostBolts steps and
// mostOrders orders what is beyond is not proved.
const (
	mostSpare  = 100
	mostBolts  = 10_000
	mostOrders = 2_000
)

// fill finds the cheapest order that the supplier takes, and from which the
// wants can be cut. Cheaper ones than the plan filled up are tried one by one,
// cheapest first.
func (a Article) fill(plan Plan, wants []Want) (Plan, error) {
	filled := a.filledUp(plan.Order)
	if filled == nil {
		return Plan{}, &Unorderable{a.Least, a.Multiple}
	}
	most := a.cost(filled)
	orders, all := a.orders(plan.Bound, most)
	bound, doubtful := most, !all
	if doubtful {
		bound = plan.Bound
	}
	for _, order := range orders {
		if a.Work.spent() {
			return a.whole(plan, filled, min(bound, a.cost(order)), true), nil
		}
		r, err := a.cutFrom(order, wants)
		enough, sure := r.Cost == 0, r.Bound > 0
		switch {
		case err != nil:
			return Plan{}, err
		case enough:
			found := a.read(r, wants)
			return a.whole(found, order, min(bound, a.cost(order)), doubtful), nil
		case !sure && !doubtful:
			bound, doubtful = a.cost(order), true
		}
	}
	return a.whole(plan, filled, bound, doubtful), nil
}

// whole is a plan with an order that may be more than it cuts: the bolts that
// are left over stay whole.
func (a Article) whole(plan Plan, order []int, bound int64, doubtful bool) Plan {
	used := make([]int, len(order))
	for _, c := range plan.Cuts {
		if c.Offer >= 0 {
			used[c.Offer] += c.Repeat
		}
	}
	for i, n := range order {
		if spare := n - used[i]; spare > 0 {
			plan.Cuts = append(plan.Cuts, Cut{Offer: i, OnHand: -1, Repeat: spare, Left: a.Usable(i)})
		}
	}
	plan.Order, plan.Length, plan.Cost = order, a.invoiced(order), a.cost(order)
	plan.Bound, plan.Proved = bound, !doubtful || bound == plan.Cost
	return plan
}

func (a Article) cost(order []int) int64 {
	var total int64
	for i, n := range order {
		total += int64(n) * a.Offers[i].Cost
	}
	return total
}

// filledUp is an order with further bolts, the cheapest that the supplier
// takes; nil when there is none among the cheapest ones. Bolts are added one by
// one to the cheapest order of each length.
func (a Article) filledUp(order []int) []int {
	most := max(a.Least, a.invoiced(order)) + mostSpare*a.Offers[0].Length
	queue := &byCost{{slices.Clone(order), a.cost(order)}}
	seen := map[measure.Length]bool{}
	for tried := 0; queue.Len() > 0 && tried < mostBolts; {
		cheapest := heap.Pop(queue).(costed)
		length := a.invoiced(cheapest.order)
		if seen[length] {
			continue
		}
		if seen[length] = true; a.takes(length) {
			return cheapest.order
		}
		if tried++; length > most {
			continue
		}
		for i, o := range a.Offers {
			more := slices.Clone(cheapest.order)
			more[i]++
			heap.Push(queue, costed{more, cheapest.cost + o.Cost})
		}
	}
	return nil
}

// costed is an order and its cost, byCost a heap of them, cheapest first.
type costed struct {
	order []int
	cost  int64
}

type byCost []costed

func (q byCost) Len() int      { return len(q) }
func (q byCost) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q byCost) Less(i, j int) bool {
	return cmp.Or(cmp.Compare(q[i].cost, q[j].cost), slices.Compare(q[i].order, q[j].order)) < 0
}
func (q *byCost) Push(x any) { *q = append(*q, x.(costed)) }
func (q *byCost) Pop() any {
	last := (*q)[len(*q)-1]
	*q = (*q)[:len(*q)-1]
	return last
}

// orders are those that the supplier takes and that cost at least one sum and
// less than another, cheapest first; all is false when there are too many.
func (a Article) orders(from, below int64) (orders [][]int, all bool) {
	tried := 0
	var add func(order []int, offer int)
	add = func(order []int, offer int) {
		if tried++; tried > mostBolts || a.cost(order) >= below {
			return
		}
		if offer == len(a.Offers) {
			if a.cost(order) >= from && a.takes(a.invoiced(order)) {
				orders = append(orders, slices.Clone(order))
			}
			return
		}
		for n := 0; tried <= mostBolts; n++ {
			order[offer] = n
			if a.cost(order) >= below || n > mostBolts {
				break
			}
			add(order, offer+1)
		}
		order[offer] = 0
	}
	add(make([]int, len(a.Offers)), 0)
	slices.SortStableFunc(orders, func(x, y []int) int {
		return cmp.Or(cmp.Compare(a.cost(x), a.cost(y)), slices.Compare(x, y))
	})
	all = tried <= mostBolts && len(orders) <= mostOrders
	return orders[:min(len(orders), mostOrders)], all
}

// cutFrom cuts the wants from what is on hand and an order. The cost is 0 if they
// come out of it, and the bound more than 0 if they surely cannot.
func (a Article) cutFrom(order []int, wants []Want) (cutting.LengthResult, error) {
	p := a.problem(wants)
	var longest measure.Length
	for i, n := range order {
		p.Stocks = append(p.Stocks, cutting.Stock{Length: a.Usable(i), Count: n})
	}
	for _, w := range wants {
		longest = max(longest, w.Length)
	}
	p.Stocks = append(p.Stocks, cutting.Stock{Name: "missing", Length: longest, Cost: 1, Count: cutting.Unlimited})
	return a.lengths(p, a.limits())
}
