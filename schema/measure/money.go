package measure

import (
	"fmt"
	"math/big"
	"strings"
)

// Money is an amount in minor units (cents) of a currency.
type Money struct {
	Minor    int64
	Currency Currency
}

// maxPriceText and MaxPrice bound what ParseMoney reads, so that a wrong file
// is refused early and a plan's totals stay far from overflow.
const maxPriceText = 32

// MaxPrice is the greatest price ParseMoney accepts, in major units.
const MaxPrice = 1_000_000_000_000

// ParseMoney reads a price in major units of c: "6", "6.00", "0.085". A price
// may be finer than the minor unit; only an amount is rounded (RoundMoney).
// Signs, letters, thousands marks, exponents and decimal commas are errors that
// give the reason.
func ParseMoney(text string, c Currency) (*big.Rat, error) {
	if reason := priceFault(text, c); reason != "" {
		return nil, fmt.Errorf("%s is not a price: %s", quote(text), reason)
	}
	price, ok := new(big.Rat).SetString(text)
	if !ok || price.Cmp(big.NewRat(MaxPrice, 1)) > 0 {
		return nil, fmt.Errorf("%s is not a price: it is more than %d", quote(text), int64(MaxPrice))
	}
	return price, nil
}

// priceFault returns why text is no plain decimal number, or "".
func priceFault(text string, c Currency) string {
	whole, fraction, point := strings.Cut(text, ".")
	switch {
	case text == "":
		return "it is empty"
	case len(text) > maxPriceText:
		return fmt.Sprintf("it has more than %d characters", maxPriceText)
	case digits(whole) && (!point || digits(fraction)):
		return ""
	case text[0] == '-' || text[0] == '+' || strings.HasPrefix(text, "\u2212"):
		return "write it without a sign"
	case strings.ContainsAny(text, ",'\u2019 \u00a0\u2009\u202f"):
		return "write it without thousands marks or spaces and with a point before the decimals, like 1250.50"
	}
	return fmt.Sprintf("write digits and at most one point, like 6.00, without a currency sign (prices are in %s)", c)
}

// digits reports whether text is one or more ASCII digits.
func digits(text string) bool {
	return text != "" && strings.Trim(text, "0123456789") == ""
}

// RoundMoney rounds an amount in major units of c to its minor unit, half away
// from zero. Amounts beyond an int64 stop at its ends.
func RoundMoney(amount *big.Rat, c Currency) Money {
	minor := new(big.Rat).Mul(amount, big.NewRat(tenTo(c.digits), 1))
	half := big.NewRat(1, 2)
	rounded := new(big.Rat).Add(new(big.Rat).Abs(minor), half)
	whole := floorQuo(rounded.Num(), rounded.Denom())
	if minor.Sign() < 0 {
		whole.Neg(whole)
	}
	return Money{Minor: saturate(whole), Currency: c}
}

// Format prints the code of the currency and the amount: "USD 6.00".
func (m Money) Format() string {
	return m.Currency.code + " " + m.Decimal()
}

// Decimal prints the amount in major units with every minor digit: "6.00",
// "-0.05", and "6" for a currency without minor units.
func (m Money) Decimal() string {
	text := pointed(new(big.Int).SetUint64(magnitude(m.Minor)), m.Currency.digits)
	if m.Minor < 0 {
		return "-" + text
	}
	return text
}
