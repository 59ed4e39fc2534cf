package piecing_test

import (
	"testing"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// A 4 in sleeve is cut 8 1/2 in wide (a guild's show rule) and finishes
// (8.5-0.5)/2 = 4 in deep; it is split when the quilt is wider than 90 in.
func TestHangingSleeve(t *testing.T) {
	rule := piecing.SleeveRule{Depth: 4 * inch, Shorter: 2 * inch, Widest: 90 * inch}
	for _, c := range []struct {
		width          measure.Length
		pieces, strips int64
		each           measure.Length
	}{
		{42 * inch, 1, 1, 40 * inch},
		{42*inch + tick, 1, 2, 40*inch + tick},
		{60 * inch, 1, 2, 58 * inch},
		{inch * 163 / 2, 1, 2, inch * 159 / 2}, // two joined are 79 1/2 in
		{inch*163/2 + tick, 1, 3, inch*159/2 + tick},
		{90 * inch, 1, 3, 88 * inch},
		{91 * inch, 2, 3, inch * 89 / 2},
		{90*inch + 2*tick, 2, 3, 44*inch + tick},
	} {
		h, ok := piecing.HangingSleeve(c.width.Surd(), rule, 40*inch, quarter)
		wantSurd(t, "each", h.Each, c.each)
		if !ok || h.Pieces != c.pieces || h.Strips != c.strips || h.Cut != inch*17/2 {
			t.Errorf("%v: %+v, %v", c.width.Format(measure.In), h, ok)
		}
	}
	rule.Hem, rule.Widest = inch, 0
	h, _ := piecing.HangingSleeve((100 * inch).Surd(), rule, 40*inch, quarter)
	if wantSurd(t, "hemmed", h.Each, 100*inch); h.Pieces != 1 {
		t.Errorf("%d pieces without a limit", h.Pieces)
	}
	wantSurd(t, "depth", piecing.SleeveDepth(inch*17/2, quarter), 4*inch)
	wantSurd(t, "depth, 9 in", piecing.SleeveDepth(9*inch, quarter), inch*17/4)
}

// A queen mattress, 60 x 80 in in a published table, with a 12 in drop and
// 14 in of pillow tuck: 84 x 106 in.
func TestBedQuilt(t *testing.T) {
	queen := box(60*inch, 80*inch)
	wantBox(t, "queen", piecing.BedQuilt(queen, 12*inch, 14*inch), 84*inch, 106*inch)
	wantBox(t, "no tuck", piecing.BedQuilt(queen, 12*inch, 0), 84*inch, 92*inch)
}

// Drawn in by 3 % (from memory), 97 in are left of 100.
func TestBeforeDrawIn(t *testing.T) {
	wanted := box(97*inch, inch*97/2)
	wantBox(t, "before", piecing.BeforeDrawIn(wanted, measure.Rational(3, 100)), 100*inch, 50*inch)
	for _, p := range []measure.Surd{measure.Rational(1, 1), measure.Rational(-1, 10), {}} {
		wantBox(t, "unchanged", piecing.BeforeDrawIn(wanted, p), 97*inch, inch*97/2)
	}
}

// Batting packages: crib 45 x 60 in (a published table) covers 60 x 45 only
// turned, and nothing a tick larger.
func TestFitsEitherWay(t *testing.T) {
	crib := box(45*inch, 60*inch)
	for _, c := range []struct {
		wide, high       measure.Length
		straight, turned bool
	}{
		{45 * inch, 60 * inch, true, false},
		{60 * inch, 45 * inch, false, true},
		{45 * inch, 45 * inch, true, true},
		{45*inch + tick, 60 * inch, false, false},
	} {
		straight, turned := piecing.FitsEitherWay(crib, box(c.wide, c.high))
		if straight != c.straight || turned != c.turned {
			t.Errorf("%v x %v: %v, %v", c.wide.Format(measure.In), c.high.Format(measure.In), straight, turned)
		}
	}
}
