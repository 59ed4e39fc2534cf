package jsontree

import (
	"fmt"
	"strconv"
	"strings"

	"yardproof/schema/source"
)

// number is the literal of a well formed number, after a look at whether exact
// arithmetic could stand it.
func (p *parser) number(r source.Range) string {
	literal := p.text[r.Start:r.End]
	if len(literal) > p.lim.MaxNumber {
		p.fail(codeNumber, r,
			fmt.Sprintf("the number %s has %s characters; at most %s are read", clip(literal), thousands(len(literal)), thousands(p.lim.MaxNumber)),
			"write it with fewer digits")
		return literal
	}
	if exponent, ok := exponentOf(literal); ok && !within(exponent, p.lim.MaxExponent) {
		p.fail(codeNumber, r,
			fmt.Sprintf("the number %s has an exponent beyond %s", literal, thousands(p.lim.MaxExponent)),
			fmt.Sprintf("write an exponent of at most %s", thousands(p.lim.MaxExponent)))
	}
	return literal
}

// exponentOf is the digits of a literal's exponent, without its sign.
func exponentOf(literal string) (string, bool) {
	at := strings.IndexAny(literal, "eE")
	if at < 0 {
		return "", false
	}
	return strings.TrimLeft(literal[at+1:], "+-"), true
}

func within(digits string, most int) bool {
	n, err := strconv.Atoi(digits)
	return err == nil && n <= most
}
