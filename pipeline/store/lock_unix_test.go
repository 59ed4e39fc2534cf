//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package store

import (
	"context"
	"encoding/json"
	"errors"
	"os"
	"strings"
	"syscall"
	"testing"
)

// A second run is kept out until the first ends, and is told who that is; two
// shares are not kept from each other, but a whole run is kept from them.
func TestOneRunAtATime(t *testing.T) {
	home(t)
	for _, c := range []struct {
		first, second access
		busy          bool
	}{
		{access{}, access{}, true},
		{access{}, access{share: true}, true},
		{access{share: true}, access{}, true},
		{access{share: true}, access{share: true}, false},
	} {
		l, err := takeLedger(t.Context(), "out", c.first)
		if err != nil {
			t.Fatal(err)
		}
		before := files(t, "out")
		second, err := takeLedger(t.Context(), "out", c.second)
		busy, isBusy := errors.AsType[*BusyError](err)
		if isBusy != c.busy || err != nil && !isBusy || files(t, "out") != before {
			t.Errorf("%+v: %v", c, err)
		}
		if isBusy && (busy.Dir != "out" || !strings.Contains(busy.Holder, "process ") || !strings.Contains(busy.Holder, "since 2")) {
			t.Errorf("%+v", busy)
		}
		if second != nil {
			second.Close()
		}
		l.Close()
		if l, err = takeLedger(t.Context(), "out", access{}); err != nil {
			t.Fatal(err)
		}
		l.Close()
		if _, err := os.Lstat("out/" + holderName); err == nil {
			t.Error("a run that has ended still stands as the holder")
		}
	}
}

// A run that waits is told once of whom, goes on when the other ends, and can
// be interrupted.
func TestWaiting(t *testing.T) {
	home(t)
	l := openLedger(t, "out")
	waiting := make(chan string, 2)
	access := access{wait: func(holder string) { waiting <- holder }}
	ctx, cancel := context.WithCancel(t.Context())
	go func() {
		<-waiting
		cancel()
	}()
	if _, err := takeLedger(ctx, "out", access); !errors.Is(err, context.Canceled) {
		t.Errorf("interrupted: %v", err)
	}
	closed := make(chan struct{})
	go func() {
		defer close(closed)
		<-waiting
		l.Close()
	}()
	second, err := takeLedger(t.Context(), "out", access)
	if err != nil {
		t.Fatal(err)
	}
	<-closed
	second.Close()
	if len(waiting) > 0 {
		t.Error("it was told twice")
	}
}

// Whatever stands where the holder should is printed on one line, and changes
// nothing.
func TestHostileHolder(t *testing.T) {
	home(t)
	l := openLedger(t, "out")
	for text, want := range map[string]string{
		"a\n::error::b\x1b[2J\u202e\xff": `a\n::error::b\x1b[2J\u202e\xff`,
		"":                               "",
		strings.Repeat("x", 1<<20):       strings.Repeat("x", mostHolder),
	} {
		put(t, "out/"+holderName, text)
		_, err := takeLedger(t.Context(), "out", access{})
		if busy, ok := errors.AsType[*BusyError](err); !ok || busy.Holder != want {
			t.Errorf("%v", err)
		}
	}
	os.Remove("out/" + holderName)
	if err := syscall.Mkfifo("out/"+holderName, 0o666); err != nil {
		t.Skip(err)
	}
	_, err := takeLedger(t.Context(), "out", access{})
	if busy, ok := errors.AsType[*BusyError](err); !ok || busy.Holder != "" {
		t.Errorf("%v", err)
	}
	l.Close()
	put(t, "precious", "mine")
	os.Remove("out/" + holderName)
	if err := os.Symlink("../precious", "out/"+holderName); err != nil {
		t.Fatal(err)
	}
	openLedger(t, "out").Close()
	wantFile(t, "precious", "mine")
}

// The lock's file is opened inside the folder and never through a link, and
// keeps what somebody wrote into it.
func TestHostileLock(t *testing.T) {
	home(t)
	put(t, "precious", "mine")
	put(t, "out/"+LockName, "mine")
	openLedger(t, "out").Close()
	wantFile(t, "out/"+LockName, "mine")
	put(t, "out/inside", "mine")
	for name, make := range map[string]func(string) error{
		"a link out":       func(at string) error { return os.Symlink("../precious", at) },
		"a link":           func(at string) error { return os.Symlink("inside", at) },
		"a link to a hole": func(at string) error { return os.Symlink("hole", at) },
		"a folder":         func(at string) error { return os.Mkdir(at, 0o777) },
		"a pipe":           func(at string) error { return syscall.Mkfifo(at, 0o666) },
	} {
		os.Remove("out/" + LockName)
		if err := make("out/" + LockName); err != nil {
			t.Fatal(err)
		}
		if _, err := takeLedger(t.Context(), "out", access{}); err == nil || !strings.Contains(err.Error(), "lock out/"+LockName) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if got := files(t, "out"); got != "inside" {
		t.Errorf("the folder holds %s", got)
	}
	wantFile(t, "precious", "mine")
}

// A ledger or journal that is a pipe keeps nobody waiting.
func TestPipesInTheFolder(t *testing.T) {
	home(t)
	openLedger(t, "out").Close()
	if err := syscall.Mkfifo("out/"+journalPrefix+"0"+journalSuffix, 0o666); err != nil {
		t.Skip(err)
	}
	openLedger(t, "out").Close()
	if err := syscall.Mkfifo("out/"+LedgerName, 0o666); err != nil {
		t.Fatal(err)
	}
	if _, err := takeLedger(t.Context(), "out", access{}); err == nil || !strings.Contains(err.Error(), "not a regular file") {
		t.Error(err)
	}
}

// share opens a folder for one of several runs.
func share(t *testing.T) *ledger {
	t.Helper()
	l, err := takeLedger(t.Context(), "out", access{share: true})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { l.Close() })
	return l
}

func (l *ledger) mustPart(t *testing.T) {
	t.Helper()
	if err := errors.Join(l.EndShared(), l.Close()); err != nil {
		t.Fatal(err)
	}
}

// Shares leave word of what they wrote, also of what they found written, for
// the run that comes after them; of what was cut short nothing is left.
func TestSharesAreRemembered(t *testing.T) {
	home(t)
	a, b, killed := share(t), share(t), share(t)
	killed.mustWrite(t, "c.plan.json", "one", made("csv", "c.csv", "3"))
	a.mustWrite(t, "a.plan.json", "one", made("csv", "a.csv", "1"))
	b.mustWrite(t, "b.plan.json", "one", made("csv", "b.csv", "2"))
	b.mustWrite(t, "a.plan.json", "one", made("csv", "a.csv", "1")) // which is there
	if err := b.Keep("b.plan.json", json.RawMessage(`"known"`)); err != nil {
		t.Fatal(err)
	}
	killed.Close()
	a.Close() // killed, too
	b.mustPart(t)

	l := openLedger(t, "out")
	for plan, want := range map[string]bool{"a.plan.json": true, "b.plan.json": true, "c.plan.json": false} {
		if got := l.Current(plan, "one", []string{"csv"}); got != want {
			t.Errorf("%s is current: %v", plan, got)
		}
	}
	if string(l.Kept("b.plan.json")) != `"known"` {
		t.Error("what was kept is lost")
	}
	l.mustFinish(t)
	if got := files(t, "out"); got != ".yardproof.json a.csv b.csv" {
		t.Errorf("the folder holds %s", got)
	}
}

// Shares that find everything written leave no further journal.
func TestSharesAgain(t *testing.T) {
	home(t)
	for range 3 {
		l := share(t)
		l.mustWrite(t, "a.plan.json", "one", made("csv", "a.csv", "1"))
		if err := l.Keep("a.plan.json", json.RawMessage(`"known"`)); err != nil {
			t.Fatal(err)
		}
		l.mustPart(t)
		if got := files(t, "out"); strings.Count(got, journalSuffix) != 1 {
			t.Errorf("the folder holds %s", got)
		}
	}
}

// A share does not believe the journal of another, which may be alive: what
// that one wrote is not replaced.
func TestSharesKeepApart(t *testing.T) {
	home(t)
	a := share(t)
	a.mustWrite(t, "a.plan.json", "one", made("csv", "x.csv", "a"))
	b := share(t)
	err := b.Write(t.Context(), "b.plan.json", "one", made("csv", "x.csv", "b"))
	if _, changed := errors.AsType[ChangedError](err); !changed {
		t.Errorf("%v", err)
	}
	a.mustPart(t)
	b.mustPart(t)
	wantFile(t, "out/x.csv", "a")
}

// Of two shares that wrote one plan as it was at different times, whose files
// are mixed on the disk, nothing is taken for exported and nothing is lost.
func TestMixedShares(t *testing.T) {
	home(t)
	a, b := share(t), share(t)
	a.mustWrite(t, "a.plan.json", "one", made("csv", "x.csv", "1", "y.csv", "1"))
	a.mustPart(t)
	b.overwrite = true
	b.mustWrite(t, "a.plan.json", "two", made("csv", "x.csv", "2", "y.csv", "2"))
	b.mustPart(t)
	put(t, "out/y.csv", "1")
	l := openLedger(t, "out")
	if l.Current("a.plan.json", "one", []string{"csv"}) || l.Current("a.plan.json", "two", []string{"csv"}) {
		t.Error("mixed files are current")
	}
	l.mustWrite(t, "b.plan.json", "one", made("csv", "b.csv", "1"))
	l.mustFinish(t)
	if got := files(t, "out"); got != ".yardproof.json b.csv x.csv y.csv" {
		t.Errorf("the folder holds %s", got)
	}
	l = openLedger(t, "out")
	l.mustWrite(t, "a.plan.json", "three", made("csv", "x.csv", "3"))
	l.mustFinish(t)
	if got := files(t, "out"); got != ".yardproof.json b.csv x.csv" {
		t.Errorf("the folder holds %s", got)
	}
}
