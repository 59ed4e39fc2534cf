package main

import (
	"context"

	"yardproof/pipeline"
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
	w, err := openWriter(ctx, s, set)
	if err != nil {
		return set.conclude(ctx, s, pipeline.Unwritable(ctx, err))
	}
	defer w.close()
	c := pipeline.Config{
		Tables: true, Draft: set.draft, Version: identityOf(buildInfo()),
		Inputs: w.spare, Each: w.plan, Keep: w.keep,
	}
	if !set.fresh {
		c.Recall, c.Current, c.CurrentLine = w.recall, w.current, w.currentLine
	}
	if w.results == nil {
		c.Line = w.line
	}
	run, err := set.run(ctx, s, c)
	if err != nil {
		return 0, err
	}
	w.finish(ctx, run)
	return set.conclude(ctx, s, run)
}
