package cutting

import (
	"errors"
	"fmt"
	"math/rand"
	"slices"
	"testing"

	"yardproof/schema/measure"
)

// contents lists what can be cut from one sheet, by trying every stack of
// strips across it and along it; counts go no further than what is wanted.
func contents(p SheetProblem, sizes []Size) [][]int {
	found := map[string][]int{}
	for _, along := range []bool{false, true} {
		width, height := p.Sheet.Across, p.Sheet.Along
		if along {
			width, height = height, width
		}
		var cutRow func(i int, room, tall, left measure.Length, row, total []int)
		var stack func(left measure.Length, total []int)
		seen := map[string]bool{}
		stack = func(left measure.Length, total []int) {
			key := fmt.Sprint(left, total)
			if seen[key] {
				return
			}
			seen[key] = true
			found[fmt.Sprint(total)] = slices.Clone(total)
			cutRow(0, width, 0, left, make([]int, len(sizes)), total)
		}
		cutRow = func(i int, room, tall, left measure.Length, row, total []int) {
			if i == len(sizes) {
				if tall > 0 {
					next := slices.Clone(total)
					for j, n := range row {
						next[j] += n
					}
					stack(left-tall, next)
				}
				return
			}
			s := sizes[i]
			for _, turned := range []bool{false, true} {
				if turned && !s.Turnable {
					continue
				}
				w, h := s.Across, s.Along
				if turned != along {
					w, h = h, w
				}
				for n := 0; n <= s.Count-total[i] && measure.Length(n)*w <= room; n++ {
					t := tall
					if n > 0 {
						t = max(tall, h)
					}
					if t > left {
						break
					}
					row[i] = n
					cutRow(i+1, room-measure.Length(n)*w, t, left, row, total)
				}
				row[i] = 0
			}
		}
		stack(height, make([]int, len(sizes)))
	}
	var all [][]int
	for _, c := range found {
		for i, s := range sizes {
			c[i] -= c[i] % s.Together
		}
		all = append(all, c)
	}
	slices.SortFunc(all, slices.Compare)
	all = slices.CompactFunc(all, slices.Equal)
	return slices.DeleteFunc(slices.Clone(all), func(c []int) bool {
		return slices.ContainsFunc(all, func(d []int) bool {
			if slices.Equal(c, d) {
				return false
			}
			for i := range c {
				if c[i] > d[i] {
					return false
				}
			}
			return true
		})
	})
}

// fewest is the least number of sheets, by breadth-first search.
func fewest(all [][]int, sizes []Size) int {
	wanted := make([]int, len(sizes))
	for i, s := range sizes {
		wanted[i] = s.Count
	}
	level := map[string][]int{fmt.Sprint(wanted): wanted}
	for n := 0; ; n++ {
		if _, ok := level[fmt.Sprint(make([]int, len(sizes)))]; ok {
			return n
		}
		next := map[string][]int{}
		for _, left := range level {
			for _, c := range all {
				rest := slices.Clone(left)
				for i := range rest {
					rest[i] = max(0, rest[i]-c[i])
				}
				next[fmt.Sprint(rest)] = rest
			}
		}
		level = next
	}
}

func tinySheets(r *rand.Rand) SheetProblem {
	p := SheetProblem{Sheet: Sheet{measure.Length(5 + r.Intn(8)), measure.Length(5 + r.Intn(8))}}
	for n := 1 + r.Intn(3); n > 0; n-- {
		p.Pieces = append(p.Pieces, Piece{
			Name: fmt.Sprint("p", n), Across: 2 + measure.Length(r.Intn(int(p.Sheet.Across)-1)), Along: 2 + measure.Length(r.Intn(int(p.Sheet.Along)-1)),
			Count: 1 + r.Intn(6), Turnable: r.Intn(2) == 0})
	}
	if r.Intn(3) == 0 {
		q := &p.Pieces[0]
		q.Together = 2 + r.Intn(2)
		q.Count = q.Together * (1 + r.Intn(3))
	}
	if r.Intn(3) == 0 {
		p.Strips = []WholeStrip{{Name: "set", Height: 1 + measure.Length(r.Intn(3)), Count: 1 + r.Intn(4), Last: measure.Length(r.Intn(int(p.Sheet.Across) + 1))}}
	}
	return p
}

func TestSolveSheetsAgreesWithTryingEverything(t *testing.T) {
	r := rand.New(rand.NewSource(2))
	open := 0
	for n := 0; n < 400; n++ {
		p := tinySheets(r)
		got, err := SolveSheets(p, Limits{})
		var unusable *Unusable
		if errors.As(err, &unusable) && p.Pieces[0].Together > 1 {
			continue // so many do not fit a sheet
		}
		if err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		all := contents(p, got.Certificate.Sizes)
		want := fewest(all, got.Certificate.Sizes)
		if got.Layout.Count != want || got.Bound > want {
			t.Fatalf("%+v:\n%d sheets, bound %d, fewest %d", p, got.Layout.Count, got.Bound, want)
		}
		if err := illegalSheets(p, got.Layout); err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		if err := verifySheets(got.Certificate, all); err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		if got.Status != Proved {
			open++
		}
	}
	if open > 0 {
		t.Errorf("%d tiny problems are not proved", open)
	}
}

// verifySheets re-proves a certificate from the list of what a sheet can hold.
func verifySheets(c *SheetCertificate, all [][]int) error {
	v := &verifier{c: &Certificate{Scale: c.Scale, Sizes: c.Sizes}, heights: []int64{1}, goal: int64(c.Claim - 1), sheets: true}
	for _, s := range all {
		v.strips = append(v.strips, newStrip(0, s))
	}
	return v.prove(c.Root, []int64{0}, []int64{int64(c.Claim - 1)}, nil)
}
