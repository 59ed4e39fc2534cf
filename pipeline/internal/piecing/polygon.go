package piecing

import "yardproof/schema/measure"

// Point is a place on a drawing: X to the right, Y downwards, in ticks.
type Point struct{ X, Y measure.Surd }

func (p Point) plus(q Point) Point  { return Point{p.X.Add(q.X), p.Y.Add(q.Y)} }
func (p Point) minus(q Point) Point { return Point{p.X.Sub(q.X), p.Y.Sub(q.Y)} }

func (p Point) times(f measure.Surd) Point { return Point{p.X.Mul(f), p.Y.Mul(f)} }

// cross is positive when q lies clockwise of p, as seen.
func (p Point) cross(q Point) measure.Surd { return p.X.Mul(q.Y).Sub(p.Y.Mul(q.X)) }

func (p Point) equal(q Point) bool { return p.X.Equal(q.X) && p.Y.Equal(q.Y) }

// Polygon is the corners of a convex polygon, clockwise as seen, exact.
type Polygon []Point

// Rectangle is the polygon of a box with its top left corner at p.
func Rectangle(p Point, b Box) Polygon {
	right, bottom := p.X.Add(b.Width), p.Y.Add(b.Height)
	return Polygon{p, {right, p.Y}, {right, bottom}, {p.X, bottom}}
}

// Area is half the sum of the corners' cross products, in square ticks.
func (p Polygon) Area() measure.Surd {
	var twice measure.Surd
	for i, here := range p {
		twice = twice.Add(here.cross(p[(i+1)%len(p)]))
	}
	return twice.DivInt(2)
}

// Bounds is the least upright rectangle round the polygon: its top left
// corner and its size.
func (p Polygon) Bounds() (corner Point, size Box) {
	if len(p) == 0 {
		return Point{}, Box{}
	}
	low, high := p[0], p[0]
	for _, q := range p[1:] {
		low = Point{measure.Min(low.X, q.X), measure.Min(low.Y, q.Y)}
		high = Point{measure.Max(high.X, q.X), measure.Max(high.Y, q.Y)}
	}
	return low, Box{high.X.Sub(low.X), high.Y.Sub(low.Y)}
}

// cut keeps what lies to the right of the line from a to b, as one looks
// along it; nil when that is nothing.
func (p Polygon) cut(a, b Point) Polygon {
	var kept Polygon
	along := b.minus(a)
	for i, here := range p {
		next := p[(i+1)%len(p)]
		side, nextSide := along.cross(here.minus(a)), along.cross(next.minus(a))
		if side.Sign() >= 0 {
			kept = append(kept, here)
		}
		if side.Sign()*nextSide.Sign() < 0 {
			kept = append(kept, here.plus(next.minus(here).times(side.Div(side.Sub(nextSide)))))
		}
	}
	if kept.Area().Sign() <= 0 {
		return nil
	}
	return kept
}

// Overlap is what two convex polygons have in common; nil when they touch at
// most.
func (p Polygon) Overlap(q Polygon) Polygon {
	for i, here := range q {
		if p = p.cut(here, q[(i+1)%len(q)]); p == nil {
			return nil
		}
	}
	return p
}

// each is the polygon with every corner moved by f.
func (p Polygon) each(f func(Point) Point) Polygon {
	moved := make(Polygon, len(p))
	for i, q := range p {
		moved[i] = f(q)
	}
	return moved
}

// mirrored is each for an f that mirrors, which turns the order of corners
// about.
func (p Polygon) mirrored(f func(Point) Point) Polygon {
	n := len(p)
	moved := make(Polygon, n)
	for i, q := range p {
		moved[n-1-i] = f(q)
	}
	return moved
}

// Inset is the polygon with s taken off along every edge: the finished shape
// of a cut one. ok is false when an edge runs in another direction than
// multiples of 30 or 45 degrees, and when nothing is left. Derived from
// geometry.
func (p Polygon) Inset(s measure.Length) (inner Polygon, ok bool) {
	inner = p
	for i, a := range p {
		b := p[(i+1)%len(p)]
		along := b.minus(a)
		length, ok := edgeLength(along)
		if !ok {
			return nil, false
		}
		inward := Point{along.Y.Neg(), along.X}.times(s.Surd().Div(length))
		if inner = inner.cut(a.plus(inward), b.plus(inward)); inner == nil {
			return nil, false
		}
	}
	return inner.simple(), true
}

// simple is the polygon without corners that repeat or lie on an edge.
func (p Polygon) simple() Polygon {
	var apart, corners Polygon
	for i, here := range p {
		if !here.equal(p[(i+1)%len(p)]) {
			apart = append(apart, here)
		}
	}
	for i, here := range apart {
		before, after := apart[(i+len(apart)-1)%len(apart)], apart[(i+1)%len(apart)]
		if !here.minus(before).cross(after.minus(here)).IsZero() {
			corners = append(corners, here)
		}
	}
	return corners
}

// edgeLength is the length of an edge in a direction of the trade: upright or
// level, at 45 degrees, or at 30 or 60.
func edgeLength(d Point) (measure.Surd, bool) {
	x, y := absolute(d.X), absolute(d.Y)
	root3 := measure.Root3()
	switch {
	case x.IsZero() && y.IsZero():
		return x, false
	case x.IsZero() || y.IsZero():
		return x.Add(y), true
	case x.Equal(y):
		return x.Mul(measure.Root2()), true
	case y.Equal(x.Mul(root3)):
		return x.MulInt(2), true
	case x.Equal(y.Mul(root3)):
		return y.MulInt(2), true
	}
	return x, false
}

func absolute(x measure.Surd) measure.Surd { return measure.Max(x, x.Neg()) }
