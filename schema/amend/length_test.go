package amend_test

import (
	"testing"

	"yardproof/schema/amend"
	"yardproof/schema/measure"
)

// A length goes into a plan as the one that it replaces is written.
func TestLengthLike(t *testing.T) {
	inches := func(text string) measure.Length {
		l, err := measure.ParseLength(text, measure.In)
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
	for _, c := range []struct {
		old  string
		l    measure.Length
		u    measure.Unit
		want string
	}{
		{"", inches("3 1/4"), measure.In, `"3 1/4"`},
		{`"3 1/2"`, inches("3 1/4"), measure.In, `"3 1/4"`},
		{`"3 1/2 in"`, inches("3 1/4"), measure.In, `"3 1/4 in"`},
		{`"6.5 cm"`, inches("3 1/4"), measure.In, `"3 1/4"`}, // not 3 1/4 cm
		{"3.5", inches("3 1/4"), measure.In, "3.25"},
		{"3.5", inches("3"), measure.In, "3"},
		{"3.5", inches("10"), measure.In, "10"},
		{"3.5", inches("3 1/64"), measure.In, `"3 1/64"`}, // 3.015625
		{"9", 125 * measure.Millimetre, measure.Cm, "12.5"},
		{`"9 cm"`, 125 * measure.Millimetre, measure.Cm, `"12.5 cm"`},
		{`"3"`, measure.Inch/3 + 1, measure.In, ""}, // no plan may hold it
	} {
		if got := amend.LengthLike(c.old, c.l, c.u); got != c.want {
			t.Errorf("%v like %s: got %s, want %s", c.l, c.old, got, c.want)
		}
	}
}
