package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// setting is parts set together like a small quilt top.
type setting struct {
	op plan.Setting
	p  *Part
	s  *Size
}

// Setting implements plan.Maker.
func (o *opening) Setting(op plan.Setting) { o.room = &setting{op: op, p: o.p, s: o.s} }

// Cells implements celled.
func (r *setting) Cells() [][]plan.Cell { return gridRows(r.op.Grid) }

// Measure implements Operation.
func (r *setting) Measure() {
	st := r.s.set(r.op, r.p.Seam.Allowance.Length)
	r.p.Setting, r.p.Known, r.p.Box = st, st.Known, st.Box
}

// Ask implements Operation.
func (r *setting) Ask() { r.s.needSetting(r.p.Name, r.p.Setting, r.p) }

// Covers implements Operation.
func (r *setting) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	return r.p.rectangle(seam)
}

// Seams implements Operation.
func (r *setting) Seams() (l measure.Surd, ok bool) {
	each, known := r.s.setSeams(r.op, r.p.Setting, r.p.Seam.Allowance.Length)
	return each.MulInt(r.p.Made), known
}

// OnRuler implements Operation.
func (r *setting) OnRuler() []OnRuler { return nil }

// Seamed implements Operation.
func (r *setting) Seamed() []Seamed { return nil }

// Trims implements Operation.
func (r *setting) Trims() []Trimming { return nil }

// Wants implements Operation.
func (r *setting) Wants() []Want {
	return standing(r.p.quoted(), gridCells(r.op.Grid), FourSided)
}

// Serves implements Operation.
func (r *setting) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// Gives implements Operation.
func (r *setting) Gives() *Giving { return nil }

// How implements Operation.
func (r *setting) How() say.Sentence {
	st := r.p.Setting
	var parts []say.Sentence
	for _, b := range st.Blocks {
		parts = append(parts, say.That("%d %s", b.Count, b.Part.Name.Text))
	}
	blocks := say.List(", ", parts...)
	if o := st.OnPoint; o != nil {
		if o.Sashing != nil {
			blocks = blocks.And(say.That("; %s and %s, %d of these on the edge", say.Many(o.Sashes(), "sash"), say.Many(o.Cornerstones(), "cornerstone"), o.EdgeStones()))
		}
		return say.That("%s: %s; side %s; corner %s; %s", o.RowsTold(), blocks, o.Side.Told(), o.Corner.Told(), o.FloatTold(r.p.Seam.Allowance.Length))
	}
	g := st.Sashing
	if g.RowsOnly {
		return say.That("%s: %s; %s between", StraightTold(r.op.Grid), blocks, say.Many(g.Levels(), "sash"))
	}
	text := say.That("%s of %d: %s; %s upright and %d level", say.Many(int64(r.op.Grid.Rows.N), "row"), r.op.Grid.Columns.N, blocks, say.Many(g.Upright(), "sash"), g.Levels())
	if g.Said.Cornerstones.Given() {
		text = text.And(say.That(", %s", say.Many(g.Cornerstones(), "cornerstone")))
	}
	return text
}

// StraightTold says how many rows of blocks stand straight, and by which symmetry
// they follow from the first ones.
func StraightTold(g *plan.Grid) say.Sentence {
	if g.Written {
		return say.That("%s", say.Many(int64(g.Rows.N), "row"))
	}
	text := say.That("%s of %d", say.Many(int64(g.Rows.N), "row"), g.Columns.N)
	if g.Symmetry == plan.NoSymmetry {
		return text
	}
	text = text.And(say.That(", %s", g.Symmetry.String()))
	if g.Tile[0].Given() {
		text = text.And(say.That(" in tiles of %d by %d", g.Tile[0].N, g.Tile[1].N))
	}
	return text
}

// RowsTold says how many rows of blocks stand on point.
func (o *OnPoint) RowsTold() say.Sentence {
	rows, columns := o.Rows, o.OnPoint.Columns
	text := say.That("on point, %s of %d", say.Many(rows, "full row"), columns)
	if rows > 1 && columns > 1 {
		text = text.And(say.That(" and %s of %d between them", say.Many(rows-1, "row"), columns-1))
	}
	return text
}

// FloatTold says how far beyond the blocks the setting is trimmed.
func (o *OnPoint) FloatTold(seam measure.Length) say.Sentence {
	if o.Sashing != nil {
		return say.That("trim %s beyond the middles of the outer cornerstones", say.Long(seam))
	}
	if o.Float.IsZero() {
		return say.That("trim %s beyond the blocks' points", say.Long(seam))
	}
	return say.That("trim %s beyond the blocks' points, which then float %s inside the seam", say.Long(o.Float.Add(seam.Surd())), say.Long(o.Float))
}

// Told says where setting triangles come from, and to which lines a square was
// rounded up and what that leaves.
func (t TriangleCut) Told() say.Sentence {
	text := say.That("%s from squares%s", say.Many(t.Triangles, "triangle"), Halved(t.Halving))
	if t.Spare > 0 {
		text = text.And(say.That(", %d spare", t.Spare))
	}
	over := t.Cut.Surd().Sub(t.Wanted)
	if over.Sign() <= 0 {
		return text
	}
	if t.Lines != nil {
		text = text.And(say.That(", up to %s lines, %s from one to the next", t.Lines.whose(), say.Long(t.Lines.Apart)))
	}
	return text.And(say.That(", %s over to trim", say.AsThere(over)))
}

// Levels is how many level sashes there are: pieces beside cornerstones, or else
// runs.
func (g *Sashing) Levels() int64 {
	if g.Said.Cornerstones.Given() {
		return g.Level()
	}
	return g.Runs()
}

// Traits implements Operation.
func (r *setting) Traits() Traits { return Traits{Sewn: true, Handed: true} }

// Draft implements Operation.
func (r *setting) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	return d.Set(r.op, r.p.Setting, r.p.Seam.Allowance.Length)
}

// Lay implements Operation.
func (r *setting) Lay(l *Laying, n Turns) {
	l.set(r.op, r.p.Name, n)
}

// Grid implements Gridded.
func (r *setting) Grid() *plan.Grid { return r.op.Grid }

// Places implements Seating.
func (r *setting) Places() []plan.Cell { return r.op.Places() }
