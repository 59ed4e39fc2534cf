package store

import (
	"bytes"
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

// LedgerName is the name of the ledger's own file.
const LedgerName = ".yardproof.json"

// housekeeping are the names of files that no plan can own.
var housekeeping = []string{LedgerName, LockName, holderName}

const ledgerFormat = 1

type ledgerFile struct {
	Format int             `json:"format"`
	Plans  []entry         `json:"plans"`
	Line   []report.Export `json:"line,omitempty"`
	Left   []report.Output `json:"left,omitempty"` // of plans that are gone, changed by somebody
}

// load reads the ledger's file and, if the run is alone, the journals of runs
// that did not write theirs.
func (l *ledger) load() error {
	text, err := readRegular(l.folder.root, LedgerName)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("read %s: %w", l.shown(LedgerName), cause(err))
	}
	var f ledgerFile
	if err == nil {
		if err = json.Unmarshal(text, &f); err != nil {
			err = diag.JSONFault(err)
		}
		if err == nil && f.Format != ledgerFormat {
			err = fmt.Errorf("its format is %d, and this yardproof knows format %d", f.Format, ledgerFormat)
		}
		if err != nil {
			return fmt.Errorf("read %s, which tells what yardproof wrote here: %w; delete it and export with --overwrite", l.shown(LedgerName), err)
		}
	} else {
		text = nil
	}
	l.earlier, l.line = text, f.Line
	for _, e := range f.Plans {
		l.plans[e.Path] = e
		l.own(e.Exports)
	}
	l.own(f.Line)
	l.own([]report.Export{{Files: f.Left}})
	if !l.alone {
		return l.journal.skim()
	}
	return l.journal.read(func(f report.Output) {
		l.ownFile(f)
		l.begun = append(l.begun, f.Name)
	}, l.recover)
}

// recover takes over what a journal says of a finished plan, if its files are on
// the disk as it says. If they are not, another run has written since: no export
// is taken over, but the files count as the ledger's own.
func (l *ledger) recover(e entry) {
	earlier := l.plans[e.Path].Exports
	l.own(e.Exports)
	switch {
	case l.wholeOf(e.Exports):
	case len(earlier) > 0 && l.wholeOf(earlier):
		return
	default:
		e.Kept = nil
		e.Exports = l.remains(append(slices.Clone(earlier), e.Exports...))
	}
	l.plans[e.Path] = e
}

func (l *ledger) wholeOf(exports []report.Export) bool {
	return !slices.ContainsFunc(exports, func(e report.Export) bool { return e.Basis == "" || !l.whole(e) })
}

// remains are exports of which some files are missing or changed, with only those
// files that are still as they were written.
func (l *ledger) remains(exports []report.Export) []report.Export {
	all := []report.Export{}
	for _, e := range exports {
		e.Basis = ""
		e.Files = slices.DeleteFunc(slices.Clone(e.Files), func(o report.Output) bool {
			_, err := l.folder.root.Lstat(filepath.FromSlash(o.Name))
			return err != nil
		})
		all = append(all, e)
	}
	return all
}

func (l *ledger) own(exports []report.Export) {
	for _, e := range exports {
		for _, f := range e.Files {
			l.ownFile(f)
		}
	}
}

// ownFile counts a file as the ledger's own as long as it has the recorded sum. A
// name that no ledger could have written is ignored.
func (l *ledger) ownFile(f report.Output) {
	if NameFault(f.Name) != "" || slices.Contains(housekeeping, path.Base(f.Name)) {
		return
	}
	if l.owned[f.Name] == nil {
		l.owned[f.Name] = map[string]bool{}
	}
	l.owned[f.Name][f.SHA256] = true
}

// Finish removes files that belong to no plan any more, and writes the ledger's
// file. Files that somebody has changed are not removed; it returns their names.
// Nothing is removed if the run was not complete, or if another run may be in the
// folder.
func (l *ledger) Finish(ctx context.Context, complete bool) (left []string, err error) {
	complete = complete && l.alone
	if l.alone {
		l.tidy()
	}
	f := l.file(complete)
	var trouble error
	if complete {
		f.Left, trouble = l.sweep(f)
	} else {
		f.Left = l.unclaimed(f)
	}
	for _, o := range f.Left {
		if complete {
			left = append(left, l.shown(o.Name))
		}
	}
	text, err := json.MarshalIndent(f, "", " ")
	if err != nil {
		return left, err
	}
	text = append(text, '\n')
	if !bytes.Equal(text, l.earlier) {
		err = replace(ctx, l.folder.root, LedgerName, func(w io.Writer) error {
			_, err := w.Write(text)
			return err
		})
	}
	if err != nil {
		err = fmt.Errorf("write %s: %w", l.shown(LedgerName), cause(err))
		if !l.wrote { // then the journal is empty
			err = errors.Join(err, l.journal.remove(false))
		}
		return left, err
	}
	return left, errors.Join(trouble, l.journal.remove(l.alone))
}

// file is the ledger after this run: the plans of this run as they are now, and
// the other plans as they were recorded, unless they are gone.
func (l *ledger) file(complete bool) ledgerFile {
	f := ledgerFile{Format: ledgerFormat, Plans: []entry{}, Line: l.line}
	if l.lineNow != nil {
		f.Line = l.lineNow
	}
	all := maps.Clone(l.plans)
	for p := range all {
		if _, looked := l.now[p]; !looked && complete && l.gone(p) {
			delete(all, p)
		}
	}
	for p, e := range l.now {
		if e.Exports == nil { // nothing new was exported: what was earlier stays
			e.Exports = l.plans[p].Exports
		}
		all[p] = e
	}
	for _, p := range slices.Sorted(maps.Keys(all)) {
		e := all[p]
		e.Path = p
		f.Plans = append(f.Plans, e)
	}
	return f
}

// unclaimed are the ledger's own files that no entry names any more.
func (l *ledger) unclaimed(f ledgerFile) []report.Output {
	claimed := map[string]bool{}
	claim := func(exports []report.Export) {
		for _, e := range exports {
			for _, o := range e.Files {
				claimed[o.Name] = true
			}
		}
	}
	claim(f.Line)
	for _, e := range f.Plans {
		claim(e.Exports)
	}
	var free []report.Output
	for _, name := range slices.Sorted(maps.Keys(l.owned)) {
		if !claimed[name] {
			free = append(free, report.Output{Name: name, SHA256: slices.Sorted(maps.Keys(l.owned[name]))[0]})
		}
	}
	return free
}

// sweep removes the files that no entry names, and returns those that it left
// because somebody has changed them.
func (l *ledger) sweep(f ledgerFile) (left []report.Output, err error) {
	for _, o := range l.unclaimed(f) {
		sum, failed := l.sum(o.Name)
		switch {
		case errors.Is(failed, fs.ErrNotExist):
		case failed == nil && (l.overwrite || l.owned[o.Name][sum]):
			if failed := l.folder.root.Remove(filepath.FromSlash(o.Name)); failed != nil {
				err = errors.Join(err, fmt.Errorf("remove %s: %w", l.shown(o.Name), cause(failed)))
				left = append(left, o)
			}
			l.prune(path.Dir(o.Name))
		default:
			left = append(left, o)
		}
	}
	return left, err
}

// tidy removes temporary files that a killed run left: a file's name with a point
// before it and digits after it, as swap makes it.
func (l *ledger) tidy() {
	for _, name := range append(l.begun, LedgerName) {
		if NameFault(name) != "" {
			continue
		}
		dir, base := path.Split(name)
		entries, err := fs.ReadDir(l.folder.root.FS(), path.Clean(dir))
		if err != nil {
			continue
		}
		for _, e := range entries {
			digits, ours := strings.CutPrefix(e.Name(), "."+base)
			if ours && digits != "" && strings.Trim(digits, "0123456789") == "" && e.Type().IsRegular() {
				// If it cannot be removed, it does no harm.
				_ = l.folder.root.Remove(filepath.FromSlash(path.Join(dir, e.Name())))
			}
		}
	}
}

// prune removes a folder that has become empty.
func (l *ledger) prune(dir string) {
	for ; dir != "."; dir = path.Dir(dir) {
		if l.folder.root.Remove(filepath.FromSlash(dir)) != nil {
			return // it is not empty
		}
	}
}

// sum is the SHA-256 of a file on the disk.
func (l *ledger) sum(name string) (string, error) {
	f, err := openRegular(l.folder.root, name)
	if err != nil {
		return "", err
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return "", err
	}
	return hex.EncodeToString(h.Sum(nil)), nil
}

func compareExports(a, b report.Export) int {
	return cmp.Or(cmp.Compare(a.Format, b.Format), cmp.Compare(a.Basis, b.Basis))
}
