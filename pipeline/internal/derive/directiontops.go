package derive

import "yardproof/schema/plan"

// halves tells whether an operation cuts squares into halves that lie
// differently.
func halves(op plan.Operation) bool {
	switch op := op.(type) {
	case plan.HalfSquares:
		return true
	case plan.Cut:
		return op.Each() > 1 // one used of each square may be any of it
	}
	return false
}

// set lays parts set together. Sashes and cornerstones are cut as they lie.
func (d *director) set(of plan.Setting, name plan.Text, n turns) {
	if of.Triangles != nil {
		d.onPoint(of, name, n)
		return
	}
	for r := range of.Grid.Rows.N {
		d.row(of.Grid.Row(r), n)
	}
	d.sashes(of.Sashing, name, n)
}

// sashes lays sashes and cornerstones, if there are any, as the blocks lie.
func (d *director) sashes(g *plan.Sashing, name plan.Text, n turns) {
	if g == nil {
		return
	}
	for _, role := range []plan.Text{g.Fabric, g.Cornerstones} {
		d.place(role, name, Turned, n, quarters.turned)
	}
}

// onPoint lays blocks on point, turned by 45 degrees clockwise. The side
// triangles of a square cut twice lie along the four edges; the corners come
// upright from two squares that are cut along different diagonals. Sashes and
// cornerstones lie as the blocks do. Derived from geometry.
func (d *director) onPoint(of plan.Setting, name plan.Text, n turns) {
	g := of.Grid
	for r := range g.Rows.N {
		d.row(g.Row(r), n.turned(45))
	}
	for r := range g.Rows.N - 1 {
		d.row(g.Short(r), n.turned(45))
	}
	level, upright := int64(g.Columns.N-1), int64(g.Rows.N-1)
	var sides turns
	for i, k := range []int64{level, upright, level, upright} {
		for range k {
			sides.add(n, 90*i)
		}
	}
	d.place(of.Triangles.Sides, name, Halves, sides, quarters.around)
	corners := of.Triangles.Corners
	if !corners.Given() {
		corners = of.Triangles.Sides
	}
	d.place(corners, name, Turned, n, quarters.turned)
	d.sashes(of.Sashing, name, n.turned(45))
}

// units turns the parts of a pieced border towards each side, and the blocks in
// its corners.
func (d *director) units(b Border, n turns) {
	if b.Corner != nil {
		for quarter := range int(b.Corners) {
			d.cell(plan.Cell{Part: b.Said.CornerPart, Turn: 90 * quarter}, n)
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
		var of turns
		for i, k := range n {
			of[i] = min(k, countless/max(1, count)) * count
		}
		d.cell(plan.Cell{Part: b.Said.Part, Turn: 90 * quarter}, of)
	}
}

// bordered lays the borders round a part: strips carry the print sideways up
// two sides of it, however it is turned.
func (d *director) bordered(p *Part, n turns) {
	for _, b := range p.Borders {
		d.units(b, n)
		if b.Units == nil {
			strips, sideways := b.lying()
			d.lay(b.Said.Fabric, p.Name, b.way(), strips*n.total(), sideways*n.total())
		}
		var corners turns
		for range 4 {
			corners.add(n, 0)
		}
		d.place(b.Said.CornerFabric, p.Name, Turned, corners, quarters.turned)
	}
}
