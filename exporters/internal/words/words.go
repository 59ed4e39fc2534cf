package words

import (
	"slices"
	"strings"
	"unicode"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

// OneLine makes a line of a text that may come from a plan: line breaks and
// tabs become blanks; other control characters, marks that turn the direction
// of writing, and bytes that are not UTF-8 become U+FFFD. What an older form of
// workflow commands begins with, anywhere on a line, is parted.
func OneLine(text string) string {
	return strings.ReplaceAll(strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\r' || r == '\t' || r == '\u2028' || r == '\u2029':
			return ' '
		case unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || unicode.Is(unicode.Noncharacter_Code_Point, r):
			return unicode.ReplacementChar
		}
		return r
	}, text), "##[", "# #[")
}

// Head is the line that a finding has in a compiler's output. Its level comes
// before the message and its rule after it.
func Head(f diag.Finding) string {
	head := f.Level.String() + ": " + OneLine(f.Message) + " [" + OneLine(f.Rule) + "]"
	if at := Where(f.Place); at != "" {
		head = at + ": " + head
	}
	return head
}

// Rest is what a finding has to say below its head, a line each: the hint,
// the sizes it holds for, other places, and what follows from it.
func Rest(f diag.Finding) []string {
	var lines []string
	if f.Hint != "" {
		lines = append(lines, "hint: "+OneLine(f.Hint))
	}
	if len(f.Sizes) > 0 {
		lines = append(lines, "holds for: "+Sizes(f))
	}
	for _, r := range f.Related {
		lines = append(lines, "see: "+Related(r))
	}
	for _, c := range diag.Flatten(f.Follows) {
		lines = append(lines, "may follow: "+Consequence(f, c))
	}
	return lines
}

// Sizes are the names of the sizes that a finding holds for.
func Sizes(f diag.Finding) string { return OneLine(strings.Join(f.Sizes, ", ")) }

// Related is a second place and what is there.
func Related(r diag.Related) string {
	if at := Where(r.Place); at != "" {
		return at + ": " + OneLine(r.Message)
	}
	return OneLine(r.Message)
}

// Consequence is a finding that goes away with its cause. Sizes are named
// where they are others than the cause's.
func Consequence(cause, f diag.Finding) string {
	text := Head(f)
	if len(f.Sizes) > 0 && !slices.Equal(f.Sizes, cause.Sizes) {
		text += " (" + Sizes(f) + ")"
	}
	return text
}

// Excused is a finding that the project accepts: its head, and the reason.
func Excused(e report.Excused) (head, reason string) {
	reason = OneLine(e.Reason)
	if e.Until != "" {
		reason += " (until " + OneLine(e.Until) + ")"
	}
	return Head(e.Finding), reason
}
