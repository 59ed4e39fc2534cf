package text

import (
	"bytes"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

// Findings that are left out still count, and those of an earlier run are told
// in a line each, made safe to print.
func TestWriteSince(t *testing.T) {
	old := diag.Finding{Rule: "yield/none", Level: diag.Error, Message: "old", Place: diag.Place{File: "a"}}
	new := diag.Finding{Rule: "yield/none", Level: diag.Error, Message: "new", Place: diag.Place{File: "a"}}
	run := &report.Run{Plans: []report.Outcome{{File: "a", Findings: []diag.Finding{new, old}}}}
	var b bytes.Buffer
	err := Write(&b, run, Options{
		Only: func(f diag.Finding) bool { return f.Message == "new" },
		Gone: []diag.Finding{{Rule: "run/crash", Message: "a\x1bb"}, {Rule: "yield/none", Message: "c", Place: diag.Place{File: "d\n"}}},
	})
	want := "gone: a\uFFFDb [run/crash]\ngone: \"d\\n\": c [yield/none]\n\na: error: new [yield/none]\n\n1 plan: 2 errors; worst: error\n"
	if err != nil || b.String() != want {
		t.Errorf("%v: wrote\n%s\nwanted\n%s", err, &b, want)
	}
}
