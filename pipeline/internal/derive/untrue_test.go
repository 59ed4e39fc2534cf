package derive_test

import (
	"testing"

	"yardproof/pipeline/report"
)

// TestWorkingsOfWhatCannotBeSewn: a tube of two unequal sets, in a draft, tells
// the width of the narrower one and the length of the shorter one as what they
// are, and no formula for the tubes that nobody can sew.
func TestWorkingsOfWhatCannotBeSewn(t *testing.T) {
	s := derived(t, `{"format": 1, "id": "pipes", "title": "Pipes", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
		"fabrics": {"clay": {"yardage": {"usable_width": "40"}}, "lead": {"yardage": {"usable_width": "38"}}},
		"parts": {
			"wide": {"strip_set": {"strips": [{"fabric": "clay", "width": "2 1/2"}, {"fabric": "clay", "width": "2 1/2"}, {"fabric": "clay", "width": "2 1/2"}]}},
			"narrow": {"strip_set": {"strips": [{"fabric": "lead", "width": "2 1/2"}, {"fabric": "lead", "width": "2 1/2"}]}},
			"pipe": {"tube": {"sets": ["wide", "narrow"]}}},
		"layout": {"grid": {"rows": 4, "columns": 5, "blocks": [["pipe"]]}}, "sizes": {"only": {}}}`)["only"]
	pipe := s.Part("pipe")
	side := s.SizeWork(pipe)
	for _, symbol := range []string{"h", "T"} {
		term := find(t, side, symbol)
		if term.Value.Why == nil || !term.Value.Why.Value.Exact.Equal(term.Value.Exact) {
			t.Errorf("%s is %v, and its working comes to %+v", symbol, term.Value.Exact, term.Value.Why)
		}
		side = term.Value.Why
	}
	if at := find(t, s.YieldWork(pipe), "L").At; at != s.Fabric("lead").UsableWidth.At {
		t.Errorf("the length of the shorter strips is placed at %v", at)
	}
	if pipe.Tube.Count != 0 {
		t.Fatalf("%d tubes of unequal sets", pipe.Tube.Count)
	}
	if w := s.CountWork(pipe); w != nil {
		t.Errorf("0 tubes for %d squares by the formula %q", pipe.Needed, w.Formula)
	}
}

func find(t *testing.T, w *report.Work, symbol string) report.Term {
	t.Helper()
	for _, term := range w.Terms {
		if term.Symbol == symbol {
			return term
		}
	}
	t.Fatalf("%s has no term %q: %+v", w.What, symbol, w.Terms)
	return report.Term{}
}
