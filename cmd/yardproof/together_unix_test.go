//go:build unix

package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"
	"yardproof/pipeline/store"
)

// trials is how many times runs are let loose on one folder: a few, or as many
// as YARDPROOF_TRIALS says.
func trials(t *testing.T) int {
	n, err := strconv.Atoi(os.Getenv("YARDPROOF_TRIALS"))
	if os.Getenv("YARDPROOF_TRIALS") == "" {
		n, err = 9, nil
	}
	if err != nil || n < 1 {
		t.Fatalf("YARDPROOF_TRIALS is %q", os.Getenv("YARDPROOF_TRIALS"))
	}
	return n
}

// TestTogether lets two, three and eight processes export into one folder, the
// same plans and others, shares for gather among them, one in five killed. No
// run that ended with 0 or 1 misses a file that it wrote, the line's files are
// those of the last run, and one run later the ledger names every file.
func TestTogether(t *testing.T) {
	y := newYard(t)
	for i := range trials(t) {
		seed := uint64(i)
		t.Run(fmt.Sprint(i), func(t *testing.T) { y.trial(t, rand.New(rand.NewPCG(seed, 1)), []int{2, 3, 8}[i%3]) })
	}
}

// yard is a line of plans, and the files that each of them and each choice of
// them is exported to by a run that is alone.
type yard struct {
	home  string
	plans []string
	alone map[string]map[string][]byte // files, by the plans of the run
}

const yardPlans = 5

func newYard(t *testing.T) *yard {
	t.Helper()
	y := &yard{home: t.TempDir(), alone: map[string]map[string][]byte{}}
	for i := range yardPlans {
		id := fmt.Sprintf("plan-%d", i)
		y.plans = append(y.plans, id+".plan.json")
		if err := os.WriteFile(filepath.Join(y.home, id+".plan.json"), fmt.Appendf(nil, yardPlan, id, 4+i%2), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	return y
}

// yardPlan is a plan with a finding, or with none, by the number of patches it
// prints.
const yardPlan = `{
  "format": 1, "id": "%s", "title": "Four Fields", "revision": "1", "status": "published",
  "skill": "beginner", "use": "wall", "units": "in", "cautions": ["rotary-cutter", "iron"],
  "seam": { "allowance": "1/4", "stitch": "301" },
  "fabrics": { "field": { "name": "Field", "yardage": { "usable_width": "40" } } },
  "parts": { "patch": { "cut": { "fabric": "field", "square": "10 1/2" } } },
  "layout": { "grid": { "rows": 2, "columns": 2, "blocks": [["patch"]] } },
  "sizes": { "wall": {} },
  "printed": { "wall": { "finished": ["20", "20"], "parts": { "patch": %d }, "fabric": { "field": "5/8 yd" } } }
}
`

// attempt is one process.
type attempt struct {
	plans  []string
	share  bool // with --results
	waits  bool
	delay  time.Duration // before it begins
	killed time.Duration // after so long; 0 for one that may end
	status int           // -1 when it was killed
	ended  time.Time     // when it wrote its report, still holding the lock; zero if it did not
	said   string
}

func (a attempt) whole() bool { return a.status == exitClean || a.status == exitFindings }

func (y *yard) run(t *testing.T, out string, a *attempt) {
	told := filepath.Join(t.TempDir(), "report")
	args := append([]string{"yardproof", "export", "--draft", "--format", "csv", "--format", "json", "--out", out, "--report", "text=" + told}, a.plans...)
	if a.share {
		args = append(args, "--results", out+".results")
	}
	if a.waits {
		args = append(args, "--wait")
	}
	exe, err := os.Executable()
	if err != nil {
		t.Error(err)
		return
	}
	var said bytes.Buffer
	cmd := &exec.Cmd{Path: exe, Args: args, Dir: y.home, Env: append(os.Environ(), "NO_COLOR="), Stderr: &said}
	time.Sleep(a.delay)
	if err := cmd.Start(); err != nil {
		t.Error(err)
		return
	}
	if a.killed > 0 {
		time.AfterFunc(a.killed, func() { cmd.Process.Kill() })
	}
	err = cmd.Wait()
	if _, exited := errors.AsType[*exec.ExitError](err); err != nil && !exited {
		t.Error(err)
	}
	text, _ := os.ReadFile(told)
	a.status, a.said = cmd.ProcessState.ExitCode(), said.String()+string(text)
	if info, err := os.Stat(told); err == nil {
		a.ended = info.ModTime()
	}
}

// trial lets some processes loose on a folder, and looks at what they leave.
func (y *yard) trial(t *testing.T, chance *rand.Rand, processes int) {
	out := filepath.Join(t.TempDir(), "out")
	attempts := make([]attempt, processes)
	var all sync.WaitGroup
	for i := range attempts {
		a := &attempts[i]
		a.plans, a.share, a.waits = y.choose(chance), chance.IntN(4) == 0, chance.IntN(4) != 0
		a.delay = time.Duration(chance.IntN(30*processes)) * time.Millisecond
		if chance.IntN(5) == 0 {
			a.killed = time.Duration(5+chance.IntN(200)) * time.Millisecond
		}
		all.Go(func() { y.run(t, out, a) })
	}
	all.Wait()
	for _, a := range attempts {
		t.Logf("%d plans, share %-5v, waits %-5v: status %d", len(a.plans), a.share, a.waits, a.status)
		y.look(t, out, a)
	}
	y.lookAtLine(t, out, attempts)
	y.close(t, out, attempts)
}

// choose picks the plans of a run: all of them or some.
func (y *yard) choose(chance *rand.Rand) []string {
	var some []string
	for _, p := range y.plans {
		if chance.IntN(2) == 0 {
			some = append(some, p)
		}
	}
	if len(some) == 0 || chance.IntN(3) == 0 {
		return y.plans
	}
	return some
}

// look looks at what one process said and left.
func (y *yard) look(t *testing.T, out string, a attempt) {
	t.Helper()
	switch {
	case a.whole():
		for name, want := range y.files(t, a.plans) {
			if isLine(name) {
				continue
			}
			if got, err := os.ReadFile(filepath.Join(out, name)); err != nil || !bytes.Equal(got, want) {
				t.Errorf("a run of %v ended with %d, and of what it wrote %s is missing or another: %v", a.plans, a.status, name, err)
			}
		}
	case a.killed > 0 && a.status == -1:
	case a.status == exitStopped && !a.waits && strings.Contains(a.said, "another yardproof is writing to"):
	default:
		t.Errorf("a run of %v (share %v, waits %v) ended with %d:\n%s", a.plans, a.share, a.waits, a.status, a.said)
	}
}

// lookAtLine holds the line's files against those of the run that had the lock
// last, unless one was killed that may have had it later.
func (y *yard) lookAtLine(t *testing.T, out string, attempts []attempt) {
	t.Helper()
	var last attempt
	for _, a := range attempts {
		switch {
		case a.share || a.status == exitStopped:
		case !a.whole():
			return
		case a.ended.After(last.ended):
			last = a
		}
	}
	if last.whole() && last.plans != nil {
		y.sameLine(t, out, last.plans)
	}
}

func (y *yard) sameLine(t *testing.T, out string, plans []string) {
	t.Helper()
	for name, want := range y.files(t, plans) {
		if !isLine(name) {
			continue
		}
		if got, err := os.ReadFile(filepath.Join(out, name)); err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s is not that of the last run, of %v: %v", name, plans, err)
		}
	}
}

// close exports one plan more, and holds the folder against what the ledger
// then says of it.
func (y *yard) close(t *testing.T, out string, attempts []attempt) {
	t.Helper()
	last := attempt{plans: y.plans[:1]}
	y.run(t, out, &last)
	for _, a := range append(attempts, last) {
		if a.whole() {
			y.look(t, out, a)
		}
	}
	if !last.whole() {
		t.Fatalf("a run after all others ended with %d:\n%s", last.status, last.said)
	}
	y.sameLine(t, out, last.plans)
	named := ledgerNames(t, filepath.Join(out, store.LedgerName))
	for name := range tree(t, out) {
		switch {
		case named[name], name == store.LedgerName, name == store.LockName:
		default:
			t.Errorf("the ledger does not name %s", name)
		}
		delete(named, name)
	}
	for name := range named {
		t.Errorf("the ledger names %s, which is not there", name)
	}
}

func isLine(name string) bool {
	return strings.HasPrefix(name, "line.") || strings.HasPrefix(name, "line/")
}

// files are what a run of plans writes that is alone.
func (y *yard) files(t *testing.T, plans []string) map[string][]byte {
	t.Helper()
	key := strings.Join(plans, " ")
	if y.alone[key] == nil {
		out := filepath.Join(t.TempDir(), "alone")
		a := attempt{plans: plans}
		if y.run(t, out, &a); !a.whole() {
			t.Fatalf("alone it ends with %d:\n%s", a.status, a.said)
		}
		files := tree(t, out)
		for name := range files {
			if strings.HasPrefix(name, ".") {
				delete(files, name)
			}
		}
		y.alone[key] = files
	}
	return y.alone[key]
}

// tree is all files below a folder, by their slash paths.
func tree(t *testing.T, dir string) map[string][]byte {
	t.Helper()
	files := map[string][]byte{}
	err := filepath.WalkDir(dir, func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		name, err := filepath.Rel(dir, path)
		if err != nil {
			return err
		}
		files[filepath.ToSlash(name)], err = os.ReadFile(path)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// ledgerNames are the files that a ledger names, of plans and of the line.
func ledgerNames(t *testing.T, path string) map[string]bool {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	type exports []struct{ Files []struct{ Name string } }
	var ledger struct {
		Plans []struct{ Exports exports }
		Line  exports
	}
	if err := json.Unmarshal(text, &ledger); err != nil {
		t.Fatal(err)
	}
	all := slices.Clone(ledger.Line)
	for _, p := range ledger.Plans {
		all = append(all, p.Exports...)
	}
	names := map[string]bool{}
	for _, e := range all {
		for _, f := range e.Files {
			names[f.Name] = true
		}
	}
	return names
}
