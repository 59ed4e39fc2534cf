package main

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"

	"github.com/spf13/pflag"

	"yardproof/exporters"
	"yardproof/pipeline"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
)

const formatText = `A path is a plan (*.plan.json), a yardproof.json, or a folder of them; - is
standard input, and its formatted text goes to standard output.

The style has two blanks a level and at most 100 columns, with short lists on
one line. Only blanks between words change: the order of keys and the spelling
of lengths stay as they are. A file that is not in order as JSON is left as it
is. The names of the files that were changed are printed.
`

func formatCommand() command {
	return command{
		name: "fmt", args: "PATH...",
		summary: "write plans in the one style",
		about:   formatText,
		flags: func(f *pflag.FlagSet, o *options) {
			f.BoolVar(&o.check, "check", false, "change nothing: print the names of the files that are not in the style, and give 1 if there are any")
			excludeFlag(f, o)
		},
		exits: `Exit status:
  0  done; with --check, every file is in the style
  1  a file is not in order as JSON, or with --check, not in the style
` + exitRest,
		paths: true,
		run:   format,
	}
}

func format(ctx context.Context, s streams, o *options, paths []string) (int, error) {
	switch {
	case len(paths) == 0 || slices.Contains(paths, ""):
		return 0, misuse("name a plan or a folder of plans, or - for standard input")
	case slices.Contains(paths, toStdout) && len(paths) > 1:
		return 0, misuse("- is standard input, and cannot be formatted together with other paths")
	case paths[0] == toStdout:
		return formatStream(ctx, s, o.check)
	}
	leftOut, err := globs(o.exclude)
	if err != nil {
		return 0, err
	}
	var changed []string
	run := pipeline.Format(ctx, pipeline.FormatConfig{
		Paths: paths, Exclude: leftOut,
		Each: func(ctx context.Context, path string, styled []byte) error {
			changed = append(changed, filepath.ToSlash(path))
			if o.check {
				return nil
			}
			return store.Replace(ctx, path, styled)
		},
	})
	for _, name := range changed {
		if _, err := fmt.Fprintln(s.stdout, exporters.Shown(name)); err != nil {
			return 0, err
		}
	}
	return o.formatted(s, run, len(changed) > 0)
}

// formatted tells what kept files from being formatted, and gives the exit
// status.
func (o *options) formatted(s streams, run *report.Run, changed bool) (int, error) {
	result := status(run.All(), diag.Error)
	if o.check && changed {
		result = max(result, exitFindings)
	}
	if result == exitClean || len(run.All()) == 0 {
		return result, nil
	}
	return result, s.complain(run)
}

// complain writes findings where they do not mix with what a command gives.
func (s streams) complain(run *report.Run) error {
	text, _ := exporters.Report("text")
	color, err := useColor("auto", s.stderr)
	if err != nil {
		return err
	}
	return text.Write(s.stderr, run, exporters.Options{Color: color, Width: columns(s.stderr)})
}

// streamName is what findings call standard input.
const streamName = "standard input"

func formatStream(ctx context.Context, s streams, check bool) (int, error) {
	styled, same, findings := pipeline.FormatStream(streamName, untilDone{ctx, s.stdin})
	switch {
	case ctx.Err() != nil:
		return exitStopped, s.complain(pipeline.Unbegun())
	case len(findings) > 0:
		run := &report.Run{Plans: []report.Outcome{{File: streamName, Findings: findings}}}
		return status(findings, diag.Error), s.complain(run)
	case check && same:
		return exitClean, nil
	case check:
		_, err := fmt.Fprintln(s.stdout, streamName)
		return exitFindings, err
	}
	_, err := s.stdout.Write(styled)
	return exitClean, err
}
