package measure

import (
	"math"
	"testing"
)

const (
	eighthYard = Yard / 8
	thirdYard  = Yard / 3
)

// The 41.5 in and 27 in rows are worked examples of the trade's rounding of
// fabric to buy (common practice, no source; the arithmetic is derived).
func TestCeilToFabric(t *testing.T) {
	tests := []struct {
		name   string
		length Length
		grid   Length
		unit   Unit
		want   string
	}{
		{"41.5 in", Inch * 83 / 2, eighthYard, In, "1 1/4 yd"},
		{"27 in less a tick", 27*Inch - 1, eighthYard, In, "3/4 yd"},
		{"27 in is on the grid", 27 * Inch, eighthYard, In, "3/4 yd"},
		{"27 in and a tick", 27*Inch + 1, eighthYard, In, "7/8 yd"},
		{"12 in is a third", 12 * Inch, thirdYard, In, "1/3 yd"},
		{"12 in on eighths", 12 * Inch, eighthYard, In, "3/8 yd"},
		{"nothing", 0, eighthYard, In, "0 yd"},
		{"41.5 in = 105.41 cm", Inch * 83 / 2, 10 * Centimetre, Cm, "1.1 m"},
		{"110 cm is on the grid", 110 * Centimetre, 10 * Centimetre, Cm, "1.1 m"},
		{"110 cm and a tick", 110*Centimetre + 1, 10 * Centimetre, Cm, "1.2 m"},
		// Convert first, then round: rounding to 1 1/4 yd = 114.3 cm first buys 120 cm.
		{"1 1/4 yd", Yard * 5 / 4, 10 * Centimetre, Cm, "1.2 m"},
	}
	for _, test := range tests {
		if got := FormatFabric(CeilTo(test.length, test.grid), test.unit); got != test.want {
			t.Errorf("%s: %s, want %s", test.name, got, test.want)
		}
	}
}

func TestRoundingDirections(t *testing.T) {
	const grid = Inch / 8
	tests := []struct{ length, floor, nearest, ceil Length }{
		{0, 0, 0, 0},
		{1, 0, 0, grid},
		{grid/2 - 1, 0, 0, grid},
		{grid / 2, 0, grid, grid},
		{grid - 1, 0, grid, grid},
		{grid, grid, grid, grid},
		{grid + 1, grid, grid, 2 * grid},
		{-1, -grid, 0, 0},
		{-grid / 2, -grid, 0, 0},
		{-grid/2 - 1, -grid, -grid, 0},
		{-grid, -grid, -grid, -grid},
	}
	for _, test := range tests {
		l := test.length
		if f, c := FloorTo(l, grid), CeilTo(l, grid); f != test.floor || c != test.ceil {
			t.Errorf("%d ticks: %d %d, want %d %d", l, f, c, test.floor, test.ceil)
		}
		x := l.Surd()
		if f, n, c := x.FloorTo(grid), x.NearestTo(grid), x.CeilTo(grid); f != test.floor || n != test.nearest || c != test.ceil {
			t.Errorf("%d ticks as a surd: %d %d %d, want %d %d %d", l, f, n, c, test.floor, test.nearest, test.ceil)
		}
	}
}

// Derived: (6*sqrt2)^2 = 72 lies between 8.375^2 = 70.140625 and 8.5^2 = 72.25,
// nearer to the latter.
func TestRoundRoot(t *testing.T) {
	side := Root2().Mul((6 * Inch).Surd())
	if got := side.FloorTo(Inch / 8).Format(In); got != "8 3/8 in" {
		t.Errorf("down: %s", got)
	}
	if got := side.CeilTo(Inch / 8).Format(In); got != "8 1/2 in" {
		t.Errorf("up: %s", got)
	}
	if got := side.NearestTo(Inch / 8).Format(In); got != "8 1/2 in" {
		t.Errorf("nearest: %s", got)
	}
}

// A third of a tick past a grid line rounds up even though no length lies there.
func TestRoundOffTick(t *testing.T) {
	x := (27 * Inch).Surd().Add(Rational(1, 3))
	if got := x.CeilTo(eighthYard); got != Yard*7/8 {
		t.Errorf("up: %s", FormatFabric(got, In))
	}
	if got := x.FloorTo(eighthYard); got != Yard*3/4 {
		t.Errorf("down: %s", FormatFabric(got, In))
	}
}

func TestRoundWithoutGrid(t *testing.T) {
	for _, grid := range []Length{0, -Inch} {
		if FloorTo(5, grid) != 5 || CeilTo(5, grid) != 5 {
			t.Errorf("grid %d changed a length", grid)
		}
		if x := Rational(11, 2); x.FloorTo(grid) != 5 || x.CeilTo(grid) != 6 || x.NearestTo(grid) != 6 {
			t.Errorf("grid %d is not one tick for a surd", grid)
		}
	}
}

func TestRoundBeyondRange(t *testing.T) {
	huge := Rational(math.MaxInt64, 1).MulInt(math.MaxInt64)
	if got := huge.CeilTo(Inch); got != math.MaxInt64 {
		t.Errorf("up: %d", got)
	}
	if got := huge.Neg().FloorTo(Inch); got != math.MinInt64 {
		t.Errorf("down: %d", got)
	}
}
