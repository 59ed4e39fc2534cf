package plan

import (
	"fmt"

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
	if onPoint && sashes != nil && triangles != nil {
		r.sashedOnPoint(sashes, triangles.Value)
	}
	if !onPoint && sashes != nil {
		r.sashedStraight(sashes.Value)
	}
	if l.Grid == nil || !l.Grid.Written {
		return
	}
	switch {
	case onPoint:
		l.Grid = r.alternate(l.Grid)
	case sashes != nil && l.Sashing.RowsOnly:
	case sashes != nil && !even(l.Grid.Blocks):
		r.report(notAllowed, sashes.KeyRange, "sashes on all sides of blocks want as many blocks in every row", `write "between": "rows" for sashes between the rows only`)
	case sashes != nil:
		l.Grid.Written = false // every row of a grid, once
	}
}

// even reports whether all rows are as long as the first.
func even(rows [][]Cell) bool {
	for _, row := range rows {
		if len(row) != len(rows[0]) {
			return false
		}
	}
	return true
}

// alternate makes a grid on point of its rows as written: full ones, and
// between each two of them one that is a block shorter; nil where they are not.
func (r *reader) alternate(written *Grid) *Grid {
	rows := written.Blocks
	g := &Grid{At: written.At, Rows: Count{len(rows)/2 + 1, written.At}, Columns: Count{len(rows[0]), written.At}}
	for i, row := range rows {
		want := len(rows[0]) - i%2
		if len(row) != want {
			r.report(notAllowed, g.At, fmt.Sprintf("on point a full row and a shorter one take turns: row %d has %s, and should have %d", i+1, blocksIn(len(row)), want),
				"write the full rows as the first, third and so on")
			return nil
		}
		if i%2 == 0 {
			g.Blocks = append(g.Blocks, row)
		} else {
			g.Between = append(g.Between, row)
		}
	}
	if len(rows)%2 == 0 {
		r.report(notAllowed, g.At, fmt.Sprintf("on point a full row comes last, and row %d is a shorter one", len(rows)), "add a full row below it, or remove it")
		return nil
	}
	return g
}

func blocksIn(n int) string {
	if n == 1 {
		return "1 block"
	}
	return fmt.Sprintf("%d blocks", n)
}

// partOnPoint reads a part that is set on point.
func (r *reader) partOnPoint(n *jsontree.Node) Setting {
	if sashes := n.Member("sashing"); sashes != nil {
		r.sashedOnPoint(sashes, n)
	}
	return Setting{Grid: r.blocks(n.Get("grid")), Sashing: r.sashing(n.Get("sashing")), Triangles: r.triangles(n)}
}

// sashedStraight refuses cornerstones where there is nothing for them to meet.
func (r *reader) sashedStraight(sashes *jsontree.Node) {
	if stones := sashes.Member("cornerstones"); stones != nil && word(sashes.Get("between")) == "rows" {
		r.report(notAllowed, stones.KeyRange, "sashes between the rows only run through, with no cornerstones", `remove "cornerstones", or write "between": "blocks"`)
	}
}

// sashedOnPoint refuses what sashes on point cannot be: they lie round every
// block, meet in cornerstones, and the edge runs through the outermost of
// these.
func (r *reader) sashedOnPoint(sashes *jsontree.Member, triangles *jsontree.Node) {
	n := sashes.Value
	if between := n.Member("between"); between != nil && word(between.Value) == "rows" {
		r.report(notAllowed, between.KeyRange, "on point there are no sashes between the rows only", `remove "between"`)
	}
	if n.Get("cornerstones") == nil {
		r.report(missing, sashes.KeyRange, `"cornerstones" is missing: sashes on point do not run through`, "name the fabric of the cornerstones, the sashing's own if they should not show")
	}
	if !yes(n.Get("outer")) {
		r.report(missing, sashes.KeyRange, "sashes on point lie round every block, also round the outer ones", `write "outer": true`)
	}
	if float := triangles.Member("float"); float != nil {
		r.report(notAllowed, float.KeyRange, "blocks with sashes between them do not float: the outer edge runs through the middle of the cornerstones", `remove "float"`)
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

// whole reports whether there are rows and none of them is empty.
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
				r.report(notAllowed, line.Range, "no block stands under "+quote(string(letter))+" in the map's key", orOneOf("add "+quote(string(letter))+" to the key", keysOf(key)))
				return nil
			}
			row = append(row, r.cell(stands))
		}
		rows = append(rows, row)
	}
	g := written(rows, n.Range)
	if g != nil {
		g.Drawn = true
	}
	return g
}

func (r *reader) sashing(n *jsontree.Node) *Sashing {
	if n == nil {
		return nil
	}
	return &Sashing{
		Fabric: text(n.Get("fabric")), Cornerstones: text(n.Get("cornerstones")),
		Width: r.length("width", n.Get("width"), positive),
		Outer: yes(n.Get("outer")), RowsOnly: word(n.Get("between")) == "rows",
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
		On:           pick(word(n.Get("on")), AllRound, SidesOnly, EndsOnly),
		EndsOn:       word(n.Get("first")) == "ends",
		Corners:      pick(word(n.Get("corners")), Butted, CornerSquares, Mitred),
		Allowance:    r.length("allowance", n.Get("allowance"), orNothing),
		CornerFabric: text(n.Get("corner_fabric")),
		CornerPart:   text(n.Get("corner_part")),
		Kind:         squareKind(n),
		CornerKind:   squareKindOf(n.Get("corner_kind")),
		Joins:        pick(word(n.Get("joins")), Diagonal, Straight),
		Lengthwise:   word(n.Get("strips")) == "lengthwise",
		EachSide:     word(n.Get("cut")) == "each side",
		Seam:         r.ownSeam(n.Get("seam"), seam),
	}
	cornered := b.CornerFabric.Given() || b.CornerPart.Given()
	if b.Corners == CornerSquares && !cornered {
		b.CornerFabric = b.Fabric
	}
	r.borderFaults(b, n)
	r.pairFaults(b, n)
	return b
}

// pairFaults refuses what a border of one pair of strips has no place for, and
// an allowance where nothing is mitred.
func (r *reader) pairFaults(b Border, n *jsontree.Node) {
	name, one := quote(b.Name.Text), b.On != AllRound
	corners, first, allowance := n.Member("corners"), n.Member("first"), n.Member("allowance")
	switch {
	case one && b.Copes():
		r.report(notAllowed, n.Member("on").KeyRange, "border "+name+` has a size to reach, which tells where its strips lie`, `remove "on"`)
	case one && b.Corners != Butted:
		r.report(notAllowed, corners.KeyRange, "border "+name+" has strips on its "+b.On.String()+" only, and these meet in no corner", `remove "corners", or "on"`)
	case one && first != nil:
		r.report(notAllowed, first.KeyRange, "border "+name+" has strips on its "+b.On.String()+" only: no pair is sewn on first", `remove "first"`)
	case allowance != nil && b.Corners != Mitred:
		r.report(notAllowed, allowance.KeyRange, "border "+name+" is not mitred, and its strips are cut to their exact length", `write "corners": "mitred", or remove "allowance"`)
	}
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
	case b.CornerFabric.Given() && b.CornerPart.Given():
		r.report(notAllowed, n.Member("corner_part").KeyRange, "the corners of border "+quote(b.Name.Text)+` have both a "corner_fabric" and a "corner_part"`, "remove one of them")
	case b.Part.Given() && b.Corners == CornerSquares && !b.CornerFabric.Given() && !b.CornerPart.Given():
		r.report(missing, b.Name.At, `"corner_fabric" is missing from the pieced border `+quote(b.Name.Text), `name the fabric of its corner squares, or the block there as "corner_part"`)
	case b.CornerPart.Given() && b.Corners != CornerSquares:
		r.report(notAllowed, n.Member("corner_part").KeyRange, "border "+quote(b.Name.Text)+" has no corner squares for a block to take the place of", `write "corners": "corner squares"`)
	case b.CornerFabric.Given() && b.Corners != CornerSquares:
		r.report(notAllowed, n.Member("corner_fabric").KeyRange, "border "+quote(b.Name.Text)+" has no corner squares for a fabric of their own", `write "corners": "corner squares"`)
	}
}
