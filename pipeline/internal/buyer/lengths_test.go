package buyer_test

import (
	"fmt"
	"testing"

	"yardproof/pipeline/internal/buyer"
	"yardproof/schema/measure"
)

// followed is what there is too little of where she stops, and what the step takes of
// what is there.
func followed(t *testing.T, text string) string {
	t.Helper()
	s := derived(t, text)
	said := ""
	for _, stop := range buyer.Follow(s, s.Of.Printed) {
		said += fmt.Sprintf("%s: %d of %d, %s of %s; ", shorts[stop.Short], stop.Takes, stop.Has, stop.Needs.Format(measure.In), stop.There.Format(measure.In))
	}
	return said
}

// A backing printed larger than it has to be: 24 x 24 in would do, from 3/4 yd, which is
// 27 in, 1 in of it for squaring up. Up to 26 in it still comes from one panel; more is
// not there, and over 40 in it takes two. Worked by hand.
func TestPrintedBacking(t *testing.T) {
	for size, want := range map[string]string{
		`"24", "24"`:         "",
		`"26", "26"`:         "",
		`"26 1/8", "26"`:     "",
		`"26 1/8", "26 1/8"`: "cloth: 0 of 0, 26 1/8 in of 26 in; ",
		`"38", "30"`:         "cloth: 0 of 0, 30 in of 26 in; ",
		`"44", "44"`:         "cloth: 0 of 0, 88 in of 26 in; ",
	} {
		text := head("backed", `"sky": {"yardage": {}}, "back": {"yardage": {}}`) + fmt.Sprintf(`,
	"parts": {"square": {"cut": {"fabric": "sky", "square": "4 1/2"}}},
	"layout": {"grid": {"rows": 4, "columns": 4, "blocks": [["square"]]}},
	"finish": {"backing": {"fabric": "back", "overhang": "4"}},
	"printed": {"small": {"fabric": {"back": "3/4 yd"}, "backing": [%s]}}}`, size)
		if got := followed(t, text); got != want {
			t.Errorf("%s: %q, want %q", size, got, want)
		}
	}
}

// A mitred border of 3 in round 40 1/2 in, cut along the fabric: its strips of 3 1/2 in
// lie side by side, eleven in the width of 40 in. 1 3/8 yd are 49 1/2 in, 48 1/2 when squared up.
// Printed lengths may be as long as that and no longer. Of twelve printed strips a second
// row is no shorter than the shorter ones. Worked by hand.
func TestPrintedLengthsAlong(t *testing.T) {
	const stop = "cloth: 0 of 0, 0 in of 48 1/2 in; "
	for printed, want := range map[string]string{
		`"strips": {"frame": 4}`:                                      "",
		`"strips": {"frame": 11}`:                                     "",
		`"strips": {"frame": 12}`:                                     stop,
		`"borders": {"frame": {"sides": "48 1/2", "ends": "48 1/2"}}`: "",
		`"borders": {"frame": {"sides": "48 5/8", "ends": "48 5/8"}}`: stop,
	} {
		text := head("along", `"sky": {"yardage": {}}, "edge": {"yardage": {}}`) + fmt.Sprintf(`,
	"parts": {"square": {"cut": {"fabric": "sky", "square": "4 1/2"}}},
	"layout": {"grid": {"rows": 10, "columns": 10, "blocks": [["square"]]}, "borders": {"frame": {"fabric": "edge", "width": "3", "strips": "lengthwise", "corners": "mitred"}}},
	"printed": {"small": {"fabric": {"edge": "1 3/8 yd"}, %s}}}`, printed)
		if got := followed(t, text); got != want {
			t.Errorf("%s: %q, want %q", printed, got, want)
		}
	}
}

// Strips printed for the squares of both fabrics of a unit, which does not say how many
// are of which: half a yard holds three of 5 in, so that six may be cut and not seven.
func TestStripsOfSeveralPieces(t *testing.T) {
	for printed, want := range map[string]string{
		`"strips": {"star": 6}`: "",
		`"strips": {"star": 7}`: "cloth: 7 of 6, 0 in of 0 in; ",
	} {
		text := head("several", `"sky": {"yardage": {}}, "ink": {"yardage": {}}`) + fmt.Sprintf(`,
	"parts": {"star": {"half_squares": {"fabrics": ["sky", "ink"], "square": "5", "trim": "4 1/2"}}},
	"layout": {"grid": {"rows": 6, "columns": 6, "blocks": [["star"]]}},
	"printed": {"small": {"fabric": {"sky": "1/2 yd", "ink": "1/2 yd"}, %s}}}`, printed)
		if got := followed(t, text); got != want {
			t.Errorf("%s: %q, want %q", printed, got, want)
		}
	}
}
