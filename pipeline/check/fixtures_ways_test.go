package check_test

import (
	"os"
	"path/filepath"
	"testing"

	"yardproof/pipeline"
	"yardproof/pipeline/diag"
	"yardproof/schema/amend"
	"yardproof/schema/source"
)

// Every way out that is told as a mend or a choice of what the broken plans draw, written into the plan and checked by a run of its own: what it was told for is gone, and
// nothing as grave is new. So no way leads on to another.
func TestWaysMendWhatTheyAreToldFor(t *testing.T) {
	plans, err := filepath.Glob("../../testdata/broken/*.plan.json")
	if err != nil {
		t.Fatal(err)
	}
	followed := 0
	for _, name := range plans {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		before := proved(t, name, text)
		for _, f := range before {
			for _, w := range f.Told() {
				if w.Trial == source.NotTried {
					t.Errorf("%s: %s was not tried", name, w.Sentence())
				}
				if w.Trial != source.Holds {
					if len(w.Edits) > 0 && w.Kind != source.Example {
						t.Errorf("%s: a way of %s is told and was not tried: %s", name, f.Rule, w.Sentence())
					}
					continue
				}
				after, err := amend.Apply(text, w.All())
				if err != nil {
					t.Fatal(err)
				}
				followed++
				for _, g := range diag.Flatten(proved(t, name, after)) {
					if g.Level >= f.Level && !amongst(g, before) {
						t.Errorf("%s: %s leads to %s: %s", name, w.Sentence(), g.Rule, g.Message)
					}
					if g.Rule == f.Rule && g.Place.Pointer == f.Place.Pointer {
						t.Errorf("%s: %s does not mend %s", name, w.Sentence(), f.Message)
					}
				}
			}
		}
	}
	if followed < 30 {
		t.Errorf("only %d ways were followed", followed)
	}
}

// proved is what is found in a text that stands in a plan's place.
func proved(t *testing.T, name string, text []byte) []diag.Finding {
	t.Helper()
	run, err := pipeline.Run(t.Context(), pipeline.Config{Given: &pipeline.Given{Path: name, Text: text}})
	if err != nil {
		t.Fatal(err)
	}
	return run.All()
}

// amongst reports whether a finding is one of those, though its numbers may be others.
func amongst(f diag.Finding, all []diag.Finding) bool {
	for _, g := range diag.Flatten(all) {
		if g.Rule == f.Rule && g.Place.Pointer == f.Place.Pointer {
			return true
		}
	}
	return false
}
