package main

import (
	"context"
	"fmt"
	"io"

	"yardproof/exporters"
	"yardproof/pipeline"
	"yardproof/pipeline/baseline"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
)

// compare holds a run against the baseline that was asked for. One that cannot
// be read is a finding of the run, in which nothing is old then.
func (set settings) compare(run *report.Run) {
	if set.known == "" {
		return
	}
	text, findings := pipeline.ReadFile(set.known, baseline.MaxBytes)
	var record baseline.Record
	if len(findings) == 0 {
		record, findings = baseline.Parse(set.known, text)
	}
	record.Compare(run)
	run.Findings = diag.Sort(append(run.Findings, findings...))
}

// writeBaseline records the findings of a run. A run that was not finished
// would leave out what it did not get to see.
func (set settings) writeBaseline(ctx context.Context, s streams, run *report.Run) error {
	if set.record == "" {
		return nil
	}
	if !baseline.Complete(run) {
		fmt.Fprintf(s.stderr, "yardproof: %s was not written, as the run could not be finished\n", exporters.Shown(set.record))
		return nil
	}
	return store.WriteReport(ctx, set.record, func(w io.Writer) error {
		_, err := w.Write(baseline.Encode(run))
		return err
	})
}
