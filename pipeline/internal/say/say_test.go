package say_test

import (
	"testing"

	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
)

// 2 1/2 in are 6.35 cm, and a square of 6 in has a diagonal of 6 x sqrt2 =
// 8.48528 in = 21.55261 cm. Derived from geometry.
func TestSentence(t *testing.T) {
	diagonal := (6 * measure.Inch).Surd().Mul(measure.Root2())
	half := 5 * measure.Inch / 2
	for name, c := range map[string]struct {
		said   say.Sentence
		in, cm string
	}{
		"nothing":    {say.Sentence{}, "", ""},
		"a length":   {say.That("%s of %s, %d times", say.Many(2, "strip"), say.Long(half), 3), "2 strips of 2 1/2 in, 3 times", "2 strips of 6.35 cm, 3 times"},
		"to nearest": {say.That("%s", say.Long(diagonal)), "about 8.4853 in", "about 21.553 cm"},
		"rounded up": {say.That("%s", say.AsCut(diagonal)), diagonal.AsCut(measure.In), diagonal.AsCut(measure.Cm)},
		"down":       {say.That("%s", say.AsThere(diagonal)), diagonal.AsThere(measure.In), diagonal.AsThere(measure.Cm)},
		"two sides":  {say.That("%s", say.By(half, 2*half)), "2 1/2 x 5 in", "6.35 x 12.7 cm"},
		"to be cut":  {say.That("%s", say.CutBy(half, diagonal)), "2 1/2 x " + diagonal.AsCut(measure.In), "6.35 x " + diagonal.AsCut(measure.Cm)},
		"there":      {say.That("%s", say.ThereBy(half, diagonal)), "2 1/2 x " + diagonal.AsThere(measure.In), "6.35 x " + diagonal.AsThere(measure.Cm)},
		"on rulers":  {say.That("%s", say.Size(half.Surd(), half.Surd())), "2 1/2 x 2 1/2 in", "6.35 x 6.35 cm"},
		"on none":    {say.That("%s", say.Size(half.Surd(), diagonal)), "2 1/2 in x about 8.4853 in", "6.35 cm x about 21.553 cm"},
		"an area":    {say.That("%s", say.Area(measure.Area(half.Surd(), half.Surd()))), "6.25 sq in", "40.3225 sq cm"},
		"inside":     {say.That("cut %s", say.That("%s wide", say.Long(half))), "cut 2 1/2 in wide", "cut 6.35 cm wide"},
		"a list":     {say.List("; 5% ", say.That("a %d", 1), say.Sentence{}, say.That("b %s", say.Long(half))), "a 1; 5% b 2 1/2 in", "a 1; 5% b 6.35 cm"},
		"and":        {say.Sentence{}.And(say.That("a"), say.That(", %s", "100%")), "a, 100%", "a, 100%"},
	} {
		if got := c.said.In(measure.In); got != c.in {
			t.Errorf("%s: %q, want %q", name, got, c.in)
		}
		if got := c.said.In(measure.Cm); got != c.cm {
			t.Errorf("%s: %q, want %q", name, got, c.cm)
		}
		if got := c.said.Empty(); got != (c.in == "") {
			t.Errorf("%s: empty %v", name, got)
		}
	}
}

// A sentence does not change when another is made of it.
func TestSentencesShareNothing(t *testing.T) {
	first := say.That("%s", "a").And(say.That("%s", "b"))
	one, two := first.And(say.That("%s", "c")), first.And(say.That("%s", "d"))
	if got := one.In(measure.In) + two.In(measure.In) + first.In(measure.In); got != "abcabdab" {
		t.Error(got)
	}
}

func TestMany(t *testing.T) {
	for _, c := range []struct {
		n    int64
		noun string
		want string
	}{{0, "strip", "0 strips"}, {1, "strip", "1 strip"}, {2, "strip", "2 strips"}, {1, "sash", "1 sash"}, {2, "sash", "2 sashes"}} {
		if got := say.Many(c.n, c.noun); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// What is seen is rounded to the safe side: 1/84 in is less than 1/64.
func TestWithin(t *testing.T) {
	for _, c := range []struct {
		l    measure.Length
		u    measure.Unit
		want string
	}{
		{measure.Inch / 84, measure.In, "less than 1/64 in"},
		{measure.Inch/64 - 1, measure.In, "less than 1/64 in"},
		{measure.Inch / 64, measure.In, "up to 1/64 in"},
		{measure.Inch/32 - 1, measure.In, "up to 1/64 in"},
		{measure.Millimetre/10 - 1, measure.Cm, "less than 0.01 cm"},
		{measure.Millimetre / 4, measure.Cm, "up to 0.02 cm"},
	} {
		if got := say.Within(c.l, "up to %s", "less than %s").In(c.u); got != c.want {
			t.Errorf("%d ticks: %q, want %q", c.l, got, c.want)
		}
	}
}
