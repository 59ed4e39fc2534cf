package drawing

import (
	"math"

	"yardproof/pipeline/report"
)

// Widths of lines in millimetres.
const (
	patchLine   = 0.18
	outlineLine = 0.35
)

// canvas is a panel on its way to the paper.
type canvas struct {
	*Drawing
	origin Point
	scale  float64
}

func (d *Drawing) panel(p *report.Panel, keys []report.Key, scale float64, origin Point, b box) {
	c := canvas{d, origin, scale}
	for _, s := range p.Shapes {
		c.shape(s, keys)
	}
	c.dimensions(p, b)
	y := origin.Y + b.inner.Height + b.bottom - float64(len(b.caption))*captionSize*lineHeight
	for i, text := range b.caption {
		at := Point{origin.X, y + (float64(i)+0.7)*captionSize*lineHeight}
		d.text(at, Start, captionSize, text).Bold = i == 0
	}
}

func (c canvas) point(x, y float64) Point {
	return Point{c.origin.X + x*c.scale, c.origin.Y + y*c.scale}
}

func (c canvas) shape(s report.Shape, keys []report.Key) {
	shape := Shape{Stroke: patchLine}
	for _, p := range s.Points {
		shape.Points = append(shape.Points, c.point(p.X, p.Y))
	}
	switch s.Kind {
	case report.Patch:
		fill := fillOf(keys[s.Key])
		shape.Fill = &fill
	case report.LeftOver:
		shape.Fill, shape.Grey = &Fill{Ground: leftOver()}, true
	case report.Outline:
		shape.Stroke = outlineLine
	case report.Seam:
		shape.Dashed = true
	}
	c.Shapes = append(c.Shapes, shape)
	c.label(shape, s.Labels)
}

// label writes the first of several labels that fits into a shape at a size
// that can be read, or turned upright.
func (c canvas) label(s Shape, labels []string) {
	if len(s.Points) == 0 {
		return
	}
	middle := centroid(s.Points)
	for _, label := range labels {
		label = neutral(label)
		for _, size := range [...]float64{3, 2.6, 2.2, leastSize} {
			w, h := width(label, size)+0.5*size, 1.1*size
			upright := false
			if !holds(s.Points, middle, w, h) {
				if upright = holds(s.Points, middle, h, w); !upright {
					continue
				}
			}
			t := c.text(middle, Middle, size, label)
			t.Upright, t.Backed = upright, s.Fill != nil && !s.Fill.plain()
			return
		}
	}
}

// centroid is the middle of a convex polygon's area.
func centroid(p []Point) Point {
	var area, x, y float64
	for i, a := range p {
		b := p[(i+1)%len(p)]
		cross := a.X*b.Y - b.X*a.Y
		area += cross
		x += (a.X + b.X) * cross
		y += (a.Y + b.Y) * cross
	}
	if math.Abs(area) < 1e-9 {
		return p[0]
	}
	return Point{x / (3 * area), y / (3 * area)}
}

// holds reports whether a box about a point lies inside a convex polygon, whose
// corners run clockwise.
func holds(p []Point, middle Point, w, h float64) bool {
	for i, a := range p {
		b := p[(i+1)%len(p)]
		for _, corner := range [...]Point{{-w / 2, -h / 2}, {w / 2, -h / 2}, {w / 2, h / 2}, {-w / 2, h / 2}} {
			x, y := middle.X+corner.X, middle.Y+corner.Y
			if (b.X-a.X)*(y-a.Y)-(b.Y-a.Y)*(x-a.X) < 0 {
				return false
			}
		}
	}
	return true
}
