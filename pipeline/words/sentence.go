package words

import (
	"slices"
	"strconv"
	"strings"

	"yardproof/schema/measure"
)

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
