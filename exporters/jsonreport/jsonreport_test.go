package jsonreport

import (
	"bytes"
	"encoding/json"
	"testing"

	"yardproof/exporters/internal/golden"
	"yardproof/exporters/internal/sample"
	"yardproof/pipeline/report"
)

func written(t *testing.T, run *report.Run) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, run); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestWrite(t *testing.T) {
	golden.Check(t, "run.json", written(t, sample.Line()))
}

// An empty run still has every list, so that no reader has to ask for null.
func TestWriteNothing(t *testing.T) {
	const want = `{
  "format": 1,
  "plans": [],
  "findings": [],
  "counts": {
    "error": 0,
    "warning": 0,
    "note": 0,
    "follow": 0,
    "accepted": 0
  }
}
`
	if got := string(written(t, &report.Run{})); got != want {
		t.Errorf("got %s", got)
	}
}

// The counts are recounted from the findings as another program reads them.
func TestCountsAgreeWithFindings(t *testing.T) {
	var d struct {
		Findings []struct {
			Level string
			Range *struct{ Start, End int }
			File  string
		}
		Counts map[string]any
	}
	if err := json.Unmarshal(written(t, sample.Line()), &d); err != nil {
		t.Fatal(err)
	}
	counted := map[string]float64{}
	for _, f := range d.Findings {
		counted[f.Level]++
	}
	for _, level := range []string{"error", "warning", "note"} {
		if d.Counts[level] != counted[level] {
			t.Errorf("%v %ss are counted, %v are there", d.Counts[level], level, counted[level])
		}
	}
	if d.Counts["worst"] != "error" || d.Counts["accepted"] != 2.0 {
		t.Errorf("counts %v", d.Counts)
	}
	first := d.Findings[0]
	if got := sample.Harbour[first.Range.Start:first.Range.End]; got != `"41 1/2"` {
		t.Errorf("the range of the first finding holds %s", got)
	}
}
