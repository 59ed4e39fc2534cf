package store

import (
	"context"

	"yardproof/pipeline/report"
)

// Memory is what earlier runs found of plans. Several goroutines may use it at
// the same time.
type Memory interface {
	// Recall gives what was kept of a plan, nil when there is nothing.
	Recall(plan string) *Result
	// Keep keeps what was found of a plan. Call it when the plan's files are
	// written.
	Keep(*Result) error
}

// Sink is where plans and the line are written. Several goroutines may use it at
// the same time. If it does not write a file because somebody has changed that,
// its error is a ChangedError.
type Sink interface {
	// Begin is told every file that the run reads: none of them is written.
	Begin(reads []string)
	// Has reports whether what follows from a basis is written already of a plan,
	// or of the line where the plan is empty.
	Has(plan, basis string) bool
	Plan(context.Context, *report.Plan) error
	Line(context.Context, *report.Run) error
	// End is called once all else is done; the run was not complete if it was
	// interrupted.
	End(ctx context.Context, complete bool) (Left, error)
}

// Left is what a sink left undone.
type Left struct {
	Changed  []string // files that nothing stands for any more, and that somebody changed
	Unlocked string   // the folder that other runs cannot be kept out of, from which nothing was removed; empty for none
}

// Format turns what was derived of a plan, and of the line, into files.
type Format struct {
	Name string
	Plan func(*report.Plan) ([]report.File, error)
	Line func(*report.Run) ([]report.File, error)
}
