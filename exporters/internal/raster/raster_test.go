package raster_test

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"testing"

	"yardproof/exporters/internal/drawing"
	"yardproof/exporters/internal/raster"
)

func drawn(t *testing.T, d drawing.Drawing) image.Image {
	t.Helper()
	b, err := raster.PNG(d)
	if err != nil {
		t.Fatal(err)
	}
	m, err := png.Decode(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// at is the colour at a place in millimetres.
func at(m image.Image, x, y float64) color.RGBA {
	r, g, b, _ := m.At(int(x*raster.PerMillimetre), int(y*raster.PerMillimetre)).RGBA()
	return color.RGBA{uint8(r >> 8), uint8(g >> 8), uint8(b >> 8), 255}
}

func near(a, b color.RGBA) bool {
	d := func(x, y uint8) bool { return x < y+9 && y < x+9 || x == y }
	return d(a.R, b.R) && d(a.G, b.G) && d(a.B, b.B)
}

func square(x, y, side float64) []drawing.Point {
	return []drawing.Point{{X: x, Y: y}, {X: x + side, Y: y}, {X: x + side, Y: y + side}, {X: x, Y: y + side}}
}

// A square is filled, edged with black, and white all round.
func TestSquare(t *testing.T) {
	red := drawing.Fill{Ground: drawing.Colour{R: 200, G: 40, B: 8}}
	m := drawn(t, drawing.Drawing{Width: 40, Height: 30, Shapes: []drawing.Shape{{Points: square(10, 10, 10), Fill: &red, Stroke: 0.5}}})
	if m.Bounds() != image.Rect(0, 0, 240, 180) {
		t.Errorf("%v", m.Bounds())
	}
	for _, c := range []struct {
		x, y float64
		want color.RGBA
	}{
		{15, 15, color.RGBA{200, 40, 8, 255}}, {12, 18, color.RGBA{200, 40, 8, 255}}, {10, 15, color.RGBA{A: 255}}, {15, 20, color.RGBA{A: 255}},
		{9, 15, color.RGBA{255, 255, 255, 255}}, {25, 15, color.RGBA{255, 255, 255, 255}}, {1, 1, color.RGBA{255, 255, 255, 255}},
	} {
		if got := at(m, c.x, c.y); !near(got, c.want) {
			t.Errorf("at %v, %v: %v, want %v", c.x, c.y, got, c.want)
		}
	}
}

// darkness is the share of a square's pixels that are nearer to black.
func darkness(m image.Image, x, y, side float64) float64 {
	dark, all := 0, 0
	for j := y; j < y+side; j += 1.0 / raster.PerMillimetre {
		for i := x; i < x+side; i += 1.0 / raster.PerMillimetre {
			all++
			if at(m, i, j).R < 128 {
				dark++
			}
		}
	}
	return float64(dark) / float64(all)
}

// ink is how dark a square is on average, 0 to 1.
func ink(m image.Image, x, y, side float64) float64 {
	sum, all := 0.0, 0.0
	for j := y; j < y+side; j += 1.0 / raster.PerMillimetre {
		for i := x; i < x+side; i += 1.0 / raster.PerMillimetre {
			all++
			sum += 1 - float64(at(m, i, j).R)/255
		}
	}
	return sum / all
}

// Each hatching covers the share of the ground that its lines and dots are of
// a tile: geometry, less what two directions have in common.
func TestHatchings(t *testing.T) {
	line := drawing.HatchWidth / drawing.Pitch
	for hatch, want := range map[drawing.Hatch]float64{
		drawing.NoHatch: 0, drawing.Level: line, drawing.Vertical: line, drawing.Grid: 1.9 * line,
		drawing.Slash: 1.41 * line, drawing.Backslash: 1.41 * line, drawing.Cross: 2.7 * line,
		drawing.Dots: 3.14 * drawing.DotRadius * drawing.DotRadius / (drawing.Pitch * drawing.Pitch),
	} {
		fill := drawing.Fill{Ground: drawing.Colour{R: 255, G: 255, B: 255}, Hatch: hatch}
		m := drawn(t, drawing.Drawing{Width: 40, Height: 40, Shapes: []drawing.Shape{{Points: square(0, 0, 40), Fill: &fill}}})
		if got := ink(m, 4, 4, 30); got < 0.85*want || got > 1.15*want {
			t.Errorf("hatching %d covers %v, about %v wanted", hatch, got, want)
		}
	}
}

// Text is written where it should stand, upright or level, and on white where
// the ground is dark.
func TestText(t *testing.T) {
	black := drawing.Fill{}
	for _, c := range []struct {
		text  drawing.Text
		x, y  float64 // a square of 6 mm that holds ink
		blank float64 // x of one that does not
	}{
		{drawing.Text{At: drawing.Point{X: 20, Y: 20}, Text: "MMM", Size: 5}, 20, 17, 8},
		{drawing.Text{At: drawing.Point{X: 20, Y: 20}, Text: "MMM", Size: 5, Anchor: drawing.End, Bold: true}, 12, 17, 24},
		{drawing.Text{At: drawing.Point{X: 20, Y: 20}, Text: "MMM", Size: 5, Anchor: drawing.Middle, Upright: true}, 17, 17, 26},
		{drawing.Text{At: drawing.Point{X: 20, Y: 20}, Text: "MMM", Size: 5, Anchor: drawing.Start, Upright: true}, 17, 13, 26},
	} {
		m := drawn(t, drawing.Drawing{Width: 40, Height: 40, Texts: []drawing.Text{c.text}})
		if got := darkness(m, c.x, c.y, 6); got < 0.1 {
			t.Errorf("%+v: only %v is ink", c.text, got)
		}
		if got := darkness(m, c.blank, c.y, 6); got != 0 {
			t.Errorf("%+v: %v is ink beside it", c.text, got)
		}
		c.text.Backed = true
		m = drawn(t, drawing.Drawing{Width: 40, Height: 40, Shapes: []drawing.Shape{{Points: square(0, 0, 40), Fill: &black}}, Texts: []drawing.Text{c.text}})
		if got := darkness(m, c.x, c.y, 6); got > 0.9 {
			t.Errorf("%+v: cannot be read on black", c.text)
		}
	}
}

func TestDashes(t *testing.T) {
	m := drawn(t, drawing.Drawing{Width: 40, Height: 40, Shapes: []drawing.Shape{{Points: []drawing.Point{{X: 2, Y: 20}, {X: 38, Y: 20}}, Stroke: 0.3, Dashed: true}}})
	changes := 0
	for x := 3.0; x < 37; x += 1.0 / raster.PerMillimetre {
		if (at(m, x, 20).R < 128) != (at(m, x+1.0/raster.PerMillimetre, 20).R < 128) {
			changes++
		}
	}
	if changes < 30 {
		t.Errorf("%d ends of dashes", changes)
	}
}

// What lies off the paper, has no points or no length does no harm, and an
// image of more colours than a palette holds is still right.
func TestOddities(t *testing.T) {
	var many []drawing.Shape
	for i := range 400 {
		fill := drawing.Fill{Ground: drawing.Colour{R: uint8(i % 20 * 13), G: uint8(i / 20 * 13), B: 99}}
		many = append(many, drawing.Shape{Points: square(float64(i%20), float64(i/20), 1), Fill: &fill})
	}
	many = append(many, drawing.Shape{}, drawing.Shape{Points: square(100, 100, 5), Fill: &drawing.Fill{}}, drawing.Shape{Points: make([]drawing.Point, 2), Dashed: true})
	m := drawn(t, drawing.Drawing{Width: 20, Height: 20, Shapes: many, Texts: []drawing.Text{{}, {Text: "off", Size: 3, At: drawing.Point{X: 99, Y: -99}}}})
	if got := at(m, 7.5, 3.5); got != (color.RGBA{91, 39, 99, 255}) {
		t.Errorf("the colour is %v", got)
	}
}

func TestSameBytes(t *testing.T) {
	fill := drawing.Fill{Hatch: drawing.Cross, Ground: drawing.Colour{R: 240, G: 230, B: 220}}
	d := drawing.Drawing{Width: 40, Height: 40, Shapes: []drawing.Shape{{Points: square(3, 3, 30), Fill: &fill, Stroke: 0.2}}, Texts: []drawing.Text{{Text: "A", Size: 3, Backed: true, At: drawing.Point{X: 9, Y: 9}}}}
	first, err := raster.PNG(d)
	if err != nil {
		t.Fatal(err)
	}
	for range 5 {
		if again, _ := raster.PNG(d); !bytes.Equal(first, again) {
			t.Fatal("two runs gave different bytes")
		}
	}
}
