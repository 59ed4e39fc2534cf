package derive

import (
	"fmt"
	"slices"

	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// stripSet is strips sewn side by side.
type stripSet struct {
	op plan.StripSet
	p  *Part
	s  *Size
}

// StripSet implements plan.Maker.
func (o *opening) StripSet(op plan.StripSet) { o.room = &stripSet{op: op, p: o.p, s: o.s} }

// lengthAt is where the plan says how long its shortest strip is.
func (set *Set) lengthAt() source.Range {
	for _, strip := range set.Strips {
		if strip.Fabric.stripLength() == set.Length {
			return strip.Fabric.StripLength().At
		}
	}
	return source.Range{}
}

// Measure implements Operation.
func (r *stripSet) Measure() {
	if r.op.Of.Given() {
		r.segment()
		return
	}
	set := &Set{}
	var widths []figure.F
	for i, strip := range r.op.Strips {
		f := r.s.byFabric[strip.Fabric.Text]
		if f == nil {
			return
		}
		w := f.stripWidth(strip.Width)
		set.Strips = append(set.Strips, Strip{Fabric: f, Width: w, At: strip.Fabric, Said: strip.Width.At})
		widths = append(widths, figure.Said(upTo("w", i), "cut width of a strip of "+f.Role.Text, w, strip.Fabric.At))
		if l := f.stripLength(); i == 0 || l < set.Length {
			set.Length = l
		}
	}
	set.Wide, set.Long = r.wide(widths), set.longFigure()
	set.Width = set.Wide.Length()
	r.p.Set, r.p.Known = set, set.Width > 0
	r.cut()
}

// wide is the width, raw edge to raw edge, of strips sewn side by side: T = w1 + ...
// + wn - 2(n-1)s. Derived from geometry; the seam is the drafted one, as "scant" is
// an instruction to the sewer and no number of the draft.
func (r *stripSet) wide(widths []figure.F) figure.F {
	n := figure.Counted("n", "strips", int64(len(widths)), r.p.Name.At)
	return r.named(r.p.inRow("sum of the strips' cut widths", n, widths...), n, widths)
}

func (r *stripSet) named(wide, n figure.F, widths []figure.F) figure.F {
	return wide.Is(r.p.Name.Text, "width of the strip set T").Telling(slices.Concat([]figure.F{n}, widths, []figure.F{r.p.Figures.seam})...)
}

// segment cuts segments from a set that another part makes.
func (r *stripSet) segment() {
	of := r.s.byName[r.op.Of.Text]
	if of == nil || !of.Known || of.Set == nil || of.Set.Cut != nil {
		return
	}
	r.p.Set, r.p.Known, r.p.Seam, r.p.Figures.seam = &Set{Width: of.Set.Width, Long: of.Set.Long, Length: of.Set.Length, Strips: of.Set.Strips, Of: of}, true, of.Seam, of.Figures.seam
	n := figure.Counted("n", "strips", int64(len(of.Set.Strips)), r.p.Name.At)
	told := of.Set.Wide.Terms()
	r.p.Set.Wide = r.named(of.Set.Wide, n, told[1:len(told)-1])
	r.cut()
}

// cut cuts segments from the set where the plan says so.
func (r *stripSet) cut() {
	set := r.p.Set
	r.p.Figures.Size = set.Wide
	r.p.Box = piecing.Box{Width: set.Length.Surd(), Height: set.Width.Surd()}
	if r.op.Segment.Given() {
		segment := figure.Said("segment", "cut width", r.op.Segment.Length, r.op.Segment.At)
		set.Cut = segments(r.p, "segments from one strip set", set.Long, segment)
		r.p.Figures.Count = figure.Unknown(set.Cut.Told)
		r.p.Width = r.op.Segment.Surd()
		r.p.Subcut = &Subcut{Width: r.op.Segment.Length, Each: 1, From: r.p, how: fmt.Sprintf("%s at %d", r.op.Of.Text, r.op.Angle.N)}
		if set.Of != nil {
			r.p.Subcut.From = set.Of
		}
		if r.op.Angle.Given() {
			set.slant(r.p, piecing.Slant{Strip: set.Width.Surd(), Width: r.op.Segment.Surd(), Angle: piecing.Angle(r.op.Angle.N)}, segment)
			r.p.Width = set.Slant.LengthFor(1)
		}
	}
}

// slant cuts the set's segments at an angle. Of the box round one its width is
// the length of set that it takes.
func (set *Set) slant(p *Part, c piecing.Slant, segment figure.F) {
	length := func(n int64) measure.Length { return c.LengthFor(n).CeilTo(measure.Tick) }
	y := newYield(slanted(set.Long, set.Wide.As("T", "width of the strip set"), segment, c.Angle).
		Is(p.Name.Text, "segments from one strip set"), set.Length, length)
	set.Slant, set.Cut = &c, &y
}

// slanted is how many pieces a strip gives that is cut at an angle, rounded down:
// floor((L - waste) / advance), where the first cut wastes the strip's height over
// the angle's tangent and each advances by the cut width over its sine. Derived
// from geometry.
func slanted(l, high, width figure.F, angle piecing.Angle) figure.F {
	if angle == piecing.Degrees45 {
		return l.Less(high).Over(width.Times(figure.Root2())).Floor().OrNone()
	}
	return l.Less(high.Over(figure.Root3())).Over(width.By(2).Over(figure.Root3())).Floor().OrNone()
}

// segments is how many pieces of a length come from one strip set or loop of length
// L, rounded down.
func segments(p *Part, what string, l, piece figure.F) *Yield {
	each := piece.Length()
	y := newYield(l.Over(piece).Floor().Is(p.Name.Text, what), l.Length(), func(n int64) measure.Length { return measure.Length(n) * each })
	return &y
}

// Ask implements Operation. Of segments the pool asks.
func (r *stripSet) Ask() {
	if r.p.Set != nil && r.p.Set.Cut == nil {
		r.p.askSets(true)
	}
}

// Covers implements Operation: of a segment. What a set covers that is used whole
// is not known.
func (r *stripSet) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	switch set := r.p.Set; {
	case set == nil || set.Cut == nil:
		return least, most, false
	case set.Slant != nil:
		return exactArea(parallelogram(*set.Slant, seam))
	}
	return r.p.rectangle(seam)
}

// Seams implements Operation.
func (r *stripSet) Seams() (l measure.Surd, ok bool) {
	set := r.p.Set
	if set == nil {
		return l, false
	}
	if set.Of != nil {
		return l, true // the set has them
	}
	return piecing.SetSeams(int64(len(set.Strips)), set.Length).Surd().MulInt(set.Count), true
}

// OnRuler implements Operation.
func (r *stripSet) OnRuler() []OnRuler {
	out := []OnRuler{{"segment", r.op.Segment}}
	for _, strip := range r.op.Strips {
		out = append(out, OnRuler{"strip width", strip.Width})
	}
	return out
}

// Seamed implements Operation.
func (r *stripSet) Seamed() []Seamed {
	if r.p.Set == nil {
		return nil
	}
	var out []Seamed
	both := 2 * r.p.Seam.Allowance.Length
	for i, strip := range r.p.Set.Strips {
		if r.op.Of.Given() {
			break // the set says them
		}
		at := r.op.Strips[i].Width.At
		if at == (source.Range{}) {
			at = strip.At.At
		}
		out = append(out, Seamed{fmt.Sprintf("strip %d", i+1), strip.Width, both, at})
	}
	if r.op.Segment.Given() {
		out = append(out, Seamed{"the segment", r.op.Segment.Length, both, r.op.Segment.At})
	}
	return out
}

// Trims implements Operation.
func (r *stripSet) Trims() []Trimming { return nil }

// Wants implements Operation.
func (r *stripSet) Wants() []Want {
	if !r.op.Of.Given() {
		return nil
	}
	return []Want{{Part: r.op.Of, To: WholeSet, By: "segment " + r.p.quoted()}}
}

// Serves implements Operation.
func (r *stripSet) Serves(w Wanted) (Misfit, bool) {
	if w == WholeSet {
		return Misfit{Segment: r.op.Segment}, !r.op.Segment.Given()
	}
	if r.op.Angle.Given() {
		return Misfit{Loose: "segment cut at an angle", Sewn: "sew it into a mosaic and name that"}, false
	}
	return sewn(w)
}

// Gives implements Operation.
func (r *stripSet) Gives() *Giving {
	if r.p.Set == nil || r.p.Set.Cut == nil {
		return nil
	}
	return &Giving{"segment", "strip set", r.op.Segment.At}
}

// How implements Operation.
func (r *stripSet) How() say.Sentence {
	p, set := r.p, r.p.Set
	if p.Pool != nil || set.Of != nil {
		return r.shared()
	}
	text := say.That("%s of %s", say.Many(set.Count, "strip set"), listed(set.Strips))
	if set.Cut == nil {
		return text
	}
	return text.And(say.That(", cut into %s, %d from each", r.segments(), set.Cut.Each))
}

// shared says how segments are cut that share their strip sets with others, or
// are cut from a set that another part makes.
func (r *stripSet) shared() say.Sentence {
	p, set := r.p, r.p.Set
	if p.Pool == nil {
		return say.That("%s of %s cut into %s, %d from each", say.Many(set.Count, "set"), r.op.Of.Text, r.segments(), set.Cut.Each)
	}
	if first := p.Pool.Parts[0]; first != p {
		return say.That("cut from the same sets as %s into %s", first.Name.Text, r.segments())
	}
	text := say.That("%s of %s", say.Many(set.Count, "strip set"), listed(set.Strips))
	if r.op.Of.Given() {
		text = say.That("%s of %s", say.Many(set.Count, "set"), r.op.Of.Text)
	}
	return text.And(say.That(" cut into %s%s: %s", r.segments(), p.Pool.others(), p.Pool.told("set")))
}

// segments are the segments that it is cut into, by width and angle.
func (r *stripSet) segments() say.Sentence {
	text := say.That("segments of %s", say.AsCut(r.op.Segment))
	if !r.op.Angle.Given() {
		return text
	}
	return text.And(say.That(" at %d degrees to the strips", r.op.Angle.N))
}

// Notes implements Noted.
func (r *stripSet) Notes() (out []say.Sentence) {
	set := r.p.Set
	switch {
	case r.p.Pool != nil:
		out = r.p.Pool.notes(r.p)
	case set.Cut != nil:
		out = append(out, spare("segment", *set.Cut))
	}
	if set.Cut == nil {
		out = append(out, say.That("set is %s wide", say.Long(set.Width)))
	}
	if g, ok := r.s.PackGives(r.p); ok {
		out = append(out, say.That("%s would give %s, %s", say.Many(g.Packs, "pack"), say.Many(g.Sets, "set"), over(g.StripsOver, "strip")))
	}
	return out
}

// over is what is left of something.
func over(n int64, noun string) string {
	if n == 0 {
		return "nothing over"
	}
	return say.Many(n, noun) + " over"
}

// Traits implements Operation.
func (r *stripSet) Traits() Traits {
	if r.op.Segment.Given() {
		return Traits{Sewn: true, Cut: true, From: FromCutSets}
	}
	return Traits{Sewn: true, Cut: true, From: FromSets, Running: true}
}

// Draft implements Operation.
func (r *stripSet) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	p, set := r.p, r.p.Set
	if set.Slant != nil {
		return set.Slant.Segment(p.sewnStrips(d, set.Strips, set.Length.Surd()), 0), set.Cut.Each > 0
	}
	return p.sewnStrips(d, set.Strips, p.Width), true
}

// Lay implements Operation.
func (r *stripSet) Lay(l *Laying, n Turns) {
	if r.op.Angle.Given() {
		l.Untold(r.p)
		return
	}
	for _, role := range r.p.Set.roles() {
		l.Place(role, r.p.Name, Turned, n, Quarters.turned)
	}
}

// Strips implements Striped.
func (r *stripSet) Strips() []plan.Strip { return r.op.Strips }

// Striping implements Stripwise.
func (r *stripSet) Striping() Striping {
	n := int64(len(r.p.Set.Strips))
	return Striping{r.p.Set.Count * n, n, say.That("%s of %d strips take", say.Many(r.p.Set.Count, "strip set"), n)}
}

// Degrees implements Angled.
func (r *stripSet) Degrees() int { return r.op.Angle.N }
