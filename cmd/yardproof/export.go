package main

import (
	"context"
	"fmt"

	"yardproof/exporters"
	"yardproof/pipeline"
	"yardproof/pipeline/store"
)

func exportCommand() command {
	return command{
		name: "export", args: "PATH... --out DIR",
		summary: "prove plans and write the tables of those that hold",
		about: pathText + `
A plan with errors is not exported, so that no wrong cut list reaches a printer;
what was exported of it earlier stays as it is. The line's own workbook says
which plans must not be printed, and why.

The folder remembers, in .yardproof.json, what was written and from what. Plans
that are unchanged, with the settings and prices that they use, are not worked
out again. What a plan left behind that is gone, or has another id, is removed.
A file that somebody changed, or that was there before, is never replaced.

One run at a time writes to a folder: a second one ends with status 3 and has
touched nothing, or waits with --wait.

With --results the run is one of several, which may write to one folder at the
same time: it writes a result of each plan for yardproof gather, and nothing of
the line.
`,
		flags: exportFlags,
		paths: true,
		run:   exportPlans,
	}
}

func exportPlans(ctx context.Context, s streams, o *options, paths []string) (int, error) {
	set, err := o.settle(ctx, s, paths)
	if err != nil {
		return set.refuse(ctx, s, err)
	}
	if err := o.settleExport(&set); err != nil {
		return 0, err
	}
	out, err := set.open(ctx, s)
	if err != nil {
		return set.giveUp(ctx, s, pipeline.Unwritable(ctx, err))
	}
	defer out.Close()
	return set.work(ctx, s, pipeline.Config{
		Tables: true, Draft: set.draft, Version: identityOf(buildInfo()), Memory: out, Sink: out,
	})
}

// open opens the folder that is written to.
func (set settings) open(ctx context.Context, s streams) (*store.Output, error) {
	mode := store.Mode{Overwrite: set.overwrite, Fresh: set.fresh, Results: set.results}
	if set.wait {
		mode.Wait = func(busy *store.BusyError) { set.tellWaiting(s, busy) }
	}
	var formats []store.Format
	for _, f := range set.formats {
		formats = append(formats, store.Format{Name: f.Name, Plan: f.Plan, Line: f.Line})
	}
	return store.Open(ctx, set.out, formats, mode)
}

// tellWaiting says what the run waits for.
func (set settings) tellWaiting(s streams, busy *store.BusyError) {
	if set.quiet {
		return
	}
	// Where nobody reads it there is nobody to be told.
	fmt.Fprintf(s.stderr, "yardproof: %s; waiting for it to end\n", exporters.OneLine(busy.Error()))
}
