package plan_test

import (
	"slices"
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
			`schema/wrong-type /sizes/hall/layout/grid/rows: "rows" of "grid" is "six"; wanted: a whole number -> write it like 7`},
		{`{ "layout": { "grid": { "row": 6 } } }`,
			`schema/unknown-key /sizes/hall/layout/grid/row: there is no "row" in "grid" of "layout" -> write "rows"`},
		{`{ "layout": { "grid": { "rows": null } } }`,
			`schema/missing /sizes/hall/layout/grid: "rows" is missing from "grid" of "layout" -> add "rows"`},
		{`{ "seam": null }`,
			`schema/missing /sizes/hall: "seam" is missing from the plan -> add "seam": { "allowance": "1/4" }`},
		{`{ "parts": { "plain": { "cut": { "size": [1, 2] } } } }`,
			`schema/one-of /sizes/hall/parts/plain/cut/size: "cut" of "plain" has "square" and "size"; exactly one of "square" and "size" is wanted -> keep one of them and remove the rest`},
		{`{ "parts": { "plain": { "cut": { "square": null } } } }`,
			`schema/one-of /sizes/hall/parts/plain/cut: "cut" of "plain" has none of "square" and "size"; exactly one is wanted -> add "square" or "size"`},
		{`{ "parts": { "plain": { "cut": { "square": "8 1/3" } } } }`,
			`schema/off-tick /sizes/hall/parts/plain/cut/square: "square": "8 1/3" is not on a ruler: the nearest are 8.33 in and 8.34 in -> write 8.33 in or 8.34 in`},
		{`{ "layout": { "borders": { "rimm": null } } }`,
			`schema/removes-nothing /sizes/hall/layout/borders/rimm: the size takes away "rimm", which the recipe does not have here -> remove this line, or name one of stop, rim`},
		{`{ "layout": { "borders": { "rim": { "fabric": null, "part": "plain", "corners": "mitred" } } } }`,
			`schema/not-derived-yet /sizes/hall/layout/borders/rim/corners: pieced borders with mitred corners are not derived yet: the plan is refused rather than passed unproved -> write "corner squares" or "butted"`},
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

// A colourway is laid over each size, and changes only fabrics and kit.
func TestColourways(t *testing.T) {
	p, problems := read(t, sample(t, "settings.plan.json"), nil)
	if len(problems) > 0 {
		t.Fatal(lines(p.Tree, problems))
	}
	same(t, "sizes", len(p.Sizes), 2)
	same(t, "colourways", len(p.Colourways), 2)
	same(t, "title", p.Colourway("peat").Title.Text, "Peat and linen")
	same(t, "roles", len(p.Colourway("peat").Roles), 2)
	same(t, "no such colourway", p.Colourway("moss") == nil, true)
	for _, s := range p.Sizes {
		same(t, "ways", len(s.Ways), 2)
		same(t, "the recipe's own has none", s.Way.Given(), false)
		peat, chalk := &s.Ways[0], &s.Ways[1]
		same(t, "way", peat.Way.Text, "peat")
		same(t, "size", peat.Name.Text, s.Name.Text)
		same(t, "use", peat.Use.Text, s.Use.Text)
		same(t, "name", peat.Fabric("ink").Name.Text, "Peat")
		same(t, "own width", s.Fabric("ink").UsableWidth.Length, 40*measure.Inch)
		written(t, p, "width", peat.Fabric("ink").UsableWidth, 77*measure.Inch/2, `"38 1/2"`)
		same(t, "a fabric that no size has", peat.Fabric("lace") == nil, true)
		same(t, "price", p.File.Slice(peat.Kit.Price.At), `"64.00"`)
		same(t, "fabrics of the kit", len(peat.Kit.Fabrics), 2)
		same(t, "no kit", chalk.Kit == nil, true)
		same(t, "colour", chalk.Fabric("milk").Colour.Text, "#f4f1ea")
	}
}

// TestColourwayIsBlamed: what a colourway makes wrong is told there, once for
// all sizes.
func TestColourwayIsBlamed(t *testing.T) {
	const own = `{ "milk": { "colour": "#f4f1ea" } }, "kit": null`
	for _, tt := range []struct{ fabrics, want string }{
		{`{ "milk": { "yardage": { "usable_width": "8 1/3" } } }`,
			`schema/off-tick /colourways/chalk/fabrics/milk/yardage/usable_width: "usable_width": "8 1/3" is not on a ruler: the nearest are 8.33 in and 8.34 in -> write 8.33 in or 8.34 in`},
		{`{ "milk": { "yardage": null } }`,
			`schema/one-of /colourways/chalk/fabrics/milk: "milk" of "fabrics" has none of "yardage" and "precut"; exactly one is wanted -> add "yardage" or "precut"`},
		{`{ "milk": { "sku": null } }`,
			`schema/removes-nothing /colourways/chalk/fabrics/milk/sku: the colourway takes away "sku", which the recipe does not have here -> remove this line, or name yardage`},
		{`{ "milk": 3 }`,
			`schema/wrong-type /colourways/chalk/fabrics/milk: "milk" of "fabrics" is 3; wanted: an object in braces -> write it like "milk": { "sku": "C-140" }`},
	} {
		text := strings.Replace(sample(t, "settings.plan.json"), own, tt.fabrics, 1)
		p, problems := read(t, text, nil)
		if diff := cmp.Diff([]string{tt.want}, slices.Compact(lines(p.Tree, problems))); diff != "" {
			t.Errorf("%s (-want +got)\n%s", tt.fabrics, diff)
		}
	}
}
