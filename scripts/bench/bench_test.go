//go:build unix

package bench

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"syscall"
	"testing"
	"time"

	"github.com/xeipuuv/gojsonschema"

	"yardproof/exporters"
	"yardproof/pipeline"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
	"yardproof/pipeline/store/handed"
	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// BenchmarkCheck is the whole check of a line by one job, from the disk to its
// findings, and how many times as long that is as gojsonschema alone takes.
func BenchmarkCheck(b *testing.B) {
	for _, n := range []int{1, 100, 2000} {
		b.Run(fmt.Sprintf("plans=%d", n), func(b *testing.B) {
			dir := lay(b, n)
			compare(b, dir, n, func() { run(b, pipeline.Config{Paths: []string{dir}, Jobs: 1}, n) })
		})
	}
}

// BenchmarkExport is the check and the workbooks of 100 plans, written.
func BenchmarkExport(b *testing.B) {
	const n = 100
	dir, format := lay(b, n), xlsx(b)
	compare(b, dir, n, func() { export(b, dir, format, n) })
}

// compare measures the processor time of work on n plans, in turn with the
// baselines, so that a busy machine is busy for all. The schema has a "oneOf" that a run checks by other
// means, as it takes gojsonschema half its time: so there is a second baseline
// without it.
func compare(b *testing.B, dir string, n int, work func()) {
	text, _ := schema.Text("plan")
	var whole any
	if err := json.Unmarshal(text, &whole); err != nil {
		b.Fatal(err)
	}
	documents := documents(b, dir)
	alone := baseline(b, whole, documents)
	lean := baseline(b, withoutOneOf(whole), documents)
	turns := []func(){work, alone, lean}
	took := make([]time.Duration, len(turns))
	for b.Loop() {
		for i, turn := range turns {
			runtime.GC() // nobody pays for another's garbage
			start := processor(b)
			turn()
			took[i] += processor(b) - start
		}
	}
	for i, unit := range []string{"ours-us/plan", "gojsonschema-us/plan", "without-oneOf-us/plan"} {
		b.ReportMetric(float64(took[i].Microseconds())/float64(b.N)/float64(n), unit)
	}
	b.ReportMetric(float64(took[0])/float64(took[1]), "x-gojsonschema")
	b.ReportMetric(float64(took[0])/float64(took[2]), "x-without-oneOf")
}

// processor is what this process has had of all processors so far.
func processor(tb testing.TB) time.Duration {
	tb.Helper()
	var use syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &use); err != nil {
		tb.Fatal(err)
	}
	return time.Duration(use.Utime.Nano() + use.Stime.Nano())
}

func withoutOneOf(value any) any {
	switch v := value.(type) {
	case map[string]any:
		delete(v, "oneOf")
		for _, child := range v {
			withoutOneOf(child)
		}
	case []any:
		for _, child := range v {
			withoutOneOf(child)
		}
	}
	return value
}

// run demands that nothing is wrong with the plans: a plan refused early would
// be a quick one.
func run(tb testing.TB, c pipeline.Config, n int) {
	tb.Helper()
	r, err := pipeline.Run(context.Background(), c)
	if err != nil {
		tb.Fatal(err)
	}
	if len(r.Plans) != n {
		tb.Fatalf("%d plans, want %d", len(r.Plans), n)
	}
	for _, f := range r.All() {
		if f.Level >= diag.Error {
			tb.Fatalf("%s: %s [%s]", f.Place.File, f.Message, f.Rule)
		}
	}
}

func xlsx(tb testing.TB) exporters.ExportFormat {
	tb.Helper()
	format, ok := exporters.Export("xlsx")
	if !ok {
		tb.Fatal("no workbooks")
	}
	return format
}

func export(tb testing.TB, dir string, format exporters.ExportFormat, n int) {
	tb.Helper()
	out, err := store.OpenFolder(filepath.Join(tb.TempDir(), "out"))
	if err != nil {
		tb.Fatal(err)
	}
	defer out.Close()
	save := func(ctx context.Context, files []report.File, err error) error {
		for i := 0; err == nil && i < len(files); i++ {
			err = out.Write(ctx, files[i])
		}
		return err
	}
	run(tb, pipeline.Config{
		Paths: []string{dir}, Jobs: 1, Tables: true,
		Sink: handed.On{
			EachPlan: func(ctx context.Context, p *report.Plan) error {
				files, err := format.Plan(p)
				return save(ctx, files, err)
			},
			WholeLine: func(ctx context.Context, r *report.Run) error {
				files, err := format.Line(r)
				return save(ctx, files, err)
			},
		},
	}, n)
}

// baseline is gojsonschema alone, from JSON text to its verdict on every
// document, with a schema compiled beforehand.
func baseline(tb testing.TB, schema any, documents [][]byte) func() {
	tb.Helper()
	compiled, err := gojsonschema.NewSchema(gojsonschema.NewGoLoader(schema))
	if err != nil {
		tb.Fatal(err)
	}
	return func() {
		for _, d := range documents {
			if r, err := compiled.Validate(gojsonschema.NewBytesLoader(d)); err != nil || !r.Valid() {
				tb.Fatal(err, r)
			}
		}
	}
}

// documents are the plans of a folder and each of their sizes that differs
// from its plan.
func documents(tb testing.TB, dir string) (texts [][]byte) {
	tb.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*.plan.json"))
	if err != nil {
		tb.Fatal(err)
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			tb.Fatal(err)
		}
		tree, _ := jsontree.Parse(source.New(f, text), jsontree.DefaultLimits())
		texts = append(texts, text)
		for _, s := range plan.Merge(tree) {
			if s.Same {
				continue
			}
			text, err := json.Marshal(s.Tree.Interface())
			if err != nil {
				tb.Fatal(err)
			}
			texts = append(texts, text)
		}
	}
	return texts
}
