package cutting

import (
	"testing"

	"yardproof/schema/measure"
)

// What a prototype reached with three stages on the invented instances.
func TestStacksReachWhatWasReached(t *testing.T) {
	reached := map[string]float64{
		"Q02-ninepatch": 61.5, "Q03-ohiostar": 79.75, "Q07-hst": 102.875,
		"Q11-directional": 104, "Q13-sashing": 83, "Q14-setting": 79.5,
	}
	for _, n := range readStrips(t) {
		r, err := Solve(n.problem, Limits{})
		if err != nil {
			t.Fatal(err)
		}
		l, _, saves := SolveStacked(n.problem, r, 1, 0, Limits{})
		if !saves {
			l.Length = r.Length
		} else if err := illegal(n.problem, l); err != nil {
			t.Errorf("%s: %v", n.name, err)
		}
		bound, _, _ := StraightBound(n.problem, Limits{})
		t.Logf("%s %v -> %v, bound %v", n.name, float64(r.Length)/203200, float64(l.Length)/203200, float64(bound)/203200)
		if bound > l.Length {
			t.Errorf("%s: a bound of %d over a layout of %d", n.name, bound, l.Length)
		}
		if want, ok := reached[n.name]; ok && l.Length > measure.Length(want*203200) {
			t.Errorf("%s: %v, reached %v", n.name, float64(l.Length)/203200, want)
		}
	}
}
