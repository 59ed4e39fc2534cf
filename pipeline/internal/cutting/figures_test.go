package cutting

import (
	"cmp"
	"math/rand"
	"os"
	"slices"
	"testing"
	"time"
)

// TestFigures prints what becomes of random quilts of so many sizes: how many
// are proved, how long they take, the worst gap. No time is tested, but every
// layout and bound is.
func TestFigures(t *testing.T) {
	if os.Getenv("YARDPROOF_BASELINE") == "" {
		t.Skip("YARDPROOF_BASELINE is not set")
	}
	for _, c := range []struct {
		sizes, count int
		gap          float64 // per cent, allowed
		off          string  // the grid, as a size or as every one is
	}{
		{2, 100, 0, ""}, {3, 100, 0, ""}, {4, 100, 0, ""}, {5, 100, 0, ""}, {6, 100, 0, ""}, {7, 100, 0, ""}, {8, 100, 1, ""}, {12, 20, 1, ""}, {16, 20, 1, ""}, {20, 20, 1, ""},
		{4, 12, 1, "one"}, {6, 12, 1, "one"}, {8, 12, 1, "one"}, {4, 12, 1, "every"}, {6, 12, 1, "every"}, {8, 12, 1, "every"},
	} {
		seed := int64(100 + c.sizes)
		if c.off != "" {
			seed += 600
		}
		r := rand.New(rand.NewSource(seed))
		var took []time.Duration
		proved, worst, sum := 0, 0.0, 0.0
		for range c.count {
			p := quiltLike(r, c.sizes)
			if c.off != "" {
				p = odd(r, p, c.off == "every")
			}
			start := time.Now()
			got, err := Solve(p, Limits{})
			took = append(took, time.Since(start))
			if err != nil {
				t.Fatal(err)
			}
			if err := illegal(p, got.Layout); err != nil {
				t.Error(err)
			}
			if got.Status == Proved {
				proved++
			}
			gap := 100 * float64(got.Length-got.Bound) / float64(got.Bound)
			sum, worst = sum+gap, max(worst, gap)
		}
		slices.Sort(took)
		t.Logf("%2d sizes, %s off the grid: %3d of %3d proved, median %v, worst %v; gap worst %.3f %%, mean %.3f %%", c.sizes, cmp.Or(c.off, "none"), proved, c.count,
			took[len(took)/2].Round(10*time.Microsecond), took[len(took)-1].Round(time.Millisecond), worst, sum/float64(c.count))
		if worst > c.gap {
			t.Errorf("%d sizes: a gap of %.3f %%", c.sizes, worst)
		}
	}
}
