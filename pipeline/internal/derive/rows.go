package derive

import (
	"strings"

	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// rows is parts sewn into rows.
type rows struct {
	op plan.Rows
	p  *Part
	s  *Size
}

// Rows implements plan.Maker.
func (o *opening) Rows(op plan.Rows) { o.room = &rows{op: op, p: o.p, s: o.s} }

// wide is how wide a row is that decides how wide the part is, unfinished; not known
// where no row comes to that.
func (r *rows) wide() figure.F {
	for _, row := range r.op.Rows {
		var all []figure.F
		for _, in := range row {
			all = append(all, r.s.byName[in.Part.Text].side(in.Sideways()).As("", in.Part.Text).Where(in.At))
		}
		n := figure.Counted("n", "parts in the row", int64(len(all)), row[0].At)
		if wide := r.p.inRow("sum of the row's widths", n, all...); wide.Surd().Equal(r.p.Width) {
			return wide.InWords("sum of the row's widths - 2s for each seam in the row").Is(r.p.Name.Text, "width as sewn").Telling(append(all, r.p.Figures.seam)...)
		}
	}
	return figure.F{}
}

// Cells implements celled.
func (r *rows) Cells() [][]plan.Cell { return r.op.Rows }

// Measure implements Operation.
func (r *rows) Measure() {
	boxes, ok := r.s.boxes(len(r.op.Rows), func(i int) []plan.Cell { return r.op.Rows[i] })
	if !ok {
		return
	}
	a := piecing.Assemble(boxes, r.p.Seam.Allowance.Length)
	r.p.Rows, r.p.Known, r.p.Box = &a, true, a.Box
	r.p.Figures.Size = r.wide()
}

// Ask implements Operation.
func (r *rows) Ask() {
	for _, row := range r.op.Rows {
		for _, c := range row {
			if q := r.s.byName[c.Part.Text]; q != nil {
				r.p.takes(q, c.Mirror)
				q.kinds.want(c.Kind, r.p.Needed)
			}
		}
	}
}

// Covers implements Operation.
func (r *rows) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	return r.p.rectangle(seam)
}

// Seams implements Operation.
func (r *rows) Seams() (l measure.Surd, ok bool) {
	boxes, known := r.s.boxes(len(r.op.Rows), func(i int) []plan.Cell { return r.op.Rows[i] })
	if !known {
		return l, false
	}
	return piecing.RowSeams(boxes, r.p.Seam.Allowance.Length, func(i int) bool { return r.s.slanted(r.op.Rows[i]) }).MulInt(r.p.Made), true
}

// OnRuler implements Operation.
func (r *rows) OnRuler() []OnRuler { return nil }

// Seamed implements Operation.
func (r *rows) Seamed() []Seamed { return nil }

// Trims implements Operation.
func (r *rows) Trims() []Trimming { return nil }

// Wants implements Operation.
func (r *rows) Wants() []Want {
	var all []Want
	for _, row := range r.op.Rows {
		all = append(all, standing(r.p.quoted(), row, InRow)...)
	}
	return all
}

// Serves implements Operation.
func (r *rows) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// Gives implements Operation.
func (r *rows) Gives() *Giving { return nil }

// How implements Operation.
func (r *rows) How() say.Sentence {
	var rows []string
	for _, row := range r.s.WalkIn(Flips{}).Rows(len(r.op.Rows), func(i int) []plan.Cell { return r.op.Rows[i] }) {
		var cells []string
		for _, c := range row {
			cells = append(cells, r.s.NameAt(c))
		}
		rows = append(rows, strings.Join(cells, " + "))
	}
	return say.That("rows: %s", strings.Join(rows, " / "))
}

// Traits implements Operation.
func (r *rows) Traits() Traits { return Traits{Sewn: true, Handed: true} }

// Draft implements Operation.
func (r *rows) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	return d.Rows(r.op.Rows, r.p.Seam.Allowance.Length)
}

// Lay implements Operation.
func (r *rows) Lay(l *Laying, n Turns) {
	for _, row := range r.op.Rows {
		l.row(row, n)
	}
}

// Rows implements Holding.
func (r *rows) Rows() [][]plan.Cell { return r.op.Rows }

// Places implements Seating.
func (r *rows) Places() []plan.Cell { return r.op.Places() }
