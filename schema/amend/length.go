package amend

import (
	"strings"

	"yardproof/schema/measure"
)

// LengthLike is a length as a JSON value, written as old is, the text of another in
// its place: a number where that is one, with the unit where that names the plan's. It
// is empty where no plan may hold it.
func LengthLike(old string, l measure.Length, u measure.Unit) string {
	bare := l.Bare(u)
	if !reads(bare, l, u) {
		return ""
	}
	if old != "" && !strings.HasPrefix(old, `"`) {
		if number := l.Surd().Decimal(u, decimals); reads(number, l, u) {
			return strings.TrimRight(strings.TrimRight(number, "0"), ".")
		}
	}
	if strings.HasSuffix(old, u.String()+`"`) {
		bare = l.Format(u)
	}
	return Quote(bare)
}

// decimals are how many a number has at most.
const decimals = 4

// reads reports whether a text is a length, exactly.
func reads(text string, l measure.Length, u measure.Unit) bool {
	back, err := measure.ParseLength(text, u)
	return err == nil && back == l
}
