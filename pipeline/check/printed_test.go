package check

import (
	"strings"
	"testing"
)

func replaced(text string, pairs ...string) string {
	return strings.NewReplacer(pairs...).Replace(text)
}

// The squares of tubes are irrational, so that patterns print what the ruler
// reads. Their sides, derived from geometry: 5.656854 in for two strips,
// 8.485281 for three, 11.313708 for four, of 2 1/2 in with 1/4-in seams.
func TestTubeSquaresMayBePrintedAsTheRulerReads(t *testing.T) {
	for _, c := range []struct {
		strips  int
		printed string
		fits    bool
	}{
		{2, "5 5/8", true}, {2, "5 11/16", true}, {2, "5 3/4", false}, {2, "5 9/16", false},
		{3, "8 1/2", true}, {3, "8 7/16", true}, {3, "8 3/8", false}, {3, "9 1/4", false},
		{4, "11 5/16", true}, {4, "11 3/8", true}, {4, "11 1/4", false},
	} {
		set := strings.TrimSuffix(strings.Repeat(`"roll",`, c.strips), ",")
		found := short(try(t, tubes, replaced(`{"parts": {"trio": {"strip_set": {"strips": [SET]}}}, "printed": {"small": {"measures": {"step": "SIDE"}}}}`,
			"SET", set, "SIDE", c.printed)))
		// 11 1/4 in is 0.0637 in below the square: just more than a line.
		if fits := !strings.Contains(found, "printed/measures"); fits != c.fits {
			t.Errorf("%d strips printed as %s: fits %v, want %v\n%s", c.strips, c.printed, fits, c.fits, found)
		}
	}
}

func TestMeasuresOfStripSets(t *testing.T) {
	tryAll(t, tubes, []tried{
		// T = n w - 2(n-1)s, derived from geometry: 6 1/2 in. 6 in is 2ns
		// subtracted, 7 1/2 no seam at all.
		{"as it is", `{"printed": {"small": {"measures": {"trio": "6 1/2"}}}}`, "", ""},
		{"with its nominal length", `{"printed": {"small": {"measures": {"trio": ["42", "6 1/2"]}}}}`, "", ""},
		{"a seam too many", `{"printed": {"small": {"measures": {"trio": "6"}}}}`, "printed/measures", "it measures 6 1/2 in across its strips"},
		{"no seams", `{"printed": {"small": {"measures": {"trio": "7 1/2"}}}}`, "printed/measures", `print "6 1/2"`},
		// An overlock's bite of 6 mm makes it 6.555118 in.
		{"overlock", `{"seam": {"allowance": "6 mm", "stitch": "514"}, "cautions": ["rotary-cutter", "iron", "bias-edges", "bias-outside", "overlock", "pins"],
			"printed": {"small": {"measures": {"trio": "6 9/16"}}}}`, "", ""},
	})
}

func TestWhatFollowsIsFolded(t *testing.T) {
	found := try(t, tubes, `{"printed": {"small": {"parts": {"step": 20}, "tubes": {"step": 4}, "sets": {"trio": 8}, "strips": {"trio": 24}, "precuts": {"roll": 2}}}}`)
	if len(found) != 1 || found[0].Rule != "printed/parts" || len(found[0].Follows) != 4 {
		t.Errorf("want the number of squares with all else under it, got\n%s", short(found))
	}
	found = try(t, tubes, `{"printed": {"small": {"per_tube": {"step": 10}, "tubes": {"step": 1}, "sets": {"trio": 2}}}}`)
	if len(found) != 1 || found[0].Rule != "printed/per-tube" || len(found[0].Follows) != 2 {
		t.Errorf("want the squares a tube with tubes and sets under it, got\n%s", short(found))
	}
	found = try(t, tubes, `{"layout": {"grid": {"rows": 6, "columns": 6}}, "printed": {"small": {"per_tube": {"step": 6}, "tubes": {"step": 6}, "precuts": {"roll": 1}}}}`)
	if len(found) != 1 || found[0].Rule != "yield/tube-squares" || len(found[0].Follows) != 3 {
		t.Errorf("want the squares from the pack with all else under it, got\n%s", short(found))
	}
	found = try(t, squares, `{"fabrics": {"edge": {"yardage": {}}}, "finish": {"binding": {"fabric": "edge", "cut": "2 1/2"}}, "parts": {"block": {"rows": [["square", "square"]]}},
		"layout": {"grid": {"columns": 5, "blocks": [["block"]]}}, "printed": {"small": {"measures": {"block": ["4 1/2", "4 1/2"]}, "finished": ["20", "16"], "strips": {"binding": 2}}}}`)
	if len(found) != 1 || found[0].Rule != "printed/measures" || len(found[0].Follows) != 2 {
		t.Errorf("want the block with the finished size and the binding under it, got\n%s", short(found))
	}
}

func TestNothingIsSaidOfWhatCouldNotBeCounted(t *testing.T) {
	tryAll(t, tubes, []tried{
		{"tubes too short", `{"fabrics": {"roll": {"precut": {"usable": ["2 1/2", "10"]}}}, "printed": {"small": {"sets": {"trio": 4}, "strips": {"trio": 12}, "precuts": {"roll": 1}, "left": {"roll": 28}}}}`,
			"yield/none", ""},
	})
	tryAll(t, squares, []tried{
		{"an unknown block", `{"parts": {"block": {"rows": [["square", "squar"]]}}, "layout": {"grid": {"blocks": [["block"]]}},
			"printed": {"small": {"finished": ["99", "99"], "parts": {"square": 99}, "strips": {"square": 99}, "fabric": {"sky": "9 yd"}}}}`,
			"reference/unknown-part", `write "square"`},
	})
}

func TestPrintedPartsMayBeWhatComesOut(t *testing.T) {
	const printed = `{"layout": {"grid": {"rows": 3, "columns": 4}}, "printed": {"small": {"parts": {"step": N}}}}`
	for n, rules := range map[string]string{"12": "", "15": "", "10": "printed/parts", "13": "printed/parts", "18": "printed/parts"} {
		if got := rulesOf(try(t, tubes, replaced(printed, "N", n))); got != rules {
			t.Errorf("%s of 12 needed, 15 made by three tubes: %q, want %q", n, got, rules)
		}
	}
}

func TestStripsOfPiecesEitherWayRound(t *testing.T) {
	// 31 sashes of 2 1/2 x 10 1/2 in at 40 in: two strips 10 1/2 in high or
	// eleven 2 1/2 in high (both are the trade's; derived from geometry).
	const sashes = `{"parts": {"square": {"cut": {"square": null, "size": ["2 1/2", "10 1/2"]}}}, "layout": {"grid": {"rows": 1, "columns": 31}},
		"printed": {"small": {"strips": {"square": N}}}}`
	for n, rules := range map[string]string{"1": "printed/strips", "2": "", "11": "", "12": "printed/strips"} {
		if got := rulesOf(try(t, squares, replaced(sashes, "N", n))); got != rules {
			t.Errorf("%s strips: %q, want %q", n, got, rules)
		}
	}
}

func TestFinishedSizeNamesTheSlip(t *testing.T) {
	// Four 4-in squares finish at 16 in; 16 1/2 in is unfinished, and 18 in is
	// four times the unfinished 4 1/2.
	tryAll(t, squares, []tried{
		{"unfinished", `{"printed": {"small": {"finished": ["16 1/2", "16 1/2"]}}}`, "printed/finished", "what is printed is the unfinished size"},
		{"sum of blocks", `{"printed": {"small": {"finished": ["18", "18"]}}}`, "printed/finished", "adds up the blocks unfinished"},
		{"within a stated rounding", `{"printed": {"small": {"finished": ["16 1/2", "16 1/2"], "rounding": "1"}}}`, "", ""},
	})
}

func TestSurplusStripsThatMakeNoSetAreYieldsToReport(t *testing.T) {
	tryAll(t, tubes, []tried{
		{"a spare pair of sets", `{"printed": {"small": {"strips": {"trio": 18}, "sets": {"trio": 6}}}}`, "printed/sets printed/strips", ""},
		{"a strip over", `{"printed": {"small": {"strips": {"trio": 16}}}}`, "yield/strips-left-over", ""},
		{"a set over", `{"printed": {"small": {"sets": {"trio": 5}}}}`, "yield/sets-left-over", ""},
	})
}

func TestFinishedSizeOfUnevenRowsIsLeftToPiecing(t *testing.T) {
	found := try(t, squares, `{"parts": {"wide": {"cut": {"fabric": "sky", "size": ["6 1/2", "4 1/2"]}}},
		"layout": {"grid": {"blocks": [["square"], ["wide"]]}}, "printed": {"small": {"finished": ["24", "16"]}}}`)
	if got := rulesOf(found); got != "piecing/row-widths" {
		t.Errorf("want the rows alone, got\n%s", short(found))
	}
}
