package derive_test

import (
	"fmt"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
)

// A backing of 52 by 60 in takes two panels of 60 in along the quilt, 120 in or
// 3 3/8 yd, and two of 52 across, 104 in or 3 yd; with an inch to square up it is
// the same yards. One of 98 by 104 in from a width of 106 takes 104 in, 3 yd, or 98,
// 2 3/4 yd. Derived from geometry; rounded up to 1/8 yd.
func TestBackingWays(t *testing.T) {
	for _, c := range []struct {
		finished      string
		columns, rows int
		yardage, more string
		want          string
	}{
		{"4", 11, 13, `"yardage": {"usable_width": 40}`, ``, "along 2 x 60.0 = 120.0, 3.375 yd; across 2 x 52.0 = 104.0, 3.000 yd, taken"},
		{"4", 11, 13, `"yardage": {"usable_width": 40}`, `, "panels": "lengthwise"`, "along 2 x 60.0 = 120.0, 3.375 yd, taken; across 2 x 52.0 = 104.0, 3.000 yd"},
		{"4", 11, 13, `"yardage": {"usable_width": 40}, "print": "one-way"`, ``, "along 2 x 60.0 = 120.0, 3.375 yd, taken; across 2 x 52.0 = 104.0, 3.000 yd, against"},
		{"3", 30, 32, `"yardage": {"usable_width": 106}`, ``, "along 1 x 104.0 = 104.0, 3.000 yd; across 1 x 98.0 = 98.0, 2.750 yd, taken"},
		{"4", 11, 11, `"yardage": {"usable_width": 40}`, ``, "along 2 x 52.0 = 104.0, 3.000 yd, taken"},
	} {
		part, layout := squares(c.finished, c.columns, c.rows)
		s := derived(t, fmt.Sprintf(`{"format": 1, "id": "worked", "title": "Worked", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
			"fabrics": {"ink": {"yardage": {}}, "back": {%s}}, "parts": {%s}, "layout": {%s},
			"finish": {"backing": {"fabric": "back", "overhang": 4%s}}, "sizes": {"only": {}}}`, c.yardage, part, layout, c.more))["only"]
		if got := waysOf(s); got != c.want {
			t.Errorf("%s%s\n got %s\nwant %s", c.yardage, c.more, got, c.want)
		}
		for _, w := range s.BackingWays() {
			if w.Taken && w.Buy != s.Fabric("back").Buy {
				t.Errorf("%s: the way taken buys %d, the fabric %d", c.yardage, w.Buy, s.Fabric("back").Buy)
			}
		}
	}
}

func waysOf(s *derive.Size) string {
	text := ""
	for i, w := range s.BackingWays() {
		if i > 0 {
			text += "; "
		}
		way := "across"
		if w.Lengthwise {
			way = "along"
		}
		text += fmt.Sprintf("%s %d x %s = %s, %s yd", way, w.Panels, w.Each.Decimal(measure.In, 1), w.Length.Decimal(measure.In, 1), w.Buy.Surd().DivInt(int64(measure.Yard)).Number(3))
		if w.Taken {
			text += ", taken"
		}
		if w.Against {
			text += ", against"
		}
	}
	return text
}
