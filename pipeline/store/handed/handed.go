// Package handed hands what a run would write to functions. Only tests and
// benchmarks use it. It must not know what they do with it. Start reading at On.
package handed

import (
	"context"

	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
)

// On is a sink of functions, which writes nothing and remembers nothing.
// Either may be nil.
type On struct {
	EachPlan  func(context.Context, *report.Plan) error
	WholeLine func(context.Context, *report.Run) error
}

// Begin implements store.Sink.
func (On) Begin([]string) {}

// Has implements store.Sink.
func (On) Has(string, string) bool { return false }

// Plan implements store.Sink.
func (h On) Plan(ctx context.Context, p *report.Plan) error {
	if h.EachPlan == nil {
		return nil
	}
	return h.EachPlan(ctx, p)
}

// Line implements store.Sink.
func (h On) Line(ctx context.Context, r *report.Run) error {
	if h.WholeLine == nil {
		return nil
	}
	return h.WholeLine(ctx, r)
}

// End implements store.Sink.
func (On) End(context.Context, bool) (store.Left, error) { return store.Left{}, nil }
