package tabulate

import (
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/report"
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// sizeOf is the one size of an invented plan with parts and a layout.
func sizeOf(t *testing.T, parts, layout string) *derive.Size {
	t.Helper()
	return sizeIn(t, "in", "1/4", parts, layout)
}

// sizeIn is sizeOf in other units and at another seam.
func sizeIn(t *testing.T, units, seam, parts, layout string) *derive.Size {
	t.Helper()
	return sizeRead(t, units, seam, `"a": { "yardage": {} }, "b": { "yardage": {} }`, parts, layout)
}

// sizeWith is sizeOf with other fabrics.
func sizeWith(t *testing.T, fabrics, parts, layout string) *derive.Size {
	t.Helper()
	return sizeRead(t, "in", "1/4", fabrics, parts, layout)
}

func sizeRead(t *testing.T, units, seam, fabrics, parts, layout string) *derive.Size {
	t.Helper()
	text := `{ "format": 1, "id": "units", "title": "Units", "units": "` + units + `", "seam": { "allowance": "` + seam + `" },
  "fabrics": { ` + fabrics + ` }, "parts": { ` + parts + ` },
  "layout": { ` + layout + ` }, "sizes": { "one": {} } }`
	file := source.New("test.plan.json", []byte(text))
	tree, problems := jsontree.Parse(file, jsontree.DefaultLimits())
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	p, problems := plan.Decode(file, tree, plan.Merge(tree), nil)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return derive.Of(p, &p.Sizes[0])
}

// sewnBy is the sewing of an invented top of 3 by 3 parts "unit", by part: how
// it is made and what is noted.
func sewnBy(t *testing.T, parts string) map[string][2]string {
	t.Helper()
	words := map[string][2]string{}
	for _, r := range sewParts(sizeOf(t, parts, `"grid": { "rows": 3, "columns": 3, "blocks": [["unit"]] }`), workings{}).Rows {
		words[r.Cells[0].Text] = [2]string{r.Cells[1].Text, r.Cells[6].Text}
	}
	return words
}

// The sewing sheet says what a unit is made from, what geometry asks for where
// the trade cuts something else, what that leaves in a row and in a column,
// and what becomes of corners cut away. The sums are derived from geometry:
// 3 x 0.042893 and 3 x 0.021447 in.
func TestUnitWords(t *testing.T) {
	for parts, want := range map[string][2]string{
		`"unit": { "flying_geese": { "goose": "a", "sky": "b", "finished": [6, 3], "at_a_time": 4 } }`: {
			"3 lots of 1 goose square 7 1/4 in of a and 4 sky squares 3 7/8 in of b, 4 units from each",
			"goose square by geometry about 7.2072 in; sky square by geometry about 3.8536 in; " +
				"comes out about 0.0429 in wider than drafted, about 0.1287 in over the 3 of a row; " +
				"comes out about 0.0214 in higher than drafted, about 0.0643 in over the 3 of a column; 3 spare"},
		`"unit": { "flying_geese": { "goose": "a", "sky": "b", "finished": [6, 3], "bonus": "kept" } }`: {
			"each from 1 goose rectangle 6 1/2 x 3 1/2 in of a and 2 sky squares 3 1/2 in of b, stitched over its ends and flipped",
			"18 pairs of corners cut away from the 3 1/2 in squares: sew each into a bonus half-square unit, about 2.7929 in unfinished"},
		`"unit": { "hourglass": { "half_squares": ["a", "b"], "square": "5 1/4", "trim_down_to": "1/4" } }`: {
			"5 pairs of squares 5 1/4 in, a and b, sewn and cut twice over, 2 units from each, trimmed to 4 1/2 in, down to the next line of 1/4 in",
			"1 spare"},
		`"unit": { "flying_geese": { "goose": "a", "sky": "b", "finished": [6, 3], "at_a_time": 4, "trim_down_to": "1/2" } }`: {
			"3 lots of 1 goose square 7 1/4 in of a and 4 sky squares 3 7/8 in of b, 4 units from each, trimmed to 6 1/2 x 3 1/2 in, down to the next line of 1/2 in",
			"goose square by geometry about 7.2072 in, up to the usual lines of 1/8 in; sky square by geometry about 3.8536 in, up to the usual lines of 1/8 in; 3 spare"},
		`"unit": { "hourglass": { "half_squares": ["a", "b"], "trim": "4 1/2" } }`: {
			"5 pairs of squares 5 1/4 in, a and b, sewn and cut twice over, 2 units from each, trimmed to 4 1/2 in",
			"square by geometry about 5.2072 in, up to the usual lines of 1/8 in; 1 spare"},
		`"brick": { "cut": { "fabric": "a", "square": 4 } }, "unit": { "flip_corners": { "body": "brick", "corners": { "top left": { "fabric": "b", "square": 2 } } } }`: {
			"each from brick with 1 corner square 2 in of b, stitched over top left and flipped",
			"9 pairs of corners cut away from the 2 in squares: waste"},
		`"unit": { "square_in_square": { "centre": "a", "corners": "b", "finished": 8 } }`: {
			"each from 1 centre square 6 1/8 in of a and 2 corner squares 4 7/8 in of b, each cut once diagonally",
			"centre square by geometry about 6.1569 in; corner square by geometry about 4.8536 in; " +
				"comes out about 0.0011 in narrower than drafted, about 0.0032 in over the 3 of a row; " +
				"comes out about 0.0011 in lower than drafted, about 0.0032 in over the 3 of a column"},
		`"unit": { "logs": { "centre": { "fabric": "a", "finished": 2 }, "log": 1, "rounds": 2, "fabrics": { "top": "a", "right": "a", "rounds": ["b"] } } }`: {
			"centre square 2 1/2 in of a, then logs 1 1/2 in wide, one after the other; lengths in round 1: top 2 1/2 in a, right 3 1/2 in a, bottom 3 1/2 in b, left 4 1/2 in b" +
				"; round 2: top 4 1/2 in a, right 5 1/2 in a, bottom 5 1/2 in b, left 6 1/2 in b",
			"logs of one: 16 in of a, 20 in of b, to be cut from strips in whole logs"},
		`"unit": { "template": { "fabric": "a", "box": [6, 9], "area": 41.5, "grain": "bias", "finished": [5, 8] } }`: {
			"cut round its template from bias strips of a, 6 in wide and 9 in long",
			"not proved: its outline and fit are the template's; fills 41.5 sq in of a box of 54 sq in; edges are on the bias"},
		`"nine": { "cut": { "fabric": "a", "square": "9 1/2" } }, "unit": { "recut": { "part": "nine", "pieces": [2, 2], "turns": [0, 90, 270, 180] } }`: {
			"cut nine into 2 across by 2 down, each 4 3/4 in x 4 3/4 in; turn them 0°, 90° / 270°, 180° and sew them together again", ""},
		`"set": { "strip_set": { "strips": [{ "fabric": "a", "width": 3 }, { "fabric": "b", "width": 3 }] } }, "unit": { "loop": { "set": "set", "cut": "2 1/2", "open": [1, 2] } }`: {
			"2 loops of set set, last strip to first, cut into rings of 2 1/2 in, 16 from each; 2 rings to a part, opened at seam 1, 2 and sewn side by side",
			"the 16 rings take 40 in of 40 in: 0 in to spare"},
		`"unit": { "chain": { "strips": "a", "width": "2 1/2", "length": 30, "folds": 1 } }`: {
			"join the strips on the diagonal; 8 strips of a, 2 1/2 in wide, give 302 1/2 in; cut it into lengths of 30 in; fold 1: sew along the edge and cut the fold, 4 1/2 in wide and 15 in long", ""},
	} {
		if got := sewnBy(t, parts)["unit"]; got != want {
			t.Errorf("%s\n got %q\nwant %q", parts, got, want)
		}
	}
}

// Triangles are listed as they are cut, with what their strips leave.
func TestTriangleWords(t *testing.T) {
	words := sewnBy(t, `"peak": { "shape": { "fabric": "a", "kind": "triangle 60", "finished": 6 } },
    "end": { "shape": { "fabric": "b", "kind": "half triangle 60", "finished": 6, "tips": "blunted" } }, "unit": { "rows": [["end", "peak", "end"]] }`)
	for part, want := range map[string][2]string{
		"peak": {"cut from 1 strip 6 3/4 in wide of a, 9 from each, triangles of 60 degrees, up and down in turn",
			"the 9 triangles take about 38.9712 in of 40 in: about 1.0288 in to spare"},
		"end": {"cut from 2 strips 6 1/2 in wide of b, 16 from each, half triangles of 60 degrees in pairs, head to tail; a pair that slopes the other way gives their mirror images",
			"the 16 half triangles take about 36.3317 in of 40 in: about 3.6683 in to spare"},
	} {
		if words[part] != want {
			t.Errorf("%s: %q, want %q", part, words[part], want)
		}
	}
}

// Rows with strips between them have a width to measure and no one height.
func TestSashedRowsWords(t *testing.T) {
	s := sizeOf(t, `"low": { "cut": { "fabric": "a", "square": "4 1/2" } }, "high": { "cut": { "fabric": "a", "square": "6 1/2" } }`,
		`"rows": [["low", "low", "low"], ["high", "high"]], "sashing": { "fabric": "b", "width": "1", "between": "rows" }`)
	u := s.Plan.Units
	want := []report.Row{
		row(report.T("blocks"), report.T("2 rows; each row should measure as wide as the sashing is long"), report.Cell{}, report.L((25*measure.Inch/2).Surd(), u), report.Cell{}),
		row(report.T("sashing"), report.T("level, running through"), report.N(1), report.L((3*measure.Inch/2).Surd(), u), report.L((25*measure.Inch/2).Surd(), u)),
		row(report.T("middle"), report.T("should measure"), report.Cell{}, report.L((25*measure.Inch/2).Surd(), u), report.L((23*measure.Inch/2).Surd(), u)),
	}
	got := settingRows(s)
	if len(got) != len(want) {
		t.Fatalf("%d rows", len(got))
	}
	for r := range want {
		for c := range want[r].Cells {
			if got[r].Cells[c] != want[r].Cells[c] {
				t.Errorf("row %d, cell %d: %+v, want %+v", r, c, got[r].Cells[c], want[r].Cells[c])
			}
		}
	}
}
