package pipeline

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"path/filepath"

	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
	"yardproof/schema/style"
)

// FormatConfig says what is to be formatted.
type FormatConfig struct {
	Paths   []string // plans, project files, and folders of them
	Exclude []plan.Glob

	// Each is handed each file that is not in the style, in file order, with
	// the text that it should have. An error becomes a finding of run/write.
	Each func(ctx context.Context, path string, styled []byte) error
}

// Format puts plans and project files below the paths into the one style. A
// file that is not in order as JSON is left as it is, and the findings say
// why; what it means as a plan is not looked at.
func Format(ctx context.Context, c FormatConfig) *report.Run {
	f := findAll(ctx, disk{}, hasStyle, c.Paths, &leaves{files: disk{}, globs: c.Exclude})
	run := &report.Run{Findings: f.findings, Rules: catalogue()}
	for i, p := range f.plans {
		if ctx.Err() != nil {
			run.Findings = append(run.Findings, check.Trouble("run/interrupted", "",
				fmt.Sprintf("the run was interrupted: %d of %d files were not formatted", len(f.plans)-i, len(f.plans)),
				"run it again"))
			break
		}
		findings := c.format(ctx, p)
		if isPlan(p.path) {
			run.Plans = append(run.Plans, report.Outcome{File: p.name, Findings: findings})
		} else {
			run.Findings = append(run.Findings, findings...)
		}
	}
	run.Findings = diag.Sort(run.Findings)
	return run
}

func hasStyle(path string) bool { return isPlan(path) || filepath.Base(path) == projectFile }

// format does one file.
func (c FormatConfig) format(ctx context.Context, p *planFile) []diag.Finding {
	was, err := read(disk{}, p.path)
	if err != nil {
		return []diag.Finding{unread(p.path, err)}
	}
	styled, findings := formatText(p.name, was)
	if len(findings) > 0 || bytes.Equal(was, styled) {
		return findings
	}
	if err := c.Each(ctx, p.path, styled); err != nil {
		return failure(err, p.name, "")
	}
	return nil
}

// FormatStream is a stream's text in the one style, and whether it was in it
// already; or what is wrong with it as JSON. Findings call it by its name.
func FormatStream(name string, r io.Reader) (styled []byte, same bool, findings []diag.Finding) {
	// One byte more than the decoder takes, for it to see that it is too much.
	text, err := io.ReadAll(io.LimitReader(r, int64(jsontree.DefaultLimits().MaxBytes)+1))
	if err != nil {
		return nil, false, []diag.Finding{unread(name, err)}
	}
	styled, findings = formatText(name, text)
	return styled, bytes.Equal(text, styled), findings
}

func formatText(name string, text []byte) (styled []byte, findings []diag.Finding) {
	err := guard(func() string { return "formatting" }, func() error {
		file := source.New(name, text)
		tree, problems := jsontree.Parse(file, jsontree.DefaultLimits())
		if len(problems) > 0 {
			findings = check.Problems(file, tree, "", problems)
			return nil
		}
		styled = style.Format(file, tree)
		return nil
	})
	if err != nil {
		findings = failure(err, name, "")
	}
	return styled, findings
}
