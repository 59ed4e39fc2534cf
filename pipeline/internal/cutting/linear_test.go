package cutting

import (
	"math"
	"math/rand"
	"testing"
)

// A primal and a dual solution of equal value prove each other: random covering
// programs with bounded variables are solved, bounds are changed as branching
// changes them, and both solutions are checked from the data alone.
func TestSimplexPrimalAndDualAgree(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	infeasible := 0
	for n := 0; n < 300; n++ {
		items, classes := 1+r.Intn(6), 1+r.Intn(5)
		s := newSimplex(items+classes, items)
		s.gain = 1e4
		for i := 0; i < items; i++ {
			s.lo[i] = float64(1 + r.Intn(30))
		}
		for j := 0; j < 3+r.Intn(30); j++ {
			c := sparse{ones: 1 + r.Intn(classes)}
			for i := 0; i < items; i++ {
				if v := r.Intn(5); v > 0 {
					c.row, c.val = append(c.row, i), append(c.val, float64(v))
				}
			}
			s.addColumn(c, float64(1+r.Intn(40)), 0, float64(1+r.Intn(40)))
		}
		for round := 0; round < 6; round++ {
			switch s.solve() {
			case lpOptimal:
				checkOptimal(t, s)
			case lpInfeasible:
				infeasible++
				if v := dualValue(s); v < 1e3 {
					t.Errorf("the ray proves only %v", v)
				}
			default:
				t.Error("stalled")
			}
			k := items + r.Intn(classes)
			z := math.Floor(s.solution(k))
			if r.Intn(2) == 0 {
				s.up[k] = math.Max(s.lo[k], z)
			} else {
				s.lo[k] = math.Min(s.up[k], z+1)
			}
		}
	}
	if infeasible == 0 {
		t.Error("no program was infeasible: the rays are not tested")
	}
}

func checkOptimal(t *testing.T, s *simplex) {
	t.Helper()
	activity := make([]float64, s.rows)
	cost := 0.0
	for j := s.rows; j < len(s.cost); j++ {
		x := s.solution(j)
		if x < s.lo[j]-1e-6 || x > s.up[j]+1e-6 {
			t.Errorf("variable %d is %v, out of bounds", j, x)
		}
		cost += s.cost[j] * x
		c := s.column[j-s.rows]
		for u, i := range c.row {
			activity[i] += c.val[u] * x
		}
		for i := s.first; i < s.first+c.ones; i++ {
			activity[i] += x
		}
	}
	for i, a := range activity {
		if a < s.lo[i]-1e-6 || a > s.up[i]+1e-6 {
			t.Errorf("row %d is %v, not within %v and %v", i, a, s.lo[i], s.up[i])
		}
	}
	if v := dualValue(s); math.Abs(v-cost) > 1e-5*(1+math.Abs(cost)) {
		t.Errorf("primal %v, dual %v", cost, v)
	}
}

// dualValue is the bound that the multipliers prove, whatever they are.
func dualValue(s *simplex) float64 {
	sum := 0.0
	for j := range s.cost {
		d := s.cost[j]
		if j < s.rows {
			d += s.y[j]
		} else {
			c := s.column[j-s.rows]
			for u, i := range c.row {
				d -= s.y[i] * c.val[u]
			}
			for i := s.first; i < s.first+c.ones; i++ {
				d -= s.y[i]
			}
		}
		switch {
		case d > 1e-7:
			sum += d * s.lo[j]
		case d < -1e-7:
			sum += d * s.up[j]
		}
	}
	return sum
}

func TestKnapsackAgreesWithTryingEverything(t *testing.T) {
	r := rand.New(rand.NewSource(8))
	for n := 0; n < 200; n++ {
		p := tiny(r)
		in, err := newInstance(p, exact)
		if err != nil {
			t.Fatal(err)
		}
		value := make([]int64, len(in.kinds))
		for i := range value {
			value[i] = int64(r.Intn(50))
		}
		k := newKnapsack(in, in.demands())
		k.price(value, func(class int, best int64) {
			want, listed := exhaust(in, value, class)
			if best != want {
				t.Errorf("%+v class %d: %d, want %d", p, class, best, want)
			}
			if q := k.best(); worth(q, value) != want || !in.fits(q, class) {
				t.Errorf("%+v class %d: the best strip %v is worth %d, want %d", p, class, q.count, worth(q, value), want)
			}
			var all []pattern
			if done, _ := k.enumerate(0, &all, 1<<20, 1<<30); !done || len(all) != listed {
				t.Errorf("%+v class %d: %d maximal strips, want %d", p, class, len(all), listed)
			}
		})
	}
}

// exhaust tries every strip of a class: the most it is worth, and how many
// maximal ones have a piece of the class's own height.
func exhaust(in *instance, value []int64, class int) (best int64, listed int) {
	count := make([]int, len(in.kinds))
	var try func(i, room int)
	try = func(i, room int) {
		if i < len(count) {
			try(i+1, room)
			if s := in.fit(i, class); s != nil {
				for n := 1; n <= in.kinds[i].demand && n*s.width <= room; n++ {
					count[i] = n
					try(i+1, room-n*s.width)
				}
				count[i] = 0
			}
			return
		}
		best = max(best, worth(pattern{count: count}, value))
		tall := false
		for j, n := range count {
			s := in.fit(j, class)
			if s == nil {
				continue
			}
			if s.width <= room && n < in.kinds[j].demand {
				return
			}
			tall = tall || n > 0 && s.class == class
		}
		if tall {
			listed++
		}
	}
	try(0, in.width)
	return best, listed
}
