package cutting

import "testing"

func TestStripsAreSolvedToTheirOptimum(t *testing.T) {
	for _, n := range readStrips(t) {
		t.Run(n.name, func(t *testing.T) {
			r, err := Solve(n.problem, Limits{})
			if err != nil {
				t.Fatal(err)
			}
			if r.Length != n.optimum || r.Bound != n.optimum || r.Status != Proved {
				t.Errorf("length %d, bound %d, %v; the optimum is %d ticks", r.Length, r.Bound, r.Status, n.optimum)
			}
			if err := illegal(n.problem, r.Layout); err != nil {
				t.Error(err)
			}
			if err := verify(n.problem, r.Certificate); err != nil {
				t.Error(err)
			}
		})
	}
}
