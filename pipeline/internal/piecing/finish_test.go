package piecing_test

import (
	"testing"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

func box(w, h measure.Length) piecing.Box { return piecing.Box{Width: w.Surd(), Height: h.Surd()} }

func wantBox(t *testing.T, what string, got piecing.Box, w, h measure.Length) {
	t.Helper()
	if !got.Width.Equal(w.Surd()) || !got.Height.Equal(h.Surd()) {
		t.Errorf("%s: %v x %v, want %v x %v", what,
			got.Width.Format(measure.In), got.Height.Format(measure.In), w.Format(measure.In), h.Format(measure.In))
	}
}

func wantSurd(t *testing.T, what string, got measure.Surd, want measure.Length) {
	t.Helper()
	if !got.Equal(want.Surd()) {
		t.Errorf("%s: %v, want %v", what, got.Format(measure.In), want.Format(measure.In))
	}
}

// Butted borders of finished width g round a W x H inner quilt: sides first,
// the sides are H + 2s long and the ends W + 2g + 2s; ends first, the other
// way round. Derived from geometry. Here W x H is 30 x 40 in, g 3 in.
func TestButtedBorder(t *testing.T) {
	inner := box(inch*61/2, inch*81/2) // with the seam round it
	for _, c := range []struct {
		endsFirst   bool
		sides, ends measure.Length
	}{
		{false, inch * 81 / 2, inch * 73 / 2},
		{true, inch * 93 / 2, inch * 61 / 2},
	} {
		b := piecing.ButtedBorder(inner, 3*inch, quarter, c.endsFirst)
		if b.Cut != inch*7/2 {
			t.Errorf("cut %v wide, want 3 1/2 in", b.Cut.Format(measure.In))
		}
		wantSurd(t, "sides", b.Sides, c.sides)
		wantSurd(t, "ends", b.Ends, c.ends)
		wantSurd(t, "all four", b.Needed, 2*(c.sides+c.ends))
		wantBox(t, "outer", b.Outer, inch*73/2, inch*93/2)
		wantBox(t, "finished", b.Outer.Finished(quarter), 36*inch, 46*inch)
	}
}

// What a border adds to the finished quilt is what its strips finish to,
// whichever pair is sewn on first.
func TestButtedBorderArea(t *testing.T) {
	inner := box(inch*61/2, inch*81/2)
	for _, endsFirst := range []bool{false, true} {
		b := piecing.ButtedBorder(inner, 3*inch, quarter, endsFirst)
		both := (2 * quarter).Surd()
		strips := b.Sides.Sub(both).Add(b.Ends.Sub(both)).MulInt(2).Mul((3 * inch).Surd())
		outer, in := b.Outer.Finished(quarter), inner.Finished(quarter)
		added := outer.Width.Mul(outer.Height).Sub(in.Width.Mul(in.Height))
		if !strips.Equal(added) {
			t.Errorf("ends first %v: the strips finish to %s, the quilt grows by %s", endsFirst,
				measure.FormatArea(strips, measure.In), measure.FormatArea(added, measure.In))
		}
	}
}

// A second border is measured from the first one's outer size.
func TestSecondBorder(t *testing.T) {
	first := piecing.ButtedBorder(box(inch*41/2, inch*41/2), inch, quarter, false)
	second := piecing.ButtedBorder(first.Outer, 4*inch, quarter, false)
	wantSurd(t, "sides", second.Sides, inch*45/2)
	wantSurd(t, "ends", second.Ends, inch*61/2)
	wantBox(t, "finished", second.Outer.Finished(quarter), 30*inch, 30*inch)
}

// A backing of 52 x 60 in, overhang included, from fabric 40 in wide with
// half-inch seams: with the seam running lengthwise two panels of 60 in are
// 120 in (3 3/8 yd), crosswise two of 52 in are 104 in (3 yd). Derived from
// geometry; 1/2 in for a backing's seam is common practice, no source.
func TestBackingPanels(t *testing.T) {
	eighth := measure.Yard / 8
	for _, c := range []struct {
		lengthwise   bool
		each, length measure.Length
		yards        string
	}{
		{true, 60 * inch, 120 * inch, "3 3/8 yd"},
		{false, 52 * inch, 104 * inch, "3 yd"},
	} {
		b, ok := piecing.BackingPanels(box(52*inch, 60*inch), 40*inch, inch/2, c.lengthwise)
		if !ok || b.Panels != 2 || b.Lengthwise != c.lengthwise {
			t.Errorf("lengthwise %v: %d panels, %v", c.lengthwise, b.Panels, ok)
		}
		wantSurd(t, "each panel", b.Each, c.each)
		wantSurd(t, "all panels", b.Length, c.length)
		if got := measure.FormatFabric(b.Length.CeilTo(eighth), measure.In); got != c.yards {
			t.Errorf("lengthwise %v: %s, want %s", c.lengthwise, got, c.yards)
		}
	}
}

// "Two lengths for anything under 80 in" forgets the seam: two panels of 40 in
// cover 79.
func TestBackingPanelLimits(t *testing.T) {
	for _, c := range []struct {
		cover  measure.Length
		panels int64
	}{
		{40 * inch, 1}, {40*inch + tick, 2}, {79 * inch, 2}, {79*inch + tick, 3}, {80 * inch, 3}, {118 * inch, 3}, {118*inch + tick, 4},
	} {
		b, ok := piecing.BackingPanels(box(c.cover, 60*inch), 40*inch, inch/2, true)
		if !ok || b.Panels != c.panels {
			t.Errorf("%v wide: %d panels, %v, want %d", c.cover.Format(measure.In), b.Panels, ok, c.panels)
		}
	}
	if _, ok := piecing.BackingPanels(box(60*inch, 60*inch), inch, inch/2, true); ok {
		t.Error("panels no wider than their seams cover something")
	}
}

// Wide backing, 108 in as labelled and 104 in to use: one length, either way
// up. 98 x 104 in takes 104 in one way and 98 the other.
func TestWideBacking(t *testing.T) {
	for _, c := range []struct {
		lengthwise bool
		want       measure.Length
	}{{true, 104 * inch}, {false, 98 * inch}} {
		b, ok := piecing.BackingPanels(box(98*inch, 104*inch), 104*inch, inch/2, c.lengthwise)
		if !ok || b.Panels != 1 {
			t.Errorf("lengthwise %v: %d panels, %v", c.lengthwise, b.Panels, ok)
		}
		wantSurd(t, "length", b.Length, c.want)
	}
}

// The overhang is on every side: added once it would leave the backing short.
func TestGrown(t *testing.T) {
	wantBox(t, "44 x 52 in and 4 in all round", piecing.Grown(box(44*inch, 52*inch), 4*inch), 52*inch, 60*inch)
}

// 2(W + H) and 10 in: 192 in round and 202 in of binding, from a 44 x 52 in
// quilt. Ten inches are common practice, no source.
func TestBindingLength(t *testing.T) {
	wantSurd(t, "binding", piecing.BindingLength(box(44*inch, 52*inch), 10*inch), 202*inch)
}

// On point, no side of a quilt is on a ruler, and nothing may round it.
func TestFinishOfDerivedSize(t *testing.T) {
	side := (6 * inch).Surd().Mul(measure.Root2())
	finished := piecing.Box{Width: side, Height: side.MulInt(2)}
	want := side.MulInt(6).Add((10 * inch).Surd())
	if got := piecing.BindingLength(finished, 10*inch); !got.Equal(want) {
		t.Errorf("binding %v, want %v", got, want)
	}
	if got := piecing.Grown(finished, inch).Width; !got.Equal(side.Add((2 * inch).Surd())) {
		t.Errorf("backing %v wide", got)
	}
}
