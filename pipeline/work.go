package pipeline

import (
	"context"
	"slices"
	"yardproof/pipeline/internal/kit"
	ofLine "yardproof/pipeline/internal/line"

	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/tabulate"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// planFile is one plan on its way through the line. Each is worked on by one
// goroutine at a time.
type planFile struct {
	path    string // to open
	name    string // to show
	project *project
	given   bool         // it is not read from the path
	bytes   []byte       // from the first reading until it is done; nil when it cannot be used
	id      string       // empty when it could not be read
	idAt    source.Range // where it is said
	twins   []diag.Finding
	title   string         // empty when it could not be read
	alike   []diag.Finding // of plans that share the title
	outcome report.Outcome
	sum     string         // names the bytes; empty when nothing is kept
	kept    *store.Result  // of an earlier run on the same bytes; nil when there is none
	summary ofLine.Summary // empty when it was not derived
	asked   []string       // names of the cutting problems that were asked
	used    []bool         // which of the project's exceptions cover something
	judged  bool           // all rules were run
	done    bool
}

// read reads the file and its id.
func (l *line) read(p *planFile) {
	b := p.bytes
	if !p.given {
		var err error
		if b, err = read(l.files, p.path); err != nil {
			p.spoil([]diag.Finding{unread(p.path, err)})
			return
		}
	}
	l.recall(p, b)
	p.take(b)
}

// take looks for the id in the plan's bytes. It keeps them and not the tree,
// which is many times their size, for the ids of all plans have to be known
// before the first is worked on.
func (p *planFile) take(b []byte) {
	if p.kept != nil {
		p.bytes, p.id, p.title = b, p.kept.ID, p.kept.Title
		p.idAt = source.Range{Start: p.kept.IDAt.Start, End: p.kept.IDAt.End}
		if p.title == "" { // of a plan that is not in order nothing but its findings is kept
			tree, _ := jsontree.Parse(source.New(p.name, b), jsontree.DefaultLimits())
			p.title = titleOf(tree)
		}
		return
	}
	err := guard(func() string { return "decoding" }, func() error {
		file := source.New(p.name, b)
		tree, problems := jsontree.Parse(file, jsontree.DefaultLimits())
		if tree == nil {
			p.spoil(check.Problems(file, nil, "", problems))
			return nil
		}
		p.bytes = b
		if id := tree.Get("id"); id != nil && id.Kind == jsontree.String {
			p.id, p.idAt = id.Text, id.Range
		}
		p.title = titleOf(tree)
		return nil
	})
	if err != nil {
		p.spoil(failure(err, p.name, ""))
	}
}

// spoil ends the work on a plan that nothing more can be said of.
func (p *planFile) spoil(findings []diag.Finding) {
	p.bytes, p.done = nil, true
	p.outcome.Findings = findings
}

// work does everything with a plan that has been read. A plan that an interrupt
// kept from being handed on is not done.
func (l *line) work(ctx context.Context, p *planFile) {
	if p.done || ctx.Err() != nil {
		return
	}
	w := &work{line: l, planFile: p, stage: "decoding"}
	troubles := w.guard(func() error { return w.prove(ctx) })
	if ctx.Err() != nil { // what was derived meanwhile may be less than it could be
		p.bytes, p.outcome.Findings = nil, nil
		return
	}
	p.done = true
	if l.Tables && len(troubles) == 0 {
		troubles = w.guard(func() error { return w.handOn(ctx) })
		p.done = p.outcome.Exported || ctx.Err() == nil
	}
	p.outcome.Findings = diag.Sort(append(p.outcome.Findings, troubles...))
	if p.done && len(troubles) == 0 {
		w.stage = "keeping what is known of"
		p.outcome.Findings = append(p.outcome.Findings, w.guard(w.keep)...)
	}
	p.bytes = nil
}

// work is what is known of a plan while it is worked on. Of a plan that is
// unchanged since an earlier run, what that found stands in for plan, tree and
// sizes.
type work struct {
	*line
	*planFile
	stage    string
	file     *source.File
	settings *plan.Project
	skus     []string       // articles that the plan names
	decoded  bool           // nothing of the plan was left unread
	reading  []diag.Finding // of reading the plan
	found    []diag.Finding // of the rules, before the project's levels and exceptions
	tree     *jsontree.Node
	plan     *plan.Plan // nil when the text is not in order, or was not looked at
	sizes    []*derive.Size
	kits     []*kit.Kit // of the sizes
	cut      int        // what its cuttings cost, in the unit of cutting.Spent.Work
	tried    int        // how often edits of it were tried
	allow    int        // what its cuttings may cost, where that is less than a run's; else 0
	trying   bool       // it is tried what an edit makes of it: nobody is told of anything but findings
}

func titleOf(tree *jsontree.Node) string {
	if title := tree.Get("title"); title != nil && title.Kind == jsontree.String {
		return title.Text
	}
	return ""
}

// guard does a piece of work and turns its error or panic into a finding.
func (w *work) guard(do func() error) []diag.Finding {
	if err := guard(func() string { return w.stage }, do); err != nil {
		return failure(err, w.name, w.id)
	}
	return nil
}

// prove finds out what there is to be said of the plan, or takes it from an
// earlier run, and lets the project judge it.
func (w *work) prove(ctx context.Context) error {
	w.settings = &plan.Project{}
	switch {
	case w.project == nil:
	case w.project.settings == nil:
		// Without the settings and the accepted exceptions the rules would
		// complain of what is in order.
		w.outcome.Waits = true
	default:
		w.settings = w.project.settings
	}
	w.outcome.ID = w.id
	w.file = source.New(w.name, w.bytes)
	switch {
	case w.reuse():
	case w.Gather:
		w.outcome.Findings = append(noResult(w.name, w.id), w.twins...)
		return nil
	default:
		w.derive(ctx)
		w.nameSlip(ctx)
		w.tryWays(ctx)
	}
	w.judge()
	return nil
}

// derive reads the plan, derives its sizes and runs the rules.
func (w *work) derive(ctx context.Context) {
	w.reading = w.text(ctx)
	if w.decoded = w.plan != nil; !w.decoded {
		return
	}
	w.describe()
	w.skus = skus(w.plan)
	if w.outcome.Waits {
		return
	}
	purse := newPurse(w.budget(), questions(w.plan))
	for again := true; again && ctx.Err() == nil; again = purse.again() {
		w.round(ctx, &asker{solved: w.solved, purse: purse})
	}
	w.cut = purse.spent
	if w.watch != nil && !w.trying {
		w.watch(purse)
	}
}

// budget is what the plan's cuttings may cost.
func (w *work) budget() int {
	switch {
	case w.allow > 0:
		return w.allow
	case w.Tables:
		return w.tables
	}
	return w.check
}

// round derives the sizes and runs the rules with what is granted this time.
func (w *work) round(ctx context.Context, solver *asker) {
	w.stage = "deriving"
	w.sizes, w.judged = nil, false
	for i := range w.plan.Sizes {
		if ctx.Err() != nil {
			return
		}
		w.sizes = append(w.sizes, derive.With(solver, w.plan, &w.plan.Sizes[i]))
	}
	prices := w.prices()
	w.kits = kit.All(w.sizes, w.settings, prices)
	w.stage = "checking"
	w.found = check.All(check.Input{Plan: w.plan, Sizes: w.sizes, Kits: w.kits, Project: w.settings, Prices: prices, Stock: w.stock(w.skus), Thorough: w.Tables,
		Stop: func() bool { return ctx.Err() != nil }})
	w.judged = true
	if w.trying {
		return
	}
	w.asked = solver.names()
	if w.Text != nil {
		w.stage = "reading the text of"
		w.found = append(w.found, w.readText(ctx)...)
	}
	w.stage = "tabulating"
	w.summary = ofLine.Summarise(w.sizes, w.kits, w.settings)
	if w.Tables && (w.Draft || diag.Worst(w.found) < diag.Error) {
		for _, s := range w.sizes {
			s.Solve()
		}
	}
}

// judge gives what was found the project's levels, and takes out what it
// accepts.
func (w *work) judge() {
	rules := levels{of: w.Levels}
	if w.project != nil && w.project.settings != nil {
		rules = w.project.rules
	}
	w.used = make([]bool, len(rules.exceptions))
	twins, excused := rules.apply(w.twins, w.used)
	if len(w.twins) > 0 && len(twins)+len(excused) == 0 && w.Tables {
		twins = notExported(w.twins)
	}
	w.outcome.Findings = slices.Concat(w.reading, twins)
	found := w.found
	if w.judged {
		var also []report.Excused
		found, also = rules.apply(found, w.used)
		excused = append(excused, also...)
	}
	w.outcome.Excused, w.outcome.Accepted = excused, len(excused)
	if w.Text != nil {
		found = w.ofText(found)
	}
	w.outcome.Findings = append(w.outcome.Findings, found...)
}

// notExported are notes in place of findings that a project does not want to hear of,
// where the plan is not exported because of them.
func notExported(twins []diag.Finding) []diag.Finding {
	notes := slices.Clone(twins)
	for i := range notes {
		notes[i].Level = diag.Note
		notes[i].Message += ", so it is not exported"
	}
	return notes
}

// text decodes the plan and its sizes. The plan is set only when nothing of it
// was left unread.
func (w *work) text(ctx context.Context) []diag.Finding {
	tree, problems := jsontree.Parse(w.file, jsontree.DefaultLimits())
	w.tree = tree
	w.stage = "validating"
	problems = append(problems, schema.Plan(tree)...)
	sizes := plan.Merge(tree)
	var more []source.Problem
	for _, s := range sizes {
		if ctx.Err() != nil {
			return nil
		}
		if !s.Same {
			more = append(more, schema.Plan(s.Tree)...)
		}
	}
	w.stage = "decoding"
	decoded, unread := plan.Decode(w.file, tree, sizes, w.settings)
	problems = append(problems, beyondRefused(tree, problems, more)...)
	problems = append(problems, besideRefused(tree, problems, beyondRefused(tree, problems, unread))...)
	findings := check.Problems(w.file, tree, w.id, unique(problems))
	if diag.Worst(findings) < diag.Error {
		w.plan = decoded
	}
	return findings
}

// unique sorts problems and leaves one of those that several sizes share.
func unique(problems []source.Problem) []source.Problem {
	source.SortProblems(problems)
	return slices.CompactFunc(problems, func(a, b source.Problem) bool {
		return a.Code == b.Code && a.Range == b.Range && a.Message == b.Message
	})
}

// describe says what the plan is, for the line's tables.
func (w *work) describe() {
	w.outcome.Title, w.outcome.Status, w.outcome.Sizes = w.plan.Title.Text, w.plan.Status.String(), nil
	for i := range w.plan.Sizes {
		w.outcome.Sizes = append(w.outcome.Sizes, w.plan.Sizes[i].Name.Text)
	}
}

// handOn makes the plan's tables and has them written, if the plan may be
// exported and is not already.
func (w *work) handOn(ctx context.Context) error {
	proved := diag.Worst(w.outcome.Findings) < diag.Error
	switch {
	case w.Gather:
		w.outcome.Exported = w.kept != nil && w.kept.Exported && len(w.twins) == 0
		return nil
	case !w.decoded || w.outcome.Waits || len(w.twins) > 0 || !proved && !w.Draft:
		return nil
	}
	basis := w.exportBasis()
	if w.Sink != nil && w.Sink.Has(w.name, basis) {
		w.outcome.Exported = true
		return nil
	}
	if w.plan == nil { // it is known, and what was written of it is not there
		reading, found := w.reading, w.found // their ways out were tried
		w.derive(ctx)
		w.reading, w.found = reading, found
	}
	if ctx.Err() != nil {
		return ctx.Err()
	}
	w.stage = "tabulating"
	handed := &report.Plan{
		Outcome:  w.outcome,
		Revision: w.plan.Revision.Text,
		Currency: w.settings.Currency,
		Units:    w.plan.Units,
		Proved:   proved,
		Source:   w.file,
		Basis:    basis,
		Stop:     w.solved.stop,
	}
	if w.Numbers {
		handed.Numbers = tabulate.Numbers(w.sizes)
	} else {
		handed.Sheets = tabulate.Plan(w.known())
	}
	if ctx.Err() != nil { // the sheets may be less than they could be
		return ctx.Err()
	}
	w.stage = "exporting"
	if w.Sink != nil {
		if err := w.Sink.Plan(ctx, handed); err != nil {
			return err
		}
	}
	w.outcome.Exported = true
	return nil
}
