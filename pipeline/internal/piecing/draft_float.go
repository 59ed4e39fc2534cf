package piecing

import "yardproof/schema/measure"

// Around is the places of a top whose edges lie so far outside the tight ones:
// the float of the points, the outer seam allowance, or both. Setting
// triangles and outer cornerstones reach out to the edges, divided where the seams between the rows
// of blocks, sewn from lower left to upper right, run on. The corner of the
// larger top is the origin. Derived from geometry.
func (o OnPoint) Around(edge measure.Surd) []Place {
	tight := o.Finished()
	var out []Place
	for _, p := range o.Places() {
		if p.Kind == SideTriangle || p.Kind == CornerTriangle || p.Kind == CornerstonePlace && onSides(p.Outline, tight) {
			p.Outline = reach(p.Outline, tight, edge)
		}
		p.Outline = p.Outline.each(Point{edge, edge}.plus)
		out = append(out, p)
	}
	return out
}

// onSides reports whether an edge of p lies on the sides of a box.
func onSides(p Polygon, b Box) bool {
	n := 0
	for _, q := range p {
		if sidesAt(q, b) > 0 {
			n++
		}
	}
	return n > 1
}

// reach is a triangle on the edge of a tight top as it reaches out to an edge.
func reach(p Polygon, tight Box, edge measure.Surd) Polygon {
	// The corner of a corner triangle, or of a side triangle the one inside.
	special := 0
	for i, q := range p {
		if n := sidesAt(q, tight); n == 2 || n == 0 {
			special = i
		}
	}
	at := func(k int) Point { return p[(special+k)%len(p)] }
	out := func(q Point) Point { return outward(q, tight, edge) }
	first, last := at(1), at(2)
	if sidesAt(at(0), tight) == 2 {
		first, last = last, first
		return Polygon{first, out(first), out(at(0)), out(last), last}.simple()
	}
	return Polygon{at(0), first, out(first), out(last), last}.simple()
}

// sidesAt is how many sides of a box a point lies on.
func sidesAt(p Point, b Box) int {
	n := 0
	for _, on := range []bool{p.X.IsZero(), p.Y.IsZero(), p.X.Equal(b.Width), p.Y.Equal(b.Height)} {
		if on {
			n++
		}
	}
	return n
}

// outward moves a point of a side along a line from lower left to upper right
// until it lies on the edge outside, and a corner into the edges' corner.
func outward(p Point, b Box, edge measure.Surd) Point {
	var d Point
	corner := sidesAt(p, b) == 2
	if p.Y.IsZero() {
		d = d.plus(Point{edge, edge.Neg()})
	}
	if p.X.Equal(b.Width) {
		d = d.plus(Point{edge, edge.Neg()})
	}
	if p.Y.Equal(b.Height) {
		d = d.plus(Point{edge.Neg(), edge})
	}
	if p.X.IsZero() {
		d = d.plus(Point{edge.Neg(), edge})
	}
	if !corner {
		return p.plus(d)
	}
	d = Point{edge, edge}
	if p.X.IsZero() {
		d.X = edge.Neg()
	}
	if p.Y.IsZero() {
		d.Y = edge.Neg()
	}
	return p.plus(d)
}
