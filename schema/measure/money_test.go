package measure

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"golang.org/x/text/currency"
)

func known(t *testing.T, code string) Currency {
	t.Helper()
	c, ok := ParseCurrency(code)
	if !ok {
		t.Fatalf("%s is not known", code)
	}
	return c
}

// Source: ISO 4217, list one of 2026-01-01 (minor units of the codes shown).
func TestCurrencyDigits(t *testing.T) {
	tests := map[string]int{
		"USD": 2, "EUR": 2, "GBP": 2, "AUD": 2, "CAD": 2, "NZD": 2, "CHF": 2, "SEK": 2, "RSD": 2, "XAD": 2, "ZWG": 2,
		"JPY": 0, "KRW": 0, "ISK": 0, "VND": 0, "CLP": 0, "UGX": 0, "XOF": 0,
		"KWD": 3, "BHD": 3, "IQD": 3, "TND": 3, "UYW": 4, "CLF": 4,
	}
	for code, digits := range tests {
		if c := known(t, code); c.Digits() != digits || c.Code() != code || c.String() != code {
			t.Errorf("%s: %d digits, want %d", c, c.Digits(), digits)
		}
	}
	for _, code := range []string{"", "US", "usd", "USDX", "XXX", "XAU", "D A", "AA ", "   ", "BGN", "DEM"} {
		if _, ok := ParseCurrency(code); ok {
			t.Errorf("ParseCurrency(%q) succeeded", code)
		}
	}
}

// Against golang.org/x/text, an independent table (CLDR, some years older).
func TestCurrenciesAgainstCLDR(t *testing.T) {
	newer := map[string]bool{
		"SLE": true, "VED": true, "VES": true, "XAD": true, "XCG": true, "ZWG": true, "UYW": true,
		"MRU": true, "STN": true,
	}
	// CLDR gives 0 digits where coins are out of use; ISO 4217 does not.
	coinless := "AFN ALL AMD COP CRC CZK GYD HUF IDR IQD IRR KPW LAK LBP LYD MGA MMK MNT MUR PKR RSD SEK SLL SOS SYP TWD TZS UZS YER"
	all := strings.Fields(strings.Join([]string{codes0, codes2, codes3, codes4}, " "))
	for _, code := range all {
		unit, err := currency.ParseISO(code)
		if err != nil {
			if !newer[code] {
				t.Errorf("%s is unknown to CLDR", code)
			}
			continue
		}
		scale, _ := currency.Standard.Rounding(unit)
		if c := known(t, code); c.Digits() != scale && (scale != 0 || !strings.Contains(coinless, code)) {
			t.Errorf("%s: %d digits, CLDR has %d", code, c.Digits(), scale)
		}
	}
	// List one has 178 codes, 13 of them without a minor unit: XAG XAU XBA XBB
	// XBC XBD XDR XPD XPT XSU XTS XUA XXX.
	if len(all) != 178-13 {
		t.Errorf("%d codes", len(all))
	}
}

func TestParseMoney(t *testing.T) {
	usd := known(t, "USD")
	for text, want := range map[string]*big.Rat{
		"6": big.NewRat(6, 1), "6.00": big.NewRat(6, 1), "0.085": big.NewRat(85, 1000), "0": new(big.Rat),
		"1000000000000": big.NewRat(MaxPrice, 1),
	} {
		if got, err := ParseMoney(text, usd); err != nil || got.Cmp(want) != 0 {
			t.Errorf("ParseMoney(%q) = %v, %v", text, got, err)
		}
	}
	for text, reason := range map[string]string{
		"":                      "empty",
		"-1":                    "without a sign",
		"+1":                    "without a sign",
		"−1":                    "without a sign",
		"1,000":                 "thousands marks",
		"1 000":                 "thousands marks",
		"1'000":                 "thousands marks",
		"6,50":                  "thousands marks",
		"$6":                    "prices are in USD",
		"6 USD":                 "thousands marks or spaces",
		"6.":                    "at most one point",
		".5":                    "at most one point",
		"1.2.3":                 "at most one point",
		"1e9":                   "at most one point",
		"1/2":                   "at most one point",
		"1000000000000.01":      "more than 1000000000000",
		strings.Repeat("9", 99): "more than 32 characters",
	} {
		if _, err := ParseMoney(text, usd); err == nil || !strings.Contains(err.Error(), reason) {
			t.Errorf("ParseMoney(%q): %v, want %q", text, err, reason)
		}
	}
}

func TestRoundMoney(t *testing.T) {
	tests := []struct {
		num, den     int64
		code, format string
	}{
		{6, 1, "USD", "USD 6.00"},
		{85, 1000, "USD", "USD 0.09"},
		{-85, 1000, "USD", "USD -0.09"},
		{5, 1000, "USD", "USD 0.01"},
		{-5, 1000, "USD", "USD -0.01"},
		{4999, 1000000, "USD", "USD 0.00"},
		{-4999, 1000000, "USD", "USD 0.00"},
		{-5, 100, "EUR", "EUR -0.05"},
		{5, 2, "JPY", "JPY 3"},
		{-5, 2, "JPY", "JPY -3"},
		{12345, 10000, "KWD", "KWD 1.235"},
		{1, 3, "CLF", "CLF 0.3333"},
		{123456789, 100, "USD", "USD 1234567.89"},
	}
	for _, test := range tests {
		m := RoundMoney(big.NewRat(test.num, test.den), known(t, test.code))
		if got := m.Format(); got != test.format {
			t.Errorf("%d/%d: %s, want %s", test.num, test.den, got, test.format)
		}
		if back := RoundMoney(big.NewRat(m.Minor, tenTo(m.Currency.digits)), m.Currency); back != m {
			t.Errorf("%s rounds to %s", m.Format(), back.Format())
		}
	}
}

func TestRoundMoneyBeyondRange(t *testing.T) {
	huge := new(big.Rat).SetInt64(math.MaxInt64)
	if m := RoundMoney(huge, known(t, "USD")); m.Minor != math.MaxInt64 {
		t.Errorf("%s", m.Format())
	}
	if m := RoundMoney(huge.Neg(huge), known(t, "USD")); m.Minor != math.MinInt64 || m.Decimal() != "-92233720368547758.08" {
		t.Errorf("%s", m.Format())
	}
}
