package plan

import (
	"fmt"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

func (r *reader) parts(n *jsontree.Node, seam Seam) []Part {
	var parts []Part
	for _, m := range members(n) {
		v := m.Value
		op, at := r.operation(v, seam)
		parts = append(parts, Part{
			Name: Text{m.Key, m.KeyRange}, At: v.Range,
			Operation: op, OperationAt: at,
			Seam:  r.ownSeam(v.Get("seam"), seam),
			Press: text(v.Get("press")), Note: text(v.Get("note")),
		})
	}
	return parts
}

// operation is the one that the part has, and where. Only a tree that does not follow
// the schema has none, and then it counts as one that is not derived.
func (r *reader) operation(part *jsontree.Node, seam Seam) (op Operation, at source.Range) {
	for _, m := range members(part) {
		switch m.Key {
		case "seam", "press", "note":
		default:
			return r.operationNamed(m, seam), m.Value.Range
		}
	}
	return NotDerived{}, source.Range{}
}

// decoders reads each operation by the key that a part has it under. Nothing
// writes to it.
var decoders = map[string]func(r *reader, n *jsontree.Node, seam Seam) Operation{
	"cut":              alone((*reader).cut),
	"strip":            alone((*reader).wholeStrip),
	"strip_set":        alone((*reader).stripSet),
	"tube":             alone((*reader).tube),
	"half_squares":     alone((*reader).halfSquares),
	"triangle_square":  alone((*reader).triangleSquare),
	"hourglass":        alone((*reader).hourglass),
	"three_patch":      alone((*reader).threePatch),
	"flying_geese":     alone((*reader).flyingGeese),
	"flip_corners":     alone((*reader).flipCorners),
	"square_in_square": alone((*reader).squareInSquare),
	"logs":             alone((*reader).logs),
	"shape":            alone((*reader).shape),
	"template":         alone((*reader).template),
	"mosaic":           alone((*reader).mosaic),
	"rows":             alone((*reader).rows),
	"trim":             alone((*reader).trim),
	"bordered":         (*reader).bordered,
	"sashed":           alone((*reader).sashed),
	"on_point":         alone((*reader).partOnPoint),
	"recut":            alone((*reader).recut),
	"loop":             alone((*reader).loop),
	"chain":            alone((*reader).chain),
}

// alone is a decoder that does not ask for the part's seam.
func alone[T Operation](read func(*reader, *jsontree.Node) T) func(*reader, *jsontree.Node, Seam) Operation {
	return func(r *reader, n *jsontree.Node, _ Seam) Operation { return read(r, n) }
}

func (r *reader) operationNamed(m jsontree.Member, seam Seam) Operation {
	if read, ok := decoders[m.Key]; ok {
		return read(r, m.Value, seam)
	}
	r.later(m.KeyRange, quote(m.Key)+" is", "make the part with another operation")
	return NotDerived{Name: Text{m.Key, m.KeyRange}}
}

func (r *reader) wholeStrip(n *jsontree.Node) Operation {
	return WholeStrip{Fabric: text(n.Get("fabric")), Width: r.length("width", n.Get("width"), positive)}
}

func (r *reader) rows(n *jsontree.Node) Operation { return Rows{Rows: r.cells(n)} }

func (r *reader) bordered(n *jsontree.Node, seam Seam) Operation {
	return Bordered{Part: text(n.Get("part")), Kind: squareKind(n), Borders: r.borders(n.Get("borders"), seam)}
}

func (r *reader) sashed(n *jsontree.Node) Operation {
	r.sashedStraight(n.Get("sashing"))
	return Setting{Grid: r.blocks(n.Get("grid")), Sashing: r.sashing(n.Get("sashing"))}
}

func (r *reader) cut(n *jsontree.Node) Operation {
	c := Cut{Fabric: text(n.Get("fabric"))}
	side := r.sides("square", n.Get("square"))
	if size := n.Get("size"); size != nil {
		side = r.pair("size", size)
	}
	c.Width, c.Height = side[0], side[1]
	c.Halving = pick(word(n.Get("halved")), Whole, CutOnce, CutTwice)
	c.Alike = count(n.Get("alike"))
	c.Used = count(n.Get("used"))
	if gives := c.Halving.Triangles(); c.Halving != Whole && int64(c.Used.N) > gives {
		r.report(OutOfRange, c.Used.At, fmt.Sprintf("a square cut %s diagonally gives %d triangles, and %d are to be used", c.Halving, gives, c.Used.N), fmt.Sprintf("write %d at most", gives))
	}
	return c
}

func (r *reader) stripSet(n *jsontree.Node) Operation {
	s := StripSet{Of: text(n.Get("set"))}
	for _, item := range items(n.Get("strips")) {
		strip := Strip{Fabric: text(item)}
		if item.Kind == jsontree.Object {
			strip = Strip{Fabric: text(item.Get("fabric")), Width: r.length("width", item.Get("width"), positive)}
		}
		s.Strips = append(s.Strips, strip)
	}
	s.Segment = r.length("segment", n.Get("segment"), positive)
	s.Angle = count(n.Get("angle"))
	if s.Of.Given() && !s.Segment.Given() {
		r.report(Missing, n.Range, "segments are cut from the set "+quote(s.Of.Text)+", and their width is not given", "add \"segment\"")
	}
	if s.Angle.Given() && !s.Segment.Given() {
		r.report(Missing, n.Range, "segments are cut at an angle, and their width is not given", "add \"segment\"")
	}
	return s
}

func (r *reader) triangleSquare(n *jsontree.Node) Operation {
	t := TriangleSquare{Trim: r.length("trim", n.Get("trim"), positive), DownTo: r.downTo(n)}
	of := n.Get("of")
	for _, name := range items(of) {
		t.Of = append(t.Of, text(name))
	}
	if len(t.Of) == 3 {
		r.report(OutOfRange, of.Range, "three triangles do not make a square; two cut once diagonally or four cut twice diagonally do", "name two parts or four")
	}
	return t
}

func (r *reader) tube(n *jsontree.Node) Operation {
	t := Tube{At: n.Range, Sets: two(n.Get("sets")), Joined: count(n.Get("joined"))}
	if tip := n.Get("tip"); tip != nil {
		t.TipAt = tip.Range
		t.Tip = Tip{RawEdge: word(tip) == "raw edge", Beyond: r.length("beyond", tip.Get("beyond"), orNothing)}
	}
	if ends := n.Get("ends"); ends != nil {
		t.EndsAt, t.Ends = ends.Range, pick(word(ends), CornersOnly, EarsKept)
	}
	t.EndForEnd = word(n.Get("lay")) == "end for end"
	t.Trim, t.DownTo = r.length("trim", n.Get("trim"), positive), r.downTo(n)
	return t
}

func (r *reader) halfSquares(n *jsontree.Node) Operation {
	h := HalfSquares{
		Fabrics: two(n.Get("fabrics")),
		Square:  r.length("square", n.Get("square"), positive),
		Trim:    r.length("trim", n.Get("trim"), positive), DownTo: r.downTo(n),
		AtATime: 2,
	}
	if c := count(n.Get("at_a_time")); c.Given() {
		h.AtATime = c.N
	}
	return h
}

func (r *reader) trim(n *jsontree.Node) Operation {
	side := r.sides("square", n.Get("square"))
	if to := n.Get("to"); to != nil {
		side = r.pair("to", to)
	}
	return Trim{Part: text(n.Get("part")), Kind: squareKind(n), Width: side[0], Height: side[1],
		DownTo: r.length("down_to", n.Get("down_to"), positive)}
}

func two(n *jsontree.Node) [2]Text {
	var pair [2]Text
	for i, item := range items(n) {
		if i < 2 {
			pair[i] = text(item)
		}
	}
	return pair
}

func (r *reader) cells(n *jsontree.Node) [][]Cell {
	var rows [][]Cell
	for _, line := range items(n) {
		var row []Cell
		for _, item := range items(line) {
			row = append(row, r.cell(item))
		}
		rows = append(rows, row)
	}
	return rows
}

func (r *reader) cell(n *jsontree.Node) Cell {
	c := Cell{Part: text(n), At: n.Range}
	if n.Kind != jsontree.Object {
		return c
	}
	c.Part = text(n.Get("part"))
	c.Turn = count(n.Get("turn")).N
	c.Mirror = yes(n.Get("mirror"))
	c.Kind = squareKind(n)
	return c
}
