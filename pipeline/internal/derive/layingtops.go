package derive

import "yardproof/schema/plan"

// set lays parts set together. Sashes and cornerstones are cut as they lie.
func (l *Laying) set(of plan.Setting, name plan.Text, n Turns) {
	if of.Triangles != nil {
		l.onPoint(of, name, n)
		return
	}
	for r := range of.Grid.Rows.N {
		l.row(of.Grid.Row(r), n)
	}
	l.sashes(of.Sashing, name, n)
}

// sashes lays sashes and cornerstones, if there are any, as the blocks lie.
func (l *Laying) sashes(g *plan.Sashing, name plan.Text, n Turns) {
	if g == nil {
		return
	}
	for _, role := range []plan.Text{g.Fabric, g.Cornerstones} {
		l.Place(role, name, Turned, n, Quarters.turned)
	}
}

// onPoint lays blocks on point, turned by 45 degrees clockwise. The side
// triangles of a square cut twice lie along the four edges; the corners come
// upright from two squares that are cut along different diagonals. Sashes and
// cornerstones lie as the blocks do. Derived from geometry.
func (l *Laying) onPoint(of plan.Setting, name plan.Text, n Turns) {
	g := of.Grid
	for r := range g.Rows.N {
		l.row(g.Row(r), n.turned(45))
	}
	for r := range g.Rows.N - 1 {
		l.row(g.Short(r), n.turned(45))
	}
	level, upright := int64(g.Columns.N-1), int64(g.Rows.N-1)
	var sides Turns
	for i, k := range []int64{level, upright, level, upright} {
		for range k {
			sides.add(n, 90*i)
		}
	}
	l.Place(of.Triangles.Sides, name, Halves, sides, Quarters.around)
	corners := of.Triangles.Corners
	if !corners.Given() {
		corners = of.Triangles.Sides
	}
	l.Place(corners, name, Turned, n, Quarters.turned)
	l.sashes(of.Sashing, name, n.turned(45))
}

// units turns the parts of a pieced border towards each side, and the blocks in
// its corners.
func (l *Laying) units(b Border, n Turns) {
	if b.Corner != nil {
		for quarter := range int(b.Corners) {
			l.Cell(plan.Cell{Part: b.Said.CornerPart, Turn: 90 * quarter}, n)
		}
	}
	if b.Units == nil {
		return
	}
	for quarter := range 4 {
		count := b.Units.Ends
		if quarter%2 == 1 {
			count = b.Units.Sides
		}
		var of Turns
		for i, k := range n {
			of[i] = min(k, countless/max(1, count)) * count
		}
		l.Cell(plan.Cell{Part: b.Said.Part, Turn: 90 * quarter}, of)
	}
}

// bordered lays the borders round a part: strips carry the print sideways up
// two sides of it, however it is turned.
func (l *Laying) bordered(p *Part, n Turns) {
	for _, b := range p.Borders {
		l.units(b, n)
		if b.Units == nil {
			strips, sideways := b.lying()
			l.list(b.Said.Fabric, p.Name, b.way(), strips*n.total(), sideways*n.total())
		}
		var corners Turns
		for range 4 {
			corners.add(n, 0)
		}
		l.Place(b.Said.CornerFabric, p.Name, Turned, corners, Quarters.turned)
	}
}
