package cutting

import (
	"fmt"
	"math/rand"
	"slices"
	"testing"

	"yardproof/schema/measure"
)

// verifyStraight re-proves a certificate with sums, products and an exhaustive
// filling of the width. It shares no code with the bound.
func verifyStraight(p Problem, c *StraightCertificate) error {
	wanted := map[string]int{}
	name := func(a, b measure.Length, turnable bool) string {
		if turnable || a == b {
			a, b = min(a, b), max(a, b)
		}
		return fmt.Sprint(a, b, turnable && a != b)
	}
	for _, q := range p.Pieces {
		wanted[name(q.Across, q.Along, q.Turnable)] += q.Count
	}
	for _, s := range p.Strips {
		for n := range s.Count {
			width := p.Cloth.Width
			if n == s.Count-1 && s.Last > 0 {
				width = s.Last
			}
			wanted[name(width, s.Height, false)]++
		}
	}
	for _, s := range c.Sizes {
		wanted[name(s.Across, s.Along, s.Turnable)] -= s.Count
		if s.Worth < 0 || s.Turned < 0 {
			return fmt.Errorf("size %+v is worth less than nothing", s)
		}
	}
	for size, n := range wanted {
		if n != 0 {
			return fmt.Errorf("size %s: the certificate is off by %d", size, n)
		}
	}
	if most := dearestLine(p.Cloth.Width, c.Sizes); most > c.Most {
		return fmt.Errorf("a line is worth %d, the certificate says %d", most, c.Most)
	}
	sum := int64(0)
	heights := []measure.Length{}
	for _, s := range c.Sizes {
		ways := waysOf(s, p.Cloth.Width)
		least := int64(-1)
		for _, w := range ways {
			heights = append(heights, w[1])
			if v := int64(w[1]) * int64(w[2]); least < 0 || v < least {
				least = v
			}
		}
		sum += least * int64(s.Count)
	}
	length := AreaBound(p)
	if c.Most > 0 {
		length = max(length, measure.Length((sum+c.Most-1)/c.Most))
	}
	if length = nextSum(heights, length); c.Claim > length {
		return fmt.Errorf("the claim is %d, and %d is proved", c.Claim, length)
	}
	return nil
}

// waysOf are the width, height and worth of a size as it may lie, without a way that takes more
// both ways.
func waysOf(s StraightSize, width measure.Length) [][3]measure.Length {
	ways := [][3]measure.Length{{s.Across, s.Along, measure.Length(s.Worth)}}
	if s.Turnable {
		ways = append(ways, [3]measure.Length{s.Along, s.Across, measure.Length(s.Turned)})
	}
	var kept [][3]measure.Length
	for i, a := range ways {
		more := slices.ContainsFunc(ways[:i], func(b [3]measure.Length) bool { return a == b })
		for _, b := range ways {
			more = more || b[0] <= a[0] && b[1] <= a[1] && (b[0] < a[0] || b[1] < a[1])
		}
		if !more && a[0] <= width {
			kept = append(kept, a)
		}
	}
	return kept
}

// dearestLine tries every filling of a width, no size more often than it is wanted.
func dearestLine(width measure.Length, sizes []StraightSize) int64 {
	type way struct {
		width measure.Length
		worth int64
		count int
	}
	var all []way
	for _, s := range sizes {
		for _, w := range waysOf(s, width) {
			all = append(all, way{w[0], int64(w[2]), s.Count})
		}
	}
	memo := map[[2]int64]int64{}
	var best func(i int, room measure.Length) int64
	best = func(i int, room measure.Length) int64 {
		if i == len(all) {
			return 0
		}
		key := [2]int64{int64(i), int64(room)}
		if v, ok := memo[key]; ok {
			return v
		}
		most := int64(0)
		for n := 0; n <= all[i].count && measure.Length(n)*all[i].width <= room; n++ {
			most = max(most, int64(n)*all[i].worth+best(i+1, room-measure.Length(n)*all[i].width))
		}
		memo[key] = most
		return most
	}
	return best(0, width)
}

// nextSum is the least sum of heights that is no less than a length.
func nextSum(heights []measure.Length, length measure.Length) measure.Length {
	unit := measure.Length(0)
	for _, h := range heights {
		unit = gcd(unit, h)
	}
	first := (length + unit - 1) / unit
	sums := make([]bool, first+slices.Max(heights)/unit+1)
	sums[0] = true
	for n := range sums {
		for _, h := range heights {
			if k := int(h / unit); k <= n && sums[n-k] {
				sums[n] = true
			}
		}
		if measure.Length(n) >= first && sums[n] {
			return measure.Length(n) * unit
		}
	}
	return 0
}

// anyhow is the least length in which the pieces fit in any way, each side parallel
// to an edge, by trying everything: the first free cell of the cloth, row by row,
// takes the corner of some piece or stays free.
func anyhow(p Problem, least measure.Length) measure.Length {
	for length := least; ; length++ {
		w, h := int(p.Cloth.Width), int(length)
		cells := make([]bool, w*h)
		left := []int{}
		spare := w * h
		for _, q := range p.Pieces {
			left = append(left, q.Count)
			spare -= int(q.Across*q.Along) * q.Count
		}
		var fill func(at, spare int) bool
		fill = func(at, spare int) bool {
			if pieces(left) == 0 {
				return true
			}
			for at < w*h && cells[at] {
				at++
			}
			if at == w*h || spare < 0 {
				return false
			}
			for i, q := range p.Pieces {
				for _, turned := range q.orientations() {
					a, b := q.sides(turned)
					if left[i] == 0 || !place(cells, w, at, int(a), int(b), false) {
						continue
					}
					place(cells, w, at, int(a), int(b), true)
					left[i]--
					ok := fill(at, spare)
					left[i]++
					for y := range int(b) {
						clear(cells[at+y*w : at+y*w+int(a)])
					}
					if ok {
						return true
					}
				}
			}
			cells[at] = true
			ok := fill(at, spare-1)
			cells[at] = false
			return ok
		}
		if spare >= 0 && fill(0, spare) {
			return length
		}
	}
}

func place(cells []bool, w, at, a, b int, set bool) bool {
	if at%w+a > w || at/w+b > len(cells)/w {
		return false
	}
	for y := range b {
		for x := range a {
			if cells[at+y*w+x] && !set {
				return false
			}
			cells[at+y*w+x] = set || cells[at+y*w+x]
		}
	}
	return true
}

func TestStraightBoundHoldsForAnyLayout(t *testing.T) {
	r := rand.New(rand.NewSource(61))
	met, above := 0, 0
	const rounds = 300
	for range rounds {
		p := Problem{Cloth: Cloth{Width: measure.Length(3 + r.Intn(4))}}
		for range 1 + r.Intn(3) {
			p.Pieces = append(p.Pieces, Piece{Across: 1 + measure.Length(r.Intn(int(p.Cloth.Width))), Along: 1 + measure.Length(r.Intn(4)),
				Count: 1 + r.Intn(2), Turnable: r.Intn(2) == 0})
		}
		bound, c, _ := StraightBound(p, Limits{})
		if err := verifyStraight(p, c); err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		least := anyhow(p, AreaBound(p))
		if bound > least || c.Claim != bound {
			t.Fatalf("%+v: bound %d, claim %d, shortest %d", p, bound, c.Claim, least)
		}
		if bound == least {
			met++
		}
		if bound > AreaBound(p) {
			above++
		}
	}
	if met < rounds*9/10 || above < rounds/6 {
		t.Errorf("of %d, %d are met and %d are above the area", rounds, met, above)
	}
}

// Worked by hand: six squares of 13 in lie three across 40 in at most, so that every
// line crosses three of them, 26 in in all, though their area is 25.35 in of it. A strip
// of 1 1/2 x 120 in takes 120 in along.
func TestStraightBoundByHand(t *testing.T) {
	p := Problem{Cloth: Cloth{Width: in(320)}, Pieces: []Piece{{Across: in(104), Along: in(104), Count: 6}}}
	if bound, _, _ := StraightBound(p, Limits{}); bound != in(208) {
		t.Errorf("six squares take %d eighths", bound/in(1))
	}
	p.Pieces[0].Count = 7
	if bound, _, _ := StraightBound(p, Limits{}); bound != in(312) {
		t.Errorf("heights of 13 in add up to %d eighths", bound/in(1))
	}
	p.Pieces = append(p.Pieces, Piece{Across: in(960), Along: in(12), Count: 1, Turnable: true})
	if bound, _, _ := StraightBound(p, Limits{}); bound != in(960) {
		t.Errorf("one long strip takes %d eighths", bound/in(1))
	}
	if bound, c, _ := StraightBound(Problem{Cloth: Cloth{Width: 1}}, Limits{}); bound != 0 || c != nil {
		t.Errorf("nothing takes %d", bound)
	}
}

// Bounds of quilts hold for every layout that is found, and are proved anew; of one
// that lies on no grid, too.
func TestStraightBoundsOfQuilts(t *testing.T) {
	r := rand.New(rand.NewSource(62))
	sum, area := 0.0, 0.0
	const rounds = 12
	for n, p := range quilts(rounds, 63) {
		p.Cloth.Repeat = 0
		if n%4 == 0 {
			p = odd(r, p, false)
		}
		bound, c, _ := StraightBound(p, Limits{})
		if err := verifyStraight(p, c); err != nil {
			t.Errorf("%d: %v", n, err)
		}
		got := solved(t, p)
		shortest := got.Length
		if l, _, ok := SolveStacked(p, got, measure.Tick, 0, Limits{Visits: 4_000_000}); ok {
			shortest = l.Length
		}
		if bound > shortest || bound > got.Bound || bound < AreaBound(p) {
			t.Errorf("%d: bound %d, shortest %d of strips not under %d, area %d", n, bound, shortest, got.Bound, AreaBound(p))
		}
		sum += float64(shortest-bound) / float64(bound)
		area += float64(shortest-AreaBound(p)) / float64(AreaBound(p))
	}
	t.Logf("%.2f %% above the bound on average, %.2f %% above the area", 100*sum/rounds, 100*area/rounds)
	if sum > area*3/4 {
		t.Errorf("%.3f above the bounds, %.3f above the areas", sum, area)
	}
}

func TestStraightVerifierRefusesFalseCertificates(t *testing.T) {
	p := readStrips(t)[0].problem
	_, c, _ := StraightBound(p, Limits{})
	if err := verifyStraight(p, c); err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func(*StraightCertificate){
		"a claim too long":   func(c *StraightCertificate) { c.Claim += in(1) * 8 },
		"a piece worth more": func(c *StraightCertificate) { c.Sizes[0].Worth *= 2 },
		"one piece more":     func(c *StraightCertificate) { c.Sizes[0].Count++ },
		"lines worth less":   func(c *StraightCertificate) { c.Most /= 2 },
	} {
		spoilt := *c
		spoilt.Sizes = slices.Clone(c.Sizes)
		if spoil(&spoilt); verifyStraight(p, &spoilt) == nil {
			t.Errorf("%s is accepted", name)
		}
	}
}
