package pipeline

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/schema/amend"
	"yardproof/schema/source"
)

// supper is a plan of testdata whose print says 72 of a part where 71 are needed.
const supper = "../testdata/broken/counts-by-colour.plan.json"

func readPlan(t *testing.T, path string) string {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// proved is a plan's work, done, with the ways out of what was found tried.
func proved(t *testing.T, text string, allowed budgets) *work {
	t.Helper()
	p := &planFile{path: "a.plan.json", name: "a.plan.json", given: true, bytes: []byte(text)}
	l := newLine(Config{})
	l.solved, l.plans, l.budgets = newSolved(t.Context()), []*planFile{p}, allowed
	p.take(p.bytes)
	w := &work{line: l, planFile: p}
	if err := w.prove(t.Context()); err != nil {
		t.Fatal(err)
	}
	return w
}

func allowed() budgets { return newLine(Config{}).budgets }

// ofRule is the one finding of a rule.
func ofRule(t *testing.T, findings []diag.Finding, rule string) diag.Finding {
	t.Helper()
	for _, f := range findings {
		if f.Rule == rule {
			return f
		}
	}
	t.Fatalf("no finding of %s in %v", rule, findings)
	return diag.Finding{}
}

// What is told to be written is exactly what mends the plan.
func TestWayIsTried(t *testing.T) {
	text := readPlan(t, supper)
	w := proved(t, text, allowed())
	f := ofRule(t, w.found, "printed/parts")
	way, ok := mends(f)
	if !ok || f.Hint != "print 71, or change the layout" {
		t.Fatalf("the hint is %q, its ways %+v", f.Hint, f.Ways)
	}
	after, err := amend.Apply([]byte(text), way.All())
	if want := strings.Replace(text, `"petal": 72 }`, `"petal": 71 }`, 1); err != nil || string(after) != want {
		t.Fatalf("%v; the plan is then\n%s", err, after)
	}
	if left := proved(t, string(after), allowed()); len(left.found)+len(left.reading) > 0 {
		t.Errorf("then it is found: %v", left.found)
	}
}

func TestHeavyPlanIsNotTried(t *testing.T) {
	little := allowed()
	little.trials = 1000
	f := ofRule(t, proved(t, readPlan(t, supper), little).found, "printed/parts")
	if f.Hint != "print 71, or change the layout (not tried)" || f.Ways[0].Trial != source.NotTried {
		t.Errorf("the hint is %q, its ways %+v", f.Hint, f.Ways)
	}
}

// wayOf is a plan and a finding in it with a way that puts a value in the place of one.
func wayOf(t *testing.T, text, rule, old, value string) (*trial, diag.Finding) {
	t.Helper()
	w := proved(t, text, allowed())
	f := ofRule(t, diag.Flatten(w.found), rule)
	at := strings.Index(text, old)
	if at < 0 {
		t.Fatalf("%s is not in the plan", old)
	}
	f.Ways = []diag.Way{{Kind: source.Mend, Edits: []diag.Edit{
		amend.Of(w.file, w.tree).Put(source.Range{Start: at, End: at + len(old)}, value),
	}}}
	return newTrial(w), f
}

func TestWayThatMendsNothingFails(t *testing.T) {
	trial, f := wayOf(t, readPlan(t, supper), "printed/parts", `72, "petal"`, `71, "petal"`)
	trial.tryAll(t.Context(), &f)
	if f.Ways[0].Trial != source.Fails || strings.Contains(f.Hint, "71") || f.Hint == "" {
		t.Errorf("%+v", f)
	}
}

// A way that mends its finding and brings another as grave takes along what mends
// that.
func TestWayTakesAlongWhatHasToFollow(t *testing.T) {
	text := readPlan(t, supper) // with as many rows that 72 are right of both, and the size is not
	trial, f := wayOf(t, text, "printed/parts", `"rows": 13`, `"rows": 14`)
	trial.tryAll(t.Context(), &f)
	if f.Ways[0].Trial != source.Fails {
		t.Errorf("14 rows are told: %+v", f.Ways)
	}
	text = strings.Replace(text, `"sheaf": 72, "petal": 72`, `"sheaf": 71, "petal": 71`, 1)
	trial, f = wayOf(t, text, "printed/parts", `"sheaf", "petal"], ["petal", "sheaf"`, `"petal", "sheaf"], ["sheaf", "petal"`)
	trial.tryAll(t.Context(), &f)
	w := f.Ways[0]
	if w.Trial != source.Holds || len(w.Also) != 1 || w.Also[0].Text != "72" {
		t.Errorf("%+v", f.Ways)
	}
}

// Plans without findings, and those whose findings have no ways, are read once.
func TestCleanPlanPaysNothing(t *testing.T) {
	plans, err := filepath.Glob("../testdata/line/*.plan.json")
	if err != nil || len(plans) == 0 {
		t.Fatal(plans, err)
	}
	clean := 0
	for _, name := range plans {
		w := proved(t, readPlan(t, name), allowed())
		if anyWays(w.found) || anyWays(w.reading) {
			continue // what its project accepts
		}
		if clean++; w.tried > 0 {
			t.Errorf("%s was derived %d times more", name, w.tried)
		}
	}
	if clean < len(plans)/2 {
		t.Errorf("only %d of %d demo plans are clean", clean, len(plans))
	}
}

// mends is the first of a finding's ways that was tried and holds.
func mends(f diag.Finding) (diag.Way, bool) {
	for _, w := range f.Ways {
		if w.Trial == source.Holds {
			return w, true
		}
	}
	return diag.Way{}, false
}
