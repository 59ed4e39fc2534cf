package words

import (
	"math/big"
	"slices"
	"strings"

	"yardproof/schema/measure"
)

// metric reports whether a number is in centimetres or the like.
func metric(n *number) bool { return n.unit.On(measure.Millimetre) }

// labels are words after which a number is a name: step 3, figure 2.
var labels = set("step", "steps", "figure", "fig", "figs", "page", "pages", "p", "pp", "no", "nos", "number", "nr", "card", "diagram", "photo", "section", "chapter",
	"edition", "volume", "template", "rule", "pattern", "class", "version", "revision", "part", "style", "model", "day", "lesson", "stage", "table", "illustration", "note",
	"option", "colourway", "week", "sheet", "iso")

// numbered are words of the trade after which a bare number is a name: row 3.
var numbered = set("row", "rows", "round", "rounds", "fabric", "fabrics", "border", "borders", "block", "blocks", "set", "sets", "unit", "units", "strip", "strips", "rail", "rails", "size", "sizes", "colour", "color", "print")

var months = set("january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november", "december",
	"jan", "feb", "mar", "apr", "jun", "jul", "aug", "sep", "sept", "oct", "nov", "dec")

var weekdays = set("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "daily", "hours", "open", "o'clock")

var times = set("minute", "minutes", "min", "mins", "hour", "hours", "hr", "hrs", "day", "days", "week", "weeks", "month", "months", "year", "years", "second", "seconds")

var currencies = set("eur", "usd", "gbp", "aud", "cad", "nzd", "chf", "sek", "nok", "dkk", "jpy", "dollar", "dollars", "euro", "euros", "pound", "pounds", "cents", "$", "€", "£", "¥")

// sortOut tells quantities from the numbers that are something else.
func sortOut(t []token, numbers []*number, x *lexicon, names []mention) {
	for i, n := range numbers {
		if n.sense == quantity {
			n.sense = senseOf(t, n)
		}
		if n.sense == quantity && (x.inName(t, n, names) || x.isName(t, n, names)) {
			n.sense = label
		}
		n.about = n.about || about(t, n)
		n.least = at(t, n.from-1).is("least") || n.about && at(t, n.from-2).is("least")
		n.atMost = at(t, n.from-1).is("than") && at(t, n.from-2).is("more")
		follow(t, numbers, i)
	}
	ranges(t, numbers)
}

// follow takes the numbers of an enumeration for what its first is: rails 1, 2, 3
// and 4.
func follow(t []token, numbers []*number, i int) {
	if i == 0 {
		return
	}
	a, n := numbers[i-1], numbers[i]
	if a.sense != label || n.sense != quantity || !n.whole || n.isLength() || n.from-a.to > 2 {
		return
	}
	if n.from == a.to+1 && at(t, a.to).is(",", "and", "&", "-", "to", "or", "of", "/") || n.from == a.to+2 && at(t, a.to).is(",") && at(t, a.to+1).is("and") {
		if next := at(t, n.to); next.kind != word || next.is("and", "for", "on") {
			n.sense = label
		}
	}
}

func senseOf(t []token, n *number) sense {
	before, after := at(t, n.from-1), at(t, n.to)
	tight := !after.loose && n.to < len(t)
	switch {
	case after.is("%") || after.is("percent") || after.is("per") && at(t, n.to+1).is("cent"):
		return percent
	case after.is("°") || after.is("degree", "degrees") || after.is("-") && at(t, n.to+1).is("degree", "degrees"):
		return angle
	case currencies[before.text] && (before.kind == mark || n.whole || n.step.Cmp(big.NewRat(1, 100)) == 0), currencies[after.text]:
		return money
	case tight && after.is("st", "nd", "rd", "th"):
		return ordinal
	case tight && after.kind == word && !n.isLength() && after.text != "x":
		return code
	case before.is("'") && !n.isLength(), before.is("#"), before.is("-") && !before.loose && !t[n.from].loose && at(t, n.from-2).kind == word && !isNumberWord(at(t, n.from-2).text):
		return code
	case times[after.text] || after.is("-") && times[at(t, n.to+1).text] || aged(t, n):
		return duration
	case phone(t, n):
		return code
	case dated(t, n):
		return date
	case clocked(t, n):
		return clock
	case labels[before.text] && !n.isLength() && before.kind == word, before.is(".") && labels[at(t, n.from-2).text] && !n.isLength() && at(t, n.from-2).is("no", "nos", "fig", "p", "pp", "nr"):
		return label
	case numbered[before.text] && n.whole && !n.isLength() && !counts(t, n):
		return label
	case ofMachine(t, n):
		return setting
	case ofNoFigure(t, n):
		return other_
	case year(t, n):
		return date
	}
	return quantity
}

func isNumberWord(w string) bool { return small[w] > 0 || tens[w] > 0 }

// counts reports whether a word that a number could count follows it.
func counts(t []token, n *number) bool {
	after := at(t, n.to)
	return after.kind == word && !after.is("and", "is", "are", "of", "with", "to", "on", "for", "in", "or") || after.is("x", "×", "(", "@", "-")
}

// aged reports whether a number is an age.
func aged(t []token, n *number) bool {
	for i := n.from - 1; i >= 0 && i >= n.from-3; i-- {
		if t[i].is("age", "aged", "ages") {
			return true
		}
	}
	return false
}

// phone reports whether a number is one of a group of figures that are dialled or
// looked up, like a telephone number or an ISBN.
func phone(t []token, n *number) bool {
	if n.isLength() || t[n.from].kind != digits {
		return false
	}
	first, last := n.from, n.from
	neighbour := func(a, b int) bool {
		return at(t, a).kind == digits && at(t, b).kind == digits && !strings.Contains(at(t, a).text+at(t, b).text, "/")
	}
	for first > 0 && (at(t, first-1).is("-") && neighbour(first-2, first) || neighbour(first-1, first)) {
		first--
		if at(t, first).is("-") {
			first--
		}
	}
	for last+1 < len(t) && (at(t, last+1).is("-") && neighbour(last, last+2) || neighbour(last, last+1)) {
		last++
		if at(t, last).is("-") {
			last++
		}
	}
	figures := 0
	for i := first; i <= last; i++ {
		if t[i].kind == digits {
			figures += len(t[i].text)
		}
	}
	for i := first - 1; i >= 0 && i >= first-2; i-- {
		if t[i].is("isbn", "phone", "call", "tel", "telephone", "fax", "+", "issn", "ean", "sku", "item", "ring") {
			return true
		}
	}
	return last > first && figures >= 7
}

// dated reports whether a number is the day or the year of a date.
func dated(t []token, n *number) bool {
	if !n.whole || n.isLength() {
		return false
	}
	before, after := at(t, n.from-1), at(t, n.to)
	day := n.value.Cmp(big.NewRat(31, 1)) <= 0
	switch {
	case day && months[after.text] && !after.is("may", "march") || day && after.is("may", "march") && at(t, n.to+1).kind == digits:
		return true
	case day && months[before.text] && !before.is("may", "march"), day && before.is("may", "march") && at(t, n.to).is(",") && at(t, n.to+1).kind == digits:
		return true
	}
	return false
}

// year reports whether a number is a year.
func year(t []token, n *number) bool {
	if !n.whole || n.isLength() || len(t[n.from].text) != 4 || n.to != n.from+1 {
		return false
	}
	return n.value.Cmp(big.NewRat(1900, 1)) >= 0 && n.value.Cmp(big.NewRat(2099, 1)) <= 0
}

// clocked reports whether a number is a time of day.
func clocked(t []token, n *number) bool {
	if n.isLength() {
		return false
	}
	if at(t, n.to).is("am", "pm", "o'clock") || at(t, n.to).is(":") && !at(t, n.to+1).loose && at(t, n.to+1).kind == digits || at(t, n.from-1).is(":") && !t[n.from].loose && at(t, n.from-2).kind == digits {
		return true
	}
	if n.whole || n.step.Cmp(big.NewRat(1, 100)) != 0 {
		return false
	}
	for _, w := range t {
		if weekdays[w.text] {
			return true
		}
	}
	return false
}

// ofMachine reports whether a number is how a machine is set.
func ofMachine(t []token, n *number) bool {
	if at(t, n.to).is("wt", "weight", "ply", "needle", "stitches", "spi", "oz", "g", "gsm", "count") {
		return true
	}
	for i := n.from - 1; i >= 0 && i >= n.from-6; i-- {
		if t[i].is("needle", "tension", "weight", "temperature") || t[i].is("length") && at(t, i-1).is("stitch") || t[i].is("stitch") && at(t, i+1).is("length") {
			return true
		}
	}
	return false
}

// about reports whether the text says that a number is rounded.
func about(t []token, n *number) bool {
	for i := n.from - 1; i >= 0 && i >= n.from-2; i-- {
		if t[i].is("about", "approximately", "approx", "roughly", "circa", "nearly", "almost", "~", "≈", "around", "nominally", "nominal") {
			return true
		}
		if t[i].kind == mark && !t[i].is(".", "x", "×") {
			return false
		}
	}
	return false
}

// ranges puts two numbers with 'to' or 'or' between them together: the second is
// the upper end of the first.
func ranges(t []token, numbers []*number) {
	for i := 0; i+1 < len(numbers); i++ {
		a, b := numbers[i], numbers[i+1]
		if a.sense != quantity || b.sense != quantity || b.from != a.to+1 || a.most != nil || !at(t, a.to).is("to", "or", "-") {
			continue
		}
		if a.unit > 0 && b.unit != a.unit || b.value.Cmp(a.value) <= 0 || a.isLength() != b.isLength() && a.unit > 0 {
			continue
		}
		if at(t, a.to).is("or") && b.value.Cmp(new(big.Rat).Add(a.value, big.NewRat(1, 1))) > 0 {
			continue
		}
		a.most, a.unit, a.to, a.at.End = b.value, b.unit, b.to, b.at.End
		b.sense = label // told with the first
		b.from = -1
	}
}

// inName reports whether a number is part of a name that the plan gives.
func (x *lexicon) inName(t []token, n *number, names []mention) bool {
	for _, m := range names {
		if m.from < n.from && m.to >= n.to && len(m.keys) > 0 && m.to-m.from > 1 {
			return true
		}
	}
	return x.titled(t, n)
}

// isName reports whether a number in words is the name of a part: the part nine.
func (x *lexicon) isName(t []token, n *number, names []mention) bool {
	if n.isLength() || t[n.from].kind != word || n.to != n.from+1 {
		return false
	}
	named := slices.ContainsFunc(x.phrases[stem(t[n.from].text)], func(k key) bool { return strings.HasPrefix(string(k), "part ") })
	next := at(t, n.to)
	return named && (next.kind == mark || next.is("into", "and", "turned", "or", "in", "is", "for", "with"))
}

// titled reports whether a number is a word of the plan's title.
func (x *lexicon) titled(t []token, n *number) bool {
	for start := max(0, n.from-2*len(x.title)); start <= n.from; start++ {
		if k := x.titleAt(t, start); k > 0 && start+k >= n.to {
			return true
		}
	}
	return false
}

// idle are words for what no plan counts.
var idle = set("colour", "color", "colours", "colors", "side", "sides", "end", "ends", "way", "ways", "edge", "edges", "halves", "layer", "layers", "pin", "pins",
	"time", "times", "line", "lines", "corner", "thread", "threads", "hand", "hands", "direction", "directions", "kinds", "people", "students", "long", "short", "opposite", "together",
	"sheets", "pages", "copies", "method", "methods", "technique", "techniques", "language", "languages", "children", "machine", "machines", "needles", "cones", "spools", "stitches", "ones", "versions", "colourways", "step", "steps", "weekends", "across", "down", "turn", "turns", "evenings", "afternoons")

// gridOf reports whether a number is of a grid, 2 by 2, and no side of a size: no unit
// follows it or its fellow.
func gridOf(t []token, n *number) bool {
	p := numerals{t: t}
	for _, i := range []int{n.to + 1, n.from - 2} {
		if other := p.at(i); other != nil && (other.isLength() || !other.whole) {
			return false
		}
	}
	return true
}

// ofNoFigure reports whether a count is of something that no plan counts.
func ofNoFigure(t []token, n *number) bool {
	after := at(t, n.to)
	if at(t, n.from-1).is("of") && at(t, n.from-2).is("group", "groups") {
		return true
	}
	if at(t, n.from-1).is("where") && n.whole && !n.isLength() {
		return true
	}
	if n.whole && !n.isLength() && (at(t, n.to).is("by", "x", "×") && at(t, n.to+1).kind == digits || at(t, n.from-1).is("by", "x", "×")) && gridOf(t, n) {
		return true
	}
	if at(t, n.from-1).is("other", "remaining") && (after.kind == mark || n.to >= len(t)) {
		return true
	}
	return n.whole && !n.isLength() && after.kind == word && idle[after.text]
}
