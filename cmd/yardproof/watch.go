package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"yardproof/pipeline"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
	"yardproof/pipeline/watch"
)

func watchCommand() command {
	return command{
		name: "watch", args: "PATH...",
		summary: "check plans again whenever one is saved",
		about: pathText + `
The whole line is checked again, for a change in one plan or in yardproof.json
may matter to another. On a terminal the report stays in place and what changes
in it is drawn anew; elsewhere what is new and what is gone is written below.
An interrupt (Ctrl-C) ends it.
`,
		flags: watchFlags,
		paths: true,
		exits: `Exit status:
  0  it was interrupted
  2  the command line makes no sense, and nothing was done
  3  a path is missing, or the system does not tell of changes
`,
		run: watchPlans,
	}
}

func watchFlags(f *pflag.FlagSet, o *options) {
	jobsFlag(f, o)
	colorFlag(f, o)
	lineFlags(f, o)
	knownFlag(f, o)
}

func watchPlans(ctx context.Context, s streams, o *options, paths []string) (status int, err error) {
	o.failOn, o.quiet = "error", true
	set, err := o.settle(ctx, s, paths)
	if err != nil {
		return 0, err
	}
	for _, p := range paths {
		if _, err := os.Stat(p); err != nil {
			return 0, fmt.Errorf("watch %s: there is no such file or folder", filepath.ToSlash(p))
		}
	}
	disk, err := watch.Open()
	if err != nil {
		return 0, err
	}
	defer disk.Close()
	view, err := newView(s, set.color)
	if err != nil {
		return 0, err
	}
	defer func() {
		if closing := view.close(); err == nil {
			err = closing
		}
	}()
	w := &watcher{set: set, disk: disk, view: view}
	if err := w.recheck(ctx, nil); err != nil {
		return 0, err
	}
	loop := watch.Loop{Events: disk.Events(), Errors: disk.Errors(), Matters: w.matters, Recheck: w.recheck, After: time.After}
	return exitClean, loop.Run(ctx)
}

// watcher checks plans and has shown what was found.
type watcher struct {
	set    settings
	disk   *watch.Disk
	view   view
	inputs map[string]bool // files that the last run read
	added  bool            // folders that were not followed before
}

// matters reports whether a path that has changed can change what is found.
func (w *watcher) matters(path string) bool {
	base := filepath.Base(path)
	switch {
	case strings.HasSuffix(base, planSuffix), base == "yardproof.json", w.inputs[path], w.inputs[store.Identity(path)]:
		return true
	case w.disk.Follows(path): // it was removed, or renamed
		return true
	}
	info, err := os.Stat(path)
	return err == nil && info.IsDir() && !strings.HasPrefix(base, ".")
}

// recheck checks the whole line and shows what is found.
func (w *watcher) recheck(ctx context.Context, changed []string) error {
	for _, path := range changed {
		if _, err := os.Stat(path); err != nil {
			w.disk.Forget(path)
		}
	}
	// A plan that was saved in a new folder before it was followed would be
	// missed for good; so the line is looked at again once it is.
	for w.added = true; w.added; {
		w.added = false
		run, err := w.check(ctx)
		if err != nil || ctx.Err() != nil {
			return err
		}
		w.set.compare(run)
		if err := w.view.show(run, changed); err != nil {
			return err
		}
		changed = nil
	}
	return nil
}

func (w *watcher) check(ctx context.Context) (*report.Run, error) {
	return pipeline.Run(ctx, w.set.over(pipeline.Config{Reads: w.follow}))
}

// follow follows the folders that were searched, and those of the files that are
// read: where they seem to be, and where they really are.
func (w *watcher) follow(folders, files []string) error {
	w.inputs = store.Identities(files)
	for _, f := range files {
		if absolute, err := filepath.Abs(f); err == nil {
			w.inputs[absolute] = true
		}
	}
	folders = slices.Clone(folders)
	for f := range w.inputs {
		folders = append(folders, filepath.Dir(f))
	}
	added, err := w.disk.Follow(folders)
	w.added = w.added || added
	return err
}
