package derive

import "yardproof/schema/plan"

// halves tells whether an operation cuts squares into halves that lie
// differently.
func halves(op plan.Operation) bool {
	switch op := op.(type) {
	case plan.HalfSquares:
		return true
	case plan.Cut:
		return op.Halving != plan.Whole
	}
	return false
}

// set lays parts set together. Sashes and cornerstones are cut as they lie;
// on point, every print lies at 45 degrees.
func (d *director) set(of plan.Setting, name plan.Text, n turns) {
	if of.Triangles != nil {
		d.tilted(of, name, n)
		return
	}
	for r := range of.Grid.Rows.N {
		for _, c := range of.Grid.Row(r) {
			d.cell(c, n)
		}
	}
	if g := of.Sashing; g != nil {
		for _, role := range []plan.Text{g.Fabric, g.Cornerstones} {
			d.lay(role, name, Turned, n.total(), n.turned(d.s.byFabric[role.Text]))
		}
	}
}

// tilted lists all directional fabrics of a setting on point. Its parts are
// not followed further.
func (d *director) tilted(of plan.Setting, name plan.Text, n turns) {
	seen := map[string]bool{}
	var visit func(in []plan.Ingredient)
	visit = func(in []plan.Ingredient) {
		for _, i := range in {
			if i.Fabric {
				d.lay(i.Name, name, Untold, n.total(), n.total())
				continue
			}
			if p := d.s.byName[i.Name.Text]; p != nil && !seen[i.Name.Text] {
				seen[i.Name.Text] = true
				visit(p.Operation.Ingredients())
			}
		}
	}
	visit(of.Ingredients())
}

// units turns the parts of a pieced border towards each side.
func (d *director) units(b Border, n turns) {
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
			d.lay(b.Said.Fabric, p.Name, Sideways, 4*n.total(), 2*n.total())
		}
		d.lay(b.Said.CornerFabric, p.Name, Turned, 4*n.total(), 4*n.turned(d.s.byFabric[b.Said.CornerFabric.Text]))
	}
}
