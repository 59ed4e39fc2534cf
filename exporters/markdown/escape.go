package markdown

import (
	"strings"
	"unicode/utf8"

	"yardproof/exporters/internal/words"
)

// inline is text within a paragraph or a cell. Marks of Markdown are escaped
// by a backslash, those of HTML by entities. What services turn into mentions,
// references, formulas, pictures (":name:") and links after Markdown is done
// with is parted by an element.
func inline(text string) string {
	return strings.NewReplacer(
		`\`, `\\`, "`", "\\`", `*`, `\*`, `_`, `\_`, `[`, `\[`, `]`, `\]`, `~`, `\~`, `|`, `\|`, `!`, `\!`,
		`<`, `&lt;`, `>`, `&gt;`, `&`, `&amp;`,
		`@`, `<span>@</span>`, `#`, `<span>#</span>`, `$`, `<span>$</span>`,
		`www.`, `www<span>.</span>`, `WWW.`, `WWW<span>.</span>`, `gh-`, `gh<span>-</span>`, `GH-`, `GH<span>-</span>`,
		`: `, `: `, `:`, `<span>:</span>`,
	).Replace(words.OneLine(text))
}

// code is text shown as it is, in a code span. Its fence is longer than any
// run of backticks within. In a table use inline.
func code(text string) string {
	text = words.OneLine(text)
	if text == "" {
		return ""
	}
	fence := strings.Repeat("`", longestRun(text, '`')+1)
	if strings.HasPrefix(text, "`") || strings.HasSuffix(text, "`") || strings.TrimSpace(text) == "" ||
		strings.HasPrefix(text, " ") && strings.HasSuffix(text, " ") {
		text = " " + text + " "
	}
	return fence + text + fence
}

func longestRun(text string, of byte) int {
	longest, run := 0, 0
	for i := range len(text) {
		run++
		if text[i] != of {
			run = 0
		}
		longest = max(longest, run)
	}
	return longest
}

// literal is text within an HTML element that is shown as code.
func literal(text string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;").Replace(text)
}

// longest is how many characters of a text of the plan are shown.
const longest = 1000

// shorten cuts a long text and says by how much.
func shorten(text string) string {
	n := utf8.RuneCountInString(text)
	if n <= longest {
		return text
	}
	at := 0
	for i := range text {
		if at == longest {
			return text[:i] + " ... (" + words.Plural(n-longest, "character") + " more)"
		}
		at++
	}
	return text
}
