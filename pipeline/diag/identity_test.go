package diag

import (
	"slices"
	"testing"

	"yardproof/schema/source"
)

func finding(rule, plan, pointer string, sizes ...string) Finding {
	return Finding{Rule: rule, Level: Error, Plan: plan, Sizes: sizes, Message: "5 of 6", Place: Place{File: "a.plan.json", Pointer: pointer}}
}

// What a designer does to a plan without touching the fault leaves it the same.
func TestIdentityStays(t *testing.T) {
	f := finding("yield/none", "harbour", "/parts/step", "throw")
	var first Identities
	want := first.Of(f).Fingerprint()
	for name, change := range map[string]func(*Finding){
		"lines move":       func(f *Finding) { f.Place.Start, f.Place.Range = source.Position{Line: 9}, source.Range{Start: 400} },
		"a number changes": func(f *Finding) { f.Message = "4 of 6" },
		"the level":        func(f *Finding) { f.Level = Note },
		"the file's name":  func(f *Finding) { f.Place.File = "b/c.plan.json" },
		"the hint":         func(f *Finding) { f.Hint = "another" },
	} {
		g := f
		change(&g)
		var next Identities
		if next.Of(g).Fingerprint() != want {
			t.Errorf("%s: it is another one", name)
		}
	}
}

func TestIdentitiesDiffer(t *testing.T) {
	all := []Finding{
		finding("yield/none", "harbour", "/parts/step", "throw"),
		finding("yield/few", "harbour", "/parts/step", "throw"),
		finding("yield/none", "steps", "/parts/step", "throw"),
		finding("yield/none", "", "/parts/step", "throw"),
		finding("yield/none", "harbour", "/parts", "throw"),
		finding("yield/none", "harbour", "/parts/step", "throw", "wall"),
		finding("yield/none", "harbour", "/parts/step"),
		finding("yield/none", "harbour", "/parts/step", "throw"), // the first again
		finding("yield/none", "harbour", "/parts/step", "throw"),
	}
	var identities Identities
	var prints []string
	for i, f := range all {
		id := identities.Of(f)
		if want := max(1, i-5); id.Number != want && i != 6 || i == 6 && id.Number != 1 {
			t.Errorf("finding %d has number %d", i, id.Number)
		}
		if slices.Contains(prints, id.Fingerprint()) {
			t.Errorf("finding %d is taken for another", i)
		}
		prints = append(prints, id.Fingerprint())
	}
}
