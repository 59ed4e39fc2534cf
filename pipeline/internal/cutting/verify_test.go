package cutting

import (
	"fmt"
	"maps"
	"slices"

	"yardproof/schema/measure"
)

// verifier re-proves a certificate with sums, products and an exhaustive
// listing of strips, in ticks. It shares no code with the solver.
type verifier struct {
	c       *Certificate
	width   measure.Length
	repeat  measure.Length
	goal    int64 // a shorter plan is at most this long, in units
	strips  []strip
	sheets  bool // strips lists whole sheets
	heights []int64
}

// verify checks that a certificate belongs to the problem and proves its claim.
func verify(p Problem, c *Certificate) error {
	v := &verifier{c: c, width: p.Cloth.Width, repeat: p.Cloth.Repeat}
	if err := v.sameProblem(p); err != nil {
		return err
	}
	if len(c.Sizes) == 0 {
		if c.Claim != c.Whole {
			return fmt.Errorf("nothing is cut but whole strips, yet the claim is %d", c.Claim)
		}
		return nil
	}
	for _, h := range c.Heights {
		if h%c.Unit != 0 {
			return fmt.Errorf("height %d is no multiple of %d", h, c.Unit)
		}
		v.heights = append(v.heights, int64(h/c.Unit))
	}
	v.goal = v.largestSumBelow(int64((c.Claim - c.Whole) / c.Unit))
	if v.goal < 0 {
		return nil // the claim is no more than zero
	}
	lo, up := make([]int64, len(v.heights)), make([]int64, len(v.heights))
	for k, h := range v.heights {
		up[k] = v.goal / h
	}
	return v.prove(c.Root, lo, up, nil)
}

func (v *verifier) sameProblem(p Problem) error {
	want := map[Size]int{}
	whole := measure.Length(0)
	for _, q := range p.Pieces {
		s := Size{Across: min(q.Across, q.Along), Along: max(q.Across, q.Along), Turnable: true}
		if !q.Turnable && q.Across != q.Along {
			s = Size{Across: q.Across, Along: q.Along}
		}
		want[v.useful(s)] += q.Count
	}
	for _, s := range p.Strips {
		n := s.Count
		if n > 0 && s.Last > 0 && s.Last < p.Cloth.Width {
			n--
			want[v.useful(Size{Across: s.Last, Along: s.Height})]++
		}
		whole += v.round(s.Height) * measure.Length(n)
	}
	for _, s := range v.c.Sizes {
		n := s.Count
		s.Count = 0
		if s.Turnable || s.Across == s.Along {
			s.Across, s.Along, s.Turnable = min(s.Across, s.Along), max(s.Across, s.Along), true
		}
		want[v.useful(s)] -= n
	}
	for s, n := range want {
		if n != 0 {
			return fmt.Errorf("size %+v: the certificate is off by %d", s, n)
		}
	}
	if whole != v.c.Whole {
		return fmt.Errorf("whole strips take %d, the certificate says %d", whole, v.c.Whole)
	}
	return v.sameHeights()
}

// useful replaces a size by the one it amounts to on this cloth: turning is
// forgotten where it does not fit or takes a taller strip and more width, and
// what cannot be turned is as long as the repeats it takes.
func (v *verifier) useful(s Size) Size {
	a := Size{Across: s.Across, Along: v.round(s.Along)}
	if !s.Turnable {
		return a
	}
	b := Size{Across: s.Along, Along: s.Across}
	if b.Across > v.width || a.Along <= v.round(b.Along) {
		return a
	}
	return s
}

func (v *verifier) round(h measure.Length) measure.Length {
	if v.repeat > 0 && h%v.repeat > 0 {
		return h + v.repeat - h%v.repeat
	}
	return h
}

func (v *verifier) sameHeights() error {
	var want []measure.Length
	for _, s := range v.c.Sizes {
		if s.Turnable && s.Across > s.Along {
			s.Across, s.Along = s.Along, s.Across
		}
		s = v.useful(s)
		if s.Across <= v.width {
			want = append(want, v.round(s.Along))
		}
		if s.Turnable && s.Along <= v.width {
			want = append(want, v.round(s.Across))
		}
	}
	slices.Sort(want)
	if want = slices.Compact(want); !slices.Equal(want, v.c.Heights) {
		return fmt.Errorf("strip heights %v, the certificate has %v", want, v.c.Heights)
	}
	return nil
}

// largestSumBelow is the largest sum of strip heights that is less than n.
func (v *verifier) largestSumBelow(n int64) int64 {
	if n <= 0 {
		return -1
	}
	sum := make([]bool, n)
	sum[0] = true
	best := int64(0)
	for s := int64(1); s < n; s++ {
		for _, h := range v.heights {
			if h <= s && sum[s-h] {
				sum[s], best = true, s
			}
		}
	}
	return best
}

// narrowest is the least width of a size in strips of class k, 0 if it does
// not fit.
func (v *verifier) narrowest(i, k int) measure.Length {
	s, best := v.c.Sizes[i], measure.Length(0)
	try := func(w, h measure.Length) {
		if w <= v.width && v.round(h) <= v.c.Heights[k] && (best == 0 || w < best) {
			best = w
		}
	}
	try(s.Across, s.Along)
	if s.Turnable {
		try(s.Along, s.Across)
	}
	return best
}

// bestStrip is the most that a strip of class k is worth.
func (v *verifier) bestStrip(item []int64, k int) int64 {
	if v.sheets {
		most := int64(0)
		for _, s := range v.strips {
			worth := int64(0)
			for i, n := range s.count {
				worth += int64(n) * item[i]
			}
			most = max(most, worth)
		}
		return most
	}
	type state struct {
		i    int
		room measure.Length
	}
	memo := map[state]int64{}
	var best func(i int, room measure.Length) int64
	best = func(i int, room measure.Length) int64 {
		if i == len(v.c.Sizes) {
			return 0
		}
		if n, ok := memo[state{i, room}]; ok {
			return n
		}
		most := best(i+1, room)
		if w := v.narrowest(i, k); w > 0 {
			for n := 1; n <= v.c.Sizes[i].Count && measure.Length(n)*w <= room; n++ {
				most = max(most, int64(n)*item[i]+best(i+1, room-measure.Length(n)*w))
			}
		}
		memo[state{i, room}] = most
		return most
	}
	return best(0, v.width)
}

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
		for _, s := range v.allStrips() {
			if v.cost(p, s) <= v.goal*v.c.Scale-v.value(p, lo, up) {
				n.allowed = append(n.allowed, s)
			}
		}
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
	cost := v.price(p.Class, s.class)
	for i, c := range s.count {
		cost -= int64(c) * p.Item[i]
	}
	return cost
}

// use is how often a strip may be used.
func (v *verifier) use(n *narrowed, s strip) [2]int64 {
	if b, ok := n.bounds[s.key]; ok {
		return b
	}
	return [2]int64{0, v.goal / v.heights[s.class]}
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

// allStrips lists every maximal strip that is as tall as its tallest piece:
// any plan can be brought to that form without growing.
func (v *verifier) allStrips() []strip {
	if v.strips == nil {
		for k := range v.heights {
			v.list(k, 0, v.width, make([]int, len(v.c.Sizes)))
		}
	}
	return v.strips
}

func (v *verifier) list(k, i int, room measure.Length, count []int) {
	if i == len(count) {
		tall := false
		for j, n := range count {
			w := v.narrowest(j, k)
			if w > 0 && w <= room && n < v.c.Sizes[j].Count {
				return // not maximal
			}
			tall = tall || n > 0 && (k == 0 || v.narrowest(j, k-1) != w)
		}
		if tall {
			v.strips = append(v.strips, newStrip(k, slices.Clone(count)))
		}
		return
	}
	w := v.narrowest(i, k)
	for n := 0; n == 0 || w > 0 && n <= v.c.Sizes[i].Count && measure.Length(n)*w <= room; n++ {
		count[i] = n
		v.list(k, i+1, room-measure.Length(n)*w, count)
	}
	count[i] = 0
}
