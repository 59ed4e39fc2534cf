package measure

import "testing"

// Source: NIST Handbook 44, Appendix C, and NIST SP 811, Appendix B, where
// these are exact.
func TestExactUnits(t *testing.T) {
	tests := []struct {
		name        string
		left, right Length
	}{
		{"1 in = 25.4 mm", 10 * Inch, 254 * Millimetre},
		{"1 ft = 0.3048 m", 10000 * Foot, 3048 * Metre},
		{"1 yd = 0.9144 m", 10000 * Yard, 9144 * Metre},
		{"1 yd = 36 in", Yard, 36 * Inch},
		{"1 yd = 3 ft", Yard, 3 * Foot},
		{"1 m = 100 cm", Metre, 100 * Centimetre},
	}
	for _, test := range tests {
		if test.left != test.right {
			t.Errorf("%s: %d ticks against %d", test.name, test.left, test.right)
		}
	}
}

// Derived: the tick is the greatest length that divides all three ruler grids.
func TestTickIsTheGreatestCommonGrid(t *testing.T) {
	for _, parts := range []Length{64, 100} {
		if Inch%parts != 0 {
			t.Errorf("1/%d in is not a whole number of ticks", parts)
		}
	}
	common := gcd(gcd(int64(Inch/64), int64(Inch/100)), int64(Millimetre/100))
	if common != int64(Tick) {
		t.Errorf("greatest common grid = %d ticks, want 1: a coarser tick would do", common)
	}
}

func TestUnit(t *testing.T) {
	for _, u := range []Unit{In, Cm} {
		if got, ok := ParseUnit(u.String()); !ok || got != u {
			t.Errorf("ParseUnit(%q) = %v, %t", u, got, ok)
		}
	}
	for _, text := range []string{"", "IN", "mm", "inch", "in "} {
		if _, ok := ParseUnit(text); ok {
			t.Errorf("ParseUnit(%q) succeeded", text)
		}
	}
}

func TestOn(t *testing.T) {
	if l := Yard * 3 / 4; !l.On(Yard/8) || (l + 1).On(Yard/8) || (l - 1).On(Yard/8) {
		t.Error("27 in must lie on 1/8 yd, and no length one tick away")
	}
	if Inch.On(0) || Inch.On(-Inch) {
		t.Error("nothing lies on a grid of zero or less")
	}
}
