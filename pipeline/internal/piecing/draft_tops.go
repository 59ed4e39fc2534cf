package piecing

import "yardproof/schema/measure"

// Place is where a part of a top belongs, finished.
type Place struct {
	Kind    PlaceKind
	Outline Polygon
}

// PlaceKind says what belongs in a place.
type PlaceKind int

// What tops are made of.
const (
	BlockPlace PlaceKind = iota
	AlternatePlace
	SideTriangle
	CornerTriangle
	SashPlace
	CornerstonePlace
	BorderPlace
)

// Places is every block and setting triangle of the finished top, tight: the
// full rows from the top, each followed by the alternates below it, then the
// triangles, and the cornerstones and sashes between them.
func (o OnPoint) Places() []Place {
	var blocks, rest []Place
	// Lattice points (i, j) half a diagonal apart: a block stands on those
	// with both odd, an alternate on those with both even inside the top. On
	// the edge it is half a block and on the corner a quarter. Cornerstones
	// stand on the points between, and sashes between two points.
	right, bottom := 2*o.Columns, 2*o.Rows
	for j := range bottom + 1 {
		for i := range right + 1 {
			switch kind := o.kind(i, j); {
			case kind == BlockPlace || kind == AlternatePlace:
				blocks = append(blocks, Place{kind, o.diamond(o.Block, i, j)})
			case kind == CornerstonePlace && o.Sash == 0:
			case kind == CornerstonePlace:
				rest = append(rest, Place{kind, o.diamond(o.Sash.Surd(), i, j)})
			default:
				rest = append(rest, Place{kind, o.diamond(o.Block, i, j)})
			}
		}
	}
	return append(append(blocks, rest...), o.sashes()...)
}

// sashes is the four sashes round every block of the full rows.
func (o OnPoint) sashes() []Place {
	if o.Sash == 0 {
		return nil
	}
	along, across := o.Block.Div(measure.Root2()).DivInt(2), o.Sash.Surd().Div(measure.Root2()).DivInt(2)
	half := o.Pitch().Div(measure.Root2())
	var list []Place
	for j := int64(1); j < 2*o.Rows; j += 2 {
		for i := int64(1); i < 2*o.Columns; i += 2 {
			for _, d := range [][2]int64{{1, -1}, {1, 1}, {-1, 1}, {-1, -1}} {
				middle := Point{half.MulInt(2*i + d[0]).DivInt(2), half.MulInt(2*j + d[1]).DivInt(2)}
				// Outwards from the block, and along its side clockwise.
				out := Point{across.MulInt(d[0]), across.MulInt(d[1])}
				side := Point{along.MulInt(-d[1]), along.MulInt(d[0])}
				list = append(list, Place{SashPlace, Polygon{
					middle.plus(out).minus(side), middle.plus(out).plus(side), middle.minus(out).plus(side), middle.minus(out).minus(side),
				}})
			}
		}
	}
	return list
}

func (o OnPoint) kind(i, j int64) PlaceKind {
	edges := 0
	for _, on := range []bool{i == 0, j == 0, i == 2*o.Columns, j == 2*o.Rows} {
		if on {
			edges++
		}
	}
	switch {
	case (i+j)%2 != 0:
		return CornerstonePlace
	case edges == 2:
		return CornerTriangle
	case edges == 1:
		return SideTriangle
	case i%2 == 0:
		return AlternatePlace
	}
	return BlockPlace
}

// onEdge reports whether a lattice point lies on the top's edge.
func (o OnPoint) onEdge(i, j int64) bool {
	return i == 0 || j == 0 || i == 2*o.Columns || j == 2*o.Rows
}

// diamond is a square of a side about lattice point (i, j), as far as it lies
// in the top.
func (o OnPoint) diamond(side measure.Surd, i, j int64) Polygon {
	apart, half := o.Pitch().Div(measure.Root2()), side.Div(measure.Root2())
	middle := Point{apart.MulInt(i), apart.MulInt(j)}
	var p Polygon
	for _, d := range []Point{{Y: half.Neg()}, {X: half}, {Y: half}, {X: half.Neg()}} {
		p = append(p, middle.plus(d))
	}
	if o.onEdge(i, j) {
		return p.Overlap(Rectangle(Point{}, o.Finished())).simple()
	}
	return p
}

// Places is every block, sash and cornerstone of the finished top, row by
// row.
func (g Sashing) Places() []Place {
	columns, rows := 2*g.Columns-1, 2*g.Rows-1
	first := int64(0) // a block stands in row and column first, first+2, ...
	if g.Outer {
		columns, rows, first = columns+2, rows+2, 1
	}
	var list []Place
	corner := Point{}
	for j := range rows {
		corner.X = measure.Surd{}
		var b Box
		for i := range columns {
			var kind PlaceKind
			kind, b = g.cell(i%2 == first, j%2 == first)
			list = append(list, Place{kind, Rectangle(corner, b)})
			corner.X = corner.X.Add(b.Width)
		}
		corner.Y = corner.Y.Add(b.Height)
	}
	return list
}

// cell is what stands in a column and a row of blocks, or of sashes.
func (g Sashing) cell(blockColumn, blockRow bool) (PlaceKind, Box) {
	t := g.Width.Surd()
	switch {
	case blockColumn && blockRow:
		return BlockPlace, g.Block
	case blockColumn:
		return SashPlace, Box{g.Block.Width, t}
	case blockRow:
		return SashPlace, Box{t, g.Block.Height}
	}
	return CornerstonePlace, Box{t, t}
}

// Corners is how the corners of a border are sewn.
type Corners int

// The kinds of corners.
const (
	SidesFirst Corners = iota // butted, the sides sewn on before the ends
	EndsFirst
	SquareCorners
	MitredCorners
)

// BorderPlaces is the strips (top, right, bottom, left) and the corner
// squares of a border of finished width g round a finished inner quilt that
// lies at (g, g).
func BorderPlaces(inner Box, width measure.Length, c Corners) []Place {
	g := width.Surd()
	outer := Box{inner.Width.Add(g.MulInt(2)), inner.Height.Add(g.MulInt(2))}
	if c == MitredCorners {
		return mitres(outer, g)
	}
	end, side := Box{inner.Width, g}, Box{g, inner.Height}
	left, top := g, g // where the ends and the sides begin
	switch c {
	case SidesFirst:
		end.Width, left = outer.Width, measure.Surd{}
	case EndsFirst:
		side.Height, top = outer.Height, measure.Surd{}
	}
	right, bottom := outer.Width.Sub(g), outer.Height.Sub(g)
	list := borders(Rectangle(Point{X: left}, end), Rectangle(Point{right, top}, side),
		Rectangle(Point{left, bottom}, end), Rectangle(Point{Y: top}, side))
	if c == SquareCorners {
		for _, p := range []Point{{}, {X: right}, {right, bottom}, {Y: bottom}} {
			list = append(list, Place{CornerstonePlace, Rectangle(p, square(g))})
		}
	}
	return list
}

// borders is strips in the order top, right, bottom, left.
func borders(strips ...Polygon) []Place {
	var list []Place
	for _, p := range strips {
		list = append(list, Place{BorderPlace, p})
	}
	return list
}

func mitres(outer Box, g measure.Surd) []Place {
	out := Rectangle(Point{}, outer)
	in := Rectangle(Point{g, g}, Box{outer.Width.Sub(g.MulInt(2)), outer.Height.Sub(g.MulInt(2))})
	var strips []Polygon
	for i := range out {
		next := (i + 1) % len(out)
		strips = append(strips, Polygon{out[i], out[next], in[next], in[i]})
	}
	return borders(strips...)
}
