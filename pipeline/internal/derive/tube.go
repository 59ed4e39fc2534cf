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

// tube is two strip sets sewn into a tube, and the squares cut from it.
type tube struct {
	op plan.Tube
	p  *Part
	s  *Size
}

// Tube implements plan.Maker.
func (o *opening) Tube(op plan.Tube) { o.room = &tube{op: op, p: o.p, s: o.s} }

// narrower is the set that decides how wide the tube is.
func (t *Tube) narrower() *Part {
	if t.Sets[1].Set.Width < t.Sets[0].Set.Width {
		return t.Sets[1]
	}
	return t.Sets[0]
}

// shorter is the set that decides how long the tube is.
func (t *Tube) shorter() *Part {
	if t.Sets[1].Set.Length < t.Sets[0].Set.Length {
		return t.Sets[1]
	}
	return t.Sets[0]
}

// Cautions implements cautioned.
func (r *tube) Cautions() []string {
	switch t := r.p.Tube; {
	case t == nil:
		return nil
	case t.Stub() > 0:
		return []string{"bias-edges", "unpick-tip"}
	}
	return []string{"bias-edges"}
}

// Kinds implements twofold.
func (r *tube) Kinds() *Kinds {
	if r.p.Tube == nil {
		return nil
	}
	return &r.p.Tube.Kinds
}

// Measure implements Operation.
func (r *tube) Measure() {
	p := r.p
	a, b := r.s.byName[r.op.Sets[0].Text], r.s.byName[r.op.Sets[1].Text]
	if a == nil || b == nil || !a.Known || !b.Known || a.Set == nil || b.Set == nil || a.Set.Cut != nil || b.Set.Cut != nil {
		return
	}
	t := &Tube{of: p, Sets: [2]*Part{a, b}, Ends: r.op.Ends, EndsAt: r.op.EndsAt, Aside: r.op.SetsASide()}
	t.Lie = [2][]Strip{a.Set.Strips, b.Set.Strips}
	if r.op.EndForEnd {
		t.Lie[1] = slices.Clone(t.Lie[1])
		slices.Reverse(t.Lie[1])
	}
	seam := p.Seam.Allowance.Length
	t.Tube = piecing.Tube{Width: min(a.Set.Width, b.Set.Width), Seam: seam, Beyond: r.op.Tip.Beyond.Length}
	if r.op.Tip.RawEdge {
		t.Beyond = seam
	}
	p.Tube, p.Bias = t, true
	r.lay()
	p.Known = t.Height() > 0 && a.Set.Width == b.Set.Width
	r.op.Trim = line(r.op.Trim, r.op.DownTo, p.Figures.Size.Surd())
	p.trimmed(p.Figures.Size, r.op.Trim)
	if r.op.Trim.Given() {
		p.Figures.Size = p.Figures.Size.Telling(t.High, figure.Said("", "trimmed to", r.op.Trim.Length, r.op.Trim.At))
	}
	p.comesTo(r.op)
}

// lay works out the triangle that is cut from the tube, the side of the square that
// it opens into, and how many a tube gives. With the ears kept whole the first
// triangle reaches down to the near raw edge. All formulas are derived from geometry;
// see piecing.Tube.
func (r *tube) lay() {
	p, t, s := r.p, r.p.Tube, r.p.Figures.seam
	e := figure.Said("e", "the tip's distance beyond the far seam", t.Beyond, r.op.TipAt)
	if r.op.Tip.RawEdge {
		e = s.As("e", "the tip's distance beyond the far seam").Where(r.op.TipAt)
	}
	wide := figure.Least(t.Sets[0].Set.Wide, t.Sets[1].Set.Wide).Behind(t.narrower().Set.Wide).As("T", "width of the tube")
	if t.Sets[0] == t.Sets[1] {
		wide = t.Sets[0].Set.Wide.As("T", "width of the tube")
	}
	t.High = wide.Less(p.both()).Plus(e).Is(p.Name.Text, "height of the triangle h").As("h", "height of the triangle")
	p.Figures.Size = t.High.Times(figure.Root2()).Is(p.Name.Text, "side of the opened square")
	a := wide.Less(p.both()).Plus(e.By(2)).Spelt("a", "from tip to tip")
	l, first := t.length(r.op, s), t.High.By(2)
	if t.Ends == plan.EarsKept {
		first = t.High.Plus(s).By(2)
	}
	each := one.Plus(l.Less(first).Over(a).Floor()).Unless(l, first)
	if t.Height() <= 0 {
		each = figure.Unknown(each)
	}
	next := first.Plus(each.Times(a)).As("", "one square more would need")
	told := []figure.F{l, t.High, a, next}
	if t.Ends == plan.EarsKept {
		told = append(told, s)
	}
	t.Yield = newYield(each.Is(p.Name.Text, "squares from one tube").Telling(told...), l.Length(), func(n int64) measure.Length { return t.LengthFor(n, t.Ends == plan.EarsKept) })
	t.Yield.Joined = t.Aside
	p.Figures.Count = figure.Unknown(t.Yield.Told)
}

// length is how long a side is, of so many sets joined end to end. A join is sewn
// with the tube's seam and costs two of its allowances.
func (t *Tube) length(op plan.Tube, s figure.F) figure.F {
	l := t.Sets[0].Set.Long
	if other := t.Sets[1].Set.Long; other != l {
		l = figure.Least(l, other).As(l.Symbol(), l.Says())
	}
	l = l.Where(t.shorter().Set.lengthAt())
	if t.Aside == 1 {
		return l
	}
	l = l.As("l", l.Says())
	k := figure.Counted("k", "sets joined end to end into a side", t.Aside, op.Joined.At)
	joined := k.Times(l).Less(k.Less(one).Times(s.By(2))).Is(t.of.Name.Text, "length of a side L")
	return joined.As("L", fmt.Sprintf("usable length of %d sets joined end to end", t.Aside))
}

// count is how many tubes there have to be: as many as all squares take or, where
// more, as many as the kind most wanted takes.
func (r *tube) count() figure.F {
	t, each := r.p.Tube, r.p.Tube.Yield.Told
	all := r.p.neededTerm().Over(each.As("each", "from one")).Ceil()
	if !t.Kinds.Matter() {
		return all.Is(r.p.Name.Text, "tubes")
	}
	kind, wanted := t.Kinds.Leading()
	of := figure.Given(figure.Count, measure.Rational(wanted, 1), "what the places take, said or in turn", r.p.NeededFigure()).As("kind", kind.String()+" squares wanted")
	most := each.As("each", "").OverInt(2).Ceil().Spelt("most", "squares of one kind from a tube")
	tubes := all.Raised(of.Over(most).Ceil()).Is(r.p.Name.Text, "tubes")
	if t.CountAt(each.N()) > all.N() {
		tubes = tubes.Telling(r.p.neededTerm(), each.As("each", "squares from one tube"), of, most)
	}
	return tubes
}

// Ask implements Operation.
func (r *tube) Ask() {
	p, t := r.p, r.p.Tube
	if !p.Known || t.Yield.Each == 0 {
		return
	}
	p.settleKinds()
	p.Figures.Count = r.count()
	t.Count = p.Figures.Count.N()
	p.Made = t.Count * t.Yield.Each
	for _, set := range t.Sets {
		set.call(p.Figures.Count.By(t.Aside), p)
		for _, strip := range set.Set.Strips {
			// However tubes are arranged, each square takes one advance of every strip.
			strip.Fabric.mustCover(measure.Area(t.Advance().Surd(), strip.Width.Surd()).MulInt(p.Needed))
		}
	}
}

// Covers implements Operation.
func (r *tube) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	return r.p.rectangle(seam)
}

// Seams implements Operation.
func (r *tube) Seams() (l measure.Surd, ok bool) {
	t := r.p.Tube
	if t == nil {
		return l, false
	}
	return t.Yield.Length.Surd().MulInt(2 * t.Count).Add(t.Width.Surd().MulInt(t.Joins() * t.Count)), true
}

// set is the usable length of the shorter of the tube's sets.
func (t *Tube) set() measure.Length { return min(t.Sets[0].Set.Length, t.Sets[1].Set.Length) }

// Each is how many squares one tube would give with so many sets joined end to
// end into the length of each side.
func (t *Tube) Each(sets int64) int64 {
	return t.Tube.Yield(piecing.JoinedLength(sets, t.set(), 2*t.Seam), t.Ends == plan.EarsKept)
}

// StripFor is the shortest strip that a tube as long as length takes, rounded up
// to a tick.
func (t *Tube) StripFor(length measure.Length) measure.Length {
	return piecing.JoinedFrom(length, t.Aside, 2*t.Seam)
}

// Takes is how many of a set go into one tube.
func (t *Tube) Takes(set *Part) (n int64) {
	for _, q := range t.Sets {
		if q == set {
			n += t.Aside
		}
	}
	return n
}

// Joins is how many joins there are in one tube, of both sides.
func (t *Tube) Joins() int64 { return 2 * (t.Aside - 1) }

// Crossed is how many squares of one tube are crossed by joins at most, where
// those of its two sides lie on each other, and where they do not.
func (t *Tube) Crossed() (matched, apart int64) {
	return piecing.Crossed(t.Joins()/2, t.Yield.Each), piecing.Crossed(t.Joins(), t.Yield.Each)
}

// Joining derives the size anew with so many sets joined end to end into each
// side of a part's tubes.
func (s *Size) Joining(p *Part, sets int64) *Size {
	room, ok := p.Room.(*tube)
	if !ok {
		return s
	}
	op := room.op
	op.Joined.N = int(sets)
	of := *s.Of
	of.Parts = slices.Clone(s.Of.Parts)
	i := slices.IndexFunc(of.Parts, func(q plan.Part) bool { return q.Name.Text == p.Name.Text })
	of.Parts[i].Operation = op
	return s.Again(&of)
}

// OnRuler implements Operation.
func (r *tube) OnRuler() []OnRuler {
	return []OnRuler{{"trim", r.op.Trim}}
}

// Seamed implements Operation.
func (r *tube) Seamed() []Seamed { return nil }

// Trims implements Operation.
func (r *tube) Trims() []Trimming {
	if r.p.Tube == nil || !r.p.Known {
		return nil
	}
	return []Trimming{{r.op.Trim, r.p.Tube.Side(), r.op.DownTo}}
}

// Wants implements Operation.
func (r *tube) Wants() []Want {
	var all []Want
	for _, set := range r.op.Sets {
		all = append(all, Want{Part: set, To: WholeSet, By: "tube " + r.p.quoted()})
	}
	return all
}

// Serves implements Operation.
func (r *tube) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// Gives implements Operation.
func (r *tube) Gives() *Giving {
	if r.p.Tube == nil || !r.p.Known {
		return nil
	}
	return &Giving{"square", "tube", r.p.Name.At}
}

// How implements Operation.
func (r *tube) How() say.Sentence {
	t, lay := r.p.Tube, ""
	if t.Aside > 1 {
		lay = fmt.Sprintf("%d sets joined end to end on each side, ", t.Aside)
	}
	if r.op.EndForEnd {
		lay += "the second turned end for end, "
	}
	return say.That("%s of sets %s and %s, %scut into %s each", say.Many(t.Count, "tube"), r.op.Sets[0].Text, r.op.Sets[1].Text, lay,
		say.Many(t.Yield.Each, "square")).And(trimmedTo(r.op.Trim, r.op.DownTo))
}

// Notes implements Noted.
func (r *tube) Notes() []say.Sentence {
	t := r.p.Tube
	out := []say.Sentence{spare("square", t.Yield)}
	if slack, ok := t.SeamSlack(); ok {
		out = append(out, narrower(slack))
	}
	out = append(out, t.joinNotes()...)
	if stub := t.Stub(); stub > 0 {
		out = append(out, say.That("unpick %s of the far seam at each tip", say.AsCut(stub)))
	}
	out = append(out, r.s.trimLost(r.p)...)
	if t.Sets[0] == t.Sets[1] {
		if g, ok := r.s.PackGives(t.Sets[0]); ok {
			tubes, left := g.Tubes(t.Takes(t.Sets[0]))
			out = append(out, say.That("%s would give %s, %s", say.Many(g.Sets, "set"), say.Many(tubes, "tube"), over(left, "set")))
		}
	}
	return out
}

// joinNotes tell how sets are joined, and how many squares a join crosses; nothing
// where none are.
func (t *Tube) joinNotes() []say.Sentence {
	if t.Aside == 1 {
		return nil
	}
	matched, apart := t.Crossed()
	text := say.That("square both ends of each set before it is joined; the %d joins of a tube cross %d of its %d squares at most", t.Joins(), matched, t.Yield.Each)
	if apart > matched {
		text = text.And(say.That(" where those of the two sides lie on each other, and %d where they do not", apart))
	}
	return []say.Sentence{text.And(say.That(": match the joins and press those of the two sides opposite ways"))}
}

// SeamSlack is how much narrower the seams of a tube and of its sets may be sewn
// before a square is lost, rounded down to a tick; ok is false when a narrower seam
// loses nothing.
func (t *Tube) SeamSlack() (l measure.Length, ok bool) {
	at, squares, ok := t.Yield.Told.Drift(t.of.Figures.seam, 0, t.Sets[0].Figures.seam, t.Sets[1].Figures.seam)
	if !ok || squares.Cmp(t.Yield.Told.Surd()) > 0 {
		return 0, false
	}
	return t.Seam - at - measure.Tick, true
}

// narrower says how much narrower a seam may be sewn before a square is lost.
func narrower(l measure.Length) say.Sentence {
	return say.That("%s", say.Within(l, "the seam may be sewn up to %s narrower before a square is lost", "a seam sewn less than %s narrower loses a square"))
}

// Traits implements Operation.
func (r *tube) Traits() Traits { return Traits{Sewn: true, From: FromTubes} }

// Draft implements Operation: a near square, or where they are exchanged a far
// one.
func (r *tube) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	kind := plan.NearKind
	if d.Flips().Has(r.p.Tube) {
		kind = plan.FarKind
	}
	return r.p.Opened(kind, d.Number)
}

// Lay implements Operation: the squares are cut on the bias; how the
// print lies in one that is set on point is not told.
func (r *tube) Lay(l *Laying, n Turns) {
	for _, set := range r.p.Tube.Sets {
		for _, role := range set.Set.roles() {
			l.list(role, r.p.Name, Slanted, n.total(), n.total()-n.slanted())
			l.list(role, r.p.Name, Untold, n.total(), n.slanted())
		}
	}
}

// Faults implements Faulty: a tip beyond the raw edge, and sets that are not
// equally wide.
func (r *tube) Faults() (all []Fault) {
	t := r.p.Tube
	if t == nil {
		return nil
	}
	if t.Beyond > t.Seam {
		all = append(all, Fault{
			Kind: TipOffTube, At: r.op.Tip.Beyond.At, Root: true,
			Message: say.That("the tip lies %s beyond the far seam of %q, and the raw edge is only %s beyond it", say.Long(t.Beyond), r.p.Name.Text, say.Long(t.Seam)),
			Hint:    say.That("lay the tip at most %s beyond the far seam", say.AsThere(t.Seam)),
		})
	}
	if a, b := t.Sets[0].Set.Width, t.Sets[1].Set.Width; a != b {
		first, second := r.op.Sets[0], r.op.Sets[1]
		all = append(all, Fault{
			Kind: TubeWidths, At: source.Range{Start: min(first.At.Start, second.At.Start), End: max(first.At.End, second.At.End)}, Root: true,
			Message: say.That("set %q is %s wide and set %q %s: they cannot be sewn into a tube", first.Text, say.Long(a), second.Text, say.Long(b)),
			Hint:    say.That("give both sets as many strips of the same width"),
		})
	}
	return all
}
