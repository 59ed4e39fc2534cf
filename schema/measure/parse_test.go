package measure

import (
	"errors"
	"strings"
	"testing"
)

func TestParseLength(t *testing.T) {
	const half = Inch / 2
	tests := []struct {
		text string
		unit Unit
		want Length
	}{
		{"0", In, 0},
		{"2.5", In, 5 * half},
		{".5", In, half},
		{"2", In, 2 * Inch},
		{"2", Cm, 2 * Centimetre},
		{"3.3", In, 33 * Inch / 10},
		{"2 1/2", In, 5 * half},
		{"  2   1/2 ", In, 5 * half},
		{"2-1/2", In, 5 * half},
		{"2\u20131/2", In, 5 * half},
		{"01/020", In, Inch / 20}, // not octal
		{"1/2", In, half},
		{"2½", In, 5 * half},
		{"2 ½", In, 5 * half},
		{"2-½", In, 5 * half},
		{"½", In, half},
		{"2\u00a01\u20442", In, 5 * half},
		{"2\u2009½", In, 5 * half},
		{"2\u202f½", In, 5 * half},
		{"\u215f8", In, Inch / 8},
		{`2 1/2"`, In, 5 * half},
		{"2 1/2\u2033", Cm, 5 * half},
		{"2 1/2\u201d", In, 5 * half},
		{"2 1/2 in", Cm, 5 * half},
		{"2 1/2 in.", Cm, 5 * half},
		{"2 1/2-inch", Cm, 5 * half},
		{"2½in", Cm, 5 * half},
		{"6.5 cm", In, 65 * Millimetre},
		{"65 mm", In, 65 * Millimetre},
		{"65mm", In, 65 * Millimetre},
		{"1.1 m", In, 110 * Centimetre},
		{"1 ft", Cm, Foot},
		{"1'", Cm, Foot},
		{"1 1/4 yd", Cm, 45 * Inch},
		{"1 1/4 yards", In, 45 * Inch},
		{"1 Yard", In, Yard},
		{"2/3 yd", In, 24 * Inch},
		{"1/3 yd", In, Foot},
		{"100000", In, MaxLength},
		{"254000", Cm, MaxLength},
	}
	for _, test := range tests {
		got, err := ParseLength(test.text, test.unit)
		if err != nil || got != test.want {
			t.Errorf("ParseLength(%q, %s) = %d, %v, want %d", test.text, test.unit, got, err, test.want)
		}
	}
}

// Source of the values: the Unicode character names.
func TestVulgarFractions(t *testing.T) {
	tests := []struct {
		text     string
		num, den int64
	}{
		{"¼", 1, 4}, {"½", 1, 2}, {"¾", 3, 4}, {"⅐", 1, 7}, {"⅑", 1, 9}, {"⅒", 1, 10},
		{"⅓", 1, 3}, {"⅔", 2, 3}, {"⅕", 1, 5}, {"⅖", 2, 5}, {"⅗", 3, 5}, {"⅘", 4, 5},
		{"⅙", 1, 6}, {"⅚", 5, 6}, {"⅛", 1, 8}, {"⅜", 3, 8}, {"⅝", 5, 8}, {"⅞", 7, 8}, {"↉", 0, 3},
	}
	for _, test := range tests {
		got, reason := parseNumber(plainText("6" + test.text))
		if reason != "" {
			t.Errorf("6%s: %s", test.text, reason)
			continue
		}
		want := Rational(6*test.den+test.num, test.den)
		if !FromRat(got).Equal(want) {
			t.Errorf("6%s = %s, want %d/%d more", test.text, got, test.num, test.den)
		}
	}
}

func TestParseLengthRefusals(t *testing.T) {
	tests := []struct{ text, reason string }{
		{"", "empty"},
		{"  \u00a0", "empty"},
		{"-2", "without a sign"},
		{"\u22122", "without a sign"},
		{"+2", "without a sign"},
		{"2,5", "with a point"},
		{"1,000", "with a point"},
		{"1e3", "without an exponent"},
		{"1E999999999", "without an exponent"},
		{"1/0", "divides by zero"},
		{"2 1/0", "divides by zero"},
		{"2 3/2", "less than 1"},
		{"2 2/2", "less than 1"},
		{"0 3/2", "less than 1"},
		{"2 1/2 1/2", "write a fraction"},
		{"2.5 1/2", "write a fraction"},
		{"1/2/2", "write a fraction"},
		{"2 - 1/2", "write a fraction"},
		{"½2", "write a fraction"},
		{"½½", "write a fraction"},
		{"5.", "write a number"},
		{".", "write a number"},
		{"1.2.3", "write a number"},
		{"2 3", "write a number"},
		{"in", "no number"},
		{"½ cubit", "not a unit"},
		{"2 in in", "not a unit"},
		{`1' 6"`, "not a unit"},
		{"NaN", "no number"},
		{"100000.01", "more than 100000 in"},
		{"2778 yd", "more than 100000 in"},
		{"٢", "no number"},
		{"\xff\xfe", "no number"},
		{strings.Repeat("9", 64), "more than 100000 in"},
		{strings.Repeat("9", 1<<20), "more than 64 characters"},
		{"1/" + strings.Repeat("9", 1<<20), "more than 64 characters"},
	}
	for _, test := range tests {
		_, err := ParseLength(test.text, In)
		var parse *ParseError
		if !errors.As(err, &parse) {
			t.Errorf("ParseLength(%.40q) error = %v, want a *ParseError", test.text, err)
			continue
		}
		if !strings.Contains(parse.Reason, test.reason) || parse.Neighbours {
			t.Errorf("ParseLength(%.40q): %s, want %q", test.text, parse.Reason, test.reason)
		}
		if message := err.Error(); len(message) > 300 {
			t.Errorf("message of %d bytes", len(message))
		}
	}
}

func TestParseLengthNeighbours(t *testing.T) {
	tests := []struct {
		text string
		unit Unit
		want string
	}{
		// 2.3333 lies between 2 21/64 = 2.3281 and 2 22/64 = 2.3438, and closer between 2.33 and 2.34.
		{"2 1/3", In, `"2 1/3" is not on a ruler: the nearest are 2.33 in and 2.34 in`},
		// 1/6 = 0.16667: 10/64 = 0.15625, 11/64 = 0.17188, 0.16, 0.17.
		{"1/6", In, `"1/6" is not on a ruler: the nearest are 0.16 in and 0.17 in`},
		// 0.333333333 in: 21/64 = 0.328125, 0.33, 0.34, 22/64 = 0.34375.
		{"0.333333333", In, `"0.333333333" is not on a ruler: the nearest are 0.33 in and 0.34 in`},
		// 0.3749 lies just under 24/64 = 3/8, which is nearer than 0.38.
		{"0.3749", In, `"0.3749" is not on a ruler: the nearest are 0.37 in and 3/8 in`},
		// 5.142857 in: 9/64 = 0.140625, 10/64 = 0.15625, 5.14, 5.15.
		{"1/7 yd", In, `"1/7 yd" is not on a ruler: the nearest are 5 9/64 in and 5.15 in`},
		{"2 1/3", Cm, `"2 1/3" is not on a ruler: the nearest are 2.333 cm and 2.334 cm`},
		{"2/3 mm", In, `"2/3 mm" is not on a ruler: the nearest are 0.066 cm and 0.067 cm`},
		{"2 1/3 in", Cm, `"2 1/3 in" is not on a ruler: the nearest are 2.33 in and 2.34 in`},
	}
	for _, test := range tests {
		_, err := ParseLength(test.text, test.unit)
		if err == nil || err.Error() != test.want {
			t.Errorf("ParseLength(%q, %s): %v, want %s", test.text, test.unit, err, test.want)
		}
	}
}

// What is a whole number of ticks is a length, even between the ruler's lines;
// one that is not is refused with neighbours on both sides of it.
func TestParseLengthAtTheEdgeOfATick(t *testing.T) {
	const tick = "0.000125" // mm, exactly
	if l, err := ParseLength(tick+" mm", In); err != nil || l != Tick {
		t.Errorf("one tick: %d, %v", l, err)
	}
	_, err := ParseLength("0.0001251 mm", In)
	var parse *ParseError
	if !errors.As(err, &parse) || !parse.Neighbours || parse.Below != 0 || parse.Above != Millimetre/100 {
		t.Errorf("a little more than a tick: %v", err)
	}
}

func FuzzParseLength(f *testing.F) {
	for _, text := range []string{
		"2 1/2", "2-1/2", "2½", "2 1/2 in", "6.5 cm", "65 mm", "1.1 m", "1 1/4 yd", "2/3 yd", "1 ft",
		"2 1/3", "-1", "2,5", "1e9", "1/0", "⅟8", "\xff", "2 1⁄2\"", "99999 63/64", "1/7 yd",
	} {
		f.Add(text, true)
		f.Add(text, false)
	}
	f.Fuzz(func(t *testing.T, text string, metric bool) {
		unit := In
		if metric {
			unit = Cm
		}
		l, err := ParseLength(text, unit)
		if err != nil {
			checkParseError(t, text, err)
			return
		}
		if l < 0 || l > MaxLength {
			t.Fatalf("%q is %d ticks", text, l)
		}
		for _, u := range []Unit{In, Cm} {
			checkRoundTrip(t, l, l.Format(u), unit)
			checkRoundTrip(t, l, l.Bare(u), u)
			checkRoundTrip(t, l, FormatFabric(l, u), unit)
		}
	})
}

func checkParseError(t *testing.T, text string, err error) {
	t.Helper()
	var parse *ParseError
	if !errors.As(err, &parse) || parse.Text != text || parse.Reason == "" {
		t.Fatalf("%q: %#v", text, err)
	}
	if !parse.Neighbours {
		return
	}
	if parse.Below >= parse.Above || parse.Below < 0 {
		t.Fatalf("%q: neighbours %d and %d", text, parse.Below, parse.Above)
	}
	for _, l := range []Length{parse.Below, parse.Above} {
		checkRoundTrip(t, l, l.Format(parse.Unit), In)
	}
}

// checkRoundTrip reads printed back, which must be l unless it says 'about'.
func checkRoundTrip(t *testing.T, l Length, printed string, unit Unit) {
	t.Helper()
	if strings.HasPrefix(printed, "about ") {
		return
	}
	if back, err := ParseLength(printed, unit); (err != nil || back != l) && l <= MaxLength {
		t.Fatalf("%d ticks printed as %q, read back as %d, %v", l, printed, back, err)
	}
}

// FuzzPlainLength holds the short way of reading a length to the long one.
func FuzzPlainLength(f *testing.F) {
	for _, text := range []string{"3", "2.5", "1/2", "2 1/2", "2 1/2 in", "6.5 cm", "2 3/2", "21/2", "9999.9999", "0", "0/3", "1/0", "2 1/2in", "0001 0001/0002", "1.", ".5", "3 cm", "1/3"} {
		f.Add(text, false)
		f.Add(text, true)
	}
	f.Fuzz(func(t *testing.T, text string, metric bool) {
		unit := In
		if metric {
			unit = Cm
		}
		quick, ok := plainLength(text, unit)
		if !ok {
			return
		}
		long, err := parseLength(text, unit)
		if err != nil || long != quick {
			t.Errorf("%q is %d the short way and %d, %v the long way", text, quick, long, err)
		}
	})
}
