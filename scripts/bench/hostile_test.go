//go:build unix

package bench

import (
	"context"
	"crypto/sha256"
	"os"
	"path/filepath"
	"testing"
	"time"

	"yardproof/pipeline"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store/handed"
	"yardproof/scripts/hostile"
)

// BenchmarkHostileCheck checks the plans at the schema's limits, each by itself,
// and says how many times as long that takes as the SHA-256 of 256 MiB takes in the
// same run.
func BenchmarkHostileCheck(b *testing.B) {
	for _, p := range hostile.Plans() {
		b.Run(p.Name, func(b *testing.B) { beside(b, p, pipeline.Config{}) })
	}
}

// BenchmarkHostileExport is the same with workbooks.
func BenchmarkHostileExport(b *testing.B) {
	if testing.Short() {
		b.Skip("takes minutes")
	}
	format := xlsx(b)
	for _, p := range hostile.Plans() {
		b.Run(p.Name, func(b *testing.B) {
			beside(b, p, pipeline.Config{Tables: true, Draft: true, Sink: handed.On{EachPlan: func(_ context.Context, p *report.Plan) error {
				_, err := format.Plan(p)
				return err
			}}})
		})
	}
}

func beside(b *testing.B, p hostile.Plan, c pipeline.Config) {
	dir := b.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "a.plan.json"), p.Text, 0o666); err != nil {
		b.Fatal(err)
	}
	c.Paths, c.Jobs = []string{dir}, 1
	var ours, reference time.Duration
	block := make([]byte, 1<<20)
	for b.Loop() {
		start := processor(b)
		if _, err := pipeline.Run(b.Context(), c); err != nil {
			b.Fatal(err)
		}
		ours += processor(b) - start
		start = processor(b)
		h := sha256.New()
		for range 256 {
			h.Write(block)
		}
		reference += processor(b) - start
	}
	b.ReportMetric(ours.Seconds()/float64(b.N), "cpu-s")
	b.ReportMetric(float64(ours)/float64(reference), "x-sha256")
}
