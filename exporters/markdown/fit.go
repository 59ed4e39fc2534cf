package markdown

import (
	"cmp"
	"slices"
	"strings"

	"yardproof/exporters/internal/words"
	"yardproof/pipeline/diag"
)

// entry is a finding as it is written, below a heading that it shares.
type entry struct {
	finding diag.Finding
	heading string
	text    string
	shown   bool
}

// footRoom is kept for the line that tells what was left out.
const footRoom = 120

// fit puts entries below their headings, in the order in which the headings
// come first. When there is not room for all, the gravest are taken as long as
// they fit.
func fit(entries []entry, room int) string {
	grave := make([]*entry, len(entries))
	for i := range entries {
		grave[i] = &entries[i]
	}
	slices.SortStableFunc(grave, func(a, b *entry) int { return cmp.Compare(b.finding.Level, a.finding.Level) })
	room -= footRoom
	headed := map[string]bool{}
	var left []diag.Finding
	for _, e := range grave {
		need := len(e.text)
		if !headed[e.heading] {
			need += len(e.heading)
		}
		if len(left) > 0 || need > room {
			left = append(left, e.finding)
			continue
		}
		room -= need
		e.shown, headed[e.heading] = true, true
	}
	return join(entries) + foot(left)
}

// join writes the entries that are shown, each heading once.
func join(entries []entry) string {
	var headings []string
	below := map[string]*strings.Builder{}
	for _, e := range entries {
		if !e.shown {
			continue
		}
		if below[e.heading] == nil {
			below[e.heading] = &strings.Builder{}
			headings = append(headings, e.heading)
		}
		below[e.heading].WriteString(e.text)
	}
	var s strings.Builder
	for _, h := range headings {
		s.WriteString(h + below[h].String())
	}
	return s.String()
}

func foot(left []diag.Finding) string {
	if len(left) == 0 {
		return ""
	}
	return "\nAnd " + words.Count(left).String() + " more, which a comment has no room for.\n"
}
