package cutting

import (
	"fmt"
	"slices"

	"yardproof/schema/measure"
)

// illegalLengths recounts a plan from the problem alone.
func illegalLengths(p LengthProblem, r LengthResult) error {
	stock, wanted := make([]int, len(p.Stocks)), make([]int, len(p.Wanted))
	cost, bought := int64(0), false
	for _, c := range r.Stocks {
		left := p.Stocks[c.Stock].Length
		for _, q := range c.Cuts {
			if q.Count <= 0 {
				return fmt.Errorf("cut %+v is of nothing", q)
			}
			wanted[q.Wanted] += q.Count * c.Repeat
			left -= p.Wanted[q.Wanted].Length * measure.Length(q.Count)
		}
		if left < 0 || left != c.Left || c.Repeat <= 0 || len(c.Cuts) == 0 {
			return fmt.Errorf("%+v leaves %d", c, left)
		}
		stock[c.Stock] += c.Repeat
		cost += p.Stocks[c.Stock].Cost * int64(c.Repeat)
		if p.Stocks[c.Stock].Cost > 0 {
			bought = true
		} else if bought {
			return fmt.Errorf("what is there for nothing comes after what is bought")
		}
	}
	if cost != r.Cost || r.Bound > r.Cost || (r.Status == Proved) != (r.Bound == r.Cost) {
		return fmt.Errorf("the stocks cost %d; cost %d, bound %d, %v", cost, r.Cost, r.Bound, r.Status)
	}
	for i, s := range p.Stocks {
		if s.Count != Unlimited && stock[i] > s.Count {
			return fmt.Errorf("stock %d is cut %d times, there are %d", i, stock[i], s.Count)
		}
	}
	for i, w := range p.Wanted {
		if wanted[i] != w.Count {
			return fmt.Errorf("length %d is cut %d times, wanted %d", i, wanted[i], w.Count)
		}
	}
	return nil
}

// verifyLengths re-proves a certificate with a naive knapsack.
func verifyLengths(p LengthProblem, c *LengthCertificate) error {
	if c == nil {
		return fmt.Errorf("there is no certificate")
	}
	v := &verifier{c: &Certificate{Sizes: c.Sizes, Scale: c.Scale}, stocks: c.Stocks}
	if err := sameLengths(p, c); err != nil {
		return err
	}
	if len(c.Sizes) == 0 || c.Claim == 0 {
		return nil
	}
	for _, s := range c.Stocks {
		v.heights = append(v.heights, s.Cost/c.Unit)
	}
	v.goal = v.largestSumBelow(c.Claim / c.Unit)
	lo, up := make([]int64, len(c.Stocks)), make([]int64, len(c.Stocks))
	for k := range up {
		up[k] = v.most(k)
	}
	return v.prove(c.Root, lo, up, nil)
}

// sameLengths checks that a certificate is about the problem: its lengths, and
// every stock that could be of use.
func sameLengths(p LengthProblem, c *LengthCertificate) error {
	count := map[measure.Length]int{}
	for _, w := range p.Wanted {
		count[w.Length] += w.Count
	}
	for _, s := range c.Sizes {
		count[s.Across] -= s.Count
	}
	for l, n := range count {
		if n != 0 {
			return fmt.Errorf("length %d: the certificate is off by %d", l, n)
		}
	}
	if len(c.Sizes) == 0 {
		return nil
	}
	least := c.Sizes[0].Across
	for _, s := range c.Sizes {
		least = min(least, s.Across)
	}
	holds := func(s Stock) measure.Length { return most(c.Sizes, s.Length) }
	there := map[Stock]int{}
	for _, s := range p.Stocks {
		s.Name = ""
		idle := func(q Stock) bool { return q.Count == Unlimited && holds(q) >= holds(s) && q.Cost <= s.Cost }
		if s.Length < least || s.Count != Unlimited && slices.ContainsFunc(c.Stocks, idle) {
			continue
		}
		n := s.Count
		if s.Count = 0; n == Unlimited {
			if !slices.ContainsFunc(c.Stocks, idle) {
				return fmt.Errorf("stock %+v is forgotten", s)
			}
			continue
		}
		there[s] += n
	}
	for _, s := range c.Stocks {
		if s.Cost%c.Unit != 0 {
			return fmt.Errorf("cost %d is no multiple of %d", s.Cost, c.Unit)
		}
		n := s.Count
		if s.Count = 0; n != Unlimited {
			there[s] -= n
		}
	}
	for s, n := range there {
		if n > 0 {
			return fmt.Errorf("stock %+v: the certificate forgets %d", s, n)
		}
	}
	return nil
}

// most is the largest sum of lengths wanted, each as often as you like, that a
// length holds.
func most(sizes []Size, room measure.Length) measure.Length {
	seen := map[measure.Length]bool{0: true}
	best := measure.Length(0)
	for next := []measure.Length{0}; len(next) > 0; next = next[1:] {
		for _, s := range sizes {
			if sum := next[0] + s.Across; sum <= room && !seen[sum] {
				seen[sum], best = true, max(best, sum)
				next = append(next, sum)
			}
		}
	}
	return best
}

// room is how much a strip of class k holds.
func (v *verifier) room(k int) measure.Length {
	if v.stocks != nil {
		return v.stocks[k].Length
	}
	return v.width
}

// most is how many strips of class k a cheaper plan can have.
func (v *verifier) most(k int) int64 {
	if v.stocks == nil {
		return v.goal / v.heights[k]
	}
	n := int64(v.stocks[k].Count)
	if n == Unlimited {
		n = 0
		for _, s := range v.c.Sizes {
			n += int64(s.Count)
		}
	}
	if h := v.heights[k]; h > 0 {
		n = min(n, v.goal/h)
	}
	return n
}

// shrinkStocks uses that costs times counts are the cost of the plan.
func (v *verifier) shrinkStocks(lo, up []int64) (empty bool) {
	left := v.goal
	for k, h := range v.heights {
		left -= h * lo[k]
	}
	for k, h := range v.heights {
		for h > 0 && up[k] > lo[k] && (up[k]-lo[k])*h > left {
			up[k]--
		}
		if lo[k] > up[k] {
			return true
		}
	}
	return left < 0
}
