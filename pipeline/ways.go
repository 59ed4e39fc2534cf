package pipeline

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/schema/amend"
	"yardproof/schema/source"
)

// tryWays tries the ways out of what was found, before anybody is told of them. A
// plan in which nothing was found pays nothing.
func (w *work) tryWays(ctx context.Context) {
	if w.trying || w.Text != nil || !anyWays(w.reading) && !anyWays(w.found) {
		return
	}
	w.stage = "trying ways out of what was found in"
	t := newTrial(w)
	w.reading = t.settle(ctx, w.reading)
	w.found = t.settle(ctx, w.found)
	w.tried += t.given
}

func anyWays(findings []diag.Finding) bool {
	return slices.ContainsFunc(diag.Flatten(findings), func(f diag.Finding) bool { return len(f.Ways) > 0 })
}

// settle tries the ways of findings and of what follows from them. What was thought to
// follow from a finding and is not mended by its mend stands alone.
func (t *trial) settle(ctx context.Context, findings []diag.Finding) []diag.Finding {
	var all []diag.Finding
	for _, f := range findings {
		left, ok := t.tryAll(ctx, &f)
		follows := f.Follows
		f.Follows = nil
		if !ok { // nothing is known to mend it
			f.Follows = untold(follows)
			all = append(all, f)
			continue
		}
		for _, c := range follows {
			if !left.Holds(c) {
				f.Follows = append(f.Follows, untold([]diag.Finding{c})...)
				continue
			}
			all = append(all, t.settle(ctx, []diag.Finding{c})...)
		}
		all = append(all, f)
	}
	return diag.Sort(all)
}

// untold gives what follows from a finding the words of its ways, untried: it is not
// what is to be mended.
func untold(follows []diag.Finding) []diag.Finding {
	for i := range follows {
		follows[i].Hint = hintOf(follows[i])
		follows[i].Follows = untold(follows[i].Follows)
	}
	return follows
}

func hintOf(f diag.Finding) string {
	if len(f.Ways) == 0 {
		return f.Hint
	}
	return source.Hint(f.Ways)
}

// tryAll tries the ways of one finding, and tells what the first that holds leaves;
// ok is false when none does. A finding that is left without a way is told what its rule says.
func (t *trial) tryAll(ctx context.Context, f *diag.Finding) (left diag.Tally, ok bool) {
	if len(f.Ways) == 0 {
		return nil, false
	}
	before := t.before()
	type tried struct {
		diag.Way
		after diag.Tally // what is left
		whole bool       // and nothing of what follows is
	}
	var all []tried
	for _, w := range f.Ways {
		if w.Kind == source.Mend || w.Kind == source.Choice {
			after := t.try(ctx, *f, &w, before)
			whole := !slices.ContainsFunc(diag.Flatten(f.Follows), after.Holds)
			all = append(all, tried{w, after, whole})
		} else {
			all = append(all, tried{w, nil, false})
		}
	}
	slices.SortStableFunc(all, func(a, b tried) int { return cmp.Compare(burden(a.Way, a.whole), burden(b.Way, b.whole)) })
	f.Ways = nil
	for _, w := range all {
		if w.Trial != source.Unasked {
			t.locate(w.Edits)
			t.locate(w.Also)
		}
		f.Ways = append(f.Ways, w.Way)
		if w.Trial == source.Holds && !ok {
			left, ok = w.after, true
		}
	}
	if f.Hint = hintOf(*f); f.Hint == "" {
		f.Ways = append(f.Ways, diag.Way{Kind: source.Advice, Says: check.Of(*f).Fix})
		f.Hint = hintOf(*f)
	}
	return left, ok
}

// locate says of edits where they are made, for programs that count in lines.
func (t *trial) locate(edits []diag.Edit) {
	for i := range edits {
		e := &edits[i]
		e.Start, e.End = t.work.file.Position(e.Range.Start), t.work.file.Position(e.Range.End)
	}
}

// burden orders ways: a mend that all else in the plan agrees with comes before one
// after which other figures have to change, or are left as they are, and that before
// what is no mend.
func burden(w diag.Way, whole bool) int {
	switch {
	case w.Kind != source.Mend:
		return 2
	case w.Trial == source.Holds && len(w.Also) == 0 && whole:
		return 0
	}
	return 1
}

// mostFollowing is how often edits that have to follow are looked for.
const mostFollowing = 4

// try tries one way, and adds the edits that have to follow it: those that mend what
// it would leave behind or cause, if that mends all of it.
func (t *trial) try(ctx context.Context, f diag.Finding, w *diag.Way, before diag.Tally) diag.Tally {
	edits := w.All()
	j, ok := t.after(ctx, edits)
	if !ok {
		w.Trial = source.NotTried
		return nil
	}
	after := diag.Tallied(j.all())
	w.Trial = source.Fails
	if after.Holds(f) {
		return nil
	}
	var best diag.Tally
	if !t.news(f, j, edits, before) {
		w.Trial, best = source.Holds, after
	}
	var also []diag.Edit
	for range mostFollowing {
		more := t.following(f, j, edits, before)
		if len(more) == 0 {
			break
		}
		all, ok := amend.Then(edits, more)
		if !ok {
			break
		}
		if j, ok = t.after(ctx, all); !ok {
			break
		}
		also = append(also, t.placed(all[len(edits):])...)
		edits = all
		after = diag.Tallied(j.all())
		if !after.Holds(f) && !t.news(f, j, edits, before) && (best == nil || after.Count(diag.Note) < best.Count(diag.Note)) {
			w.Trial, w.Also, best = source.Holds, also, after
		}
	}
	return best
}

// placed says of edits that follow where they are made.
func (t *trial) placed(edits []diag.Edit) []diag.Edit {
	for i := range edits {
		at := t.work.file.Position(edits[i].Range.Start)
		edits[i].Thing = strings.TrimSpace(fmt.Sprintf("%s at %d:%d", edits[i].Thing, at.Line, at.Column))
	}
	return edits
}

// news reports whether a finding as grave as f is there after edits that was not
// there before. What was hidden, because the plan could not be read or a name was not
// known, is not new, unless it stands where an edit was made.
func (t *trial) news(f diag.Finding, j judgement, edits []diag.Edit, before diag.Tally) bool {
	return len(t.fresh(f, j, edits, before)) > 0
}

func (t *trial) fresh(f diag.Finding, j judgement, edits []diag.Edit, before diag.Tally) []diag.Finding {
	now := t.now()
	var fresh []diag.Finding
	seen := diag.Tally{}
	for _, g := range j.all() {
		if g.Level < f.Level || before.Covers(g, seen) {
			continue
		}
		hidden := now.plan == nil && !sameStage(f, g, now, j) || check.Of(f).Hides
		if !hidden || touches(edits, g.Place.Range) {
			fresh = append(fresh, g)
		}
	}
	return fresh
}

// sameStage reports whether g would have been seen where f was: both are of one of
// the steps of reading, or g of an earlier one.
func sameStage(f, g diag.Finding, now, j judgement) bool {
	switch {
	case now.tree == nil: // f ended the reading of JSON; what stands behind it was not seen
		return j.tree == nil && g.Place.Range.Start < f.Place.Range.Start
	case now.plan == nil:
		return j.plan == nil
	}
	return true
}

// touches reports whether a place of the changed text lies where one of the edits wrote.
func touches(edits []diag.Edit, at source.Range) bool {
	return slices.ContainsFunc(amend.Wrote(edits), func(wrote source.Range) bool {
		return at.Start < wrote.End && wrote.Start < at.End && at.Len() <= wrote.Len()
	})
}

// following are the edits that mend what is left of f's followers and what its way
// brings: the first mend of each.
func (t *trial) following(f diag.Finding, j judgement, edits []diag.Edit, before diag.Tally) []diag.Edit {
	var more []diag.Edit
	left := t.fresh(f, j, edits, before)
	below := diag.Tallied(diag.Flatten(f.Follows))
	for _, g := range j.all() {
		if below.Holds(g) {
			left = append(left, g)
		}
	}
	for _, g := range left {
		for _, w := range g.Ways {
			if w.Kind == source.Mend {
				more = append(more, w.Edits...)
				break
			}
		}
	}
	return more
}
