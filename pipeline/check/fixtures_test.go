package check_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"yardproof/pipeline"
	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/schema/plan"
	"yardproof/scripts/fixtures/fixture"
)

const fixtures = "../../testdata/checks"

// TestFixtures holds every rule against its folders in testdata/checks: bad
// fires it and nothing else, good fires nothing, and edge-* show what is said
// on both sides of a limit.
func TestFixtures(t *testing.T) {
	folders, err := filepath.Glob(filepath.Join(fixtures, "*", "*", "*"))
	if err != nil || len(folders) == 0 {
		t.Fatalf("no fixtures: %v", err)
	}
	for _, folder := range folders {
		if info, err := os.Stat(folder); err != nil || !info.IsDir() {
			continue
		}
		name, _ := filepath.Rel(fixtures, folder)
		t.Run(filepath.ToSlash(name), func(t *testing.T) {
			checkFixture(t, folder, filepath.ToSlash(filepath.Dir(name)), filepath.Base(name))
		})
	}
}

// TestCatalogue comes after the fixtures, whose findings it shows: -update writes both
// in one run.
func TestCatalogue(t *testing.T) { check.Catalogued(t) }

func checkFixture(t *testing.T, folder, rule, kind string) {
	c, ok := check.Find(rule)
	if !ok {
		t.Fatalf("there is no rule %s", rule)
	}
	want, err := filepath.Abs(folder + ".want")
	if err != nil {
		t.Fatal(err)
	}
	found := line(t, folder, c.Thorough)
	switch {
	case kind == "good":
		if len(found) > 0 {
			t.Errorf("good is not clean:\n%s", check.Short(found))
		}
		return
	case kind == "bad":
		onlyRule(t, rule, found)
	case !strings.HasPrefix(kind, "edge-"):
		t.Fatalf("a fixture is bad, good or edge-..., not %s", kind)
	}
	check.Golden(t, want, check.Short(found))
}

func onlyRule(t *testing.T, rule string, found []diag.Finding) {
	t.Helper()
	if len(found) == 0 {
		t.Errorf("bad fires nothing")
	}
	for _, f := range found {
		if f.Rule != rule {
			t.Errorf("bad fires %s too", f.Rule)
		}
	}
}

// line checks all plans of a folder together, as a run of the program does.
func line(t *testing.T, folder string, thorough bool) []diag.Finding {
	t.Helper()
	whole := t.TempDir()
	if err := fixture.Write(fixtures, folder, whole); err != nil {
		t.Fatal(err)
	}
	t.Chdir(whole)
	run, err := pipeline.Run(t.Context(), pipeline.Config{Paths: []string{"."}, Tables: thorough, Today: plan.Date{Year: 2027, Month: 3, Day: 31}})
	if err != nil {
		t.Fatal(err)
	}
	return run.All()
}
