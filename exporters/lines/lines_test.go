package lines

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"yardproof/exporters/internal/edge"
	"yardproof/exporters/internal/golden"
	"yardproof/exporters/internal/sample"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

func written(t *testing.T, r *report.Run) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, r); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestWrite(t *testing.T)     { golden.Check(t, "run.txt", []byte(written(t, sample.Line()))) }
func TestWriteEdge(t *testing.T) { golden.Check(t, "edge.txt", []byte(written(t, edge.Run()))) }

// form is what an editor looks for, as in the errorformat "%f:%l:%c: %m".
var form = regexp.MustCompile(`^(?:(.+):([1-9][0-9]*):([1-9][0-9]*)|yardproof): (error|warning|note): (.*) \[(\S+)\]$`)

func TestEachFindingIsALine(t *testing.T) {
	for name, r := range map[string]*report.Run{"run": sample.Line(), "edge": edge.Run(), "empty": {}, "many": edge.Many(40)} {
		text, said := written(t, r), 0
		for line := range strings.Lines(text) {
			line = strings.TrimSuffix(line, "\n")
			m := form.FindStringSubmatch(line)
			if m == nil || strings.HasPrefix(line, "::") || strings.Contains(line, "##[") {
				t.Errorf("%s: not in the form: %s", name, line)
				continue
			}
			f := r.All()[said]
			if m[4] != f.Level.String() || m[6] != f.Rule || (m[1] == "") != (f.Place.File == "") {
				t.Errorf("%s: %s\nis not %+v", name, line, f)
			}
			said++
		}
		if said != len(r.All()) {
			t.Errorf("%s: %d lines, there are %d findings", name, said, len(r.All()))
		}
	}
}

func FuzzWrite(f *testing.F) {
	f.Add("a", "m", "A1")
	f.Add("::error::", "##[x]\r\n::y", "")
	f.Fuzz(func(t *testing.T, file, message, cell string) {
		found := diag.Finding{Rule: "a/b", Level: diag.Note, Message: message, Place: diag.Place{File: file, Cell: cell}}
		text := written(t, &report.Run{Findings: []diag.Finding{found}})
		if !form.MatchString(strings.TrimSuffix(text, "\n")) || strings.Count(text, "\n") != 1 {
			t.Errorf("%q", text)
		}
	})
}
