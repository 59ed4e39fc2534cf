package codequality

import (
	"bytes"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"yardproof/exporters/internal/edge"
	"yardproof/exporters/internal/golden"
	"yardproof/exporters/internal/sample"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/schema/source"
)

func written(t *testing.T, r *report.Run) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, r); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestWrite(t *testing.T)     { golden.Check(t, "run.json", written(t, sample.Line())) }
func TestWriteEdge(t *testing.T) { golden.Check(t, "edge.json", written(t, edge.Run())) }

func TestWriteNothing(t *testing.T) {
	if got := string(written(t, &report.Run{})); got != "[]\n" {
		t.Errorf("nothing is %q", got)
	}
}

// read decodes a report as a service would, which knows the published keys and
// needs all of them: "Code Quality report format" in GitLab's documentation.
func read(t *testing.T, text []byte) []issue {
	t.Helper()
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	var issues []issue
	if err := d.Decode(&issues); err != nil {
		t.Fatal(err)
	}
	return issues
}

func TestEachFindingIsAnIssue(t *testing.T) {
	severities := []string{"info", "minor", "major", "critical", "blocker"}
	for name, r := range map[string]*report.Run{"run": sample.Line(), "edge": edge.Run(), "many": edge.Many(40)} {
		issues, seen := read(t, written(t, r)), map[string]bool{}
		if len(issues) != len(r.All()) {
			t.Errorf("%s: %d issues, there are %d findings", name, len(issues), len(r.All()))
		}
		for _, i := range issues {
			if i.Description == "" || i.CheckName == "" || i.Location.Path == "" || i.Location.Lines.Begin < 1 || !slices.Contains(severities, i.Severity) {
				t.Errorf("%s: not whole: %+v", name, i)
			}
			if strings.HasPrefix(i.Location.Path, "./") {
				t.Errorf("%s: the path %s", name, i.Location.Path)
			}
			if seen[i.Fingerprint] || len(i.Fingerprint) != 32 {
				t.Errorf("%s: the fingerprint %q", name, i.Fingerprint)
			}
			seen[i.Fingerprint] = true
		}
	}
}

// A fingerprint stays when lines move and numbers change, and only then.
func TestFingerprints(t *testing.T) {
	at := func(line int, pointer string) diag.Place {
		return diag.Place{File: "./a.plan.json", Pointer: pointer, Range: source.Range{Start: 10 * line}, Start: source.Position{Line: line, Column: 3}}
	}
	first := func(f diag.Finding) issue { return read(t, written(t, &report.Run{Findings: []diag.Finding{f}}))[0] }
	was := diag.Finding{Rule: "a/b", Plan: "p", Level: diag.Error, Place: at(4, "/parts/x"), Message: "6 in, wanted 7 in", Sizes: []string{"bed"}}
	moved, elsewhere, smaller := was, was, was
	moved.Place, moved.Message = at(9, "/parts/x"), "5 in, wanted 7 in"
	elsewhere.Place = at(4, "/parts/y")
	smaller.Sizes = []string{"cot"}
	if a, b := first(was), first(moved); a.Fingerprint != b.Fingerprint || b.Location.Lines.Begin != 9 || b.Location.Path != "a.plan.json" {
		t.Errorf("it moved from %+v to %+v", a, b)
	}
	for _, other := range []diag.Finding{elsewhere, smaller} {
		if first(other).Fingerprint == first(was).Fingerprint {
			t.Errorf("%+v has the fingerprint of another", other)
		}
	}
}
