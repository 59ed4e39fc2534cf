package store

import (
	"errors"
	"os"
	"strings"
	"testing"

	"yardproof/pipeline/report"
)

// open opens an output folder for a run that writes the ids of plans, and the
// number of plans of the line.
func open(t *testing.T, m Mode) *Output {
	t.Helper()
	o, err := Open(t.Context(), "out", []Format{{
		Name: "txt",
		Plan: func(p *report.Plan) ([]report.File, error) {
			return []report.File{{Name: p.ID + ".txt", Bytes: []byte(p.ID)}}, nil
		},
		Line: func(r *report.Run) ([]report.File, error) {
			return []report.File{{Name: "line.txt", Bytes: []byte{byte('0' + len(r.Plans))}}}, nil
		},
	}}, m)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { o.Close() })
	return o
}

func plan(file, id string) *report.Plan {
	return &report.Plan{Outcome: report.Outcome{File: file, ID: id}, Basis: "of " + id}
}

// export writes a plan and the line, keeps what was found, and ends the run.
func export(t *testing.T, o *Output, file, id string) {
	t.Helper()
	o.Begin([]string{file})
	if err := o.Plan(t.Context(), plan(file, id)); err != nil {
		t.Fatal(err)
	}
	if err := o.Keep(&Result{Format: ResultFormat, Version: "v1", File: file, ID: id, Exported: true}); err != nil {
		t.Fatal(err)
	}
	if err := o.Line(t.Context(), &report.Run{Plans: []report.Outcome{{}}, Basis: "line"}); err != nil {
		t.Fatal(err)
	}
	if left, err := o.End(t.Context(), true); err != nil || len(left.Changed) != 0 {
		t.Fatal(left, err)
	}
	if err := o.Close(); err != nil {
		t.Fatal(err)
	}
}

// What one run found and wrote is there for the next, unless that one wants
// everything afresh.
func TestOutputRemembers(t *testing.T) {
	home(t)
	export(t, open(t, Mode{}), "a.plan.json", "a")
	if got := files(t, "out"); got != ".yardproof.json a.txt line.txt" {
		t.Errorf("the folder holds %s", got)
	}
	for _, fresh := range []bool{false, true} {
		o := open(t, Mode{Fresh: fresh})
		known := o.Has("a.plan.json", "of a") && o.Has("", "line") && o.Recall("a.plan.json") != nil && o.Recall("a.plan.json").ID == "a"
		if any := o.Has("a.plan.json", "of a") || o.Has("", "line") || o.Recall("a.plan.json") != nil; any == fresh || known == fresh {
			t.Errorf("fresh %v: something is known: %v, all of it: %v", fresh, any, known)
		}
		if o.Has("a.plan.json", "of b") || o.Has("", "of a") || o.Recall("b.plan.json") != nil {
			t.Errorf("fresh %v: what was never written is known", fresh)
		}
		o.Close()
	}
}

// A run that is one of several writes a result of each plan with the files that
// were written, and nothing of the line; the next run knows the plan.
func TestOutputOfOneOfSeveral(t *testing.T) {
	home(t)
	export(t, open(t, Mode{Results: "results"}), "a.plan.json", "a")
	if got := files(t, "out"); !strings.HasSuffix(got, journalSuffix+" a.txt") {
		t.Errorf("the folder holds %s", got)
	}
	name := resultName("a.plan.json")
	if got := files(t, "results"); got != name {
		t.Fatalf("the results are %s", got)
	}
	text, err := os.ReadFile("results/" + name)
	if err != nil {
		t.Fatal(err)
	}
	var g Gathered
	if err := g.Add(name, text, "v1"); err != nil || g.results["a.plan.json"].Exports[0].Files[0].Name != "a.txt" {
		t.Errorf("%v: %+v", err, g.results)
	}
	o := open(t, Mode{})
	if o.Has("", "line") {
		t.Error("the line is known")
	}
	if !o.Has("a.plan.json", "of a") {
		t.Error("the plan is not known")
	}
}

// No file that the run reads is written, whatever link leads to it.
func TestOutputSparesWhatIsRead(t *testing.T) {
	home(t)
	put(t, "out/a.txt", "mine")
	symlink(t, "out/a.txt", "prices.csv")
	o := open(t, Mode{Overwrite: true})
	o.Begin([]string{"prices.csv"})
	err := o.Plan(t.Context(), plan("a.plan.json", "a"))
	if err == nil || !strings.Contains(err.Error(), "out/a.txt: it is one of the files that the run reads") {
		t.Error(err)
	}
	wantFile(t, "out/a.txt", "mine")
	if err := o.Plan(t.Context(), plan("b.plan.json", "b")); err != nil {
		t.Error(err)
	}
	wantFile(t, "out/b.txt", "b")
}

// Results of one line are gathered once each; two that differ are not.
func TestGathered(t *testing.T) {
	home(t)
	one := Result{Format: ResultFormat, Version: "v1", File: "a.plan.json", ID: "a", Exported: true,
		Exports: []report.Export{{Format: "txt", Basis: "of a", Files: []report.Output{{Name: "a.txt", SHA256: Sum([]byte("a"))}}}}}
	other := one
	other.ID = "b"
	var g Gathered
	for _, r := range []Result{one, one} {
		if err := g.Add("r", r.Standing(), "v1"); err != nil {
			t.Fatal(err)
		}
	}
	if err := g.Add("r", other.Standing(), "v1"); err != (DifferentError{"a.plan.json"}) {
		t.Errorf("two that differ: %v", err)
	}
	if err := g.Add("r", one.Standing(), "v2"); err != (OtherVersion{"v1"}) {
		t.Errorf("another version: %v", err)
	}
	if got := g.Plans(); len(got) != 1 || got[0] != "a.plan.json" {
		t.Errorf("plans %v", got)
	}
	put(t, "out/a.txt", "a")
	o := open(t, Mode{})
	m := g.Into(o)
	if err := m.Keep(m.Recall("a.plan.json")); err != nil {
		t.Fatal(err)
	}
	if left, err := o.End(t.Context(), true); err != nil || len(left.Changed) != 0 {
		t.Error(left, err)
	}
	o.Close()
	if o = open(t, Mode{}); !o.Has("a.plan.json", "of a") {
		t.Error("what was gathered is not known")
	}
	o.Close()
	put(t, "out/a.txt", "mine")
	m = g.Into(open(t, Mode{}))
	if _, changed := errors.AsType[ChangedError](m.Keep(m.Recall("a.plan.json"))); !changed {
		t.Error("a file that somebody changed is taken over")
	}
}
