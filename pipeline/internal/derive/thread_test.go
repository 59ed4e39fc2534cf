package derive_test

import (
	"fmt"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// thirtySix is a quilt of six by six tube squares from six tubes of two sets of
// three strips.
const thirtySix = `{"format": 1, "id": "steps", "title": "Steps", "units": "in", "seam": {"allowance": "1/4", "stitch": "CLASS"},
	"fabrics": {"roll": {"precut": {"piece": ["2 1/2", "42 1/2"], "count": 40}}},
	"parts": {"trio": {"strip_set": {"strips": ["roll", "roll", "roll"]}}, "step": {"tube": {"sets": ["trio", "trio"], "trim": "8 3/8"}}},
	"layout": {"grid": {"rows": 6, "columns": 6, "blocks": [["step"]]}},
	"thread": {THREAD}, "sizes": {"only": {}}, "printed": {"only": "not printed"}}`

func threadOf(t *testing.T, class, said string) *derive.Thread {
	t.Helper()
	return derived(t, strings.NewReplacer("CLASS", class, "THREAD", said).Replace(thirtySix))["only"].Thread
}

func tenths(l measure.Surd) string { return l.Div(measure.Metre.Surd()).Number(1) }

// Twelve sets of 2 x 42 1/2 in are 1,020 in of seam, six tubes of twice that
// length 510, 36 squares in rows 6 x 5 x 8 3/8 + 5 x 47 3/4 = 490: 2,020 in, which
// is 51.308 m (derived from geometry; NIST Handbook 44, Appendix C for the
// inch). At 2.5, from thread makers' bulletins, and 15 % waste lockstitch takes
// 147.5 m; at 17, an estimate, a four-thread overlock 1,003 m.
func TestThreadOfATubeQuilt(t *testing.T) {
	for _, c := range []struct{ class, total string }{{"301", "147.5"}, {"514", "1003.1"}} {
		thread := threadOf(t, c.class, "")
		if len(thread.Uses) != 1 || len(thread.Unknown) > 0 {
			t.Fatalf("%s: %+v", c.class, thread)
		}
		use := thread.Uses[0]
		if l, ok := use.Seam.Length(); !ok || l != 2020*inch {
			t.Errorf("seams: %s", use.Seam.Format(measure.In))
		}
		if got := tenths(use.Total); got != c.total {
			t.Errorf("%s: %s m, want %s", c.class, got, c.total)
		}
		if use.Own || (use.RatioFrom == piecing.Estimate) != (c.class == "514") {
			t.Errorf("%s: ratio %s, own %v", c.class, use.RatioFrom, use.Own)
		}
		lengths := fmt.Sprint(use.Seams[0].Length.Format(measure.In), ", ", use.Seams[1].Length.Format(measure.In), ", ", use.Seams[2].Length.Format(measure.In))
		if lengths != "1020 in, 510 in, 490 in" {
			t.Errorf("seams: %s", lengths)
		}
	}
}

// Of 1,003 m two needles take a quarter and two loopers the rest (from memory):
// 125.4 m and 376.2 m each. On 300 m cones that is two and four, six in all;
// 1,003 / 300, rounded up, would say four.
func TestConesByPosition(t *testing.T) {
	use := threadOf(t, "514", `"cone": "300 m"`).Uses[0]
	for i, want := range []struct {
		each  string
		cones int64
	}{{"125.4", 2}, {"376.2", 4}} {
		n := use.Needs[i]
		if tenths(n.Each) != want.each || n.Count != want.cones || n.On != "cone" {
			t.Errorf("%s: %s m each on %d of %s", n.Position, tenths(n.Each), n.Count, n.On)
		}
	}
}

// Needle and bobbin share the 147.5 m of lockstitch evenly: 73.8 m are one
// spool of 500 m and two bobbins of 60 m. Quilting is counted beside them.
func TestSpoolsBobbinsAndQuilting(t *testing.T) {
	thread := threadOf(t, "301", `"spool": "500 m", "bobbin": "60 m", "quilting": "40 m", "waste": "10%", "ratios": {"301": 3}`)
	if len(thread.Uses) != 2 || thread.Uses[0].Quilting || !thread.Uses[1].Quilting {
		t.Fatalf("%+v", thread)
	}
	// 51.308 m x 3 x 1.1 and 40 m x 3 x 1.1
	for i, want := range []string{"169.3", "132.0"} {
		if use := thread.Uses[i]; tenths(use.Total) != want || !use.Own {
			t.Errorf("%s m, want %s; own %v", tenths(use.Total), want, use.Own)
		}
	}
	needle, bobbin := thread.Uses[0].Needs[0], thread.Uses[0].Needs[1]
	if needle.On != "spool" || needle.Count != 1 || bobbin.On != "bobbin" || bobbin.Count != 2 {
		t.Errorf("%+v, %+v", needle, bobbin)
	}
}

// The seams of units are measured along the line of stitching (derived from
// geometry). For 5-in squares with 1/4 in: beside the diagonal it is
// 5 sqrt2 - 1/2 = 6.5711 in long.
func TestUnitSeams(t *testing.T) {
	for _, c := range []struct {
		parts string
		want  string // inches of seam in one unit's making, to three decimals
	}{
		{`"unit": {"half_squares": {"fabrics": ["sky", "sky"], "square": "5", "at_a_time": 2}}`, "13.142"},
		{`"unit": {"half_squares": {"fabrics": ["sky", "sky"], "square": "5", "at_a_time": 4}}`, "20.000"},
		{`"unit": {"half_squares": {"fabrics": ["sky", "sky"], "square": "5", "at_a_time": 8}}`, "26.284"},
		{`"half": {"cut": {"fabric": "sky", "square": "5", "halved": "once"}}, "unit": {"triangle_square": {"of": ["half", "half"]}}`, "6.571"},
		// twice (5/sqrt2 - 1/4) and 5 sqrt2 - 1: 12.6421
		{`"quarter": {"cut": {"fabric": "sky", "square": "5", "halved": "twice"}}, "unit": {"triangle_square": {"of": ["quarter", "quarter", "quarter", "quarter"]}}`, "12.642"},
		// a row of two 4 1/2-in squares and the join of two rows 8 1/2 in long
		{`"patch": {"cut": {"fabric": "sky", "square": "4 1/2"}}, "unit": {"rows": [["patch", "patch"], ["patch", "patch"]]}`, "17.500"},
		{`"set": {"strip_set": {"strips": [{"fabric": "sky", "width": "2"}, {"fabric": "sky", "width": "2"}], "segment": "5"}}, "unit": {"trim": {"part": "set", "to": ["5", "3 1/2"]}}`, "40.000"},
		// 2(5 sqrt2 - 1/2), and 2(4.6464 sqrt2 - 1/2) for the second sewing
		{`"unit": {"hourglass": {"half_squares": ["sky", "sky"], "square": "5"}}`, "25.284"},
		// 5.25/sqrt2 - 1/4 between the quarters, and (5.25 - sqrt2/4) sqrt2 - 1/2 along the half; the half's 4.875 sqrt2 - 1/2 is the shorter
		{`"unit": {"three_patch": {"half": "sky", "quarters": ["sky", "sky"], "finished": "4", "cut": {"half": "5", "quarters": "5 1/4"}}}`, "9.887"},
		{`"unit": {"three_patch": {"half": "sky", "quarters": ["sky", "sky"], "finished": "4", "cut": {"half": "4 7/8", "quarters": "5 1/4"}}}`, "9.857"},
		// 2(5.25 sqrt2 - 1/2) for the quarters, 4(4.875 sqrt2 - 1/2) for the halves
		{`"unit": {"three_patch": {"half": "sky", "quarters": ["sky", "sky"], "finished": "4", "method": "pairs", "cut": {"half": "4 7/8", "quarters": "5 1/4"}}}`, "39.426"},
		{`"unit": {"flying_geese": {"goose": "sky", "sky": "sky", "finished": ["4", "2"], "at_a_time": 1}}`, "7.071"},
		// the bonus units, of 2.5 - sqrt2/2 = 1.7929 in, have a seam of sqrt2 that each
		{`"unit": {"flying_geese": {"goose": "sky", "sky": "sky", "finished": ["4", "2"], "at_a_time": 1, "bonus": "kept"}}`, "12.142"},
		// 2(5.25 sqrt2 - 1/2) and 4(2.875 sqrt2 - 1/2)
		{`"unit": {"flying_geese": {"goose": "sky", "sky": "sky", "finished": ["4", "2"], "at_a_time": 4, "cut": {"goose": "5 1/4", "sky": "2 7/8"}}}`, "28.113"},
		{`"patch": {"cut": {"fabric": "sky", "square": "4 1/2"}}, "unit": {"flip_corners": {"body": "patch", "corners": {"top left": {"fabric": "sky", "square": "2 1/2"}, "top right": {"fabric": "sky", "square": "2 1/2"}}}}`, "7.071"},
		{`"unit": {"square_in_square": {"centre": "sky", "corners": "sky", "finished": "4", "method": "flip"}}`, "14.142"},
		// 2 x 3.375 and 2(2.875 sqrt2 - 1/2)
		{`"unit": {"square_in_square": {"centre": "sky", "corners": "sky", "finished": "4", "cut": {"centre": "3 3/8", "corners": "2 7/8"}}}`, "13.882"},
		// 1 1/2, 2 1/2, 2 1/2 and 3 1/2
		{`"unit": {"logs": {"centre": {"fabric": "sky", "finished": "1"}, "log": "1", "rounds": 1, "fabrics": {"rounds": ["sky"]}}}`, "10.000"},
		// two joins of 3 1/4 and one of 6
		{`"patch": {"cut": {"fabric": "sky", "square": "6 1/2"}}, "unit": {"recut": {"part": "patch", "pieces": [2, 2], "turns": [0, 90, 270, 180]}}`, "12.500"},
		// the set 2 x 40, the loop 40, two rings side by side 5
		{`"set": {"strip_set": {"strips": [{"fabric": "sky", "width": "2"}, {"fabric": "sky", "width": "2"}, {"fabric": "sky", "width": "2"}]}}, "unit": {"loop": {"set": "set", "cut": "3", "open": [1, 2]}}`, "125.000"},
		// three strips of 40, two joins of 2, and 80 folded
		{`"unit": {"chain": {"strips": "sky", "width": "2", "length": "80", "joins": "straight", "folds": 1}}`, "44.000"},
		// sides of 6.75 x 2/sqrt3, and a line 1/4 inside them, which is 1/2 / sqrt3 shorter
		{`"tri": {"shape": {"fabric": "sky", "kind": "triangle 60", "finished": "6"}}, "unit": {"rows": [["tri", "tri"]]}`, "7.506"},
	} {
		s := derived(t, fmt.Sprintf(`{"format": 1, "id": "unit", "title": "Unit", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
			"fabrics": {"sky": {"yardage": {}}}, "parts": {%s}, "layout": {"grid": {"rows": 1, "columns": 1, "blocks": [["unit"]]}}, "sizes": {"only": {}}}`, c.parts))["only"]
		thread := s.Thread
		if len(thread.Uses) != 1 {
			t.Fatalf("%s: %+v", c.parts, thread)
		}
		if got := thread.Uses[0].Seam.Decimal(measure.In, 3); got != c.want {
			t.Errorf("%s: %s in, want %s", c.parts, got, c.want)
		}
	}
}

// What goes round and behind an overlocked quilt is sewn in lockstitch: the way
// round of 40 x 40 in, 160 in, and the joins of its strips, 2 1/2 sqrt2 each.
func TestFinishIsLockstitched(t *testing.T) {
	s := derived(t, `{"format": 1, "id": "squares", "title": "Squares", "units": "in", "seam": {"allowance": "1/4", "stitch": "504"},
		"fabrics": {"sky": {"yardage": {}}}, "parts": {"square": {"cut": {"fabric": "sky", "square": "4 1/2"}}},
		"layout": {"grid": {"rows": 10, "columns": 10, "blocks": [["square"]]}},
		"finish": {"backing": {"fabric": "sky"}, "binding": {"fabric": "sky", "cut": "2 1/2"}}, "sizes": {"only": {}}}`)["only"]
	uses := s.Thread.Uses
	if len(uses) != 2 || uses[0].Class != "301" || uses[1].Class != "504" {
		t.Fatalf("%+v", uses)
	}
	// Two panels of 48 in share one seam; five strips have four joins.
	want := (48 + 160) * inch
	if got := uses[0].Seam.Sub((4 * 5 * inch / 2).Surd().Mul(measure.Root2())); !got.Equal(want.Surd()) {
		t.Errorf("lockstitch: %s", uses[0].Seam.Format(measure.In))
	}
}

// The same five blocks with sashes of 1 in round them: sixteen sashes and
// fourteen cornerstones. Eight sashes stand in the rows of blocks, joined on
// both sides along 4 1/2 in, and eight in four rows of their own, joined to a
// cornerstone at both ends along 1 1/2 in: 96 in. These rows are joined on both
// sides along sixteen blocks of 4 in and eight ends of sashes of 1 in, and at
// eight ends along 1 1/4 in on one side and sqrt2/4 on the other (worked by
// hand): 180.828. Without allowances it would be 160, a sash's outline for each.
func TestSeamsSashedOnPoint(t *testing.T) {
	s := derived(t, `{"format": 1, "id": "point", "title": "Point", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
		"fabrics": {"sky": {"yardage": {}}}, "parts": {"patch": {"cut": {"fabric": "sky", "square": "4 1/2"}}},
		"layout": {"setting": "on point", "grid": {"rows": 2, "columns": 2, "blocks": [["patch"]]}, "triangles": {"sides": "sky"},
		"sashing": {"fabric": "sky", "width": "1", "cornerstones": "sky", "outer": true}}, "sizes": {"only": {}}}`)["only"]
	if thread := s.Thread; len(thread.Unknown) > 0 || thread.Uses[0].Seam.Decimal(measure.In, 3) != "180.828" {
		t.Errorf("%v, %s in", thread.Unknown, thread.Uses[0].Seam.Decimal(measure.In, 3))
	}
}

// Five blocks of 4 in, finished, on point lie in diagonal rows of one, three and
// one: eight joins of 4 1/2 in, the corners above and below 4 + sqrt2/2 long, and
// two rows of 12 + sqrt2/2 (worked by hand): 70.828. Floating by 1/2 in, the four
// lines gain sqrt2 each: 76.485.
func TestSeamsOnPoint(t *testing.T) {
	for float, want := range map[string]string{"": "70.828", `, "float": "1/2"`: "76.485"} {
		s := derived(t, fmt.Sprintf(`{"format": 1, "id": "point", "title": "Point", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
			"fabrics": {"sky": {"yardage": {}}}, "parts": {"patch": {"cut": {"fabric": "sky", "square": "4 1/2"}}},
			"layout": {"setting": "on point", "grid": {"rows": 2, "columns": 2, "blocks": [["patch"]]}, "triangles": {"sides": "sky", "corners": "sky"%s}}, "sizes": {"only": {}}}`, float))["only"]
		if thread := s.Thread; len(thread.Unknown) > 0 || thread.Uses[0].Seam.Decimal(measure.In, 3) != want {
			t.Errorf("%s: %v, %s in, want %s", float, thread.Unknown, thread.Uses[0].Seam.Decimal(measure.In, 3), want)
		}
	}
}
