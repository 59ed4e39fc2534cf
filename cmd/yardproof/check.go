package main

import (
	"cmp"
	"context"
	"errors"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"yardproof/pipeline"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
)

const pathText = `A path is a plan (*.plan.json) or a folder. Folders are searched with all that is
below them, except what has a name that begins with a point. The nearest
yardproof.json upward from a plan is its project file. A link that leads out of
the project file's folder, or where there is none out of PATH, is not followed;
PATH itself is. What "exclude" in the project file or --exclude matches is left
out, unless it is PATH itself.
`

func checkCommand() command {
	return command{
		name: "check", args: "PATH...",
		summary: "prove plans and tell what is wrong with them",
		about: pathText + `
- is one plan on standard input. --stdin-path says whose text it is; without it
the project file is looked for in the current folder and above.

--changed-since tells what a change brings: of the plans that differ from a git
revision in their text, or in the settings, prices or stock that they follow
from, those findings that the revision had not. What the line as a whole is
found to lack is held against the revision in the same way. A price list that
git does not keep is taken to be what it was. What lies in a submodule counts as
new, and links of the revision are not followed. Nothing of the repository's
settings is run, and nothing is fetched.
`,
		flags: func(f *pflag.FlagSet, o *options) {
			checkFlags(f, o)
			sinceFlag(f, o)
			f.StringVar(&o.stdinPath, "stdin-path", "", "what - is the text of: findings name `PATH`, and its project is that of this path; it need not exist")
		},
		paths: true,
		run:   checkPlans,
	}
}

func checkPlans(ctx context.Context, s streams, o *options, paths []string) (int, error) {
	streamed := slices.Contains(paths, toStdout)
	switch {
	case streamed && (len(paths) > 1 || o.list != ""):
		return 0, misuse("- is one plan on standard input, and cannot be checked together with other paths")
	case !streamed && o.stdinPath != "":
		return 0, misuse("--stdin-path says whose text - is: name - as the PATH")
	}
	set, err := o.settle(ctx, s, paths)
	if err == nil {
		err = o.settleSince(&set)
	}
	if err != nil {
		return set.refuse(ctx, s, err)
	}
	if !streamed {
		return set.work(ctx, s, pipeline.Config{})
	}
	given, findings := pipeline.ReadGiven(cmp.Or(o.stdinPath, streamName), untilDone{ctx, s.stdin})
	switch {
	case ctx.Err() != nil:
		return set.refuse(ctx, s, ctx.Err())
	case len(findings) > 0:
		if set.paths = nil; o.stdinPath != "" {
			set.reads = append(set.reads, o.stdinPath)
		}
		return set.giveUp(ctx, s, pipeline.Refused(findings))
	}
	set.paths = nil
	return set.work(ctx, s, pipeline.Config{Given: given})
}

// refuse ends a run that could not begin. One that was interrupted is reported
// as it was asked for.
func (set settings) refuse(ctx context.Context, s streams, err error) (int, error) {
	if ctx.Err() == nil || !errors.Is(err, ctx.Err()) {
		return 0, err
	}
	return set.giveUp(ctx, s, pipeline.Unbegun())
}

// giveUp reports on a run that did not begin. What it would have read is not
// replaced, either.
func (set settings) giveUp(ctx context.Context, s streams, run *report.Run) (int, error) {
	if err := set.spare(pipeline.Inputs(ctx, set.over(pipeline.Config{}))); err != nil {
		return 0, err
	}
	return set.conclude(ctx, s, run)
}

// work runs the pipeline, writes the reports, and gives the exit status.
func (set settings) work(ctx context.Context, s streams, c pipeline.Config) (int, error) {
	run, err := set.run(ctx, s, c)
	if err != nil {
		return 0, err
	}
	return set.conclude(ctx, s, run)
}

// over is a run over the line that is meant.
func (set settings) over(c pipeline.Config) pipeline.Config {
	c.Paths, c.Jobs, c.Today = set.paths, set.jobs, set.today
	c.Project, c.Levels, c.Exclude = set.config, set.rules, set.exclude
	c.Besides = set.reads
	return c
}

// run runs the pipeline.
func (set settings) run(ctx context.Context, s streams, c pipeline.Config) (*report.Run, error) {
	c = set.over(c)
	show, hide := progress(s.stderr, set.quiet)
	defer hide()
	c.Progress = show
	c.Reads = func(_, files []string) error { return set.spare(files) }
	run := pipeline.Run
	if set.since != "" {
		earlier, err := set.openEarlier(ctx, c)
		if err != nil {
			return nil, err
		}
		defer earlier.Close()
		run = earlier.Run
	}
	return run(ctx, c)
}

// conclude holds a run against the baseline, writes its reports and the new
// baseline, and gives its exit status.
func (set settings) conclude(ctx context.Context, s streams, run *report.Run) (int, error) {
	set.compare(run)
	if err := set.writeBaseline(ctx, s, run); err != nil {
		return 0, err
	}
	if err := set.write(ctx, s, run); err != nil {
		return 0, err
	}
	return status(run.All(), set.failOn), nil
}

// spare refuses reports and baselines that would replace what the run reads, or
// each other, or by their names what no report is.
func (set settings) spare(files []string) error {
	inputs := store.Identities(files)
	if set.record != "" && inputs[store.Identity(set.record)] {
		return misuse("--write-baseline %s would replace an input", set.record)
	}
	for _, name := range []string{set.record, set.known} {
		if name != "" {
			inputs[store.Identity(name)] = true
		}
	}
	for _, t := range set.reports {
		if t.path != toStdout && inputs[store.Identity(t.path)] {
			return misuse("--report %s=%s would replace an input", t.format.Name, t.path)
		}
	}
	for _, t := range set.reports {
		if what := taken(t.path); what != "" {
			return misuse("--report %s=%s would replace %s, by its name", t.format.Name, t.path, what)
		}
	}
	if what := taken(set.record); what != "" {
		return misuse("--write-baseline %s would replace %s, by its name", set.record, what)
	}
	return nil
}

// taken is what a file is by its name, where that is something else than a report
// or a baseline.
func taken(path string) string {
	switch name := filepath.Base(path); {
	case strings.HasSuffix(name, ".plan.json"):
		return "a plan"
	case name == "yardproof.json":
		return "a project file"
	case strings.HasSuffix(name, ".xlsx"):
		return "a workbook"
	case strings.HasPrefix(name, ".yardproof"):
		return "what yardproof remembers"
	}
	return ""
}

// status is the exit status for findings.
func status(findings []diag.Finding, failOn diag.Level) int {
	switch {
	case stopped(findings):
		return exitStopped
	case diag.Worst(findings) >= failOn:
		return exitFindings
	}
	return exitClean
}

// stopped reports whether any finding says that the work could not be done.
func stopped(findings []diag.Finding) bool {
	return slices.ContainsFunc(findings, func(f diag.Finding) bool {
		return strings.HasPrefix(f.Rule, "run/") && f.Level == diag.Error || stopped(f.Follows)
	})
}
