package words

import (
	"fmt"
	"strconv"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

// Levels lists the levels, the worst first.
func Levels() []diag.Level { return []diag.Level{diag.Error, diag.Warning, diag.Note} }

// Tally counts findings by level. Consequences are not among them: they are
// mended with their causes.
type Tally struct{ Errors, Warnings, Notes, Follow int }

// Count counts findings.
func Count(findings []diag.Finding) Tally {
	var t Tally
	for _, f := range findings {
		switch f.Level {
		case diag.Error:
			t.Errors++
		case diag.Warning:
			t.Warnings++
		case diag.Note:
			t.Notes++
		}
		t.Follow += len(diag.Flatten(f.Follows))
	}
	return t
}

// Of is the number of findings at a level.
func (t Tally) Of(l diag.Level) int {
	switch l {
	case diag.Error:
		return t.Errors
	case diag.Warning:
		return t.Warnings
	case diag.Note:
		return t.Notes
	}
	return 0
}

// String names the levels that were counted: "2 errors, 1 note".
func (t Tally) String() string { return t.words("") }

// Age is what stands before the word for a finding: "new " where old ones are
// told apart.
func Age(run *report.Run) string {
	if run.Baseline != nil {
		return "new "
	}
	return ""
}

func (t Tally) words(age string) string {
	var counts []string
	for _, l := range Levels() {
		if n := t.Of(l); n > 0 {
			counts = append(counts, Plural(n, age+l.String()))
		}
	}
	if len(counts) == 0 {
		return "no " + age + "findings"
	}
	return strings.Join(counts, ", ")
}

// Summary counts what was looked at and what was found.
func Summary(run *report.Run) string {
	t := Count(run.All())
	text := Scope(run) + ": " + t.words(Age(run))
	if t.Follow == 1 {
		text += ", 1 more that may follow"
	} else if t.Follow > 1 {
		text += fmt.Sprintf(", %d more that may follow", t.Follow)
	}
	if n := Accepted(run); n > 0 {
		text += ", " + Plural(n, "accepted exception")
	}
	return text + Against(run.Baseline) + Numbers(run.Text)
}

// Numbers counts what became of the numbers of a text, at the end of a summary.
func Numbers(r *report.Reading) string {
	if r == nil {
		return ""
	}
	text := fmt.Sprintf("; %s in the text: %d agree", Plural(len(r.Numbers), "number"), r.Count("agrees"))
	for _, v := range []struct{ verdict, says string }{{"disagrees", "disagree"}, {"not placed", "not placed"}, {"no quantity", "no quantities"}} {
		if n := r.Count(v.verdict); n > 0 {
			text += fmt.Sprintf(", %d %s", n, v.says)
		}
	}
	return text
}

// Stated says what a number of a text was taken for.
func Stated(s report.Stated) string {
	text := strconv.Quote(s.Text) + ": " + s.Verdict
	switch {
	case s.Verdict == "no quantity":
		return text + ", " + s.Sense
	case s.States == "":
		return text
	}
	text += " with " + s.States
	if s.Size != "" {
		text += ", " + s.Size
	}
	return text + ": " + s.Is + " (" + s.From() + ")"
}

// Against tells of a baseline, or of a revision, at the end of a summary: how
// many findings are old, which of the recorded are gone, and which nobody looked
// at.
func Against(b *report.Baseline) string {
	if b == nil {
		return ""
	}
	to := "baseline"
	if b.Since != "" {
		to = "since " + OneLine(b.Since)
	}
	text := fmt.Sprintf("; %s: %d old", to, len(b.Old))
	if b.Gone > 0 {
		text += fmt.Sprintf(", %d gone", b.Gone)
	}
	if b.Unseen > 0 {
		text += fmt.Sprintf(", %d not looked at", b.Unseen)
	}
	if b.Same > 0 {
		text += ", " + Plural(b.Same, "plan") + " the same"
	}
	if b.Unjudged > 0 {
		text += ", " + Plural(b.Unjudged, "plan") + " not judged there, as its project file is not in order"
	}
	return text
}

// Scope is how many plans and sizes were looked at.
func Scope(run *report.Run) string {
	sizes := 0
	for _, p := range run.Plans {
		sizes += len(p.Sizes)
	}
	text := Plural(len(run.Plans), "plan")
	if sizes > 0 {
		text += ", " + Plural(sizes, "size")
	}
	return text
}

// Accepted is how many findings the projects accept.
func Accepted(run *report.Run) int {
	n := run.Accepted
	for _, p := range run.Plans {
		n += p.Accepted
	}
	return n
}

// Stopped reports whether a finding, or one that follows from it, says that
// yardproof could not do its work.
func Stopped(findings []diag.Finding) bool {
	for _, f := range diag.Flatten(findings) {
		if strings.HasPrefix(f.Rule, RunFamily) && f.Level == diag.Error {
			return true
		}
	}
	return false
}

// RunFamily begins the name of each rule about yardproof's own work, which it
// could not do if the finding is an error.
const RunFamily = "run/"

// Plural is a number of things whose plural ends in s.
func Plural(n int, noun string) string {
	if n != 1 {
		noun += "s"
	}
	return strconv.Itoa(n) + " " + noun
}
