package words

import (
	"slices"

	"yardproof/pipeline/internal/derive"
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
