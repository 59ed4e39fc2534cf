package drafting

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/plan"
)

// pieced drafts units of pieces cut for them, and work that is cut up, opened
// or folded.
func (d *Draft) pieced(p *derive.Part, walk *derive.Walk) (piecing.Patchwork, bool) {
	switch op := p.Operation.(type) {
	case plan.Hourglass:
		return d.hourglass(p, op)
	case plan.FlyingGeese:
		return d.geese(p, op)
	case plan.FlipCorners:
		return d.flipCorners(op, walk)
	case plan.SquareInSquare:
		return d.unit(p, squareInSquare(p, op), op.Centre.Text, op.Corners.Text, op.Corners.Text, op.Corners.Text, op.Corners.Text)
	case plan.Logs:
		return d.logs(p, op)
	case plan.Template, plan.Mosaic:
		return box(p.Box)
	case plan.Recut:
		return d.recut(p, op, walk)
	case plan.Loop:
		return d.loop(p, op)
	case plan.Chain:
		return d.chain(p)
	}
	return piecing.Patchwork{}, false
}

func (d *Draft) hourglass(p *derive.Part, op plan.Hourglass) (piecing.Patchwork, bool) {
	w := piecing.DraftQuarterSquare(p.Unit.Sewn.Width)
	a, b := op.Fabrics[0].Text, op.Fabrics[1].Text
	if op.HalfSquares.Given() {
		switch half := p.Unit.Of[0].Part.Operation.(type) {
		case plan.HalfSquares:
			a, b = half.Fabrics[0].Text, half.Fabrics[1].Text
		case plan.TriangleSquare:
			a, b = d.cutFrom(half.Of[0]), d.cutFrom(half.Of[1])
		}
	}
	return d.unit(p, w, a, b, a, b)
}

// cutFrom is the role of the fabric that a part is cut from.
func (d *Draft) cutFrom(name plan.Text) string {
	if p := d.size.Part(name.Text); p != nil {
		if cut, ok := p.Operation.(plan.Cut); ok {
			return cut.Fabric.Text
		}
	}
	return ""
}

func (d *Draft) flipCorners(op plan.FlipCorners, walk *derive.Walk) (piecing.Patchwork, bool) {
	w, ok := d.one(op, walk)
	if !ok {
		return w, false
	}
	for _, c := range op.Corners {
		fabric, ok := d.fabrics[c.Fabric.Text]
		if !ok {
			return w, false
		}
		w = w.Flip(piecing.Corner(c.Place), c.Square.Surd(), fabric)
	}
	return w, true
}

func squareInSquare(p *derive.Part, op plan.SquareInSquare) piecing.Patchwork {
	centre, corner := p.Unit.Pieces[0].Width.Surd(), p.Unit.Pieces[1].Width.Surd()
	if !op.Flip {
		return piecing.DraftSquareInSquare(p.Width, centre, p.Seam.Allowance.Length)
	}
	w := piecing.Plain(p.Unit.Sewn, 0)
	for c := range piecing.Corner(4) {
		w = w.Flip(c, corner, int(c)+1)
	}
	return w
}

func (d *Draft) logs(p *derive.Part, op plan.Logs) (piecing.Patchwork, bool) {
	var roles []string
	for _, piece := range p.Unit.Pieces {
		roles = append(roles, piece.Fabric.Role.Text)
	}
	return d.unit(p, piecing.DraftLogs(derive.LogBlock(op), p.Seam.Allowance.Length), roles...)
}

func (d *Draft) recut(p *derive.Part, op plan.Recut, walk *derive.Walk) (piecing.Patchwork, bool) {
	w, ok := d.one(op, walk)
	if !ok {
		return w, false
	}
	rows := w.Split(int64(op.Across.N), int64(op.Down.N))
	for r := range rows {
		for c := range rows[r] {
			rows[r][c] = rows[r][c].Turned(op.Turn(r, c) / 90)
		}
	}
	return sew(rows, p.Seam.Allowance.Length)
}

// loop is rings side by side, each the strip set turned on to begin after the
// seam it is opened at.
func (d *Draft) loop(p *derive.Part, op plan.Loop) (piecing.Patchwork, bool) {
	set := p.Loop.Set
	open := op.Open
	if len(open) == 0 {
		open = []plan.Count{{}}
	}
	var row []piecing.Patchwork
	for _, seam := range open {
		row = append(row, d.ring(set, op, seam.N))
	}
	return sew([][]piecing.Patchwork{row}, p.Seam.Allowance.Length)
}

// ring is strips of the set's own seam in the order in which they lie once
// the ring is opened.
func (d *Draft) ring(set *derive.Part, op plan.Loop, seam int) piecing.Patchwork {
	strips := set.Set.Strips
	turned := *set
	turned.Set = &derive.Set{}
	for i := range strips {
		turned.Set.Strips = append(turned.Set.Strips, strips[(i+seam)%len(strips)])
	}
	return d.set(&turned, op.Cut.Surd())
}

func (d *Draft) chain(p *derive.Part) (piecing.Patchwork, bool) {
	c := p.Chain
	last := c.Steps[len(c.Steps)-1]
	strips := *p
	strips.Set = &derive.Set{}
	for range last.Strips {
		strips.Set.Strips = append(strips.Set.Strips, derive.Strip{Fabric: c.Fabric, Width: c.Width})
	}
	return d.set(&strips, last.Length), true
}
