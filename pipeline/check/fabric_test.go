package check

import "testing"

func TestPrintedClothIsJudgedByZone(t *testing.T) {
	tryAll(t, squares, []tried{
		// 41 1/2 in is 1.1528 yd (1 yd = 36 in, NIST Handbook 44, Appendix C), so
		// 1 1/8 yd is too little and 1 1/4 yd the next that a shop cuts.
		{"nine strips and one inch", `{"layout": {"grid": {"rows": 9, "columns": 8}}, "printed": {"small": {"fabric": {"sky": "1 1/8 yd"}}}}`,
			"fabric/unsquared", "41 1/2 in: 40 1/2 in of strips and 1 in for squaring up"},
		{"on the grid above", `{"layout": {"grid": {"rows": 9, "columns": 8}}, "printed": {"small": {"fabric": {"sky": "1 1/4 yd"}}}}`, "", ""},
		{"shrinkage", `{"fabrics": {"sky": {"yardage": {"shrinkage": {"length": "3%"}}}}, "printed": {"small": {"fabric": {"sky": "10 in"}}}}`,
			"fabric/unsquared", "1 in for squaring up, with shrinkage of 3%"},
		{"no length at all for this size", `{"fabrics": {"sand": {"yardage": {}}},
			"sizes": {"large": {"parts": {"square": {"cut": {"fabric": "sand"}}}}},
			"printed": {"small": {"fabric": {"sky": "3/8 yd", "sand": "1/8 yd"}}, "large": "not printed"}}`,
			"fabric/generous", "nothing is cut from it in this size"},
		{"a border beside the pieces", `{"layout": {"borders": {"frame": {"fabric": "sky", "width": "2"}}}, "printed": {"small": {"fabric": {"sky": "3/8 yd"}}}}`,
			"fabric/out-of-strips", "the plain method takes 15 in, and no straight cutting, strips used whole where the plan sews them whole, takes less than 14 in, which is proved"},
	})
}

// Twenty-one strips of 4 1/2 in and an inch are 95 1/2 in, 2.43 m, bought as 2.5 m;
// 2 1/2 yd are 90 in.
func TestMetresPrintedAsYards(t *testing.T) {
	const many = `{"layout": {"grid": {"rows": 21, "columns": 8}}, "printed": {"small": {"fabric": {"sky": "LENGTH"}}}}`
	tryAll(t, squares, []tried{
		{"as yards", replaced(many, "LENGTH", "2 1/2 yd"), "fabric/out-of-strips", `prints 2 1/2 yd (90 in) of "sky", as many yards as it takes metres`},
		{"other yards", replaced(many, "LENGTH", "2 3/8 yd"), "fabric/out-of-strips", `prints 2 3/8 yd (85 1/2 in) of "sky"; `},
	})
}

func TestMetricPlansSpeakOfMetres(t *testing.T) {
	const metric = `{"units": "cm", "seam": {"allowance": "0.75"}, "parts": {"square": {"cut": {"square": "11.5"}}}`
	tryAll(t, squares, []tried{
		// Eight 11.5-cm squares from 100 cm: two strips and 3 cm are 26 cm.
		{"too little", metric + `, "printed": {"small": {"fabric": {"sky": "0.25 m"}}}}`,
			"fabric/unsquared", "the pattern prints 0.25 m (25 cm) of \"sky\"; the plain method takes 26 cm: 23 cm of strips and 3 cm for squaring up"},
		{"enough", metric + `, "printed": {"small": {"fabric": {"sky": "30 cm"}}}}`, "", ""},
		{"wide only", metric + `, "fabrics": {"sky": {"yardage": {"usable_width": "110"}}}, "layout": {"grid": {"rows": 9, "columns": 3}}, "printed": {"small": {"fabric": {"sky": "40 cm"}}}}`,
			"fabric/wide-only", "at a usable width of 110 cm it takes 37.5 cm; at the careful width of 100 cm it takes 49 cm"},
		{"fair notice", metric + `, "fabrics": {"sky": {"yardage": {"usable_width": "107"}}}, "layout": {"grid": {"rows": 9, "columns": 3}}, "printed": {"small": {"fabric": {"sky": "40 cm"}}}}`,
			"", ""},
	})
}

func TestWideOnlyWhereAPieceIsTooLong(t *testing.T) {
	const panel = `{"parts": {"square": {"cut": {"square": null, "size": ["41", "41"]}}}, "layout": {"grid": {"rows": 1, "columns": 1}}, "printed": {"small": {"fabric": {"sky": "1 1/4 yd"}}}`
	tryAll(t, squares, []tried{
		{"stated as 42", panel + `, "fabrics": {"sky": {"yardage": {"usable_width": "42"}}}}`, "", ""},
		{"stated as 44", panel + `, "fabrics": {"sky": {"yardage": {"usable_width": "44"}}}}`, "fabric/wide-only", "at a usable width of 44 in it takes 42 in; at the careful width of 40 in a piece is too long"},
		{"another fabric, 54 in wide", panel + `, "fabrics": {"sky": {"yardage": {"usable_width": "54"}}}}`, "", ""},
	})
}

// Published sizes of a fat quarter are 18 x 21 and 18 x 22 in (glossaries), and
// 18 x 20 in is the careful figure: 25 squares of 3 1/2 in come from the
// smaller, 30 from the larger.
func TestFatQuartersAreCountedInWholePieces(t *testing.T) {
	const quarter = `{"fabrics": {"sky": {"yardage": null, "precut": {"piece": ["18", "LENGTH"], "count": 1}}},
		"parts": {"square": {"cut": {"square": "3 1/2"}}}, "layout": {"grid": {"rows": ROWS, "columns": 5}}, "printed": {"small": {"precuts": {"sky": 1}}}}`
	for _, c := range []struct{ length, rows, rules string }{
		{"20", "5", ""}, {"20", "6", "fabric/pack-short"}, {"21", "6", "fabric/quarter-size"}, {"21", "7", "fabric/pack-short"},
	} {
		patch := replaced(quarter, "LENGTH", c.length, "ROWS", c.rows)
		if got := rulesOf(try(t, squares, patch)); got != c.rules {
			t.Errorf("18 x %s, %s rows of 5: %q, want %q", c.length, c.rows, got, c.rules)
		}
	}
}

func TestPackPiecesMayBeTurned(t *testing.T) {
	const pack = `{"fabrics": {"sky": {"yardage": null, "print": "PRINT", "precut": {"piece": ["5", "10"], "count": 40}}},
		"parts": {"square": {"cut": {"square": null, "size": ["4 1/2", "9 1/2"]}}}}`
	tryAll(t, squares, []tried{
		{"plain", replaced(pack, "PRINT", "plain"), "", ""},
		{"one-way", replaced(pack, "PRINT", "one-way"), "fabric/pack-piece", "may not be turned sideways"},
	})
}

func TestAStripWiderThanThePacks(t *testing.T) {
	tryAll(t, tubes, []tried{
		{"wider", `{"parts": {"trio": {"strip_set": {"strips": [{"fabric": "roll", "width": "3"}, "roll", "roll"]}}}}`,
			"fabric/pack-piece", `"trio" takes strips cut 3 in wide, and of a piece of "roll" 2 1/2 x 41 1/2 in are usable`},
		{"narrower", `{"parts": {"trio": {"strip_set": {"strips": [{"fabric": "roll", "width": "2"}, "roll", "roll"]}}}}`, "", ""},
	})
}
