package check

import (
	"fmt"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/schema/measure"
)

func TestSurplusIsAWarningOnlyBeyondBothLimits(t *testing.T) {
	const eighth, yard = measure.Yard / 8, measure.Yard
	for _, c := range []struct {
		printed, needed measure.Length
		want            diag.Level
	}{
		{yard, yard / 2, diag.Note},               // twice
		{yard + eighth, yard / 2, diag.Note},      // more than twice, and 5/8 yd over
		{yard + 4*eighth, yard / 2, diag.Note},    // 1 yd over
		{yard + 5*eighth, yard / 2, diag.Warning}, // 1 1/8 yd over
		{4 * yard, 2 * yard, diag.Note},           // twice, and 2 yd over
		{4*yard + eighth, 2 * yard, diag.Warning}, // a step more
		{11*yard + 2*eighth, 10 * eighth, diag.Warning},
	} {
		if got := surplus(c.printed, c.needed, surplusCloth(measure.In)); got != c.want {
			t.Errorf("%d eighths of a yard printed for %d: %v, want %v", c.printed/eighth, c.needed/eighth, got, c.want)
		}
	}
	if got := surplusCloth(measure.Cm); got != measure.Metre {
		t.Errorf("in a metric plan the limit is %v, want 1 m", got)
	}
}

// levelsOf are the levels that counts 0, 1, 2, ... of a figure draw: e, w, n, and
// a dot for none.
func levelsOf(t *testing.T, plan, patch, rule string, upTo int) string {
	t.Helper()
	marks := ""
	for n := range upTo + 1 {
		mark := "."
		for _, f := range try(t, plan, replaced(patch, "N", fmt.Sprint(n))) {
			if f.Rule == rule {
				mark = f.Level.String()[:1]
			}
		}
		marks += mark
	}
	return marks
}

func TestSurplusByKindOfFigure(t *testing.T) {
	for _, c := range []struct{ name, plan, patch, rule, want string }{
		// Sixteen squares of a pack of six: three packs.
		{"packs", squares, `{"fabrics": {"sky": {"yardage": null, "precut": {"piece": ["5", "5"], "count": 6}}}, "printed": {"small": {"precuts": {"sky": N}}}}`,
			"fabric/packs-over", "....nnnwww"},
		{"the one pack", tubes, `{"printed": {"small": {"precuts": {"roll": N}}}}`, "fabric/packs-over", "..nwww"},
		// Ten squares at five a tube of six strips: two tubes, four sets, twelve strips.
		{"tubes", tubes, `{"printed": {"small": {"tubes": {"step": N}}}}`, "printed/tubes", "ee.nnwww"},
		{"sets", tubes, `{"printed": {"small": {"sets": {"trio": N}}}}`, "printed/sets", "eeee..n.n.w.w"},
		{"strips of sets", tubes, `{"printed": {"small": {"strips": {"trio": N}}}}`, "printed/strips", "eeeeeeeeeeee...n..n..n..n..w"},
		// Sixteen 4 1/2-in squares, eight to a strip: two.
		{"strips of pieces", squares, `{"printed": {"small": {"strips": {"square": N}}}}`, "printed/strips", "ee.nnnnww"},
		{"strips used whole", squares, `{"parts": {"rail": {"strip": {"fabric": "sky", "width": "2 1/2"}}, "square": null}, "layout": {"grid": {"rows": 1, "columns": 1, "blocks": [["rail"]]}},
			"printed": {"small": {"strips": {"rail": N}}}}`, "printed/strips", "e.nnnnww"},
	} {
		if got := levelsOf(t, c.plan, c.patch, c.rule, len(c.want)-1); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// Sixteen segments of 2 1/2 in use up 40 in. Four sets for 48 leave room to
// straighten the ends, whatever is printed of it: twelve from each, four sets,
// the strips or the cloth of four (nine strips of 2 1/2 in and an inch are 23 1/2
// in, three sets; four take 31 in).
func TestSlackIsThatOfWhatIsPrinted(t *testing.T) {
	const trio = `{"parts": {"square": {"cut": null, "strip_set": {"segment": "2 1/2",
		"strips": [{"fabric": "sky", "width": "2 1/2"}, {"fabric": "sky", "width": "2 1/2"}, {"fabric": "sky", "width": "2 1/2"}]}}},
		"layout": {"grid": {"rows": 4, "columns": 12}}, "printed": {"small": PRINTED}}`
	says := func(printed string) string { return replaced(trio, "PRINTED", printed) }
	tryAll(t, squares, []tried{
		{"nothing", says(`"not printed"`), "yield/no-slack", "allow for 15 a strip set"},
		{"twelve from four sets, and cloth", says(`{"per_set": {"square": 12}, "sets": {"square": 4}, "strips": {"square": 12}, "fabric": {"sky": "7/8 yd"}}`), "", ""},
		{"twelve from each", says(`{"per_set": {"square": 12}, "sets": {"square": 4}}`), "", ""},
		{"eight from each of six", says(`{"per_set": {"square": 8}, "sets": {"square": 6}}`), "", ""},
		{"seven from each of six", says(`{"per_set": {"square": 7}, "sets": {"square": 6}}`), "printed/short-of-pieces", "6 strip sets, as printed, at 7 each give 42, and 48 are needed"},
		{"three from each of sixteen", says(`{"per_set": {"square": 3}, "sets": {"square": 16}}`), "printed/sets", "warning: "},
		{"four sets", says(`{"sets": {"square": 4}}`), "", ""},
		{"five sets", says(`{"sets": {"square": 5}}`), "printed/sets", "note: "},
		{"twelve strips", says(`{"strips": {"square": 12}}`), "", ""},
		{"cloth for four", says(`{"fabric": {"sky": "7/8 yd"}}`), "", ""},
		{"cloth for three", says(`{"fabric": {"sky": "3/4 yd"}}`), "yield/no-slack", ""},
		{"cloth for five", says(`{"fabric": {"sky": "1 1/8 yd"}}`), "fabric/generous", "note: "},
		{"fifteen from each", says(`{"per_set": {"square": 15}}`), "", ""},
		{"sixteen, and three sets", says(`{"per_set": {"square": 16}, "sets": {"square": 3}}`), "yield/no-slack", ""},
	})
}

// A tube of three 2 1/2-in strips gives a sixth square at 42 in exactly (derived
// from geometry): 30 squares from five tubes leave nothing to straighten.
func TestSlackOfTubesIsThatOfWhatIsPrinted(t *testing.T) {
	const steps = `{"fabrics": {"roll": {"precut": {"usable": ["2 1/2", "42"]}}}, "layout": {"grid": {"rows": 6, "columns": 5}}, "printed": {"small": PRINTED}}`
	says := func(printed string) string { return replaced(steps, "PRINTED", printed) }
	tryAll(t, tubes, []tried{
		{"nothing", says(`"not printed"`), "yield/no-slack", "allow for 5 a tube"},
		{"five from six", says(`{"per_tube": {"step": 5}, "tubes": {"step": 6}, "sets": {"trio": 12}, "strips": {"trio": 36}, "precuts": {"roll": 1}, "left": {"roll": 4}}`), "", ""},
		{"four from each of six", says(`{"per_tube": {"step": 4}, "tubes": {"step": 6}}`), "printed/short-of-pieces", "6 tubes, as printed, at 4 each give 24, and 30 are needed"},
		{"six tubes", says(`{"tubes": {"step": 6}}`), "", ""},
		{"twelve sets", says(`{"sets": {"trio": 12}}`), "", ""},
		{"seven tubes", says(`{"tubes": {"step": 7}}`), "printed/tubes", "note: "},
	})
}
