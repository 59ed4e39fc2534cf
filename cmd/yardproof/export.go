package main

import (
	"context"
	"fmt"
	"path/filepath"

	"yardproof/exporters"
	"yardproof/pipeline"
	"yardproof/pipeline/report"
)

func exportCommand() command {
	return command{
		name: "export", args: "PATH... --out DIR",
		summary: "prove plans and write the tables of those that hold",
		about: pathText + `
A plan with errors is not exported, so that no wrong cut list reaches a printer;
what was exported of it earlier stays as it is. The line's own workbook says
which plans must not be printed, and why.
`,
		flags: exportFlags,
		run:   exportPlans,
	}
}

func exportPlans(ctx context.Context, s streams, o *options, paths []string) (int, error) {
	set, err := o.settle(s, paths)
	if err != nil {
		return 0, err
	}
	if err := o.settleExport(&set); err != nil {
		return 0, err
	}
	folder, err := exporters.OpenFolder(set.out)
	if err != nil {
		return set.conclude(ctx, s, pipeline.Unwritable(err))
	}
	defer folder.Close()
	w := &writer{folder: folder, out: set.out, formats: set.formats}
	return set.work(ctx, s, pipeline.Config{
		Tables: true, Draft: set.draft,
		Inputs: w.spare, Each: w.plan, Line: w.line,
	})
}

// writer writes the tables of plans and of the line. Several goroutines may use
// it at the same time.
type writer struct {
	folder  *exporters.Folder
	out     string
	formats []exporters.ExportFormat
	inputs  map[string]bool
}

// spare remembers what the run reads, so that nothing of it is replaced.
func (w *writer) spare(files []string) error {
	w.inputs = identities(files)
	return nil
}

func (w *writer) plan(ctx context.Context, p *report.Plan) error {
	return w.write(ctx, func(f exporters.ExportFormat) ([]exporters.File, error) { return f.Plan(p) })
}

func (w *writer) line(ctx context.Context, r *report.Run) error {
	return w.write(ctx, func(f exporters.ExportFormat) ([]exporters.File, error) { return f.Line(r) })
}

// write makes the files of every format before it writes the first.
func (w *writer) write(ctx context.Context, make func(exporters.ExportFormat) ([]exporters.File, error)) error {
	var files []exporters.File
	for _, format := range w.formats {
		made, err := make(format)
		if err != nil {
			return err
		}
		files = append(files, made...)
	}
	for _, f := range files {
		path := filepath.Join(w.out, filepath.FromSlash(f.Name))
		if w.inputs[identity(path)] {
			return fmt.Errorf("write %s: it is one of the files that the run reads", filepath.ToSlash(path))
		}
	}
	for _, f := range files {
		if err := w.folder.Write(ctx, f); err != nil {
			return err
		}
	}
	return nil
}
