package pipeline

import (
	"context"
	"slices"

	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/slip"
	"yardproof/schema/source"
)

// slipBudget is what looking for a slip may cost a plan, in the unit of trialBudget:
// some half a second of a processor.
const slipBudget = 40_000_000

// slipCuttings is what the cuttings of each plan that is tried for that may cost. What
// they leave open is open in all of them; what is told is tried again with more.
const slipCuttings = 400_000

// nameSlip looks for the one mistake behind what was found. A plan in which nothing speaks
// of one pays nothing.
func (w *work) nameSlip(ctx context.Context) {
	if w.trying || w.plan == nil || w.Text != nil || !w.judged || !slices.ContainsFunc(diag.Flatten(w.found), speaks) {
		return
	}
	w.stage = "looking for the one mistake in"
	quick := quickTrial(w, w.slips, slipCuttings)
	ask := func(edits []source.Edit) (slip.Trial, bool) {
		j, ok := quick.after(ctx, edits)
		return slip.Trial{Sizes: j.sizes, Found: j.all()}, ok
	}
	now, ok := ask(nil) // what is found with as little as is granted to each
	if !ok {
		return
	}
	slips := slip.Search(slip.Case{File: w.file, Tree: w.tree, Plan: w.plan, Sizes: now.Sizes, Found: now.Found, Speaks: speaks, Try: ask})
	w.tried += quick.given
	w.found = check.Slips(w.plan, w.found, w.confirmed(ctx, slips))
}

// speaks reports whether a finding may be what comes of one mistake.
func speaks(f diag.Finding) bool { return f.Level >= diag.Warning && check.Of(f).Speaks }

// mostSlips is how many slips are told at most.
const mostSlips = 3

// confirmed are slips that hold with all that the cuttings of a run are granted, and
// what is gone with them then.
func (w *work) confirmed(ctx context.Context, slips []slip.Slip) []slip.Slip {
	t := newTrial(w)
	before := t.before()
	var held []slip.Slip
	for _, s := range slips[:min(mostSlips, len(slips))] {
		j, ok := t.after(ctx, s.Edits)
		if !ok || t.news(diag.Finding{Level: diag.Warning}, j, s.Edits, before) {
			continue
		}
		after := diag.Tallied(j.all())
		s.Clear = nil
		for _, f := range t.now().all() {
			if !after.Holds(f) {
				s.Clear = append(s.Clear, f)
			}
		}
		held = append(held, s)
	}
	w.tried += t.given
	return held
}
