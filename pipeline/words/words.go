package words

import (
	"slices"
	"strconv"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// Number is one number of a text, and what it was taken for.
type Number struct {
	At      source.Range
	Verdict Verdict
	Sense   string // what it is, where it is no quantity
	States  string // the figure that it was held against: "strips for \"binding\""
	Is      string // what that figure is, in words: "7" or "2 1/2 in"
	Size    string // the size of it
	Printed bool   // the figure is one that the plan has printed; else it is derived
}

// Reader knows the words and the figures of a plan. It may be used again, by one
// goroutine at a time.
type Reader struct {
	words   *lexicon
	figures *book
}

// NewReader is a reader of texts for a plan, of which the sizes were derived.
func NewReader(p *plan.Plan, sizes []*derive.Size) *Reader {
	return &Reader{newLexicon(p, sizes), newBook(p, sizes)}
}

// Check reads a text and holds its numbers against the figures of the plan, in the
// order of the text. Stop is asked now and then whether to give up; the numbers so
// far are then of no use.
func (r *Reader) Check(text string, stop func() bool) []Number {
	c := &checker{x: r.words, m: &matcher{r.figures, stop}, found: map[source.Range]Number{}}
	passages, markers := take(text, r.words.size)
	for _, t := range markers {
		c.put(Number{At: t.at, Verdict: NoQuantity, Sense: label.String()})
	}
	c.only = c.onlySize(passages)
	for i := range passages {
		if stop() {
			break
		}
		c.passage(&passages[i])
	}
	return c.numbers()
}

// onlySize is the one size that a whole text speaks of, 0 where it speaks of
// several or of none.
func (c *checker) onlySize(passages []passage) int {
	only := 0
	for _, p := range passages {
		for _, t := range append([][]token{p.tokens, p.column}, p.headings...) {
			for _, m := range c.x.mentions(t) {
				if m.size > 0 && only > 0 && m.size != only {
					return 0
				}
				only = max(only, m.size)
			}
		}
	}
	return only
}

// checker works through the passages of a text.
type checker struct {
	x     *lexicon
	m     *matcher
	found map[source.Range]Number

	lastHead []key // what the passage counted last
	last     []key // what the sentence before was about
	only     int   // the one size that the text speaks of, 0 where there are several
}

// put keeps what was found out about a number. What a closer look says of the same
// number stands: a disagreement before an agreement, either before nothing.
func (c *checker) put(n Number) {
	old, ok := c.found[n.At]
	if ok && rank(old.Verdict) >= rank(n.Verdict) {
		return
	}
	c.found[n.At] = n
}

func rank(v Verdict) int { return [...]int{NotPlaced: 1, NoQuantity: 2, Agrees: 3, Disagrees: 4}[v] }

func (c *checker) numbers() []Number {
	all := make([]Number, 0, len(c.found))
	for _, n := range c.found {
		all = append(all, n)
	}
	slices.SortFunc(all, func(a, b Number) int { return a.At.Compare(b.At) })
	return all
}

// passage reads the sentences of a passage.
func (c *checker) passage(p *passage) {
	outer := c.outer(p)
	lent := p.lent
	c.lastHead, c.last = nil, nil
	var lead, previous []mention
	for _, s := range sentences(p.tokens) {
		own := max(0, lent-s.from)
		r := &sentence{checker: c, t: p.tokens[s.from:s.to], lent: own, outer: outer}
		if r.own = leadOf(r.t); r.own > 0 && own == 0 {
			lead = nil
		}
		if c.m.stop() {
			return
		}
		r.before, r.previous = lead, previous
		r.read()
		previous = r.names
		c.last = nil
		for _, m := range r.names {
			c.last = append(c.last, m.keys...)
		}
		if r.own > 0 {
			lead = r.leadMentions()
		}
	}
}

// surroundings are what stands around a passage.
type surroundings struct {
	lead     []mention // of the line that introduces it, and of its column
	headings []mention
	size     int // of its column, or else of the innermost heading that names one
	scope    int // of the headings only
}

func (c *checker) outer(p *passage) surroundings {
	o := surroundings{size: c.x.size(p.column)}
	o.lead = append(c.x.mentions(p.lead), c.x.mentions(p.column)...)
	for i := len(p.headings) - 1; i >= 0; i-- {
		if o.scope == 0 {
			o.scope = c.x.size(p.headings[i])
		}
		if i == len(p.headings)-1 {
			o.headings = c.x.mentions(p.headings[i])
		}
	}
	if o.scope == 0 {
		o.scope = c.x.size(p.lead)
	}
	if o.size == 0 {
		o.size = 0
	}
	return o
}

type span struct{ from, to int }

// longestSentence is how many tokens are read together at most: no sentence is as
// long, and what is one all the same is still read quickly.
const longestSentence = 160

// sentences parts tokens at the ends of sentences and at semicolons.
func sentences(t []token) []span {
	var out []span
	from := 0
	for i := range t {
		end := t[i].is(";", "!", "?", "•") && t[i].kind == mark
		if t[i].is(".") && (i+1 == len(t) || t[i+1].loose) && !shortened(t, i) {
			end = true
		}
		if end || i+1-from >= longestSentence {
			out = append(out, span{from, i + 1})
			from = i + 1
		}
	}
	if from < len(t) {
		out = append(out, span{from, len(t)})
	}
	return out
}

// shortened reports whether the point at i ends a shortened word and no sentence.
func shortened(t []token, i int) bool {
	if i == 0 || i+1 >= len(t) || t[i].loose {
		return false
	}
	switch t[i-1].text {
	case "approx", "no", "nos", "fig", "figs", "p", "pp", "vs", "incl", "nr", "ca":
		return true
	}
	return false
}

// leadOf is how many tokens of a sentence lead up to a colon, 0 where there is
// none or where it is a time of day.
func leadOf(t []token) int {
	for i := range t {
		if t[i].is(":") && i > 0 && (i+1 == len(t) || t[i+1].loose || t[i].at.Empty()) && (i+1 == len(t) || t[i+1].kind != digits || t[i+1].loose || t[i-1].kind != digits) {
			return i
		}
	}
	return 0
}

// sentence is one sentence being read.
type sentence struct {
	*checker
	t        []token
	lent     int
	own      int       // tokens of its own lead
	before   []mention // of the lead of the sentence before
	previous []mention // of all of it
	outer    surroundings
	names    []mention
	numbers  []*number
	claims   []*claim
}

func (r *sentence) leadMentions() []mention {
	var out []mention
	for _, m := range r.names {
		if m.to <= r.own {
			out = append(out, m)
		}
	}
	return out
}

func (r *sentence) read() {
	r.names = r.x.mentions(r.t)
	r.widths()
	p := numerals{t: r.t}
	r.numbers = p.read()
	sortOut(r.t, r.numbers, r.x, r.names)
	var quantities []*number
	for _, n := range r.numbers {
		switch {
		case n.from < 0:
		case n.sense != quantity:
			r.put(Number{At: n.at, Verdict: NoQuantity, Sense: n.sense.String()})
		default:
			quantities = append(quantities, n)
		}
	}
	items := itemize(r.t, quantities, r.x.n)
	r.claims = claims(r.t, items, r.names)
	for _, c := range r.claims {
		if c.count != nil && len(c.head) == 0 && at(r.t, c.count.to).is("of") && at(r.t, c.count.to+1).is("them", "these", "those") {
			c.head = r.antecedent(c)
		}
		r.claim(c)
		if len(c.head) > 0 {
			r.lastHead = c.head
		}
	}
}

// widths takes the width of a fabric for its usable width, where nothing else in
// the sentence is wide.
func (r *sentence) widths() {
	fabric := false
	for _, m := range r.names {
		fabric = fabric || slices.Contains(m.keys, cloth)
		if slices.Contains(m.keys, strip) || slices.Contains(m.keys, binding) || slices.Contains(m.keys, border) {
			return
		}
	}
	for i, t := range r.t {
		if fabric && t.is("wide", "width", "widths") {
			r.names = append(r.names, mention{from: i, to: i + 1, keys: []key{usable}})
		}
	}
}

// claim holds a claim against the figures, in every size that it gives values for.
func (r *sentence) claim(c *claim) {
	said := r.spoken(c)
	sizes := r.sizes(c, said)
	most := 1
	for _, it := range c.items() {
		most = max(most, len(it.alts))
	}
	for k := range most {
		s := &statement{taken: r.taken(c), told: r.told(c), role: r.role(c), long: r.says(c, "long", "lengths"), it: r.pronoun(), last: r.last, only: r.only > 0 || r.x.n == 1, head: c.head, sizes: sizes, said: said, state: r.stateOf(c), per: r.perEach(c)}
		if most > 1 {
			s.sizes = []int{k + 1}
		}
		if c.count != nil {
			s.count = c.count.alt(k)[0]
		}
		for _, d := range c.dims {
			s.dims = append(s.dims, d.alt(k))
		}
		r.settle(c, s)
	}
	for _, it := range c.items() {
		r.conversions(it)
	}
}

// antecedent is what was counted or named before a claim that says "of them".
func (r *sentence) antecedent(c *claim) []key {
	head := r.lastHead
	for _, m := range r.names {
		if k := headKeys(m); m.to <= c.count.from && len(k) > 0 {
			head = k
		}
	}
	return head
}

func (it *item) alt(k int) []*number {
	if k < len(it.alts) {
		return it.alts[k]
	}
	return it.alts[0]
}

// settle judges a statement; where nothing that is counted has lengths, the two
// are judged apart.
func (r *sentence) settle(c *claim, s *statement) {
	v := r.m.judge(s)
	if v.Verdict == NotPlaced && s.count != nil && len(s.dims) > 0 {
		counted, measured := *s, *s
		counted.dims, measured.count = nil, nil
		r.keep(&counted, r.m.judge(&counted))
		r.keep(&measured, r.m.judge(&measured))
		return
	}
	if v.Verdict == Disagrees && s.count != nil && len(s.dims) > 0 {
		counted, measured := *s, *s
		counted.dims, measured.count = nil, nil
		if n, l := r.m.judge(&counted), r.m.judge(&measured); n.Verdict == Agrees && len(n.figure.dims) == 0 && (!n.figure.last || s.told && n.figure.per) && l.Verdict == Agrees {
			r.keep(&counted, n)
			r.keep(&measured, l)
			return
		}
	}
	r.keep(s, v)
}

// keep notes what a statement's numbers came to. Numbers that the label of a row
// lends are judged where they stand.
func (r *sentence) keep(s *statement, v verdict) {
	for _, n := range s.numbers() {
		if n.to <= r.lent {
			continue
		}
		out := Number{At: n.at, Verdict: v.Verdict}
		if v.figure != nil {
			out.States, out.Printed = v.figure.what, v.figure.printed
			out.Size = r.m.sizes[v.figure.size-1].Of.Name.Text
			out.Is = r.valueOf(n, s, v.figure)
		}
		if v.Verdict == Disagrees && !slices.Contains(v.wrong, n) {
			out.Verdict = Agrees
		}
		r.put(out)
	}
}

// valueOf is what a figure has where a statement has the number.
func (r *sentence) valueOf(n *number, s *statement, f *figure) string {
	u := r.m.units
	if n == s.count {
		return strconv.FormatInt(f.count, 10)
	}
	if f.buy {
		if l, ok := f.dims[0].Length(); ok {
			return measure.FormatFabric(l, u)
		}
	}
	var all []string
	for _, d := range f.dims {
		all = append(all, d.Format(u))
	}
	return strings.Join(slices.Compact(all), " x ")
}

// spoken is what is said around a claim.
func (r *sentence) spoken(c *claim) *spoken {
	s := &spoken{lead: slices.Clone(r.outer.lead), heading: r.outer.headings, previous: r.previous}
	for _, m := range r.names {
		switch {
		case m.from >= c.from && m.to <= c.to && m.from >= r.lent:
			s.near = append(s.near, m)
		case m.to <= r.own || m.to <= r.lent:
			s.lead = append(s.lead, m)
		case m.from < c.from || !r.inOther(c, m):
			s.sentence = append(s.sentence, m)
		}
	}
	if r.own == 0 {
		s.lead = append(s.lead, r.before...)
	}
	return s
}

// inOther reports whether a mention is among the words of another claim.
func (r *sentence) inOther(c *claim, m mention) bool {
	return slices.ContainsFunc(r.claims, func(o *claim) bool { return o != c && m.from >= o.from && m.to <= o.to })
}

// sizes are those that a claim may be about: named in its own words, in its lead
// or label, by its column, by its sentence, by a heading; else all.
func (r *sentence) sizes(c *claim, said *spoken) []int {
	for _, from := range []func() []int{
		func() []int { return sizesOf(said.near, false) },
		func() []int { return one2(r.outer.size) },
		func() []int { return sizesOf(said.lead, false) },
		func() []int { return sizesOf(said.sentence, false) },
		func() []int { return one2(r.outer.scope) },
		func() []int { return sizesOf(said.near, true) },
		func() []int { return one2(r.only) },
	} {
		if s := from(); len(s) > 0 {
			return s
		}
	}
	var all []int
	for i := range r.m.sizes {
		all = append(all, i+1)
	}
	return all
}

func one2(n int) []int {
	if n == 0 {
		return nil
	}
	return []int{n}
}

// sizesOf are the sizes that mentions name; those only that cannot be of a part or
// a fabric of the same name, or also these.
func sizesOf(names []mention, either bool) []int {
	var all []int
	for _, m := range names {
		if m.size > 0 && (either || !m.specific()) && !slices.Contains(all, m.size) {
			all = append(all, m.size)
		}
	}
	return all
}

// stateOf reports whether a claim is of something finished. What finishes or is
// trimmed to a size has it said after the verb; what is finished or unfinished may
// have it said on either side.
func (r *sentence) stateOf(c *claim) state {
	it := c.items()[0]
	if len(c.dims) > 0 {
		it = c.dims[0]
	}
	before, after := r.around(it)
	for i := it.to; i < after; i++ {
		switch t := r.t[i]; {
		case t.is("unfinished", "untrimmed"):
			return raw
		case t.is("finished"):
			return finished
		case t.is("finish", "finishes", "measure", "measures", "trim", "trimmed", "cut", "for"):
			i = after
		}
	}
	for i := it.from - 1; i >= before; i-- {
		switch t := r.t[i]; {
		case t.is("finish", "finishes", "finished", "finishing", "shows"):
			return finished
		case t.is("unfinished", "measure", "measures", "trim", "trimmed", "raw", "untrimmed", "cut", "yields"):
			return raw
		}
	}
	return unsaid
}

// around is where the item before this one ends and the one after it begins. An
// item that nothing but "and" and a noun parts from the one before is of the same
// state.
func (r *sentence) around(it *item) (before, after int) {
	after = len(r.t)
	for _, n := range r.numbers {
		if n.sense != quantity || n.from < 0 {
			continue
		}
		if n.to <= it.from && n.isLength() == it.length() && !r.continues(n.to, it.from) {
			before = max(before, n.to)
		}
		if n.from >= it.to {
			after = min(after, n.from)
		}
	}
	return before, after
}

func (r *sentence) continues(from, to int) bool {
	return to-from < 8 && slices.ContainsFunc(r.t[from:to], func(t token) bool { return t.is("and", "or") }) &&
		!slices.ContainsFunc(r.t[from:to], func(t token) bool { return t.kind == mark && t.is(",", ";", ".") })
}

// taken reports whether a sentence takes what the claim is of to put something
// together: so many at a time are no count of what there is. What comes after
// 'into' or 'to make' is what it comes to.
func (r *sentence) taken(c *claim) bool {
	for i, w := range r.t {
		if i >= c.items()[0].from || i > 8 {
			return false
		}
		if w.is("lay", "place", "sew", "join", "pair", "put", "pin", "add", "match", "stitch", "overlock", "position") && !at(r.t, i+1).is("out") && !at(r.t, i+2).is("out") {
			return !slices.ContainsFunc(r.t[i:c.items()[0].from], func(t token) bool { return t.is("into", "make", "makes", "repeat", "in", "until") }) &&
				slices.ContainsFunc(r.t[c.last().to:], func(t token) bool {
					return t.is("into", "together", "on", "onto", "to", "right", "with", "between", "around", "other", "others")
				})
		}
	}
	return false
}

// says reports whether a claim's own words have one of some words after its number.
func (r *sentence) says(c *claim, words ...string) bool {
	for i := c.items()[0].from; i < c.to; i++ {
		if r.t[i].is(words...) {
			return true
		}
	}
	return false
}

// role reports whether a claim's words say what kind of length it is.
func (r *sentence) role(c *claim) bool {
	if at(r.t, c.last().to).is("over", "to", "left", "beyond", "inside", "off", "longer", "narrower", "shorter", "more", "spare", "in", "from", "round") {
		return false
	}
	if len(c.head) > 0 || r.stateOf(c) != unsaid || r.says(c, "wide", "width", "deep", "long", "square", "allowance", "wof") {
		return true
	}
	d := c.last()
	if d.pair() || d.first().unit == measure.Yard || d.first().unit == measure.Metre {
		return true
	}
	return slices.ContainsFunc(r.names, func(m mention) bool {
		return m.of(ofKind) || m.from >= c.from && m.to <= c.to && len(headKeys(m)) > 0
	}) ||
		slices.ContainsFunc(r.outer.lead, func(m mention) bool { return m.of(ofKind) })
}

// sources are what pieces come from.
var sources = set("strip", "set", "tube", "pair", "square", "piece", "pack", "row", "quarter", "block", "packet", "loop", "lot")

// told reports whether a sentence says of a claim how many come from each of
// something: 7 from each tube, 7 per tube, each tube gives 7.
func (r *sentence) told(c *claim) bool {
	first, last := c.items()[0].from, c.last().to
	if r.own > 1 && at(r.t, r.own-1).is("each") && at(r.t, r.own-2).is("of") && !at(r.t, r.own+1).is("cut") {
		return true
	}
	for i, t := range r.t {
		if !t.is("each", "every", "per", "a", "one") || t.is("a", "one") && !at(r.t, i-1).is("from", "in") || r.between(i, first, last) {
			continue
		}
		after := i > last
		if after && t.is("each") && at(r.t, i-1).is("from") && at(r.t, i+1).kind == mark {
			return true
		}
		for k := i + 1; k <= i+3 && at(r.t, k).kind != mark; k++ {
			if sources[stem(at(r.t, k).text)] && (after || !at(r.t, i-1).is("from", "in")) && (!after || t.is("per") || at(r.t, i-1).is("from", "in")) {
				return true
			}
		}
	}
	return false
}

// between reports whether a number lies between a token and the claim.
func (r *sentence) between(i, first, last int) bool {
	return slices.ContainsFunc(r.numbers, func(n *number) bool {
		return n.from >= 0 && (n.from > i && n.to <= first || n.from >= last && n.to <= i)
	})
}

// pronoun reports whether a sentence goes on about what was spoken of last.
func (r *sentence) pronoun() bool {
	return slices.ContainsFunc(r.t, func(t token) bool { return t.is("it", "they", "them", "these", "those", "its", "their", "each", "all") })
}

// perEach reports whether a sentence says how many of something come from, or go
// into, one of something else.
func (r *sentence) perEach(c *claim) bool {
	if slices.Contains(c.head, column) {
		return true
	}
	for i, t := range r.t {
		if t.is("each", "every", "per", "from", "gives", "give", "yield", "yields", "into", "makes", "make", "between", "holds", "apart") || t.is("a", "an", "one") && at(r.t, i-1).is("in", "of", "with") || t.is("rows") && at(r.t, i+1).is("of") {
			return true
		}
	}
	return false
}

// conversions holds the same value in other units against the first: it may be
// rounded either way, by less than the step that it is spelt in.
func (r *sentence) conversions(it *item) {
	for i, n := range it.also {
		of := it.alts[0][min(i, len(it.alts[0])-1)]
		out := Number{At: n.at, Verdict: Agrees, States: "the same length in other units", Is: of.length().Format(other(r.m.units))}
		if !n.converts(of) {
			out.Verdict = Disagrees
		}
		r.put(out)
	}
}

func other(u measure.Unit) measure.Unit {
	if u == measure.Cm {
		return measure.In
	}
	return measure.Cm
}
