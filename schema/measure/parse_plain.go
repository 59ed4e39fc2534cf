package measure

import "strings"

// plainLength reads the spellings that nearly every length of a plan has -
// "3", "2.5", "1/2", "2 1/2", bare or before in or cm - without big numbers. It
// leaves whatever is not plainly right, errors included, to ParseLength; a fuzz
// test holds the two together.
func plainLength(text string, unit Unit) (Length, bool) {
	size := unit.Length()
	if n, ok := strings.CutSuffix(text, " in"); ok {
		text, size = n, Inch
	} else if n, ok := strings.CutSuffix(text, " cm"); ok {
		text, size = n, Centimetre
	}
	whole, rest, ok := leadingDigits(text)
	if !ok {
		return 0, false
	}
	switch {
	case rest == "":
		return Length(whole) * size, true
	case rest[0] == '.':
		return plainDecimal(whole, rest[1:], size)
	case rest[0] == '/':
		return plainFraction(0, whole, rest[1:], size)
	case rest[0] == ' ':
		numerator, rest, ok := leadingDigits(rest[1:])
		if !ok || rest == "" || rest[0] != '/' {
			return 0, false
		}
		return plainFraction(whole, numerator, rest[1:], size)
	}
	return 0, false
}

// maxPlainDigits keeps every product of two numbers and a unit far inside an
// int64.
const maxPlainDigits = 4

// leadingDigits reads the digits that text begins with, up to four.
func leadingDigits(text string) (n int64, rest string, ok bool) {
	i := 0
	for i < len(text) && '0' <= text[i] && text[i] <= '9' {
		n = 10*n + int64(text[i]-'0')
		i++
	}
	return n, text[i:], 0 < i && i <= maxPlainDigits
}

func plainDecimal(whole int64, decimals string, size Length) (Length, bool) {
	n, rest, ok := leadingDigits(decimals)
	if !ok || rest != "" {
		return 0, false
	}
	scale := int64(1)
	for range decimals {
		scale *= 10
	}
	return exactPart(whole*scale+n, scale, size)
}

func plainFraction(whole, numerator int64, text string, size Length) (Length, bool) {
	denominator, rest, ok := leadingDigits(text)
	if !ok || rest != "" || numerator >= denominator {
		return 0, false
	}
	return exactPart(whole*denominator+numerator, denominator, size)
}

// exactPart is n/d of a unit where that is a whole number of ticks.
func exactPart(n, d int64, size Length) (Length, bool) {
	ticks := n * int64(size)
	return Length(ticks / d), ticks%d == 0
}
