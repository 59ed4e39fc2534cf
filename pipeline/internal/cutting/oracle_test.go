package cutting

import (
	"fmt"
	"math/rand"
	"testing"

	"yardproof/schema/measure"
)

// shortest is the least length of strips by trying everything: some strip must
// hold the first piece still wanted; try every strip that does.
func shortest(p Problem) measure.Length {
	memo := map[string]measure.Length{}
	var solve func(left []int) measure.Length
	solve = func(left []int) measure.Length {
		first := -1
		for i, n := range left {
			if n > 0 {
				first = i
				break
			}
		}
		if first < 0 {
			return 0
		}
		key := fmt.Sprint(left)
		if n, ok := memo[key]; ok {
			return n
		}
		best := measure.Length(1) << 60
		var cut func(i int, room, height measure.Length, rest []int)
		cut = func(i int, room, height measure.Length, rest []int) {
			if i == len(left) {
				if rest[first] < left[first] {
					best = min(best, p.Cloth.whole(height)+solve(append([]int(nil), rest...)))
				}
				return
			}
			q := p.Pieces[i]
			for unturned := 0; unturned <= rest[i]; unturned++ {
				for turned := 0; unturned+turned <= rest[i] && (turned == 0 || q.Turnable); turned++ {
					r, h := room-q.Across*measure.Length(unturned)-q.Along*measure.Length(turned), height
					if r < 0 {
						break
					}
					if unturned > 0 {
						h = max(h, q.Along)
					}
					if turned > 0 {
						h = max(h, q.Across)
					}
					rest[i] -= unturned + turned
					cut(i+1, r, h, rest)
					rest[i] += unturned + turned
				}
			}
		}
		cut(0, p.Cloth.Width, 0, append([]int(nil), left...))
		memo[key] = best
		return best
	}
	var left []int
	for _, q := range p.Pieces {
		left = append(left, q.Count)
	}
	return solve(left)
}

// tiny is a random problem small enough for the oracle; every piece fits.
func tiny(r *rand.Rand) Problem {
	p := Problem{Cloth: Cloth{Width: measure.Length(6 + r.Intn(12))}}
	if r.Intn(4) == 0 {
		p.Cloth.Repeat = measure.Length(2 + r.Intn(4))
	}
	for n := 1 + r.Intn(3); n > 0; n-- {
		p.Pieces = append(p.Pieces, Piece{
			Name: fmt.Sprint("p", n), Across: 1 + measure.Length(r.Intn(int(p.Cloth.Width))), Along: 1 + measure.Length(r.Intn(9)),
			Count: 1 + r.Intn(5), Turnable: r.Intn(2) == 0})
	}
	return p
}

func TestSolveAgreesWithTryingEverything(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	proved := 0
	const rounds = 1500
	for n := 0; n < rounds; n++ {
		p := tiny(r)
		got, err := Solve(p, Limits{})
		if err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		want := shortest(p)
		if got.Length != want || got.Bound > want {
			t.Fatalf("%+v:\nlength %d, bound %d, shortest %d", p, got.Length, got.Bound, want)
		}
		if err := illegal(p, got.Layout); err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		if err := verify(p, got.Certificate); err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		if a := AreaBound(p); a > got.Length {
			t.Fatalf("%+v: area bound %d over a layout of %d", p, a, got.Length)
		}
		if got.Status == Proved {
			proved++
		}
	}
	if proved != rounds {
		t.Errorf("%d of %d tiny problems proved", proved, rounds)
	}
}
