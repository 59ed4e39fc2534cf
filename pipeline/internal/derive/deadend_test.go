package derive_test

import (
	"slices"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/figure"
)

// TestNoDeadEnds: from every number that has a name, each of its terms leads on: to a
// formula or the words of a method, and in the end to what the plan says at some place.
// What stands nowhere is a default, or no length at all, and listed here.
func TestNoDeadEnds(t *testing.T) {
	allowed := []string{
		"straightening the ends", "seam allowance", "cuts up to lines so far apart, as it is trimmed", "for corners and the last join",
		"of the points inside the outer seam", "the tip's distance beyond the far seam", "the ruler's marks",
	}
	terms := 0
	look := func(t *testing.T, what string, s *derive.Size) {
		seen := map[figure.F]bool{}
		var follow func(path string, f figure.F)
		follow = func(path string, f figure.F) {
			if seen[f] {
				return
			}
			seen[f] = true
			for _, term := range f.Terms() {
				terms++
				here := path + " > " + term.Says()
				switch why := term.Why(); {
				case why.Known() && why.Formula() == "":
					t.Errorf("%s: %s has no formula", what, here)
				case why.Known():
					follow(here, why)
				case !term.Input():
					t.Errorf("%s: %s ends there", what, here)
				case term.At().Empty() && !slices.Contains(allowed, term.Says()):
					t.Errorf("%s: %s stands nowhere in the plan", what, here)
				}
			}
		}
		for _, f := range s.Told() {
			follow(f.Name(), f)
		}
	}
	everySize(t, look)
	everyFixture(t, look)
	if terms < 10_000 {
		t.Errorf("only %d terms were looked at", terms)
	}
}
