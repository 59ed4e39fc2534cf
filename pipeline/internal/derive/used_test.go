package derive_test

import (
	"fmt"
	"testing"
)

// TestTrianglesUsed: twelve triangles come from six squares cut once, from
// twelve of which one triangle is used each, and from three, four, six or twelve
// cut twice of which four, three, two or one are used. Derived by counting.
func TestTrianglesUsed(t *testing.T) {
	for _, tt := range []struct {
		halved              string
		used, squares, made int64
	}{
		{"once", 0, 6, 12}, {"once", 2, 6, 12}, {"once", 1, 12, 12},
		{"twice", 0, 3, 12}, {"twice", 4, 3, 12}, {"twice", 3, 4, 12}, {"twice", 2, 6, 12}, {"twice", 1, 12, 12},
	} {
		used, of := "", `"tri", "air"`
		if tt.used > 0 {
			used = fmt.Sprintf(`, "used": %d`, tt.used)
		}
		if tt.halved == "twice" {
			of = `"tri", "air", "air", "air"`
		}
		s := top(t, fmt.Sprintf(`"tri": {"cut": {"fabric": "ink", "square": "5", "halved": %[1]q%[2]s}}, "air": {"cut": {"fabric": "milk", "square": "5", "halved": %[1]q}},
			"block": {"triangle_square": {"of": [%[3]s]}}`, tt.halved, used, of), grid(4, 3))
		p := s.Part("tri")
		what := fmt.Sprintf("%s, %d used", tt.halved, tt.used)
		wantCount(t, what, p.Cut.Squares, tt.squares)
		wantCount(t, what+", made", p.Made, tt.made)
		wantNeed(t, s, "ink", "tri", "5", "5", tt.squares)
	}
}
