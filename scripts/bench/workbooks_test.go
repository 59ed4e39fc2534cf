//go:build unix

package bench

import (
	"context"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"yardproof/exporters/jsontable"
	books "yardproof/exporters/xlsx"
	"yardproof/pipeline"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store/handed"
)

// BenchmarkWorkbooks is the making of the demo line's workbooks in memory, and how
// many times as fast that is, by processor time, as two general-purpose writers
// of Python make workbooks of the same tables: XlsxWriter and openpyxl (Debian:
// python3-xlsxwriter, python3-openpyxl), which are left out where they are not
// installed. Pictures and charts are left out for all three. What Python does
// not do is left to ours: formulas, names of cells, styles of numbers, prompts,
// protection, print settings, and reproducible bytes.
func BenchmarkWorkbooks(b *testing.B) {
	plans := bare(b)
	folder := b.TempDir()
	for i, p := range plans {
		text, err := jsontable.Plan(p)
		if err != nil {
			b.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(folder, p.ID+".json"), text, 0o666); err != nil {
			b.Fatal(i, err)
		}
	}
	var ours time.Duration
	theirs := map[string]time.Duration{}
	rounds := 0
	for b.Loop() {
		rounds++
		before := processor(b)
		for _, p := range plans {
			if _, err := books.Plan(p); err != nil {
				b.Fatal(err)
			}
		}
		ours += processor(b) - before
		for _, writer := range []string{"xlsxwriter", "openpyxl"} {
			if took, ok := python(b, writer, folder); ok {
				theirs[writer] += took
			}
		}
	}
	n := float64(rounds * len(plans))
	b.ReportMetric(n/ours.Seconds(), "ours-books/s")
	for writer, took := range theirs {
		b.ReportMetric(n/took.Seconds(), writer+"-books/s")
		b.ReportMetric(took.Seconds()/ours.Seconds(), "x-"+writer)
	}
}

// bare are the demo line's plans without pictures and charts.
func bare(b *testing.B) []*report.Plan {
	b.Helper()
	var plans []*report.Plan
	_, err := pipeline.Run(b.Context(), pipeline.Config{Paths: []string{"../../testdata/line"}, Jobs: 1, Tables: true, Sink: handed.On{EachPlan: func(_ context.Context, p *report.Plan) error {
		p.Sheets = slices.DeleteFunc(slices.Clone(p.Sheets), func(s report.Sheet) bool { return s.Again })
		for i := range p.Sheets {
			p.Sheets[i].Pictures, p.Sheets[i].Charts = nil, nil
		}
		plans = append(plans, p)
		return nil
	}}})
	if err != nil || len(plans) == 0 {
		b.Fatal(err, len(plans))
	}
	return plans
}

// python is the processor time that a writer takes for the workbooks of all
// tables of a folder, read beforehand; false where it is not installed.
func python(b *testing.B, writer, folder string) (time.Duration, bool) {
	b.Helper()
	out, err := exec.Command("/usr/bin/python3", "workbooks.py", writer, folder).Output()
	if err != nil {
		b.Logf("%s is left out: %v", writer, err)
		return 0, false
	}
	var seconds float64
	if err := json.Unmarshal([]byte(strings.TrimSpace(string(out))), &seconds); err != nil {
		b.Fatalf("%s: %v: %s", writer, err, out)
	}
	return time.Duration(seconds * float64(time.Second)), true
}
