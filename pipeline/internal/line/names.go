package line

import (
	"fmt"
	"strings"
)

// cellKey makes a name of a plan, an article or a supplier usable inside a cell's
// name: letters, digits and underscores, and points between its parts.
func cellKey(name string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case 'a' <= r && r <= 'z', 'A' <= r && r <= 'Z', '0' <= r && r <= '9':
			return r
		case r == '/':
			return '.'
		}
		return '_'
	}, name)
}

// names are those of cells, each given once: programs do not tell small letters
// from large.
type names map[string]bool

// of is the name of what a cell holds, of some article, kit or supplier.
func (n names) of(what, whose string) string {
	name := what + "." + cellKey(whose)
	for i := 2; n[strings.ToLower(name)]; i++ {
		name = fmt.Sprintf("%s.%s.%d", what, cellKey(whose), i)
	}
	n[strings.ToLower(name)] = true
	return name
}
