package sample

import (
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/schema/source"
)

// Read is a run over one plan and the text of its pattern, with a number of every
// verdict and a name that no format may take for its own marks.
func Read() *report.Run {
	const text = "1. Cut 7 strips\n2½\" wide, 4 more.\n"
	f := source.New("pattern.txt", []byte(text))
	at := func(start, end int) diag.Place {
		r := source.Range{Start: start, End: end}
		return diag.Place{File: f.Name, Range: r, Start: f.Position(start), End: f.Position(end), Excerpt: f.Excerpt(r)}
	}
	const frame = "strips for \"a | <b>\nc\""
	return &report.Run{
		Plans: []report.Outcome{{File: "a.plan.json", ID: "a", Title: "A", Status: "draft", Sizes: []string{"throw"}, Findings: []diag.Finding{{
			Rule: "words/disagrees", Level: diag.Error, Plan: "a", Place: at(7, 8), Sizes: []string{"throw"},
			Message: "the text says \"7\" and the plan 6: " + frame + " (derived)", Hint: "write 6",
		}}}},
		Text: &report.Reading{File: f.Name, Numbers: []report.Stated{
			{Place: at(0, 1), Text: "1", Verdict: "no quantity", Sense: "label"},
			{Place: at(7, 8), Text: "7", Verdict: "disagrees", States: frame, Is: "6", Size: "throw"},
			{Place: at(16, 20), Text: "2½\"", Verdict: "agrees", States: frame, Is: "2 1/2 in", Size: "throw", Printed: true},
			{Place: at(27, 28), Text: "4", Verdict: "not placed"},
		}},
	}
}
