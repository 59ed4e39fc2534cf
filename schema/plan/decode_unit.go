package plan

import (
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

func (r *reader) hourglass(n *jsontree.Node) Operation {
	of := n.Get("half_squares")
	h := Hourglass{
		HalfSquares: text(of), Fabrics: two(of),
		Square: r.length("square", n.Get("square"), positive),
		Trim:   r.length("trim", n.Get("trim"), positive), DownTo: r.downTo(n),
	}
	switch {
	case h.HalfSquares.Given() && h.Square.Given():
		r.report(OutOfRange, h.Square.At, "the squares of "+quote(h.HalfSquares.Text)+" are sized where that part is made", "remove \"square\"")
	case of != nil && of.Kind == jsontree.Array && !h.Square.Given() && !h.Trim.Given():
		r.report(Missing, n.Range, "the size of the hourglass units is not given", "add \"square\", \"trim\" or both")
	}
	return h
}

// downTo is the grid that a unit is trimmed down to, which it is in place of a
// size.
func (r *reader) downTo(n *jsontree.Node) Length {
	if m := n.Member("trim_down_to"); m != nil && n.Get("trim") != nil {
		r.report(NotAllowed, m.KeyRange, `there is a "trim", and a grid to trim down to as well`, `remove one of "trim" and "trim_down_to"`)
	}
	return r.length("trim_down_to", n.Get("trim_down_to"), positive)
}

func (r *reader) flyingGeese(n *jsontree.Node) Operation {
	cut := n.Get("cut")
	g := FlyingGeese{
		At: n.Range, Goose: text(n.Get("goose")), Sky: text(n.Get("sky")),
		Finished: r.pair("finished", n.Get("finished")), AtATime: 1,
		KeepBonus: word(n.Get("bonus")) == "kept",
		CutGoose:  r.sides("goose", cut.Get("goose")),
		CutSky:    r.length("sky", cut.Get("sky"), positive),
		Trim:      r.pair("trim", n.Get("trim")), DownTo: r.downTo(n),
	}
	if c := count(n.Get("at_a_time")); c.Given() {
		g.AtATime = c.N
	}
	if g.AtATime == 4 {
		if w, h := g.CutGoose[0], g.CutGoose[1]; w.Length != h.Length {
			r.report(OutOfRange, source.Range{Start: w.At.Start, End: h.At.End}, "four geese at a time are cut from a square, not from a rectangle", "give one length")
		}
		if bonus := n.Get("bonus"); g.KeepBonus {
			r.report(OutOfRange, bonus.Range, "four geese at a time leave no corners to keep", "remove \"bonus\", or make the geese one at a time")
		}
	}
	return g
}

func (r *reader) flipCorners(n *jsontree.Node) Operation {
	f := FlipCorners{Body: text(n.Get("body")), Kind: squareKind(n), KeepBonus: word(n.Get("bonus")) == "kept"}
	corners := n.Get("corners")
	for i, key := range [...]string{"top left", "top right", "bottom right", "bottom left"} {
		if c := corners.Get(key); c != nil {
			f.Corners = append(f.Corners, FlipCorner{i, text(c.Get("fabric")), r.length("square", c.Get("square"), positive)})
		}
	}
	return f
}

func (r *reader) squareInSquare(n *jsontree.Node) Operation {
	cut := n.Get("cut")
	s := SquareInSquare{
		At: n.Range, Centre: text(n.Get("centre")), Corners: text(n.Get("corners")),
		Finished:   r.length("finished", n.Get("finished"), positive),
		Flip:       word(n.Get("method")) == "flip",
		KeepBonus:  word(n.Get("bonus")) == "kept",
		CutCentre:  r.length("centre", cut.Get("centre"), positive),
		CutCorners: r.length("corners", cut.Get("corners"), positive),
		Trim:       r.length("trim", n.Get("trim"), positive), DownTo: r.downTo(n),
	}
	if s.KeepBonus && !s.Flip {
		r.report(OutOfRange, n.Get("bonus").Range, "corners cut as triangles leave nothing to keep", "remove \"bonus\", or flip the corners")
	}
	return s
}
