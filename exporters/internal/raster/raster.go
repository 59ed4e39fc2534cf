package raster

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"

	"golang.org/x/image/vector"

	"yardproof/exporters/internal/drawing"
)

// PerMillimetre is how many pixels there are to a millimetre: about 150 to the
// inch, and a whole number of them to a hatching's pitch.
const PerMillimetre = 6

// PNG draws a drawing.
func PNG(d drawing.Drawing) ([]byte, error) {
	c, err := newCanvas(d)
	if err != nil {
		return nil, err
	}
	for _, s := range d.Shapes {
		c.shape(s)
	}
	for _, t := range d.Texts {
		c.text(t)
	}
	var b bytes.Buffer
	encoder := png.Encoder{CompressionLevel: png.BestSpeed}
	if err := encoder.Encode(&b, fewColours(c.image)); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// canvas is an image being drawn.
type canvas struct {
	image *image.RGBA
	pen   vector.Rasterizer
	mask  image.Alpha
	tiles map[drawing.Fill]*tile
	faces faces
	lines map[drawing.Text]line
}

func newCanvas(d drawing.Drawing) (*canvas, error) {
	f, err := newFaces()
	if err != nil {
		return nil, err
	}
	size := image.Rect(0, 0, pixels(d.Width), pixels(d.Height))
	c := &canvas{image: image.NewRGBA(size), tiles: map[drawing.Fill]*tile{}, faces: f, lines: map[drawing.Text]line{}}
	draw.Draw(c.image, size, image.White, image.Point{}, draw.Src)
	return c, nil
}

func pixels(millimetres float64) int { return int(math.Ceil(millimetres * PerMillimetre)) }

func (c *canvas) shape(s drawing.Shape) {
	if s.Fill != nil {
		c.fill(s.Points, c.tile(*s.Fill).at)
	}
	ink := color.RGBA{A: 255}
	if s.Grey {
		ink = color.RGBA{128, 128, 128, 255}
	}
	n := len(s.Points)
	if n == 2 {
		n = 1 // a line goes but one way
	}
	for i := range n {
		for _, stroke := range dashes(s.Points[i], s.Points[(i+1)%len(s.Points)], s.Dashed) {
			c.fill(thick(stroke[0], stroke[1], s.Stroke), func(int, int) color.RGBA { return ink })
		}
	}
}

// dashes are the parts of a line that are drawn.
func dashes(a, b drawing.Point, dashed bool) [][2]drawing.Point {
	if !dashed {
		return [][2]drawing.Point{{a, b}}
	}
	const on, period = 1.0, 1.7 // millimetres
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	at := func(l float64) drawing.Point {
		return drawing.Point{X: a.X + (b.X-a.X)*l/long, Y: a.Y + (b.Y-a.Y)*l/long}
	}
	var all [][2]drawing.Point
	for l := 0.0; l < long; l += period {
		all = append(all, [2]drawing.Point{at(l), at(min(long, l+on))})
	}
	return all
}

// leastStroke keeps thin lines from fading, in millimetres.
const leastStroke = 1.0 / PerMillimetre

// thick is a line as a polygon, with ends as long as it is wide.
func thick(a, b drawing.Point, width float64) []drawing.Point {
	half := max(width, leastStroke) / 2
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	if long == 0 {
		return nil
	}
	dx, dy := (b.X-a.X)*half/long, (b.Y-a.Y)*half/long
	a, b = drawing.Point{X: a.X - dx, Y: a.Y - dy}, drawing.Point{X: b.X + dx, Y: b.Y + dy}
	return []drawing.Point{{X: a.X - dy, Y: a.Y + dx}, {X: a.X + dy, Y: a.Y - dx}, {X: b.X + dy, Y: b.Y - dx}, {X: b.X - dy, Y: b.Y + dx}}
}

// fill paints a polygon with a colour that depends on the pixel.
func (c *canvas) fill(points []drawing.Point, at func(x, y int) color.RGBA) {
	if len(points) < 3 {
		return
	}
	box := bounds(points).Intersect(c.image.Rect)
	if box.Empty() {
		return
	}
	c.pen.Reset(box.Dx(), box.Dy())
	for i, p := range points {
		x, y := float32(p.X*PerMillimetre-float64(box.Min.X)), float32(p.Y*PerMillimetre-float64(box.Min.Y))
		if i == 0 {
			c.pen.MoveTo(x, y)
		} else {
			c.pen.LineTo(x, y)
		}
	}
	c.pen.ClosePath()
	c.paint(box, at)
}

func bounds(points []drawing.Point) image.Rectangle {
	low, high := points[0], points[0]
	for _, p := range points[1:] {
		low = drawing.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
		high = drawing.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	return image.Rect(int(math.Floor(low.X*PerMillimetre)), int(math.Floor(low.Y*PerMillimetre)), pixels(high.X), pixels(high.Y))
}

// paint puts what the pen drew on the image.
func (c *canvas) paint(box image.Rectangle, at func(x, y int) color.RGBA) {
	n := box.Dx() * box.Dy()
	if cap(c.mask.Pix) < n {
		c.mask.Pix = make([]uint8, n)
	}
	c.mask.Pix, c.mask.Stride = c.mask.Pix[:n], box.Dx()
	c.mask.Rect = image.Rect(0, 0, box.Dx(), box.Dy())
	c.pen.DrawOp = draw.Src
	c.pen.Draw(&c.mask, c.mask.Rect, image.Opaque, image.Point{})
	for y := range box.Dy() {
		for x, cover := range c.mask.Pix[y*c.mask.Stride : (y+1)*c.mask.Stride] {
			if cover > 0 {
				c.blend(box.Min.X+x, box.Min.Y+y, at(box.Min.X+x, box.Min.Y+y), cover)
			}
		}
	}
}

// blend lets so much of a colour, of 255, cover a pixel.
func (c *canvas) blend(x, y int, ink color.RGBA, cover uint8) {
	p := c.image.Pix[c.image.PixOffset(x, y):]
	if cover == 255 {
		p[0], p[1], p[2] = ink.R, ink.G, ink.B
		return
	}
	mix := func(under, over uint8) uint8 {
		return uint8((int(under)*(255-int(cover)) + int(over)*int(cover) + 127) / 255)
	}
	p[0], p[1], p[2] = mix(p[0], ink.R), mix(p[1], ink.G), mix(p[2], ink.B)
}
