package piecing

import (
	"testing"

	"yardproof/schema/measure"
)

// Every piece is laid in the panel corner by corner: all lie within it, along
// lines at 45 degrees a strip's width apart, and there are as many as Pieces
// says; one more would leave its strip.
func TestBiasPanelPiecesLieWithinIt(t *testing.T) {
	for _, c := range []struct {
		high, width, length measure.Length
		strips              int64
	}{
		{18, 2, 8, 5}, {17, 1, 8, 9}, {9, 1, 5, 0}, {12, 3, 4, 2}, {6, 1, 8, 4}, {24, 2, 11, 1},
	} {
		high, w, l := c.high*measure.Inch, c.width*measure.Inch, c.length*measure.Inch
		b := BiasPanel{High: high, Width: w, Strips: c.strips}
		slant := w.Surd().Mul(measure.Root2()) // of a strip, along the edge
		across := w.Surd().Div(measure.Root2())
		count := int64(0)
		// lay puts pieces into the strip between the lines y = x - left and
		// y = x - left - slant, as long as the next lies within the panel.
		lay := func(left, x, y measure.Surd) {
			step := l.Surd().Div(measure.Root2())
			for {
				endX, endY := x.Add(step), y.Add(step)
				within := true
				for _, corner := range [][2]measure.Surd{{x, y}, {endX, endY}, {x.Add(across), y.Sub(across)}, {endX.Add(across), endY.Sub(across)}} {
					within = within && corner[0].Sign() >= 0 && corner[1].Sign() >= 0 &&
						corner[0].Cmp(b.Wide()) <= 0 && corner[1].Cmp(high.Surd()) <= 0
				}
				if !within {
					return
				}
				if !y.Equal(x.Sub(left)) {
					t.Fatalf("%+v: off its line", c)
				}
				count++
				x, y = endX, endY
			}
		}
		for i := range c.strips { // from edge to edge, first corner on the strip's upper line
			left := slant.MulInt(i)
			lay(left, left.Add(across), across)
		}
		for i := int64(0); slant.MulInt(i).Cmp(high.Surd()) < 0; i++ {
			// The upper triangle: the strip between y = x + i slant and y = x + (i+1)
			// slant. Its far line begins at the left edge.
			lay(slant.MulInt(i+1).Neg(), measure.Surd{}, slant.MulInt(i+1))
			// The lower one, turned by 180 degrees about the middle, holds as many.
			lay(slant.MulInt(i+1).Neg(), measure.Surd{}, slant.MulInt(i+1))
		}
		if got := b.Pieces(l); got != count {
			t.Errorf("%+v: %d pieces, laid out %d", c, got, count)
		}
	}
}

// Without strips from edge to edge a panel is a square, which BiasStrips knows.
// With them it never gives more than its area would.
func TestBiasPanelJoined(t *testing.T) {
	in := measure.Inch
	for high := 4 * in; high <= 24*in; high += in {
		for strips := range int64(6) {
			b := BiasPanel{High: high, Width: 5 * in / 2, Strips: strips}
			joined := b.Joined(1, in/4)
			if strips == 0 && !joined.Equal(JoinedBias(BiasStrips(high, 5*in/2), in/4)) {
				t.Errorf("%d: %s", high, joined.Format(measure.In))
			}
			if area := measure.Area(b.Wide(), high.Surd()); joined.Mul(b.Width.Surd()).Cmp(area) > 0 {
				t.Errorf("%d, %d strips: more than the area", high, strips)
			}
			if two := b.Joined(2, in/4); joined.Sign() > 0 && !two.Equal(joined.MulInt(2).Sub(rootOf2(in/2))) {
				t.Errorf("%d, %d strips: two panels give %s", high, strips, two.Format(measure.In))
			}
			if b.Wide().Cmp((40*in).Surd()) <= 0 && b.Fitting(40*in) < strips {
				t.Errorf("%d: %d strips fit and %d are said to", high, strips, b.Fitting(40*in))
			}
			if more := (BiasPanel{High: high, Width: b.Width, Strips: b.Fitting(40*in) + 1}); more.Wide().Cmp((40 * in).Surd()) <= 0 {
				t.Errorf("%d: one more would fit", high)
			}
		}
	}
}
