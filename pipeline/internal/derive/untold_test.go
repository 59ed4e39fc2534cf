package derive_test

import (
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/plan"
)

// unheardOf is an operation that only this test knows.
type unheardOf struct{ plan.Rows }

// What is made in a way that directions know nothing of is said to be unknown,
// never passed over.
func TestUnknownMakingIsSaid(t *testing.T) {
	s := derived(t, `{"format": 1, "id": "birds", "title": "Birds", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
		"fabrics": {"birds": {"print": "one-way", "yardage": {}}},
		"parts": {"patch": {"cut": {"fabric": "birds", "square": "4 1/2"}}, "block": {"rows": [["patch", "patch"]]}},
		"layout": {"grid": {"rows": 2, "columns": 2, "blocks": [["block"]]}}, "sizes": {"only": {}}}`)["only"]
	if laid := s.Directions(); len(laid) > 0 {
		t.Fatalf("upright: %+v", laid)
	}
	block := s.Part("block")
	block.Operation = unheardOf{block.Operation.(plan.Rows)}
	laid := s.Directions()
	if len(laid) != 1 || laid[0].Way != derive.Untold || laid[0].Of.Text != "block" || laid[0].Fabric.Role.Text != "birds" {
		t.Errorf("directions: %+v", laid)
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
