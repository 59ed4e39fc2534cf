package tabulate

import (
	"strings"
	"testing"

	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Worked by hand, on an invented quilt: nine squares of 10 1/2 in, three to a strip
// of 40 in, are 31 1/2 in of strips; the plain method takes a strip of 8 1/2 in more
// for the three rectangles, 40 in, and the packed layout cuts them from the strips' ends
// (3 x 10 1/2 + 8 1/2 = 40). With 1 in to square up: 32 1/2 in and 41 in.
func TestTheOtherLayoutIsHeldAgainstThePrintedLength(t *testing.T) {
	for printed, want := range map[string]string{
		"":                         "Another layout than the plan's: ",
		`"a": "3/4 yd"`:            "The pattern prints 3/4 yd, too little for this layout: ",
		`"a": "1 yd"`:              "The pattern prints 1 yd, enough for this layout but not for the plain method: ",
		`"a": "1 1/8 yd"`:          "The pattern prints 1 1/8 yd, enough for this layout but not for the plain method: ",
		`"a": "1 1/4 yd"`:          "The pattern prints 1 1/4 yd, enough for this layout and for the plain method: ",
		`"a": "2 yd"`:              "The pattern prints 2 yd, enough for this layout and for the plain method: ",
		`"a": "1 yd", "b": "0 yd"`: "The pattern prints 1 yd, enough for this layout but not for the plain method: ",
	} {
		grid := `"grid": { "rows": 1, "columns": 3, "blocks": [["block"]] }`
		if printed != "" {
			grid += ` }, "printed": { "one": { "fabric": { ` + printed + ` } }`
		}
		s := sizeWith(t, `"a": { "yardage": { "usable_width": "40", "squaring_up": "1" } }, "b": { "yardage": {} }`,
			`"ten": { "cut": { "fabric": "a", "square": "10 1/2" } }, "eight": { "cut": { "fabric": "a", "size": ["10 1/2", "8 1/2"] } },
  "block": { "rows": [["ten"], ["ten"], ["ten"], ["eight"]] }`, grid)
		lead := ""
		for _, table := range cutList(s, mostPictures).Tables {
			if strings.HasSuffix(table.ID, "-packed") {
				lead = table.Lead[0]
			}
		}
		if want += "31 1/2 in of strips, so 1 yd to buy instead of the plain method's 1 1/4 yd."; lead != want {
			t.Errorf("printed %s: %q, want %q", printed, lead, want)
		}
	}
}

// A strip that is higher than what is used from it, because others share it or the
// print's repeat makes it so, is cut down: derived from geometry.
func TestUsesNarrowerThanTheirStripAreCutDown(t *testing.T) {
	s := sizeOf(t, `"one": { "cut": { "fabric": "a", "square": "4 1/2" } }`, `"grid": { "rows": 1, "columns": 1, "blocks": [["one"]] }`)
	half := measure.Inch / 2
	needs := []derive.Need{
		{For: plan.Text{Text: "frame"}, Strip: true, Along: 9 * half}, {For: plan.Text{Text: "binding"}, Strip: true, Along: 5 * half},
	}
	shared := cutting.Row{Height: 9 * half, Repeat: 1, Strip: -1, Parts: []cutting.Part{{Strip: 0, Width: 53 * half}, {Strip: 1, Width: 6 * half}}}
	for want, r := range map[string]cutting.Row{
		"Use 26 1/2 in of it, then use 3 in of it cut down to 2 1/2 in wide.": shared,
		"Use whole, cut down to 2 1/2 in wide.":                               {Height: 12 * half, Repeat: 2, Strip: 1},
		"Use whole.":                                                          {Height: 5 * half, Repeat: 2, Strip: 1},
	} {
		c := cutter{s: s, f: s.Fabrics[0], u: measure.In}
		if got := c.stripRow(r, nil, needs, report.Cell{}).Cells[2].Text; got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
