package pipeline

import (
	"context"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/amend"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// trial is a plan on which edits are tried. Each time the plan's text with the edits
// made is read, derived and judged anew, in memory: with the settings, prices and
// stock of the plan, before the project's levels and exceptions, and as often as the
// budget lets it. What a cutting costs is the same as in the run itself, and what was
// cut already is remembered.
type trial struct {
	work  *work
	left  int // of the budget, in the unit of cutting.Spent.Work
	each  int // about what one more costs, in the same unit
	given int // how many were tried
	allow int // what the cuttings of each may cost; 0 for as much as in the run itself
	known diag.Tally
}

// trialBudget is what trying edits may cost a plan, in the unit of the budget of its
// cuttings: some 0.3 s of a processor. It is counted and not timed, so that the
// same is tried on every machine.
const trialBudget = 24_000_000

// What reading, deriving and judging a plan once costs without its cuttings, in the same unit:
// for each value of its text in each of its sizes, and for each block of a layout.
// Measured on the plans of testdata and scripts/hostile.
const (
	costOfValue = 400
	costOfBlock = 120
)

// newTrial is a trial of the plan that w has derived. Where w could not read the
// plan, its trial tells what would be read.
func newTrial(w *work) *trial {
	return &trial{work: w, left: w.trials, each: costOf(w.tree, w.sizes) + w.cut}
}

// quickTrial is a trial with a budget of its own, in which the cuttings of each plan that
// is tried may cost no more than allow.
func quickTrial(w *work, budget, allow int) *trial {
	return &trial{work: w, left: budget, each: costOf(w.tree, w.sizes) + min(w.cut, allow), allow: allow}
}

// costOf is about what one trial costs, without its cuttings.
func costOf(tree *jsontree.Node, sizes []*derive.Size) int {
	blocks := 0
	for _, s := range sizes {
		if g := s.Of.Layout.Grid; g != nil {
			blocks += g.Rows.N * g.Columns.N
		}
	}
	return costOfValue*values(tree)*(1+len(sizes)) + costOfBlock*blocks
}

// values counts the values of a tree.
func values(n *jsontree.Node) int {
	if n == nil {
		return 0
	}
	count := 1
	for _, m := range n.Members {
		count += values(m.Value)
	}
	for _, item := range n.Items {
		count += values(item)
	}
	return count
}

// judgement is what is found in a plan's text.
type judgement struct {
	text    []byte
	file    *source.File
	tree    *jsontree.Node // nil when it is not JSON
	plan    *plan.Plan     // nil when the text is not in order
	sizes   []*derive.Size // derived; none without a plan
	reading []diag.Finding // of reading it
	found   []diag.Finding // of the rules
}

// all are the findings, each with what follows from it behind it.
func (j judgement) all() []diag.Finding {
	return append(diag.Flatten(j.reading), diag.Flatten(j.found)...)
}

// now is what was found in the plan as it stands.
func (t *trial) now() judgement {
	w := t.work
	return judgement{text: w.bytes, file: w.file, tree: w.tree, plan: w.plan, sizes: w.sizes, reading: w.reading, found: w.found}
}

// before is what was found in it, counted.
func (t *trial) before() diag.Tally {
	if t.known == nil {
		t.known = diag.Tallied(t.now().all())
	}
	return t.known
}

// affords reports whether the budget has room for one more trial.
func (t *trial) affords() bool { return t.left >= t.each }

// after is what is found once edits are made to the plan's own text. There is nothing
// when the budget has no room for it, when the edits cannot be made together, or when
// nobody waits any more.
func (t *trial) after(ctx context.Context, edits []diag.Edit) (judgement, bool) {
	text, err := amend.Apply(t.work.bytes, edits)
	if err != nil || !t.affords() || ctx.Err() != nil {
		return judgement{}, false
	}
	return t.judge(ctx, text)
}

// judge is what is found in a text that stands in the plan's place.
func (t *trial) judge(ctx context.Context, text []byte) (judgement, bool) {
	w := t.work
	again := &work{line: w.line, planFile: &planFile{path: w.path, name: w.name, project: w.project, given: true, bytes: text, id: w.id}, settings: w.settings, trying: true, allow: t.allow}
	again.file = source.New(w.name, text)
	again.outcome.Waits = w.outcome.Waits
	t.given++
	err := guard(func() string { return "trying" }, func() error {
		again.derive(ctx)
		return nil
	})
	t.left -= max(t.each, costOf(again.tree, again.sizes)+again.cut)
	if err != nil || ctx.Err() != nil {
		return judgement{}, false
	}
	return judgement{text, again.file, again.tree, again.plan, again.sizes, again.reading, again.found}, true
}
