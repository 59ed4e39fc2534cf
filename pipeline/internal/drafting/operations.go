package drafting

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// part drafts a part by its operation, with the squares of some tubes
// exchanged.
func (d *Draft) part(p *derive.Part, flips derive.Flips) (piecing.Patchwork, bool) {
	walk := d.size.WalkIn(flips)
	switch op := p.Operation.(type) {
	case plan.Cut:
		// A triangle has no size of its own to stand in a row with.
		return d.plain(p.Box, op.Fabric.Text, op.Halving == plan.Whole)
	case plan.WholeStrip:
		return d.plain(p.Box, op.Fabric.Text, true)
	case plan.StripSet:
		if p.Set.Slant != nil {
			return p.Set.Slant.Segment(d.set(p, p.Set.Length.Surd()), 0), p.Set.Cut.Each > 0
		}
		return d.set(p, p.Width), true
	case plan.Tube:
		return d.tube(p, flips)
	case plan.HalfSquares:
		w := piecing.DraftHalfSquare(p.Triangle.Untrimmed)
		return d.unit(p, w, op.Fabrics[0].Text, op.Fabrics[1].Text)
	case plan.TriangleSquare:
		return d.triangleSquare(p, op)
	case plan.Rows:
		return d.rows(p, op, walk)
	case plan.Setting:
		return d.setting(op, p.Setting, p.Seam.Allowance.Length, walk)
	case plan.Bordered:
		w, ok := d.one(op, walk)
		for i := 0; ok && i < len(p.Borders); i++ {
			w, ok = d.bordered(w, p.Borders[i], walk)
		}
		return w, ok
	case plan.Trim:
		w, ok := d.one(op, walk)
		if !ok {
			return w, false
		}
		return trimmed(w, p.Box)
	}
	return d.pieced(p, walk)
}

func (d *Draft) plain(b piecing.Box, role string, whole bool) (piecing.Patchwork, bool) {
	fabric, ok := d.fabrics[role]
	return piecing.Plain(b, fabric), ok && whole
}

// box is work of which only the box round it is known.
func box(b piecing.Box) (piecing.Patchwork, bool) { return piecing.Plain(b, Untold), true }

// set is a strip set, or a segment of it, of a length.
func (d *Draft) set(p *derive.Part, length measure.Surd) piecing.Patchwork {
	return derive.Sewn(p.Set.Strips, length, p.Seam.Allowance.Length, d.number)
}

// number is what a fabric is called in patches.
func (d *Draft) number(f *derive.Fabric) int { return d.fabrics[f.Role.Text] }

// tube is a square of a tube: a near one, or where they are exchanged a far one.
func (d *Draft) tube(p *derive.Part, flips derive.Flips) (piecing.Patchwork, bool) {
	kind := plan.NearKind
	if flips.Has(p.Tube) {
		kind = plan.FarKind
	}
	return p.Opened(kind, d.number)
}

// unit names the fabrics of a unit and trims it.
func (d *Draft) unit(p *derive.Part, w piecing.Patchwork, roles ...string) (piecing.Patchwork, bool) {
	var fabrics []int
	for _, role := range roles {
		fabric, ok := d.fabrics[role]
		if !ok {
			return w, false
		}
		fabrics = append(fabrics, fabric)
	}
	return trimmed(w.InFabrics(fabrics...), p.Box)
}

func (d *Draft) triangleSquare(p *derive.Part, op plan.TriangleSquare) (piecing.Patchwork, bool) {
	var roles []string
	for _, name := range op.Of {
		cut, ok := d.size.Part(name.Text).Operation.(plan.Cut)
		if !ok {
			return piecing.Patchwork{}, false
		}
		roles = append(roles, cut.Fabric.Text)
	}
	if len(op.Of) == 4 {
		return d.unit(p, piecing.DraftQuarterSquare(p.Triangle.Untrimmed), roles...)
	}
	return d.unit(p, piecing.DraftHalfSquare(p.Triangle.Untrimmed), roles...)
}

func (d *Draft) rows(p *derive.Part, op plan.Rows, walk *derive.Walk) (piecing.Patchwork, bool) {
	rows, ok := d.cells(walk.Rows(len(op.Rows), func(r int) []plan.Cell { return op.Rows[r] }))
	if !ok {
		return piecing.Patchwork{}, false
	}
	return sew(rows, p.Seam.Allowance.Length)
}

// cells are the parts in rows of cells, as turned; ok is false when one of
// them was not drafted, or when there are too many patches.
func (d *Draft) cells(rows [][]derive.Placed) (work [][]piecing.Patchwork, ok bool) {
	patches := 0
	for _, row := range rows {
		var line []piecing.Patchwork
		if w, ok := d.triangles(row); ok {
			patches += len(w.Patches)
			work = append(work, append(line, w))
			continue
		}
		for _, c := range row {
			w, ok := d.cell(c)
			if patches += len(w.Patches); !ok || patches > Most {
				return nil, false
			}
			line = append(line, w)
		}
		work = append(work, line)
	}
	return work, true
}

func (d *Draft) cell(c derive.Placed) (piecing.Patchwork, bool) {
	key := cellKey{partKey{c.Part.Text, c.Flips}, c.Turn, c.Mirror}
	if w, ok := d.turned[key]; ok {
		return w, true
	}
	w, ok := d.Exchanged(key.name, key.exchanged)
	if ok && c.Mirror {
		w = w.Mirrored()
	}
	if ok && c.Turn != 0 {
		w = w.Turned(c.Turn / 90)
	}
	if ok {
		d.turned[key] = w
	}
	return w, ok
}

// trimmed trims work to a size; ok is false where it is smaller already.
func trimmed(w piecing.Patchwork, to piecing.Box) (piecing.Patchwork, bool) {
	size := w.Size()
	if size.Width.Cmp(to.Width) < 0 || size.Height.Cmp(to.Height) < 0 {
		return w, false
	}
	return w.Trimmed(to), true
}
