package pipeline

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"yardproof/pipeline/report"
)

// What changed since an edition is told of every size: a price, a size that is
// new, and one that is gone; what is as it was is not told.
func TestChangesSinceTheEdition(t *testing.T) {
	t.Chdir(t.TempDir())
	save(t, "three-cloths.plan.json", strings.Replace(worked, `"sizes": { "only": {} }, "printed": {`, `"sizes": { "only": {}, "half": { "layout": { "grid": { "columns": 5 } } } }, "printed": {`, 1))
	save(t, "yardproof.json", strings.Replace(workedShop, `"prices"`, `"edition": "spring.csv", "prices"`, 1))
	save(t, "prices.csv", workedPrices)
	const head = "row,plan,status,size,finished,fabric,cost (EUR),price (EUR),margin (% of price),slack,errors,warnings,notes\n"
	tell := func(rows string) []report.Change {
		save(t, "spring.csv", head+rows)
		run, err := Run(t.Context(), Config{Paths: []string{"."}, Tables: true})
		if err != nil || len(run.Plans) != 1 {
			t.Fatal(err, run.Findings)
		}
		return run.Changes
	}
	const half = "body,Three Cloths,draft,half,,a 3/4 yd; b 1/2 yd; c 1/4 yd,21.13,57.00,,,0,0,1\n"
	const only = "body,Three Cloths,draft,only,,a 1 3/8 yd; b 7/8 yd; c 1/2 yd,28.50,57.00,,,0,0,1\n"
	if diff := cmp.Diff([]report.Change(nil), tell(only+half)); diff != "" {
		t.Errorf("nothing has changed (-want +got)\n%s", diff)
	}
	want := []report.Change{
		{Plan: "Three Cloths", Size: "only", What: "fabric", Before: "a 1 1/4 yd; b 7/8 yd; c 1/2 yd", Now: "a 1 3/8 yd; b 7/8 yd; c 1/2 yd"},
		{Plan: "Three Cloths", Size: "only", What: "price", Before: "EUR 55.00", Now: "EUR 57.00"},
		{Plan: "Three Cloths", Size: "half", What: "size", Before: "not there", Now: "new"},
		{Plan: "Three Cloths", Size: "double", What: "size", Before: "in the line", Now: "gone"},
	}
	was := strings.NewReplacer("a 1 3/8 yd", "a 1 1/4 yd", "57.00", "55.00").Replace(only)
	if diff := cmp.Diff(want, tell(was+strings.Replace(half, ",half,", ",double,", 1))); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}
