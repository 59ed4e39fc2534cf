package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// template is a piece cut round a template.
type template struct {
	unitRoom
	op plan.Template
}

// Template implements plan.Maker.
func (o *opening) Template(op plan.Template) {
	o.room = &template{unitRoom: unitRoom{o.p, o.s}, op: op}
}

// Measure implements Operation: it takes the plan's word for what the piece fills.
func (r *template) Measure() {
	p := r.p
	f := r.s.byFabric[r.op.Fabric.Text]
	if f == nil {
		return
	}
	box := Piece{What: "box", Fabric: f, Width: r.op.Box[0].Length, Height: r.op.Box[1].Length, Count: 1, At: r.op.Box[0].At, Said: true, Fixed: r.op.Grain != plan.AnyGrain}
	switch r.op.Grain {
	case plan.GrainAcross:
		box.Width, box.Height = box.Height, box.Width
	case plan.GrainBias:
		// Turned by 45 degrees, a box takes a square of (w + h) / sqrt2. Derived
		// from geometry.
		box.OnBias = &OnBias{Width: min(box.Width, box.Height), Length: max(box.Width, box.Height)}
		side := (box.Width + box.Height).Surd().Div(measure.Root2()).CeilTo(r.s.rulerGrid())
		box.What, box.Width, box.Height, box.Said = "square round the box on the bias", side, side, false
	}
	box.Exact = piecing.Box{Width: box.Width.Surd(), Height: box.Height.Surd()}
	whole := measure.Area(r.op.Box[0].Surd(), r.op.Box[1].Surd())
	if area := measure.Min(r.op.AreaIn(r.s.Plan.Units), whole); r.op.Grain == plan.GrainBias || area.Cmp(whole) < 0 {
		box.Within = &area
	}
	u := &Unit{Each: 1, Pieces: []Piece{box}}
	u.Sewn = piecing.Box{Width: r.op.Box[0].Surd(), Height: r.op.Box[1].Surd()}
	if r.op.Finished[0].Given() {
		u.Sewn = *unfinished(r.op.Finished[0], r.op.Finished[1], p.Seam.Allowance.Length)
	}
	r.becomes(u, figure.Given(figure.Length, u.Sewn.Width, "the template's", p.Figures.seam))
	p.Bias = r.op.Grain == plan.GrainBias
}

// Covers implements Operation: no more than the box that it fills, nor than its
// area, and what is sewn on top of other pieces covers nothing more.
func (r *template) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	if r.op.Applique {
		return least, most, true
	}
	_, most, _ = r.p.rectangle(seam)
	area, box := r.op.AreaIn(r.s.Plan.Units), measure.Area(r.op.Box[0].Surd(), r.op.Box[1].Surd())
	switch {
	case r.op.Area == nil:
	case area.Cmp(box) >= 0: // it is the whole box
		return exactArea(most)
	default:
		most = measure.Min(most, area)
	}
	return least, most, true
}

// Seams implements Operation: it is only cut.
func (r *template) Seams() (l measure.Surd, ok bool) { return l, true }

// Wants implements Operation.
func (r *template) Wants() []Want { return nil }

// Serves implements Operation.
func (r *template) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// How implements Operation.
func (r *template) How() say.Sentence {
	c := r.p.Unit.Pieces[0]
	if b := c.Fabric.sideBySide(r.p); b != nil {
		return say.That("cut round its template from bias strips of %s, %s wide and %s long", c.Fabric.Role.Text, say.AsCut(b.Width), say.AsCut(b.Length))
	}
	text := say.That("cut round its template from %s of %s", say.CutBy(c.Width, c.Height), c.Fabric.Role.Text)
	switch r.op.Grain {
	case plan.GrainAlong:
		return text.And(say.That(", the template upright along the selvages"))
	case plan.GrainAcross:
		return text.And(say.That(", the template upright across the selvages"))
	case plan.GrainBias:
		return text.And(say.That(", the template on the bias"))
	case plan.AnyGrain:
	}
	return text
}

// Fit implements Fitted: first how much of its box the piece leaves, where the plan
// gives its area, and that nothing proves its outline.
func (r *template) Fit() []say.Sentence {
	note := say.That("not proved: its outline and fit are the template's")
	if r.op.Area != nil {
		box := measure.Area(r.op.Box[0].Surd(), r.op.Box[1].Surd())
		note = note.And(say.That("; fills %s of a box of %s", say.Area(r.op.AreaIn(r.s.Plan.Units)), say.Area(box)))
	}
	return append([]say.Sentence{note}, r.unitRoom.Fit()...)
}

// Traits implements Operation.
func (r *template) Traits() Traits { return Traits{Sewn: true, Handed: true, Cut: true, OnTrust: true} }

// Draft implements Operation.
func (r *template) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	return unproved(r.p.Box)
}

// Lay implements Operation.
func (r *template) Lay(l *Laying, n Turns) {
	degrees := [...]int{plan.AnyGrain: 0, plan.GrainAlong: 0, plan.GrainAcross: 90, plan.GrainBias: 45}
	l.Place(r.op.Fabric, r.p.Name, Turned, n.turned(degrees[r.op.Grain]), Quarters.turned)
}

// Faults implements Faulty: a piece larger than the box that it is cut from.
func (r *template) Faults() []Fault {
	if r.op.Area == nil {
		return nil
	}
	area, box := r.op.AreaIn(r.s.Plan.Units), measure.Area(r.op.Box[0].Surd(), r.op.Box[1].Surd())
	if area.Cmp(box) <= 0 {
		return nil
	}
	return []Fault{{
		Kind: TemplateArea, At: r.op.AreaAt,
		Message: say.That("%q is said to cover %s, and its box of %s only holds %s", r.p.Name.Text, say.Area(area), say.By(r.op.Box[0].Length, r.op.Box[1]), say.Area(box)),
		Hint:    say.That("correct the area or the box"),
		Related: []Place{{r.op.Box[0].At, "the box"}},
	}}
}
