package words

import (
	"math/big"
	"slices"
	"strings"

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

// spoken is what is said around a claim: mentions in its own words, in the lead or
// label, in its sentence, in the sentence before and in the heading.
type spoken struct {
	near, lead, sentence, previous, heading []mention
}

func (s *spoken) tiers() [][]mention {
	return [][]mention{s.near, s.lead, s.sentence, s.previous, s.heading}
}

// class is a kind of key: of two figures that are alike in all else, which of a
// class is spoken of tells them apart.
type class int

const (
	noClass class = iota // what is counted
	ofCloth              // fabrics
	ofThing              // parts, borders and the rest of a quilt
	ofPlace              // sides, top and bottom
	ofKind               // what a length is of: a seam, usable width, a ruler
)

var things = map[key]bool{
	binding: true, backing: true, batting: true, border: true, sashing: true, cornerstone: true, setting_: true, sideTriangle: true,
	cornerTriangle: true, cornerSquare: true, sleeve: true, label_: true, quilt: true, top: true, middle: true,
}

// kinds are what a length is only taken for where the text says so.
var kinds = map[key]bool{ruler: true, usable: true, seam: true, overhang: true, package_: true, mat: true}

func (k key) class() class {
	switch {
	case strings.HasPrefix(string(k), "fabric ") && k != cloth:
		return ofCloth
	case strings.HasPrefix(string(k), "part "), strings.HasPrefix(string(k), "what "), strings.HasPrefix(string(k), "border "), things[k]:
		return ofThing
	case k == sides, k == ends:
		return ofPlace
	case kinds[k]:
		return ofKind
	}
	return noClass
}

func (m mention) of(c class) bool {
	return slices.ContainsFunc(m.keys, func(k key) bool { return k.class() == c })
}

func (f *figure) of2(c class) bool {
	for k := range f.keys {
		if k.class() == c {
			return true
		}
	}
	return false
}

// denies reports whether what is said speaks of another thing than the figure does:
// the nearest words that speak of any of its class do not speak of it.
func (s *spoken) denies(f *figure, headings bool) bool {
	if f.several && s.oneCloth(f) {
		return true
	}
	if f.keys[quilt] && s.sized() {
		return false
	}
	if f.buy {
		return s.deniesOf(f, headings, ofCloth, ofThing)
	}
	return s.deniesOf(f, headings, ofCloth) || s.deniesOf(f, headings, ofThing) || s.deniesOf(f, headings, ofPlace)
}

func (s *spoken) deniesOf(f *figure, headings bool, classes ...class) bool {
	if !slices.ContainsFunc(classes, f.of2) {
		return false
	}
	said := s.nearest(headings, classes...)
	if slices.ContainsFunc(slices.Concat(s.near, s.lead), func(m mention) bool { return m.specific() && f.on(m.keys) }) {
		said = slices.DeleteFunc(said, func(m mention) bool { return m.of(ofCloth) && m.of(ofThing) })
	}
	return len(said) > 0 && !slices.ContainsFunc(said, func(m mention) bool { return !m.opposes(f) })
}

// specific reports whether a mention names something.
func (m mention) specific() bool { return m.of(ofCloth) || m.of(ofThing) }

// opposes reports whether a mention cannot be of the figure: it is of none of its
// keys, though the figure has one of each class that the mention may be of.
func (m mention) opposes(f *figure) bool {
	for _, k := range m.keys {
		if k.class() != noClass && (f.keys[k] || f.head[k]) {
			return false
		}
	}
	for _, k := range m.keys {
		if c := k.class(); c != noClass && !f.of2(c) {
			return false
		}
	}
	return true
}

// oneCloth reports whether the nearest words name some of the fabrics that a sum is
// over and not all.
func (s *spoken) oneCloth(f *figure) bool {
	named := map[key]bool{}
	for _, m := range slices.Concat(s.near, s.lead) {
		for _, k := range m.keys {
			if k.class() == ofCloth {
				named[k] = true
			}
		}
	}
	if len(named) == 0 {
		return false
	}
	for k := range f.keys {
		if k.class() == ofCloth && !named[k] {
			return true
		}
	}
	return false
}

// sized reports whether a size is named near by: it stands for the quilt.
func (s *spoken) sized() bool {
	return slices.ContainsFunc(slices.Concat(s.near, s.lead), func(m mention) bool { return m.size > 0 })
}

// nearest are the mentions of some classes in the nearest words that have any. The
// sentence before may have been about something else.
func (s *spoken) nearest(headings bool, classes ...class) []mention {
	own := slices.ContainsFunc(s.near, func(m mention) bool { return m.of(ofCloth) || m.of(ofThing) })
	tiers := [][]mention{s.near, s.lead}
	if slices.Contains(classes, ofCloth) {
		tiers = [][]mention{slices.Concat(s.near, s.lead)}
	}
	if !own {
		tiers = append(tiers, s.sentence)
	}
	if headings && !own {
		tiers = append(tiers, s.heading)
	}
	for _, tier := range tiers {
		var all []mention
		for _, m := range tier {
			if slices.ContainsFunc(classes, m.of) {
				all = append(all, m)
			}
		}
		if len(all) > 0 {
			return all
		}
	}
	return nil
}

// asks reports whether the text says what a length of the figure's kind has to be
// called: a seam, a usable width.
func (s *spoken) asks(f *figure) bool {
	if f.need != "" && !slices.ContainsFunc(slices.Concat(s.near, s.lead, s.sentence, s.previous), func(m mention) bool { return slices.Contains(m.keys, f.need) }) {
		return false
	}
	if !f.of2(ofKind) {
		return true
	}
	for _, tier := range [][]mention{s.near, s.lead, s.sentence} {
		for _, m := range tier {
			if m.of(ofKind) && f.on(m.keys) {
				return true
			}
		}
	}
	return false
}

// hits is how many mentions of each tier speak of a figure.
func (s *spoken) hits(f *figure) [5]int {
	var out [5]int
	for i, tier := range s.tiers() {
		for _, m := range tier {
			if f.on(m.keys) {
				out[i]++
			}
		}
	}
	return out
}

// common are the heads that so many figures have that they single out none.
var common = map[key]bool{strip: true, square: true, rectangle: true, triangle: true, piece: true}

// supports reports whether something that is said, near enough, speaks of what the
// figure is about, or whether what is counted is a thing of few kinds.
func (s *statement) supports(f *figure) bool {
	for _, k := range s.head {
		if f.head[k] && !common[k] {
			return true
		}
	}
	if f.keys[quilt] && (s.said.sized() || s.only) || s.it && len(s.last) > 0 && f.on(s.last) {
		return true
	}
	for _, tier := range s.said.tiers() {
		for _, m := range tier {
			for _, k := range m.keys {
				if (k.class() != noClass || k == trimmed || heads[k] && !common[k]) && (f.keys[k] || f.head[k]) {
					return true
				}
			}
		}
	}
	return false
}

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

// short reports whether a length is in units that no fabric is bought in.
func (n *number) short() bool {
	return n.unit == measure.Inch || (n.unit == measure.Centimetre || n.unit == measure.Millimetre) && n.length().Cmp((20*measure.Centimetre).Surd()) < 0
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

// names reports whether the nearest words name any of the figures.
func (s *spoken) names(all []*figure) bool {
	return slices.ContainsFunc(slices.Concat(s.near, s.lead), func(m mention) bool {
		return m.specific() && slices.ContainsFunc(all, func(f *figure) bool { return f.on(m.keys) })
	})
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

func (s *statement) numbers() []*number {
	var all []*number
	if s.count != nil {
		all = append(all, s.count)
	}
	for _, d := range s.dims {
		all = append(all, d...)
	}
	return all
}

// wrong are the numbers of a statement that a figure does not agree with.
func wrong(s *statement, f *figure) []*number {
	var out []*number
	if s.count != nil && !s.count.counts(f.count) {
		out = append(out, s.count)
	}
	for _, d := range s.dims {
		dims := f.dims
		if len(d) > 1 && len(dims) == 1 && !f.long.IsZero() {
			dims = []measure.Surd{dims[0], f.long}
		}
		out = append(out, wrongDims(d, dims)...)
	}
	return out
}

// wrongDims are those of one or two lengths that no length of the figure agrees
// with, either way round.
func wrongDims(d []*number, dims []measure.Surd) []*number {
	if len(d) == 1 {
		for _, x := range dims {
			if d[0].measures(x) {
				return nil
			}
		}
		return d
	}
	if len(dims) < 2 {
		return d
	}
	a, b := wrongPair(d, dims[0], dims[1]), wrongPair(d, dims[1], dims[0])
	if len(b) < len(a) {
		return b
	}
	return a
}

func wrongPair(d []*number, x, y measure.Surd) []*number {
	var out []*number
	if !d[0].measures(x) {
		out = append(out, d[0])
	}
	if !d[1].measures(y) {
		out = append(out, d[1])
	}
	if len(out) == 2 && out[0] == out[1] {
		out = out[:1]
	}
	return out
}

// counts reports whether a number is a count, or a range that holds it.
func (n *number) counts(count int64) bool {
	x := big.NewRat(count, 1)
	if n.most != nil {
		return n.value.Cmp(x) <= 0 && x.Cmp(n.most) <= 0
	}
	return n.value.Cmp(x) == 0
}

// measures reports whether a number is a length exactly, or where the text says
// 'about', its rounding to the step that the number is spelt in.
func (n *number) measures(x measure.Surd) bool {
	switch {
	case !n.isLength():
		return false
	case n.most != nil:
		return n.length().Cmp(x) <= 0 && x.Cmp(n.ticks(n.most)) <= 0
	case n.least || n.atMost:
		return n.bounds(x)
	case n.about:
		return n.rounds(x)
	}
	return n.length().Equal(x)
}

// bounds reports whether the number is a length rounded up, where the text says 'at
// least', or down, where it says 'no more than', by less than the step that it is
// spelt in.
func (n *number) bounds(x measure.Surd) bool {
	over := n.length().Sub(x)
	if n.atMost {
		over = over.Neg()
	}
	return over.Sign() >= 0 && over.Cmp(n.ticks(n.step)) < 0 || n.about && n.rounds(x)
}

// rounds reports whether the number is no further from a length than half the step
// that it is spelt in.
func (n *number) rounds(x measure.Surd) bool {
	half := n.ticks(new(big.Rat).Quo(n.step, big.NewRat(2, 1)))
	off := n.length().Sub(x)
	if off.Sign() < 0 {
		off = off.Neg()
	}
	return off.Cmp(half) <= 0
}

// converts reports whether a number is another in other units, rounded to the step
// that it is spelt in; a length of fabric may be rounded up instead, and to whole
// tens of centimetres.
func (n *number) converts(of *number) bool {
	step := new(big.Rat).Set(n.step)
	fabric := of.unit >= measure.Yard || n.unit >= measure.Yard
	if fabric && n.unit == measure.Centimetre {
		step.SetInt64(10)
	}
	off := n.length().Sub(of.length())
	if (fabric || of.length().Cmp((measure.Metre/2).Surd()) >= 0) && off.Sign() > 0 {
		return off.Cmp(n.ticks(step)) < 0
	}
	if off.Sign() < 0 {
		off = off.Neg()
		if short := (5 * measure.Centimetre).Surd(); fabric && off.Cmp(short) > 0 {
			return false // half a step of a metre is half a metre too little
		}
	}
	return off.MulInt(2).Cmp(n.ticks(step)) <= 0
}
