package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Least is a length of fabric, before shrinkage, that no way of cutting goes
// below, and why: the area of all that must be cut from it, spread over the
// usable width, or one piece that is longer than that.
type Least struct {
	Length measure.Length // rounded up to a tick
	Area   measure.Surd   // in square ticks
	Piece  plan.Text      // that is longer; empty where the area is more
	net    measure.Length // after shrinkage
}

// bare is what no way of cutting a fabric can do without. Of a piece whose
// outline is not known nothing is.
type bare struct {
	area   measure.Surd // in square ticks
	pieces []barePiece
}

// barePiece is a piece that may lie in either of two ways.
type barePiece struct {
	of            plan.Text
	across, along measure.Length
}

// least is the bound on yardage.
func (f *Fabric) least() Least {
	l := Least{Area: f.bare.area}
	if f.Width <= 0 {
		return l
	}
	net := l.Area.Div(f.Width.Surd()).CeilTo(measure.Tick)
	for _, p := range f.bare.pieces {
		if long := p.leastAlong(f.Width); long > net {
			net, l.Piece = long, p.of
		}
	}
	l.net, l.Length = net, unshrunk(net, f.ShrinkLength)
	return l
}

// leastAlong is the least length of cloth that the piece takes in either way,
// 0 where the cloth is too narrow for both.
func (p barePiece) leastAlong(width measure.Length) measure.Length {
	short, long := min(p.across, p.along), max(p.across, p.along)
	switch {
	case long <= width:
		return short
	case short <= width:
		return long
	}
	return 0
}

// LeastPieces is a number of precut pieces that no way of cutting can do
// without, by area alone.
func (f *Fabric) LeastPieces() int64 {
	one := measure.Area(f.StripLength().Surd(), f.StripWidth().Surd())
	if one.Sign() <= 0 {
		return 0
	}
	return measure.CeilDiv(f.bare.area, one)
}

// mustCover remembers an area that may be cut in any shape, and pieced.
func (f *Fabric) mustCover(area measure.Surd) { f.bare.area = f.bare.area.Add(area) }

// mustHold remembers rectangles that lie straight on the fabric. They may be
// turned: the bound is to hold for every way.
func (f *Fabric) mustHold(by plan.Text, across, along measure.Length, count int64) {
	if across <= 0 || along <= 0 || count <= 0 {
		return
	}
	f.mustCover(measure.Area(across.Surd(), along.Surd()).MulInt(count))
	f.bare.pieces = append(f.bare.pieces, barePiece{by, across, along})
}

// mustHoldTriangles remembers triangles from squares of a side that are cut
// once or twice: whether whole squares are cut or single triangles, each is a
// half or a quarter of one. Laid in any way a triangle is nowhere narrower than
// its least height: 1/sqrt2 of the side when cut once, half of it when cut
// twice. Derived from geometry.
func (f *Fabric) mustHoldTriangles(by plan.Text, side measure.Length, count int64, h plan.Halving) {
	if side <= 0 || count <= 0 {
		return
	}
	f.mustCover(measure.Area(side.Surd(), side.Surd()).MulInt(count).DivInt(h.Triangles()))
	height := side.Surd().Div(measure.Root2())
	if h == plan.CutTwice {
		height = side.Surd().DivInt(2)
	}
	least := height.FloorTo(measure.Tick)
	f.bare.pieces = append(f.bare.pieces, barePiece{by, least, least})
}

// need asks for rectangles.
func (f *Fabric) need(by plan.Text, across, along measure.Length, count int64) {
	f.ask(Need{For: by, Across: across, Along: along, Count: count})
	f.mustHold(by, across, along, count)
}

// needTriangles asks for the squares that so many triangles are cut from.
func (f *Fabric) needTriangles(by plan.Text, side measure.Length, count int64, h plan.Halving) {
	f.ask(Need{For: by, Across: side, Along: side, Count: piecing.Batches(count, h.Triangles()), Halving: h})
	f.mustHoldTriangles(by, side, count, h)
}

// needCut asks for rectangles or, where the plan halves squares, for those that
// so many triangles are cut from.
func (f *Fabric) needCut(by plan.Text, across, along measure.Length, count int64, h plan.Halving) {
	if h == plan.Whole {
		f.need(by, across, along, count)
		return
	}
	f.needTriangles(by, across, count, h)
}

// needWithin asks for rectangles that what is wanted is cut from, though it
// might be cut from cloth of another shape: of each no more than an area is
// known.
func (f *Fabric) needWithin(n Need, each measure.Surd) {
	n.Free, n.Within = true, &each
	f.ask(n)
	f.mustCut(n)
}

// each is how many pieces are used of one that is cut: 1, or triangles.
func (n Need) each() int64 {
	if n.Used > 0 {
		return n.Used
	}
	return n.Halving.Triangles()
}

// mustCut remembers what no way of cutting a need can do without.
func (f *Fabric) mustCut(n Need) {
	switch {
	case n.Within != nil:
		f.mustCover(n.Within.MulInt(n.Count))
	case n.Halving != plan.Whole:
		f.mustHoldTriangles(n.For, n.Across, n.Count*n.each(), n.Halving)
	default:
		f.mustHold(n.For, n.Across, n.Along, n.Count)
	}
}
