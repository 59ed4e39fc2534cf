package main

import (
	"context"
	"errors"
	"io"
	"path/filepath"
	"strings"
	"syscall"

	"yardproof/exporters"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
)

// target is one report that was asked for.
type target struct {
	format exporters.ReportFormat
	path   string
}

// toStdout is the path that stands for standard output.
const toStdout = "-"

// targets understands --report.
func targets(flags []string) ([]target, error) {
	var all []target
	seen := map[string]bool{}
	for _, flag := range reportsOf(flags) {
		name, path, ok := strings.Cut(flag, "=")
		format, known := exporters.Report(name)
		switch {
		case !known:
			return nil, misuse("--report %q: the format %q is not one of %s", flag, name, strings.Join(reportNames(), ", "))
		case !ok || path == "":
			return nil, misuse("--report %q: write FORMAT=PATH, like %s=- for standard output", flag, name)
		case seen[whereTo(path)]:
			return nil, misuse("--report %q: another report goes to %s already", flag, path)
		}
		seen[whereTo(path)] = true
		all = append(all, target{format, path})
	}
	return all, nil
}

// whereTo is the same for two paths of one file.
func whereTo(path string) string {
	if path == toStdout {
		return path
	}
	if absolute, err := filepath.Abs(path); err == nil {
		return absolute
	}
	return filepath.Clean(path)
}

func (t target) writer(run *report.Run, o exporters.Options) func(io.Writer) error {
	return func(w io.Writer) error { return t.format.Write(w, run, o) }
}

// write writes every report, those to files first: a reader of standard output
// may go away at any time.
func (set settings) write(ctx context.Context, s streams, run *report.Run) error {
	// A report of an interrupted run says so; to be written it must not be
	// interrupted again.
	ctx = context.WithoutCancel(ctx)
	options := exporters.Options{Version: buildInfo().Main.Version, FailOn: set.failOn, Verbose: set.verbose}
	var failed []error
	for _, t := range set.reports {
		if t.path != toStdout {
			failed = append(failed, store.WriteReport(ctx, t.path, t.writer(run, options)))
		}
	}
	options.Color, options.Width = set.color, columns(s.stdout)
	for _, t := range set.reports {
		if t.path == toStdout {
			if err := t.writer(run, options)(s.stdout); !errors.Is(err, syscall.EPIPE) {
				failed = append(failed, err)
			}
		}
	}
	return errors.Join(failed...)
}
