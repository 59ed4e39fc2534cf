package words

import (
	"math/big"
	"strings"

	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// sense is what a number in a text is.
type sense int

const (
	quantity sense = iota // a count or a length
	label                 // a step, page, figure, edition or the number in a name
	date
	clock
	money
	percent
	angle
	duration
	code    // a telephone number, an ISBN, a part number
	ordinal // first, 2nd
	setting // of a machine: stitch length, needle
	other_  // of something that no plan counts
)

var senses = [...]string{"quantity", "label", "date", "time of day", "price", "percentage", "angle", "duration", "code", "ordinal", "machine setting", "of nothing that a plan counts"}

// String is the word that reports use.
func (s sense) String() string { return senses[s] }

// number is one number of a text.
type number struct {
	at     source.Range
	value  *big.Rat
	unit   measure.Length // what it counts, in ticks; 0 of a plain number
	step   *big.Rat       // the step that its spelling goes in: 1/8 of 2 3/8, 0.1 of 2.5
	most   *big.Rat       // upper end of a range; nil where it is none
	about  bool
	least  bool // at least so much: rounded up
	atMost bool // no more than so much: rounded down
	sense  sense
	from   int // tokens
	to     int
	size   int // which of the sizes it is for, in a list by size, counted from 1; 0 where it is in none
	whole  bool
}

// length is the number as a length, in ticks.
func (n *number) length() measure.Surd { return n.ticks(n.value) }

func (n *number) ticks(value *big.Rat) measure.Surd {
	return measure.FromRat(new(big.Rat).Mul(value, big.NewRat(int64(n.unit), 1)))
}

func (n *number) isLength() bool { return n.unit > 0 }

// small are the words for whole numbers.
var small = map[string]int64{
	"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
	"eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17,
	"eighteen": 18, "nineteen": 19,
}

var tens = map[string]int64{
	"twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90,
}

// parts are the words for parts of a whole.
var parts = map[string]int64{
	"half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "fourth": 4, "fourths": 4, "eighth": 8, "eighths": 8,
	"sixteenth": 16, "sixteenths": 16, "tenth": 10, "tenths": 10,
}

// numerals reads the numbers of a run of tokens.
type numerals struct {
	t   []token
	out []*number
}

// get is token i, an empty mark beyond the ends.
func (p *numerals) get(i int) token {
	if i < 0 || i >= len(p.t) {
		return token{kind: mark, loose: true}
	}
	return p.t[i]
}

// read finds all numbers of the tokens.
func (p *numerals) read() []*number {
	for i := 0; i < len(p.t); {
		n := p.at(i)
		if n == nil {
			i++
			continue
		}
		p.out = append(p.out, n)
		i = n.to
	}
	p.enumerations()
	return p.out
}

// enumerations give every fraction of an enumeration the unit of its last: two and
// a half, three and a half and four inches.
func (p *numerals) enumerations() {
	for i := len(p.out) - 2; i >= 0; i-- {
		a, b := p.out[i], p.out[i+1]
		if a.sense != quantity || a.unit > 0 || b.unit == 0 || a.value.IsInt() {
			continue
		}
		between := true
		for k := a.to; k < b.from; k++ {
			between = between && p.t[k].is(",", "and", "or", "/", "&")
		}
		if between && b.from > a.to {
			a.unit, a.whole = b.unit, false
		}
	}
}

// at reads the number that begins with token i, nil when none does.
func (p *numerals) at(i int) *number {
	if n := p.unitFirst(i); n != nil {
		return n
	}
	n := p.numeral(i)
	if n == nil {
		return nil
	}
	p.measure(n)
	p.compound(n)
	p.span(n)
	if p.get(i-1).text == "." && p.get(i).kind == digits && !p.get(i).loose { // of 1.2.3
		n.sense = code
	}
	return n
}

// span sets the number's place.
func (p *numerals) span(n *number) {
	n.at = source.Range{Start: p.t[n.from].at.Start, End: p.t[n.to-1].at.End}
}

// numeral reads a number without its unit.
func (p *numerals) numeral(i int) *number {
	switch t := p.get(i); t.kind {
	case digits:
		return p.figures(i)
	case word:
		return p.spelt(i)
	}
	return nil
}

// figures reads 12, 2.5, 1/2, 2 1/2, 2-1/2, 2½ and 2 and 1/2.
func (p *numerals) figures(i int) *number {
	t := p.get(i)
	n := &number{from: i, to: i + 1}
	value, step, ok := plainValue(t.text)
	if !ok {
		n.value, n.step, n.sense = new(big.Rat), big.NewRat(1, 1), code
		if strings.Count(t.text, "/") == 2 {
			n.sense = date
		}
		return n
	}
	n.value, n.step = value, step
	if strings.Contains(t.text, "/") && value.Cmp(big.NewRat(1, 1)) >= 0 {
		n.sense = setting // 80/12: no ruler shows it
		return n
	}
	n.whole = value.IsInt() && !strings.ContainsAny(t.text, "./")
	if !n.whole {
		return n
	}
	j := i + 1
	switch {
	case p.get(j).text == "-" && !p.get(j).loose && !p.get(j+1).loose, p.get(j).is("and", "&", "+"):
		j++
	}
	if f := p.get(j); f.kind == digits && strings.Contains(f.text, "/") {
		if part, step, ok := plainValue(f.text); ok && part.Cmp(big.NewRat(1, 1)) < 0 {
			n.value = new(big.Rat).Add(value, part)
			n.step, n.to, n.whole = step, j+1, false
		}
	} else if j == i+2 && p.get(i+1).text == "and" {
		p.wordFraction(n, j)
	}
	return n
}

// plainValue is the value of figures written together, and the step they go in.
func plainValue(text string) (value, step *big.Rat, ok bool) {
	const most = 12 // digits
	if len(text) > most {
		return nil, nil, false
	}
	if top, bottom, is := strings.Cut(text, "/"); is {
		a, okA := new(big.Int).SetString(top, 10)
		b, okB := new(big.Int).SetString(bottom, 10)
		if !okA || !okB || b.Sign() == 0 {
			return nil, nil, false
		}
		return new(big.Rat).SetFrac(a, b), new(big.Rat).SetFrac(big.NewInt(1), b), true
	}
	whole, after, point := strings.Cut(text, ".")
	if whole == "" {
		whole = "0"
	}
	if point && (after == "" || strings.ContainsAny(after, ".")) {
		return nil, nil, false
	}
	value, ok = new(big.Rat).SetString(whole + "." + after)
	if !ok {
		return nil, nil, false
	}
	step = big.NewRat(1, 1)
	for range after {
		step.Quo(step, big.NewRat(10, 1))
	}
	return value, step, true
}

// spelt reads a number in words: thirty-six, two and a half, three-quarters, half
// a yard.
func (p *numerals) spelt(i int) *number {
	n := &number{from: i, to: i, value: new(big.Rat), step: big.NewRat(1, 1), whole: true}
	v, j, ok := p.wholeWords(i)
	if ok {
		if p.hyphenated(i, j) && !p.partAfter(j) && !p.unitAfterHyphen(j) {
			return nil // nine-patch, four-hour
		}
		n.value.SetInt64(v)
		n.to = j
		if p.get(j).text == "and" {
			p.wordFraction(n, j+1)
			return n
		}
		if p.partOf(n, j, v) {
			return n
		}
		return p.alone(n)
	}
	if p.get(i).is("half", "quarter", "eighth", "third") && p.partOf(n, i, 1) {
		return n
	}
	return nil
}

// alone tells 'one' that counts something from 'one' that does not.
func (p *numerals) alone(n *number) *number {
	if p.get(n.from).text != "one" || n.to != n.from+1 {
		return n
	}
	next := p.get(n.to)
	if next.kind != word || next.is("of", "another", "by", "way", "side", "edge", "end", "on", "and", "or", "is", "at", "to", "it", "in", "direction", "after", "next", "that", "which", "who", "with", "you", "has", "time", "for", "from", "piece", "more") {
		return nil
	}
	if p.get(n.from-1).is("this", "that", "each", "every", "the", "another", "any", "no", "sewn", "dark", "light", "other", "inner", "outer", "first") {
		return nil
	}
	return n
}

// wholeWords reads a whole number in words, to a hundred.
func (p *numerals) wholeWords(i int) (value int64, next int, ok bool) {
	t := p.get(i)
	if t.kind != word {
		return 0, i, false
	}
	if v, is := tens[t.text]; is {
		j := i + 1
		if p.get(j).text == "-" && !p.get(j).loose {
			j++
		}
		if u, is := small[p.get(j).text]; is && u < 10 {
			return v + u, j + 1, true
		}
		return v, i + 1, true
	}
	if v, is := small[t.text]; is {
		if v < 10 && p.get(i+1).text == "hundred" {
			return v * 100, i + 2, true
		}
		return v, i + 1, true
	}
	if t.is("a") && p.get(i+1).text == "hundred" {
		return 100, i + 2, true
	}
	return 0, i, false
}

// hyphenated reports whether a hyphen ties what begins at j to what ends before it.
func (p *numerals) hyphenated(i, j int) bool {
	return p.get(j).text == "-" && !p.get(j).loose && p.get(j+1).kind == word && !p.get(j+1).loose
}

func (p *numerals) partAfter(j int) bool {
	_, ok := parts[p.get(j+1).text]
	return ok && !p.get(j+2).is("triangle", "triangles", "square", "squares", "unit", "units")
}

func (p *numerals) unitAfterHyphen(j int) bool {
	_, ok := unitNamed(p.get(j + 1).text)
	return ok
}

// wordFraction adds "a half" or "three-quarters" to a number that ends with "and".
func (p *numerals) wordFraction(n *number, j int) {
	top, k := int64(1), j
	if p.get(j).is("a", "an") {
		k = j + 1
	} else if v, next, ok := p.wholeWords(j); ok {
		top, k = v, next
	} else {
		return
	}
	if p.get(k).text == "-" && !p.get(k).loose {
		k++
	}
	bottom, ok := parts[p.get(k).text]
	if !ok || top >= bottom {
		return
	}
	part := big.NewRat(top, bottom)
	n.value.Add(n.value, part)
	n.step, n.to, n.whole = big.NewRat(1, bottom), k+1, false
}

// partOf reads v parts of a whole, where a unit says that it is a length: half a
// yard, three-quarters of a yard, quarter inch, seven-eighths yard.
func (p *numerals) partOf(n *number, j int, v int64) bool {
	k := j
	if p.get(k).text == "-" && !p.get(k).loose {
		k++
	}
	bottom, ok := parts[p.get(k).text]
	if !ok || v >= bottom {
		return false
	}
	k++
	end := k
	if p.get(k).text == "of" {
		k++
	}
	if p.get(k).is("a", "an") {
		k++
	}
	if p.get(k).text == "-" && !p.get(k).loose {
		k++
	}
	size, ok := unitNamed(p.get(k).text)
	if !ok || p.get(k).is("in", "m", "'", `"`) {
		return false
	}
	if k > end+2 && p.get(end).text != "of" {
		return false
	}
	n.value, n.step, n.to, n.whole, n.unit = big.NewRat(v, bottom), big.NewRat(1, bottom), k+1, false, size
	return true
}
