package pipeline

import (
	"context"
	"errors"
	"fmt"

	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
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

// failure is the finding of an error of a piece of work. A cancelled context is
// told of once for the whole run.
func failure(err error, file, plan string) []diag.Finding {
	stopped, crashed := errors.AsType[crash](err)
	var f diag.Finding
	switch {
	case crashed:
		f = check.Trouble("run/crash", file, fmt.Sprintf("yardproof failed while %s %s: %v", stopped.stage, about(plan), stopped.value),
			"report this with the plan; the other plans have been dealt with")
	case errors.Is(err, context.Canceled):
		return nil
	default:
		f = check.Trouble("run/write", file, err.Error(), "make room or change permissions, and run it again")
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

// Unwritable is the run that could not begin because its outputs have no place
// to go.
func Unwritable(err error) *report.Run {
	return &report.Run{Findings: failure(err, "", ""), Rules: catalogue()}
}
