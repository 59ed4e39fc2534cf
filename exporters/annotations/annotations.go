package annotations

import (
	"bufio"
	"io"
	"strconv"
	"strings"

	"yardproof/exporters/internal/words"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

// shown is how many annotations of a level a service shows of one step.
const shown = 10

// Write writes the whole run: commands for the first findings of each level,
// the others as plain lines, as are those that the project accepts, and a line
// that counts them. An error is one of
// w.
func Write(w io.Writer, run *report.Run) error {
	commands, others := share(run.All())
	out := bufio.NewWriter(w)
	for _, f := range commands {
		out.WriteString(command(f) + "\n")
	}
	if len(others) > 0 {
		out.WriteString("::notice title=yardproof::" + escapeMessage(left(others)) + "\n")
	}
	for _, f := range others {
		for i, text := range append([]string{words.Head(f)}, words.Rest(f)...) {
			if i > 0 {
				text = "  " + text
			}
			out.WriteString(words.Line(text) + "\n")
		}
	}
	for _, e := range run.Exceptions() {
		head, reason := words.Excused(e)
		out.WriteString(words.Line("accepted: "+head) + "\n" + words.Line("  reason: "+reason) + "\n")
	}
	out.WriteString(words.Line("yardproof: "+words.Summary(run)) + "\n")
	return out.Flush()
}

// share parts the findings that become commands from the others, in order. One
// notice is kept for telling of those.
func share(findings []diag.Finding) (commands, others []diag.Finding) {
	room := map[diag.Level]int{diag.Error: shown, diag.Warning: shown, diag.Note: shown - 1}
	for _, f := range findings {
		if room[f.Level] > 0 {
			room[f.Level]--
			commands = append(commands, f)
		} else {
			others = append(others, f)
		}
	}
	return commands, others
}

func left(others []diag.Finding) string {
	return "and " + words.Count(others).String() + " more, in the output of this step"
}

// command is a finding as a workflow command.
func command(f diag.Finding) string {
	var properties []string
	add := func(name, value string) { properties = append(properties, name+"="+escapeProperty(value)) }
	if f.Place.File != "" {
		add("file", f.Place.File)
	}
	if at := f.Place; at.File != "" && at.Start.Line > 0 {
		add("line", strconv.Itoa(at.Start.Line))
		add("endLine", strconv.Itoa(at.End.Line))
		if at.Start.Line == at.End.Line {
			add("col", strconv.Itoa(at.Start.Column))
		}
	}
	add("title", title(f))
	said := f.Message
	if f.Place.Cell != "" { // the service has no place for it
		said = f.Place.Cell + ": " + said
	}
	message := strings.Join(append([]string{words.OneLine(said)}, words.Rest(f)...), "\n")
	return "::" + verb(f.Level) + " " + strings.Join(properties, ",") + "::" + escapeMessage(message)
}

func title(f diag.Finding) string {
	if f.Plan == "" {
		return words.OneLine(f.Rule)
	}
	return words.OneLine(f.Plan + ": " + f.Rule)
}

func verb(l diag.Level) string {
	switch l {
	case diag.Error:
		return "error"
	case diag.Warning:
		return "warning"
	}
	return "notice"
}

// escapeMessage keeps a message on one line, where the percent sign is the
// only escape.
func escapeMessage(text string) string {
	return strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A").Replace(text)
}

// escapeProperty also escapes what ends a property. What a terminal would obey
// there is no escape for: it is lost.
func escapeProperty(text string) string {
	return words.OneLine(strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A", ":", "%3A", ",", "%2C").Replace(text))
}
