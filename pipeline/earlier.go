package pipeline

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"sync"

	"yardproof/pipeline/baseline"
	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/pipeline/revision"
	"yardproof/pipeline/store"
)

// Earlier is a line as a git revision held it.
type Earlier struct {
	name  string // as it was asked for
	files *past
}

// At opens a revision for the paths that a run names, which must lie in one
// repository. A *revision.Error is one of what was asked for.
func At(ctx context.Context, name string, paths []string) (*Earlier, error) {
	tree, err := revision.Open(ctx, folderOf(paths[0]), name)
	if err != nil {
		return nil, err
	}
	files, outside, ok := newPast(tree, paths)
	if !ok {
		tree.Close()
		return nil, &revision.Error{
			Message: filepath.ToSlash(outside) + " lies outside the git repository " + filepath.ToSlash(tree.Top()),
			Hint:    "name plans of one repository",
		}
	}
	return &Earlier{name, files}, nil
}

// Close ends the reading of the revision.
func (e *Earlier) Close() { e.files.tree.Close() }

// folderOf is the folder of a path, or the nearest around it that is there.
func folderOf(path string) string {
	info, err := os.Stat(path)
	switch above := filepath.Dir(path); {
	case err == nil && info.IsDir(), above == path:
		return path
	default:
		return folderOf(above)
	}
}

// Run is Run of the package, and tells only of plans that differ from what a revision
// held: in their text, or in the settings, prices and stock that they follow
// from. Of what is found it tells only what the revision had not. All plans are
// looked at, for what is found of the line follows from all of them; what follows
// from the same in both is worked out once.
func (e *Earlier) Run(ctx context.Context, c Config) (*report.Run, error) {
	now := &results{of: map[string]*store.Result{}}
	was := &results{of: map[string]*store.Result{}, from: now}
	c.Version, c.Memory = "of this run", now
	run, err := Run(ctx, c)
	if err != nil || ctx.Err() != nil {
		return run, err
	}
	before := Config{
		Paths: e.paths(c, run), Jobs: c.Jobs, Today: c.Today, Project: c.Project, Levels: c.Levels, Exclude: c.Exclude,
		Version: c.Version, Memory: was,
	}
	if c.Progress != nil {
		before.Progress = func(p Progress) {
			p.Of = e.name
			c.Progress(p)
		}
	}
	l := newLine(before)
	l.files = e.files
	held, err := l.run(ctx)
	if err != nil {
		return nil, err
	}
	if trouble := e.trouble(ctx); len(trouble) > 0 {
		run.Findings = diag.Sort(append(run.Findings, trouble...))
		return run, nil
	}
	e.compare(run, held)
	e.leaveOutSame(run, now, was)
	return run, nil
}

// results are kept from one run to the other: the memory of a run that recalls
// what another has kept.
type results struct {
	mu   sync.Mutex
	of   map[string]*store.Result
	from *results // nil recalls nothing
}

// Keep keeps the result of a plan.
func (r *results) Keep(k *store.Result) error {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.of[k.File] = k
	return nil
}

// Recall is what the other run has kept of a plan.
func (r *results) Recall(file string) *store.Result {
	if r.from == nil {
		return nil
	}
	r.from.mu.Lock()
	defer r.from.mu.Unlock()
	return r.from.of[file]
}

// trouble is what kept the revision from being looked at.
func (e *Earlier) trouble(ctx context.Context) []diag.Finding {
	switch err := e.files.tree.Err(); {
	case ctx.Err() != nil:
		return []diag.Finding{check.Trouble("run/interrupted", "", fmt.Sprintf("the run was interrupted before all was looked at that %s held", e.name), "run it again")}
	case err != nil:
		return []diag.Finding{check.Trouble("run/unreadable", "", fmt.Sprintf("what %s held could not be read: %v", e.name, err), "mend what git complains of")}
	}
	return nil
}

// paths are those of the run, as far as the revision had something there. A plan
// that the revision did not hold may have had another name then, so that those
// count too which are gone.
func (e *Earlier) paths(c Config, run *report.Run) []string {
	named := c.Paths
	if c.Given != nil {
		named = []string{c.Given.Path}
	}
	isThere := func(path string) bool { _, err := e.files.Stat(path); return err == nil }
	var paths []string
	for _, path := range named {
		if isThere(path) {
			paths = append(paths, path)
		}
	}
	if slices.ContainsFunc(run.Plans, func(o report.Outcome) bool { return !isThere(filepath.FromSlash(o.File)) }) {
		paths = append(paths, e.files.plansGone()...)
	}
	return paths
}

// compare takes what the revision had, too, out of the run.
func (e *Earlier) compare(run, held *report.Run) {
	e.follow(run, held)
	ids, files := map[string]bool{}, map[string]bool{}
	for _, o := range run.Plans {
		ids[o.ID], files[o.File] = true, true
	}
	deleted, unjudged := 0, 0
	held.Plans = slices.DeleteFunc(held.Plans, func(o report.Outcome) bool {
		is := o.ID != "" && ids[o.ID] || files[o.File]
		if !is {
			deleted += len(o.Findings)
		} else if o.Waits {
			unjudged++
		}
		return !is
	})
	baseline.Of(held).Compare(run)
	run.Baseline.Since, run.Baseline.Unjudged = e.name, unjudged
	run.Baseline.Recorded += deleted
	run.Baseline.Gone += deleted
}

// follow gives a plan that has no id to be known by, for it is not in order, the
// name that a plan of the same bytes has now.
func (e *Earlier) follow(run, held *report.Run) {
	old := map[string]bool{}
	for _, o := range held.Plans {
		old[o.File] = true
	}
	renamed := map[string]string{} // by the name of the bytes
	for _, o := range run.Plans {
		if o.ID == "" && !old[o.File] {
			if b, err := read(disk{}, filepath.FromSlash(o.File)); err == nil {
				renamed[store.Sum(b)] = o.File
			}
		}
	}
	for i, o := range held.Plans {
		if o.ID != "" || len(renamed) == 0 {
			continue
		}
		b, err := read(e.files, filepath.FromSlash(o.File))
		if err != nil || renamed[store.Sum(b)] == "" {
			continue
		}
		held.Plans[i].File = renamed[store.Sum(b)]
		for j := range o.Findings {
			held.Plans[i].Findings[j].Place.File = held.Plans[i].File
		}
	}
}

// isText reports whether the text of a plan is what the revision held. Of one that
// is no JSON nothing else counts.
func (e *Earlier) isText(file string) bool {
	path := filepath.FromSlash(file)
	now, err := read(disk{}, path)
	if err != nil {
		return false
	}
	was, err := read(e.files, path)
	return err == nil && bytes.Equal(now, was)
}

// leaveOutSame leaves out the plans that do not differ, with their old findings.
func (e *Earlier) leaveOutSame(run *report.Run, now, was *results) {
	same := map[string]bool{}
	run.Plans = slices.DeleteFunc(run.Plans, func(o report.Outcome) bool {
		n, w := now.of[o.File], was.of[o.File]
		is := n != nil && w != nil && n.Basis == w.Basis || n == nil && w == nil && e.isText(o.File)
		same[o.File] = is && len(o.Findings) == 0
		return same[o.File]
	})
	for _, is := range same {
		if is {
			run.Baseline.Same++
		}
	}
	run.Baseline.Old = slices.DeleteFunc(run.Baseline.Old, func(f diag.Finding) bool { return same[f.Place.File] })
}
