package main

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"path"
	"path/filepath"
	"strings"

	"yardproof/exporters"
	"yardproof/pipeline"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
)

// writer writes the tables of plans and of the line. Several goroutines may use
// it at the same time.
type writer struct {
	ledger  *store.Ledger
	results *store.Folder // where the results of plans go; nil when nobody gathers them
	out     string
	formats []exporters.ExportFormat
	inputs  map[string]bool
}

func openWriter(ctx context.Context, s streams, set settings) (*writer, error) {
	access := store.Access{Overwrite: set.overwrite, Share: set.results != ""}
	if set.wait {
		access.Wait = func(holder string) { set.tellWaiting(s, holder) }
	}
	ledger, err := store.OpenLedger(ctx, set.out, access)
	if _, busy := errors.AsType[*store.BusyError](err); busy {
		err = pipeline.Busy{Err: err}
	}
	if err != nil {
		return nil, err
	}
	w := &writer{ledger: ledger, out: set.out, formats: set.formats}
	if set.results != "" {
		if w.results, err = store.OpenFolder(set.results); err != nil {
			return nil, errors.Join(err, ledger.Close())
		}
	}
	return w, nil
}

// tellWaiting says what the run waits for.
func (set settings) tellWaiting(s streams, holder string) {
	if set.quiet {
		return
	}
	busy := store.BusyError{Dir: filepath.ToSlash(set.out), Holder: holder}
	// Where nobody reads it there is nobody to be told.
	fmt.Fprintf(s.stderr, "yardproof: %s; waiting for it to end\n", exporters.OneLine(busy.Error()))
}

func (w *writer) close() {
	w.ledger.Close()
	if w.results != nil {
		w.results.Close()
	}
}

// spare remembers what the run reads, so that nothing of it is replaced.
func (w *writer) spare(files []string) error {
	w.inputs = identities(files)
	return nil
}

func (w *writer) names() []string {
	var names []string
	for _, f := range w.formats {
		names = append(names, f.Name)
	}
	return names
}

// recall is what the output folder keeps of a plan. What cannot be read is as
// good as nothing: the plan is worked out again.
func (w *writer) recall(file string) *store.Result {
	if kept := w.ledger.Kept(file); kept != nil {
		if r, err := store.DecodeResult(kept); err == nil {
			return r
		}
	}
	return nil
}

func (w *writer) current(file, basis string) bool { return w.ledger.Current(file, basis, w.names()) }

func (w *writer) currentLine(basis string) bool {
	return w.results == nil && w.ledger.Current("", basis, w.names())
}

// keep keeps a result in the output folder and, for gathering, in a file of
// its own, with the files that were written of the plan.
func (w *writer) keep(r *store.Result) error {
	kept, err := json.Marshal(r)
	if err != nil {
		return err
	}
	if err := w.ledger.Keep(r.File, kept); err != nil || w.results == nil {
		return err
	}
	whole := *r
	if whole.Exported {
		whole.Exports = w.ledger.Exports(r.File)
	}
	return w.results.Write(context.Background(), report.File{Name: resultName(r.File), Bytes: whole.Standing()})
}

// adopt takes over what an export wrote of a plan, which may lie elsewhere. Of a
// plan that turns out not to be the first of its id nothing is taken over.
func (w *writer) adopt(r *store.Result, exports []report.Export) error {
	if !r.Exported {
		return nil
	}
	err := w.ledger.Adopt(r.File, exports)
	if _, changed := errors.AsType[store.ChangedError](err); changed {
		return pipeline.LeftAlone{Err: err}
	}
	return err
}

// resultName is the name of a plan's result: like that of the plan, and another
// one for each path.
func resultName(file string) string {
	sum := sha256.Sum256([]byte(file))
	stem := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_' {
			return r
		}
		return '_'
	}, strings.TrimSuffix(path.Base(file), ".plan.json"))
	return stem[:min(len(stem), 80)] + "-" + hex.EncodeToString(sum[:8]) + store.ResultSuffix
}

func (w *writer) plan(ctx context.Context, p *report.Plan) error {
	return w.write(ctx, p.File, p.Basis, func(f exporters.ExportFormat) ([]report.File, error) { return f.Plan(p) })
}

func (w *writer) line(ctx context.Context, r *report.Run) error {
	return w.write(ctx, "", r.Basis, func(f exporters.ExportFormat) ([]report.File, error) { return f.Line(r) })
}

// write makes the files of every format before it writes the first.
func (w *writer) write(ctx context.Context, plan, basis string, make func(exporters.ExportFormat) ([]report.File, error)) error {
	files := map[string][]report.File{}
	for _, format := range w.formats {
		made, err := make(format)
		if err != nil {
			return err
		}
		for _, f := range made {
			name := filepath.Join(w.out, filepath.FromSlash(f.Name))
			if w.inputs[identity(name)] {
				return fmt.Errorf("write %s: it is one of the files that the run reads", filepath.ToSlash(name))
			}
		}
		files[format.Name] = made
	}
	err := w.ledger.Write(ctx, plan, basis, files)
	if _, changed := errors.AsType[store.ChangedError](err); changed {
		return pipeline.LeftAlone{Err: err}
	}
	return err
}

// finish tidies the output folder and adds what went wrong with that to the
// run. An interrupted run removes nothing, and remembers what it wrote.
func (w *writer) finish(ctx context.Context, run *report.Run) {
	if !w.ledger.Locked() {
		run.Findings = diag.Sort(append(run.Findings, pipeline.NoLock(w.out)))
	}
	if w.results != nil {
		pipeline.Unfinished(run, w.ledger.Part())
		return
	}
	left, err := w.ledger.Finish(context.WithoutCancel(ctx), ctx.Err() == nil)
	for _, name := range left {
		run.Findings = append(run.Findings, pipeline.ChangedOutput(name))
	}
	run.Findings = diag.Sort(run.Findings)
	pipeline.Unfinished(run, err)
}
