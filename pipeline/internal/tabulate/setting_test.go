package tabulate

import (
	"strings"
	"testing"

	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

func cutTo(c report.Cell) string { return c.Exact.Format(measure.In) }

// The sewing sheet says on which sides a border of one pair lies, and what
// mitred strips are cut longer; the sizes above the strips are derived from
// geometry: 9 by 9 in of blocks.
func TestBorderWords(t *testing.T) {
	for said, want := range map[string][]string{
		`"fabric": "b", "width": 2, "on": "sides"`: {"join the strips on the diagonal, 40 in in all; cut from it: on the sides only, 2 of | 2 1/2 in | 9 1/2 in"},
		`"fabric": "b", "width": 2, "on": "ends"`:  {"join the strips on the diagonal, 40 in in all; cut from it: top and bottom only, 2 of | 2 1/2 in | 9 1/2 in"},
		`"part": "unit", "width": 3, "on": "ends"`: {"top and bottom: 3 of unit each, should measure | 3 1/2 in | 9 1/2 in"},
		`"fabric": "b", "to": [9, 12]`: {"join the strips on the diagonal; cut from them: top and bottom only, 2 of | 2 in | 9 1/2 in",
			"trim; should measure | 9 1/2 in | 12 1/2 in"},
		`"fabric": "b", "width": 2, "corners": "mitred", "allowance": 3`: {
			"join the strips on the diagonal, 77 1/2 in in all; cut from it: all four, then mitred, each 3 in longer than its exact length, to be cut off with the mitre: sides, 2 of | 2 1/2 in | about 17.2071 in",
			"top and bottom, 2 of | 2 1/2 in | about 17.2071 in"},
	} {
		s := sizeOf(t, `"unit": { "cut": { "fabric": "a", "square": "3 1/2" } }`,
			`"grid": { "rows": 3, "columns": 3, "blocks": [["unit"]] }, "borders": { "edge": { `+said+` } }`)
		var got []string
		for _, r := range borderRows(s, s.Top.Borders[0], workings{}) {
			got = append(got, r.Cells[1].Text+" | "+cutTo(r.Cells[3])+" | "+cutTo(r.Cells[4]))
		}
		if strings.Join(got, "\n") != strings.Join(want, "\n") {
			t.Errorf("%s: got\n%s\nwant\n%s", said, strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
	}
}

// The cut list says how many of a square's triangles are used, and how many are
// left over: of 9 units one triangle each from 9 squares cut twice, 36, leaves
// 27. Derived by counting.
func TestUnusedTriangles(t *testing.T) {
	s := sizeOf(t, `"tip": { "cut": { "fabric": "a", "square": "5", "halved": "twice", "used": 1 } }, "air": { "cut": { "fabric": "b", "square": "5", "halved": "twice" } },
		"unit": { "triangle_square": { "of": ["tip", "air", "air", "air"] } }`, `"grid": { "rows": 3, "columns": 3, "blocks": [["unit"]] }`)
	lists := cutList(s, mostPictures).Tables
	if got, want := strings.Join(lists[0].Foot, "\n"), "tip: of the 36 triangles of 9 squares, 1 triangle of each used, 27 are left over."; !strings.HasPrefix(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	if got, want := lists[0].Rows[1].Cells[2].Text, "8 squares 5 in, each cut twice diagonally, 1 triangle of each used."; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got := strings.Join(lists[1].Foot, "\n"); strings.Contains(got, "triangle") {
		t.Errorf("all triangles are used: %q", got)
	}
}
