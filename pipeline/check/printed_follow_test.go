package check

import "testing"

// The printed figures of these patterns contradict each other; whoever follows
// them cannot go on. All sums are derived from geometry: strips of a width add
// up, n strips of length L joined with a loss d are nL - (n-1)d long.

// framed is a quilt of 36 x 36 in in a border of 4 in, bound in the border's
// fabric. The border takes 162 in of strips, five, and the binding 186 in, five:
// 22 1/2 in and 12 1/2 in of cloth, with 1 in for squaring up 1 yd to the thread.
// The backing is 52 in square: two panels, 104 in.
const framed = `{
	"format": 1, "id": "framed", "title": "Framed", "status": "testing", "skill": "beginner", "use": "table", "units": "in",
	"cautions": ["rotary-cutter", "iron"],
	"seam": {"allowance": "1/4", "stitch": "301"},
	"fabrics": {"sky": {"yardage": {}}, "edge": {"yardage": {}}, "back": {"yardage": {}}},
	"parts": {"square": {"cut": {"fabric": "sky", "square": "4 1/2"}}},
	"layout": {"grid": {"rows": 9, "columns": 9, "blocks": [["square"]]},
		"borders": {"frame": {"fabric": "edge", "width": "4", "corners": "butted"}}},
	"finish": {"binding": {"fabric": "edge", "cut": "2 1/2"}, "backing": {"fabric": "back", "overhang": "4"}},
	"sizes": {"small": {}},
	"printed": {"small": "not printed"}
}`

func TestStripsFromThePrintedLength(t *testing.T) {
	tryAll(t, framed, []tried{
		{"as the recipe takes", `{"printed": {"small": {"strips": {"frame": 5, "binding": 5}, "fabric": {"edge": "1 yd"}}}}`, "", ""},
		{"seven of each", `{"printed": {"small": {"strips": {"frame": 7, "binding": 7}, "fabric": {"edge": "1 1/8 yd"}}}}`, "printed/short-of-cloth",
			`prints 7 strips for the binding; they take 17 1/2 in of "edge", and of the printed 1 1/8 yd (40 1/2 in) 8 in are left for that, beside 1 in for squaring up and 31 1/2 in for border "frame"`},
		{"what would do", `{"printed": {"small": {"strips": {"frame": 7, "binding": 7}, "fabric": {"edge": "1 1/8 yd"}}}}`, "printed/short-of-cloth",
			`print 5 strips, or print "1 1/2 yd" of "edge"`},
		// 27 in and 12 1/2 in are all that 1 1/8 yd leaves after squaring up.
		{"six, to the thread", `{"printed": {"small": {"strips": {"frame": 6}, "fabric": {"edge": "1 1/8 yd"}}}}`, "fabric/generous printed/strips", ""},
		{"six, a tick of cloth less", `{"fabrics": {"edge": {"yardage": {"squaring_up": "1.01"}}}, "printed": {"small": {"strips": {"frame": 6}, "fabric": {"edge": "1 1/8 yd"}}}}`, "printed/short-of-cloth",
			"26.99 in are left for that"},
		{"seven of each, and as much cloth", `{"printed": {"small": {"strips": {"frame": 7, "binding": 7}, "fabric": {"edge": "1 3/8 yd"}}}}`, "printed/short-of-cloth", "they take 17 1/2 in"},
		{"seven of each, and a step more", `{"printed": {"small": {"strips": {"frame": 7, "binding": 7}, "fabric": {"edge": "1 1/2 yd"}}}}`, "fabric/generous printed/strips", ""},
		{"nothing printed to cut them from", `{"printed": {"small": {"strips": {"frame": 7, "binding": 7}}}}`, "printed/strips", ""},
		{"repeats of the print", `{"fabrics": {"edge": {"yardage": {}, "repeat": "6"}}, "printed": {"small": {"strips": {"frame": 6}, "fabric": {"edge": "1 3/4 yd"}}}}`,
			"printed/short-of-cloth", "6 strips for border \"frame\"; they take 36 in"},
		{"too little for the recipe is told once", `{"printed": {"small": {"strips": {"frame": 7, "binding": 7}, "fabric": {"edge": "7/8 yd"}}}}`, "fabric/out-of-strips printed/strips", ""},
	})
}

func TestPiecesBesideStripsStopOnlyBelowABound(t *testing.T) {
	// Squares of 8 1/2 in beside the strips: four come from a strip, and four strips
	// are 34 in; cut as a block they take no less, as 40 in holds four across.
	const beside = `{"fabrics": {"sky": null}, "parts": {"square": {"cut": {"square": "8 1/2", "fabric": "edge"}}}, "layout": {"grid": {"rows": 4, "columns": 4}, "borders": {"frame": {"width": "2"}}}, "finish": {"binding": null},
		"printed": {"small": {"strips": {"frame": N}, "fabric": {"edge": "1 1/2 yd"}}}}`
	for n, rules := range map[string]string{"4": "fabric/generous", "7": "fabric/generous printed/strips", "8": "printed/short-of-cloth"} {
		found := try(t, framed, replaced(beside, "N", n))
		if got := rulesOf(found); got != rules {
			t.Errorf("%s strips of 2 1/2 in beside 34 in of squares from 53 in: %q, want %q\n%s", n, got, rules, short(found))
		}
	}
}

func TestStripsThatArePrintedForPieces(t *testing.T) {
	// Sixteen 4 1/2-in squares are two strips, four of 8 1/2 in one: 17 1/2 in, of 21 1/2
	// that 5/8 yd leaves to cut. A third strip of the small ones makes it 22 in.
	const two = `{"parts": {"large": {"cut": {"fabric": "sky", "square": "8 1/2"}}, "four": {"rows": [["square", "square"], ["square", "square"]]}},
		"layout": {"grid": {"rows": 2, "columns": 4, "blocks": [["four", "large"]]}}, "printed": {"small": {"strips": STRIPS, "fabric": {"sky": "5/8 yd"}}}}`
	tryAll(t, squares, []tried{
		{"as the recipe takes", replaced(two, "STRIPS", `{"square": 2, "large": 1}`), "", ""},
		{"three and one", replaced(two, "STRIPS", `{"square": 3, "large": 1}`), "printed/short-of-cloth",
			`3 strips for "square"; they take 13 1/2 in of "sky", and of the printed 5/8 yd (22 1/2 in) 13 in are left for that, beside 1 in for squaring up and 8 1/2 in for "large"`},
		{"three, and four squares that do not come from them", replaced(two, "STRIPS", `{"square": 3}`), "printed/short-of-cloth", "no layout of strips takes less than 22 in, which is proved"},
		{"two for the large ones, and small ones that come from what is left", replaced(two, "STRIPS", `{"large": 2}`), "printed/strips", ""},
		{"two for the large ones, and two for the small ones", replaced(two, "STRIPS", `{"square": 2, "large": 2}`), "printed/short-of-cloth", "2 strips for \"large\""},
	})
}

func TestStripsOfAPrintedWidthOrFabric(t *testing.T) {
	// Thirty-one oblongs of 2 1/2 x 10 1/2 in are two strips of 10 1/2 in, 21 in, or
	// eleven of 2 1/2 in, 27 1/2.
	const oblongs = `{"parts": {"square": {"cut": {"square": null, "size": ["2 1/2", "10 1/2"]}}}, "layout": {"grid": {"rows": 1, "columns": 31}},
		"printed": {"small": {"strips": {"square": STRIPS}, "fabric": {"sky": "CLOTH yd"}}}}`
	tryAll(t, squares, []tried{
		{"two wide ones", replaced(oblongs, "STRIPS", "2", "CLOTH", "5/8"), "", ""},
		{"eleven narrow ones from cloth for two wide ones", replaced(oblongs, "STRIPS", "11", "CLOTH", "5/8"), "printed/short-of-cloth",
			`11 strips for "square"; they take 27 1/2 in of "sky", and of the printed 5/8 yd (22 1/2 in) 21 1/2 in are left`},
		{"the same by their width", replaced(oblongs, "STRIPS", `{"count": 11, "width": "2 1/2"}`, "CLOTH", "3/4"), "printed/short-of-cloth", "11 strips 2 1/2 in wide for \"square\"; they take 27 1/2 in"},
		{"from cloth for them", replaced(oblongs, "STRIPS", `{"count": 11, "width": "2 1/2"}`, "CLOTH", "7/8"), "", ""},
	})
	// Two strips of sky and one of ink a set, three sets.
	const bars = `{"fabrics": {"ink": {"yardage": {}}}, "parts": {"square": null, "bar": {"strip_set": {"strips": [{"fabric": "sky", "width": "2"}, {"fabric": "ink", "width": "2"}, {"fabric": "sky", "width": "2"}], "segment": "3 1/2"}}},
		"layout": {"grid": {"rows": 5, "columns": 6, "blocks": [["bar"]]}}, "printed": {"small": {"sets": {"bar": 4}, "strips": {"bar": STRIPS}}}}`
	tryAll(t, squares, []tried{
		{"of one fabric", replaced(bars, "STRIPS", `[{"count": 7, "fabric": "sky"}, {"count": 4, "fabric": "ink"}]`), "printed/short-of-strips", "that takes 8 strips of \"bar\" at 2 a set, and it prints 7"},
		{"of the other", replaced(bars, "STRIPS", `[{"count": 8, "fabric": "sky"}, {"count": 3, "fabric": "ink"}]`), "printed/short-of-strips", "that takes 4 strips of \"bar\" at 1 a set, and it prints 3"},
	})
}

func TestStripsOfSashesAndSettingSquares(t *testing.T) {
	// Twelve 4-in blocks with 1-in sashes all round and cornerstones take 31 sashes of
	// 1 1/2 x 4 1/2 in: twenty-six to a strip of 4 1/2 in, two strips.
	const sashed = `{"fabrics": {"ink": {"yardage": {}}}, "layout": {"grid": {"rows": 3, "columns": 4},
		"sashing": {"fabric": "ink", "width": "1", "cornerstones": "sky", "outer": true}}, "printed": {"small": {"strips": {"sashing": N}, "fabric": {"ink": "3/8 yd"}}}}`
	for n, rules := range map[string]string{"2": "", "9": "printed/short-of-cloth"} {
		found := try(t, squares, replaced(sashed, "N", n))
		if got := rulesOf(found); got != rules {
			t.Errorf("%s strips of sashing: %q, want %q\n%s", n, got, rules, short(found))
		}
	}
}

func TestStripsOfTwoFabricsHoweverShared(t *testing.T) {
	// Thirty-two half-squares, two at a time from squares of 5 in: eight squares a
	// strip, two strips of each fabric. 1/2 yd leaves 17 in to cut, three strips.
	const halves = `{"fabrics": {"sky": {}, "ink": {"yardage": {}}}, "parts": {"square": {"cut": null, "half_squares": {"fabrics": ["sky", "ink"], "square": "5"}}},
		"layout": {"grid": {"rows": 4, "columns": 8}}, "printed": {"small": {"strips": {"square": N}, "fabric": {"sky": "1/2 yd", "ink": "INK yd"}}}}`
	tryAll(t, squares, []tried{
		{"two of each", replaced(halves, "N", "4", "INK", "1/2"), "fabric/generous", ""},
		{"three of each", replaced(halves, "N", "6", "INK", "1/2"), "fabric/generous printed/strips", ""},
		{"one more than both hold", replaced(halves, "N", "7", "INK", "1/2"), "printed/short-of-cloth",
			`prints 7 strips for "square"; however they are shared out, 1/2 yd (18 in) of "ink" and 1/2 yd (18 in) of "sky" hold at most 6 of them`},
		{"one more than one of them holds", replaced(halves, "N", "7", "INK", "5/8"), "fabric/generous printed/strips", ""},
	})
}

func TestStripsFromThePrintedPacks(t *testing.T) {
	const six = `{"layout": {"grid": {"rows": 6, "columns": 5}}, "printed": {"small": PRINTED}}`
	cases := []tried{
		{"fourteen sets", `{"strips": {"trio": 42}, "sets": {"trio": 14}, "tubes": {"step": 7}, "precuts": {"roll": 1}}`, "printed/short-of-packs",
			"prints 42 strips for \"trio\"; cut as printed, 42 pieces of \"roll\" are needed, and 1 pack of \"roll\" holds 40"},
		{"sets of strips that there are not", `{"strips": {"trio": 42}, "sets": {"trio": 15}, "precuts": {"roll": 1}}`, "printed/short-of-packs", "follows: try.plan.json:1:429: error: the pattern prints 15 strip sets"},
		{"by the sets alone", `{"sets": {"trio": 14}, "precuts": {"roll": 1}}`, "printed/short-of-packs", "prints 14 strip sets of \"trio\"; cut as printed, 42"},
		{"by the tubes alone", `{"tubes": {"step": 7}, "precuts": {"roll": 1}}`, "printed/short-of-packs", "print 6 tubes, or print 2 packs"},
		{"by fewer squares a tube", `{"per_tube": {"step": 4}, "precuts": {"roll": 1}}`, "printed/short-of-packs", "prints 4 squares from each tube"},
		{"two packs", `{"strips": {"trio": 42}, "sets": {"trio": 14}, "tubes": {"step": 7}, "precuts": {"roll": 2}}`, "fabric/packs-over printed/sets printed/strips printed/tubes", ""},
		{"thirty-nine", `{"strips": {"trio": 39}, "precuts": {"roll": 1}}`, "printed/strips", ""},
		{"and four left over", `{"strips": {"trio": 39}, "left": {"roll": 4}, "precuts": {"roll": 1}}`, "printed/short-of-packs", "39 of the 40 are needed"},
		{"and one left over", `{"strips": {"trio": 39}, "left": {"roll": 1}, "precuts": {"roll": 1}}`, "printed/left printed/strips", ""},
	}
	for i := range cases {
		cases[i].patch = replaced(six, "PRINTED", cases[i].patch)
	}
	tryAll(t, tubes, cases)
}

func TestSetsAndTubesFromWhatIsPrinted(t *testing.T) {
	// Ten squares take two tubes, four sets, twelve strips.
	tryAll(t, tubes, []tried{
		{"sets of too few strips", `{"printed": {"small": {"strips": {"trio": 15}, "sets": {"trio": 6}}}}`, "printed/short-of-strips", "that takes 18 strips of \"trio\" at 3 a set, and it prints 15"},
		{"sets of as many strips", `{"printed": {"small": {"strips": {"trio": 18}, "sets": {"trio": 6}}}}`, "printed/sets printed/strips", ""},
		{"tubes of too few sets", `{"printed": {"small": {"sets": {"trio": 4}, "tubes": {"step": 3}}}}`, "printed/short-of-sets", "that takes 6 strip sets of \"trio\", and it prints 4"},
		{"tubes of as many sets", `{"printed": {"small": {"sets": {"trio": 6}, "tubes": {"step": 3}}}}`, "printed/sets printed/tubes", ""},
		{"tubes of too few strips", `{"printed": {"small": {"strips": {"trio": 12}, "tubes": {"step": 3}}}}`, "printed/short-of-strips", "3 tubes of \"step\"; that takes 18 strips"},
		{"squares that the tubes do not give", `{"printed": {"small": {"per_tube": {"step": 4}, "tubes": {"step": 2}}}}`, "printed/short-of-pieces", "2 tubes, as printed, at 4 each give 8, and 10 are needed"},
		{"at the number of squares", `{"printed": {"small": {"per_tube": {"step": 4}, "tubes": {"step": 2}, "parts": {"step": 10}}}}`, "printed/short-of-pieces", "prints 10 of \"step\"; 2 tubes"},
		{"squares that three tubes give", `{"printed": {"small": {"per_tube": {"step": 4}, "tubes": {"step": 3}}}}`, "printed/per-tube", ""},
		{"squares of too few sets", `{"printed": {"small": {"per_tube": {"step": 4}, "sets": {"trio": 4}}}}`, "printed/short-of-sets", "4 squares from each tube of \"step\"; that takes 6"},
		{"too few for the layout is told once", `{"printed": {"small": {"sets": {"trio": 2}, "tubes": {"step": 2}}}}`, "printed/sets", ""},
	})
}

func TestSegmentsFromWhatIsPrinted(t *testing.T) {
	// Forty-eight segments of 2 1/2 in are three sets of sixteen, or four of twelve.
	const cut = `{"parts": {"square": null, "bar": {"strip_set": {"strips": [{"fabric": "sky", "width": "2 1/2"}, {"fabric": "sky", "width": "2 1/2"}], "segment": "2 1/2"}}},
		"fabrics": {"sky": {"yardage": {"usable_width": "41"}}}, "layout": {"grid": {"rows": 6, "columns": 8, "blocks": [["bar"]]}}, "printed": {"small": PRINTED}}`
	cases := []tried{
		{"twelve a set from three", `{"per_set": {"bar": 12}, "sets": {"bar": 3}}`, "printed/short-of-pieces", "3 strip sets, as printed, at 12 each give 36, and 48 are needed"},
		{"twelve a set from four", `{"per_set": {"bar": 12}, "sets": {"bar": 4}}`, "printed/per-set", ""},
		{"from too few strips", `{"per_set": {"bar": 12}, "strips": {"bar": 6}}`, "printed/short-of-strips", "12 segments from each strip set of \"bar\"; that takes 8 strips"},
		{"from cloth for three", `{"per_set": {"bar": 12}, "fabric": {"sky": "1/2 yd"}}`, "printed/short-of-cloth", "their strips then take 20 in"},
		{"from cloth for four", `{"per_set": {"bar": 12}, "fabric": {"sky": "5/8 yd"}}`, "printed/per-set", ""},
	}
	for i := range cases {
		cases[i].patch = replaced(cut, "PRINTED", cases[i].patch)
	}
	tryAll(t, squares, cases)
}

func TestMitredLengthsFromWhatIsPrinted(t *testing.T) {
	// A 4-in border round 36 in takes strips of 44 + (2 + 2 sqrt2)/4 in, 45.207 in:
	// 180.83 in, five strips of 40 in with diagonal joins, which give 182 in. So do
	// four of 45 1/2 in.
	const mitred = `{"layout": {"borders": {"frame": {"corners": "mitred"}}}, "finish": {"binding": null}, "printed": {"small": PRINTED}}`
	cases := []tried{
		{"60 in from five strips", `{"borders": {"frame": {"sides": "60", "ends": "60"}}, "strips": {"frame": 5}, "fabric": {"edge": "3/4 yd"}}`, "printed/short-of-length",
			"the sides of border \"frame\" as 60 in long; its four strips then take 240 in, and the printed 5 strips with diagonal joins give 182 in"},
		{"46 1/2 in from five strips", `{"borders": {"frame": {"sides": "46 1/2", "ends": "46 1/2"}}, "strips": {"frame": 5}}`, "printed/short-of-length", `print "45 1/4", or print 6 strips`},
		{"45 1/2 in, to the thread", `{"borders": {"frame": {"sides": "45 1/2", "ends": "45 1/2"}}, "strips": {"frame": 5}}`, "", ""},
		{"45 9/16 in", `{"borders": {"frame": {"sides": "45 1/2", "ends": "45 9/16"}}, "strips": {"frame": 5}}`, "printed/short-of-length", "the ends of border"},
		{"46 1/2 in from six", `{"borders": {"frame": {"sides": "46 1/2", "ends": "46 1/2"}}, "strips": {"frame": 6}}`, "printed/strips", ""},
		{"46 1/2 in from the cloth of five", `{"borders": {"frame": {"sides": "46 1/2", "ends": "46 1/2"}}, "fabric": {"edge": "3/4 yd"}}`, "printed/short-of-cloth",
			"the sides of border \"frame\" as 46 1/2 in long; its strips then take 27 in of \"edge\""},
		{"each side by itself", `{"borders": {"frame": {"sides": "78", "ends": "78"}}, "strips": {"frame": 8}}`, "printed/short-of-length", "joined for each side by itself that takes 12 strips"},
	}
	for i := range cases {
		cases[i].patch = replaced(mitred, "PRINTED", cases[i].patch)
	}
	last := &cases[len(cases)-1]
	last.patch = replaced(last.patch, `"corners": "mitred"`, `"corners": "mitred", "cut": "each side"`)
	tryAll(t, framed, cases)
}

func TestStripsAlongTheFabric(t *testing.T) {
	// Strips of 4 1/2 in along the fabric lie eight side by side in 40 in. The border's
	// four are cut 44 1/2 in, so that 1 5/8 yd leaves 57 1/2 in for them and 12 1/2 in of
	// binding: 57 in. A ninth strip, however short, needs another row.
	const along = `{"layout": {"borders": {"frame": {"strips": "lengthwise"}}}, "printed": {"small": {"strips": {"frame": N}, "fabric": {"edge": "1 5/8 yd"}}}}`
	tryAll(t, framed, []tried{
		{"four", replaced(along, "N", "4"), "", ""},
		{"eight", replaced(along, "N", "8"), "printed/strips", ""},
		{"nine", replaced(along, "N", "9"), "printed/short-of-cloth", `prints 9 strips for border "frame"; of "edge", with all else that is cut from it no layout`},
	})
}

func TestStripsOfTwoWidthsForOneBorder(t *testing.T) {
	// Coping to 40 x 38 in takes sides of 2 1/2 in and ends of 1 1/2 in: two and three
	// strips, 9 1/2 in. Two more take 3 in at least, and 3/8 yd leaves 12 1/2 in.
	const coped = `{"layout": {"borders": {"frame": {"width": null, "corners": null, "to": ["40", "38"]}}}, "finish": {"binding": null},
		"printed": {"small": {"strips": {"frame": N}, "fabric": {"edge": "3/8 yd"}}}}`
	for n, rules := range map[string]string{"5": "", "6": "printed/strips", "7": "printed/strips", "8": "printed/short-of-cloth"} {
		found := try(t, framed, replaced(coped, "N", n))
		if got := rulesOf(found); got != rules {
			t.Errorf("%s strips: %q, want %q\n%s", n, got, rules, short(found))
		}
	}
}

func TestBackingFromThePrintedLength(t *testing.T) {
	tryAll(t, framed, []tried{
		{"as large as it is", `{"printed": {"small": {"backing": ["52", "52"], "fabric": {"back": "3 yd"}}}}`, "", ""},
		{"twice as large", `{"printed": {"small": {"backing": ["120", "130"], "fabric": {"back": "3 yd"}}}}`, "printed/short-of-cloth",
			"a backing of 120 x 130 in; it takes 480 in of \"back\", and of the printed 3 yd (108 in) 107 in are left for that"},
		{"a little longer", `{"printed": {"small": {"backing": ["52", "53 1/2"], "fabric": {"back": "3 yd"}}}}`, "printed/larger", "note: "},
		{"longer both ways", `{"printed": {"small": {"backing": ["54", "54"], "fabric": {"back": "3 yd"}}}}`, "printed/short-of-cloth", `print ["52", "52"]; or print "3 1/8 yd"`},
		{"larger, of as much", `{"printed": {"small": {"backing": ["54", "54"], "fabric": {"back": "3 1/8 yd"}}}}`, "printed/larger", "follows: try.plan.json:1:488: note: the pattern prints 3 1/8 yd"},
	})
}

func TestColourwaysAreFollowedToo(t *testing.T) {
	// Border strips of 4 1/2 in and binding strips of 2 1/2 in are 39 1/2 in; in a print
	// with a repeat of 6 in each is cut 6 in: five of each are 60 in, eleven 66.
	const ways = `{"colourways": {"heather": {"fabrics": {"edge": {"repeat": "6"}}}}, "printed": {"small": {"strips": {"frame": N}, "fabric": {"edge": "1 3/4 yd"}}}}`
	tryAll(t, framed, []tried{
		{"the recipe's strips", replaced(ways, "N", "5"), "", ""},
		{"one more", replaced(ways, "N", "6"), "printed/short-of-cloth", `in the colourway "heather", the pattern prints 6 strips for border "frame"; they take 36 in of "edge", and of the printed 1 3/4 yd (63 in) 32 in are left`},
	})
}

func TestWhatDoesNotFollowIsToldBesideAStop(t *testing.T) {
	// The recipe's strips, 35 in, are more than 7/8 yd holds, whatever the border's
	// printed lengths are.
	found := try(t, framed, `{"layout": {"borders": {"frame": {"corners": "mitred"}}},
		"printed": {"small": {"strips": {"frame": 5}, "borders": {"frame": {"sides": "60", "ends": "60"}}, "fabric": {"edge": "7/8 yd"}}}}`)
	if got := rulesOf(found); got != "printed/short-of-length fabric/impossible" {
		t.Errorf("want both, got\n%s", short(found))
	}
}
