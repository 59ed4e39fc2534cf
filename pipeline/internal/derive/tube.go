package derive

import (
	"slices"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// tube is two strip sets sewn into a tube, and the squares cut from it.
type tube struct {
	op plan.Tube
	p  *Part
	s  *Size
}

// Tube implements plan.Maker.
func (o *opening) Tube(op plan.Tube) { o.room = &tube{op: op, p: o.p, s: o.s} }

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
	t := &Tube{Sets: [2]*Part{a, b}, Ends: r.op.Ends, Aside: r.op.SetsASide()}
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
	of := *s.Of
	of.Parts = slices.Clone(s.Of.Parts)
	for i := range of.Parts {
		if op, ok := of.Parts[i].Operation.(plan.Tube); ok && of.Parts[i].Name.Text == p.Name.Text {
			op.Joined.N = int(sets)
			of.Parts[i].Operation = op
		}
	}
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
