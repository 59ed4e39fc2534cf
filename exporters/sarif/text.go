package sarif

import (
	"strings"

	"yardproof/exporters/internal/words"
	"yardproof/pipeline/diag"
)

// plain is a plain text message (3.11.3). Braces are doubled, for single ones
// hold placeholders (3.11.5), and a bracket is parted from a parenthesis that
// would make a link of it (3.11.6). A message must not be empty (3.11.8).
func plain(text string) *message {
	text = strings.NewReplacer("{", "{{", "}", "}}", "](", "] (").Replace(words.OneLine(text))
	if text == "" {
		text = "-"
	}
	return &message{text}
}

// sentence is the message of a finding and, as its second paragraph, the hint.
func sentence(f diag.Finding) message {
	m := plain(f.Message)
	if f.Hint != "" {
		m.Text += "\n\nHint: " + plain(f.Hint).Text
	}
	return *m
}
