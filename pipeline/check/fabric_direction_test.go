package check

import "testing"

// The strips of a tube lie along the diagonal of its squares, so that no print
// stands upright in them (derived from geometry). A plain fabric may lie any
// way.
func TestPrintsInTubes(t *testing.T) {
	const print = `{"fabrics": {"roll": {"print": "WAY"}}}`
	tryAll(t, tubes, []tried{
		{"plain", replaced(print, "WAY", "plain"), "", ""},
		{"two-way", replaced(print, "WAY", "two-way"), "fabric/direction", `all 10 pieces of "step" show the two-way print "roll" at 45 degrees`},
		{"one-way", replaced(print, "WAY", "one-way"), "fabric/direction", `all 10 pieces of "step" show the one-way print "roll" at 45 degrees`},
	})
}

// Four at a time all edges of the units are on the bias; two at a time a
// two-way print may stand on its head, and cut twice it may not lie on its side
// (derived from geometry).
func TestPrintsInTriangles(t *testing.T) {
	const units = `{"fabrics": {"sky": {"print": "WAY"}}, "cautions": ["rotary-cutter", "iron", "bias-edges", "bias-outside"], "parts": {"square": null, "a": {"half_squares": {"fabrics": ["sky", "sky"], "square": "7", "at_a_time": N}}},
		"layout": {"grid": {"blocks": [["a"]]}}}`
	tryAll(t, squares, []tried{
		{"four at a time", replaced(units, "WAY", "two-way", "N", "4"), "fabric/direction", `all 16 pieces of "a"`},
		{"two at a time", replaced(units, "WAY", "two-way", "N", "2"), "", ""},
		{"two at a time, one-way", replaced(units, "WAY", "one-way", "N", "2"), "fabric/direction", `8 of 16 units of "a"`},
	})
}

// A strip set's segments stand upright as sewn; turned a quarter they lie on
// their side, turned half round they serve a two-way print only.
func TestPrintsInSegments(t *testing.T) {
	const segments = `{"fabrics": {"sky": {"print": "WAY"}}, "parts": {"square": null, "pair": {"strip_set": {"strips": [{"fabric": "sky", "width": "2 1/2"}, {"fabric": "sky", "width": "2 1/2"}], "segment": "4 1/2"}}},
		"layout": {"grid": {"blocks": [["pair", {"part": "pair", "turn": TURN}]]}}}`
	tryAll(t, squares, []tried{
		{"upright", replaced(segments, "WAY", "one-way", "TURN", "0"), "", ""},
		{"on its head", replaced(segments, "WAY", "one-way", "TURN", "180"), "fabric/direction", `8 of 16 pieces of "pair"`},
		{"on its head, two-way", replaced(segments, "WAY", "two-way", "TURN", "180"), "", ""},
		{"on its side", replaced(segments, "WAY", "two-way", "TURN", "90"), "fabric/direction", `8 of 16 pieces of "pair"`},
	})
}
