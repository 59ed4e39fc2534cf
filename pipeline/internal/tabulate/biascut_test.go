package tabulate

import (
	"strings"
	"testing"

	"yardproof/pipeline/report"
)

func cutRows(t report.Table) string {
	var all []string
	for _, r := range t.Rows {
		all = append(all, r.Cells[2].Text)
	}
	return strings.Join(all, "|")
}

// Worked by hand, derived from geometry: a rectangle 17 in high gives strips of
// 17 sqrt2 = 24.04 in from edge to edge, two pieces of 8 in in each (23.04 straight
// ended); of the strips of a corner floor((24.04 - 8) / 2) = 8 hold one piece and
// floor((24.04 - 16) / 2) = 4 two, 24 in both corners: 16 x 2 + 24 = 56. It is
// 17 + 16 sqrt2 = 39.63 in wide. One stem fits a square of 9 / sqrt2 = 6.36 in, and
// no rectangle of strips is as low. Of fat quarters squares are cut.
func TestStemsAreCutAsBiasStrips(t *testing.T) {
	for _, c := range []struct{ fabric, columns, want string }{
		{`"yardage": { "usable_width": "40" }`, "56", "Straighten the end.|1 rectangle 39 3/4 x 17 in, cut at 45 degrees into 16 bias strips 1 in wide, about 24.0416 in long from edge to edge and 16 shorter from its two corners: 56 pieces of 8 in long."},
		{`"yardage": { "usable_width": "40" }`, "1", "Straighten the end.|1 square 6 3/8 in, from each one piece 1 x 8 in on the bias."},
		{`"precut": { "piece": ["18", "22"], "count": 6 }`, "6", "2 strips from each piece. 3 squares 6 3/8 in, from each one piece 1 x 8 in on the bias."},
	} {
		s := sizeWith(t, `"a": { `+c.fabric+` }, "b": { "yardage": {} }`, `"stem": { "template": { "fabric": "a", "box": ["1", "8"], "grain": "bias" } }`,
			`"grid": { "rows": 1, "columns": `+c.columns+`, "blocks": [["stem"]] }`)
		if got := cutRows(cutList(s, mostPictures).Tables[0]); got != c.want {
			t.Errorf("%s stems: %q, want %q", c.columns, got, c.want)
		}
	}
}

// A square that the plan does not state may be a rectangle with strips side by side:
// 13 1/2 in high it gives seven of 19.09 in and three in each corner (25.4 in of
// them), and the pattern's 14 1/2 in is enough for it alone.
func TestBiasBindingSideBySide(t *testing.T) {
	for kind, square := range map[string]string{
		"bias strips":     "1 square 22 1/2 in, cut into bias strips 2 1/2 in wide.",
		"continuous bias": "1 square 23 in, sewn to a tube and cut round and round into one bias strip 2 1/2 in wide.",
	} {
		s := sizeWith(t, `"a": { "yardage": {} }, "b": { "yardage": { "usable_width": "40" } }`, `"one": { "cut": { "fabric": "a", "square": "9 1/2" } }`,
			`"grid": { "rows": 5, "columns": 5, "blocks": [["one"]] } }, "finish": { "binding": { "fabric": "b", "cut": "2 1/2", "kind": "`+kind+`" } },
  "printed": { "one": { "fabric": { "b": "14 1/2 in" } }`)
		tables := map[string]report.Table{}
		for _, table := range cutList(s, mostPictures).Tables {
			tables[table.ID] = table
		}
		if got := cutRows(tables["cut-one-b"]); got != "Straighten the end.|"+square {
			t.Errorf("%s: %q", kind, got)
		}
		beside := tables["cut-one-b-bias"]
		if got := cutRows(beside); !strings.Contains(got, "cut at 45 degrees into ") || !strings.Contains(got, "shorter from its two corners, joined on the straight grain.") {
			t.Errorf("%s: %q", kind, got)
		}
		if len(beside.Lead) == 0 || !strings.HasPrefix(beside.Lead[0], "The pattern prints 14 1/2 in, ") {
			t.Errorf("%s: %q", kind, beside.Lead)
		}
	}
}
