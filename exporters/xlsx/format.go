package xlsx

import (
	"math/big"
	"strings"

	"yardproof/exporters/internal/figure"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// general is the number format that shows a number as it is, whatever is typed.
const general = "General"

// numberFormat is the format that shows a number cell truly. columnUnit is what
// the column's title already says.
func (b *book) numberFormat(c report.Cell, columnUnit string) string {
	switch c.Kind {
	case report.Count:
		return "0"
	case report.Length:
		return lengthFormat(c, columnUnit)
	case report.Fabric:
		return fabricFormat(c) + " " + literal(figure.FabricUnit(c.Unit))
	case report.Money:
		return b.moneyFormat(c)
	case report.Share:
		return "0.0%"
	}
	return plainFormat(c)
}

// fabricFormat shows an eighth of a yard and a centimetre of what a formula
// comes to, whatever that is after a change of the inputs.
func fabricFormat(c report.Cell) string {
	if c.Expr != nil {
		return "#,##0.00#"
	}
	return measured(c)
}

func lengthFormat(c report.Cell, columnUnit string) string {
	format := measured(c)
	if unit := c.Unit.String(); unit != columnUnit {
		format += " " + literal(unit)
	}
	return format
}

// measured shows a length or fabric as a fraction if it is one that people
// read, as a decimal if that holds it, else rounded and marked. An input may
// become any number.
func measured(c report.Cell) string {
	if c.Input {
		return general
	}
	num, den, ok := figure.Measured(c).Rational()
	if !ok {
		return about(c)
	}
	value := new(big.Rat).SetFrac(num, den)
	if value.IsInt() {
		return "0"
	}
	if c.Unit == measure.In && den.IsInt64() && isRead(c.Kind, den.Int64()) {
		return fractionFormat(value)
	}
	if places, exact := value.FloatPrec(); exact && places <= 4 {
		return decimals(places)
	}
	return about(c)
}

// isRead reports whether people read fractions with this denominator: rulers
// have halves to 64ths of an inch, shops sell halves to 16ths and thirds to
// 12ths of a yard.
func isRead(kind report.CellKind, den int64) bool {
	if kind == report.Fabric {
		return 16%den == 0 || 12%den == 0
	}
	return 64%den == 0
}

// fractionFormat shows a mixed number with the denominator that it has in
// lowest terms, so that the program has nothing to round; its numerator has
// just the places it needs.
func fractionFormat(value *big.Rat) string {
	left := new(big.Int).Rem(value.Num(), value.Denom())
	return "# " + strings.Repeat("?", len(left.Abs(left).String())) + "/" + value.Denom().String()
}

// about shows a rounded length or fabric.
func about(c report.Cell) string { return literal("about ") + decimals(aboutPlaces(c)) }

func aboutPlaces(c report.Cell) int {
	if c.Kind == report.Length && c.Unit == measure.In {
		return 4
	}
	return 3
}

// shown is the number of a length or fabric cell. One that is shown rounded is the
// rounded one, unless formulas go on from it: a spreadsheet rounds to the nearest,
// and what is to be cut must not be shown as less.
func shown(c report.Cell) measure.Surd {
	if c.Input || c.Name != "" || measured(c) != about(c) {
		return figure.Measured(c)
	}
	return figure.Shown(c, aboutPlaces(c))
}

// upward rounds a formula of a length to buy up to the places that are shown of it,
// whatever it comes to after a change of the inputs. One that formulas go on from
// stays exact.
func upward(c report.Cell) report.Cell {
	if c.Kind == report.Fabric && c.Toward == measure.Up && c.Name == "" && c.Expr != nil && c.Expr.Value != nil {
		up := &report.Expr{Op: report.RoundUp, Args: []*report.Expr{c.Expr}, Digits: aboutPlaces(c)}
		up.Value, _ = new(big.Rat).SetString(measure.FromRat(c.Expr.Value).NumberToward(up.Digits, measure.Up))
		c.Expr = up
	}
	return c
}

func decimals(places int) string {
	if places == 0 {
		return "0"
	}
	return "0." + strings.Repeat("0", places)
}

// moneyFormat shows the minor unit; a price, which may be finer, as many digits
// as it has.
func (b *book) moneyFormat(c report.Cell) string {
	digits := b.heading.currency.Digits()
	format := "#,##" + decimals(digits)
	code := b.heading.currency.Code()
	if code != "" {
		code += " "
	}
	switch needed, exact := places(c); {
	case c.Expr != nil || exact && needed <= digits && !c.Input:
	case !exact:
		format, code = "#,##"+decimals(digits+2), "about "+code
	case digits == 0 && needed > 0:
		format += ".0##"
	case digits > 0:
		format += "###"
	}
	if code != "" {
		format = literal(code) + format
	}
	return format
}

// places is how many decimals hold a fixed number, if any number of them does.
func places(c report.Cell) (needed int, exact bool) {
	if c.Number == nil {
		return 0, true
	}
	return c.Number.FloatPrec()
}

// plainFormat shows a number as it is, one that a formula rounds with the
// decimals it is rounded to.
func plainFormat(c report.Cell) string {
	if c.Expr != nil {
		if places := roundedTo(c.Expr); places >= 0 {
			return decimals(places)
		}
		return general
	}
	if _, exact := places(c); !exact && !c.Input {
		return literal("about ") + decimals(4)
	}
	return general
}

// roundedTo is how many decimals a formula is rounded to, whichever way an If
// goes; -1 where it is not.
func roundedTo(e *report.Expr) int {
	switch e.Op {
	case report.Round, report.RoundUp, report.RoundDown:
		return e.Digits
	case report.If:
		if a, b := roundedTo(e.Args[1]), roundedTo(e.Args[2]); a >= 0 && b >= 0 {
			return max(a, b)
		}
	case report.Const:
		if e.Value == nil || e.Value.IsInt() {
			return 0 // words are shown as they are
		}
	}
	return -1
}
