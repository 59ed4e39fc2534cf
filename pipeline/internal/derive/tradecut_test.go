package derive_test

import (
	"fmt"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
)

// What the trade adds to a finished unit is widely published, no authority: 7/8 in
// for half squares, 1 1/4 in for quarter squares. Exact are (2 + sqrt2)s and
// (2 + 2 sqrt2)s, derived from geometry.
func TestTradeCutsOfUnits(t *testing.T) {
	half := func(more string) string {
		return `"square": {"half_squares": {"fabrics": ["ink", "milk"], ` + more + `}}`
	}
	quarter := func(cut, more string) string {
		return `"dark": {"cut": {"fabric": "ink", "square": "` + cut + `", "halved": "twice"}}, "light": {"cut": {"fabric": "milk", "square": "` + cut + `", "halved": "twice"}},
			"square": {"triangle_square": {"of": ["dark", "light", "dark", "light"]` + more + `}}`
	}
	for _, c := range []struct{ seam, part, want string }{
		{"1/4", half(`"square": "5", "trim": "4 1/2"`), "4.000 4.853553 4.875000 0.021447 5.000"},
		{"1/4", half(`"square": "4 7/8"`), "4.000 4.853553 4.875000 0.021447 4.875"},
		{"1/4", half(`"square": "9 3/4", "at_a_time": 8, "trim": "4 1/2"`), "4.000 9.707107 9.750000 0.042893 9.750"},
		{"1/4", half(`"square": "9 3/4", "at_a_time": 8`), "4.000 9.707107 9.750000 0.042893 9.750"},
		{"1/4", half(`"square": "7", "at_a_time": 4, "trim": "4 1/2"`), "4.000 6.863961 6.875000 0.011039 7.000"},
		{"1/4", quarter("5 1/2", `, "trim": "4 1/2"`), "4.000 5.207107 5.250000 0.042893 5.500"},
		{"1/4", quarter("5 1/4", ""), "4.000 5.207107 5.250000 0.042893 5.250"},
		// Not trimmed, four at a time or cut to no size that is printed, they finish at
		// what they finish at.
		{"1/4", half(`"square": "6 7/8", "at_a_time": 4`), ""},
		{"1/4", half(`"square": "5"`), ""},
		{"3/8", half(`"square": "5 1/2"`), ""},
		// The trade has no figure for a seam of 3/8 in.
		{"3/8", half(`"square": "6", "trim": "4 3/4"`), "4.000 5.280330 - 6.000"},
	} {
		s := sized(t, c.seam, `{"yardage": {}}`, c.part, `"grid": {"rows": 4, "columns": 4, "blocks": [["square"]]}`, "")
		if got := cutsOf(s); got != c.want {
			t.Errorf("%s\n got %s\nwant %s", c.part, got, c.want)
		}
	}
}

// A published metric tutorial adds 2.5 cm to half squares at a seam of 0.75 cm,
// 0.607 mm too little.
func TestMetricTradeCuts(t *testing.T) {
	s := derived(t, `{"format": 1, "id": "worked", "title": "Worked", "units": "cm", "seam": {"allowance": "0.75", "stitch": "301"},
		"fabrics": {"ink": {"yardage": {}}, "milk": {"yardage": {}}},
		"parts": {"square": {"half_squares": {"fabrics": ["ink", "milk"], "square": "13", "trim": "11.5"}}},
		"layout": {"grid": {"rows": 4, "columns": 4, "blocks": [["square"]]}}, "sizes": {"only": {}}}`)["only"]
	if got, want := cutsOf(s), "10.000 12.560660 12.500000 -0.060660 13.000"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

// Setting squares of blocks of 9 and 16 in, as a table of the trade has them beside
// the exact ones: the trade's figures are widely published, no authority; the
// exact ones are derived from geometry. Four by five blocks have 14 side triangles
// from 4 squares, of which 2 are spare; three by three have 8 from 2, of which none is.
func TestTradeCutsOfSettings(t *testing.T) {
	for _, c := range []struct {
		block         string
		rows, columns int
		want          string
		spare         int64
	}{
		{"9", 5, 4, "9.000 13.935029 14.000000 0.064971 14.000; 9.000 7.217514 7.250000 0.032486 7.250", 2},
		{"16", 3, 3, "16.000 23.834524 24.000000 0.165476 23.875; 16.000 12.167262 12.250000 0.082738 12.250", 0},
		{"16", 1, 1, "16.000 12.167262 12.250000 0.082738 12.250", 0},
	} {
		part, layout := squares(c.block, c.columns, c.rows)
		s := sized(t, "1/4", `{"yardage": {}}`, part, layout+`, "setting": "on point", "triangles": {"sides": "milk"}`, "")
		if got := cutsOf(s); got != c.want {
			t.Errorf("block of %s\n got %s\nwant %s", c.block, got, c.want)
		}
		wantCount(t, c.block+", spare side triangles", s.Top.Setting.OnPoint.Side.Spare, c.spare)
		wantCount(t, c.block+", spare corner triangles", s.Top.Setting.OnPoint.Corner.Spare, 0)
	}
	part, layout := squares("9", 3, 3)
	for other, want := range map[string]string{
		// With the points 1/2 in inside the seam, squares are 1 in larger.
		`"float": "1/2"`: "9.000 14.935029 - 15.000; 9.000 8.217514 - 8.250",
		// Side triangles cut once, corner triangles twice: 9 + 0.853553 and 9 + 1.207107.
		`"side_cut": {"square": "10", "halved": "once"}, "corner_cut": {"square": "10 1/4", "halved": "twice"}`: "9.000 9.853553 - 10.000; 9.000 10.207107 - 10.250",
	} {
		s := sized(t, "1/4", `{"yardage": {}}`, part, layout+`, "setting": "on point", "triangles": {"sides": "milk", `+other+`}`, "")
		if got := cutsOf(s); got != want {
			t.Errorf("%s\n got %s\nwant %s", other, got, want)
		}
	}
}

// cutsOf lists finished size, exact cut, trade's cut and how much larger it is, if
// it has one, and the plan's cut.
func cutsOf(s *derive.Size) string {
	u := s.Plan.Units
	var all []string
	for _, c := range s.TradeCuts() {
		if !c.Told {
			all = append(all, fmt.Sprintf("%s %s - %s", c.Finished.Decimal(u, 3), c.Exact.Decimal(u, 6), c.Cut.Surd().Decimal(u, 3)))
			continue
		}
		all = append(all, fmt.Sprintf("%s %s %s %s %s", c.Finished.Decimal(u, 3), c.Exact.Decimal(u, 6), c.Trade.Decimal(u, 6), c.Larger().Decimal(u, 6), c.Cut.Surd().Decimal(u, 3)))
	}
	return strings.Join(all, "; ")
}
