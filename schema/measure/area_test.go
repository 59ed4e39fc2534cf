package measure

import "testing"

func TestFormatArea(t *testing.T) {
	inch := Inch.Surd()
	side := inch.MulInt(6).Mul(Root2())
	tests := []struct {
		name   string
		area   Surd
		in, cm string
	}{
		// Derived: (6*sqrt2)^2 = 72; 1 sq in = 6.4516 sq cm exactly (NIST SP 811, Appendix B).
		{"bias-edged square", Area(side, side), "72 sq in", "464.5152 sq cm"},
		{"square inch", Area(inch, inch), "1 sq in", "6.4516 sq cm"},
		{"strip", Area((Inch * 5 / 2).Surd(), (Inch * 85 / 2).Surd()), "106.25 sq in", "685.4825 sq cm"},
		{"rhombus", Area(side, inch), "about 8.49 sq in", "about 54.74 sq cm"},
		{"nothing", Surd{}, "0 sq in", "0 sq cm"},
		{"square centimetre", Area(Centimetre.Surd(), Centimetre.Surd()), "about 0.16 sq in", "1 sq cm"},
	}
	for _, test := range tests {
		if in, cm := FormatArea(test.area, In), FormatArea(test.area, Cm); in != test.in || cm != test.cm {
			t.Errorf("%s: %s, %s, want %s, %s", test.name, in, cm, test.in, test.cm)
		}
	}
}
