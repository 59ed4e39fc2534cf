package measure

import (
	"math"
	"math/big"
	"math/rand"
	"strings"
	"testing"
)

func TestLengthFormat(t *testing.T) {
	tests := []struct {
		length   Length
		in, cm   string
		yd, m    string
		fraction string
	}{
		{0, "0 in", "0 cm", "0 yd", "0 m", "zero"},
		{Inch, "1 in", "2.54 cm", "about 0.028 yd", "0.0254 m", "unit"},
		{Inch * 5 / 2, "2 1/2 in", "6.35 cm", "about 0.070 yd", "0.0635 m", "half"},
		{Inch * 33 / 10, "3.3 in", "8.382 cm", "about 0.092 yd", "about 0.084 m", "tenths"},
		{Inch / 64, "1/64 in", "about 0.040 cm", "about 0.001 yd", "about 0.001 m", "sixty-fourths"},
		{Inch/64 + 1, "about 0.0156 in", "0.0397 cm", "about 0.001 yd", "about 0.001 m", "off the ruler"},
		{Inch * 63 / 64, "63/64 in", "about 2.500 cm", "about 0.028 yd", "about 0.026 m", "rounds to 2.5"},
		{6 * Millimetre, "about 0.2362 in", "0.6 cm", "about 0.007 yd", "0.006 m", "overlock bite of 6 mm"},
		{Inch * 37, "37 in", "93.98 cm", "about 1.028 yd", "0.9398 m", "thirty-sixths of a yard"},
		{Yard * 2 / 3, "24 in", "60.96 cm", "2/3 yd", "2/3 yd", "thirds"},
		{Yard * 5 / 4, "45 in", "114.3 cm", "1 1/4 yd", "1.143 m", "quarters"},
		{Yard * 17 / 16, "38 1/4 in", "97.155 cm", "1 1/16 yd", "1 1/16 yd", "sixteenths"},
		{Yard * 11 / 12, "33 in", "83.82 cm", "11/12 yd", "11/12 yd", "twelfths"},
		{Yard / 8, "4 1/2 in", "11.43 cm", "1/8 yd", "1/8 yd", "eighth of a yard"},
		{-Inch * 5 / 2, "-2 1/2 in", "-6.35 cm", "about -0.069 yd", "-0.0635 m", "negative slack"},
		{-Inch / 4, "-1/4 in", "-0.635 cm", "about -0.006 yd", "about -0.006 m", "negative fraction"},
	}
	for _, test := range tests {
		l := test.length
		for _, pair := range [][2]string{
			{l.Format(In), test.in}, {l.Format(Cm), test.cm},
			{FormatFabric(l, In), test.yd}, {FormatFabric(l, Cm), test.m},
			{l.Bare(In) + " in", test.in}, {l.Bare(Cm) + " cm", test.cm},
			{l.Surd().Format(In), test.in},
		} {
			if pair[0] != pair[1] {
				t.Errorf("%s: %q, want %q", test.fraction, pair[0], pair[1])
			}
		}
	}
	for _, l := range []Length{math.MinInt64, math.MaxInt64} {
		if l.Format(In) == "" || l.Format(Cm) == "" || FormatFabric(l, In) == "" {
			t.Errorf("%d does not print", l)
		}
	}
}

// The figures are derived from geometry and were worked out to six places by
// hand before this package existed: sides of bias-edged squares, the additive
// constants of half- and quarter-square triangles, sewn row lengths.
func TestDecimal(t *testing.T) {
	inches := func(num, den int64) Surd { return Inch.Surd().Mul(Rational(num, den)) }
	cm := func(num, den int64) Surd { return Centimetre.Surd().Mul(Rational(num, den)) }
	root2, root3 := Root2(), Root3()
	two := Rational(2, 1)
	tests := []struct {
		name string
		x    Surd
		unit Unit
		want string
	}{
		{"(6.5-0.5)*sqrt2", inches(6, 1).Mul(root2), In, "8.485281"},
		{"6.5*sqrt2", inches(13, 2).Mul(root2), In, "9.192388"},
		{"(6.5-0.25)*sqrt2", inches(25, 4).Mul(root2), In, "8.838835"},
		{"(2+sqrt2)/4", inches(1, 4).Mul(two.Add(root2)), In, "0.853553"},
		{"(2+2*sqrt2)/4", inches(1, 4).Mul(two.Add(root2.MulInt(2))), In, "1.207107"},
		{"(2+sqrt2)*0.75 cm", cm(3, 4).Mul(two.Add(root2)), Cm, "2.560660"},
		{"(2+2*sqrt2)*0.75 cm", cm(3, 4).Mul(two.Add(root2.MulInt(2))), Cm, "3.621320"},
		{"6 squares of 6*sqrt2 less seams", inches(6, 1).Mul(root2).Sub(inches(1, 2)).MulInt(6), In, "47.911688"},
		{"12.4 cm - 0.75*sqrt2 cm", cm(62, 5).Sub(cm(3, 4).Mul(root2)), Cm, "11.339340"},
		{"8.5/sqrt2", inches(17, 2).Div(root2), In, "6.010408"},
		{"sqrt3 in", inches(1, 1).Mul(root3), In, "1.732051"},
		{"tube of 6 mm seams", inches(15, 2).Sub(cm(12, 5)), In, "6.555118"},
		{"its square", inches(15, 2).Sub(cm(12, 5)).Sub(cm(6, 5)).Mul(root2), In, "8.602205"},
	}
	for _, test := range tests {
		if got := test.x.Decimal(test.unit, 6); got != test.want {
			t.Errorf("%s = %s, want %s", test.name, got, test.want)
		}
	}
}

func TestSurdFormat(t *testing.T) {
	tests := []struct {
		x      Surd
		in, cm string
	}{
		{Root2().Mul((6 * Inch).Surd()), "about 8.4853 in", "about 21.553 cm"},
		{Rational(1, 2), "about 0.0000 in", "about 0.000 cm"},
		{Root2().Mul(Inch.Surd()).Neg(), "about -1.4142 in", "about -3.592 cm"},
		{Surd{}, "0 in", "0 cm"},
		{Inch.Surd().DivInt(3), "about 0.3333 in", "about 0.847 cm"},
	}
	for _, test := range tests {
		if in, cm := test.x.Format(In), test.x.Format(Cm); in != test.in || cm != test.cm {
			t.Errorf("%s: %s, %s, want %s, %s", test.x, in, cm, test.in, test.cm)
		}
	}
}

// Half way is rounded away from zero, and a hair less than half is not.
func TestDecimalRounding(t *testing.T) {
	tests := []struct {
		x      Surd
		places int
		want   string
	}{
		{Rational(1, 8), 2, "0.13"},
		{Rational(-1, 8), 2, "-0.13"},
		{Rational(124999999, 1000000000), 2, "0.12"},
		{Rational(999, 1000), 2, "1.00"},
		{Rational(-1, 1000), 2, "0.00"},
		{Rational(5, 2), 0, "3"},
		{Rational(5, 2), -4, "3"},
		{Rational(1, 3), 30, "0.333333333333333333"},
		{Root2(), 18, "1.414213562373095049"}, // OEIS A002193: 1.41421356237309504880...
		{Root3(), 18, "1.732050807568877294"}, // OEIS A002194: 1.73205080756887729352...
		{root6(), 18, "2.449489742783178098"}, // OEIS A010464: 2.44948974278317809819...
	}
	for _, test := range tests {
		if got := test.x.Number(test.places); got != test.want {
			t.Errorf("%s to %d places: %s, want %s", test.x, test.places, got, test.want)
		}
	}
}

func TestSurdString(t *testing.T) {
	inch := Inch.Surd()
	tests := []struct {
		x    Surd
		want string
	}{
		{Surd{}, "0"},
		{inch.MulInt(6).Mul(Root2()), "6*sqrt2"},
		{inch.DivInt(2).Sub(inch.Mul(root6()).Mul(Rational(3, 4))), "1/2 - 3/4*sqrt6"},
		{inch.Neg().Add(inch.Mul(Root3())), "-1 + 1*sqrt3"},
	}
	for _, test := range tests {
		if got := test.x.String(); got != test.want {
			t.Errorf("%s, want %s", got, test.want)
		}
	}
}

func TestFloatIsNearest(t *testing.T) {
	random := newRandom(t)
	for range 2000 {
		x := random.surd()
		want, _ := oracle(x).Quo(oracle(x), new(big.Float).SetInt64(int64(Inch))).Float64()
		if got := x.Float(In); got != want {
			t.Fatalf("%s: %v, want %v", x, got, want)
		}
	}
	if got := (Inch * 5 / 2).Surd().Float(In); got != 2.5 {
		t.Errorf("2 1/2 in = %v", got)
	}
}

// On both sides of what is exact. 0.123456 in is 25,086 ticks and a bit, worked out by
// hand: 25,086 ticks are 0.1234547... in, 0.003429... yd and 0.31357... cm.
func TestRounded(t *testing.T) {
	l := Length(25_086)
	for toward, want := range map[Toward][3]string{
		Up:      {"about 0.1235 in", "about 0.314 cm", "about 0.004 yd"},
		Down:    {"about 0.1234 in", "about 0.313 cm", "about 0.003 yd"},
		Nearest: {"about 0.1235 in", "about 0.314 cm", "about 0.003 yd"},
	} {
		if got := [3]string{l.Rounded(In, toward), l.Rounded(Cm, toward), RoundedFabric(l, In, toward)}; got != want {
			t.Errorf("%v: %q, want %q", toward, got, want)
		}
		for _, exact := range []Length{Inch / 64, 5 * Inch / 2, 6 * Centimetre} {
			if got := exact.Rounded(In, toward); exact != 6*Centimetre && got != exact.Format(In) {
				t.Errorf("%v: %q", toward, got)
			}
		}
	}
	diagonal := Root2().MulInt(6 * int64(Inch)) // 8.48528... in
	for toward, want := range map[Toward]string{Up: "about 8.4853 in", Nearest: "about 8.4853 in", Down: "about 8.4852 in"} {
		if got := diagonal.Rounded(In, toward); got != want {
			t.Errorf("%v: %q, want %q", toward, got, want)
		}
	}
	for _, c := range []struct {
		x        Surd
		places   int
		up, down string
	}{
		{Rational(1, 3), 2, "0.34", "0.33"}, {Rational(-1, 3), 2, "-0.33", "-0.34"}, {Rational(1, 4), 2, "0.25", "0.25"}, {Rational(-1, 4), 2, "-0.25", "-0.25"},
		{Rational(-1, 1000), 2, "0.00", "-0.01"}, {Rational(999, 1000), 2, "1.00", "0.99"}, {Root2(), 3, "1.415", "1.414"}, {Root2().Neg(), 3, "-1.414", "-1.415"},
	} {
		if up, down := c.x.NumberToward(c.places, Up), c.x.NumberToward(c.places, Down); up != c.up || down != c.down {
			t.Errorf("%s: %s and %s, want %s and %s", c.x, up, down, c.up, c.down)
		}
	}
}

// A length to cut is never an 'about' if a ruler has it: 2 3/8 yd and half an inch is 86 in.
func TestFormatCut(t *testing.T) {
	for _, c := range []struct {
		l    Length
		u    Unit
		want string
	}{
		{5 * Yard / 4, In, "1 1/4 yd"}, {86 * Inch, In, "86 in"}, {86*Inch - Inch/2, In, "2 3/8 yd"}, {12 * Inch, In, "1/3 yd"},
		{110 * Centimetre, Cm, "1.1 m"}, {1105 * Millimetre, Cm, "1.105 m"}, {11055 * Millimetre / 10, Cm, "1.1055 m"},
		{70 * Centimetre, In, "70 cm"}, {37*Inch + Inch/4, Cm, "94.615 cm"}, {37*Inch + Inch/64, Cm, "37 1/64 in"}, // the other unit
		{Inch/64 + 1, In, "about 0.0157 in"}, {Inch + 1, In, "about 1.0001 in"}, {Inch + 1, Cm, "about 2.541 cm"}, // rounded up
	} {
		if got := FormatCut(c.l, c.u); got != c.want {
			t.Errorf("%d ticks is %s, want %s", c.l, got, c.want)
		}
	}
}

// However a length is printed, what is cut reads no shorter and what there is no
// longer than it is, in either unit.
func TestNeverOnTheUnsafeSide(t *testing.T) {
	r := rand.New(rand.NewSource(84))
	for range 5000 {
		l := Length(r.Int63n(int64(200 * Yard)))
		if r.Intn(2) == 0 {
			l = l / (Inch / 64) * (Inch / 64)
		}
		for _, u := range []Unit{In, Cm} {
			for _, text := range []string{l.AsCut(u), FormatFabric(l, u), FormatCut(l, u), l.Surd().AsCut(u)} {
				if read(t, text).Cmp(l.Surd()) < 0 {
					t.Fatalf("%d ticks to cut print as %s", l, text)
				}
			}
			for _, text := range []string{l.AsThere(u), RoundedFabric(l, u, Down)} {
				if read(t, text).Cmp(l.Surd()) > 0 {
					t.Fatalf("%d ticks that there are print as %s", l, text)
				}
			}
		}
	}
}

// read reads a printed length, in ticks.
func read(t *testing.T, text string) Surd {
	t.Helper()
	units := map[string]Length{"in": Inch, "cm": Centimetre, "yd": Yard, "m": Metre}
	fields := strings.Fields(strings.TrimPrefix(text, "about "))
	sum := new(big.Rat)
	for _, f := range fields[:len(fields)-1] {
		n, ok := new(big.Rat).SetString(f)
		if !ok {
			t.Fatalf("%q", text)
		}
		sum.Add(sum, n)
	}
	return FromRat(sum).MulInt(int64(units[fields[len(fields)-1]]))
}
