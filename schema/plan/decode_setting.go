package plan

import (
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// The problems of a layout that its schema has no words for.
const (
	missing    = "schema/missing"
	notAllowed = "schema/not-allowed"
)

func (r *reader) layout(n *jsontree.Node, seam Seam) Layout {
	var l Layout
	if n == nil {
		return l
	}
	l.At = n.Range
	l.Grid = r.blocks(n.Get("grid"))
	if rows := n.Get("rows"); rows != nil {
		l.Grid = written(r.cells(rows), rows.Range)
	} else if drawn := n.Get("map"); drawn != nil {
		l.Grid = r.drawn(drawn)
	}
	l.Sashing = r.sashing(n.Get("sashing"))
	r.setting(&l, n)
	l.Borders = r.borders(n.Get("borders"), seam)
	return l
}

// setting reads whether the blocks stand on point, and refuses what does not
// go with it.
func (r *reader) setting(l *Layout, n *jsontree.Node) {
	how, triangles := text(n.Get("setting")), n.Member("triangles")
	onPoint := how.Text == "on point"
	switch {
	case onPoint && triangles == nil:
		r.report(missing, how.At, `"triangles" is missing from a layout on point`, `add "triangles", with the fabric of the side triangles under "sides"`)
	case !onPoint && triangles != nil:
		r.report(notAllowed, triangles.KeyRange, "setting triangles go round blocks on point, and these stand straight", `write "setting": "on point", or remove "triangles"`)
	case onPoint:
		l.Triangles = r.triangles(triangles.Value)
	}
	sashes := n.Member("sashing")
	if onPoint && sashes != nil {
		r.later(sashes.KeyRange, "sashing on point is", "sash a straight grid, or set the blocks on point without it")
	}
	if l.Grid == nil || !l.Grid.Written {
		return
	}
	if onPoint {
		r.later(how.At, "rows of their own on point are", "give the full rows as a grid")
	}
	if sashes != nil {
		r.later(sashes.KeyRange, "sashing between rows of their own is", "give the blocks as a grid, with every row of it under blocks")
	}
}

func (r *reader) blocks(n *jsontree.Node) *Grid {
	if n == nil {
		return nil
	}
	g := &Grid{
		Rows: count(n.Get("rows")), Columns: count(n.Get("columns")),
		Blocks: r.cells(n.Get("blocks")), Between: r.cells(n.Get("between")), At: n.Range,
	}
	how := text(n.Get("symmetry"))
	g.Symmetry, g.SymmetryAt = pick(how.Text, NoSymmetry, QuarterTurns, HalfTurn, Mirror, TurnedQuarters), how.At
	for i, item := range items(n.Get("tile")) {
		if i < 2 {
			g.Tile[i] = count(item)
		}
	}
	if !whole(g.Blocks) || len(g.Between) > 0 && !whole(g.Between) {
		return nil // the schema has told of it
	}
	return g
}

// whole tells whether there are rows and none of them is empty.
func whole(rows [][]Cell) bool {
	for _, row := range rows {
		if len(row) == 0 {
			return false
		}
	}
	return len(rows) > 0
}

// written is a grid whose rows stand as they are.
func written(rows [][]Cell, at source.Range) *Grid {
	if !whole(rows) {
		return nil
	}
	g := &Grid{Blocks: rows, Written: true, At: at, Rows: Count{len(rows), at}}
	for _, row := range rows {
		g.Columns = Count{max(g.Columns.N, len(row)), at}
	}
	return g
}

// drawn reads a map: the letters of each row, and what they stand for. Every
// block of a row has the place of the row.
func (r *reader) drawn(n *jsontree.Node) *Grid {
	key := n.Get("key")
	var rows [][]Cell
	for _, line := range items(n.Get("rows")) {
		var row []Cell
		for _, letter := range text(line).Text {
			stands := key.Get(string(letter))
			if stands == nil {
				r.report(notAllowed, line.Range, "no block stands under "+quote(string(letter))+" in the map's key", "write one of "+list(keysOf(key)))
				return nil
			}
			row = append(row, r.cell(stands))
		}
		rows = append(rows, row)
	}
	return written(rows, n.Range)
}

func (r *reader) sashing(n *jsontree.Node) *Sashing {
	if n == nil {
		return nil
	}
	return &Sashing{
		Fabric: text(n.Get("fabric")), Cornerstones: text(n.Get("cornerstones")),
		Width: r.length("width", n.Get("width"), positive),
		Outer: yes(n.Get("outer")),
		Joins: pick(word(n.Get("joins")), Diagonal, Straight),
		At:    n.Range,
	}
}

// triangles reads setting triangles; corners are of the sides' fabric where
// nothing else is said.
func (r *reader) triangles(n *jsontree.Node) *Triangles {
	t := &Triangles{
		Sides: text(n.Get("sides")), Corners: text(n.Get("corners")),
		SideCut: r.triangleCut(n.Get("side_cut")), CornerCut: r.triangleCut(n.Get("corner_cut")),
		Float: r.length("float", n.Get("float"), orNothing), At: n.Range,
	}
	if !t.Corners.Given() {
		t.Corners = t.Sides
	}
	return t
}

func (r *reader) triangleCut(n *jsontree.Node) TriangleCut {
	if n == nil {
		return TriangleCut{}
	}
	return TriangleCut{
		Square:  r.length("square", n.Get("square"), positive),
		Halving: pick(word(n.Get("halved")), Whole, CutOnce, CutTwice), At: n.Range,
	}
}

func (r *reader) borders(n *jsontree.Node, seam Seam) []Border {
	var all []Border
	for _, m := range members(n) {
		all = append(all, r.border(m, seam))
	}
	return all
}

func (r *reader) border(m jsontree.Member, seam Seam) Border {
	n := m.Value
	b := Border{
		Name: Text{m.Key, m.KeyRange}, At: n.Range,
		Fabric:       text(n.Get("fabric")),
		Part:         text(n.Get("part")),
		Width:        r.length("width", n.Get("width"), positive),
		To:           r.pair("to", n.Get("to")),
		EndsOn:       word(n.Get("first")) == "ends",
		Corners:      pick(word(n.Get("corners")), Butted, CornerSquares, Mitred),
		CornerFabric: text(n.Get("corner_fabric")),
		Joins:        pick(word(n.Get("joins")), Diagonal, Straight),
		Lengthwise:   word(n.Get("strips")) == "lengthwise",
		EachSide:     word(n.Get("cut")) == "each side",
		Seam:         r.ownSeam(n.Get("seam"), seam),
	}
	if b.Corners == CornerSquares && !b.CornerFabric.Given() {
		b.CornerFabric = b.Fabric
	}
	r.borderFaults(b, n)
	return b
}

// borderFaults refuses what does not make one border.
func (r *reader) borderFaults(b Border, n *jsontree.Node) {
	width, to := n.Member("width"), n.Member("to")
	const either = `give one of "width" and "to"`
	switch {
	case width == nil && to == nil:
		r.report(missing, b.Name.At, `"width" is missing from border `+quote(b.Name.Text), either)
	case width != nil && to != nil:
		r.report(notAllowed, to.KeyRange, "border "+quote(b.Name.Text)+` has both a "width" and a size to reach`, either)
	case to != nil && b.Corners != Butted:
		r.later(to.KeyRange, "coping strips with corners other than butted ones are", `write "corners": "butted"`)
	case to != nil && b.Part.Given():
		r.later(to.KeyRange, "pieced coping strips are", "make the strips of one fabric")
	case b.Part.Given() && b.Corners == Mitred:
		r.later(n.Member("corners").KeyRange, "pieced borders with mitred corners are", `write "corner squares" or "butted"`)
	case b.Part.Given() && b.Corners == CornerSquares && !b.CornerFabric.Given():
		r.report(missing, b.Name.At, `"corner_fabric" is missing from the pieced border `+quote(b.Name.Text), "name the fabric of its corner squares")
	case b.CornerFabric.Given() && b.Corners != CornerSquares:
		r.report(notAllowed, n.Member("corner_fabric").KeyRange, "border "+quote(b.Name.Text)+" has no corner squares for a fabric of their own", `write "corners": "corner squares"`)
	}
}
