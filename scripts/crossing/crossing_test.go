package main

import (
	"context"
	"crypto/sha256"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"yardproof/exporters"
	"yardproof/pipeline"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store/handed"
	"yardproof/scripts/crossing/crossed"
)

// What is found in each crossing and a digest of its tables and pictures are recorded: a
// place that forgets an operation shows here, whatever other tests look at.
func TestCrossing(t *testing.T) {
	recorded, err := filepath.Abs(filepath.Join("testdata", "found.golden"))
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir()) // tables name the plan's file, which is to be the same in every run
	if err := write("plans"); err != nil {
		t.Fatal(err)
	}
	var (
		lock    sync.Mutex
		digests = map[string]string{}
	)
	run, err := pipeline.Run(context.Background(), pipeline.Config{
		Paths: []string{"plans"}, Tables: true, Draft: true,
		Sink: handed.On{EachPlan: func(_ context.Context, p *report.Plan) error {
			d, err := digest(p)
			lock.Lock()
			defer lock.Unlock()
			digests[filepath.Base(p.File)] = d
			return err
		}},
	})
	if err != nil {
		t.Fatal(err)
	}
	found := map[string][]string{}
	for _, f := range run.All() {
		name := filepath.Base(f.Place.File)
		found[name] = append(found[name], fmt.Sprintf("  %s: %s [%s]\n", f.Level, f.Message, f.Rule))
		for _, e := range f.Follows {
			found[name] = append(found[name], fmt.Sprintf("    may follow: %s [%s]\n", e.Message, e.Rule))
		}
	}
	var b strings.Builder
	for _, p := range crossed.Plans() {
		file := p.Name() + ".plan.json"
		fmt.Fprintf(&b, "%s: %s\n", p.Name(), digests[file])
		b.WriteString(strings.Join(found[file], ""))
		delete(found, file)
	}
	if len(found) > 0 {
		t.Errorf("findings elsewhere: %v", found)
	}
	check(t, recorded, b.String())
}

// The flag is set once, by the testing package, before any test runs.
var update = flag.Bool("update", false, "record anew what is found")

func check(t *testing.T, recorded, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(recorded, []byte(got), 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(recorded)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); d != "" {
		t.Errorf("%s differs; -update records it anew, scripts/same.sh shows what is behind a digest (-want +got):\n%s", recorded, d)
	}
}

// digest names the bytes of a plan's tables and pictures.
func digest(p *report.Plan) (string, error) {
	sum := sha256.New()
	for _, name := range []string{"json", "svg"} {
		format, ok := exporters.Export(name)
		if !ok {
			return "", fmt.Errorf("no format %s", name)
		}
		files, err := format.Plan(p)
		if err != nil {
			return "", err
		}
		for _, f := range files {
			fmt.Fprintf(sum, "%s %d\n", f.Name, len(f.Bytes))
			sum.Write(f.Bytes)
		}
	}
	return fmt.Sprintf("%x", sum.Sum(nil)[:6]), nil
}

// Every plan has a name of its own.
func TestNames(t *testing.T) {
	var names []string
	for _, p := range crossed.Plans() {
		names = append(names, p.Name())
	}
	slices.Sort(names)
	if n := len(slices.Compact(slices.Clone(names))); n != len(names) {
		t.Errorf("%d names for %d plans", n, len(names))
	}
}
