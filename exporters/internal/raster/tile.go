package raster

import (
	"image/color"
	"math"

	"yardproof/exporters/internal/drawing"
)

// side is how many pixels a hatching repeats after.
const side = int(drawing.Pitch * PerMillimetre)

// tile is one repeat of a hatching.
type tile [side][side]color.RGBA

func (t *tile) at(x, y int) color.RGBA { return t[y%side][x%side] }

func (c *canvas) tile(f drawing.Fill) *tile {
	t, known := c.tiles[f]
	if !known {
		t = new(newTile(f))
		c.tiles[f] = t
	}
	return t
}

func newTile(f drawing.Fill) tile {
	var t tile
	for y := range t {
		for x := range t[y] {
			p := drawing.Point{X: (float64(x) + 0.5) / PerMillimetre, Y: (float64(y) + 0.5) / PerMillimetre}
			t[y][x] = mixed(f.Ground, f.Ink, covered(f.Hatch, p))
		}
	}
	return t
}

// covered is how much of a pixel about p the hatching covers, 0 to 1.
func covered(h drawing.Hatch, p drawing.Point) float64 {
	away := math.Inf(1) // from the nearest line's edge
	if h == drawing.Dots {
		away = math.Hypot(p.X-drawing.Pitch/2, p.Y-drawing.Pitch/2) - drawing.DotRadius
	}
	for _, l := range h.Lines() {
		dx, dy := l[1].X-l[0].X, l[1].Y-l[0].Y
		off := math.Abs(dx*(p.Y-l[0].Y)-dy*(p.X-l[0].X)) / math.Hypot(dx, dy)
		away = min(away, off-drawing.HatchWidth/2)
	}
	return min(1, max(0, 0.5-away*PerMillimetre))
}

func mixed(ground, ink drawing.Colour, share float64) color.RGBA {
	mix := func(a, b uint8) uint8 { return uint8(math.Round(float64(a)*(1-share) + float64(b)*share)) }
	return color.RGBA{mix(ground.R, ink.R), mix(ground.G, ink.G), mix(ground.B, ink.B), 255}
}
