package words

import (
	"slices"
)

// claim is what a stretch of a sentence says: a count of something, its lengths, or
// both.
type claim struct {
	count    *item
	dims     []*item
	head     []key // what is counted, empty where no word of the trade says it
	from     int   // tokens
	to       int
	wide     bool // "x width of fabric" stands for the second side
	lent     bool // its lengths are those of the claim after it
	labelled bool // its head is that of a label
}

func (c *claim) items() []*item {
	if c.count == nil {
		return c.dims
	}
	return append([]*item{c.count}, c.dims...)
}

// stops are marks that end what a claim says.
func stops(t token) bool {
	return t.kind == mark && t.is(",", ":", "(", ")", "[", "]", ".", "!", "?", ";", "|", "/", "•", "-") && (t.text != "-" || t.loose)
}

// claims groups the items of a sentence.
func claims(t []token, items []*item, names []mention) []*claim {
	var out []*claim
	for i := 0; i < len(items); {
		c, next := group(t, items, i, names)
		out = append(out, c)
		i = next
	}
	for i, c := range out {
		from := 0
		if i > 0 {
			from = out[i-1].to
		}
		to := len(t)
		if i+1 < len(out) {
			to = out[i+1].items()[0].from
		}
		c.reach(t, from, to)
		c.name(t, names, i, out)
		if i > 0 && slices.Contains(c.head, column) && at(t, c.count.from-1).is("of") {
			out[i-1].to = c.to // 5 rows of 5 for the wall
		}
	}
	share(t, out)
	return out
}

// share gives the lengths that are said once of two counts to both: 10 dark strips
// and 8 light strips, 3 1/2 in wide.
func share(t []token, all []*claim) {
	for i := len(all) - 2; i >= 0; i-- {
		a, b := all[i], all[i+1]
		if a.count == nil && b.count != nil && len(b.dims) == 0 && at(t, b.count.from-1).is(":") && b.labelled {
			b.dims, b.lent = a.dims, true
		}
		if a.count == nil || b.count == nil || len(a.dims) > 0 || len(b.dims) == 0 || !slices.Equal(a.head, b.head) || len(a.head) == 0 {
			continue
		}
		if gap := t[a.count.to:b.count.from]; len(gap) < 8 && slices.ContainsFunc(gap, func(t token) bool { return t.is("and", ",") }) {
			a.dims, a.lent = b.dims, true
		}
	}
}

// group makes a claim of item i and of the lengths that go with it.
func group(t []token, items []*item, i int, names []mention) (*claim, int) {
	c := &claim{}
	it := items[i]
	next := i + 1
	if it.length() {
		c.dims = []*item{it}
		return c, next
	}
	c.count = it
	for next < len(items) && items[next].length() && goesWith(t, c.last().to, items[next].from, len(c.dims)) {
		c.dims = append(c.dims, items[next])
		next++
	}
	return c, next
}

func (c *claim) last() *item {
	if len(c.dims) > 0 {
		return c.dims[len(c.dims)-1]
	}
	return c.count
}

// goesWith reports whether a length that begins at token b belongs to what ends at
// a: no verb and no end of a phrase lies between.
func goesWith(t []token, a, b, n int) bool {
	if n > 0 || b-a > 9 {
		return false
	}
	for i := a; i < b; i++ {
		if t[i].kind == mark && !t[i].is("@", "×", "-", ",", "(") {
			return false
		}
		if t[i].is(",") && i+1 < b && !at(t, i+1).is("each", "all") {
			return false
		}
		if t[i].is("and", "from", "gives", "give", "yields", "into", "should", "measure", "measures", "finish", "finishes", "with", "in", "by") {
			return false
		}
	}
	return true
}

// reach says which tokens around the claim speak of it.
func (c *claim) reach(t []token, least, most int) {
	items := c.items()
	c.from, c.to = items[0].from, items[len(items)-1].to
	commas := 0
	for c.from > least && (!stops(t[c.from-1]) || least == 0 && c.count == nil && t[c.from-1].is(",") && commas == 0) {
		if t[c.from-1].is(",") {
			commas++
		}
		c.from--
	}
	for c.to < most && (!stops(t[c.to]) || c.qualified(t)) && !(most < len(t) && leadsTo(t, c.to, most)) {
		c.to++
	}
	c.wide = at(t, items[len(items)-1].to).is("x", "×", "by")
}

// leadsTo reports whether the "and" at token i begins what the next claim says.
func leadsTo(t []token, i, next int) bool {
	return t[i].is("and", "or") && !slices.ContainsFunc(t[i:next], stops)
}

// qualified reports whether a comma only parts what is said of the same thing:
// "9 1/2 in, unfinished".
func (c *claim) qualified(t []token) bool {
	return t[c.to].is(",") && at(t, c.to+1).is("unfinished", "finished", "each", "all", "cut", "once", "twice", "trimmed", "when", "before", "if")
}

// name finds what is counted: the word of the trade after the count, else the one
// before it, else that of the claim before.
func (c *claim) name(t []token, names []mention, i int, all []*claim) {
	if c.count != nil {
		from := c.count.to
		if at(t, from).is("of") && at(t, from+1).is("the", "these", "those") {
			from += 2 // 24 of the strips
		}
		c.head = headAfter(t, names, from, c.to)
		if len(c.dims) > 0 && len(c.head) == 0 {
			c.head = headAfter(t, names, c.last().to, c.to)
		}
	} else {
		c.head = headNear(names, c.dims[0], c.to, t)
	}
	if c.count != nil && len(c.head) > 0 && c.head[0].class() == ofKind {
		c.head = nil // 4 @ 2 1/2 in x the width of the fabric
	}
	if len(c.head) == 0 && c.count != nil {
		c.head = headBefore(names, c.from, c.count.from)
	}
	if len(c.head) == 0 && c.count != nil && at(t, c.from-1).is(":", "/") {
		c.head = labelHead(t, names, c.from-1)
		c.labelled = true
	}
	if c.count != nil && len(c.head) == 0 && (at(t, c.count.to).is("@") || c.wide && len(c.dims) > 0) {
		c.head = []key{strip, square, rectangle, piece}
	}
	if c.count != nil && at(t, c.count.to).is("in") && at(t, c.count.to+1).is("it", "each", "a") {
		c.head = []key{piece, strip, square, column}
	}
	c.inherits(t, names, all[:i])
	if c.count != nil && at(t, c.count.from-1).is("of") && at(t, c.count.from-2).is("row", "rows") {
		c.head = []key{column}
	}
	// 5 rows of 5
	if c.count != nil && i > 0 && at(t, c.count.from-1).is("of") && slices.Contains(all[i-1].head, row) && all[i-1].count != nil {
		c.head = []key{column}
	}
}

// inherits takes the head of the claim before, where the claim has no word of its
// own for what it counts: 40 light squares and 40 dark.
func (c *claim) inherits(t []token, names []mention, before []*claim) {
	if c.count == nil || len(c.head) > 0 || c.unknown(t, names) || at(t, c.count.to).is("from") {
		return
	}
	named := slices.ContainsFunc(names, func(m mention) bool { return m.from == c.count.to && m.specific() })
	for k := len(before) - 1; k >= 0; k-- {
		if before[k].count == nil {
			continue
		}
		for _, h := range before[k].head {
			if !named || h.class() == noClass {
				c.head = append(c.head, h)
			}
		}
		return
	}
}

// unknown reports whether a word follows the count that may be what it counts, and
// that nobody knows.
func (c *claim) unknown(t []token, names []mention) bool {
	after := at(t, c.count.to)
	if after.kind != word || after.is("for", "in", "of", "to", "and", "or", "from", "at", "on", "with", "each", "are", "is", "will", "which", "wide", "long", "more", "by", "per") {
		return false
	}
	return !slices.ContainsFunc(names, func(m mention) bool { return m.from == c.count.to })
}

// headKeys are the keys of a mention that can be counted.
func headKeys(m mention) []key {
	var out []key
	for _, k := range m.keys {
		if heads[k] || len(k) > 5 && k[:5] == "part " {
			out = append(out, k)
		}
	}
	return out
}

// headAfter is the last of the words of the trade that stand together after a
// count: the set of "outer strip sets".
func headAfter(t []token, names []mention, from, to int) []key {
	var found []key
	end := -1
	for _, m := range names {
		if m.from < from || m.from >= to {
			continue
		}
		if end >= 0 && !joined(t, end, m.from) {
			break
		}
		if end < 0 && broken(t, from, m.from) {
			break
		}
		if k := headKeys(m); len(k) > 0 {
			found = k
			end = m.to
		} else if end >= 0 {
			break
		}
		if m.of(ofKind) {
			return m.keys
		}
	}
	return found
}

// joined reports whether two mentions stand beside each other.
func joined(t []token, a, b int) bool { return b == a || b == a+1 && t[a].is("-") && !t[a].loose }

// broken reports whether what lies between a count and a word keeps the one from
// counting the other.
func broken(t []token, a, b int) bool {
	for i := a; i < b && i < len(t); i++ {
		if t[i].is("for", "from", "of", "in", "to", "with", "into", "per", "and", "or", "on", "are", "is") {
			return true
		}
	}
	return false
}

// headNear is what a length is of, where the words after it say so: 13 cm squares.
func headNear(names []mention, it *item, to int, t []token) []key {
	from := it.to
	if at(t, from).is("square") && it.pair() {
		from++
		if !lengthens(t, from) {
			return nil
		}
	}
	for _, m := range names {
		if m.from >= from && m.from < to && m.from-from <= 2 && !broken(t, from, m.from) {
			return headAfter(t, names, from, to)
		}
	}
	return nil
}

// lengthens reports whether "square" is only the first word of what is measured: a
// 6 1/2 in square ruler.
func lengthens(t []token, i int) bool {
	return at(t, i).kind == word && at(t, i).is("ruler", "rulers", "block", "blocks", "piece", "pieces", "patch", "unit", "units")
}

// headBefore is the first word of the trade in a label: the squares of "squares
// per tube".
func headBefore(names []mention, from, to int) []key {
	for _, m := range names {
		if m.from >= from && m.to <= to {
			if k := headKeys(m); len(k) > 0 {
				return k
			}
		}
	}
	return nil
}

// labelHead is what a label ends with that counts: the strips of "border strips".
func labelHead(t []token, names []mention, to int) []key {
	from := 0
	for i := 0; i < to; i++ {
		if t[i].is(".", "!", "?") {
			from = i + 1
		}
	}
	for _, m := range names {
		if m.from >= from && m.to <= to && len(headKeys(m)) > 0 {
			return headAfter(t, names, m.from, to)
		}
	}
	return nil
}
