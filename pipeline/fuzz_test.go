package pipeline

import (
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"yardproof/pipeline/store"
	"yardproof/scripts/fixtures/fixture"
)

// FuzzPlan takes any bytes for a plan, all the way to its tables: whatever they
// are, yardproof must not crash, and what it says must point into the file.
func FuzzPlan(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, text []byte) {
		p := &planFile{path: "fuzz.plan.json", name: "fuzz.plan.json"}
		l := &line{Config: Config{Tables: true, Draft: true}, plans: []*planFile{p}, solved: newSolved(t.Context())}
		if p.take(text); !p.done {
			l.compareIDs()
			l.work(t.Context(), p)
		}
		if !p.done {
			t.Fatal("the plan was not dealt with")
		}
		for _, found := range p.outcome.Findings {
			if found.Rule == "run/crash" {
				t.Fatal(found.Message)
			}
			if r := found.Place.Range; r.Start < 0 || r.End < r.Start || r.End > len(text) {
				t.Fatalf("%s points at %v of %d bytes", found.Rule, r, len(text))
			}
		}
	})
}

// FuzzUnusable takes any bytes for a file that should hold a result, and tells
// what is wrong with it.
func FuzzUnusable(f *testing.F) {
	f.Add([]byte("{\n \"format\": 1,\n nothing }"))
	f.Add([]byte("\xff\r\u2028{"))
	f.Fuzz(func(t *testing.T, text []byte) {
		if _, err := store.ReadResult("r", text, "v1"); err != nil {
			if found := unusable("r", text, err); found.Rule != "run/no-result" || found.Message == "" {
				t.Fatalf("%+v", found)
			}
		}
	})
}

// seeds are the plans that the project ships, good and bad.
func seeds(f *testing.F) {
	f.Add([]byte(named(sound, "four-fields")))
	whole := f.TempDir()
	if err := fixture.Write("../testdata/checks", "../testdata/checks", whole); err != nil {
		f.Fatal(err)
	}
	for _, root := range []string{"../testdata/broken", "../testdata/line", whole} {
		err := filepath.WalkDir(root, func(path string, e fs.DirEntry, err error) error {
			if err != nil || !isPlan(path) {
				return err
			}
			b, err := os.ReadFile(path)
			f.Add(b)
			return err
		})
		if err != nil {
			f.Fatal(err)
		}
	}
}
