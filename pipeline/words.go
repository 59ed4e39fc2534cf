package pipeline

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/pipeline/words"
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// Text is the text of a pattern.
type Text struct {
	Name  string // by which findings name it
	Bytes []byte
}

// LargestText is how many bytes the text of a pattern may have: as many as a plan.
func LargestText() int { return jsontree.DefaultLimits().MaxBytes }

// readText holds the numbers of the text against the plan's sizes.
func (w *work) readText(ctx context.Context) []diag.Finding {
	file := source.New(w.Text.Name, w.Text.Bytes)
	if len(w.Text.Bytes) > LargestText() {
		return []diag.Finding{check.Words("words/too-large", w.id, diag.Place{File: file.Name},
			fmt.Sprintf("the text has more than %d bytes", LargestText()), "name the text of one pattern")}
	}
	numbers := words.NewReader(w.plan, w.sizes).Check(string(w.Text.Bytes), func() bool { return ctx.Err() != nil })
	if ctx.Err() != nil {
		return nil
	}
	text := &report.Reading{File: file.Name}
	var found []diag.Finding
	for _, n := range numbers {
		at := diag.Place{File: file.Name, Range: n.At, Start: file.Position(n.At.Start), End: file.Position(n.At.End), Excerpt: file.Excerpt(n.At)}
		s := report.Stated{
			Place: at, Text: strings.Join(strings.Fields(file.Slice(n.At)), " "), Verdict: n.Verdict.String(),
			Sense: n.Sense, States: n.States, Is: n.Is, Size: n.Size, Printed: n.Printed,
		}
		text.Numbers = append(text.Numbers, s)
		if f, ok := w.stated(n, s); ok {
			found = append(found, f)
		}
	}
	w.line.text = text
	return found
}

// stated is the finding about a number, where there is one.
func (w *work) stated(n words.Number, s report.Stated) (diag.Finding, bool) {
	switch n.Verdict {
	case words.Disagrees:
		message := fmt.Sprintf("the text says %q and the plan %s: %s (%s)", s.Text, s.Is, s.States, s.From())
		hint := fmt.Sprintf("write %s, or correct the plan if the text is right", s.Is)
		if s.Size == "" {
			message = fmt.Sprintf("the text says %q and before it %s: %s", s.Text, s.Is, s.States)
			hint = fmt.Sprintf("write %s, rounded as the rest is", s.Is)
		}
		f := check.Words("words/disagrees", w.id, s.Place, message, hint)
		if s.Size != "" {
			f.Sizes = []string{s.Size}
		}
		return f, true
	case words.NotPlaced:
		return check.Words("words/not-placed", w.id, s.Place, fmt.Sprintf("it cannot be told which figure of the plan %q states", s.Text),
			"check it by hand, or name near it what it counts or measures"), true
	}
	return diag.Finding{}, false
}

// ofText leaves of what was found what is about the text, and that the plan has
// errors, if it has any.
func (w *work) ofText(found []diag.Finding) []diag.Finding {
	errors := 0
	kept := slices.DeleteFunc(slices.Clone(found), func(f diag.Finding) bool {
		about := strings.HasPrefix(f.Rule, "words/")
		if !about && f.Level == diag.Error {
			errors++
		}
		return !about
	})
	w.outcome.Excused = slices.DeleteFunc(w.outcome.Excused, func(e report.Excused) bool { return !strings.HasPrefix(e.Finding.Rule, "words/") })
	w.outcome.Accepted = len(w.outcome.Excused)
	if errors > 0 {
		has := "an error"
		if errors > 1 {
			has = fmt.Sprintf("%d errors", errors)
		}
		kept = append(kept, check.Words("words/plan-errors", w.id, diag.Place{File: w.name},
			fmt.Sprintf("the plan has %s: figures that cannot be derived are not compared, and others may be wrong", has),
			"mend what `yardproof check "+w.name+"` finds, and read the text again"))
	}
	return kept
}
