package tabulate

import (
	"slices"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// What is to be cut is printed no smaller than it is, and what the trade's square
// is larger by no larger: 4.853553 and 0.021447 in. 7/8 in is widely published, no
// authority; the exact figures are derived from geometry.
func TestTradeCutRows(t *testing.T) {
	s := sizeOf(t, `"unit": { "half_squares": { "fabrics": ["a", "b"], "square": 5, "trim": "4 1/2" } }`, `"grid": { "rows": 3, "columns": 3, "blocks": [["unit"]] }`)
	table, ok := tradeCuts(s)
	if !ok {
		t.Fatal("no table")
	}
	if got, want := printedRow(table.Rows[0]), "unit | 4 in | about 4.8536 in | 4 7/8 in | about 0.0214 in | 5 in"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	lead := "At a seam of 1/4 in the trade adds 7/8 in to a half-square unit, two at a time, or to half of a block's diagonal, and 1 1/4 in to a quarter-square unit or to the diagonal. What then lies on no line of 1/8 in is rounded up to the next."
	if len(table.Lead) != 1 || table.Lead[0] != lead || table.Foot != nil {
		t.Errorf("%q, %q", table.Lead, table.Foot)
	}
	if _, ok := tradeCuts(sizeOf(t, `"unit": { "cut": { "fabric": "a", "square": 5 } }`, `"grid": { "rows": 3, "columns": 3, "blocks": [["unit"]] }`)); ok {
		t.Error("a quilt without triangles has a table of their squares")
	}
}

func printedRow(r report.Row) string {
	var all []string
	for _, c := range r.Cells {
		if c.Kind == report.Length {
			all = append(all, c.Exact.Rounded(c.Unit, c.Toward))
		} else {
			all = append(all, c.Text)
		}
	}
	return strings.Join(all, " | ")
}

// Where the trade's square is too small it says so. Settings that float have an
// exact square and no trade's: 9 x sqrt2 + 1.207107 + 1 in.
func TestTradeCutsThatDiffer(t *testing.T) {
	s := sizeOf(t, `"unit": { "cut": { "fabric": "a", "square": "9 1/2" } }`,
		`"grid": { "rows": 3, "columns": 3, "blocks": [["unit"]] }, "setting": "on point", "triangles": { "sides": "b", "float": "1/2" }`)
	table, _ := tradeCuts(s)
	if got, want := printedRow(table.Rows[0]), "side triangles | 9 in | about 14.9351 in |  |  | 15 in"; got != want || table.Lead != nil {
		t.Errorf("got %s and %q, want %s", got, table.Lead, want)
	}
	m := sizeIn(t, "cm", "0.75", `"unit": { "half_squares": { "fabrics": ["a", "b"], "square": 13, "trim": "11.5" } }`, `"grid": { "rows": 3, "columns": 3, "blocks": [["unit"]] }`)
	table, _ = tradeCuts(m)
	if got, want := printedRow(table.Rows[0]), "unit | 10 cm | about 12.561 cm | 12.5 cm | about -0.061 cm | 13 cm"; got != want || len(table.Foot) != 1 {
		t.Errorf("got %s and %q, want %s", got, table.Foot, want)
	}
}

// A roll of 40 strips in sets of three gives 13 sets, one strip over, and 6 tubes, one
// set over; squares of 8.485281 in trimmed to 8 3/8 lose 0.110281 of a side and
// 0.661688 over a row of six; seven heights of 6 in are 42 in. Derived from division
// and from geometry.
func TestTubeNotes(t *testing.T) {
	s := sizeWith(t, `"a": { "precut": { "piece": ["2 1/2", 42], "count": 40 } }`, `"trio": { "strip_set": { "strips": ["a", "a", "a"] } }, "unit": { "tube": { "sets": ["trio", "trio"], "tip": "far seam", "trim": "8 3/8" } }`,
		`"grid": { "rows": 4, "columns": 6, "blocks": [["unit"]] }`)
	want := []string{
		"trio: set is 6 1/2 in wide",
		"trio: 1 pack would give 13 sets, 1 strip over",
		"unit: the 6 squares take 42 in of 42 in: 0 in to spare",
		"unit: a seam sewn less than 1/64 in narrower loses a square",
		"unit: trimmed from about 8.4852 in: about 0.1103 in off a side, about 0.6617 in over a row of 6, about 0.4412 in over a column of 4",
		"unit: 13 sets would give 6 tubes, 1 set over",
	}
	if got := allNotes(s); strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got %q, want %q", got, want)
	}
	four := sizeWith(t, `"a": { "precut": { "piece": ["2 1/2", 42], "count": 40 } }`, `"unit": { "strip_set": { "strips": ["a", "a", "a", "a"], "segment": "4 1/2" } }`,
		`"grid": { "rows": 4, "columns": 6, "blocks": [["unit"]] }`)
	if got, want := allNotes(four), "unit: 1 pack would give 10 sets, nothing over"; !slices.Contains(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// allNotes are the notes of all parts, by their names.
func allNotes(s *derive.Size) (all []string) {
	for _, p := range s.Parts {
		for _, note := range in(s.Plan.Units, p.Room.(derive.Noted).Notes()) {
			all = append(all, p.Name.Text+": "+note)
		}
	}
	return all
}

// Of 14 side triangles from 4 squares 2 are spare; of 8 from 2 none is.
func TestSpareSideTriangles(t *testing.T) {
	for layout, spare := range map[string]bool{`"rows": 5, "columns": 4`: true, `"rows": 3, "columns": 3`: false} {
		s := sizeOf(t, `"unit": { "cut": { "fabric": "a", "square": "9 1/2" } }`, `"grid": { `+layout+`, "blocks": [["unit"]] }, "setting": "on point", "triangles": { "sides": "b" }`)
		text := s.Top.Setting.OnPoint.Side.Told().In(s.Plan.Units)
		if got := strings.Contains(text, ", 2 spare"); got != spare || strings.Contains(text, "0 spare") {
			t.Errorf("%s: %q", layout, text)
		}
	}
}

// A quilt of 46 by 50 in is 192 in round; with 10 in for corners and the last join
// the binding needs 202.
func TestBindingSaysTheWayRound(t *testing.T) {
	s := sizeOf(t, `"unit": { "cut": { "fabric": "a", "square": "2 1/2" } }`, `"grid": { "rows": 25, "columns": 23, "blocks": [["unit"]] } }, "finish": { "binding": { "fabric": "b", "cut": "2 1/2" }`)
	if got, want := bindingNeed(s.Binding, s.Plan.Units), "; 192 in round the quilt, needs 202 in"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// Seams are told in metres in a metric plan, up to 10 cm, and in inches as they are
// in any other.
func TestSeamsInMetres(t *testing.T) {
	seam := (28 * measure.Metre).Surd().Add((42*measure.Centimetre + 3*measure.Millimetre).Surd())
	if c := seamCell(seam, measure.Cm); c.Kind != report.Number || c.Number.FloatString(3) != "28.500" {
		t.Errorf("%+v", c)
	}
	if c := seamCell((28 * measure.Metre).Surd(), measure.Cm); c.Number.FloatString(3) != "28.000" {
		t.Errorf("%+v", c)
	}
	if c := seamCell((1119 * measure.Inch).Surd(), measure.In); c.Kind != report.Length || !c.Exact.Equal((1119 * measure.Inch).Surd()) {
		t.Errorf("%+v", c)
	}
	if a, b := seamText(seam, measure.Cm), seamText((9*measure.Inch).Surd(), measure.In); a != "28.5 m" || b != "9 in" || seamUnit(measure.Cm) != "m" || seamUnit(measure.In) != "in" {
		t.Errorf("%q %q", a, b)
	}
}

// Both ways of a backing of 52 by 60 in from 40 in: 120 in or 3 3/8 yd along, 104 in
// or 3 yd across. Derived from geometry; rounded up to 1/8 yd.
func TestBackingRows(t *testing.T) {
	s := sizeOf(t, `"unit": { "cut": { "fabric": "a", "square": "4 1/2" } }`, `"grid": { "rows": 13, "columns": 11, "blocks": [["unit"]] } }, "finish": { "backing": { "fabric": "b", "overhang": 4 }`)
	table, ok := Input{Plan: s.Plan, Sizes: []*derive.Size{s}}.backings()
	if !ok || len(table.Rows) != 2 {
		t.Fatalf("%v, %d rows", ok, len(table.Rows))
	}
	for i, want := range []struct {
		way, taken    string
		each, length  measure.Length
		eighthsOfYard measure.Length
	}{{"along the quilt", "no", 60, 120, 27}, {"across the quilt", "yes", 52, 104, 24}} {
		c := table.Rows[i].Cells
		if c[1].Text != want.way || c[2].Int != 2 || !c[3].Exact.Equal((want.each * measure.Inch).Surd()) || !c[4].Exact.Equal((want.length * measure.Inch).Surd()) ||
			!c[5].Exact.Equal((want.eighthsOfYard * measure.Yard / 8).Surd()) || c[6].Text != want.taken {
			t.Errorf("row %d: %+v", i, c)
		}
	}
}
