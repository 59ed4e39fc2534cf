package check

import "testing"

// A 46 x 50 in quilt is 192 in round, and with 10 in for corners 202 in are
// needed. Five 2 1/2-in strips of 40 in give 190 in with diagonal joins and six
// 227 1/2 in (derived from geometry).
func TestBindingLosesAWidthAJoin(t *testing.T) {
	const bound = `{"fabrics": {"edge": {"yardage": {}}}, "parts": {"square": {"cut": {"square": "2 1/2"}}}, "layout": {"grid": {"rows": 25, "columns": 23}},
		"finish": {"binding": {"fabric": "edge", "cut": "2 1/2"}}, "printed": {"small": {"strips": {"binding": N}}}}`
	tryAll(t, squares, []tried{
		{"five", replaced(bound, "N", "5"), "finish/binding-short", "with diagonal joins they give 190 in, and 202 in are needed"},
		{"six", replaced(bound, "N", "6"), "", ""},
		{"seven", replaced(bound, "N", "7"), "printed/strips", "6 give the 202 in that are needed"},
	})
}

// A backing of 52 x 60 in, overhang included, takes two panels either way:
// upright 120 in, crosswise 104 in, which is 3 yd (derived from geometry).
func TestBackingTakesTheShorterWay(t *testing.T) {
	const backed = `{"fabrics": {"back": {"yardage": {}}}, "layout": {"grid": {"rows": 13, "columns": 11}},
		"finish": {"backing": {"fabric": "back", "panels": "WAY"}}, "printed": {"small": {"fabric": {"back": "CLOTH"}}}}`
	tryAll(t, squares, []tried{
		{"either", replaced(backed, "WAY", "either", "CLOTH", "3 yd"), "", ""},
		{"exactly", replaced(backed, "WAY", "either", "CLOTH", "105 in"), "", ""},
		{"nothing to square up", replaced(backed, "WAY", "either", "CLOTH", "104 in"), "finish/backing-short", "which leaves nothing of the 1 in for squaring up"},
		{"just short", replaced(backed, "WAY", "either", "CLOTH", "103 63/64 in"), "finish/backing-short", "the backing takes 105 in, 2 panels of 52 in and 1 in for squaring up"},
		{"upright", replaced(backed, "WAY", "lengthwise", "CLOTH", "3 yd"), "finish/backing-short", "2 panels of 60 in"},
	})
}

func TestBackingMayBeTurnedUnlessItsPrintMayNot(t *testing.T) {
	const backed = `{"fabrics": {"back": {"print": "PRINT", "yardage": {}}}, "layout": {"grid": {"rows": 6}},
		"finish": {"backing": {"fabric": "back"}}, "printed": {"small": {"backing": ["32", "24"]}}}`
	tryAll(t, squares, []tried{
		{"plain", replaced(backed, "PRINT", "plain"), "", ""},
		{"one-way", replaced(backed, "PRINT", "one-way"), "finish/backing-short", "is 24 x 32 in"},
	})
}

func TestBackingOfTheSameFabricAsTheTop(t *testing.T) {
	// 10 in for the squares and 24 in for the back: a verdict of family fabric.
	// Beside a back of 24 x 24 in the cloth of 40 in is 16 in wide and holds
	// fifteen of the sixteen squares of 4 1/2 in, so that 24 + 4 1/2 + 1 = 29 1/2 in
	// would do.
	tryAll(t, squares, []tried{
		{"short", `{"finish": {"backing": {"fabric": "sky"}}, "printed": {"small": {"fabric": {"sky": "7/8 yd"}}}}`,
			"fabric/unsettled", "the shortest layout of strips found takes 34 in with nothing cut beside the backing, and none below 22 1/2 in is possible"},
		{"enough", `{"finish": {"backing": {"fabric": "sky"}}, "printed": {"small": {"fabric": {"sky": "1 yd"}}}}`, "", ""},
	})
}
