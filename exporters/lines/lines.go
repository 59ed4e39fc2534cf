package lines

import (
	"bufio"
	"fmt"
	"io"

	"yardproof/exporters/internal/words"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

// Write writes a line for each finding of a run. An error is one of w.
func Write(w io.Writer, run *report.Run) error {
	out := bufio.NewWriter(w)
	for _, f := range run.All() {
		out.WriteString(line(f) + "\n")
	}
	return out.Flush()
}

func line(f diag.Finding) string {
	text := words.OneLine(f.Message)
	if f.Place.Cell != "" {
		text = words.OneLine(f.Place.Cell) + ": " + text
	}
	if len(f.Sizes) > 0 {
		text += " (" + words.Sizes(f) + ")"
	}
	if n := len(diag.Flatten(f.Follows)); n > 0 {
		text += fmt.Sprintf(" (%d more may follow)", n)
	}
	return fmt.Sprintf("%s: %s: %s [%s]", where(f.Place), f.Level, text, words.OneLine(f.Rule))
}

func where(at diag.Place) string {
	if at.File == "" {
		return "yardproof"
	}
	return fmt.Sprintf("%s:%d:%d", words.Name(at.File), max(at.Start.Line, 1), max(at.Start.Column, 1))
}
