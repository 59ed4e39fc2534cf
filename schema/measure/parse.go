package measure

import (
	"fmt"
	"math/big"
	"strings"
	"unicode/utf8"
)

// maxLengthText is the longest text read as a length. It keeps hostile input
// quick: no number of so few digits is slow.
const maxLengthText = 64

// ParseError says why a text is no length.
type ParseError struct {
	Text   string // as given
	Reason string
	// Below and Above are the nearest lengths on a ruler (1/64 in or 0.01 in,
	// 0.01 mm) if the text is a length between them: Neighbours is then true.
	Below, Above Length
	Neighbours   bool
	Unit         Unit // the unit Below and Above are best printed in
}

// Error gives the text, the reason and the neighbours, if any:
// "2 1/3" is not on a ruler: the nearest are 2.33 in and 2.34 in.
func (e *ParseError) Error() string {
	if e.Neighbours {
		return fmt.Sprintf("%s is not on a ruler: the nearest are %s and %s",
			quote(e.Text), e.Below.Format(e.Unit), e.Above.Format(e.Unit))
	}
	return fmt.Sprintf("%s is not a length: %s", quote(e.Text), e.Reason)
}

// quote quotes text, shortened if it is long.
func quote(text string) string {
	const most = 40
	if utf8.RuneCountInString(text) > most {
		text = string([]rune(text[:min(len(text), 4*most)])[:most]) + "..."
	}
	return fmt.Sprintf("%q", text)
}

// ParseLength reads a length. A number without a unit is in unit. It accepts
// decimals ("2.5"), fractions ("1/2"), mixed fractions as the trade writes them
// ("2 1/2", "2-1/2", "2½"), and the units in, ft, yd, mm, cm and m, their
// English names and the inch and foot marks. Zero is a length, a negative
// number is not. Errors are of type *ParseError; the error for a length that is
// not a whole number of ticks names the ruler's neighbours.
func ParseLength(text string, unit Unit) (Length, error) {
	if l, ok := plainLength(text, unit); ok {
		return l, nil
	}
	return parseLength(text, unit)
}

// parseLength is ParseLength without its short way.
func parseLength(text string, unit Unit) (Length, error) {
	if len(text) > maxLengthText {
		return 0, &ParseError{Text: text, Unit: unit, Reason: fmt.Sprintf("it has more than %d characters", maxLengthText)}
	}
	number, size, reason := splitLength(text, unit)
	if reason != "" {
		return 0, &ParseError{Text: text, Unit: unit, Reason: reason}
	}
	value, reason := parseNumber(number)
	if reason != "" {
		return 0, &ParseError{Text: text, Unit: unit, Reason: reason}
	}
	ticks := value.Mul(value, big.NewRat(int64(size), 1))
	if ticks.Cmp(big.NewRat(int64(MaxLength), 1)) > 0 {
		return 0, &ParseError{Text: text, Unit: unit, Reason: "it is more than " + MaxLength.Format(unit)}
	}
	if !ticks.IsInt() {
		return 0, offRuler(text, ticks, size)
	}
	return Length(ticks.Num().Int64()), nil
}

// offRuler is the error for a length that is not a whole number of ticks.
func offRuler(text string, ticks *big.Rat, size Length) *ParseError {
	e := &ParseError{Text: text, Neighbours: true, Reason: "it is not on a ruler"}
	down := Length(floorQuo(ticks.Num(), ticks.Denom()).Int64())
	if size.On(Millimetre) {
		const grid = Millimetre / 100
		e.Unit = Cm
		e.Below = FloorTo(down, grid)
		e.Above = e.Below + grid
		return e
	}
	const binary, decimal = Inch / 64, Inch / 100
	e.Below = max(FloorTo(down, binary), FloorTo(down, decimal))
	e.Above = min(FloorTo(down, binary)+binary, FloorTo(down, decimal)+decimal)
	return e
}

// splitLength returns the number in text, spelt with ASCII characters, and the
// size of its unit, or why there is none.
func splitLength(text string, unit Unit) (number string, size Length, reason string) {
	plain := plainText(text)
	switch {
	case plain == "":
		return "", 0, "it is empty"
	case plain[0] == '-' || plain[0] == '+':
		return "", 0, "write it without a sign; a length is never negative"
	case strings.Contains(plain, ","):
		return "", 0, "write decimals with a point, like 2.5, and no thousands marks"
	}
	number = plain
	word := strings.TrimLeft(plain, "0123456789./ -")
	if word == "" {
		return number, unit.Length(), ""
	}
	// "2 1/2-inch" is how the trade writes it before a noun.
	number = strings.TrimRight(strings.TrimSuffix(number, word), " ")
	number = strings.TrimSuffix(number, "-")
	size, ok := unitNamed(word)
	switch {
	case number == "":
		return "", 0, "it has no number"
	case !ok && (word[0] == 'e' || word[0] == 'E'):
		return "", 0, "write the number without an exponent"
	case !ok:
		return "", 0, fmt.Sprintf("%s is not a unit of length here: use in, ft, yd, mm, cm or m", quote(word))
	}
	return number, size, ""
}

func unitNamed(word string) (Length, bool) {
	switch strings.ToLower(strings.TrimSuffix(word, ".")) {
	case "in", "inch", "inches", `"`, "''", "\u2033", "\u201d":
		return Inch, true
	case "ft", "foot", "feet", "'", "\u2032", "\u2019":
		return Foot, true
	case "yd", "yds", "yard", "yards":
		return Yard, true
	case "mm", "millimetre", "millimetres", "millimeter", "millimeters":
		return Millimetre, true
	case "cm", "centimetre", "centimetres", "centimeter", "centimeters":
		return Centimetre, true
	case "m", "metre", "metres", "meter", "meters":
		return Metre, true
	}
	return 0, false
}

// parseNumber reads "2.5", "1/2", "2 1/2" or "2-1/2", or says why it cannot.
func parseNumber(text string) (value *big.Rat, reason string) {
	head, denominator, isFraction := strings.Cut(text, "/")
	if !isFraction {
		return parseDecimal(text)
	}
	whole, numerator := "0", head
	at := strings.IndexAny(head, " -")
	if at >= 0 {
		whole, numerator = head[:at], head[at+1:]
	}
	if !digits(whole) || !digits(numerator) || !digits(denominator) {
		return nil, "write a fraction like 1/2 or 2 1/2"
	}
	parts := decimal(denominator)
	if parts.Sign() == 0 {
		return nil, "its fraction divides by zero"
	}
	fraction := new(big.Rat).SetFrac(decimal(numerator), parts)
	if fraction.Cmp(big.NewRat(1, 1)) >= 0 {
		if at >= 0 {
			return nil, "the fraction after a whole number must be less than 1"
		}
		return nil, improper(numerator, denominator, fraction)
	}
	return fraction.Add(fraction, new(big.Rat).SetInt(decimal(whole))), ""
}

// decimal reads digits in base 10 whatever they begin with: to a big.Rat, 020
// is sixteen.
func decimal(digits string) *big.Int {
	n, _ := new(big.Int).SetString(digits, 10)
	return n
}

// improper says how to write a fraction of 1 or more. No ruler shows 21/2, and
// in print it is what is left of 2 1/2 when its space is lost.
func improper(numerator, denominator string, value *big.Rat) string {
	whole, rest := new(big.Int).QuoRem(value.Num(), value.Denom(), new(big.Int))
	mixed := whole.String()
	if rest.Sign() > 0 {
		mixed += fmt.Sprintf(" %s/%s", rest, value.Denom())
	}
	tens, last := numerator[:len(numerator)-1], numerator[len(numerator)-1:]
	if tens == "" {
		return "write it as " + mixed
	}
	return fmt.Sprintf("write it as %s, or as %s %s/%s if a space was lost", mixed, tens, last, denominator)
}

func parseDecimal(text string) (value *big.Rat, reason string) {
	whole, fraction, point := strings.Cut(text, ".")
	if whole == "" {
		whole = "0"
	}
	if !digits(whole) || point && !digits(fraction) {
		return nil, "write a number like 2.5 or 2 1/2"
	}
	value, _ = new(big.Rat).SetString(whole + "." + fraction)
	return value, ""
}

// plainText spells text with ASCII digits, slashes and hyphens and single
// spaces: "2½" becomes "2 1/2".
func plainText(text string) string {
	var plain strings.Builder
	for _, r := range text {
		switch r {
		case '\u2044', '\u2215': // fraction slash, division slash
			plain.WriteByte('/')
		case '\u2010', '\u2011', '\u2012', '\u2013', '\u2212': // hyphens, dashes, minus
			plain.WriteByte('-')
		default:
			writePlain(&plain, r)
		}
	}
	return strings.Join(strings.Fields(plain.String()), " ")
}

func writePlain(plain *strings.Builder, r rune) {
	fraction := vulgarFraction(r)
	if fraction == "" {
		plain.WriteRune(r)
		return
	}
	if digits(lastByte(plain.String())) {
		plain.WriteByte(' ')
	}
	plain.WriteString(fraction)
}

func lastByte(text string) string {
	return text[max(0, len(text)-1):]
}

// vulgarFraction spells one of Unicode's fraction characters, or returns "".
// The space after it keeps a digit that follows from joining its denominator.
func vulgarFraction(r rune) string {
	const first = "\u00bc\u00bd\u00be\u2150\u2151\u2152\u2153\u2154\u2155\u2156\u2157\u2158\u2159\u215a\u215b\u215c\u215d\u215e\u2189"
	spelt := [...]string{
		"1/4", "1/2", "3/4", "1/7", "1/9", "1/10", "1/3", "2/3", "1/5", "2/5",
		"3/5", "4/5", "1/6", "5/6", "1/8", "3/8", "5/8", "7/8", "0/3",
	}
	if r == '\u215f' { // fraction numerator one: the denominator follows
		return "1/"
	}
	at := strings.IndexRune(first, r)
	if at < 0 {
		return ""
	}
	return spelt[utf8.RuneCountInString(first[:at])] + " "
}
