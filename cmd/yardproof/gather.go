package main

import (
	"context"

	"github.com/spf13/pflag"

	"yardproof/pipeline"
)

func gatherCommand() command {
	return command{
		name: "gather", args: "RESULT... --out DIR",
		summary: "make one line of what several exports have found",
		about: `A RESULT is a file that yardproof export --results wrote, or a folder of them.
Start gather where the exports were started, beside the same plans, project
files and price lists: it derives nothing, and writes the reports and the line's
own tables, byte for byte as one export of all the plans would.

A result of another version of yardproof, of another text of the plan or of
other settings or prices is refused. With --line each plan below a PATH must
have its result; without it the line is the plans that have one.
`,
		flags: gatherFlags,
		paths: true,
		run:   gather,
	}
}

func gatherFlags(f *pflag.FlagSet, o *options) {
	f.StringArrayVar(&o.line, "line", nil, "the plans of the line, `PATH` as export takes it; may be given several times")
	outFlags(f, o)
	checkFlags(f, o)
}

func gather(ctx context.Context, s streams, o *options, paths []string) (int, error) {
	if len(paths) == 0 && o.list == "" {
		return 0, misuse("name a result or a folder of results")
	}
	set, err := o.settle(ctx, s, paths)
	if err != nil {
		return set.refuse(ctx, s, err)
	}
	if err := o.settleExport(&set); err != nil {
		return 0, err
	}
	version := identityOf(buildInfo())
	results, files, findings := pipeline.Gather(set.paths, version)
	set.reads = append(set.reads, files...)
	if set.paths = o.line; len(set.paths) == 0 {
		set.paths = results.Plans()
	}
	if err := set.spare(set.reads); err != nil {
		return 0, err
	}
	if len(findings) > 0 {
		return set.giveUp(ctx, s, pipeline.Refused(findings))
	}
	out, err := set.open(ctx, s)
	if err != nil {
		return set.giveUp(ctx, s, pipeline.Unwritable(ctx, err))
	}
	defer out.Close()
	return set.work(ctx, s, pipeline.Config{
		Tables: true, Gather: true, Version: version, Memory: results.Into(out), Sink: out,
	})
}
