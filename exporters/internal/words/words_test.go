package words

import (
	"strings"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/schema/source"
)

func TestOneLine(t *testing.T) {
	for text, want := range map[string]string{
		"½ yd, 港":                "½ yd, 港",
		"a\tb\nc\r\nd":           "a b c  d",
		"\x1b[31m\x00\x7f\u0085": "\ufffd[31m\ufffd\ufffd\ufffd",
		"\u202eab\u2066":         "\ufffdab\ufffd",
		"a\u2028b\u2029c":        "a b c",
		"\xffa\ufffe\U0001ffff":  "\ufffda\ufffd\ufffd",
	} {
		if got := OneLine(text); got != want {
			t.Errorf("OneLine(%q) = %q, want %q", text, got, want)
		}
	}
}

func finding() diag.Finding {
	at := diag.Place{File: "a.plan.json", Start: source.Position{Line: 4, Column: 7}}
	return diag.Finding{
		Rule: "yield/few", Level: diag.Error, Place: at, Sizes: []string{"throw"}, Message: "30 of 36", Hint: "make more",
		Related: []diag.Related{{Place: diag.Place{File: "b"}, Message: "here"}, {Message: "and there"}},
		Follows: []diag.Finding{{Rule: "printed/parts", Level: diag.Warning, Sizes: []string{"wall"}, Message: "36 printed",
			Follows: []diag.Finding{{Rule: "run/crash", Level: diag.Error, Sizes: []string{"throw"}, Message: "it stopped"}}}},
	}
}

func TestHeadAndRest(t *testing.T) {
	want := `a.plan.json:4:7: error: 30 of 36 [yield/few]
hint: make more
holds for: throw
see: b: here
see: and there
may follow: warning: 36 printed [printed/parts] (wall)
may follow: error: it stopped [run/crash]`
	f := finding()
	if got := strings.Join(append([]string{Head(f)}, Rest(f)...), "\n"); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestSummary(t *testing.T) {
	tests := []struct {
		run  report.Run
		want string
	}{
		{report.Run{}, "0 plans: no findings"},
		{report.Run{Plans: []report.Outcome{{File: "a", Sizes: []string{"throw"}, Accepted: 1}}}, "1 plan, 1 size: no findings, 1 accepted exception"},
		{report.Run{Accepted: 1, Plans: []report.Outcome{{File: "a", Sizes: []string{"throw", "wall"}, Findings: []diag.Finding{finding()}, Accepted: 1}, {File: "b"}}},
			"2 plans, 2 sizes: 1 error, 2 more that may follow, 2 accepted exceptions"},
		{report.Run{Findings: []diag.Finding{{Level: diag.Note, Follows: []diag.Finding{{}}}, {Level: diag.Warning, Message: "b"}}}, "0 plans: 1 warning, 1 note, 1 more that may follow"},
		{report.Run{Baseline: &report.Baseline{Recorded: 9, Old: []diag.Finding{finding()}, Gone: 2, Unseen: 3}}, "0 plans: no new findings; baseline: 1 old, 2 gone, 3 not looked at"},
		{report.Run{Baseline: &report.Baseline{Since: "main\n", Same: 1}}, "0 plans: no new findings; since main : 0 old, 1 plan the same"},
		{report.Run{Baseline: &report.Baseline{Since: "main", Gone: 1, Same: 40, Unjudged: 2}}, "0 plans: no new findings; since main: 0 old, 1 gone, 40 plans the same, 2 plans not judged there, as its project file is not in order"},
	}
	for _, tt := range tests {
		if got := Summary(&tt.run); got != tt.want {
			t.Errorf("got %q, want %q", got, tt.want)
		}
	}
}

// What stopped yardproof counts wherever it is folded away.
func TestStopped(t *testing.T) {
	deep := finding()
	shallow := finding()
	shallow.Follows[0].Follows = nil
	if !Stopped([]diag.Finding{deep}) || Stopped([]diag.Finding{shallow}) || Stopped(nil) {
		t.Error("Stopped")
	}
}
