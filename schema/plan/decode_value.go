package plan

import (
	"errors"
	"fmt"
	"math/big"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
)

// word is the text of a string node, "" for anything else.
func word(n *jsontree.Node) string { return text(n).Text }

func text(n *jsontree.Node) Text {
	if n == nil || n.Kind != jsontree.String {
		return Text{}
	}
	return Text{n.Text, n.Range}
}

func texts(n *jsontree.Node) []Text {
	var list []Text
	for _, item := range items(n) {
		list = append(list, text(item))
	}
	return list
}

func yes(n *jsontree.Node) bool { return n != nil && n.Kind == jsontree.Bool && n.Text == "true" }

// pick is the value that prints as the word, or the first of them.
func pick[T interface{ String() string }](word string, values ...T) T {
	for _, v := range values {
		if v.String() == word {
			return v
		}
	}
	return values[0]
}

// count is a whole number. The schema has checked its bounds; one beyond them
// is left at zero.
func count(n *jsontree.Node) Count {
	if n == nil || n.Kind != jsontree.Number {
		return Count{}
	}
	c := Count{At: n.Range}
	const most = 1 << 30
	// A float is exact here: whole numbers below 2^53 are, and larger ones are refused.
	if x, err := strconv.ParseFloat(n.Text, 64); err == nil && 0 <= x && x <= most && x == float64(int(x)) {
		c.N = int(x)
	}
	return c
}

// sign is which lengths are accepted; none is ever negative.
type sign int

const (
	positive  sign = iota
	orNothing      // zero too
)

// length is a length in the plan's unit. The key only names it in a message.
func (r *reader) length(key string, n *jsontree.Node, s sign) Length {
	if n == nil || n.Kind != jsontree.Number && n.Kind != jsontree.String {
		return Length{}
	}
	l, err := measure.ParseLength(n.Text, r.unit)
	switch {
	case err != nil:
		r.badLength(key, n, err)
	case l == 0 && s == positive:
		r.report(BadLength, n.Range, quote(key)+" is zero; it must be more", "write a length above zero")
	}
	return Length{l, n.Range}
}

func (r *reader) badLength(key string, n *jsontree.Node, err error) {
	var p *measure.ParseError
	if errors.As(err, &p) && p.Neighbours {
		r.report(OffTick, n.Range, quote(key)+": "+err.Error(), "write "+p.Below.Format(p.Unit)+" or "+p.Above.Format(p.Unit))
		return
	}
	r.report(BadLength, n.Range, quote(key)+": "+err.Error(), "write it like 2 1/2, 2.5 or 6.5 cm")
}

// lengthOr is a length, or a default with the place of what lacks it.
func (r *reader) lengthOr(holder *jsontree.Node, key string, s sign, otherwise measure.Length) Length {
	if n := holder.Get(key); n != nil {
		return r.length(key, n, s)
	}
	if holder == nil {
		return Length{Length: otherwise}
	}
	return Length{otherwise, holder.Open()}
}

// fabricLength is a length as fabric is sold. It must name its unit: a bare
// "1 1/4" means yards to a shop and inches to the plan.
func (r *reader) fabricLength(key string, n *jsontree.Node, s sign) Length {
	if n == nil || n.Kind != jsontree.String {
		return Length{}
	}
	if digits(n.Text) && !strings.ContainsFunc(n.Text, func(c rune) bool {
		return unicode.IsLetter(c) || strings.ContainsRune("\"'\u2032\u2033\u2019\u201d", c)
	}) {
		r.report(BadLength, n.Range, quote(key)+": "+quote(n.Text)+" does not say its unit", withShopUnit(strings.TrimSpace(n.Text), r.unit))
		return Length{At: n.Range}
	}
	return r.length(key, n, s)
}

func digits(s string) bool { return strings.ContainsFunc(s, unicode.IsNumber) }

// withShopUnit writes a bare length with the unit that a shop means by it:
// yards; or, in a metric plan, metres for a fraction or less than 2,
// centimetres from 10, and either for a small whole number. Common practice,
// no source.
func withShopUnit(bare string, u measure.Unit) string {
	if u != measure.Cm {
		return "write " + quote(bare+" yd")
	}
	metres, centimetres := quote(bare+" m"), quote(bare+" cm")
	l, err := measure.ParseLength(bare, u)
	switch {
	case err == nil && l >= 10*measure.Centimetre:
		return "write " + centimetres
	case err == nil && l >= 2*measure.Centimetre && l%measure.Centimetre == 0:
		return "write " + metres + " or " + centimetres
	}
	return "write " + metres
}

// pair is a width and a height.
func (r *reader) pair(key string, n *jsontree.Node) [2]Length {
	var p [2]Length
	for i, item := range items(n) {
		if i < 2 {
			p[i] = r.length(key, item, positive)
		}
	}
	return p
}

// sides is a pair, or one length for both sides of a square.
func (r *reader) sides(key string, n *jsontree.Node) [2]Length {
	if n != nil && n.Kind == jsontree.Array {
		return r.pair(key, n)
	}
	l := r.length(key, n, positive)
	return [2]Length{l, l}
}

// percent is a share such as "2.5%", from nothing to less than the whole.
func (r *reader) percent(key string, n *jsontree.Node) Percent {
	if n == nil || n.Kind != jsontree.String {
		return Percent{}
	}
	points, ok := basisPoints(n.Text)
	if !ok {
		r.report(BadPercent, n.Range, quote(key)+" is "+quote(n.Text)+"; wanted: a percentage below 100 with at most two decimals", percentHint(n.Text))
	}
	return Percent{points, n.Range}
}

func basisPoints(s string) (int64, bool) {
	number, ok := strings.CutSuffix(s, "%")
	number = strings.TrimSpace(number)
	whole, decimals, point := strings.Cut(number, ".")
	if !ok || whole == "" || len(whole) > 2 || len(decimals) > 2 || point && decimals == "" {
		return 0, false
	}
	n, err := strconv.ParseUint(whole+(decimals + "00")[:2], 10, 32)
	return int64(n), err == nil
}

// money is an amount in the project's currency.
func (r *reader) money(key string, n *jsontree.Node) Amount {
	if n == nil || n.Kind != jsontree.Number && n.Kind != jsontree.String {
		return Amount{}
	}
	value, err := measure.ParseMoney(n.Text, r.currency)
	if err != nil {
		r.report(BadMoney, n.Range, quote(key)+": "+err.Error(), moneyHint(n.Text))
		value = new(big.Rat)
	}
	return Amount{value, n.Range}
}

func quote(s string) string {
	const most = 40
	if utf8.RuneCountInString(s) > most {
		s = string([]rune(s)[:most]) + "..."
	}
	return strconv.Quote(s)
}

// orOneOf is a hint with the names that would do as well, where there are any.
func orOneOf(hint string, names []string) string {
	switch len(names) {
	case 0:
		return hint
	case 1:
		return hint + ", or name " + names[0]
	}
	return hint + ", or name one of " + list(names)
}

// list joins names for a hint.
func list(names []string) string {
	const most = 24
	if len(names) > most {
		names = append(names[:most:most], "...")
	}
	return strings.Join(names, ", ")
}

// percentHint is the share with its sign where that is all it lacks.
func percentHint(text string) string {
	if _, err := strconv.ParseUint(text, 10, 64); err == nil && len(text) < 3 {
		return fmt.Sprintf("write \"%s%%\"", text)
	}
	return "write it like \"3%\" or \"2.5%\""
}

// moneyHint is the amount without its currency where that is all it has too
// many.
func moneyHint(text string) string {
	bare := strings.TrimFunc(text, func(r rune) bool { return !unicode.IsDigit(r) })
	if _, err := measure.ParseMoney(bare, measure.Currency{}); err == nil {
		return "write " + bare
	}
	return "write it like 2.25"
}
