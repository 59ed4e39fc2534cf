package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// wholeStrip is a strip across the fabric.
type wholeStrip struct {
	op plan.WholeStrip
	p  *Part
	s  *Size
}

// WholeStrip implements plan.Maker.
func (o *opening) WholeStrip(op plan.WholeStrip) {
	o.room = &wholeStrip{op: op, p: o.p, s: o.s}
}

// Measure implements Operation.
func (r *wholeStrip) Measure() {
	f := r.s.byFabric[r.op.Fabric.Text]
	if f == nil {
		return
	}
	r.p.Known = true
	r.p.Box = piecing.Box{Width: f.stripLength().Surd(), Height: f.stripWidth(r.op.Width).Surd()}
}

// Ask implements Operation.
func (r *wholeStrip) Ask() {
	p, f := r.p, r.s.byFabric[r.op.Fabric.Text]
	if f == nil {
		return
	}
	width := f.stripWidth(r.op.Width)
	f.ask(Need{For: p.Name, At: r.op.Width.At, Strip: true, Across: f.stripLength(), Along: width, Count: p.Needed})
	f.mustHold(p.Name, f.stripLength(), width, p.Needed)
}

// Covers implements Operation.
func (r *wholeStrip) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	return r.p.rectangle(seam)
}

// Seams implements Operation: it is only cut.
func (r *wholeStrip) Seams() (l measure.Surd, ok bool) { return l, true }

// OnRuler implements Operation.
func (r *wholeStrip) OnRuler() []OnRuler {
	return []OnRuler{{"strip width", r.op.Width}}
}

// Seamed implements Operation.
func (r *wholeStrip) Seamed() []Seamed { return nil }

// Trims implements Operation.
func (r *wholeStrip) Trims() []Trimming { return nil }

// Wants implements Operation.
func (r *wholeStrip) Wants() []Want { return nil }

// Serves implements Operation.
func (r *wholeStrip) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// Gives implements Operation.
func (r *wholeStrip) Gives() *Giving { return nil }

// How implements Operation: the cut list says it.
func (r *wholeStrip) How() say.Sentence { return say.Sentence{} }

// Traits implements Operation.
func (r *wholeStrip) Traits() Traits { return Traits{Handed: true, Cut: true, Running: true} }

// Draft implements Operation.
func (r *wholeStrip) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	fabric, ok := d.Fabric(r.op.Fabric.Text)
	return piecing.Plain(r.p.Box, fabric), ok
}

// Lay implements Operation.
func (r *wholeStrip) Lay(l *Laying, n Turns) {
	l.Place(r.op.Fabric, r.p.Name, Turned, n, Quarters.turned)
}

// Strips implements Striped.
func (r *wholeStrip) Strips() []plan.Strip {
	return []plan.Strip{{Fabric: r.op.Fabric, Width: r.op.Width}}
}

// Striping implements Stripwise.
func (r *wholeStrip) Striping() Striping {
	return Striping{r.p.Needed, 1, say.That("the layout calls for")}
}
