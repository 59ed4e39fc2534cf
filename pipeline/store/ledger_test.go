package store

import (
	"context"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"yardproof/pipeline/report"
)

// openLedger opens a ledger in dir, beside the plans a and b.
func openLedger(t *testing.T, dir string) *ledger {
	t.Helper()
	l, err := takeLedger(t.Context(), dir, access{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { l.Close() })
	return l
}

// home is a folder with two plans, which is made the current one.
func home(t *testing.T) {
	t.Helper()
	t.Chdir(t.TempDir())
	put(t, "a.plan.json", "{}")
	put(t, "b.plan.json", "{}")
}

func made(format string, files ...string) map[string][]report.File {
	all := map[string][]report.File{}
	for i := 0; i < len(files); i += 2 {
		all[format] = append(all[format], report.File{Name: files[i], Bytes: []byte(files[i+1])})
	}
	return all
}

func (l *ledger) mustWrite(t *testing.T, plan, basis string, files map[string][]report.File) {
	t.Helper()
	if err := l.Write(t.Context(), plan, basis, files); err != nil {
		t.Fatal(err)
	}
}

func (l *ledger) mustFinish(t *testing.T, wantLeft ...string) {
	t.Helper()
	left, err := l.Finish(t.Context(), true)
	if err != nil || strings.Join(left, " ") != strings.Join(wantLeft, " ") {
		t.Errorf("left %q, %v; wanted %q", left, err, wantLeft)
	}
	if err := l.Close(); err != nil {
		t.Error(err)
	}
}

func TestLedgerRemembers(t *testing.T) {
	home(t)
	l := openLedger(t, "out")
	l.mustWrite(t, "a.plan.json", "one", made("csv", "a/x.csv", "1", "a/y.csv", "2"))
	l.mustWrite(t, "", "line", made("csv", "line.csv", "3"))
	if err := l.Keep("a.plan.json", json.RawMessage(`{"known":true}`)); err != nil {
		t.Fatal(err)
	}
	l.mustFinish(t)
	if got := files(t, "out"); got != ".yardproof.json a/x.csv a/y.csv line.csv" {
		t.Errorf("the folder holds %s", got)
	}

	l = openLedger(t, "out")
	for _, c := range []struct {
		plan, basis, format string
		want                bool
	}{
		{"a.plan.json", "one", "csv", true}, {"./a.plan.json", "one", "csv", true}, {"", "line", "csv", true},
		{"a.plan.json", "two", "csv", false}, {"a.plan.json", "one", "json", false}, {"b.plan.json", "one", "csv", false}, {"", "other", "csv", false},
	} {
		if got := l.Current(c.plan, c.basis, []string{c.format}); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
	var kept struct{ Known bool }
	if err := json.Unmarshal(l.Kept("a.plan.json"), &kept); err != nil || !kept.Known {
		t.Errorf("kept %s, %v", l.Kept("a.plan.json"), err)
	}
	put(t, "out/a/y.csv", "mine")
	if l.Current("a.plan.json", "one", []string{"csv"}) {
		t.Error("a changed file is current")
	}
	if err := os.Remove("out/a/y.csv"); err != nil {
		t.Fatal(err)
	}
	if l.Current("a.plan.json", "one", []string{"csv"}) {
		t.Error("a missing file is current")
	}
}

// The ledger says the same wherever yardproof is started.
func TestLedgerFromElsewhere(t *testing.T) {
	home(t)
	l := openLedger(t, "out")
	l.mustWrite(t, "a.plan.json", "one", made("csv", "a.csv", "1"))
	l.mustFinish(t)
	if err := os.Mkdir("below", 0o777); err != nil {
		t.Fatal(err)
	}
	t.Chdir("below")
	if l := openLedger(t, "../out"); !l.Current("../a.plan.json", "one", []string{"csv"}) {
		t.Error("it is not known from another folder")
	}
}

// A run that is killed after some of its files leaves nothing that the next one
// takes for somebody else's, although that one writes other bytes.
func TestKilledBetweenFiles(t *testing.T) {
	home(t)
	l := openLedger(t, "out")
	l.mustWrite(t, "a.plan.json", "one", made("csv", "a/x.csv", "1"))
	l.mustWrite(t, "b.plan.json", "one", made("csv", "b/x.csv", "1"))
	l.mustFinish(t)

	l = openLedger(t, "out")
	l.mustWrite(t, "a.plan.json", "two", made("csv", "a/x.csv", "22", "a/new.csv", "22"))
	// Killed: no Finish. The system closes the files.
	l.Close()
	put(t, "out/a/.new.csv123456", "2") // as it was half written
	put(t, "out/a/.new.csv.bak", "mine")
	put(t, "out/a/.other.csv99", "mine")
	if !strings.Contains(files(t, "out"), journalSuffix) {
		t.Fatal("no journal is left")
	}

	l = openLedger(t, "out")
	if l.Current("a.plan.json", "two", []string{"csv"}) || l.Current("a.plan.json", "one", []string{"csv"}) {
		t.Error("a plan of the killed run is taken for exported")
	}
	l.mustWrite(t, "a.plan.json", "three", made("csv", "a/x.csv", "333"))
	if !l.Current("b.plan.json", "one", []string{"csv"}) {
		t.Error("a plan that the killed run had no time for is lost")
	}
	l.mustFinish(t)
	if got := files(t, "out"); got != ".yardproof.json a/.new.csv.bak a/.other.csv99 a/x.csv b/x.csv" {
		t.Errorf("the folder holds %s", got)
	}
	wantFile(t, "out/a/x.csv", "333")
}

// A plan that was done before the run was killed need not be worked out again;
// of a line that was cut short nothing is believed.
func TestKilledAfterAPlan(t *testing.T) {
	home(t)
	l := openLedger(t, "out")
	l.mustWrite(t, "a.plan.json", "one", made("csv", "a.csv", "1"))
	if err := l.Keep("a.plan.json", json.RawMessage(`"known"`)); err != nil {
		t.Fatal(err)
	}
	name := "out/" + l.journal.name
	l.Close()
	whole, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	for _, cut := range []int{0, 1, 2, len(whole) / 2} {
		put(t, name, string(whole[:len(whole)-cut]))
		l = openLedger(t, "out")
		if got := l.Current("a.plan.json", "one", []string{"csv"}) && string(l.Kept("a.plan.json")) == `"known"`; got != (cut < 2) {
			t.Errorf("%d bytes less: known is %v", cut, got)
		}
		l.Close()
	}
}

// When the system refuses the second of two files, the first is known and the
// plan is not taken for exported.
func TestRefusedBetweenFiles(t *testing.T) {
	home(t)
	put(t, "out/a/z.csv/in-the-way", "")
	l := openLedger(t, "out")
	if err := l.Write(t.Context(), "a.plan.json", "one", made("csv", "a/x.csv", "1", "a/z.csv", "2")); err == nil {
		t.Fatal("a folder was replaced")
	}
	l.mustFinish(t)
	l = openLedger(t, "out")
	if l.Current("a.plan.json", "one", []string{"csv"}) {
		t.Error("a half exported plan is current")
	}
	if err := os.RemoveAll("out/a/z.csv"); err != nil {
		t.Fatal(err)
	}
	l.mustWrite(t, "a.plan.json", "two", made("csv", "a/x.csv", "changed", "a/z.csv", "2"))
	l.mustFinish(t)
	wantFile(t, "out/a/x.csv", "changed")
}

// An interrupted run remembers what it wrote and removes nothing.
func TestInterruptedRun(t *testing.T) {
	home(t)
	l := openLedger(t, "out")
	l.mustWrite(t, "a.plan.json", "one", made("csv", "a.csv", "1"))
	l.mustWrite(t, "b.plan.json", "one", made("csv", "b.csv", "1"))
	l.mustFinish(t)
	if err := os.Remove("b.plan.json"); err != nil {
		t.Fatal(err)
	}
	l = openLedger(t, "out")
	l.mustWrite(t, "a.plan.json", "two", made("csv", "a-two.csv", "2"))
	if left, err := l.Finish(t.Context(), false); err != nil || left != nil {
		t.Errorf("left %v, %v", left, err)
	}
	l.Close()
	if got := files(t, "out"); got != ".yardproof.json a-two.csv a.csv b.csv" {
		t.Errorf("the folder holds %s", got)
	}
	l = openLedger(t, "out")
	if !l.Current("a.plan.json", "two", []string{"csv"}) {
		t.Error("what was written is forgotten")
	}
	l.mustFinish(t)
	if got := files(t, "out"); got != ".yardproof.json a-two.csv" {
		t.Errorf("after the next run the folder holds %s", got)
	}
}

func TestLedgerLeavesOthersAlone(t *testing.T) {
	home(t)
	put(t, "out/a.csv", "theirs")
	put(t, "out/same.csv", "same")
	l := openLedger(t, "out")
	err := l.Write(t.Context(), "a.plan.json", "one", made("csv", "new.csv", "1", "a.csv", "ours"))
	if changed, ok := errors.AsType[ChangedError](err); !ok || changed.Name != "out/a.csv" {
		t.Errorf("%v", err)
	}
	if got := files(t, "out"); got != "a.csv same.csv" {
		t.Errorf("the folder holds %s", got)
	}
	// Equal bytes are nobody's loss.
	l.mustWrite(t, "b.plan.json", "one", made("csv", "same.csv", "same"))
	l.mustFinish(t)
	wantFile(t, "out/a.csv", "theirs")

	l, err = takeLedger(t.Context(), "out", access{overwrite: true})
	if err != nil {
		t.Fatal(err)
	}
	l.mustWrite(t, "a.plan.json", "one", made("csv", "a.csv", "ours"))
	l.mustFinish(t)
	wantFile(t, "out/a.csv", "ours")
}

// Two plans that exchange their ids exchange their files.
func TestExchangedIDs(t *testing.T) {
	home(t)
	l := openLedger(t, "out")
	l.mustWrite(t, "a.plan.json", "one", made("csv", "x/x.csv", "a"))
	l.mustWrite(t, "b.plan.json", "one", made("csv", "y/y.csv", "b"))
	l.mustFinish(t)
	l = openLedger(t, "out")
	l.mustWrite(t, "a.plan.json", "two", made("csv", "y/y.csv", "a"))
	l.mustWrite(t, "b.plan.json", "two", made("csv", "x/x.csv", "b"))
	l.mustFinish(t)
	wantFile(t, "out/x/x.csv", "b")
	wantFile(t, "out/y/y.csv", "a")
}

// One name twice in a run is two plans of one id, whether or not the bytes are
// there already.
func TestLedgerRefusesANameTwice(t *testing.T) {
	home(t)
	for range 2 {
		l := openLedger(t, "out")
		l.mustWrite(t, "a.plan.json", "one", made("csv", "x.csv", "a"))
		if err := l.Write(t.Context(), "b.plan.json", "one", made("csv", "x.csv", "a")); err == nil {
			t.Error("a name was written twice")
		}
		l.mustFinish(t)
	}
}

// A ledger's file that was tampered with leads nowhere outside, and one that
// cannot be read stops the run before it writes.
func TestHostileLedger(t *testing.T) {
	home(t)
	put(t, "precious", "mine")
	put(t, "out/.yardproof.json", `{"format":1,"plans":[{"path":"../gone.plan.json","exports":[{"format":"csv","basis":"x","files":[
		{"name":"../precious","sha256":"`+Sum([]byte("mine"))+`"},{"name":"/etc/passwd","sha256":""},{"name":".yardproof.json","sha256":""}]}]}]}`)
	openLedger(t, "out").mustFinish(t)
	wantFile(t, "precious", "mine")
	for _, bad := range []string{"", "{", `{"format":2}`, `{"format":1,"plans":7}`, "[]"} {
		put(t, "out/.yardproof.json", bad)
		if l, err := takeLedger(t.Context(), "out", access{}); err == nil || !strings.Contains(err.Error(), "out/.yardproof.json") {
			t.Errorf("%q: %v, %v", bad, l, err)
		}
	}
}

// Writing stops with its context, and what was not begun is not recorded.
func TestLedgerIsInterrupted(t *testing.T) {
	home(t)
	l := openLedger(t, "out")
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if err := l.Write(ctx, "a.plan.json", "one", made("csv", "a.csv", "1")); !errors.Is(err, context.Canceled) {
		t.Errorf("%v", err)
	}
	l.mustFinish(t)
	if _, err := os.Stat(filepath.Join("out", "a.csv")); err == nil {
		t.Error("it was written")
	}
	if l := openLedger(t, "out"); l.Current("a.plan.json", "one", []string{"csv"}) {
		t.Error("it is recorded")
	}
}
