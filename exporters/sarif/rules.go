package sarif

import (
	"maps"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"yardproof/exporters/internal/words"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

// rules are the descriptors of a run, by name. They are all rules that there
// are, so that a reader sees what was looked for and not found.
type rules struct {
	list          []descriptor
	notifications []descriptor
	at            map[string]int // index in list
	noted         map[string]int // index in notifications
}

// newRules also describes, by name alone, a rule that has a finding and that
// the run does not list.
func newRules(r *report.Run, findings []diag.Finding, excused []report.Excused) *rules {
	known := map[string]descriptor{}
	for _, f := range findings {
		known[f.Rule] = descriptor{ID: f.Rule}
	}
	for _, e := range excused {
		known[e.Finding.Rule] = descriptor{ID: e.Finding.Rule}
	}
	for _, rule := range r.Rules {
		known[rule.Name] = describe(rule)
	}
	out := &rules{list: []descriptor{}, at: map[string]int{}, noted: map[string]int{}}
	for _, name := range slices.Sorted(maps.Keys(known)) {
		out.at[name] = len(out.list)
		out.list = append(out.list, known[name])
	}
	return out
}

func describe(r report.Rule) descriptor {
	family, _, _ := strings.Cut(r.Name, "/")
	return descriptor{
		ID:                   r.Name,
		ShortDescription:     plain(begin(finish(r.Summary))),
		FullDescription:      plain(finish(r.Why)),
		DefaultConfiguration: &configuration{level(r.Level)},
		Help:                 plain(finish(r.Why) + " What to do: " + finish(r.Fix)),
		Properties:           &tags{[]string{family}},
	}
}

// level is "none" for a rule that reports nothing of its own accord (3.27.10).
func level(l diag.Level) string {
	if l == 0 {
		return "none"
	}
	return l.String()
}

// finish ends a sentence with a full stop.
func finish(text string) string {
	text = strings.TrimSpace(words.OneLine(text))
	if text == "" || strings.HasSuffix(text, ".") {
		return text
	}
	return text + "."
}

// begin makes the first letter a capital.
func begin(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return text
	}
	return string(unicode.ToUpper(first)) + text[size:]
}

func (r *rules) index(name string) int { return r.at[name] }

// notification refers to the descriptor of a notification.
func (r *rules) notification(name string) reference {
	at, known := r.noted[name]
	if !known {
		at = len(r.notifications)
		r.noted[name] = at
		r.notifications = append(r.notifications, r.list[r.at[name]])
	}
	return reference{ID: name, Index: at}
}

func (r *rules) component(version string) component {
	return component{Name: "yardproof", Version: version, Rules: r.list, Notifications: r.notifications}
}
