package pipeline

import (
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/xeipuuv/gojsonschema"

	"yardproof/pipeline/store/handed"
	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// patterns are the plans of the demo line, by id.
func patterns(b *testing.B) map[string]string {
	b.Helper()
	files, err := filepath.Glob(filepath.Join("..", "testdata", "line", "*"+planSuffix))
	if err != nil || len(files) == 0 {
		b.Fatalf("no plans in the demo line: %v", err)
	}
	texts := map[string]string{}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			b.Fatal(err)
		}
		texts[strings.TrimSuffix(filepath.Base(f), planSuffix)] = string(text)
	}
	return texts
}

// generate makes a folder of n plans out of those of the demo line, each with
// an id of its own, beside its project file.
func generate(b *testing.B, n int) string {
	b.Helper()
	dir := b.TempDir()
	for _, name := range []string{projectFile, "prices.csv"} {
		text, err := os.ReadFile(filepath.Join("..", "testdata", "line", name))
		if err != nil {
			b.Fatal(err)
		}
		write(b, dir, name, string(text))
	}
	texts := patterns(b)
	ids := slices.Sorted(maps.Keys(texts))
	for i := range n {
		id := ids[i%len(ids)]
		name := fmt.Sprintf("%s-%d", id, i)
		write(b, dir, name+planSuffix, strings.ReplaceAll(texts[id], `"`+id+`"`, `"`+name+`"`))
	}
	return dir
}

func write(b *testing.B, dir, name, text string) {
	b.Helper()
	if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
		b.Fatal(err)
	}
}

// BenchmarkCheck is the whole check of a line, one job. Divide its time by
// that of BenchmarkValidationAlone at the same size.
func BenchmarkCheck(b *testing.B) {
	for _, n := range []int{1, 100, 2000} {
		b.Run(fmt.Sprintf("plans=%d", n), func(b *testing.B) {
			dir := generate(b, n)
			for b.Loop() {
				benchRun(b, Config{Paths: []string{dir}, Jobs: 1}, n)
			}
			perPlan(b, n)
		})
	}
}

// BenchmarkTables is a line with all its tables, as export makes them, without
// any format.
func BenchmarkTables(b *testing.B) {
	dir := generate(b, 100)
	for b.Loop() {
		benchRun(b, Config{
			Paths: []string{dir}, Jobs: 1, Tables: true, Draft: true,
			Sink: handed.On{},
		}, 100)
	}
	perPlan(b, 100)
}

func benchRun(b *testing.B, c Config, plans int) {
	r, err := Run(context.Background(), c)
	if err != nil || len(r.Plans) != plans {
		b.Fatalf("%d plans, wanted %d: %v", len(r.Plans), plans, err)
	}
}

func perPlan(b *testing.B, n int) {
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/plan")
}

// BenchmarkValidationAlone is the baseline: what gojsonschema alone takes for
// the same plans and their merged sizes, from JSON text to its verdict.
func BenchmarkValidationAlone(b *testing.B) {
	text, _ := schema.Text("plan")
	compiled, err := gojsonschema.NewSchema(gojsonschema.NewBytesLoader(text))
	if err != nil {
		b.Fatal(err)
	}
	documents := merged(b, generate(b, 100))
	for b.Loop() {
		for _, d := range documents {
			if r, err := compiled.Validate(gojsonschema.NewBytesLoader(d)); err != nil || !r.Valid() {
				b.Fatal(err, r)
			}
		}
	}
	perPlan(b, 100)
}

// merged is the JSON text of every plan of a folder and of each of its sizes
// that differs from it.
func merged(b *testing.B, dir string) [][]byte {
	b.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*"+planSuffix))
	if err != nil {
		b.Fatal(err)
	}
	var documents [][]byte
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			b.Fatal(err)
		}
		documents = append(documents, text)
		tree, _ := jsontree.Parse(source.New(f, text), jsontree.DefaultLimits())
		for _, s := range plan.Merge(tree) {
			if s.Same {
				continue
			}
			d, err := json.Marshal(s.Tree.Interface())
			if err != nil {
				b.Fatal(err)
			}
			documents = append(documents, d)
		}
	}
	return documents
}
