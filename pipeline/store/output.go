package store

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"path"
	"path/filepath"
	"strings"

	"yardproof/pipeline/report"
)

// Mode says how a run works in its output folder.
type Mode struct {
	// Overwrite replaces and removes files that somebody changed, too.
	Overwrite bool
	// Fresh ignores what earlier runs found and wrote: everything is made anew.
	Fresh bool
	// Results is the folder for a result of each plan, of a run that is one of
	// several: it writes nothing of the line, and the others may work in the
	// output folder at the same time. Empty for a run that is alone.
	Results string
	// Wait is called once if another run is in the way, and the run waits for
	// it to end. When it is nil, the error is a *BusyError.
	Wait func(*BusyError)
}

// Output is the folder that a run writes to, and what is remembered there: a
// Memory and a Sink.
type Output struct {
	ledger  *ledger
	results *Folder // where the results of plans go; nil when nobody gathers them
	formats []Format
	fresh   bool
	reads   map[string]bool // identities of files that are not to be replaced
}

// Open opens an output folder for a run, creating it if it does not exist, and
// keeps other runs out of it until it is closed.
func Open(ctx context.Context, dir string, formats []Format, m Mode) (*Output, error) {
	a := access{overwrite: m.Overwrite, share: m.Results != ""}
	if m.Wait != nil {
		a.wait = func(holder string) { m.Wait(&BusyError{filepath.ToSlash(dir), holder}) }
	}
	l, err := takeLedger(ctx, dir, a)
	if err != nil {
		return nil, err
	}
	o := &Output{ledger: l, formats: formats, fresh: m.Fresh}
	if m.Results != "" {
		if o.results, err = OpenFolder(m.Results); err != nil {
			return nil, errors.Join(err, l.Close())
		}
	}
	return o, nil
}

// Close closes the folder and releases its lock.
func (o *Output) Close() error {
	err := o.ledger.Close()
	if o.results != nil {
		err = errors.Join(err, o.results.Close())
	}
	return err
}

// Recall implements Memory. A result that cannot be read counts as none, and the
// plan is worked out again.
func (o *Output) Recall(plan string) *Result {
	if kept := o.ledger.Kept(plan); kept != nil && !o.fresh {
		if r, err := DecodeResult(kept); err == nil {
			return r
		}
	}
	return nil
}

// Keep implements Memory: it keeps a result in the output folder and, for
// gathering, in a file of its own, with the files that were written of the plan.
func (o *Output) Keep(r *Result) error {
	kept, err := json.Marshal(r)
	if err != nil {
		return err
	}
	if err := o.ledger.Keep(r.File, kept); err != nil || o.results == nil {
		return err
	}
	whole := *r
	if whole.Exported {
		whole.Exports = o.ledger.Exports(r.File)
	}
	return o.results.Write(context.Background(), report.File{Name: resultName(r.File), Bytes: whole.Standing()})
}

// resultName is the name of a plan's result: like that of the plan, and another
// one for each path.
func resultName(file string) string {
	stem := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_' {
			return r
		}
		return '_'
	}, strings.TrimSuffix(path.Base(file), ".plan.json"))
	return stem[:min(len(stem), 80)] + "-" + Sum([]byte(file))[:16] + ResultSuffix
}

// Begin implements Sink.
func (o *Output) Begin(reads []string) { o.reads = Identities(reads) }

// Has implements Sink.
func (o *Output) Has(plan, basis string) bool {
	if o.fresh || plan == "" && o.results != nil {
		return false
	}
	var names []string
	for _, f := range o.formats {
		names = append(names, f.Name)
	}
	return o.ledger.Current(plan, basis, names)
}

// Plan implements Sink.
func (o *Output) Plan(ctx context.Context, p *report.Plan) error {
	return o.write(ctx, p.File, p.Basis, func(f Format) ([]report.File, error) { return f.Plan(p) })
}

// Line implements Sink. A run that shares the folder with others writes nothing of
// the line.
func (o *Output) Line(ctx context.Context, r *report.Run) error {
	if o.results != nil {
		return nil
	}
	return o.write(ctx, "", r.Basis, func(f Format) ([]report.File, error) { return f.Line(r) })
}

// write makes the files of every format before it writes the first.
func (o *Output) write(ctx context.Context, plan, basis string, make func(Format) ([]report.File, error)) error {
	files := map[string][]report.File{}
	for _, format := range o.formats {
		made, err := make(format)
		if err != nil {
			return err
		}
		for _, f := range made {
			name := filepath.Join(o.ledger.folder.name, filepath.FromSlash(f.Name))
			if o.reads[Identity(name)] {
				return fmt.Errorf("write %s: it is one of the files that the run reads", filepath.ToSlash(name))
			}
		}
		files[format.Name] = made
	}
	return o.ledger.Write(ctx, plan, basis, files)
}

// End implements Sink. It removes files that belong to no plan any more and writes
// the ledger's file. A run that shares the folder leaves both to a later run.
func (o *Output) End(ctx context.Context, complete bool) (left Left, err error) {
	if !o.ledger.Locked() {
		left.Unlocked = o.ledger.folder.name
	}
	if o.results != nil {
		return left, o.ledger.EndShared()
	}
	left.Changed, err = o.ledger.Finish(ctx, complete)
	return left, err
}
