package cutting

import (
	"fmt"
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
	sheets  bool    // strips lists whole sheets
	stocks  []Stock // by class, where these are lengths to cut from
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

// down is a height, in whole repeats, rounded down to the certificate's unit.
func (v *verifier) down(h measure.Length) measure.Length {
	return v.round(h) / v.c.Unit * v.c.Unit
}

func (v *verifier) sameHeights() error {
	var want []measure.Length
	for _, s := range v.c.Sizes {
		if s.Turnable && s.Across > s.Along {
			s.Across, s.Along = s.Along, s.Across
		}
		s = v.useful(s)
		if s.Across <= v.width {
			want = append(want, v.down(s.Along))
		}
		if s.Turnable && s.Along <= v.width {
			want = append(want, v.down(s.Across))
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

// narrowest is the least width of a size in strips of class k, 0 if it does not fit.
func (v *verifier) narrowest(i, k int) measure.Length {
	s, best := v.c.Sizes[i], measure.Length(0)
	if v.stocks != nil {
		return s.Across
	}
	try := func(w, h measure.Length) {
		if w <= v.width && v.down(h) <= v.c.Heights[k] && (best == 0 || w < best) {
			best = w
		}
	}
	try(s.Across, s.Along)
	if s.Turnable {
		try(s.Along, s.Across)
	}
	return best
}

// knapsack returns the most that kinds i and later are worth in so much room of
// a strip of class k, by recursion.
func (v *verifier) knapsack(item []int64, k int) func(i int, room measure.Length) int64 {
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
	return best
}

// bestStrip is the most that a strip of class k, or a sheet, is worth.
func (v *verifier) bestStrip(item []int64, k int) int64 {
	if !v.sheets {
		return v.knapsack(item, k)(0, v.room(k))
	}
	most := int64(0)
	for _, s := range v.strips {
		most = max(most, s.worth(item))
	}
	return most
}
