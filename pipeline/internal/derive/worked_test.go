package derive_test

import (
	"fmt"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
)

// Figures that a maker finds worked out in books and leaflets, or can work out on
// paper, each come from a plan as a designer writes it. Where no source is named
// they are derived from geometry and worked by hand.

// sized is the one size of an invented plan of ink and milk.
func sized(t *testing.T, allowance, ink, parts, layout, rest string) *derive.Size {
	t.Helper()
	return derived(t, fmt.Sprintf(`{"format": 1, "id": "worked", "title": "Worked", "units": "in", "seam": {"allowance": %q, "stitch": "301"},
		"fabrics": {"ink": %s, "milk": {"yardage": {}}}, "parts": {%s}, "layout": {%s}, %s "sizes": {"only": {}}}`, allowance, ink, parts, layout, rest))["only"]
}

// squares is a grid of squares of ink that finish at a side.
func squares(finished string, columns, rows int) (part, layout string) {
	return fmt.Sprintf(`"square": {"cut": {"fabric": "ink", "square": "%s 1/2"}}`, finished),
		fmt.Sprintf(`"grid": {"rows": %d, "columns": %d, "blocks": [["square"]]}`, rows, columns)
}

const tubeOf = `"set": {"strip_set": {"strips": [%s]}}, "square": {"tube": {"sets": ["set", "set"], "tip": %q, "ends": %q}}`

// Tubes of two, three and four 2 1/2-in strips: the side of their squares and how
// many come from 40, 42 and 44 in, with the tip on the far seam or the far raw
// edge, the outer ears given up or kept.
func TestWorkedTubes(t *testing.T) {
	for _, c := range []struct {
		strips    int
		tip, side string
		lost      [3]int64 // ears given up
		kept      [3]int64
	}{
		{2, "far seam", "5.656854", [3]int64{9, 9, 10}, [3]int64{8, 9, 9}},
		{2, "raw edge", "6.010408", [3]int64{8, 8, 8}, [3]int64{7, 8, 8}},
		{3, "far seam", "8.485281", [3]int64{5, 6, 6}, [3]int64{5, 5, 6}},
		{3, "raw edge", "8.838835", [3]int64{5, 5, 5}, [3]int64{5, 5, 5}},
		{4, "far seam", "11.313708", [3]int64{4, 4, 4}, [3]int64{3, 4, 4}},
		{4, "raw edge", "11.667262", [3]int64{3, 4, 4}, [3]int64{3, 3, 4}},
	} {
		strips := `{"fabric": "ink", "width": "2 1/2"}`
		for range c.strips - 1 {
			strips += `, {"fabric": "milk", "width": "2 1/2"}`
		}
		for ends, want := range map[string][3]int64{"corners only": c.lost, "ears kept": c.kept} {
			for i, l := range []int{40, 42, 44} {
				width := fmt.Sprintf(`{"yardage": {"usable_width": "%d"}}`, l)
				s := derived(t, fmt.Sprintf(`{"format": 1, "id": "worked", "title": "Worked", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
					"fabrics": {"ink": %s, "milk": %s}, "parts": {%s}, "layout": {"grid": {"rows": 1, "columns": 1, "blocks": [["square"]]}}, "sizes": {"only": {}}}`,
					width, width, fmt.Sprintf(tubeOf, strips, c.tip, ends)))["only"]
				tube := s.Part("square").Tube
				wantDecimal(t, "side", tube.Side(), c.side)
				wantCount(t, fmt.Sprintf("%d strips, %s, %s, %d in", c.strips, c.tip, ends, l), tube.Yield.Each, want[i])
			}
		}
	}
}

// Three 2 1/2-in strips by what an overlock takes from each edge: the set, and the
// square of its tube. The bites are machine settings, from memory.
func TestWorkedOverlock(t *testing.T) {
	for _, c := range []struct{ bite, set, square string }{
		{"0.6 cm", "6.555118", "8.602205"}, {"1/4", "6.500000", "8.485281"}, {"0.7 cm", "6.397638", "8.268138"}, {"3/8", "6.000000", "7.424621"},
	} {
		const strip = `{"fabric": "milk", "width": "2 1/2"}`
		part := fmt.Sprintf(tubeOf, strip+", "+strip+", "+strip, "far seam", "corners only")
		s := sized(t, c.bite, `{"yardage": {}}`, part, `"grid": {"rows": 1, "columns": 1, "blocks": [["square"]]}`, "")
		wantDecimal(t, c.bite+", set", s.Part("set").Height, c.set)
		wantDecimal(t, c.bite+", square", s.Part("square").Tube.Side(), c.square)
	}
}

// Squares for four half-square units sewn all round and cut twice, sqrt2*f +
// 2(sqrt2+1)s.
func TestWorkedFourAtATime(t *testing.T) {
	for finished, want := range map[int]string{2: "4.0355", 3: "5.4497", 4: "6.8640", 5: "8.2782", 6: "9.6924"} {
		part := fmt.Sprintf(`"square": {"half_squares": {"fabrics": ["ink", "milk"], "square": "12", "at_a_time": 4, "trim": "%d 1/2"}}`, finished)
		s := sized(t, "1/4", `{"yardage": {}}`, part, `"grid": {"rows": 2, "columns": 2, "blocks": [["square"]]}`, "")
		wantDecimal(t, fmt.Sprint(finished), s.Part("square").Triangle.Exact, want)
	}
}

// A log block of a 2-in centre and four rounds of 1-in logs finishes at 10 in, and
// its logs are 104 in long as cut, spiral or courthouse.
func TestWorkedLogs(t *testing.T) {
	for _, way := range []string{"spiral", "courthouse"} {
		part := fmt.Sprintf(`"square": {"logs": {"centre": {"fabric": "ink", "finished": "2"}, "log": "1", "rounds": 4, "style": %q, "fabrics": {"rounds": ["milk"]}}}`, way)
		s := sized(t, "1/4", `{"yardage": {}}`, part, `"grid": {"rows": 1, "columns": 1, "blocks": [["square"]]}`, "")
		wantSize(t, "block", s.Top.Finished.Width, s.Top.Finished.Height, "10", "10")
		var logs measure.Length
		for _, n := range s.Fabric("milk").Needs {
			logs += max(n.Across, n.Along) * measure.Length(n.Count)
		}
		wantLength(t, way, logs, "104")
	}
}

// A border of 198 in in all, of 5 1/2-in strips of 40 in: six joined on the diagonal
// give 212 1/2 in, five joined straight exactly 198.
func TestWorkedBorder(t *testing.T) {
	for joins, want := range map[string]struct {
		strips int64
		length string
	}{"diagonal": {6, "212 1/2"}, "straight": {5, "198"}} {
		part, layout := squares("2", 24, 25)
		s := sized(t, "1/4", `{"yardage": {}}`, part, layout+fmt.Sprintf(`, "borders": {"edge": {"fabric": "milk", "width": "5", "corners": "corner squares", "joins": %q}}`, joins), "")
		b := s.Top.Borders[0]
		wantDecimal(t, "needed", b.Needed, "198.0")
		wantCount(t, joins, b.Strips.Count, want.strips)
		wantLength(t, joins, b.Strips.Length, want.length)
	}
}

// Of a fabric that shrinks by 3 %, 41 1/2 in are 42.78 in before washing and still
// 1 1/4 yd to buy.
func TestWorkedShrinkage(t *testing.T) {
	part, layout := squares("4", 8, 9)
	s := sized(t, "1/4", `{"yardage": {"shrinkage": {"length": "3%"}}}`, part, layout, "")
	wantLength(t, "net", s.Fabric("ink").Net, "41 1/2")
	wantDecimal(t, "before washing", s.Fabric("ink").Gross.Surd(), "42.78")
	wantLength(t, "to buy", s.Fabric("ink").Buy, "45")
}

// Squares from one fat quarter, 18 by 20 or by 21 in: of 3 1/2 in 25 and 30, of
// 2 1/2 in 56 of either.
func TestWorkedFatQuarters(t *testing.T) {
	for _, c := range []struct {
		long, finished string
		holds          int
	}{{"20", "3", 25}, {"21", "3", 30}, {"20", "2", 56}, {"21", "2", 56}} {
		for over, want := range []int64{1, 2} {
			part, layout := squares(c.finished, 1, c.holds+over)
			s := sized(t, "1/4", fmt.Sprintf(`{"precut": {"piece": ["18", %q], "count": 1}}`, c.long), part, layout, "")
			wantCount(t, fmt.Sprintf("%d of %s in from 18 x %s", c.holds+over, c.finished, c.long), s.Fabric("ink").Packs, want)
		}
	}
}

// A backing of 52 by 60 in: two panels along are 120 in, two across 104. One of 98
// by 104 in from a width of 106: 104 in along, 98 across.
func TestWorkedBacking(t *testing.T) {
	for _, c := range []struct {
		finished      string
		columns, rows int
		width, panels string
		want          string
	}{
		{"4", 11, 13, "40", "lengthwise", "120.0"}, {"4", 11, 13, "40", "either", "104.0"},
		{"3", 30, 32, "106", "lengthwise", "104.0"}, {"3", 30, 32, "106", "either", "98.0"},
	} {
		part, layout := squares(c.finished, c.columns, c.rows)
		s := derived(t, fmt.Sprintf(`{"format": 1, "id": "worked", "title": "Worked", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
			"fabrics": {"ink": {"yardage": {}}, "back": {"yardage": {"usable_width": %q}}}, "parts": {%s}, "layout": {%s},
			"finish": {"backing": {"fabric": "back", "panels": %q}}, "sizes": {"only": {}}}`, c.width, part, layout, c.panels))["only"]
		wantDecimal(t, c.width+" "+c.panels, s.Backing.Length, c.want)
	}
}

// Binding of 2 1/2-in strips of 40 in joined on the diagonal: 202 in take six
// strips, which give 227 1/2 in; 198 take six too, where 198/40 is said to be
// five, and five give 190.
func TestWorkedBinding(t *testing.T) {
	for _, c := range []struct {
		columns, rows int
		need          string
	}{{24, 24, "202.0"}, {23, 24, "198.0"}} {
		part, layout := squares("2", c.columns, c.rows)
		s := sized(t, "1/4", `{"yardage": {}}`, part, layout, `"finish": {"binding": {"fabric": "milk", "cut": "2 1/2"}},`)
		wantDecimal(t, "need", s.Binding.Strips.Need, c.need)
		wantCount(t, c.need, s.Binding.Strips.Count, 6)
		wantLength(t, c.need, s.Binding.Strips.Length, "227 1/2")
	}
}

// A quilt for a mattress of 60 by 80 in, as published tables give it for a queen
// bed, with 12 in of drop and 14 in under the pillows: 84 by 106 in.
func TestWorkedBed(t *testing.T) {
	part, layout := squares("2", 42, 53)
	s := sized(t, "1/4", `{"yardage": {}}`, part, layout, `"bed": {"mattress": ["60", "80"], "drop": "12", "tuck": "14"},`)
	wantSize(t, "wanted", s.Bed.Wanted.Width, s.Bed.Wanted.Height, "84", "106")
	wantSize(t, "finished", s.Top.Finished.Width, s.Top.Finished.Height, "84", "106")
}
