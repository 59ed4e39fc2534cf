package derive

import (
	"fmt"

	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// Shape is derived triangles, hexagons or diamonds, cut side by side from
// strips.
type Shape struct {
	piecing.Triangle60 // of triangles and their halves
	Kind               plan.ShapeKind
	Fabric             *Fabric        // nil of what is cut from a strip set
	Set                *Part          // the strip set; nil of what is cut from a fabric
	Exact              measure.Surd   // cut height of the strip by geometry
	Height             measure.Length // cut height of the strip; hexagons and diamonds grow by what it is over
	Cut                piecing.Box    // round one piece as it is cut
	Yield              Yield          // pieces from one strip or set
	Count              int64          // strips or sets, rounded up
	lengthFor          func(n int64) measure.Surd
}

// from is what a shape is cut from; nil where it is not known.
func (r *shape) from() *Shape {
	if r.op.Set.Given() {
		set := r.s.byName[r.op.Set.Text]
		if set == nil || !set.Known || set.Set == nil || set.Set.Cut != nil {
			return nil
		}
		return &Shape{Kind: r.op.Kind, Set: set, Height: set.Set.Width}
	}
	f := r.s.byFabric[r.op.Fabric.Text]
	if f == nil {
		return nil
	}
	return &Shape{Kind: r.op.Kind, Fabric: f, Height: r.op.Strip.Length}
}

// DiamondAngle is the angle that a diamond is cut at.
func DiamondAngle(k plan.ShapeKind) piecing.Angle {
	if k == plan.Diamond45 {
		return piecing.Degrees45
	}
	return piecing.Degrees60
}

// triangle gives a triangle the place that it takes in a row: half its finished
// side, and a quarter for a half one, so that m triangles between two halves come
// to (m+1) halves of the side. Derived from geometry.
func (h *Shape) triangle(p *Part, op plan.Shape) (perStrip func(measure.Length) int64) {
	seam := p.Seam.Allowance.Length
	t := piecing.Triangle60{Height: op.Finished.Surd(), Seam: seam, Blunt: op.Blunt}
	h.Triangle60, h.Exact = t, t.Strip()
	if h.Set == nil {
		h.Height, _ = t.Strip().Length() // exact: the plan's height and whole seams
	}
	h.Cut, h.lengthFor = piecing.Box{Width: t.CutSide(), Height: t.Strip()}, t.LengthFor
	place, perStrip := t.Side().DivInt(2), t.PerStrip
	if op.Kind == plan.HalfTriangle60 {
		place, perStrip, h.lengthFor = place.DivInt(2), t.HalfPerStrip, t.HalfLengthFor
		_, h.Cut.Width = t.HalfLegs()
	}
	both := (2 * seam).Surd()
	p.Box = piecing.Box{Width: place.Add(both), Height: op.Finished.Surd().Add(both)}
	return perStrip
}

// strip is what geometry asks for, rounded up to the ruler's marks unless the
// plan says a width.
func (h *Shape) strip(exact measure.Surd, grid measure.Length) {
	h.Exact = exact
	if h.Height == 0 {
		h.Height = exact.CeilTo(grid)
	}
}

// hexagon is as large as its strip makes it.
func (h *Shape) hexagon(seam measure.Length) (perStrip func(measure.Length) int64) {
	x := piecing.Hexagon{Side: (h.Height - 2*seam).Surd().Div(measure.Root3()), Seam: seam}
	h.Cut = piecing.Box{Width: x.Advance(), Height: h.Height.Surd()}
	h.lengthFor = func(n int64) measure.Surd { return x.Advance().MulInt(n) }
	return x.PerStrip
}

func (h *Shape) slanted(c piecing.Slant) (perStrip func(measure.Length) int64) {
	h.Cut = piecing.Box{Width: c.LengthFor(1), Height: c.Strip}
	h.lengthFor = c.LengthFor
	return c.PerStrip
}

// Over is how much wider the strip is cut than geometry asks for; negative when
// it is narrower.
func (h *Shape) Over() measure.Surd { return h.Height.Surd().Sub(h.Exact) }

// length is the length of strip that n pieces take, up to a tick.
func (h *Shape) length(n int64) measure.Length { return h.lengthFor(n).CeilTo(measure.Tick) }

// area of one piece as it is cut. Triangles and diamonds share out a strip
// between them; a half triangle is half of two head to tail, and a hexagon of
// height h has sqrt3/2 h^2. Derived from geometry.
func (h *Shape) area() measure.Surd {
	each := h.lengthFor(2).Sub(h.lengthFor(1))
	switch h.Kind {
	case plan.HalfTriangle60:
		each = h.lengthFor(2).DivInt(2)
	case plan.Hexagon:
		each = h.Height.Surd().Mul(measure.Root3()).DivInt(2)
	}
	return measure.Area(each, h.Height.Surd())
}

// ofLastStrip is how many shapes are cut from the last strip or set.
func (p *Part) ofLastStrip() int64 { return p.Needed - (p.Shape.Count-1)*p.Shape.Yield.Each }

// ShapesOf is how many of a shape are cut from a strip that is cut whole for it,
// or from the last one, of which only a part is used.
func (p *Part) ShapesOf(last bool) int64 {
	if last {
		return p.ofLastStrip()
	}
	return p.Shape.Yield.Each
}

// shape is triangles, hexagons or diamonds cut side by side from strips.
type shape struct {
	op plan.Shape
	p  *Part
	s  *Size
}

// Shape implements plan.Maker.
func (o *opening) Shape(op plan.Shape) { o.room = &shape{op: op, p: o.p, s: o.s} }

// each is how many pieces come from one strip, rounded down. Triangles stand up and
// down in turn: floor(2L / P) - 1 pointed, floor((L - (P-t)/2) / ((P+t)/2)) where the
// tip is cut off. Derived from geometry; see piecing.Triangle60.
func (r *shape) each(perStrip func(measure.Length) int64, l figure.F) figure.F {
	if !r.op.Kind.Triangular() {
		return r.eachSlanted(l)
	}
	s := r.p.Figures.seam
	h := figure.Said("h", "height of the triangle, finished", r.op.Finished.Length, r.op.Finished.At)
	if r.op.Kind == plan.HalfTriangle60 {
		n := measure.Rational(perStrip(l.Length()), 1)
		return figure.Given(figure.Count, n, "two head to tail in the length of their two widths", l, h, s).Telling(l, h, s)
	}
	side := h.Plus(s.By(3)).By(2).Over(figure.Root3()).Spelt("P", "cut side").Where(r.op.At)
	if !r.op.Blunt {
		return l.By(2).Over(side).Floor().Less(one).OrNone().Telling(l, h, s, side)
	}
	t := s.By(2).Over(figure.Root3()).As("t", "width of the cut tip").Where(r.op.At)
	return l.Less(side.Less(t).OverInt(2)).Over(side.Plus(t).OverInt(2)).Floor().OrNone().Apart(t).Telling(l, h, s, t, side)
}

// eachSlanted is each for a hexagon or diamond.
func (r *shape) eachSlanted(l figure.F) figure.F {
	exact := r.exact()
	w := r.stripFigure(exact)
	told := []figure.F{l, w, exact.Terms()[0], r.p.Figures.seam, exact}
	if r.op.Kind == plan.Hexagon {
		return l.Over(w.By(2).Over(figure.Root3())).Floor().OrNone().Telling(told...)
	}
	return slanted(l, w, w, DiamondAngle(r.op.Kind)).Telling(told...)
}

// stripFigure is the cut width of the strip: as the plan says it, or what geometry
// asks for up to the ruler's marks.
func (r *shape) stripFigure(exact figure.F) figure.F {
	const says = "cut width of the strip"
	switch {
	case r.op.Strip.Given():
		return figure.Said("w", says, r.op.Strip.Length, r.op.Strip.At)
	case r.p.Shape.Set != nil:
		return r.p.Shape.Set.Set.Wide.As("w", says).Quiet()
	}
	marks := figure.Said("", "the ruler's marks", r.s.rulerGrid(), source.Range{})
	return exact.CeilTo(marks).As("w", says).Where(source.Range{})
}

// exact is the width of strip that geometry asks for, of a hexagon or diamond of
// finished side a: a x sqrt3 + 2s, or a over the sine of the diamond's angle. Derived
// from geometry.
func (r *shape) exact() figure.F {
	a := figure.Said("a", "side, finished", r.op.Finished.Length, r.op.Finished.At)
	high := a.Times(figure.Root3())
	switch r.op.Kind {
	case plan.Diamond60:
		high = high.OverInt(2)
	case plan.Diamond45:
		high = a.Over(figure.Root2())
	}
	return high.Plus(r.p.both()).Spelt("", "width by geometry").Where(r.op.Finished.At)
}

// long is the length of what it is cut from.
func (h *Shape) long() figure.F {
	if h.Set != nil {
		return h.Set.Set.Long.As("L", "usable length of a strip")
	}
	return h.Fabric.longFigure().As("L", "usable length of a strip").Where(h.Fabric.StripLength().At)
}

// Cautions implements cautioned.
func (r *shape) Cautions() []string {
	if r.p.Shape == nil {
		return nil
	}
	return []string{"bias-edges"}
}

// Measure implements Operation. What is no triangle has no place in a row or
// grid, and its size is that of the box round it as cut.
func (r *shape) Measure() {
	p := r.p
	shape := r.from()
	if shape == nil {
		return
	}
	seam := p.Seam.Allowance.Length
	p.Shape, p.Known = shape, true
	perStrip := func(measure.Length) int64 { return 0 }
	switch r.op.Kind {
	case plan.Triangle60, plan.HalfTriangle60:
		perStrip = shape.triangle(p, r.op)
	case plan.Hexagon:
		shape.strip(r.exact().Surd(), r.s.rulerGrid())
		perStrip = shape.hexagon(seam)
	case plan.Diamond60, plan.Diamond45:
		angle := DiamondAngle(r.op.Kind)
		shape.strip(r.exact().Surd(), r.s.rulerGrid())
		perStrip = shape.slanted(piecing.Slant{Strip: shape.Height.Surd(), Width: shape.Height.Surd(), Angle: angle})
	}
	if !r.op.Kind.Triangular() {
		p.Box = shape.Cut
	}
	l := shape.long()
	shape.Yield = newYield(r.each(perStrip, l).Is(p.Name.Text, "triangles from one strip"), l.Length(), shape.length)
	p.Figures.Count = figure.Unknown(shape.Yield.Told)
}

// Ask implements Operation: for strips or strip sets. Of the last one only what
// its pieces take is used.
func (r *shape) Ask() {
	p, h := r.p, r.p.Shape
	if h == nil || h.Yield.Each == 0 {
		return
	}
	p.Figures.Count = p.inBatches("strips", p.neededTerm(), h.Yield.Told)
	h.Count = p.Figures.Count.N()
	if h.Set != nil {
		h.Set.call(p.Figures.Count, p)
		return
	}
	last := h.length(p.ofLastStrip())
	h.Fabric.ask(Need{For: p.Name, Strip: true, Across: h.Fabric.stripLength(), Along: h.Height, Count: h.Count, Last: last})
	h.Fabric.mustCover(h.area().MulInt(p.Needed))
}

// Covers implements Operation.
func (r *shape) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	if r.p.Shape == nil {
		return least, most, false
	}
	return exactArea(r.p.Shape.finishedArea(seam))
}

// Seams implements Operation: it is only cut.
func (r *shape) Seams() (l measure.Surd, ok bool) { return l, true }

// OnRuler implements Operation.
func (r *shape) OnRuler() []OnRuler {
	if r.p.Shape == nil {
		return nil
	}
	at := r.op.Finished.At
	if r.op.Strip.Given() {
		at = r.op.Strip.At
	}
	return []OnRuler{{"strip", plan.Length{Length: r.p.Shape.Height, At: at}}}
}

// Seamed implements Operation.
func (r *shape) Seamed() []Seamed { return nil }

// Trims implements Operation.
func (r *shape) Trims() []Trimming { return nil }

// Wants implements Operation.
func (r *shape) Wants() []Want {
	if !r.op.Set.Given() {
		return nil
	}
	return []Want{{Part: r.op.Set, To: WholeSet, By: "shape " + r.p.quoted()}}
}

// Serves implements Operation.
func (r *shape) Serves(w Wanted) (Misfit, bool) {
	m := Misfit{Loose: r.op.Kind.Noun(), Sewn: "sew it into a mosaic and name that"}
	if r.op.Kind.Triangular() {
		m.Sewn = "sew the triangles into rows and name those"
		return m, w == InRow
	}
	return m, false
}

// Gives implements Operation.
func (r *shape) Gives() *Giving {
	if r.p.Shape == nil {
		return nil
	}
	return &Giving{r.op.Kind.Noun(), "strip", r.op.Finished.At}
}

// How implements Operation.
func (r *shape) How() say.Sentence {
	h := r.p.Shape
	if h.Set != nil {
		return say.That("cut from %s %s, %s wide, %d from each, %s; every other one has the strips the other way up",
			say.Many(h.Count, "strip set"), h.Set.Name.Text, say.AsCut(h.Height), h.Yield.Each, h.Cutting())
	}
	return say.That("cut from %s %s wide of %s, %d from each, %s", say.Many(h.Count, "strip"), say.AsCut(h.Height), h.Fabric.Role.Text, h.Yield.Each, h.Cutting())
}

// Cutting says how a strip is cut.
func (h *Shape) Cutting() string {
	switch {
	case h.Kind == plan.HalfTriangle60:
		return "half triangles of 60 degrees in pairs, head to tail; a pair that slopes the other way gives their mirror images"
	case h.Kind == plan.Hexagon:
		return "hexagons, two sides along the strip, every corner of them 120 degrees"
	case !h.Kind.Triangular():
		return fmt.Sprintf("diamonds with points of %d degrees, all cuts as far apart as the strip is wide", DiamondAngle(h.Kind))
	case h.Blunt:
		return "triangles of 60 degrees, up and down in turn, their tips cut off"
	}
	return "triangles of 60 degrees, up and down in turn"
}

// Fit implements Fitted.
func (r *shape) Fit() []say.Sentence {
	h := r.p.Shape
	note := spare(h.Kind.Noun(), h.Yield)
	if over := h.Over(); over.Sign() > 0 {
		note = note.And(say.That("; strip by geometry %s, cut %s over: trim every piece to its finished size and the seams", say.AsCut(h.Exact), say.AsThere(over)))
	}
	return []say.Sentence{note}
}

// Traits implements Operation.
func (r *shape) Traits() Traits { return Traits{Sewn: true, Handed: true, Cut: true} }

// Draft implements Operation: by itself it has no place; a row of triangles is
// drafted as a whole.
func (r *shape) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	return w, false
}

// Lay implements Operation. Triangles of 60 degrees are cut up and down in turn,
// each kind upright where it is sewn as it was cut.
func (r *shape) Lay(l *Laying, n Turns) {
	if r.op.Kind != plan.Triangle60 {
		l.Untold(r.p)
		return
	}
	roles := []plan.Text{r.op.Fabric}
	if r.p.Shape.Set != nil {
		roles = r.p.Shape.Set.Set.roles()
	}
	for _, role := range roles {
		l.Place(role, r.p.Name, Turned, n, func(q Quarters, f *Fabric) int64 {
			wrong := q[1] + q[3]
			if f.Print == plan.OneWay {
				wrong += gap(q[0], q[2]) / 2
			}
			return wrong
		})
	}
}

// Faults implements Faulty: a strip that is too narrow, or a strip set that is not
// as wide as the triangles are high.
func (r *shape) Faults() []Fault {
	h := r.p.Shape
	switch {
	case h == nil:
		return nil
	case h.Set != nil:
		return r.setFaults()
	case h.Over().Sign() >= 0:
		return nil
	}
	return []Fault{{
		Kind: ShapeStrip, At: r.op.Strip.At,
		Message: say.That("the strip for %q is %s wide, and a %s of %s takes %s", r.p.Name.Text, say.Long(r.op.Strip), r.op.Kind.Noun(),
			say.Long(r.op.Finished), say.AsCut(h.Exact)),
		Hint:    say.That("cut it %s wide", say.AsCut(h.Exact.CeilTo(r.s.rulerGrid()))),
		Related: []Place{{r.op.Finished.At, "the finished side"}},
	}}
}

// setFaults: triangles are as high as their strip set makes them, so it must be
// exactly as wide as they take.
func (r *shape) setFaults() []Fault {
	h := r.p.Shape
	if h.Over().IsZero() {
		return nil
	}
	return []Fault{{
		Kind: ShapeStrip, At: r.op.Finished.At,
		Message: say.That("%q is cut from strip sets %s wide, and a %s %s high takes %s", r.p.Name.Text, say.Long(h.Height), r.op.Kind.Noun(),
			say.Long(r.op.Finished), say.AsCut(h.Exact)),
		Hint:    say.That("make the strips of the set wider or narrower, or the triangles %s high", say.Long(r.op.Finished.Surd().Add(h.Over()))),
		Related: []Place{{r.op.Set.At, "the strip set"}},
	}}
}

// Striping implements Stripwise.
func (r *shape) Striping() Striping {
	h := r.p.Shape
	return Striping{h.Count, 1, say.That("%s at %d a strip take", say.Many(r.p.Needed, r.op.Kind.Noun()), h.Yield.Each)}
}

// Degrees implements Angled.
func (r *shape) Degrees() int {
	if r.op.Kind == plan.Diamond45 {
		return 45
	}
	return 60
}
