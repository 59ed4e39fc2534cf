package derive

import (
	"fmt"
	"slices"

	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
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

// TellSize implements sizeTold.
func (r *tube) TellSize() *report.Work {
	if r.p.Tube == nil {
		return nil
	}
	return r.s.once(r.p.Name.Text+", side of the opened square", r.tellSide)
}

func (r *tube) tellSide() *report.Work {
	t := r.p.Tube
	w := &report.Work{
		Formula: "h x sqrt2", Value: r.s.surd(t.Side()),
		Terms: []report.Term{term("h", "height of the triangle", r.height(), source.Range{})},
	}
	if r.op.Trim.Given() {
		w.Terms = append(w.Terms, term("", "trimmed to", r.s.length(r.op.Trim.Length), r.op.Trim.At))
	}
	return w
}

// height is the triangle's height and how it came about.
func (r *tube) height() report.Cell {
	return because(r.s.length(r.p.Tube.Height()), r.s.once(r.p.Name.Text+", height of the triangle h", r.tellHeight))
}

func (r *tube) tellHeight() *report.Work {
	t := r.p.Tube
	return &report.Work{
		Formula: "T - 2s + e", Value: r.s.length(t.Height()),
		Terms: []report.Term{
			term("T", "width of the tube", because(r.s.length(t.Width), r.s.SizeWork(t.narrower())), source.Range{}),
			r.s.seamTerm(r.p.Seam),
			term("e", "the tip's distance beyond the far seam", r.s.length(t.Beyond), r.op.TipAt),
		},
	}
}

// TellYield implements yieldTold.
func (r *tube) TellYield() *report.Work {
	if r.p.Tube == nil {
		return nil
	}
	return r.s.once(r.p.Name.Text+", squares from one tube", r.tellSquares)
}

func (r *tube) tellSquares() *report.Work {
	t := r.p.Tube
	w := &report.Work{
		Formula: "1 + floor((L - 2h) / a), none when L < 2h", Value: report.N(t.Yield.Each),
		Terms: []report.Term{
			r.length(),
			term("h", "height of the triangle", r.height(), source.Range{}),
			term("a", "from tip to tip, T - 2s + 2e", r.s.length(t.Advance()), source.Range{}),
			term("", "one square more would need", r.s.length(t.Yield.Next), source.Range{}),
		},
	}
	if t.Ends == plan.EarsKept {
		w.Formula = "1 + floor((L - 2(h+s)) / a), none when L < 2(h+s)"
		w.Terms = append(w.Terms, r.s.seamTerm(r.p.Seam))
	}
	return w
}

// length is how long a side is, and where sets are joined to it how it
// came about.
func (r *tube) length() report.Term {
	s, t := r.s, r.p.Tube
	const strip = "usable length of the shortest strip"
	if t.Aside == 1 {
		return term("L", strip, s.length(t.Yield.Length), t.shorter().Set.lengthAt())
	}
	w := s.once(r.p.Name.Text+", length of a side L", func() *report.Work {
		return &report.Work{
			Formula: "k x l - (k-1) x 2s", Value: s.length(t.Yield.Length),
			Terms: []report.Term{
				term("k", "sets joined end to end into a side", report.N(t.Aside), r.op.Joined.At),
				term("l", strip, s.length(t.set()), t.shorter().Set.lengthAt()),
				s.seamTerm(r.p.Seam),
			},
		}
	})
	return term("L", fmt.Sprintf("usable length of %d sets joined end to end", t.Aside), because(s.length(t.Yield.Length), w), source.Range{})
}

// TellCount implements countTold: as many tubes as all squares take or, where more,
// as many as the kind most wanted takes.
func (r *tube) TellCount() *report.Work {
	if r.p.Tube == nil {
		return r.s.NeededWork(r.p)
	}
	t := r.p.Tube
	each := because(report.N(t.Yield.Each), r.TellYield())
	if piecing.Batches(r.p.Needed, max(1, t.Yield.Each)) >= t.Count {
		return r.s.batchWork(r.p, "tubes", t.Count, each)
	}
	return r.s.once(r.p.Name.Text+", tubes", func() *report.Work {
		kind, wanted := t.Kinds.Leading()
		most, _ := piecing.Orientations(t.Yield.Each)
		return &report.Work{
			Formula: "max(ceil(N / each), ceil(kind / most))", Value: report.N(t.Count),
			Terms: []report.Term{
				r.s.neededTerm(r.p), term("each", "squares from one tube", each, source.Range{}),
				term("kind", kind.String()+" squares wanted", report.N(wanted), source.Range{}),
				term("most", "squares of one kind from a tube, ceil(each / 2)", report.N(most), source.Range{}),
			},
		}
	})
}

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
	t := &Tube{Sets: [2]*Part{a, b}, Ends: r.op.Ends, EndsAt: r.op.EndsAt, Aside: r.op.SetsASide()}
	t.Lie = [2][]Strip{a.Set.Strips, b.Set.Strips}
	if r.op.EndForEnd {
		t.Lie[1] = slices.Clone(t.Lie[1])
		slices.Reverse(t.Lie[1])
	}
	seam := p.Seam.Allowance.Length
	t.Tube = piecing.Tube{Width: min(a.Set.Width, b.Set.Width), Seam: seam, Beyond: r.op.Tip.Beyond.Length}
	if r.op.Tip.RawEdge {
		t.Beyond, t.RawEdge = seam, true
	}
	t.Yield = t.yieldOf(t.Aside)
	p.Tube, p.Bias = t, true
	p.Known = t.Height() > 0 && a.Set.Width == b.Set.Width
	p.Box = square(t.Side())
	r.op.Trim = line(r.op.Trim, r.op.DownTo, t.Side())
	if r.op.Trim.Given() {
		p.Box = square(r.op.Trim.Surd())
	}
	p.comesTo(r.op)
}

// Ask implements Operation.
func (r *tube) Ask() {
	p, t := r.p, r.p.Tube
	if !p.Known || t.Yield.Each == 0 {
		return
	}
	p.settleKinds()
	t.Count = t.CountAt(t.Yield.Each)
	p.Made = t.Count * t.Yield.Each
	for _, set := range t.Sets {
		set.call(t.Count*t.Aside, p)
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

// yieldOf is the squares from one tube with so many sets joined end to end into
// the length of each side. A join is sewn with the tube's seam and costs two of
// its allowances.
func (t *Tube) yieldOf(sets int64) Yield {
	ears, length := t.Ends == plan.EarsKept, piecing.JoinedLength(sets, t.set(), 2*t.Seam)
	y := newYield(t.Tube.Yield(length, ears), length, func(n int64) measure.Length { return t.LengthFor(n, ears) })
	y.Joined = sets
	return y
}

// Each is how many squares one tube would give with so many sets joined end to
// end into the length of each side.
func (t *Tube) Each(sets int64) int64 { return t.yieldOf(sets).Each }

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
