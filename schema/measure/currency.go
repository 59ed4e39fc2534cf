package measure

import "strings"

// Currency is an ISO 4217 currency.
type Currency struct {
	code   string
	digits int
}

// Active codes of ISO 4217 (list one of 2026-01-01) by their number of minor digits, without the codes
// that have none (metals, funds without minor unit, testing). CLDR's table of
// digits is not used because it differs from the standard where coins have
// fallen out of use (it gives 0 for RSD and IQD).
const (
	codes0 = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF"
	codes2 = "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN BZD " +
		"CAD CDF CHE CHF CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL " +
		"GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR " +
		"LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD " +
		"PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC " +
		"SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XAD XCD XCG YER ZAR ZMW ZWG"
	codes3 = "BHD IQD JOD KWD LYD OMR TND"
	codes4 = "CLF UYW"
)

// ParseCurrency reads a three-letter ISO 4217 code in capitals.
func ParseCurrency(code string) (Currency, bool) {
	if len(code) != 3 || strings.ContainsRune(code, ' ') {
		return Currency{}, false
	}
	for digits, codes := range []string{codes0, "", codes2, codes3, codes4} {
		for known := range strings.FieldsSeq(codes) {
			if known == code {
				return Currency{code: known, digits: digits}, true
			}
		}
	}
	return Currency{}, false
}

// Code returns the ISO 4217 code, "" for the zero value.
func (c Currency) Code() string { return c.code }

// Digits returns how many decimal digits the minor unit has: USD 2, JPY 0.
func (c Currency) Digits() int { return c.digits }

// String returns the ISO 4217 code.
func (c Currency) String() string { return c.code }
