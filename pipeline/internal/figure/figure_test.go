package figure_test

import (
	"testing"

	"yardproof/pipeline/internal/figure"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

const inch = measure.Inch

func said(symbol string, l measure.Length) figure.F {
	return figure.Said(symbol, "what "+symbol+" is", l, source.Range{Start: int(symbol[0]), End: int(symbol[0]) + 1})
}

// tube is the squares of a tube of two sets of three strips, as a room works them
// out.
func tube(strip, w, s measure.Length) (each figure.F, l, cut, seam figure.F) {
	l, cut, seam = said("L", strip), said("w", w), said("s", s)
	wide := figure.Sum("sum of the strips' cut widths", cut, cut, cut).Less(seam.By(4)).As("T", "width of the tube")
	h := wide.Less(seam.By(2)).Is("pipe", "height of the triangle h").As("h", "height of the triangle")
	a := wide.Less(seam.By(2)).Spelt("a", "from tip to tip")
	first := h.By(2)
	return figure.Whole(1).Plus(l.Less(first).Over(a).Floor()).Unless(l, first).Is("pipe", "squares from one tube"), l, cut, seam
}

// squares is the same by plain whole numbers: 1 + floor((L - 2h) / a) with h = a =
// T - 2s and T = 3w - 4s. Derived from geometry.
func squares(l, w, s measure.Length) int64 {
	h := 3*w - 4*s - 2*s
	if l < 2*h {
		return 0
	}
	return 1 + int64((l-2*h)/h)
}

func TestFormulasArePrintedAsTheyAreReckoned(t *testing.T) {
	L, T, s, e, h, a := said("L", 1), said("T", 1), said("s", 1), said("e", 1), said("h", 1), said("a", 1)
	N, each, n, k, tt, b := said("N", 1), said("each", 1), said("n", 1), said("k", 1), said("t", 1), said("b", 1)
	c, P, w, root2, root3 := said("c", 1), said("P", 1), said("w", 1), figure.Root2(), figure.Root3()
	one, two := figure.Whole(1), figure.Whole(2)
	first := h.Plus(s).By(2)
	for want, f := range map[string]figure.F{
		"T - 2s + e": T.Less(s.By(2)).Plus(e),
		"1 + floor((L - 2h) / a), none when L < 2h":         one.Plus(L.Less(h.By(2)).Over(a).Floor()).Unless(L, h.By(2)),
		"1 + floor((L - 2(h+s)) / a), none when L < 2(h+s)": one.Plus(L.Less(first).Over(a).Floor()).Unless(L, first),
		"ceil(N / each)":                        N.Over(each).Ceil(),
		"h x sqrt2":                             h.Times(root2),
		"sum of widths - 2(n-1)s":               figure.Sum("sum of widths").Less(n.Less(one).By(2).Times(s)),
		"(c/2 - s) x sqrt2":                     c.OverInt(2).Less(s).Times(root2),
		"c/2 - s x sqrt2":                       c.OverInt(2).Less(s.Times(root2)),
		"c - 2s x sqrt2":                        c.Less(s.By(2).Times(root2)),
		"c + 2 x R x g + 2s":                    c.Plus(two.Times(said("R", 1)).Times(said("g", 1))).Plus(s.By(2)),
		"k x b + (k-1) x t":                     k.Times(b).Plus(k.Less(one).Times(tt)),
		"k x L - (k-1) x 2s":                    k.Times(L).Less(k.Less(one).Times(s.By(2))),
		"k x (b + t) x sqrt2":                   k.Times(b.Plus(tt)).Times(root2),
		"k x b x sqrt2 + 2 x float":             k.Times(b).Times(root2).Plus(said("float", 1).By(2)),
		"floor(2L / P) - 1":                     L.By(2).Over(P).Floor().Less(one),
		"floor((L - (P-t)/2) / ((P+t)/2))":      L.Less(P.Less(tt).OverInt(2)).Over(P.Plus(tt).OverInt(2)).Floor(),
		"2(h + 3s) / sqrt3":                     h.Plus(s.By(3)).By(2).Over(root3),
		"floor((L - w / sqrt3) / (2w / sqrt3))": L.Less(w.Over(root3)).Over(w.By(2).Over(root3)).Floor(),
		"max(ceil(N / each), floor(k))":         figure.Most(N.Over(each).Ceil(), k.Floor()),
		"min(L, T)":                             figure.Least(L, T),
		"a - (b + c)":                           a.Less(b.Plus(c)),
		"a - (b - c)":                           a.Less(b.Less(c)),
		"a + b - c":                             a.Plus(b.Less(c)),
		"a / (b x c)":                           a.Over(b.Times(c)),
		"a / 2":                                 a.Over(two),
		"each / 2":                              each.OverInt(2),
		"floor(L / w)":                          L.Over(w).Floor().OrNone(),
		"L down to a multiple of w":             L.FloorTo(w),
		"(L + w) up to a multiple of (s)":       L.Plus(w).CeilTo(s.InWords("(s)").As("", "")),
		"sum over all that use it":              figure.Sum("sum over all that use it", N, k),
		"two head to tail":                      figure.Given(figure.Count, measure.Rational(2, 1), "two head to tail", L),
		"c x 2, t = 2s / sqrt3":                 c.Times(two).Apart(s.By(2).Over(root3).As("t", "tip")),
		"what b is / c":                         b.As("", "what b is").Over(c),
	} {
		if got := f.Formula(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if L.Formula() != "" || (figure.F{}).Formula() != "" {
		t.Error("what the plan says has a formula")
	}
}

// TestWorkingsAreThoseOfTheNumber: value, formula, terms and places are read from
// the number. 36 1/2 in is six and a half inches seven times less a third of it: the
// boundary between 5 and 4 squares is derived from geometry.
func TestWorkingsAreThoseOfTheNumber(t *testing.T) {
	each, l, _, seam := tube(42*inch, 5*inch/2, inch/4)
	if each.N() != 6 || each.Kind() != figure.Count || each.Name() != "pipe, squares from one tube" {
		t.Errorf("%d %q", each.N(), each.Name())
	}
	var symbols []string
	for _, term := range each.Terms() {
		symbols = append(symbols, term.Symbol())
	}
	if len(symbols) != 3 || symbols[0] != "L" || symbols[1] != "h" || symbols[2] != "a" {
		t.Fatalf("terms %q", symbols)
	}
	h, a := each.Terms()[1], each.Terms()[2]
	if h.Length() != 6*inch || h.Formula() != "T - 2s" || h.Name() != "pipe, height of the triangle h" || h.Kind() != figure.Length {
		t.Errorf("h %v %q %q", h.Length(), h.Formula(), h.Name())
	}
	if a.Says() != "from tip to tip, T - 2s" || a.Name() != "" || !a.At().Empty() {
		t.Errorf("a %q %q", a.Says(), a.Name())
	}
	if l.At() != (source.Range{Start: 'L', End: 'L' + 1}) || !l.Input() || h.Input() {
		t.Error("places are lost")
	}
	if !each.Follows(seam) || !each.Follows(h) || l.Follows(each) || each.Follows(figure.F{}) || !each.Follows(each) {
		t.Error("what follows from what")
	}
	if in := each.Inputs(); len(in) != 3 {
		t.Errorf("%d inputs", len(in))
	}
}

// TestWithIsTheNumberReckonedAnew holds every input's variation against plain whole
// numbers, on both sides of each boundary: lengths of some ticks only, so that all
// of them are tried.
func TestWithIsTheNumberReckonedAnew(t *testing.T) {
	const strip, w, s = 97, 9, 2
	each, l, cut, seam := tube(strip, w, s)
	for v := range measure.Length(200) {
		for name, c := range map[string]struct {
			input   figure.F
			l, w, s measure.Length
		}{"L": {l, v, w, s}, "w": {cut, strip, v, s}, "s": {seam, strip, w, v}} {
			if name == "w" && 3*v <= 6*s || name == "s" && 6*v >= 3*w {
				continue // nothing is left of a tube
			}
			want := squares(c.l, c.w, c.s)
			got, ok := each.With(c.input, v.Surd())
			if !ok || !got.Equal(measure.Rational(want, 1)) {
				t.Fatalf("%s = %d: %s %v, want %d", name, v, got.Number(2), ok, want)
			}
		}
	}
	if _, ok := each.With(cut, measure.Rational(12, 3)); ok { // a = 12 - 12
		t.Error("a division by nothing has a value")
	}
}

// TestDriftIsWhereAScanFindsIt holds the bisection against a scan over ticks.
func TestDriftIsWhereAScanFindsIt(t *testing.T) {
	const strip, w, s = 97, 9, 2
	each, l, cut, seam := tube(strip, w, s)
	for name, c := range map[string]struct {
		input figure.F
		from  measure.Length
		limit measure.Length
		of    func(measure.Length) int64
	}{
		"shorter":  {l, strip, 0, func(v measure.Length) int64 { return squares(v, w, s) }},
		"longer":   {l, strip, 400, func(v measure.Length) int64 { return squares(v, w, s) }},
		"narrower": {cut, w, 5, func(v measure.Length) int64 { return squares(strip, v, s) }},
		"wider":    {cut, w, 60, func(v measure.Length) int64 { return squares(strip, v, s) }},
		"seamless": {seam, s, 0, func(v measure.Length) int64 { return squares(strip, w, v) }},
		"seamy":    {seam, s, 4, func(v measure.Length) int64 { return squares(strip, w, v) }},
	} {
		step, want, found := measure.Length(1), measure.Length(0), false
		if c.limit < c.from {
			step = -1
		}
		for v := c.from; v != c.limit && !found; {
			if v += step; c.of(v) != each.N() {
				want, found = v, true
			}
		}
		at, there, ok := each.Drift(c.input, c.limit)
		if found && !there.Equal(measure.Rational(c.of(want), 1)) {
			t.Errorf("%s: it is %s there", name, there.Number(2))
		}
		if ok != found || at != want {
			t.Errorf("%s: %d %v, want %d %v", name, at, ok, want, found)
		}
	}
	if _, _, ok := each.Drift(l, strip); ok {
		t.Error("it drifts by nothing")
	}
	if _, _, ok := figure.Unknown(each).Drift(l, 0); ok {
		t.Error("what is not known drifts")
	}
}

// TestDriftOfTicksInInches: at 42 in a tube of 6 in squares gives six; the sixth
// goes at one tick less, the seventh comes at 48 in. Derived from geometry.
func TestDriftOfTicksInInches(t *testing.T) {
	each, l, _, _ := tube(42*inch, 5*inch/2, inch/4)
	if at, _, ok := each.Drift(l, 30*inch); !ok || at != 42*inch-1 {
		t.Errorf("%v %v", at, ok)
	}
	if at, _, ok := each.Drift(l, 60*inch); !ok || at != 48*inch {
		t.Errorf("%v %v", at, ok)
	}
	if _, _, ok := each.Drift(l, 48*inch-1); ok {
		t.Error("it changes before 48 in")
	}
}

// TestDriftOfSeveralInputsAlike: a tube whose seam is another than that of its sets,
// both sewn narrower by as much. Held against a scan.
func TestDriftOfSeveralInputsAlike(t *testing.T) {
	cut, l, inner, outer := said("w", 9), said("L", 97), said("s", 2), said("t", 3)
	h := cut.By(3).Less(inner.By(4)).Less(outer.By(2))
	each := l.Over(h).Floor()
	of := func(d measure.Length) int64 { return int64(97 / (27 - 4*max(0, 2-d) - 2*(3-d))) }
	want := measure.Length(0)
	for d := measure.Length(1); d <= 3 && want == 0; d++ {
		if of(d) != each.N() {
			want = d
		}
	}
	at, there, ok := each.Drift(outer, 0, inner, outer)
	if !ok || 3-at != want || !there.Equal(measure.Rational(of(want), 1)) {
		t.Errorf("%d %s %v, want a change after %d", at, there.Number(0), ok, want)
	}
}

func TestChangedNamesTheInputs(t *testing.T) {
	was, _, _, _ := tube(83*inch/2, 5*inch/2, inch/4)
	is, _, _, _ := tube(42*inch, 5*inch/2, inch/4)
	if was.N() != 5 || is.N() != 6 {
		t.Fatalf("%d %d", was.N(), is.N())
	}
	c := figure.Changed(was, is)
	if len(c) != 1 || c[0].Was.Symbol() != "L" || c[0].Is.Length() != 42*inch {
		t.Errorf("%+v", c)
	}
	both, _, _, _ := tube(42*inch, 3*inch, inch/8)
	if c := figure.Changed(was, both); len(c) != 3 {
		t.Errorf("%d inputs differ, want L, w and s", len(c))
	}
	if figure.Changed(was, was) != nil {
		t.Error("a number differs from itself")
	}
	again, _, _, _ := tube(83*inch/2, 5*inch/2, inch/4)
	if c := figure.Changed(was, again); c != nil {
		t.Errorf("%+v", c)
	}
	other := figure.Whole(7)
	if c := figure.Changed(was, other); len(c) != 1 || c[0].Is != other {
		t.Errorf("%+v", c)
	}
	x := figure.Given(figure.Count, measure.Rational(3, 1), "by a layout", was)
	y := figure.Given(figure.Count, measure.Rational(4, 1), "by a layout", was)
	if c := figure.Changed(x, y); len(c) != 1 || c[0].Was != x {
		t.Errorf("%+v", c)
	}
	if c := figure.Changed(figure.F{}, was); len(c) != 1 {
		t.Errorf("%+v", c)
	}
}

// TestWhatIsNoFormula: its value stands as long as nothing changes that it follows
// from.
func TestWhatIsNoFormula(t *testing.T) {
	l, s := said("L", 9), said("s", 2)
	g := figure.Given(figure.Length, measure.Rational(5, 1), "strips across the fabric", l).Plus(s)
	if v, ok := g.With(s, measure.Rational(3, 1)); !ok || !v.Equal(measure.Rational(8, 1)) {
		t.Error("a seam beside a layout")
	}
	if _, ok := g.With(l, measure.Rational(8, 1)); ok {
		t.Error("a layout of other cloth is known")
	}
	if g.Formula() != "strips across the fabric + s" || len(g.Terms()) != 2 {
		t.Errorf("%q %d", g.Formula(), len(g.Terms()))
	}
}

func TestWhatIsNotKnown(t *testing.T) {
	l := said("L", 9)
	none := figure.Unknown(l, figure.F{})
	for _, f := range []figure.F{none, none.Plus(l), l.Over(figure.Whole(0)), l.CeilTo(said("g", 0)), figure.Most(l, figure.F{}), figure.Least(), l.Plus(figure.F{}), {}} {
		if f.Known() || f.N() != 0 || !f.Surd().IsZero() {
			t.Errorf("%q is known to be %d", f.Formula(), f.N())
		}
	}
	if !none.Plus(said("s", 1)).Follows(l) || !l.Plus(none).Follows(l) || !figure.Most(figure.F{}, l).Follows(l) {
		t.Error("what it would follow from is lost")
	}
	var f figure.F
	if f.Is("a", "b").Known() || f.By(2).Known() || f.AsSold().Known() || f.Terms() != nil || f.Inputs() != nil || f.Input() {
		t.Error("the zero figure is something")
	}
	if _, ok := f.With(l, measure.Surd{}); ok {
		t.Error("the zero figure has a value")
	}
}

func TestGreaterOrLess(t *testing.T) {
	x, y, s := said("x", 5), said("y", 8), said("s", 0)
	for _, c := range []struct {
		f    figure.F
		want int64
	}{
		{figure.Least(x, y), 5}, {figure.Most(x, y), 8}, {x.Raised(y), 8}, {y.Raised(x), 8}, {x.Less(y).OrNone(), 0}, {y.Less(x).OrNone(), 3},
		{x.Unless(x, x), 5}, {x.Unless(x, y), 0}, {y.OverInt(3).Floor(), 2}, {y.OverInt(3).Ceil(), 3}, {y.OverInt(4).Ceil(), 2},
		{y.CeilTo(x), 10}, {y.FloorTo(x), 5}, {x.CeilTo(x), 5}, {figure.Sum("", x, y), 13}, {figure.Sum(""), 0}, {s.By(3), 0},
	} {
		if got := c.f.N(); got != c.want || !c.f.Known() {
			t.Errorf("%s = %d, want %d", c.f.Formula(), got, c.want)
		}
	}
	if f := y.Raised(x); f.Formula() != "y" || len(f.Terms()) != 1 {
		t.Errorf("%q", f.Formula())
	}
	if f := x.Raised(y); f.Formula() != "max(x, y)" || len(f.Terms()) != 2 {
		t.Errorf("%q", f.Formula())
	}
	if v, ok := y.Raised(x).With(x, measure.Rational(9, 1)); !ok || !v.Equal(measure.Rational(9, 1)) {
		t.Error("what is not told is not reckoned with")
	}
}

func TestNamesAndKinds(t *testing.T) {
	l := said("L", 6*inch)
	if f := l.AsSold(); f.Kind() != figure.Sold || l.Kind() != figure.Length || f.Length() != 6*inch {
		t.Error("as sold")
	}
	at := source.Range{Start: 3, End: 5}
	f := l.By(2).As("D", "double").Where(at).Is("", "twice").InWords("twice L").Telling(l)
	if f.Symbol() != "D" || f.Says() != "double" || f.At() != at || f.Name() != "twice" || f.Formula() != "twice L" || len(f.Terms()) != 1 {
		t.Errorf("%q %q %q", f.Symbol(), f.Name(), f.Formula())
	}
	if l.Over(l).Kind() != figure.Count || l.Over(figure.Whole(2)).Kind() != figure.Length || figure.Whole(2).Times(l).Kind() != figure.Length {
		t.Error("kinds")
	}
	if w := l.Behind(f).Working(); w != f || f.As("E", "e").Working() != f || l.Working().Known() {
		t.Error("what is told behind a term")
	}
	if g := f.As("E", "e"); g.Name() != "twice" || f.Symbol() != "D" {
		t.Error("a figure was written to")
	}
	if c := figure.Counted("k", "sets", 4, at); c.N() != 4 || c.Kind() != figure.Count || c.At() != at {
		t.Error("counted")
	}
}
