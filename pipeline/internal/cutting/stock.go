package cutting

import (
	"cmp"
	"slices"

	"yardproof/schema/measure"
)

// stockRooms makes the classes of an instance stocks of different lengths: a
// strip of class t is a length of stock t, its height is what that costs, and
// the count Z_t is the number of that class alone.
type stockRooms struct {
	room []int   // by class: length in units, none more than the instance's width
	most []int64 // by class: how many there are, or Unlimited
	from [][]int // by class: indices of the problem's stocks, all of one length and cost
	unit int64   // every cost is a multiple of it
	tick measure.Length
}

// room is the width of a strip of the class.
func (in *instance) room(class int) int {
	if in.stock != nil {
		return in.stock.room[class]
	}
	return in.width
}

// most is how many strips of the class a plan no longer than goal can use.
func (in *instance) most(class int, goal int64) int64 {
	if in.stock == nil {
		return goal / in.heights[class]
	}
	n := in.stock.most[class]
	if n == Unlimited {
		n = int64(pieces(in.demands()))
	}
	if h := in.heights[class]; h > 0 {
		n = min(n, goal/h)
	}
	return n
}

// after is the instance when the stocks that a plan uses are taken.
func (in *instance) after(p plan) *instance {
	if in.stock == nil {
		return in
	}
	rest, stock := *in, *in.stock
	stock.most = slices.Clone(stock.most)
	for _, r := range p {
		if stock.most[r.class] != Unlimited {
			stock.most[r.class] -= int64(r.times)
		}
	}
	rest.stock = &stock
	return &rest
}

// newLengthInstance normalises a problem of lengths. Stocks that hold nothing,
// or are no longer and no cheaper than one without limit, are left out.
func newLengthInstance(p LengthProblem, columns int) *instance {
	in := &instance{unitH: 1, stock: &stockRooms{}}
	in.kinds = lengthKinds(p.Wanted)
	unit := measure.Length(0)
	for _, k := range in.kinds {
		unit = gcd(unit, k.across)
	}
	if len(in.kinds) == 0 {
		return in
	}
	in.stock.tick = unit
	for i := range in.kinds {
		k := &in.kinds[i]
		k.shapes = []shape{{width: int(k.across / unit), across: k.across, along: 1}}
	}
	in.addStocks(p.Stocks)
	var sizes []sized
	for _, k := range in.kinds {
		sizes = append(sizes, sized{k.shapes[0].width, k.demand})
	}
	in.cells = newCells(sizes, in.width, columns)
	return in
}

// mostLengthCells is the largest number of columns of a table: a bolt of 100 yd
// in sixteenths of an inch. Longer ones on a finer grid have columns at the sums of
// lengths.
const mostLengthCells = 57_600

// lengthKinds are the different lengths wanted, longest first.
func lengthKinds(wanted []Wanted) []kind {
	var kinds []kind
	at := map[measure.Length]int{}
	for i, w := range wanted {
		if w.Count == 0 {
			continue
		}
		t, seen := at[w.Length]
		if !seen {
			t = len(kinds)
			at[w.Length] = t
			kinds = append(kinds, kind{across: w.Length, along: 1, together: 1})
		}
		kinds[t].demand += w.Count
		kinds[t].from = append(kinds[t].from, source{index: i, count: w.Count, name: w.Name})
	}
	slices.SortFunc(kinds, func(a, b kind) int { return cmp.Compare(b.across, a.across) })
	for i := range kinds {
		kinds[i].sortSources()
	}
	return kinds
}

// addStocks makes classes of the stocks, cheaper first, then shorter.
func (in *instance) addStocks(stocks []Stock) {
	room := func(s Stock) int { return int(s.Length / in.stock.tick) }
	shortest := in.kinds[len(in.kinds)-1].shapes[0].width
	var order []int
	for i, s := range stocks {
		idle := func(q Stock) bool {
			return q.Count == Unlimited && room(q) >= room(s) && q.Cost <= s.Cost && (q.Cost < s.Cost || room(q) > room(s) || s.Count != Unlimited)
		}
		if room(s) >= shortest && s.Count != 0 && !slices.ContainsFunc(stocks, idle) {
			order = append(order, i)
		}
	}
	slices.SortFunc(order, func(a, b int) int {
		x, y := stocks[a], stocks[b]
		return cmp.Or(cmp.Compare(x.Cost, y.Cost), cmp.Compare(x.Length, y.Length), cmp.Compare(x.Name, y.Name), cmp.Compare(a, b))
	})
	for _, i := range order {
		s, last := stocks[i], len(in.heights)-1
		if last >= 0 && in.heights[last] == s.Cost && stocks[in.stock.from[last][0]].Length == s.Length {
			if s.Count != Unlimited {
				in.stock.most[last] += int64(s.Count)
			}
			in.stock.from[last] = append(in.stock.from[last], i)
			continue
		}
		in.heights = append(in.heights, s.Cost)
		in.stock.unit = int64(gcd(measure.Length(in.stock.unit), measure.Length(s.Cost)))
		in.stock.room, in.stock.most = append(in.stock.room, room(s)), append(in.stock.most, int64(s.Count))
		in.stock.from = append(in.stock.from, []int{i})
		in.width = max(in.width, room(s))
	}
	in.stock.unit = max(1, in.stock.unit)
	for t := range in.heights {
		in.heights[t] /= in.stock.unit
	}
}

// startStocks is the cheapest of the plans that fill what is free and then, by
// first-fit decreasing length, one stock without limit; the last length is cut
// from the cheapest stock that holds it.
func (in *instance) startStocks(demand []int) plan {
	var best plan
	for class := range in.heights {
		if in.stock.most[class] != Unlimited || !in.holdsAll(class, demand) {
			continue
		}
		left := slices.Clone(demand)
		p := in.fillFree(nil, left)
		for pieces(left) > 0 {
			p = append(p, in.cheapest(in.filled(class, left, Unlimited)))
			subtract(left, p[len(p)-1])
		}
		if best == nil || in.length(p) < in.length(best) {
			best = p
		}
	}
	return in.tidy(best, demand)
}

func (in *instance) holdsAll(class int, demand []int) bool {
	for i, d := range demand {
		if d > 0 {
			return in.kinds[i].shapes[0].width <= in.room(class)
		}
	}
	return true
}

// fillFree adds to a plan what is there for nothing and not yet used, filled
// with what is left of the demands, which it takes away.
func (in *instance) fillFree(p plan, left []int) plan {
	for class, cost := range in.heights {
		n := in.stock.most[class]
		if cost > 0 || n == Unlimited {
			continue
		}
		for _, r := range p {
			if r.class == class {
				n -= int64(r.times)
			}
		}
		for n > 0 {
			r := in.filled(class, left, n)
			if r.times == 0 {
				break
			}
			p = append(p, r)
			subtract(left, r)
			n -= int64(r.times)
		}
	}
	return p
}

// filled is a length of the class filled with the longest that fits, again and
// again, as often as the demands and the stock allow.
func (in *instance) filled(class int, left []int, most int64) run {
	q := pattern{class: class, count: make([]int, len(left))}
	room, times := in.room(class), 0
	for i, d := range left {
		n := min(d, room/in.kinds[i].shapes[0].width)
		if n == 0 {
			continue
		}
		q.count[i] = n
		room -= n * in.kinds[i].shapes[0].width
		if times == 0 || d/n < times {
			times = d / n
		}
	}
	if most != Unlimited {
		times = int(min(int64(times), most))
	}
	return run{q, times}
}

// cheapest moves a run to the cheapest stock without limit that holds it.
func (in *instance) cheapest(r run) run {
	for class := range in.heights {
		if in.heights[class] < in.heights[r.class] && in.stock.most[class] == Unlimited && in.fits(r.pattern, class) {
			r.class = class
			return r
		}
	}
	return r
}

// freeFirst deals a plan anew so that what is there for nothing is filled
// before anything bought is cut into.
func (in *instance) freeFirst(best plan) plan {
	left := in.demands()
	var free, bought, out plan
	for _, r := range best {
		if in.heights[r.class] == 0 {
			free = append(free, r)
			subtract(left, r)
		} else {
			bought = append(bought, r)
		}
	}
	if pieces(left) == 0 {
		return free
	}
	out = in.fillFree(free, left)
	return append(out, in.tidy(bought, left)...)
}

// cutStocks deals a plan back to the caller's lengths and stocks.
func (in *instance) cutStocks(p LengthProblem, best plan) (cuts []CutStock, cost int64) {
	d := newDealer(in)
	var named Problem
	for _, w := range p.Wanted {
		named.Pieces = append(named.Pieces, Piece{Name: w.Name, Across: w.Length, Along: 1, Count: w.Count})
	}
	used := make([]int, len(p.Stocks))
	for _, r := range best {
		for left := r.times; left > 0; {
			stock, there := in.nextStock(p, r.class, used)
			row, n := d.row(named, r.pattern, min(left, there))
			c := CutStock{Stock: stock, Repeat: n, Left: p.Stocks[stock].Length - row.used(named.Pieces)}
			for _, q := range row.Cuts {
				c.Cuts = append(c.Cuts, LengthCut{q.Piece, q.Count})
			}
			cuts = append(cuts, c)
			cost += p.Stocks[stock].Cost * int64(n)
			used[stock] += n
			left -= n
		}
	}
	return cuts, cost
}

// nextStock is the first stock of a class that is not used up, and how many
// there are of it.
func (in *instance) nextStock(p LengthProblem, class int, used []int) (stock, there int) {
	for _, i := range in.stock.from[class] {
		if n := p.Stocks[i].Count; n == Unlimited || used[i] < n {
			if n == Unlimited {
				n = maxCount + used[i]
			}
			return i, n - used[i]
		}
	}
	return in.stock.from[class][0], maxCount
}

func (in *instance) lengthCertificate(p LengthProblem, b proved, s scaling) *LengthCertificate {
	c := &LengthCertificate{Claim: b.bound * in.stock.unit, Unit: in.stock.unit, Scale: s.scale, Root: b.proof}
	for t, n := range in.stock.most {
		c.Stocks = append(c.Stocks, Stock{Length: p.Stocks[in.stock.from[t][0]].Length, Cost: in.heights[t] * in.stock.unit, Count: int(n)})
	}
	for _, k := range in.kinds {
		c.Sizes = append(c.Sizes, Size{Across: k.across, Along: 1, Count: k.demand})
	}
	return c
}

// left is what a pattern leaves of its length.
func (in *instance) left(q pattern) int {
	room := in.room(q.class)
	for i, n := range q.count {
		room -= n * in.kinds[i].shapes[0].width
	}
	return room
}
