package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// notDerived is an operation of the vocabulary that cannot be derived yet.
type notDerived struct {
	op plan.NotDerived
	p  *Part
	s  *Size
}

// NotDerived implements plan.Maker.
func (o *opening) NotDerived(op plan.NotDerived) {
	o.room = &notDerived{op: op, p: o.p, s: o.s}
}

// Measure implements Operation: its size stays unknown.
func (r *notDerived) Measure() {}

// Ask implements Operation: what it takes is not known.
func (r *notDerived) Ask() {}

// Covers implements Operation.
func (r *notDerived) Covers(measure.Length) (least, most measure.Surd, ok bool) {
	return least, most, false
}

// Seams implements Operation.
func (r *notDerived) Seams() (l measure.Surd, ok bool) { return l, false }

// OnRuler implements Operation.
func (r *notDerived) OnRuler() []OnRuler { return nil }

// Seamed implements Operation.
func (r *notDerived) Seamed() []Seamed { return nil }

// Trims implements Operation.
func (r *notDerived) Trims() []Trimming { return nil }

// Wants implements Operation.
func (r *notDerived) Wants() []Want { return nil }

// Serves implements Operation: what it would be is not known.
func (r *notDerived) Serves(Wanted) (Misfit, bool) { return Misfit{}, true }

// Gives implements Operation.
func (r *notDerived) Gives() *Giving { return nil }

// How implements Operation.
func (r *notDerived) How() say.Sentence { return say.Sentence{} }

// Traits implements Operation.
func (r *notDerived) Traits() Traits { return Traits{Sewn: true, Handed: true} }

// Draft implements Operation.
func (r *notDerived) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	return w, false
}

// Lay implements Operation.
func (r *notDerived) Lay(l *Laying, n Turns) {
	l.Untold(r.p)
}
