package plan_test

import (
	"fmt"
	"strings"
	"testing"

	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

func TestSettings(t *testing.T) {
	text := strings.Replace(sample(t, "settings.plan.json"), `"corners": "ink", `, ``, 1)
	p, problems := read(t, text, nil)
	if len(problems) > 0 {
		t.Fatal(lines(p.Tree, problems))
	}
	s := &p.Sizes[0]
	tilted := s.Part("tilted").Operation.(plan.Setting)
	same(t, "corners' fabric", tilted.Triangles.Corners.Text, "milk")
	written(t, p, "float", tilted.Triangles.Float, measure.Inch/2, `"1/2"`)
	same(t, "halving", tilted.Triangles.CornerCut.Halving, plan.CutTwice)
	same(t, "cells and fabrics", len(tilted.Ingredients()), 4)
	laced := s.Part("laced").Operation.(plan.Setting)
	same(t, "outer sashing", laced.Sashing.Outer, true)
	same(t, "joins", laced.Sashing.Joins, plan.Straight)
	framed := s.Part("framed").Operation.(plan.Bordered)
	same(t, "mitred", framed.Borders[0].Corners, plan.Mitred)
	same(t, "lengthwise", framed.Borders[0].Lengthwise, true)
	written(t, p, "coping", framed.Borders[1].To[1], 19*measure.Inch/2, `"9 1/2"`)
	written(t, p, "for the mitre", framed.Borders[0].Allowance, 2*measure.Inch, `"2"`)
	same(t, "all round", framed.Borders[0].On, plan.AllRound)
	same(t, "on one pair", framed.Borders[2].On, plan.EndsOnly)
	same(t, "made of", len(framed.Ingredients()), 4)

	l := s.Layout
	same(t, "corners are of the sides' fabric", l.Triangles.Corners, l.Triangles.Sides)
	same(t, "each side", l.Borders[0].EachSide, true)
	same(t, "corner fabric", l.Borders[0].CornerFabric.Text, "milk")
	same(t, "unit", l.Borders[1].Part.Text, "unit")
	same(t, "symmetry", l.Grid.Symmetry.String(), "quarter turns")
}

// turns prints a grid's turns by quarters, * marking mirror images.
func turns(g *plan.Grid) string {
	var rows []string
	for r := range g.Rows.N {
		row := ""
		for _, c := range g.Row(r) {
			row += fmt.Sprint(c.Turn / 90)
			if c.Mirror {
				row += "*"
			}
		}
		rows = append(rows, row)
	}
	return strings.Join(rows, " ")
}

// TestSymmetries holds every symmetry against grids turned and mirrored by
// hand, derived from geometry.
func TestSymmetries(t *testing.T) {
	tests := []struct{ grid, want string }{
		{`"rows": 4, "columns": 4, "blocks": [["plain"]], "symmetry": "quarter turns"`, "0011 0011 3322 3322"},
		{`"rows": 4, "columns": 4, "blocks": [["plain", {"part": "plain", "turn": 90}]], "symmetry": "quarter turns"`, "0111 0122 0032 3332"},
		{`"rows": 3, "columns": 3, "blocks": [["plain"]], "symmetry": "quarter turns"`, "011 002 332"},
		{`"rows": 2, "columns": 3, "blocks": [["plain"]], "symmetry": "half turn"`, "000 222"},
		{`"rows": 3, "columns": 3, "blocks": [["plain"]], "symmetry": "half turn"`, "000 002 222"},
		{`"rows": 2, "columns": 4, "blocks": [["plain"]], "symmetry": "turned quarters"`, "0011 3322"},
		{`"rows": 2, "columns": 2, "blocks": [[{"part": "plain", "turn": 90}]], "symmetry": "mirror"`, "13* 1*3"},
		{`"rows": 3, "columns": 3, "blocks": [["plain"]], "symmetry": "mirror"`, "000* 000* 2*2*2"},
		{`"rows": 4, "columns": 4, "blocks": [["plain"]], "symmetry": "quarter turns", "tile": [2, 2]`, "0101 3232 0101 3232"},
		{`"rows": 2, "columns": 4, "blocks": [["plain", {"part": "plain", "turn": 180}]]`, "0202 0202"},
	}
	text := sample(t, "settings.plan.json")
	start := strings.Index(text, `"grid": { "rows": 4`)
	end := start + strings.Index(text[start:], "\n")
	for _, tt := range tests {
		p, problems := read(t, text[:start]+`"grid": {`+tt.grid+`},`+text[end:], nil)
		if len(problems) > 0 {
			t.Fatal(lines(p.Tree, problems))
		}
		same(t, tt.grid, turns(p.Sizes[0].Layout.Grid), tt.want)
	}
}

// otherLayout is the sample with its layout replaced.
func otherLayout(t *testing.T, layout string) string {
	text := sample(t, "settings.plan.json")
	start, end := strings.Index(text, `"layout": {`), strings.Index(text, `  "sizes"`)
	return text[:start] + `"layout": {` + layout + "},\n" + text[end:]
}

func TestRowsAndMaps(t *testing.T) {
	p, problems := read(t, otherLayout(t, `"rows": [["plain", "plain"], ["laced"]]`), nil)
	same(t, "problems", len(problems), 0)
	g := p.Sizes[0].Layout.Grid
	same(t, "rows", g.Rows.N, 2)
	same(t, "the longest", g.Columns.N, 2)
	same(t, "second row", len(g.Row(1)), 1)

	p, problems = read(t, otherLayout(t, `"map": {"rows": ["ab", "ba"], "key": {"a": "plain", "b": {"part": "plain", "turn": 90}}}`), nil)
	same(t, "problems", len(problems), 0)
	same(t, "turns", turns(p.Sizes[0].Layout.Grid), "01 10")
}

// TestRowsOnPoint: rows as they lie on point, full ones and shorter ones in
// turn, make a grid of full rows with blocks between them.
func TestRowsOnPoint(t *testing.T) {
	p, problems := read(t, otherLayout(t, `"map": {"rows": ["aba", "ba", "bbb"], "key": {"a": "plain", "b": {"part": "plain", "turn": 90}}},
		"setting": "on point", "triangles": {"sides": "ink"}`), nil)
	same(t, "problems", len(problems), 0)
	g := p.Sizes[0].Layout.Grid
	same(t, "full rows", g.Rows.N, 2)
	same(t, "columns", g.Columns.N, 3)
	same(t, "turns", turns(g), "010 111")
	short := g.Short(0)
	same(t, "between", len(short), 2)
	same(t, "turned", short[0].Turn, 90)
	same(t, "turned", short[1].Turn, 0)
}

// TestLayoutFaults: what the schema has no words for is refused in its place.
func TestLayoutFaults(t *testing.T) {
	const grid = `"grid": {"rows": 2, "columns": 2, "blocks": [["plain"]]}`
	border := func(b string) string { return grid + `, "borders": {"edge": {` + b + `}}` }
	onPoint := func(sashing, triangles string) string {
		return grid + `, "setting": "on point", "triangles": {"sides": "ink"` + triangles + `}, "sashing": {"fabric": "ink", "width": "1", ` + sashing + `}`
	}
	tests := []struct{ layout, want string }{
		{grid + `, "setting": "on point"`, `schema/missing /layout/setting: "triangles" is missing`},
		{grid + `, "triangles": {"sides": "ink"}`, `schema/not-allowed /layout/triangles: setting triangles go round`},
		{`"map": {"rows": ["ac"], "key": {"a": "plain"}}`, `schema/not-allowed /layout/map/rows/0: no block stands under "c"`},
		{`"rows": [["plain"], ["plain", "plain"]], "sashing": {"fabric": "ink", "width": "1"}`, `schema/not-allowed /layout/sashing: sashes on all sides`},
		{grid + `, "sashing": {"fabric": "ink", "width": "1", "between": "rows", "cornerstones": "ink"}`, `schema/not-allowed /layout/sashing/cornerstones: sashes between the rows only`},
		{`"rows": [["plain", "plain"], ["plain", "plain"], ["plain", "plain"]], "setting": "on point", "triangles": {"sides": "ink"}`,
			`schema/not-allowed /layout/rows: on point a full row and a shorter one take turns: row 2 has 2 blocks, and should have 1`},
		{`"rows": [["plain", "plain"], ["plain"]], "setting": "on point", "triangles": {"sides": "ink"}`, `schema/not-allowed /layout/rows: on point a full row comes last`},
		{onPoint(`"outer": true`, ""), `schema/missing /layout/sashing: "cornerstones" is missing`},
		{onPoint(`"cornerstones": "ink"`, ""), `schema/missing /layout/sashing: sashes on point lie round every block`},
		{onPoint(`"cornerstones": "ink", "outer": true`, `, "float": "1/2"`), `schema/not-allowed /layout/triangles/float: blocks with sashes`},
		{onPoint(`"cornerstones": "ink", "outer": true, "between": "rows"`, ""), `schema/not-allowed /layout/sashing/between: on point there are no sashes`},
		{border(`"fabric": "ink"`), `schema/missing /layout/borders/edge: "width" is missing`},
		{border(`"fabric": "ink", "width": "1", "to": ["20", "20"]`), `schema/not-allowed /layout/borders/edge/to: border "edge" has both`},
		{border(`"fabric": "ink", "width": "1", "corner_fabric": "milk"`), `schema/not-allowed /layout/borders/edge/corner_fabric: border "edge" has no corner squares`},
		{border(`"part": "unit", "width": "2", "corners": "corner squares"`), `schema/missing /layout/borders/edge: "corner_fabric" is missing`},
		{border(`"fabric": "ink", "to": ["20", "20"], "on": "sides"`), `schema/not-allowed /layout/borders/edge/on: border "edge" has a size to reach`},
		{border(`"fabric": "ink", "width": "1", "on": "ends", "corners": "mitred"`), `schema/not-allowed /layout/borders/edge/corners: border "edge" has strips on its ends only`},
		{border(`"fabric": "ink", "width": "1", "on": "sides", "first": "ends"`), `schema/not-allowed /layout/borders/edge/first: border "edge" has strips on its sides only`},
		{border(`"fabric": "ink", "width": "1", "allowance": "2"`), `schema/not-allowed /layout/borders/edge/allowance: border "edge" is not mitred`},
		{border(`"part": "unit", "to": ["20", "20"]`), `schema/not-derived-yet /layout/borders/edge/to: pieced coping`},
	}
	for _, tt := range tests {
		p, problems := read(t, otherLayout(t, tt.layout), nil)
		if len(problems) != 1 || !strings.HasPrefix(lines(p.Tree, problems)[0], tt.want) {
			t.Errorf("%s: got %q, want %s", tt.layout, lines(p.Tree, problems), tt.want)
		}
	}
}
