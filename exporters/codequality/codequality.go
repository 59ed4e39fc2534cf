package codequality

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"path"

	"yardproof/exporters/internal/words"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

type issue struct {
	Description string   `json:"description"`
	CheckName   string   `json:"check_name"`
	Fingerprint string   `json:"fingerprint"`
	Severity    string   `json:"severity"`
	Location    location `json:"location"`
}

type location struct {
	Path  string `json:"path"`
	Lines lines  `json:"lines"`
}

type lines struct {
	Begin int `json:"begin"`
}

// Write writes the findings of a run as one list. An error is one of w.
func Write(w io.Writer, run *report.Run) error {
	issues := []issue{}
	var identities diag.Identities
	for _, f := range run.All() {
		issues = append(issues, issue{
			Description: description(f), CheckName: f.Rule, Fingerprint: identities.Of(f).Fingerprint(),
			Severity: severity(f.Level), Location: location{file(f.Place), lines{max(f.Place.Start.Line, 1)}},
		})
	}
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(issues); err != nil {
		return err
	}
	_, err := w.Write(words.JSON(b.Bytes()))
	return err
}

// file is the path in the repository, which the format wants without "./".
func file(at diag.Place) string {
	if at.File == "" {
		return "."
	}
	return path.Clean(at.File)
}

func description(f diag.Finding) string {
	text := words.OneLine(f.Message)
	if f.Place.Cell != "" {
		text = words.OneLine(f.Place.Cell) + ": " + text
	}
	if len(f.Sizes) > 0 {
		text += " (" + words.Sizes(f) + ")"
	}
	if f.Hint != "" {
		text += "; " + words.OneLine(f.Hint)
	}
	if n := len(diag.Flatten(f.Follows)); n > 0 {
		text += fmt.Sprintf("; %d more may follow from it", n)
	}
	return text
}

// severity is one of the format's info, minor, major, critical and blocker.
func severity(l diag.Level) string {
	switch l {
	case diag.Error:
		return "critical"
	case diag.Warning:
		return "minor"
	}
	return "info"
}
