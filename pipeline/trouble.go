package pipeline

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"

	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
)

// crash is a panic, as an error.
type crash struct {
	stage string
	value any
}

func (c crash) Error() string { return fmt.Sprintf("%s failed: %v", c.stage, c.value) }

// guard does a piece of work. A panic becomes an error that names the stage the
// work was at.
func guard(stage func() string, do func() error) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = crash{stage(), r}
		}
	}()
	return do()
}

// noLock is the finding of an output folder that other runs cannot be kept out
// of.
func noLock(dir string) diag.Finding {
	return check.Trouble("run/no-lock", "", "the file system of "+filepath.ToSlash(dir)+" has no locks: nothing was removed from it, for another run may be writing there",
		"let one run at a time write to the folder, or write to a folder of another file system")
}

// changedOutput is the finding of a file that nothing stands for any more, and
// that somebody changed.
func changedOutput(name string) diag.Finding {
	return check.Trouble("run/changed-output", "", name+" is of a plan that is gone, or of an earlier form of one, and was changed since it was written; it was left as it is", changedHint)
}

const changedHint = "rename it to keep it, or delete it; --overwrite does away with all such files"

// failure is the finding of an error of a piece of work. A cancelled context is
// told of once for the whole run.
func failure(err error, file, plan string) []diag.Finding {
	stopped, crashed := errors.AsType[crash](err)
	_, leftAlone := errors.AsType[store.ChangedError](err)
	_, busy := errors.AsType[*store.BusyError](err)
	var f diag.Finding
	switch {
	case crashed:
		f = check.Trouble("run/crash", file, fmt.Sprintf("yardproof failed while %s %s: %v", stopped.stage, about(plan), stopped.value),
			"report this with the plan; the other plans have been dealt with")
	case errors.Is(err, context.Canceled):
		return nil
	case leftAlone:
		f = check.Trouble("run/changed-output", file, err.Error(), changedHint)
	case busy:
		f = check.Trouble("run/write", file, err.Error(), "wait for it to end; with --wait the run does so itself")
	default:
		f = check.Trouble("run/write", file, err.Error(), "see that the disk has room and that the file may be written, and run yardproof again")
	}
	f.Plan = plan
	return []diag.Finding{f}
}

func about(plan string) string {
	if plan == "" {
		return "the line"
	}
	return fmt.Sprintf("plan %q", plan)
}

// Refused is the run that did not begin because of what was found before.
func Refused(findings []diag.Finding) *report.Run {
	return &report.Run{Findings: findings, Rules: catalogue()}
}

// Unwritable is the run that could not begin because its outputs have no place
// to go, or because it was interrupted while it waited for that.
func Unwritable(ctx context.Context, err error) *report.Run {
	run := &report.Run{Findings: failure(err, "", ""), Rules: catalogue()}
	if ctx.Err() != nil {
		return Unbegun()
	}
	return run
}

// Unbegun is the run that was interrupted before it looked at a plan.
func Unbegun() *report.Run {
	return Refused([]diag.Finding{check.Trouble("run/interrupted", "", "the run was interrupted before it began", "run it again")})
}
