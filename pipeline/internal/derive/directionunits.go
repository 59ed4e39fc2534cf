package derive

import "yardproof/schema/plan"

// Squares that are stitched over a corner and flipped may be laid any way round
// before, so that the print comes out upright in the unit; and so may the two
// squares of which four triangles are cut, if they are cut along different
// diagonals. All derived from geometry.

// unit lays the pieces of a unit.
func (d *director) unit(p *Part, n turns) {
	switch op := p.Operation.(type) {
	case plan.Hourglass:
		d.hourglass(p, op, n)
	case plan.FlyingGeese:
		d.geese(p, op, n)
	case plan.FlipCorners:
		d.cell(plan.Cell{Part: op.Body}, n)
		for _, c := range op.Corners {
			d.place(c.Fabric, p.Name, Turned, n, quarters.turned)
		}
	case plan.SquareInSquare:
		centre := n
		if !op.Flip {
			centre = n.turned(45) // it stands on its corner
		}
		d.place(op.Centre, p.Name, Turned, centre, quarters.turnedAlike)
		d.place(op.Corners, p.Name, Turned, n, quarters.turned)
	case plan.Logs:
		d.logs(p, op, n)
	case plan.Shape:
		d.shape(p, op, n)
	case plan.Template:
		degrees := [...]int{plan.AnyGrain: 0, plan.GrainAlong: 0, plan.GrainAcross: 90, plan.GrainBias: 45}
		d.place(op.Fabric, p.Name, Turned, n.turned(degrees[op.Grain]), quarters.turned)
	case plan.Recut:
		for r := range op.Down.N {
			for c := range op.Across.N {
				d.cell(plan.Cell{Part: op.Part, Turn: op.Turn(r, c)}, n)
			}
		}
	case plan.Loop:
		d.cell(plan.Cell{Part: op.Set}, n) // opened at another seam its strips lie as before
	case plan.Chain:
		d.chain(p, op, n)
	default:
		d.untold(p)
	}
}

// hourglass: each fabric's square gives four triangles. Cut and turned as they
// are sewn, those of one unit lie above and below, those of the other right and
// left, all upright; where the units show the fabric on the same sides, half of
// them are turned by a quarter. A unit is as good turned by a half.
func (d *director) hourglass(p *Part, op plan.Hourglass, n turns) {
	fabrics := op.Fabrics[:]
	if op.HalfSquares.Given() {
		half := d.s.byName[op.HalfSquares.Text]
		of, ok := half.Operation.(plan.HalfSquares)
		if !ok || of.AtATime != 2 {
			d.untold(p)
			return
		}
		fabrics = of.Fabrics[:]
	}
	for _, role := range fabrics {
		d.place(role, p.Name, Crossed, n, quarters.crossed)
	}
}

// geese: the goose and its sky may each be laid upright when they are made singly.
// Of four from one large square, the geese come out a quarter turn apart, and
// the two skies of a small square in two of them: half of the units can have
// both upright, or all where they are turned all four ways.
func (d *director) geese(p *Part, op plan.FlyingGeese, n turns) {
	if op.AtATime == 1 {
		d.place(op.Goose, p.Name, Turned, n, quarters.turned)
		d.place(op.Sky, p.Name, Turned, n, quarters.turned)
		return
	}
	d.place(op.Goose, p.Name, Around, n, quarters.around)
	d.place(op.Sky, p.Name, Around, n, func(q quarters, f *Fabric) int64 {
		return min(q.around(f), (q[0]+q[1]+q[2]+q[3]+1)/2)
	})
}

// turnedAlike is where a square may be laid any way round, the same in all units.
func (n quarters) turnedAlike(f *Fabric) int64 {
	wrong := n.turned(f)
	for range 3 {
		n = quarters{n[3], n[0], n[1], n[2]}
		wrong = min(wrong, n.turned(f))
	}
	return wrong
}

// logs: those above and below the centre lie as they are cut, along the strip.
// Those right and left of it lie so where they are cut along the fabric, and else
// are turned by a quarter, one way or the other.
func (d *director) logs(p *Part, op plan.Logs, n turns) {
	d.place(op.Centre, p.Name, Turned, n, quarters.turned)
	for round := 1; round <= op.Rounds.N; round++ {
		for side := range 4 {
			role := op.Fabric(side, round)
			if f := d.s.byFabric[role.Text]; side%2 == 0 || f != nil && upright(side, f) {
				d.place(role, p.Name, Turned, n, quarters.turned)
				continue
			}
			d.place(role, p.Name, Beside, n, func(q quarters, f *Fabric) int64 {
				right, left := quarters{q[3], q[0], q[1], q[2]}, quarters{q[1], q[2], q[3], q[0]}
				return min(right.turned(f), left.turned(f))
			})
		}
	}
}

// shape: triangles of 60 degrees are cut up and down in turn, each kind upright
// where it is sewn as it was cut.
func (d *director) shape(p *Part, op plan.Shape, n turns) {
	if op.Kind != plan.Triangle60 {
		d.untold(p)
		return
	}
	roles := []plan.Text{op.Fabric}
	if p.Shape.Set != nil {
		roles = distinctRoles(p.Shape.Set.Operation.(plan.StripSet).Strips)
	}
	for _, role := range roles {
		d.place(role, p.Name, Turned, n, func(q quarters, f *Fabric) int64 {
			wrong := q[1] + q[3]
			if f.Print == plan.OneWay {
				wrong += gap(q[0], q[2]) / 2
			}
			return wrong
		})
	}
}

// chain: every fold lays one half of the rows on its head.
func (d *director) chain(p *Part, op plan.Chain, n turns) {
	if op.Folds.N == 0 {
		d.place(op.Fabric, p.Name, Turned, n, quarters.turned)
		return
	}
	var rows turns
	for range int64(1) << (op.Folds.N - 1) {
		rows.add(n, 0)
		rows.add(n, 180)
	}
	d.place(op.Fabric, p.Name, Folded, rows, quarters.turned)
}
