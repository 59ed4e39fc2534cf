package pipeline

import (
	"reflect"

	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/store"
	"yardproof/schema/source"
)

// recall looks for what an earlier run found out of the same bytes.
func (l *line) recall(p *planFile, b []byte) {
	if l.Version == "" {
		return
	}
	p.sum = store.Sum(b)
	if l.Memory == nil {
		return
	}
	if kept := l.Memory.Recall(p.name); kept != nil && kept.Version == l.Version && kept.File == p.name && kept.Text == p.sum &&
		kept.IDAt.Start >= 0 && kept.IDAt.Start <= kept.IDAt.End && kept.IDAt.End <= len(b) {
		p.kept = kept
	}
}

// reuse takes over what was kept, if it follows from what this run follows
// from.
func (w *work) reuse() bool {
	k := w.kept
	if k == nil || k.Basis != w.basis(k.SKUs) {
		return false
	}
	w.reading, w.found = store.Recalled(k.Reading, w.file, w.id), store.Recalled(k.Found, w.file, w.id)
	w.skus, w.decoded, w.judged = k.SKUs, k.Decoded, k.Judged
	w.outcome.Title, w.outcome.Status, w.outcome.Sizes = k.Title, k.Status, k.Sizes
	w.summary, w.asked = k.Summary, k.Asked
	return true
}

// keep hands on what a later run may use. What cannot be told again in the very
// same words is not kept.
func (w *work) keep() error {
	if w.sum == "" || w.Memory == nil || w.Gather && !w.decoded && len(w.reading) == 0 {
		return nil
	}
	k := &store.Result{
		Format: store.ResultFormat, Version: w.Version, File: w.name, Text: w.sum,
		Basis: w.basis(w.skus), SKUs: w.skus, ID: w.id, IDAt: store.Span{Start: w.idAt.Start, End: w.idAt.End},
		Title: w.outcome.Title, Status: w.outcome.Status, Sizes: w.outcome.Sizes,
		Decoded: w.decoded, Judged: w.judged, Reading: store.Remembered(w.reading), Found: store.Remembered(w.found),
		Asked: w.asked, Summary: w.summary, Exported: w.outcome.Exported,
	}
	if again(w.reading, k.Reading, w.file, w.id) && again(w.found, k.Found, w.file, w.id) {
		return w.Memory.Keep(k)
	}
	return nil
}

// again reports whether what is kept of findings gives the same findings, and
// none that tells of yardproof's own troubles, which may pass.
func again(findings []diag.Finding, kept []store.Finding, file *source.File, id string) bool {
	for i, f := range store.Recalled(kept, file, id) {
		if stopped(f) || !reflect.DeepEqual(f, findings[i]) {
			return false
		}
	}
	return true
}

func stopped(f diag.Finding) bool {
	c, known := check.Find(f.Rule)
	for _, follow := range f.Follows {
		if stopped(follow) {
			return true
		}
	}
	return !known || c.Scope == check.Running
}

// noResult is the finding of a plan that is to be known from elsewhere and is
// not.
func noResult(name, id string) []diag.Finding {
	f := check.Trouble("run/no-result", name, "there is no result of the plan as it is now, with its project's settings and prices as they are",
		"export it with --results again, and gather that")
	f.Plan = id
	return []diag.Finding{f}
}
