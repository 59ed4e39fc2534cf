package derive

import (
	"fmt"

	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
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

// TellSize implements sizeTold.
func (r *stripSet) TellSize() *report.Work {
	if r.p.Set == nil {
		return nil
	}
	return r.s.once(r.p.Name.Text+", width of the strip set T", r.tellWidth)
}

func (r *stripSet) tellWidth() *report.Work {
	w := &report.Work{Formula: "sum of the strips' cut widths - 2(n-1)s", Value: r.s.length(r.p.Set.Width)}
	w.Terms = append(w.Terms, term("n", "strips", report.N(int64(len(r.p.Set.Strips))), r.p.Name.At))
	for i, strip := range r.p.Set.Strips {
		w.Terms = append(w.Terms, term(fmt.Sprintf("w%d", i+1), "cut width of a strip of "+strip.Fabric.Role.Text, r.s.length(strip.Width), strip.At.At))
	}
	w.Terms = append(w.Terms, r.s.seamTerm(r.p.Seam))
	return w
}

// TellYield implements yieldTold.
func (r *stripSet) TellYield() *report.Work {
	if r.p.Set == nil || r.p.Set.Cut == nil {
		return nil
	}
	return r.s.once(r.p.Name.Text+", segments from one strip set", r.tellSegments)
}

func (r *stripSet) tellSegments() *report.Work {
	return &report.Work{
		Formula: "floor(L / segment)", Value: report.N(r.p.Set.Cut.Each),
		Terms: []report.Term{
			term("L", "usable length of the shortest strip", r.s.length(r.p.Set.Length), r.p.Set.lengthAt()),
			term("segment", "cut width", r.s.length(r.op.Segment.Length), r.op.Segment.At),
		},
	}
}

// TellCount implements countTold.
func (r *stripSet) TellCount() *report.Work {
	if r.p.Set == nil || r.p.Set.Cut == nil {
		return r.s.NeededWork(r.p)
	}
	return r.s.batchWork(r.p, "strip sets", r.p.Set.Count, because(report.N(r.p.Set.Cut.Each), r.TellYield()))
}

// Measure implements Operation.
func (r *stripSet) Measure() {
	if r.op.Of.Given() {
		r.segment()
		return
	}
	set := &Set{}
	var widths []measure.Length
	for i, strip := range r.op.Strips {
		f := r.s.byFabric[strip.Fabric.Text]
		if f == nil {
			return
		}
		w := f.stripWidth(strip.Width)
		set.Strips = append(set.Strips, Strip{Fabric: f, Width: w, At: strip.Fabric, Said: strip.Width.At})
		widths = append(widths, w)
		if l := f.stripLength(); i == 0 || l < set.Length {
			set.Length = l
		}
	}
	set.Width = piecing.SetWidth(widths, r.p.Seam.Allowance.Length)
	r.p.Set, r.p.Known = set, set.Width > 0
	r.cut()
}

// segment cuts segments from a set that another part makes.
func (r *stripSet) segment() {
	of := r.s.byName[r.op.Of.Text]
	if of == nil || !of.Known || of.Set == nil || of.Set.Cut != nil {
		return
	}
	r.p.Set, r.p.Known, r.p.Seam = &Set{Width: of.Set.Width, Length: of.Set.Length, Strips: of.Set.Strips, Of: of}, true, of.Seam
	r.cut()
}

// cut cuts segments from the set where the plan says so.
func (r *stripSet) cut() {
	set := r.p.Set
	r.p.Box = piecing.Box{Width: set.Length.Surd(), Height: set.Width.Surd()}
	if r.op.Segment.Given() {
		set.Cut = segments(set.Length, r.op.Segment.Length)
		r.p.Width = r.op.Segment.Surd()
		r.p.Subcut = &Subcut{Width: r.op.Segment.Length, Each: 1, From: r.p, how: fmt.Sprintf("%s at %d", r.op.Of.Text, r.op.Angle.N)}
		if set.Of != nil {
			r.p.Subcut.From = set.Of
		}
		if r.op.Angle.Given() {
			set.slant(piecing.Slant{Strip: set.Width.Surd(), Width: r.op.Segment.Surd(), Angle: piecing.Angle(r.op.Angle.N)})
			r.p.Width = set.Slant.LengthFor(1)
		}
	}
}

// slant cuts the set's segments at an angle. Of the box round one its width is
// the length of set that it takes.
func (set *Set) slant(c piecing.Slant) {
	length := func(n int64) measure.Length { return c.LengthFor(n).CeilTo(measure.Tick) }
	y := newYield(c.PerStrip(set.Length), set.Length, length)
	set.Slant, set.Cut = &c, &y
}

func segments(l, segment measure.Length) *Yield {
	y := newYield(piecing.PerStrip(l, segment), l, func(n int64) measure.Length { return measure.Length(n) * segment })
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
