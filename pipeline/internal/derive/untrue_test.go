package derive_test

import (
	"testing"

	"yardproof/pipeline/internal/figure"
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
	side := pipe.Figures.Size
	for _, symbol := range []string{"h", "T"} {
		term := find(t, side, symbol)
		if !term.Working().Known() || !term.Working().Surd().Equal(term.Surd()) {
			t.Errorf("%s is %v, and its working comes to %v", symbol, term.Surd(), term.Working().Surd())
		}
		side = term.Working()
	}
	if at := find(t, pipe.YieldFigure(), "L").At(); at != s.Fabric("lead").UsableWidth.At {
		t.Errorf("the length of the shorter strips is placed at %v", at)
	}
	if pipe.Tube.Count != 0 {
		t.Fatalf("%d tubes of unequal sets", pipe.Tube.Count)
	}
	if w := pipe.CountFigure(); w.Known() {
		t.Errorf("0 tubes for %d squares by the formula %q", pipe.Needed, w.Formula())
	}
}

func find(t *testing.T, f figure.F, symbol string) figure.F {
	t.Helper()
	for _, term := range f.Terms() {
		if term.Symbol() == symbol {
			return term
		}
	}
	t.Fatalf("%s has no term %q", f.Name(), symbol)
	return figure.F{}
}
