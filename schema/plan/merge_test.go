package plan_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

func TestSizes(t *testing.T) {
	p := right(t)
	door, hall, stair := &p.Sizes[0], &p.Sizes[1], &p.Sizes[2]
	same(t, "rows of the first size", door.Layout.Grid.Rows.N, 5)
	same(t, "rows of the second", hall.Layout.Grid.Rows.N, 9)
	same(t, "rows stand in the patch", p.Tree.PointerAt(hall.Layout.Grid.Rows.At.Start), "/sizes/hall/layout/grid/rows")
	same(t, "columns stand in the recipe", p.Tree.PointerAt(hall.Layout.Grid.Columns.At.Start), "/layout/grid/columns")
	same(t, "use", hall.Use.Text, "bed")
	same(t, "description", hall.Description.Text, "A long one.")
	same(t, "borders left", len(hall.Layout.Borders), 1)
	written(t, p, "border", hall.Layout.Borders[0].Width, 3*measure.Inch/2, `"1 1/2"`)
	same(t, "no kit", hall.Kit == nil, true)
	same(t, "a kit", stair.Kit != nil, true)
	same(t, "cut again", stair.Part("plain").Operation.(plan.Cut).Height.Length, 6*measure.Inch)
}

func TestMerge(t *testing.T) {
	tree, _ := jsontree.Parse(source.New("", []byte(sample(t, "lattice-walk.plan.json"))), jsontree.Limits{})
	sizes := plan.Merge(tree)
	var got []string
	for _, s := range sizes {
		line := s.Name.Text
		for _, key := range []string{"sizes", "printed"} {
			for _, m := range s.Tree.Get(key).Members {
				line += " " + key + ":" + m.Key
			}
		}
		if s.Same {
			line += " same"
		}
		got = append(got, line)
	}
	want := []string{"door sizes:door printed:door same", "hall sizes:hall printed:hall", "stair sizes:stair"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	if len(tree.Get("sizes").Members) != 3 || tree.Get("kit") == nil {
		t.Error("merging has changed the plan's own tree")
	}
}

// TestPatchIsBlamed: what a size's patch makes wrong is told at the patch.
func TestPatchIsBlamed(t *testing.T) {
	tests := []struct{ patch, want string }{
		{`{ "layout": { "grid": { "rows": "six" } } }`,
			`schema/wrong-type /sizes/hall/layout/grid/rows: "rows" of "grid" is "six"; wanted: a whole number`},
		{`{ "layout": { "grid": { "row": 6 } } }`,
			`schema/unknown-key /sizes/hall/layout/grid/row: there is no "row" in "grid" of "layout" -> write "rows"`},
		{`{ "layout": { "grid": { "rows": null } } }`,
			`schema/missing /sizes/hall/layout/grid: "rows" is missing from "grid" of "layout" -> add "rows"`},
		{`{ "seam": null }`,
			`schema/missing /sizes/hall: "seam" is missing from the plan -> add "seam"`},
		{`{ "parts": { "plain": { "cut": { "size": [1, 2] } } } }`,
			`schema/one-of /sizes/hall/parts/plain/cut/size: "cut" of "plain" has "square" and "size"; exactly one of "square" and "size" is wanted -> keep one of them and remove the rest`},
		{`{ "parts": { "plain": { "cut": { "square": null } } } }`,
			`schema/one-of /sizes/hall/parts/plain/cut: "cut" of "plain" has none of "square" and "size"; exactly one is wanted -> add "square" or "size"`},
		{`{ "parts": { "plain": { "cut": { "square": "8 1/3" } } } }`,
			`schema/off-tick /sizes/hall/parts/plain/cut/square: "square": "8 1/3" is not on a ruler: the nearest are 8.33 in and 8.34 in -> write 8.33 in or 8.34 in`},
		{`{ "layout": { "borders": { "rimm": null } } }`,
			`schema/removes-nothing /sizes/hall/layout/borders/rimm: the size takes away "rimm", which the recipe does not have here -> remove this line, or name one of stop, rim`},
		{`{ "fabrics": { "sand": { "yardage": null, "precut": { "piece": [18, 21], "count": 4 }, "repeat": "6" } } }`,
			`schema/not-derived-yet /sizes/hall/fabrics/sand/repeat: the repeat of a print on precut pieces is not derived yet: the plan is refused rather than passed unproved -> remove it, or keep the plan out of the folder until it is`},
	}
	text := sample(t, "lattice-walk.plan.json")
	start := strings.Index(text, `"hall": { "use"`) + len(`"hall": `)
	end := start + strings.Index(text[start:], "\n") - 1
	for _, tt := range tests {
		p, problems := read(t, text[:start]+tt.patch+text[end:], nil)
		if diff := cmp.Diff([]string{tt.want}, lines(p.Tree, problems)); diff != "" {
			t.Errorf("%s (-want +got)\n%s", tt.patch, diff)
		}
	}
}

// TestToldOnce: a fault of the recipe is in every size and is told once.
func TestToldOnce(t *testing.T) {
	p, problems := read(t, strings.Replace(sample(t, "lattice-walk.plan.json"), `"width": "3 1/4"`, `"width": 0`, 1), nil)
	want := []string{`schema/length /parts/band/strip/width: "width" is zero; it must be more -> write a length above zero`}
	if diff := cmp.Diff(want, lines(p.Tree, problems)); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}
