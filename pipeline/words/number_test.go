package words

import (
	"math/big"
	"strings"
	"testing"

	"yardproof/schema/measure"
)

// TestNumbers reads every manner in which typesetters spell numbers and lengths.
func TestNumbers(t *testing.T) {
	const in, yd, cm, mm, m, ft = measure.Inch, measure.Yard, measure.Centimetre, measure.Millimetre, measure.Metre, measure.Foot
	for text, want := range map[string]struct {
		value string
		unit  measure.Length
	}{
		"12": {"12", 0}, "1,200": {"1200", 0}, "1/2 in": {"1/2", in}, "½ in": {"1/2", in}, "1-1/2 in": {"3/2", in}, "1 ½ in": {"3/2", in}, "1½ in": {"3/2", in},
		"1⁄2 in": {"1/2", in}, "1 1⁄2 in": {"3/2", in}, "¹⁄₂ in": {"1/2", in}, "1\u00a01/2\u00a0in": {"3/2", in}, "1\u20091⁄2\u2009in": {"3/2", in}, "⅟8 in": {"1/8", in},
		"2½\"": {"5/2", in}, "2½″": {"5/2", in}, "2½”": {"5/2", in}, "2 1/2''": {"5/2", in}, "2½-inch": {"5/2", in}, "2 1/2 in": {"5/2", in}, "2.5\"": {"5/2", in}, ".5 in": {"1/2", in},
		"42-inch-wide": {"42", in}, "6 cm": {"6", cm}, "6.5cm": {"13/2", cm}, "75 mm": {"75", mm}, "1.2 metres": {"6/5", m}, "2 m": {"2", m}, "2 meters": {"2", m},
		"1 yd": {"1", yd}, "3 yards": {"3", yd}, "2 7/8 yds": {"23/8", yd}, "4 ft": {"4", ft}, "4 ft 6 in": {"54", in}, "4' 6\"": {"54", in}, "4′ 6″": {"54", in}, "1 yd 4 in": {"40", in},
		"one and a half": {"3/2", 0}, "two and a half inches": {"5/2", in}, "three and seven-eighths yards": {"31/8", yd}, "thirty-six": {"36", 0}, "thirty six": {"36", 0},
		"a hundred": {"100", 0}, "ninety-nine": {"99", 0}, "a yard and a half": {"3/2", yd}, "a yard and an eighth": {"9/8", yd}, "half a yard": {"1/2", yd},
		"three-quarters of a yard": {"3/4", yd}, "seven-eighths of a yard": {"7/8", yd}, "quarter inch": {"1/4", in}, "a yard": {"1", yd}, "four feet four inches": {"52", in},
		"2 and 1/2 yards": {"5/2", yd}, "**3½**\"": {"7/2", in}, "*2 1/2* in": {"5/2", in}, "2&frac12; in": {"5/2", in}, "two and three-quarter yards": {"11/4", yd},
	} {
		p := numerals{t: lex(text, 0, 0)}
		found := p.read()
		if len(found) != 1 || found[0].unit != want.unit || found[0].value.RatString() != want.value || found[0].sense != quantity {
			t.Errorf("%q is read as %s", text, spell(found))
		}
	}
}

// TestNoNumbers reads words that are like numbers and are none.
func TestNoNumbers(t *testing.T) {
	for _, text := range []string{"nine-patch", "press all one way", "one of them", "half-square triangles", "fat quarters", "in half", "no one", "a half", "the quarter"} {
		p := numerals{t: lex(text, 0, 0)}
		if found := p.read(); len(found) > 0 {
			t.Errorf("%q is read as %s", text, spell(found))
		}
	}
}

func spell(found []*number) string {
	var s []string
	for _, n := range found {
		s = append(s, n.value.RatString()+" of "+n.unit.Format(measure.In)+" ("+n.sense.String()+")")
	}
	return strings.Join(s, ", ")
}

// TestRounded holds what a rounded number agrees with, on both sides of its limits.
func TestRounded(t *testing.T) {
	length := func(text string) measure.Surd {
		l, err := measure.ParseLength(text, measure.In)
		if err != nil {
			t.Fatal(err)
		}
		return l.Surd()
	}
	for _, c := range []struct {
		text, is string
		agrees   bool
	}{
		{"27 in", "27", true}, {"27 in", "27.01", false}, {"3/4 yd", "27", true},
		{"about 8 1/2 in", "8 1/4", true}, {"about 8 1/2 in", "8 15/64", false}, {"about 51 in", "50 1/2", true}, {"about 51 in", "50 31/64", false},
		{"at least 61 in", "60 1/64", true}, {"at least 61 in", "60", false}, {"at least 61 in", "61 1/64", false},
		{"no more than 61 in", "61 63/64", true}, {"no more than 61 in", "62", false}, {"no more than 61 in", "60 63/64", false},
	} {
		tokens := lex(c.text, 0, 0)
		p := numerals{t: tokens}
		found := p.read()
		sortOut(tokens, found, &lexicon{}, nil)
		if len(found) != 1 || found[0].measures(length(c.is)) != c.agrees {
			t.Errorf("%q and %s in: agrees is not %v", c.text, c.is, c.agrees)
		}
	}
}

// TestConversions holds the same length in other units, exact values of the inch and
// the yard (NIST Handbook 44, Appendix C: 25.4 mm and 0.9144 m).
func TestConversions(t *testing.T) {
	for text, want := range map[string]bool{
		"2 1/2 in (6.35 cm)": true, "2 1/2 in (6.4 cm)": true, "2 1/2 in (6.3 cm)": true, "2 1/2 in (6.2 cm)": false, "2 1/2 in (64 mm)": true, "2 1/2 in (65 mm)": false,
		"1 yd (0.9144 m)": true, "1 1/4 yd (1.2 m)": true, "1 1/4 yd (115 cm)": true, "1 1/4 yd (120 cm)": true, "1 1/4 yd (110 cm)": true, "1 1/4 yd (1 m)": false, "1 1/4 yd (130 cm)": false,
	} {
		tokens := lex(text, 0, 0)
		p := numerals{t: tokens}
		items := itemize(tokens, p.read(), 1)
		if len(items) != 1 || len(items[0].also) != 1 {
			t.Errorf("%q is not one length in two units", text)
		} else if got := items[0].also[0].converts(items[0].first()); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}

// TestRanges takes 'two or three' for a range.
func TestRanges(t *testing.T) {
	for text, want := range map[string]string{"two or three": "2-3", "2 to 3": "2-3", "6–8": "6-8", "two or five": ""} {
		tokens := lex(text, 0, 0)
		p := numerals{t: tokens}
		found := p.read()
		sortOut(tokens, found, &lexicon{}, nil)
		got := ""
		if found[0].most != nil {
			got = found[0].value.RatString() + "-" + found[0].most.RatString()
		}
		if got != want {
			t.Errorf("%q is read as %q", text, got)
		}
	}
	if n := (&number{value: big.NewRat(2, 1), most: big.NewRat(3, 1)}); !n.counts(2) || !n.counts(3) || n.counts(4) || n.counts(1) {
		t.Error("a range does not hold its ends, or more than them")
	}
}
