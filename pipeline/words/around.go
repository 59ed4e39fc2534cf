package words

import (
	"slices"

	"yardproof/schema/measure"
)

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
