package pipeline

import (
	"strings"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/schema/amend"
)

// hedge is a plan in two sizes that print what a border of 3 in comes to.
const hedge = `{
	"format": 1, "id": "two-lawns", "title": "Two Lawns", "status": "testing", "skill": "beginner", "use": "table", "units": "in",
	"cautions": ["rotary-cutter", "iron"],
	"seam": {"allowance": "1/4", "stitch": "301"},
	"fabrics": {"sky": {"yardage": {}}},
	"parts": {"square": {"cut": {"fabric": "sky", "square": "4 1/2"}}},
	"layout": {"grid": {"rows": 4, "columns": 4, "blocks": [["square"]]}, "borders": {"hedge": {"fabric": "sky", "width": "3"}}},
	"sizes": {"small": {}, "long": {"layout": {"grid": {"rows": 6}}}},
	"printed": {"small": {"finished": ["22", "22"], "parts": {"square": 16}}, "long": {"finished": ["22", "30"], "parts": {"square": 24}}}
}`

func slipped(t *testing.T, text, old, value string) string {
	t.Helper()
	if !strings.Contains(text, old) {
		t.Fatalf("%s is not in the plan", old)
	}
	return strings.Replace(text, old, value, 1)
}

// Each slip is made in a plan, and the first way out of what is told first brings the
// plan back, byte for byte.
func TestSlipIsNamed(t *testing.T) {
	for name, c := range map[string]struct{ old, slip, says string }{
		"a border too wide":     {`"width": "3"`, `"width": "3 1/4"`, `the width of border "hedge" is 3 1/4 in here; with 3 in, all 4 printed figures that it contradicts agree, in 2 sizes`},
		"another number":        {`"width": "3"`, `"width": "7 1/2"`, `the width of border "hedge" is 7 1/2 in here; with 3 in, all 4 printed`},
		"finished for cut":      {`"square": "4 1/2"`, `"square": "4"`, `the square of "square" is 4 in here; with 4 1/2 in, all 4 printed`},
		"digits swapped":        {`"columns": 4`, `"columns": 14`, `the columns of the layout are 14 here; with 4, all 4 printed`},
		"a row in one size":     {`"rows": 6`, `"rows": 5`, `the rows of the layout in size "long" are 5 here; with 6, all 2 printed figures that it contradicts agree [`},
		"half a seam allowance": {`"allowance": "1/4"`, `"allowance": "1/8"`, `the allowance of the seams is 1/8 in here; with 1/4 in, all 4 printed`},
	} {
		t.Run(name, func(t *testing.T) {
			text := slipped(t, hedge, c.old, c.slip)
			w := proved(t, text, allowed())
			f := ofRule(t, w.found, "slip/one-value")
			if says := f.Message + " ["; !strings.HasPrefix(says, c.says) {
				t.Errorf("it says: %s", f.Message)
			}
			if len(w.found) != 1 || f.Level != diag.Error || len(f.Follows) < 2 {
				t.Errorf("%d findings, %d under the slip", len(w.found), len(f.Follows))
			}
			way, ok := mends(f)
			after, err := amend.Apply([]byte(text), way.All())
			if !ok || err != nil || string(after) != hedge {
				t.Errorf("%v; the plan is then\n%s", err, after)
			}
		})
	}
}

// One printed figure that disagrees is the print's.
func TestOnePrintedFigureIsNoSlip(t *testing.T) {
	for _, c := range [][2]string{
		{`["22", "30"]`, `["22", "32"]`}, {`"square": 24`, `"square": 42`}, {`["22", "30"]`, `["24", "30"]`},
	} {
		w := proved(t, slipped(t, hedge, c[0], c[1]), allowed())
		if len(w.found) != 1 || !strings.HasPrefix(w.found[0].Rule, "printed/") || strings.Contains(w.found[0].Hint, "write") {
			t.Errorf("%s: %+v", c[1], w.found)
		}
	}
}

// What the work for it is not enough for is not searched for, and what was found
// stays; a plan in order costs nothing.
func TestSlipHasABudget(t *testing.T) {
	text := slipped(t, hedge, `"width": "3"`, `"width": "3 1/4"`)
	little := allowed()
	little.slips = 1
	if w := proved(t, text, little); len(w.found) != 2 || w.found[0].Rule != "printed/finished" {
		t.Errorf("%+v", w.found)
	}
	if w := proved(t, hedge, allowed()); w.tried != 0 || len(w.found) > 0 {
		t.Errorf("%d were tried of a plan in order: %v", w.tried, w.found)
	}
}

// Two slips that have nothing to do with each other are not explained by one value, and
// no value is told that leaves what it is held against.
func TestTwoSlips(t *testing.T) {
	text := slipped(t, slipped(t, hedge, `"width": "3"`, `"width": "3 1/4"`), `["22", "30"]`, `["22", "33"]`)
	for _, f := range diag.Flatten(proved(t, text, allowed()).found) {
		if way, ok := mends(f); ok {
			after, err := amend.Apply([]byte(text), way.All())
			if left := stays(proved(t, string(after), allowed()).found, f); err != nil || left {
				t.Errorf("%v: %s %s stays after %s", err, f.Rule, f.Message, f.Hint)
			}
		}
	}
}

func stays(found []diag.Finding, f diag.Finding) bool {
	for _, g := range diag.Flatten(found) {
		if g.Rule == f.Rule && g.Place.Pointer == f.Place.Pointer {
			return true
		}
	}
	return false
}
