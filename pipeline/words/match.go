package words

import (
	"slices"

	"yardproof/schema/measure"
)

// Verdict is what became of a number.
type Verdict int

// The verdicts.
const (
	NoQuantity Verdict = iota // a step, a page, a date: what it is says Number.Sense
	Agrees
	Disagrees
	NotPlaced
)

var verdicts = [...]string{"no quantity", "agrees", "disagrees", "not placed"}

// String is the word that reports use.
func (v Verdict) String() string { return verdicts[v] }

// statement is a claim in one size, or in one of several: what is held against the
// figures.
type statement struct {
	count *number
	dims  [][]*number // each one or two
	head  []key
	sizes []int
	state state
	per   bool
	said  *spoken
	taken bool // so many are taken at a time to put something together
	told  bool // the sentence says how many come from each
	it    bool // of what was spoken of last: it, they, them
	last  []key
	only  bool // the text is about one size
	role  bool // the words say what kind of length it is: a width, a finished size
	long  bool // they say that it is a length along something
}

// verdict of a statement on its numbers.
type verdict struct {
	Verdict
	figure *figure
	wrong  []*number // that disagree
}

// matcher holds statements against a plan's figures.
type matcher struct {
	*book
	stop func() bool
}

// fits reports whether a figure is one that the statement could state.
func (m *matcher) fits(s *statement, f *figure, head bool) bool {
	switch {
	case !slices.Contains(s.sizes, f.size),
		s.count != nil && f.count < 0,
		s.count == nil && len(f.dims) == 0,
		len(s.dims) > 0 && len(f.dims) == 0:
		return false
	case s.long && s.count == nil && len(s.dims[0]) == 1 && !f.lengthy && (len(f.dims) < 2 || f.dims[0].Equal(f.dims[1])):
		return false
	case s.state == finished && f.state != finished && len(s.dims) > 0,
		s.state == raw && f.state == finished:
		return false
	case len(s.dims) > 0 && s.dims[0][0].unit >= measure.Yard && s.dims[0][0].unit != measure.Metre/100 && !f.buy && s.dims[0][0].unit != measure.Foot:
		return false
	case f.buy && len(s.dims) > 0 && s.dims[0][0].short():
		return false
	case f.buy && len(s.dims) > 0 && (s.count != nil || len(s.dims[0]) > 1 || s.state != unsaid):
		return false
	case len(s.dims) > 0 && len(s.dims[0]) > 1 && len(f.dims) < 2 && f.long.IsZero():
		return false
	}
	if f.per && !s.per || !s.said.asks(f) {
		return false
	}
	return !head || len(s.head) == 0 || f.headed(s.head)
}

func (f *figure) headed(head []key) bool {
	for _, k := range head {
		if f.head[k] {
			return true
		}
	}
	return false
}

// judge holds a statement against the figures.
func (m *matcher) judge(s *statement) verdict {
	if s.bare() {
		return verdict{Verdict: NotPlaced}
	}
	all := s.ofNoun(s.eachOnly(m.candidates(s)))
	if len(all) == 0 {
		return verdict{Verdict: NotPlaced}
	}
	meant := slices.DeleteFunc(slices.Clone(all), func(f *figure) bool { return s.said.denies(f, true) })
	if f := agreeing(s, nearest(s, meant)); f != nil {
		return verdict{Verdict: Agrees, figure: f}
	}
	if bought(meant) && s.said.names(meant) {
		f, off := closest(s, nearest(s, meant))
		return verdict{Verdict: Disagrees, figure: f, wrong: off}
	}
	if f := agreeing(s, meant); f != nil {
		return verdict{Verdict: Agrees, figure: f}
	}
	wider := slices.DeleteFunc(all, func(f *figure) bool { return s.said.denies(f, false) })
	if f := agreeing(s, wider); f != nil {
		return verdict{Verdict: Agrees, figure: f}
	}
	if len(meant) == 0 {
		meant = wider
	}
	if len(meant) == 0 {
		return verdict{Verdict: NotPlaced}
	}
	near := nearest(s, meant)
	f, off := closest(s, near)
	if s.count == nil && !s.role && !bought(near) {
		return verdict{Verdict: NotPlaced}
	}
	if s.count != nil && s.taken && !f.per && slices.Contains(off, s.count) && len(s.head) > 0 && !slices.Contains(s.head, row) {
		return verdict{Verdict: NotPlaced}
	}
	if !s.supports(f) && !single(meant) && len(off) == len(s.numbers()) {
		return verdict{Verdict: NotPlaced}
	}
	return verdict{Verdict: Disagrees, figure: f, wrong: off}
}

// eachOnly leaves only figures of how many come from, or go into, one of something
// where the sentence speaks of that and there are any.
func (s *statement) eachOnly(all []*figure) []*figure {
	if s.count == nil || !s.told && !s.taken {
		return all
	}
	each := slices.DeleteFunc(slices.Clone(all), func(f *figure) bool { return !f.per })
	if s.told && len(each) > 0 {
		each = s.most(each)
	}
	if !slices.ContainsFunc(each, func(f *figure) bool { return !s.said.denies(f, false) }) {
		return all
	}
	return each
}

// bought reports whether all figures are lengths of fabric to buy.
func bought(all []*figure) bool {
	return len(all) > 0 && !slices.ContainsFunc(all, func(f *figure) bool { return !f.buy })
}

// most are the figures that the most of the statement's own words speak of.
func (s *statement) most(all []*figure) []*figure {
	most := 0
	for _, f := range all {
		most = max(most, s.said.hits(f)[0])
	}
	return slices.DeleteFunc(slices.Clone(all), func(f *figure) bool { return s.said.hits(f)[0] < most })
}

// noun is what the nearest word before a length, or else after it, says that it is
// of, where that is telling.
func (s *statement) noun() map[key]bool {
	noun := map[key]bool{}
	first, last := s.dims[0][0].from, s.dims[0][0].to
	best := 1 << 20
	for _, m := range s.said.near {
		far := first - m.to
		if far < 0 {
			far = 1000 + m.from - last
		}
		if !slices.ContainsFunc(m.keys, func(k key) bool { return heads[k] || k.class() == ofKind || k == trimmed }) || far >= best {
			continue
		}
		best = far
		clear(noun)
		for _, k := range m.keys {
			if telling[k] || k.class() == ofKind {
				noun[k] = true
			}
		}
	}
	return noun
}

// telling are the things of few kinds that a length may be of.
var telling = map[key]bool{stripSet: true, tube: true, segment: true, block: true, panel: true, cornerstone: true, sashing: true, trimmed: true}

// ofNoun leaves only figures of what the statement's own words say that a length is
// of, where it is something of few kinds and there are any: a set, a seam.
func (s *statement) ofNoun(all []*figure) []*figure {
	if s.count != nil || len(s.head) > 0 && !common[s.head[0]] {
		return all
	}
	noun := s.noun()
	of := slices.DeleteFunc(slices.Clone(all), func(f *figure) bool {
		for k := range noun {
			if f.keys[k] || f.head[k] {
				return false
			}
		}
		return true
	})
	if len(noun) == 0 || len(of) == 0 {
		return all
	}
	return of
}

// bare reports whether nothing at all is said of a count.
func (s *statement) bare() bool {
	return s.count != nil && len(s.head) == 0 && !slices.ContainsFunc(slices.Concat(s.said.near, s.said.lead, s.said.sentence, s.said.previous),
		func(m mention) bool { return len(m.keys) > 0 })
}

// candidates are the figures that the statement could state.
func (m *matcher) candidates(s *statement) []*figure {
	for _, head := range []bool{true, false} {
		var all []*figure
		for _, f := range m.figures {
			if m.fits(s, f, head) {
				all = append(all, f)
			}
		}
		if len(all) > 0 || s.count != nil && len(s.head) > 0 {
			return all
		}
	}
	return nil
}

// nearest are the figures that the most is said of, the nearest words counting
// first.
func nearest(s *statement, all []*figure) []*figure {
	var best []*figure
	var most [5]int
	for _, f := range all {
		switch hits := s.said.hits(f); slices.Compare(hits[:], most[:]) {
		case 1:
			best, most = []*figure{f}, hits
		case 0:
			best = append(best, f)
		}
	}
	return best
}

// agreeing is the figure that the whole statement agrees with, of several the one
// that is about the least; nil where there is none.
func agreeing(s *statement, all []*figure) *figure {
	var best *figure
	for _, f := range all {
		if len(wrong(s, f)) > 0 {
			continue
		}
		if best == nil || best.last && !f.last || best.last == f.last && len(f.keys) < len(best.keys) && len(f.keys) > 0 {
			best = f
		}
	}
	return best
}

// closest is the figure that the most of the statement agrees with.
func closest(s *statement, all []*figure) (*figure, []*number) {
	var best *figure
	var least []*number
	for _, f := range all {
		w := wrong(s, f)
		same := best != nil && len(w) == len(least)
		if best == nil || len(w) < len(least) || same && best.last && !f.last || same && best.last == f.last && len(f.keys) < len(best.keys) && len(f.keys) > 0 {
			best, least = f, w
		}
	}
	return best, least
}

// single reports whether all figures are of one value.
func single(all []*figure) bool {
	for _, f := range all[1:] {
		if f.count != all[0].count || len(f.dims) != len(all[0].dims) {
			return false
		}
		for i := range f.dims {
			if !f.dims[i].Equal(all[0].dims[i]) {
				return false
			}
		}
	}
	return true
}
