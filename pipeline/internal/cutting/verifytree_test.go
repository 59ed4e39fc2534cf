package cutting

import (
	"fmt"
	"maps"
	"slices"

	"yardproof/schema/measure"
)

// narrowed is what a proof may assume of patterns.
type narrowed struct {
	allowed []strip
	bounds  map[string][2]int64
}

type strip struct {
	class int
	count []int
	key   string
}

func newStrip(class int, count []int) strip {
	return strip{class, count, fmt.Sprint(class, count)}
}

func (v *verifier) prove(p *Proof, lo, up []int64, n *narrowed) error {
	if p == nil {
		return fmt.Errorf("the proof has a hole")
	}
	lo, up = slices.Clone(lo), slices.Clone(up)
	if v.shrink(lo, up) {
		return nil
	}
	switch p.Kind {
	case ProofDuals:
		return v.proveDuals(p, lo, up, n)
	case ProofStrips:
		below, above := slices.Clone(up), slices.Clone(lo)
		below[p.At] = min(up[p.At], p.Value)
		above[p.At] = max(lo[p.At], p.Value+1)
		if err := v.prove(p.Low, lo, below, n); err != nil {
			return err
		}
		return v.prove(p.High, above, up, n)
	case ProofFixing:
		return v.proveFixing(p, lo, up, n)
	case ProofPattern:
		return v.provePattern(p, lo, up, n)
	}
	return fmt.Errorf("a box called empty is not: %v to %v", lo, up)
}

// shrink applies, until nothing changes, that Z falls with height and that the
// steps of height times Z make up the length.
func (v *verifier) shrink(lo, up []int64) (empty bool) {
	if v.stocks != nil {
		return v.shrinkStocks(lo, up)
	}
	for changed := true; changed; {
		changed = false
		for k := range lo {
			if k > 0 && lo[k] > lo[k-1] {
				lo[k-1], changed = lo[k], true
			}
			if k > 0 && up[k] > up[k-1] {
				up[k], changed = up[k-1], true
			}
			if lo[k] > up[k] {
				return true
			}
			for v.length(lo, k, up[k]) > v.goal {
				up[k]--
				changed = true
				if up[k] < lo[k] {
					return true
				}
			}
		}
	}
	return false
}

// length is the least length with Z_k = z.
func (v *verifier) length(lo []int64, k int, z int64) int64 {
	sum, below := int64(0), int64(0)
	for j, h := range v.heights {
		n := lo[j]
		if j <= k && z > n {
			n = z
		}
		sum += (h - below) * n
		below = h
	}
	return sum
}

// price is what a strip of class k costs after prices.
func (v *verifier) price(class []int64, k int) int64 {
	cost := v.c.Scale * v.heights[k]
	if v.stocks != nil {
		return cost - class[k]
	}
	for j := 0; j <= k; j++ {
		cost -= class[j]
	}
	return cost
}

func (v *verifier) value(p *Proof, lo, up []int64) int64 {
	sum := int64(0)
	for i, y := range p.Item {
		if y < 0 {
			return -1
		}
		sum += y * int64(v.c.Sizes[i].Count)
	}
	for k, c := range p.Class {
		sum += min(c*lo[k], c*up[k])
	}
	return sum
}

// unpaid reports a class in which some strip is worth more than it costs.
func (v *verifier) unpaid(p *Proof) error {
	for k := range v.heights {
		if best := v.bestStrip(p.Item, k); best > v.price(p.Class, k) {
			return fmt.Errorf("class %d: a strip is worth %d and costs %d", k, best, v.price(p.Class, k))
		}
	}
	return nil
}

func (v *verifier) proveDuals(p *Proof, lo, up []int64, n *narrowed) error {
	bound := v.value(p, lo, up)
	if n == nil {
		if err := v.unpaid(p); err != nil {
			return err
		}
	} else {
		bound += v.patternTerms(p, n)
	}
	if bound <= v.goal*v.c.Scale {
		return fmt.Errorf("a leaf proves %d of %d", bound, v.goal*v.c.Scale)
	}
	return nil
}

func (v *verifier) patternTerms(p *Proof, n *narrowed) int64 {
	sum := int64(0)
	for _, s := range n.allowed {
		b, c := v.use(n, s), v.cost(p, s)
		sum += min(c*b[0], c*b[1])
	}
	return sum
}

// proveFixing narrows a box, and the use of strips within it, to what a
// shorter plan can afford. The first narrowing lists the strips.
func (v *verifier) proveFixing(p *Proof, lo, up []int64, n *narrowed) error {
	if n == nil {
		if err := v.unpaid(p); err != nil {
			return err
		}
		n = &narrowed{bounds: map[string][2]int64{}}
		n.allowed = v.affordable(p, v.goal*v.c.Scale-v.value(p, lo, up))
	}
	slack := v.goal*v.c.Scale - v.value(p, lo, up) - v.patternTerms(p, n)
	if slack < 0 {
		return nil
	}
	inner := &narrowed{bounds: map[string][2]int64{}}
	for _, s := range n.allowed {
		b := v.use(n, s)
		if c := v.cost(p, s); c > 0 {
			b[1] = min(b[1], b[0]+slack/c)
		}
		if b[1] > 0 {
			inner.allowed = append(inner.allowed, s)
			inner.bounds[s.key] = b
		}
	}
	for k, c := range p.Class {
		l, u := lo[k], up[k]
		if c > 0 {
			up[k] = min(u, l+slack/c)
		}
		if c < 0 {
			lo[k] = max(l, u-slack/-c)
		}
	}
	return v.prove(p.Low, lo, up, inner)
}

// cost is what a strip costs beyond its worth.
func (v *verifier) cost(p *Proof, s strip) int64 {
	return v.price(p.Class, s.class) - s.worth(p.Item)
}

func (s strip) worth(item []int64) int64 {
	sum := int64(0)
	for i, n := range s.count {
		sum += int64(n) * item[i]
	}
	return sum
}

// use is how often a strip may be used.
func (v *verifier) use(n *narrowed, s strip) [2]int64 {
	if b, ok := n.bounds[s.key]; ok {
		return b
	}
	return [2]int64{0, v.most(s.class)}
}

func (v *verifier) provePattern(p *Proof, lo, up []int64, n *narrowed) error {
	s := newStrip(p.At, p.Pattern)
	if n == nil || !slices.ContainsFunc(n.allowed, func(a strip) bool { return a.key == s.key }) {
		return v.prove(p.Low, lo, up, n) // it cannot be used at all, or less is assumed
	}
	b := v.use(n, s)
	if b[1] > p.Value {
		if err := v.prove(p.High, lo, up, n.with(s, max(b[0], p.Value+1), b[1])); err != nil {
			return err
		}
	}
	if b[0] > p.Value {
		return nil
	}
	return v.prove(p.Low, lo, up, n.with(s, b[0], min(b[1], p.Value)))
}

func (n *narrowed) with(s strip, lo, up int64) *narrowed {
	m := &narrowed{allowed: n.allowed, bounds: maps.Clone(n.bounds)}
	m.bounds[s.key] = [2]int64{lo, up}
	return m
}

// affordable lists every maximal strip that is as tall as its tallest piece and
// costs no more than slack beyond its worth. Any plan can be brought to strips
// of that form without growing.
func (v *verifier) affordable(p *Proof, slack int64) []strip {
	var all []strip
	if v.sheets {
		for _, s := range v.strips {
			if v.cost(p, s) <= slack {
				all = append(all, s)
			}
		}
		return all
	}
	for k := range v.heights {
		l := lister{v: v, k: k, item: p.Item, need: v.price(p.Class, k) - slack, best: v.knapsack(p.Item, k), count: make([]int, len(v.c.Sizes))}
		l.list(0, v.room(k), 0)
		all = append(all, l.all...)
	}
	return all
}

// lister tries every count of every kind in turn, and gives up a branch only
// when no filling of the room left can be worth enough.
type lister struct {
	v     *verifier
	k     int
	item  []int64
	need  int64
	best  func(i int, room measure.Length) int64
	count []int
	all   []strip
}

func (l *lister) list(i int, room measure.Length, worth int64) {
	if worth+l.best(i, room) < l.need {
		return
	}
	if i == len(l.count) {
		if l.maximalAndTall(room) {
			l.all = append(l.all, newStrip(l.k, slices.Clone(l.count)))
		}
		return
	}
	w := l.v.narrowest(i, l.k)
	for n := 0; n == 0 || w > 0 && n <= l.v.c.Sizes[i].Count && measure.Length(n)*w <= room; n++ {
		l.count[i] = n
		l.list(i+1, room-measure.Length(n)*w, worth+int64(n)*l.item[i])
	}
	l.count[i] = 0
}

func (l *lister) maximalAndTall(room measure.Length) bool {
	tall := l.v.stocks != nil
	for j, n := range l.count {
		w := l.v.narrowest(j, l.k)
		if w > 0 && w <= room && n < l.v.c.Sizes[j].Count {
			return false
		}
		tall = tall || n > 0 && (l.k == 0 || l.v.narrowest(j, l.k-1) != w)
	}
	return tall
}
