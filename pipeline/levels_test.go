package pipeline

import (
	"slices"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/schema/plan"
)

func TestWithin(t *testing.T) {
	cases := []struct {
		pointer, outer string
		want           bool
	}{
		{"/parts/step", "", true},
		{"", "", true},
		{"/parts/step", "/parts", true},
		{"/parts/step", "/parts/step", true},
		{"/parts/step/tube", "/parts/step", true},
		{"/parts/stepping", "/parts/step", false},
		{"/parts", "/parts/step", false},
		{"", "/parts", false},
		{"/fabrics", "/parts", false},
	}
	for _, c := range cases {
		if got := within(c.pointer, c.outer); got != c.want {
			t.Errorf("within(%q, %q) = %v", c.pointer, c.outer, got)
		}
	}
}

func found(rule string, level diag.Level, at int, follows ...diag.Finding) diag.Finding {
	f := diag.Finding{Rule: rule, Level: level, Plan: "p", Follows: follows}
	f.Place.Range.Start = at
	return f
}

// What follows from a finding that a project silences is not silenced with it,
// and no finding hides one that is graver.
func TestLevelsKeepWhatFollows(t *testing.T) {
	tree := func() []diag.Finding {
		return []diag.Finding{found("tools/a", diag.Error, 1, found("yield/b", diag.Error, 2), found("yield/c", diag.Note, 3))}
	}
	cases := []struct {
		name     string
		levels   levels
		top      []string // rules that stand alone, in order
		below    int      // those that follow
		accepted int
	}{
		{"nothing changed", levels{}, []string{"tools/a"}, 2, 0},
		{"off", levels{of: map[string]diag.Level{"tools/a": 0}}, []string{"yield/b", "yield/c"}, 0, 0},
		{"lowered", levels{of: map[string]diag.Level{"tools/a": diag.Warning}}, []string{"tools/a", "yield/b"}, 1, 0},
		{"accepted", accepting("tools/a", "p"), []string{"yield/b", "yield/c"}, 0, 1},
		{"of another plan", accepting("tools/a", "q"), []string{"tools/a"}, 2, 0},
		{"what follows is accepted", accepting("yield/b", "p"), []string{"tools/a"}, 1, 1},
		{"what follows is off", levels{of: map[string]diag.Level{"yield/b": 0}}, []string{"tools/a"}, 1, 0},
	}
	for _, c := range cases {
		used := make([]bool, len(c.levels.exceptions))
		kept, excused := c.levels.apply(tree(), used)
		var top []string
		below := 0
		for _, f := range kept {
			top = append(top, f.Rule)
			below += len(f.Follows)
		}
		if !slices.Equal(top, c.top) || below != c.below || len(excused) != c.accepted {
			t.Errorf("%s: %v with %d below and %d accepted, wanted %v, %d, %d", c.name, top, below, len(excused), c.top, c.below, c.accepted)
		}
		for i, u := range used {
			if u != (c.accepted > 0) {
				t.Errorf("%s: exception %d used: %v", c.name, i, u)
			}
		}
	}
}

func accepting(rule, id string) levels {
	return levels{
		exceptions: []plan.Exception{{Rule: plan.Text{Text: rule}, Plan: plan.Text{Text: id}}},
		places:     []diag.Place{{File: projectFile}},
	}
}
