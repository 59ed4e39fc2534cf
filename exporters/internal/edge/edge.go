package edge

import (
	"fmt"
	"strings"

	"yardproof/exporters/internal/sample"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/schema/source"
)

// Hostile is text that Markdown, HTML, XML, workflow commands or a terminal
// would act on.
const Hostile = "<script>alert(1)</script> ]]> | `a` **b** [c](https://example.org) www.example.org @everyone #1 gh-2 $x$ {0} }\x00\x1b[31m\u202e\ufffe\xff ##[error]x 100% a:b,c &lt; ![i](j)\r\n::error::broken\nlast"

// Text is a plan on one line and others, with tabs and letters of one to four
// bytes.
const Text = "{\t\"id\": \"x\",\r\n \"title\": \"½ \U0001f9f5 e\u0301\",\r \"last\": [1,\n2] }"

// Long is a message that no format for people shows in full.
const Long = 3600

// Run is the run.
func Run() *report.Run {
	return &report.Run{
		Studio: Hostile,
		Rules: []report.Rule{
			{Name: "run/interrupted", Level: diag.Error, Summary: "the run was interrupted", Why: "Not all was checked.", Fix: "run it again"},
			{Name: "schema/json", Level: diag.Error, Summary: "the text is not JSON", Why: "Nothing {of it} can be read.", Fix: "mend it"},
		},
		Findings: []diag.Finding{
			{Rule: "run/interrupted", Level: diag.Error, Message: "the run was interrupted: 2 of 9 plans were not looked at", Hint: "run it again"},
			{Rule: "run/missing", Level: diag.Error, Place: diag.Place{File: "plans/no such folder"}, Message: "there is no such file or folder"},
			{Rule: "cost/no-price", Level: diag.Note, Message: Hostile, Hint: Hostile},
		},
		Plans: []report.Outcome{hostile(), absolute(), waiting(), {File: "./plans/good.plan.json", ID: "good", Title: "Good", Status: "draft", Sizes: []string{"cot"}}},
	}
}

func hostile() report.Outcome {
	f := source.New("plans/[a] %20|`x`,:½.plan.json", []byte(Text))
	two := sample.At(f, "[1,\n2", "/last") // begins on one line and ends on the next
	return report.Outcome{
		File: f.Name, ID: "hostile", Title: Hostile, Status: "draft", Sizes: []string{"throw", Hostile}, Accepted: 2,
		Excused: []report.Excused{{
			Finding: diag.Finding{Rule: "fabric/generous", Level: diag.Note, Plan: "hostile", Place: sample.At(f, `"x"`, "/id"), Message: "accepted: " + Hostile},
			Reason:  "a cushion, " + Hostile,
			Until:   "2027-03-31",
			Place:   diag.Place{File: "yardproof.json"},
		}},
		Findings: []diag.Finding{
			{Rule: "piecing/one", Level: diag.Error, Plan: "hostile", Sizes: []string{"throw", Hostile}, Place: two, Message: Hostile, Hint: Hostile,
				Related: []diag.Related{{Message: Hostile}, {Place: sample.At(f, "\U0001f9f5", "/title"), Message: "a reel"}},
				Follows: []diag.Finding{{Rule: "piecing/two", Level: diag.Warning, Plan: "hostile", Message: Hostile}}},
			{Rule: "piecing/one", Level: diag.Error, Plan: "hostile", Sizes: []string{"throw", Hostile}, Place: two, Message: "the same place again"},
			{Rule: "piecing/three", Level: diag.Warning, Plan: "hostile", Sizes: []string{"no such size"}, Place: sample.At(f, "\U0001f9f5", "/title"), Message: strings.Repeat("a yard and a half ", Long/18)},
			{Rule: "piecing/four", Level: diag.Note, Plan: "hostile", Place: sample.At(f, "", ""), Message: "an empty range at the start"},
		},
	}
}

// absolute is a plan named by its whole path on another system.
func absolute() report.Outcome {
	f := source.New("C:/Ann & Co/plans/torn.plan.json", []byte("\xef\xbb\xbf{"))
	return report.Outcome{File: f.Name, Findings: []diag.Finding{
		{Rule: "schema/json", Level: diag.Error, Place: sample.At(f, "{", ""), Message: "the file begins with a byte order mark"},
	}}
}

func waiting() report.Outcome {
	return report.Outcome{File: "/srv/line/wait.plan.json", ID: "wait", Title: "Wait", Status: "draft", Sizes: []string{"cot"}, Waits: true}
}

// Many is a run of n plans, each with a finding of each level.
func Many(n int) *report.Run {
	run := &report.Run{}
	for i := range n {
		name := fmt.Sprintf("plan-%04d", i)
		outcome := report.Outcome{File: "plans/" + name + ".plan.json", ID: name, Title: name, Sizes: []string{"cot", "throw"}}
		for _, l := range []diag.Level{diag.Note, diag.Warning, diag.Error} {
			outcome.Findings = append(outcome.Findings, diag.Finding{
				Rule: "piecing/one", Level: l, Plan: name, Sizes: []string{"cot"},
				Place:   diag.Place{File: outcome.File, Range: source.Range{Start: i, End: i + 1}, Start: source.Position{Line: 1, Column: i + 1}, End: source.Position{Line: 1, Column: i + 2}},
				Message: l.String() + " about " + strings.Repeat("½", 1+i%40),
			})
		}
		run.Plans = append(run.Plans, outcome)
	}
	return run
}
