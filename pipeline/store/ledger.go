package store

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"reflect"
	"slices"
	"sync"

	"yardproof/pipeline/report"
)

// ledger is an output folder that knows what was written to it: which files, of
// which plan, and from what. It replaces and removes only files that are as
// they were written, and remembers for the next run whatever it is handed.
// Several goroutines may use it at the same time.
//
// Files are written first and the ledger's own file last. What was written in
// between, should the program be killed, stands in a journal.
//
// One run at a time may write the ledger, or several shares of one run that
// leave it as it is: the folder is locked from before the ledger is read until
// it is closed. What journals of other runs say is believed only by a run that
// is alone, for then whoever wrote them has ended.
type ledger struct {
	folder    *Folder
	lock      *lock
	at        string // the folder's whole path
	overwrite bool
	alone     bool                       // no other run is in the folder, and none can come
	plans     map[string]entry           // by the plan's path, as recorded
	line      []report.Export            // of the whole line, as recorded
	owned     map[string]map[string]bool // sums that a name may have on the disk and be ours
	begun     []string                   // files that runs which were killed were about to write
	journal   *journal
	earlier   []byte // the ledger's file as it was

	mu      sync.Mutex
	now     map[string]entry // by the plan's path, of this run
	wrote   bool             // something was
	told    map[string]bool  // plans that the journal says are done
	lineNow []report.Export  // nil when the run wrote nothing of the line
}

// entry is what the ledger knows of one plan.
type entry struct {
	Path    string          `json:"path"` // of the plan, from the output folder
	Exports []report.Export `json:"exports,omitempty"`
	Kept    json.RawMessage `json:"kept,omitempty"` // whatever it was handed to keep
}

// ChangedError is the error of a file that was left as it is, because it is not
// as the ledger wrote it.
type ChangedError struct{ Name string }

func (e ChangedError) Error() string {
	return fmt.Sprintf("%s was not written by yardproof, or was changed since, and was left as it is", e.Name)
}

// takeLedger opens an output folder, creating it if it does not exist, once no
// other run is in the way.
func takeLedger(ctx context.Context, dir string, a access) (*ledger, error) {
	folder, err := OpenFolder(dir)
	if err != nil {
		return nil, err
	}
	lock, err := takeLock(ctx, folder.root, filepath.ToSlash(dir), a)
	if err != nil {
		return nil, errors.Join(err, folder.Close())
	}
	at, err := filepath.Abs(dir)
	if err != nil {
		return nil, errors.Join(fmt.Errorf("find output folder %s: %w", dir, cause(err)), lock.release(), folder.Close())
	}
	l := &ledger{
		folder: folder, lock: lock, at: at, overwrite: a.overwrite, alone: lock.held() && !a.share, plans: map[string]entry{},
		owned: map[string]map[string]bool{}, now: map[string]entry{}, told: map[string]bool{}, journal: newJournal(folder.root),
	}
	if err := l.load(); err != nil {
		return nil, errors.Join(err, lock.release(), folder.Close())
	}
	return l, nil
}

// Locked reports whether the lock keeps other runs out of the folder. Where the
// file system has no locks nothing is removed from the folder.
func (l *ledger) Locked() bool { return l.lock.held() }

// EndShared ends a run that shares the folder with others at work. It does not
// write the ledger's file: a later run does that. Until then the journal says what
// was written.
func (l *ledger) EndShared() error {
	for _, p := range slices.Sorted(maps.Keys(l.now)) {
		e := l.now[p]
		if e.Exports == nil || l.told[p] || reflect.DeepEqual(e.Exports, l.plans[p].Exports) {
			continue
		}
		e.Path = p
		if err := l.journal.done(e); err != nil {
			return fmt.Errorf("write in %s: %w", filepath.ToSlash(l.folder.name), cause(err))
		}
	}
	return l.journal.close()
}

// Close closes the folder and releases its lock. What was not finished stays in
// the journal.
func (l *ledger) Close() error {
	return errors.Join(l.journal.close(), l.lock.release(), l.folder.Close())
}

// Kept is what Keep recorded of a plan; nil if it recorded nothing.
func (l *ledger) Kept(plan string) json.RawMessage { return l.plans[l.path(plan)].Kept }

// Current reports whether a plan's files in all these formats were made from this
// basis, and are on the disk as they were written. An empty plan stands for the
// line.
func (l *ledger) Current(plan, basis string, formats []string) bool {
	exports := l.line
	if plan != "" {
		exports = l.plans[l.path(plan)].Exports
	}
	for _, f := range formats {
		i := slices.IndexFunc(exports, func(e report.Export) bool { return e.Format == f && e.Basis == basis })
		if i < 0 || !l.whole(exports[i]) {
			return false
		}
	}
	l.set(plan, following(exports, basis))
	return true
}

// following are the exports that follow from a basis. The others are out of date.
func following(exports []report.Export, basis string) []report.Export {
	return slices.DeleteFunc(slices.Clone(exports), func(e report.Export) bool { return e.Basis != basis })
}

func (l *ledger) whole(e report.Export) bool {
	for _, f := range e.Files {
		if sum, err := l.sum(f.Name); err != nil || sum != f.SHA256 {
			return false
		}
	}
	return true
}

// Write writes the files of a plan, by format; of the line where the plan is
// empty. If one of them may not be replaced it writes none and returns a
// *ChangedError. A file that is on the disk already, byte for byte, is not
// written again.
func (l *ledger) Write(ctx context.Context, plan, basis string, files map[string][]report.File) error {
	var todo []report.File
	made := []report.Export{}
	for _, format := range slices.Sorted(maps.Keys(files)) {
		e := report.Export{Format: format, Basis: basis, Files: []report.Output{}}
		for _, f := range files[format] {
			sum := Sum(f.Bytes)
			e.Files = append(e.Files, report.Output{Name: f.Name, SHA256: sum})
			there, err := l.allowed(f.Name, sum)
			if err != nil {
				return err
			}
			if !there {
				todo = append(todo, f)
			} else if !l.folder.claim(f.Name) {
				return fmt.Errorf("write %s: it was already written in this run", l.shown(f.Name))
			}
		}
		made = append(made, e)
	}
	if err := l.journal.add(todo); err != nil {
		return fmt.Errorf("write %s: %w", l.shown(todo[0].Name), cause(err))
	}
	for i, f := range todo {
		if err := l.folder.Write(ctx, f); err != nil {
			l.broken(plan, made, todo[i:])
			return err
		}
		l.mu.Lock()
		l.wrote = true
		l.mu.Unlock()
	}
	l.set(plan, append(made, slices.DeleteFunc(following(l.recorded(plan), basis), func(e report.Export) bool { return files[e.Format] != nil })...))
	return nil
}

// broken records what was written before the system refused: no export is
// whole, but the files are ours.
func (l *ledger) broken(plan string, made []report.Export, missing []report.File) {
	for i := range made {
		made[i].Basis = ""
		made[i].Files = slices.DeleteFunc(made[i].Files, func(o report.Output) bool {
			return slices.ContainsFunc(missing, func(f report.File) bool { return f.Name == o.Name })
		})
	}
	for _, e := range l.recorded(plan) {
		e.Basis = ""
		made = append(made, e)
	}
	l.set(plan, made)
}

func (l *ledger) recorded(plan string) []report.Export {
	if plan == "" {
		return l.line
	}
	return l.plans[l.path(plan)].Exports
}

// allowed reports whether a file of a name may be written, and whether it is
// there already.
func (l *ledger) allowed(name, sum string) (there bool, err error) {
	info, err := l.folder.root.Lstat(filepath.FromSlash(name))
	if err != nil || !info.Mode().IsRegular() {
		return false, nil // if something else has the name, the folder's own Write says so
	}
	now, err := l.sum(name)
	switch {
	case err != nil:
		return false, fmt.Errorf("read %s: %w", l.shown(name), cause(err))
	case now == sum:
		return true, nil
	case l.overwrite || l.owned[name][now]:
		return false, nil
	}
	return false, ChangedError{l.shown(name)}
}

func (l *ledger) set(plan string, exports []report.Export) {
	slices.SortStableFunc(exports, func(a, b report.Export) int { return compareExports(a, b) })
	l.mu.Lock()
	defer l.mu.Unlock()
	if plan == "" {
		l.lineNow = exports
		return
	}
	e := l.now[l.path(plan)]
	e.Exports = exports
	l.now[l.path(plan)] = e
}

// Exports are what this run wrote of a plan or found written.
func (l *ledger) Exports(plan string) []report.Export {
	l.mu.Lock()
	defer l.mu.Unlock()
	return slices.Clone(l.now[l.path(plan)].Exports)
}

// Own counts files that another run wrote to this folder as the ledger's own, so
// that those which belong to no plan can be removed. Call it before anything is
// written.
func (l *ledger) Own(exports []report.Export) { l.own(exports) }

// TakeOver records what another run wrote of a plan, to this folder or to one on
// another machine. A file of the same name with other bytes in this folder is a
// *ChangedError.
func (l *ledger) TakeOver(plan string, exports []report.Export) error {
	l.set(plan, slices.Clone(exports))
	for _, e := range exports {
		for _, f := range e.Files {
			if sum, err := l.sum(f.Name); err == nil && sum != f.SHA256 && !l.overwrite {
				return ChangedError{l.shown(f.Name)}
			}
		}
	}
	return nil
}

// Keep records what the next run needs to know of a plan. Call it when the plan's
// files are written.
func (l *ledger) Keep(plan string, kept json.RawMessage) error {
	l.mu.Lock()
	e := l.now[l.path(plan)]
	e.Path, e.Kept = l.path(plan), kept
	l.now[e.Path] = e
	l.mu.Unlock()
	if e.Exports == nil || bytes.Equal(kept, l.plans[e.Path].Kept) {
		return nil // nothing was written, or the journal has it already
	}
	if err := l.journal.done(e); err != nil {
		return fmt.Errorf("write in %s: %w", filepath.ToSlash(l.folder.name), cause(err))
	}
	l.mu.Lock()
	l.told[e.Path] = true
	l.mu.Unlock()
	return nil
}

// path is a plan's path from the output folder, so that it is the same from
// wherever yardproof is started.
func (l *ledger) path(plan string) string {
	file, err := filepath.Abs(filepath.FromSlash(plan))
	if err != nil {
		return plan
	}
	if relative, err := filepath.Rel(l.at, file); err == nil {
		file = relative
	}
	return filepath.ToSlash(file)
}

// gone reports whether the plan of an entry is no longer there.
func (l *ledger) gone(recorded string) bool {
	file := filepath.FromSlash(recorded)
	if !filepath.IsAbs(file) {
		file = filepath.Join(l.at, file)
	}
	_, err := os.Lstat(file)
	return errors.Is(err, fs.ErrNotExist)
}

func (l *ledger) shown(name string) string { return path.Join(filepath.ToSlash(l.folder.name), name) }
