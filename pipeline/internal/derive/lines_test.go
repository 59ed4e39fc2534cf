package derive_test

import (
	"fmt"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// A cut that is trimmed afterwards goes up to the lines of the ruler that names
// its own, the finest of several, else to the project's ruler_grid, else to 0.5
// cm; one that is not trimmed goes to the nearest millimetre. 0.5 cm lines with
// millimetre marks are common practice, no source. The exact cuts are derived
// from geometry: an hourglass trimmed to 11 cm takes squares of 11 + 1.5 sqrt2 =
// 13.1213 cm; four geese 10 x 5 cm take 10 + 0.75 (2 + 2 sqrt2) = 13.6213 cm.
func TestTrimmedCutsGoUpToLines(t *testing.T) {
	hourglass := `"hourglass": {"half_squares": ["a", "b"], "trim": "11"}`
	geese := `"flying_geese": {"goose": "a", "sky": "b", "finished": ["10", "5"], "at_a_time": 4%s}`
	for _, c := range []struct{ name, unit, rulers, grid, cut string }{
		{"no lines said", hourglass, ``, ``, "13.5"},
		{"lines of the ruler", hourglass, `{"square": "30", "lines": "0.2"}`, ``, "13.2"},
		{"the finest of two rulers", hourglass, `{"square": "30", "lines": "1"}, {"square": "20", "lines": "0.25"}`, ``, "13.25"},
		{"coarse lines", hourglass, `{"square": "30", "lines": "1"}`, ``, "14"},
		{"a ruler without lines", hourglass, `{"square": "30"}`, ``, "13.5"},
		{"the project's grid", hourglass, ``, `"0.1"`, "13.2"},
		{"the ruler's lines before the project's", hourglass, `{"square": "30", "lines": "0.5"}`, `"0.1"`, "13.5"},
		{"geese, trimmed", fmt.Sprintf(geese, `, "trim": ["11.5", "6.5"]`), ``, ``, "14"},
		{"geese, not trimmed", fmt.Sprintf(geese, ``), `{"square": "30", "lines": "0.5"}`, ``, "13.6"},
	} {
		defaults := plan.DefaultsFor(measure.Cm)
		if c.grid != "" {
			text := `{"format": 1, "defaults": {"cm": {"ruler_grid": ` + c.grid + `}}}`
			file := source.New("yardproof.json", []byte(text))
			tree, _ := jsontree.Parse(file, jsontree.DefaultLimits())
			project, problems := plan.DecodeProject(file, tree)
			if len(problems) > 0 {
				t.Fatal(problems)
			}
			defaults = project.DefaultsFor(measure.Cm)
		}
		p, problems := decode(fmt.Sprintf(`{"format": 1, "id": "lines", "title": "Lines", "units": "cm", "seam": {"allowance": "0.75"},
			"fabrics": {"a": {"yardage": {}}, "b": {"yardage": {}}}, "tools": {"rulers": [%s]}, "parts": {"unit": {%s}},
			"layout": {"grid": {"rows": 2, "columns": 2, "blocks": [["unit"]]}}, "sizes": {"one": {}}}`, orRuler(c.rulers), c.unit))
		if len(problems) > 0 {
			t.Fatalf("%s: %v", c.name, problems)
		}
		p.Defaults = defaults
		got := derive.Of(p, &p.Sizes[0]).Part("unit").Unit.Pieces[0].Width
		if want, _ := measure.ParseLength(c.cut, measure.Cm); got != want {
			t.Errorf("%s: cut %s, want %s", c.name, got.Format(measure.Cm), c.cut)
		}
	}
}

// Setting triangles are trimmed with the quilt's edge, so their squares go up to the
// same lines, and the sheet says to which. Derived from geometry: blocks of 10 cm
// take 10 sqrt2 + 0.75 (2 + 2 sqrt2) = 17.7635 cm and 10/sqrt2 + 0.75 (2 + sqrt2) =
// 9.6317 cm, blocks of 4 in take 6.8640 and 3.6820 in.
func TestSettingTrianglesGoUpToLines(t *testing.T) {
	for _, c := range []struct{ units, seam, block, ruler, cut, side, corner, told string }{
		{"cm", "0.75", "11.5", ``, ``, "18", "10", "8 triangles from squares, each cut twice diagonally, up to the usual lines, 0.5 cm from one to the next, about 0.236 cm over to trim"},
		{"cm", "0.75", "11.5", `, "lines": "0.2"`, ``, "17.8", "9.8", "8 triangles from squares, each cut twice diagonally, up to the ruler's lines, 0.2 cm from one to the next, about 0.036 cm over to trim"},
		{"cm", "0.75", "11.5", `, "lines": "1"`, `, "side_cut": {"square": "18.2"}`, "18.2", "10", "8 triangles from squares, each cut twice diagonally, about 0.436 cm over to trim"},
		{"in", "1/4", "4 1/2", ``, ``, "6 7/8", "3 3/4", "8 triangles from squares, each cut twice diagonally, up to the usual lines, 1/8 in from one to the next, about 0.0110 in over to trim"},
		{"in", "1/4", "4 1/2", `, "lines": "1/2"`, ``, "7", "4", "8 triangles from squares, each cut twice diagonally, up to the ruler's lines, 1/2 in from one to the next, about 0.1360 in over to trim"},
	} {
		p, problems := decode(fmt.Sprintf(`{"format": 1, "id": "lines", "title": "Lines", "units": %q, "seam": {"allowance": %q},
			"fabrics": {"a": {"yardage": {}}, "b": {"yardage": {}}}, "tools": {"rulers": [{"square": "30"%s}]}, "parts": {"unit": {"cut": {"fabric": "a", "square": %q}}},
			"layout": {"setting": "on point", "grid": {"rows": 3, "columns": 3, "blocks": [["unit"]]}, "triangles": {"sides": "b"%s}}, "sizes": {"one": {}}}`, c.units, c.seam, c.ruler, c.block, c.cut))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		p.Defaults = plan.DefaultsFor(p.Units)
		o := derive.Of(p, &p.Sizes[0]).Top.Setting.OnPoint
		side, _ := measure.ParseLength(c.side, p.Units)
		corner, _ := measure.ParseLength(c.corner, p.Units)
		if o.Side.Cut != side || o.Corner.Cut != corner {
			t.Errorf("%+v: squares of %s and %s", c, o.Side.Cut.Format(p.Units), o.Corner.Cut.Format(p.Units))
		}
		if told := o.Side.Told().In(p.Units); told != c.told {
			t.Errorf("told %q, want %q", told, c.told)
		}
	}
}

// orRuler is a ruler that says nothing of lines, where a list must not be empty.
func orRuler(rulers string) string {
	if rulers == "" {
		return `{"square": "40"}`
	}
	return rulers
}
