package derive_test

import (
	"testing"

	"yardproof/pipeline/internal/derive"
)

// Three-patch units that finish 4 in, from triangles: 4 + 7/8 cut once and 4 + 1 1/4
// cut twice (widely published, no authority). Nine take 9 triangles of each: 5
// squares of the half and 3 of each quarter.
func TestThreePatch(t *testing.T) {
	s, p := unitOf(t, `"rows": 3, "columns": 3`, `"unit": { "three_patch": { "half": "a", "quarters": ["b", "a"], "finished": 4 } }`)
	wantPieces(t, p, "a 4 7/8 4 7/8 once, b 5 1/4 5 1/4 twice, a 5 1/4 5 1/4 twice")
	wantDecimal(t, "half, exact", p.Unit.Pieces[0].Exact.Width, "4.853553")
	wantDecimal(t, "quarter, exact", p.Unit.Pieces[1].Exact.Width, "5.207107")
	wantDecimal(t, "as sewn", p.Width, "4.521447") // the half's: 4.875 - sqrt2/4
	wantCount(t, "made", p.Made, 9)
	wantBuy(t, s, "b", "6 1/4", "9") // 3 of 5 1/4 from one strip, and 1 in for squaring up
}

// In pairs a lot is 1 square of each quarter and 2 of the half, and gives 2 units of
// either hand. Which hand is needed decides how many lots are sewn: eight of one take
// four, and leave eight mirror images; four and four take two.
func TestThreePatchInPairs(t *testing.T) {
	const unit = `"unit": { "three_patch": { "half": "a", "quarters": ["b", "a"], "finished": 4, "method": "pairs", "trim": "4 1/2" } }`
	for grid, want := range map[string]struct{ batches, made, mirrored int64 }{
		`"rows": 2, "columns": 4`:                       {4, 16, 0},
		`"rows": 2, "columns": 4, "symmetry": "mirror"`: {2, 8, 4},
		`"rows": 1, "columns": 1`:                       {1, 4, 0},
		`"rows": 1, "columns": 6, "symmetry": "mirror"`: {2, 8, 3},
		`"rows": 1, "columns": 4, "symmetry": "mirror"`: {1, 4, 2},
	} {
		_, p := unitOf(t, grid, unit)
		wantCount(t, grid+", lots", p.Unit.Batches, want.batches)
		wantCount(t, grid+", made", p.Made, want.made)
		wantCount(t, grid+", mirror images", p.Mirrored, want.mirrored)
		wantPieces(t, p, "a 4 7/8 4 7/8 whole, b 5 1/4 5 1/4 whole, a 5 1/4 5 1/4 whole")
		if w := p.CountFigure(); w.N() != want.batches {
			t.Errorf("%s: told %d", grid, w.N())
		}
	}
	// Two quarters of one fabric: a mirror image is the unit, turned.
	_, p := unitOf(t, `"rows": 2, "columns": 4`, `"unit": { "three_patch": { "half": "a", "quarters": ["b", "b"], "finished": 4, "method": "pairs" } }`)
	wantCount(t, "lots of one hand", p.Unit.Batches, 2)
}

// Exchanged squares are told where they are, and by no size that follows: the half's
// of 5 1/4 and the quarters' of 4 7/8. At 1/16 in less than the exact 4.8536 in the half
// would be short the other way round too, and nothing was exchanged.
func TestThreePatchSquaresExchanged(t *testing.T) {
	for cut, want := range map[string]bool{
		`"half": "5 1/4", "quarters": "4 7/8"`:   true,
		`"half": "4 7/8", "quarters": "5 1/4"`:   false,
		`"half": "5 1/4", "quarters": "5 1/4"`:   false,
		`"half": "5 1/4", "quarters": "4 51/64"`: true,  // 4.7969 + 0.0625 = 4.8594
		`"half": "5 1/4", "quarters": "4 25/32"`: false, // 4.7813 + 0.0625 = 4.8438
		`"half": "5 5/32", "quarters": "4 7/8"`:  true,  // 5.1563 + 0.0625 = 5.2188, of 5.2071
		`"half": "5 9/64", "quarters": "4 7/8"`:  false, // 5.1406 + 0.0625 = 5.2031
	} {
		s := derived(t, unitPlan(`"rows": 2, "columns": 2`, `"unit": { "three_patch": { "half": "a", "quarters": ["b", "a"], "finished": 4, "cut": {`+cut+`} } }`))["one"]
		p := s.Part("unit")
		if faults := faultsOf(p); (len(faults) == 1) != want || p.Known == want {
			t.Errorf("%s: %v, known %v", cut, faults, p.Known)
		}
	}
}

func faultsOf(p *derive.Part) []derive.Fault {
	if room, ok := p.Room.(derive.Faulty); ok {
		return room.Faults()
	}
	return nil
}
