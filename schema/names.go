package schema

import (
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/agnivade/levenshtein"

	"yardproof/schema/jsontree"
)

const nameWords = "1 to 32 lower-case letters, digits and hyphens, with a letter first"

// patternWords says what a pattern of the schemas asks for, and the nearest
// text to the given one that it accepts; "" when none is near.
func patternWords(schema *jsontree.Node, text string) (words, example string) {
	pattern := ""
	if p := schema.Get("pattern"); p != nil {
		pattern = p.Text
	}
	switch pattern {
	case `^[a-z][a-z0-9-]{0,31}$`:
		return nameWords, slug(text)
	case `^[a-z0-9]+(-[a-z0-9]+)*$`:
		return "lower-case letters and digits, with single hyphens between them", slug(text)
	case `^#[0-9A-Fa-f]{6}$`:
		return "# and six hexadecimal digits", ""
	case `^[A-Z]{3}$`:
		return "a currency's three capital letters (ISO 4217)", strings.ToUpper(text)
	case `^[a-z]+/[a-z0-9-]+$`:
		return "a rule's name, like \"fabric/tight\"", ""
	case `^[0-9]{4}-[0-9]{2}-[0-9]{2}$`:
		return "a day as year, month and day, like \"2027-03-31\"", ""
	case `^(/.*)?$`:
		return "a JSON Pointer, which begins with a slash", "/" + text
	case `\S`:
		return "some words", ""
	case `^[A-Za-z0-9.]$`:
		return "a single letter, digit or point", ""
	}
	return "text like " + pattern, ""
}

// slug is the name that a text was probably meant to be, "" when there is none.
func slug(text string) string {
	parts := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return !('a' <= r && r <= 'z' || '0' <= r && r <= '9')
	})
	name := strings.Join(parts, "-")
	if !regexp.MustCompile(`^[a-z][a-z0-9-]{0,31}$`).MatchString(name) {
		return ""
	}
	return name
}

func writeHint(example string) string {
	if example == "" {
		return ""
	}
	return "write " + quote(example)
}

// Nearest is the name that a word was probably meant to be, "" when none is
// close: a third of its letters may be wrong, or half of them after a good
// beginning, and two that are exchanged count as one. A word that shortens a
// single one of the names is close to it.
func Nearest(word string, names []string) string {
	letters := utf8.RuneCountInString(word)
	if letters > 64 {
		return ""
	}
	word = strings.ToLower(word)
	best, least := "", letters+1
	for _, name := range names {
		most := max(1, letters/3)
		if lower := strings.ToLower(name); letters > 3 && strings.HasPrefix(lower, word[:min(3, len(word))]) {
			most = letters / 2
		}
		d := levenshtein.ComputeDistance(word, strings.ToLower(name))
		if exchanged(word, strings.ToLower(name)) {
			d = 1
		}
		if d <= most && d < least {
			best, least = name, d
		}
	}
	if best != "" {
		return best
	}
	return lengthened(word, names)
}

// exchanged reports whether two words differ in two neighbouring letters only,
// which have changed places.
func exchanged(a, b string) bool {
	x, y := []rune(a), []rune(b)
	if len(x) != len(y) {
		return false
	}
	for i := range x {
		if x[i] != y[i] {
			return i+1 < len(x) && x[i] == y[i+1] && x[i+1] == y[i] && slices.Equal(x[i+2:], y[i+2:])
		}
	}
	return false
}

// lengthened is the one name that a word, in small letters, shortens: it begins
// and ends like the name, or only begins like it, and leaves letters out.
func lengthened(word string, names []string) string {
	if len(word) < 3 {
		return ""
	}
	found := ""
	for _, name := range names {
		lower := strings.ToLower(name)
		if !strings.HasPrefix(lower, word) && !(lower != "" && lower[0] == word[0] && lower[len(lower)-1] == word[len(word)-1] && leavesOut(word, lower)) {
			continue
		}
		if found != "" {
			return ""
		}
		found = name
	}
	return found
}

// partOf is the one name that begins or ends with a word as a whole: "width" is
// the tail of "usable_width".
func partOf(word string, names []string) string {
	found := ""
	for _, name := range names {
		if strings.HasPrefix(name, word+"_") || strings.HasSuffix(name, "_"+word) {
			if found != "" {
				return ""
			}
			found = name
		}
	}
	return found
}

// leavesOut reports whether a word is a name with letters left out.
func leavesOut(word, name string) bool {
	for _, r := range name {
		if first, size := utf8.DecodeRuneInString(word); word != "" && r == first {
			word = word[size:]
		}
	}
	return word == ""
}

// plainNumber reports whether a text could stand without quotation marks.
func plainNumber(text string) bool {
	return regexp.MustCompile(`^(0|[1-9][0-9]*)(\.[0-9]+)?$`).MatchString(text)
}
