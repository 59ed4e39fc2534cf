package cutting

import (
	"math/rand"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Once the work is to stop no linear program is solved any more. What there is
// by then is a layout of all pieces and a bound, neither better than without the
// stop; and to be asked changes nothing.
func TestStop(t *testing.T) {
	p := quiltLike(rand.New(rand.NewSource(1)), 12)
	whole, err := Solve(p, Limits{})
	if err != nil {
		t.Fatal(err)
	}
	asked := 0
	same, err := Solve(p, Limits{Stop: func() bool { asked++; return false }})
	if err != nil || !cmp.Equal(whole, same, cmp.AllowUnexported(Result{}, run{}, pattern{})) {
		t.Errorf("%v: to be asked changed the answer", err)
	}
	if asked < 10 {
		t.Fatalf("asked %d times: there is nothing to stop", asked)
	}
	for _, at := range []int{0, 1, 2, asked / 100, asked / 2, asked - 1} {
		n := 0
		var pivots int
		r, err := Solve(p, Limits{Stop: func() bool { n++; return n > at }})
		if err != nil {
			t.Fatal(err)
		}
		if pivots = r.Steps.Pivots; at == 0 && pivots > 0 || pivots > whole.Steps.Pivots {
			t.Errorf("stopped when asked for the %dth time, there were %d pivots of %d", at+1, pivots, whole.Steps.Pivots)
		}
		if r.Length < whole.Length && whole.Status == Proved || r.Bound > whole.Length || r.Length < r.Bound {
			t.Errorf("stopped when asked for the %dth time: length %d, bound %d; else %d and %d", at+1, r.Length, r.Bound, whole.Length, whole.Bound)
		}
		if err := illegal(p, r.Layout); err != nil {
			t.Errorf("stopped when asked for the %dth time: %v", at+1, err)
		}
	}
}
