package derive_test

import (
	"testing"

	"yardproof/pipeline/internal/derive"
)

// How prints lie in what is sewn as the pattern draws it is said to be unknown,
// however deep inside they lie, never passed over.
func TestUnknownMakingIsSaid(t *testing.T) {
	for floor, untold := range map[string]int{
		`"rows": [["block", "block"], ["block", "block"]]`:            0,
		`"mosaic": {"pieces": {"block": 4}, "finished": ["16", "8"]}`: 1,
	} {
		s := derived(t, `{"format": 1, "id": "birds", "title": "Birds", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
			"fabrics": {"birds": {"print": "one-way", "yardage": {}}},
			"parts": {"patch": {"cut": {"fabric": "birds", "square": "4 1/2"}}, "block": {"rows": [["patch", "patch"]]}, "floor": {`+floor+`}},
			"layout": {"grid": {"rows": 2, "columns": 2, "blocks": [["floor"]]}}, "sizes": {"only": {}}}`)["only"]
		laid := s.Directions()
		if len(laid) != untold {
			t.Errorf("%s: %+v", floor, laid)
		}
		for _, l := range laid {
			if l.Way != derive.Untold || l.Of.Text != "floor" || l.Fabric.Role.Text != "birds" {
				t.Errorf("%s: %+v", floor, l)
			}
		}
	}
}

// The seams of a mosaic are said to be unknown, never passed over.
func TestUnknownSeamsAreSaid(t *testing.T) {
	s := derived(t, `{"format": 1, "id": "tiles", "title": "Tiles", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
		"fabrics": {"tiles": {"yardage": {}}},
		"parts": {"tile": {"cut": {"fabric": "tiles", "square": "3 1/2"}}, "floor": {"mosaic": {"pieces": {"tile": 4}, "finished": ["6", "6"]}}},
		"layout": {"grid": {"rows": 2, "columns": 2, "blocks": [["floor"]]}}, "sizes": {"only": {}}}`)["only"]
	if unknown := s.Thread.Unknown; len(unknown) != 1 || unknown[0] != "floor" {
		t.Errorf("seams: %v", unknown)
	}
}
