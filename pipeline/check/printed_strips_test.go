package check

import "testing"

// Thirty-one oblongs of 2 1/2 x 10 1/2 in from 40 in: sixteen to a strip 10 1/2
// in wide, three to one of 2 1/2 in (derived from geometry).
const oblongs = `{"parts": {"square": {"cut": {"square": null, "size": ["2 1/2", "10 1/2"]}}}, "layout": {"grid": {"rows": 1, "columns": 31}},
	"printed": {"small": {"strips": {"square": N}}}}`

func TestStripsOfPiecesAreThoseOfOneWay(t *testing.T) {
	const takes = `31 pieces take 2 strips 10 1/2 in wide or 11 strips 2 1/2 in wide`
	var tries []tried
	for _, c := range []struct{ n, level string }{
		{"1", "error"}, {"3", "note"}, {"6", "note"}, {"7", "error"}, {"10", "error"}, {"12", "note"}, {"22", "note"}, {"23", "warning"},
	} {
		want := c.level + `: the pattern prints ` + c.n + ` strip`
		tries = append(tries, tried{c.n, replaced(oblongs, "N", c.n), "printed/strips", want}, tried{c.n + " says why", replaced(oblongs, "N", c.n), "printed/strips", takes})
	}
	for _, n := range []string{"2", "11"} {
		tries = append(tries, tried{n, replaced(oblongs, "N", n), "", ""})
	}
	tryAll(t, squares, tries)
}

func TestPrintedWidthOfStripsIsJudged(t *testing.T) {
	some := func(n string) string { return replaced(oblongs, "N", n) }
	tryAll(t, squares, []tried{
		{"narrow", some(`{"count": 11, "width": "2 1/2"}`), "", ""},
		{"wide", some(`{"count": 2, "width": "10 1/2"}`), "", ""},
		{"too few narrow", some(`{"count": 2, "width": "2 1/2"}`), "printed/strips", `error: the pattern prints 2 strips 2 1/2 in wide for "square"; 31 pieces take 11`},
		{"one narrow too few", some(`{"count": 10, "width": "2 1/2"}`), "printed/strips", `error: the pattern prints 10 strips 2 1/2 in wide for "square"; 31 pieces take 11`},
		{"too many wide", some(`{"count": 11, "width": "10 1/2"}`), "printed/strips", `warning: the pattern prints 11 strips 10 1/2 in wide for "square"; 31 pieces take 2`},
		{"no such width", some(`{"count": 11, "width": "2"}`), "printed/strips", `error: the pattern prints strips for "square" as 2 in wide; they are cut 2 1/2 in or 10 1/2 in`},
		{"of a fabric", some(`{"count": 11, "fabric": "sky"}`), "", ""},
		{"of no fabric of the plan", some(`{"count": 11, "fabric": "skye"}`), "reference/unknown-printed", `write "sky"`},
	})
}

// A set of two fabrics and three strips: four sets take eight strips of the one
// and four of the other.
func TestStripsOfEachFabric(t *testing.T) {
	const sets = `{"fabrics": {"sand": {"yardage": {}}, "ink": {"yardage": {}}}, "parts": {"square": {"cut": null, "strip_set": {"segment": "4 1/2",
		"strips": [{"fabric": "sky", "width": "2 1/2"}, {"fabric": "sand", "width": "1 1/2"}THIRD]}}, "ink": {"cut": {"fabric": "ink", "size": ["4 1/2", "HIGH"]}}},
		"layout": {"grid": {"rows": 8, "columns": 8, "blocks": [["square", "square"], ["square", "ink"]]}}, "printed": {"small": {"strips": {"square": N}}}}`
	// Forty-eight segments at eight a set are six sets.
	two := func(n string) string { return replaced(sets, "THIRD", "", "HIGH", "3 1/2", "N", n) }
	three := func(n string) string {
		return replaced(sets, "THIRD", `, {"fabric": "sky", "width": "1 1/2"}`, "HIGH", "4 1/2", "N", n)
	}
	tryAll(t, squares, []tried{
		{"six of each", two(`{"count": 6, "each": true}`), "", ""},
		{"all", two(`12`), "", ""},
		{"five of each", two(`{"count": 5, "each": true}`), "printed/strips", `error: the pattern prints 5 strips of each fabric for "square"; it takes 6 of "sand"`},
		{"six of each where one is used twice", three(`{"count": 6, "each": true}`), "printed/strips", `it takes 12 of "sky"`},
		{"by width", three(`[{"count": 6, "width": "2 1/2"}, {"count": 12, "width": "1 1/2"}]`), "", ""},
		{"six of each of the narrow width", three(`{"count": 6, "each": true, "width": "1 1/2"}`), "", ""},
		{"by width, short", three(`[{"count": 6, "width": "2 1/2"}, {"count": 11, "width": "1 1/2"}]`), "printed/strips", `11 strips 1 1/2 in wide`},
		{"by fabric", three(`[{"count": 12, "fabric": "sky"}, {"count": 6, "fabric": "sand"}]`), "", ""},
		{"by fabric, exchanged", three(`[{"count": 6, "fabric": "sky"}, {"count": 6, "fabric": "sand"}]`), "printed/strips", `6 strips of "sky"`},
		{"a fabric of another part", three(`{"count": 6, "fabric": "ink"}`), "reference/unknown-printed", `is no fabric that "square" is cut from`},
	})
}

// Sashing of two lengths for blocks of 8 x 6 in: eight sashes 2 1/2 x 6 1/2 in and
// nine 8 1/2 x 2 1/2 in from 40 in. Cut from strips as wide as they are long, one
// strip each; from strips 2 1/2 in wide two and three, or four with lengths sharing
// strips, as 8 x 6 1/2 + 9 x 8 1/2 in are 3.2 of them (derived from geometry).
func TestStripsOfSashingOfTwoLengths(t *testing.T) {
	const sashed = `{"fabrics": {"grey": {"yardage": {}}}, "parts": {"square": {"cut": {"square": null, "size": ["8 1/2", "6 1/2"]}}},
		"layout": {"grid": {"rows": 4, "columns": 3}, "sashing": {"fabric": "grey", "width": "2", "cornerstones": "sky"}}, "printed": {"small": {"strips": {"sashing": N}}}}`
	of := func(n string) string { return replaced(sashed, "N", n) }
	tryAll(t, squares, []tried{
		{"none", of("1"), "printed/strips", "error: the pattern prints 1 strip for \"sashing\"; 17 pieces take 2 strips of several widths, 3 strips of several widths, 4 strips 2 1/2 in wide with lengths sharing strips or 5 strips 2 1/2 in wide"},
		{"both from wide strips", of("2"), "", ""},
		{"the long ones from a wide strip", of("3"), "", ""},
		{"sharing strips", of("4"), "", ""},
		{"each from narrow strips of its own", of("5"), "", ""},
		{"one over", of("6"), "printed/strips", "note: "},
		{"by width, as cut", of(`[{"count": 1, "width": "8 1/2"}, {"count": 2, "width": "2 1/2"}]`), "", ""},
		{"by width, short", of(`[{"count": 1, "width": "2 1/2"}]`), "printed/strips", "error: "},
	})
}

// A log cabin of two fabrics round a 2-in centre, sixteen blocks: logs cut 1 1/2
// in wide, of the light fabric 2 1/2, 3 1/2, 4 1/2 and 5 1/2 in long, of the dark
// 3 1/2, 4 1/2, 5 1/2 and 6 1/2. From strips of their own they take 1 + 2 + 2 + 3
// and 2 + 2 + 3 + 3 strips of 40 in; sharing strips, 7 and 8, as 16 x 16 in and
// 16 x 20 in are 6.4 and 8 of them. The centres take one (derived from
// geometry).
func TestStripsOfLogs(t *testing.T) {
	const cabin = `{"fabrics": {"dark": {"yardage": {}}, "light": {"yardage": {}}},
		"parts": {"square": {"cut": null, "logs": {"centre": {"fabric": "sky", "finished": "2"}, "log": "1", "rounds": 2,
			"fabrics": {"top": "light", "right": "light", "bottom": "dark", "left": "dark"}}}},
		"layout": {"grid": {"rows": 4, "columns": 4}}, "printed": {"small": {"strips": {"square": N}}}}`
	of := func(n string) string { return replaced(cabin, "N", n) }
	tryAll(t, squares, []tried{
		{"one too few for any way", of("15"), "printed/strips", "error: "},
		{"all lengths sharing strips", of("16"), "", ""},
		{"each length from its own", of("19"), "", ""},
		{"one over", of("20"), "printed/strips", "note: "},
		{"as many as in every width", of("33"), "printed/strips", "note: "},
		{"light ones sharing", of(`{"count": 7, "fabric": "light", "width": "1 1/2"}`), "", ""},
		{"light ones apart", of(`{"count": 8, "fabric": "light", "width": "1 1/2"}`), "", ""},
		{"light ones, too few", of(`{"count": 6, "fabric": "light", "width": "1 1/2"}`), "printed/strips", `error: the pattern prints 6 strips 1 1/2 in wide of "light" for "square"; 64 pieces of "light" take 7 with lengths sharing strips or 8`},
		{"dark ones between", of(`{"count": 9, "fabric": "dark"}`), "printed/strips", `warning: the pattern prints 9 strips of "dark" for "square"; 64 pieces of "dark" take 8 with lengths sharing strips or 10`},
		{"centres", of(`{"count": 1, "fabric": "sky", "width": "2 1/2"}`), "", ""},
		{"as wide as they finish", of(`{"count": 8, "fabric": "light", "width": "1"}`), "printed/strips", "they are cut 1 1/2 in"},
	})
}

// The strips of logs are cut from the printed cloth, beside 1 in for straightening.
// Of that cabin's light logs eight strips of 1 1/2 in come to 12 in and seven to
// 10 1/2. Twenty cabins of three rounds of 1 1/2 in round a 2-in centre take of a
// one-way light twenty logs each of 2 1/2, 5 1/2 and 8 1/2 in, cut across: from 40 in
// 2 + 3 + 5 strips 2 in wide, or 9 that share lengths, as 20 x 16 1/2 in are 8.25 of them; and of the logs that
// stand upright a strip each 4, 7 and 10 in wide. That is 39 in with nine, 41 with ten
// (derived from geometry).
func TestStripsOfLogsAgainstTheCloth(t *testing.T) {
	const cabin = `{"fabrics": {"dark": {"yardage": {}}, "light": {"yardage": {}}},
		"parts": {"square": {"cut": null, "logs": {"centre": {"fabric": "sky", "finished": "2"}, "log": "1", "rounds": 2,
			"fabrics": {"top": "light", "right": "light", "bottom": "dark", "left": "dark"}}}},
		"layout": {"grid": {"rows": 4, "columns": 4}},
		"printed": {"small": {"fabric": {"light": "CLOTH"}, "strips": {"square": {"count": N, "fabric": "light", "width": "1 1/2"}}}}}`
	const upright = `{"fabrics": {"dark": {"yardage": {}}, "light": {"print": "one-way", "yardage": {}}},
		"parts": {"square": {"cut": null, "logs": {"centre": {"fabric": "sky", "finished": "2"}, "log": "1 1/2", "rounds": 3,
			"fabrics": {"top": "light", "right": "light", "bottom": "dark", "left": "dark"}}}},
		"layout": {"grid": {"rows": 5, "columns": 4}},
		"printed": {"small": {"fabric": {"light": "CLOTH"}, "strips": {"square": [{"count": N, "fabric": "light", "width": "2"}MORE]}}}}`
	const wide = `, {"count": 1, "fabric": "light", "width": "4"}, {"count": 1, "fabric": "light", "width": "7"}, {"count": 1, "fabric": "light", "width": "10"}`
	of := func(n, cloth string) string { return replaced(cabin, "CLOTH", cloth, "N", n) }
	stood := func(n, more, cloth string) string { return replaced(upright, "CLOTH", cloth, "N", n, "MORE", more) }
	const short = "printed/short-of-cloth"
	tryAll(t, squares, []tried{
		{"eight strips, held to the thread", of("8", "13 in"), "", ""},
		{"eight strips, held by what straightening leaves", of("8", "12 1/2 in"), short, `warning: the pattern prints 8 strips 1 1/2 in wide of "light" for "square"; they take 12 in of "light"`},
		{"eight strips, not held", of("8", "12 3/8 in"), short, `error: the pattern prints 8 strips 1 1/2 in wide of "light" for "square"; they take 12 in of "light"`},
		{"seven strips from less", of("7", "11 1/2 in"), "", ""},
		{"upright, as the cut list has them", stood("9", wide, "1 1/8 yd"), "", ""},
		{"upright, lengths apart", stood("10", wide, "42 in"), "fabric/generous", "note: "},
		{"upright, lengths apart from less", stood("10", wide, "41 7/8 in"), short, "they take 41 in"},
		{"upright, the others not printed", stood("10", "", "1 1/8 yd"), short, "no layout of strips takes less than 41 in"},
		{"upright, nine and the others not printed", stood("9", "", "1 1/8 yd"), "", ""},
	})
}

func TestStripsOfSashingAndSettingSquares(t *testing.T) {
	// Four by four blocks of 4 in with sashing of 1 in between them and corner-
	// stones: 24 sashes of 1 1/2 x 4 1/2 in are three strips 1 1/2 in wide (eight
	// from each) or one 4 1/2 in wide (26), nine cornerstones one strip.
	const sashed = `{"fabrics": {"dark": {"yardage": {}}}, "layout": {"sashing": {"fabric": "dark", "width": "1", "cornerstones": "sky"}},
		"printed": {"small": {"strips": {WHAT: N}}}}`
	// On point, 3 by 4 blocks of 4 in: ten side triangles from three squares of 6 7/8
	// in and four corner triangles from two of 3 7/8 in; a strip each.
	const onPoint = `{"cautions": ["rotary-cutter", "iron", "bias-edges"], "fabrics": {"ink": {"yardage": {}}}, "layout": {"grid": {"rows": 4, "columns": 3}, "setting": "on point", "triangles": {"sides": "ink"}},
		"printed": {"small": {"strips": {WHAT: N}}}}`
	sash := func(what, n string) string { return replaced(sashed, "WHAT", what, "N", n) }
	point := func(what, n string) string { return replaced(onPoint, "WHAT", what, "N", n) }
	tryAll(t, squares, []tried{
		{"sashing", sash(`"sashing"`, "3"), "", ""},
		{"the other way", sash(`"sashing"`, "1"), "", ""},
		{"too few", sash(`"sashing"`, "2"), "printed/strips", `error: the pattern prints 2 strips for "sashing"; 24 pieces take 1 strip 4 1/2 in wide or 3 strips 1 1/2 in wide`},
		{"too few of a width", sash(`"sashing"`, `{"count": 2, "width": "1 1/2"}`), "printed/strips", "24 pieces take 3"},
		{"cornerstones", sash(`"cornerstones"`, "1"), "", ""},
		{"cornerstones of another width", sash(`"cornerstones"`, `{"count": 1, "width": "2"}`), "printed/strips", "they are cut 1 1/2 in"},
		{"side squares", point(`"side_squares"`, `{"count": 1, "width": "6 7/8"}`), "", ""},
		{"side squares, many", point(`"side_squares"`, "6"), "printed/strips", `warning: the pattern prints 6 strips for "side_squares"; 3 pieces take 1`},
		{"corner squares", point(`"corner_squares"`, "1"), "", ""},
		{"not on point", sash(`"side_squares"`, "1"), "reference/unknown-printed", "is of blocks on point, and these stand straight"},
		{"no sashing", point(`"sashing"`, "1"), "reference/unknown-printed", "this one has none"},
	})
}

func TestStripsOfBordersAndBindingSayTheirWidth(t *testing.T) {
	const framed = `{"layout": {"borders": {"frame": {"fabric": "sky", "width": "2"}}}, "finish": {"binding": {"fabric": "sky", "cut": "2 1/2"}},
		"printed": {"small": {"strips": {WHAT: N}}}}`
	of := func(what, n string) string { return replaced(framed, "WHAT", what, "N", n) }
	tryAll(t, squares, []tried{
		{"border", of(`"frame"`, `{"count": 2, "width": "2 1/2"}`), "", ""},
		{"border of finished strips", of(`"frame"`, `{"count": 2, "width": "2"}`), "printed/strips", `prints strips for border "frame" as 2 in wide; they are cut 2 1/2 in`},
		{"too few", of(`"frame"`, `{"count": 1, "width": "2 1/2"}`), "printed/strips", `error: the pattern prints 1 strip 2 1/2 in wide for border "frame"; it takes 2`},
		{"binding", of(`"binding"`, `{"count": 3, "width": "2 1/2"}`), "", ""},
		{"binding, many", of(`"binding"`, `8`), "printed/strips", "warning: the pattern prints 8 strips for the binding"},
		{"binding, twice", of(`"binding"`, `6`), "printed/strips", "note: the pattern prints 6 strips for the binding"},
		{"binding, four over", of(`"binding"`, `7`), "printed/strips", "note: the pattern prints 7 strips for the binding"},
	})
}

// Strips that say their width are cut at that width: eleven of 2 1/2 in are
// 27 1/2 in, and 3/4 yd, straightened, is 26 in, enough for two of 10 1/2 in.
func TestStripsOfAWidthAreCutAtIt(t *testing.T) {
	oblong := func(strips, cloth string) string {
		return replaced(`{"parts": {"square": {"cut": {"square": null, "size": ["2 1/2", "10 1/2"]}}}, "layout": {"grid": {"rows": 1, "columns": 31}},
			"printed": {"small": {"strips": {"square": N}, "fabric": {"sky": "CLOTH"}}}}`, "N", strips, "CLOTH", cloth)
	}
	tryAll(t, squares, []tried{
		{"wide", oblong(`{"count": 2, "width": "10 1/2"}`, "5/8 yd"), "", ""},
		{"wide, and cloth for the narrow", oblong(`{"count": 2, "width": "10 1/2"}`, "7/8 yd"), "fabric/generous", "note: "},
		{"narrow", oblong(`{"count": 11, "width": "2 1/2"}`, "3/4 yd"), "printed/short-of-cloth", `they take 27 1/2 in of "sky", and of the printed 3/4 yd (27 in) 26 in are left for that`},
		{"narrow, and cloth for it", oblong(`{"count": 11, "width": "2 1/2"}`, "7/8 yd"), "", ""},
		{"as many narrow, and cloth for it", oblong(`11`, "7/8 yd"), "", ""},
		{"narrow, and a step more", oblong(`{"count": 11, "width": "2 1/2"}`, "1 yd"), "fabric/generous", "note: "},
	})
	tryAll(t, framed, []tried{
		{"seven of each", `{"printed": {"small": {"strips": {"frame": {"count": 7, "width": "4 1/2"}, "binding": {"count": 7, "width": "2 1/2"}}, "fabric": {"edge": "1 1/8 yd"}}}}`, "printed/short-of-cloth",
			`prints 7 strips 2 1/2 in wide for the binding; they take 17 1/2 in of "edge"`},
	})
}
