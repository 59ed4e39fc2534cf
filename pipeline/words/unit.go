package words

import (
	"math/big"

	"yardproof/schema/measure"
)

// unitNamed is the length that a word is the unit of.
func unitNamed(text string) (measure.Length, bool) {
	switch text {
	case "in", "ins", "inch", "inches", `"`:
		return measure.Inch, true
	case "ft", "foot", "feet", "'":
		return measure.Foot, true
	case "yd", "yds", "yard", "yards":
		return measure.Yard, true
	case "mm", "millimetre", "millimetres", "millimeter", "millimeters":
		return measure.Millimetre, true
	case "cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters":
		return measure.Centimetre, true
	case "m", "metre", "metres", "meter", "meters":
		return measure.Metre, true
	}
	return 0, false
}

// afterIn are words before which 'in' is no unit.
var afterIn = set("the", "a", "an", "each", "all", "any", "both", "this", "that", "these", "those", "total", "half", "two", "pairs", "pair",
	"every", "order", "turn", "place", "your", "her", "his", "their", "which", "between", "front", "it", "our", "one", "three", "four", "rows", "row", "columns",
	"opposite", "them", "position", "step", "figure")

func set(words ...string) map[string]bool {
	m := map[string]bool{}
	for _, w := range words {
		m[w] = true
	}
	return m
}

// measure reads the unit that follows a number.
func (p *numerals) measure(n *number) {
	if n.unit > 0 || n.sense != quantity {
		return
	}
	j := n.to
	if p.get(j).text == "-" && !p.get(j).loose && !p.get(j+1).loose {
		j++
	}
	size, end, ok := p.unitAt(j)
	if !ok {
		return
	}
	n.unit, n.to, n.whole = size, end, false
	if p.get(end).text == "." && !p.get(end).loose && p.get(end+1).kind == word && !sentenceStarts(p.get(end+1)) && size == measure.Inch && p.get(end-1).text == "in" {
		n.to++ // in. is how the trade shortens it
	}
	// 'a yard and a half' in figures: 1 yard and a half
	if n.value.IsInt() && p.get(n.to).text == "and" && p.get(n.to+1).is("a", "an") {
		p.wordFraction(n, n.to+1)
	}
}

func sentenceStarts(token) bool { return false }

// unitAt reads the unit at token j.
func (p *numerals) unitAt(j int) (size measure.Length, end int, ok bool) {
	t := p.get(j)
	if t.kind == digits {
		return 0, j, false
	}
	if t.kind == mark && (t.loose || t.text == "'" && p.get(j+1).text == "'" && p.get(j+1).loose) {
		return 0, j, false
	}
	if t.text == "'" && p.get(j+1).text == "'" && !p.get(j+1).loose { // two single marks
		return measure.Inch, j + 2, true
	}
	if t.text == "in" && p.preposition(j) {
		return 0, j, false
	}
	size, ok = unitNamed(t.text)
	return size, j + 1, ok
}

// preposition reports whether the 'in' at token j is no unit.
func (p *numerals) preposition(j int) bool {
	next := p.get(j + 1)
	return next.kind == word && afterIn[next.text]
}

// unitFirst reads 'a yard', 'a yard and a half', 'an inch': one of a unit.
func (p *numerals) unitFirst(i int) *number {
	if !p.get(i).is("a", "an") || p.get(i-1).is("half", "of", "quarter", "eighth", "and") && !p.get(i-1).is("and") {
		return nil
	}
	if !p.get(i+1).is("yard", "metre", "meter", "inch") || p.get(i+1).is("inch") && p.get(i-1).is("of", "half") {
		return nil
	}
	size, _ := unitNamed(p.get(i + 1).text)
	n := &number{from: i, to: i + 2, value: big.NewRat(1, 1), step: big.NewRat(1, 1), unit: size}
	if p.get(n.to).text == "and" {
		p.wordFraction(n, n.to+1)
	}
	p.span(n)
	return n
}

// compound adds a smaller unit that follows: 4 ft 6 in, 1 yd 4 in, four feet four
// inches.
func (p *numerals) compound(n *number) {
	if n.unit != measure.Foot && n.unit != measure.Yard || n.sense != quantity {
		return
	}
	j := n.to
	if p.get(j).text == "and" || p.get(j).text == "," {
		j++
	}
	more := p.numeral(j)
	if more == nil || more.sense != quantity {
		return
	}
	p.measure(more)
	if more.unit != measure.Inch || more.value.Cmp(big.NewRat(int64(n.unit/measure.Inch), 1)) >= 0 {
		return
	}
	inches := new(big.Rat).Mul(n.value, big.NewRat(int64(n.unit/measure.Inch), 1))
	n.value, n.step, n.unit, n.to = inches.Add(inches, more.value), more.step, measure.Inch, more.to
}
