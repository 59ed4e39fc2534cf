package derive

import (
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
