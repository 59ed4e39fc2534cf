package markdown

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"yardproof/exporters/internal/words"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

// Limit is how many bytes a comment has at most.
const Limit = 65_536

// Write writes the whole run, or as much of it as Limit allows. An error is
// one of w.
func Write(w io.Writer, run *report.Run) error {
	_, err := io.WriteString(w, comment(run, Limit))
	return err
}

// comment is the text, of at most limit bytes.
func comment(run *report.Run, limit int) string {
	findings := run.All()
	head := "**yardproof** &middot; " + inline(words.Summary(run)) + "\n"
	head += table(run, findings, limit/tableShare)
	named := newHeadings(run)
	entries := make([]entry, len(findings))
	for i, f := range findings {
		entries[i] = entry{finding: f, heading: named.of(f), text: item(f)}
	}
	text := head + fit(entries, limit-len(head))
	text += accepted(run, limit-len(text))
	return text + numbers(run.Text, limit-len(text))
}

// numbers folds away what every number of a text was taken for, as far as there is
// room: the first line counts them anyway.
func numbers(r *report.Reading, room int) string {
	if r == nil || len(r.Numbers) == 0 {
		return ""
	}
	head := "\n<details><summary>what the numbers of the text state</summary>\n\n| place | number | verdict | figure | size | value | |\n| --- | --- | --- | --- | --- | --- | --- |\n"
	foot := "\n</details>\n"
	var s strings.Builder
	for i, n := range r.Numbers {
		states, from := n.States, n.From()
		if n.States == "" {
			states, from = n.Sense, ""
		}
		line := fmt.Sprintf("| %d:%d | %s | %s | %s | %s | %s | %s |\n", n.Place.Start.Line, n.Place.Start.Column, inline(shorten(n.Text)), n.Verdict, inline(shorten(states)), inline(n.Size), inline(n.Is), from)
		if len(head)+s.Len()+len(line)+len(foot)+60 > room {
			s.WriteString("\n" + words.Plural(len(r.Numbers)-i, "more number") + ".\n")
			break
		}
		s.WriteString(line)
	}
	if len(head)+s.Len()+len(foot) > room {
		return ""
	}
	return head + s.String() + foot
}

// accepted folds away what the projects accept, and why, as far as there is
// room: the first line counts it anyway.
func accepted(run *report.Run, room int) string {
	all := run.Exceptions()
	lines := ""
	for _, e := range all {
		head, reason := words.Excused(e)
		lines += literal(shorten(head)+"\n  reason: "+shorten(reason)) + "\n"
	}
	text := "\n<details><summary>" + words.Plural(len(all), "accepted exception") + "</summary><pre>\n" + lines + "</pre></details>\n"
	if len(all) == 0 || len(text) > room {
		return ""
	}
	return text
}

// headings are what findings are put below: their plan, or the line.
type headings struct{ byFile, byID map[string]string }

func newHeadings(run *report.Run) headings {
	h := headings{map[string]string{}, map[string]string{}}
	for _, p := range run.Plans {
		h.byFile[p.File] = planName(p)
		if p.ID != "" && h.byID[p.ID] == "" {
			h.byID[p.ID] = planName(p)
		}
	}
	return h
}

func (h headings) of(f diag.Finding) string {
	name := h.byFile[f.Place.File]
	if name == "" {
		name = h.byID[f.Plan]
	}
	if name == "" {
		name = lineName
	}
	return "\n### " + name + "\n"
}

const lineName = "The line"

// planName is a plan's title and id, or the file that it was to be read from.
func planName(p report.Outcome) string {
	switch {
	case p.ID == "":
		return inline(shorten(p.File))
	case p.Title == "" || p.Title == p.ID:
		return inline(shorten(p.ID))
	}
	return inline(shorten(p.Title)) + " (" + inline(shorten(p.ID)) + ")"
}

// item is a finding: a paragraph, and what is folded away below it.
func item(f diag.Finding) string {
	var s strings.Builder
	s.WriteString("\n**" + f.Level.String() + "** ")
	if at := words.Where(f.Place); at != "" {
		s.WriteString(code(shorten(at)) + " ")
	}
	s.WriteString(inline(shorten(f.Message)) + " " + code("["+f.Rule+"]"))
	if len(f.Sizes) > 0 {
		s.WriteString(" in " + inline(shorten(words.Sizes(f))))
	}
	if f.Hint != "" {
		s.WriteString("\\\nHint: " + inline(shorten(f.Hint))) // a backslash breaks the line
	}
	s.WriteString("\n" + details(f))
	return s.String()
}

// details folds away the excerpt, other places and consequences. It is one
// block of HTML: a blank line would end it, so there is none.
func details(f diag.Finding) string {
	lines := excerpt(f.Place)
	for _, r := range f.Related {
		lines = append(lines, "see: "+shorten(words.Related(r)))
		lines = append(lines, excerpt(r.Place)...)
	}
	follows := diag.Flatten(f.Follows)
	for _, c := range follows {
		lines = append(lines, "may follow: "+shorten(words.Consequence(f, c)))
	}
	if len(lines) == 0 {
		return ""
	}
	summary := "the lines of the plan"
	if n := len(follows); n == 1 {
		summary = "1 finding that may follow, and where"
	} else if n > 1 {
		summary = strconv.Itoa(n) + " findings that may follow, and where"
	}
	return "\n<details><summary>" + summary + "</summary><pre>\n" + literal(strings.Join(lines, "\n")) + "\n</pre></details>\n"
}

// excerpt is the line of the plan that a place is in, with its number, and a
// line that underlines the place.
func excerpt(at diag.Place) []string {
	e := at.Excerpt
	if e.Line == 0 {
		return nil
	}
	number := strconv.Itoa(e.Line)
	before, after, indent := "", "", ""
	if e.CutLeft {
		before, indent = "...", "   "
	}
	if e.CutRight {
		after = "..."
	}
	return []string{
		number + " | " + before + e.Text + after,
		strings.Repeat(" ", len(number)) + " | " + indent + e.Underline(),
	}
}
