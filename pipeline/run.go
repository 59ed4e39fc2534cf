package pipeline

import (
	"context"
	"fmt"
	"runtime"

	"golang.org/x/sync/errgroup"

	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/bolts"
	"yardproof/pipeline/internal/supply"
	"yardproof/pipeline/internal/tabulate"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
	"yardproof/schema/plan"
)

// Config says what a run works on.
type Config struct {
	Paths []string // plans and folders of plans
	Jobs  int      // plans worked on at the same time; 0 for one a processor, 128 at most

	// Today is the day on which exceptions that have a last day are held
	// against it. When it is not given none has run out.
	Today plan.Date

	// Project is the project file of all plans; when it is empty, of each the
	// nearest one upward.
	Project string
	// Levels are levels of rules, before those of the projects.
	Levels Levels
	// Exclude are files and folders that are left out of the folders that are
	// searched, by their paths as findings show them.
	Exclude []plan.Glob
	// Given is a plan that is handed over; nil when there is none.
	Given *Given

	// Text is a pattern's text that is held against the plan, of which there has to
	// be one. What is wrong with the plan itself is then only counted.
	Text *Text

	// Tables asks for the sheets of plans and of the line. Without them nothing
	// is written, for there is nothing to export.
	Tables bool
	// Numbers asks for the numbers of plans and how they came about, in place of
	// their sheets.
	Numbers bool
	// Draft writes plans that are not proved, too.
	Draft bool

	// Version names the program that runs, for what is kept from run to run.
	// Nothing is kept or recalled when it is empty.
	Version string
	// Memory is what earlier runs found. It is used of a plan if the plan, its
	// settings, the prices of its articles and the program are the same. Nil
	// recalls and keeps nothing.
	Memory store.Memory
	// Sink is where each plan that may be exported is written and, once every
	// plan is done and unless the run was interrupted, the line. What is there
	// already is not worked out again. Nil writes nothing.
	Sink store.Sink
	// Gather derives nothing: each plan that can be read must be recalled, or
	// it is a finding of run/no-result. Plans are not written.
	Gather bool

	// Besides are files that are read for this run, besides plans and what
	// their projects name.
	Besides []string
	// Reads is told which folders were searched, by their real paths, sorted,
	// and every file that the run is going to read, before the first plan is
	// read. An error ends the run: Run returns it.
	Reads func(folders, files []string) error
	// Progress is told how far the run is, one call at a time.
	Progress func(Progress)
}

// mostJobs keeps the number of files that are open at the same time well below
// what systems allow a process.
const mostJobs = 128

// Run works through all plans below the paths. Whatever goes wrong on the way
// is a finding of the run, an error of the sink or the memory too; the error is
// only ever the one of Config.Reads.
//
// The result is the same for any number of jobs. When the context is cancelled
// the plans under work are given up, nothing new is begun, and a finding of
// run/interrupted says so.
func Run(ctx context.Context, c Config) (*report.Run, error) {
	return newLine(c).run(ctx)
}

// Inputs are the files that a run would read, for who has to spare them though it
// does not begin, be it because the context is cancelled.
func Inputs(ctx context.Context, c Config) []string {
	l := newLine(c)
	l.find(context.WithoutCancel(ctx))
	return l.inputs()
}

func newLine(c Config) *line {
	l := &line{Config: c, files: disk{}, bolts: bolts.Solve, budgets: budgets{check: checkBudget, tables: tablesBudget, trials: trialBudget, slips: slipBudget}, jobs: min(c.Jobs, mostJobs)}
	if l.jobs <= 0 {
		l.jobs = runtime.GOMAXPROCS(0)
	}
	return l
}

func (l *line) run(ctx context.Context) (*report.Run, error) {
	l.solved = newSolved(ctx)
	folders, files := l.find(ctx), l.inputs()
	if l.Reads != nil {
		if err := l.Reads(folders, files); err != nil {
			return nil, err
		}
	}
	if l.Sink != nil {
		l.Sink.Begin(files)
	}
	l.each(ctx, func(_ context.Context, p *planFile) { l.read(p) })
	l.compareIDs()
	l.compareTitles()
	progress := l.progress()
	l.each(ctx, func(ctx context.Context, p *planFile) {
		progress.begin(p.name)
		l.work(ctx, p)
		progress.end(p.name)
	})
	progress.begin(wholeLine)
	run := l.report(ctx)
	l.end(ctx, run)
	return run, nil
}

// end ends the writing. An interrupted run removes nothing, and remembers what
// it wrote.
func (l *line) end(ctx context.Context, run *report.Run) {
	if l.Sink == nil {
		return
	}
	left, err := l.Sink.End(context.WithoutCancel(ctx), ctx.Err() == nil)
	if left.Unlocked != "" {
		run.Findings = append(run.Findings, noLock(left.Unlocked))
	}
	for _, name := range left.Changed {
		run.Findings = append(run.Findings, changedOutput(name))
	}
	if err != nil {
		run.Findings = append(run.Findings, failure(err, "", "")...)
	}
	run.Findings = diag.Sort(run.Findings)
}

// line is one run over a line of plans.
type line struct {
	Config
	files    storage
	jobs     int
	plans    []*planFile // in file order
	projects []*project  // in file order
	findings []diag.Finding
	solved   *solved
	bolts    supply.Solver
	text     *report.Reading // of a pattern, once it was read
	budgets
}

// each does something with every plan, several at a time. Nothing is begun
// once the context is cancelled.
func (l *line) each(ctx context.Context, do func(context.Context, *planFile)) {
	var g errgroup.Group
	g.SetLimit(l.jobs)
	for _, p := range l.plans {
		if ctx.Err() != nil {
			break
		}
		g.Go(func() error {
			do(ctx, p)
			return nil
		})
	}
	g.Wait() // what goes wrong with a plan is a finding of that plan
}

// report gathers what is known of every plan and of the line.
func (l *line) report(ctx context.Context) *report.Run {
	l.tellTitles()
	l.heedProjects()
	supplied := ctx.Err() == nil && l.supply(ctx)
	run := &report.Run{Findings: l.findings, Rules: catalogue()}
	l.sign(run)
	undone := 0
	for _, p := range l.plans {
		if !p.done {
			undone++
			continue
		}
		run.Plans = append(run.Plans, p.outcome)
	}
	if ctx.Err() != nil {
		run.Findings = append(run.Findings, check.Trouble("run/interrupted", "",
			fmt.Sprintf("the run was interrupted: %d of %d plans were not dealt with", undone, len(l.plans)),
			"run it again"))
	}
	run.Findings = diag.Sort(run.Findings)
	run.Cuttings = l.cuttings()
	run.Text = l.text
	if ctx.Err() == nil && supplied {
		l.finish(ctx, run)
	}
	return run
}

// catalogue is what reports may say of the rules.
func catalogue() []report.Rule {
	var rules []report.Rule
	for _, c := range check.Rules() {
		rules = append(rules, report.Rule{Name: c.Rule, Level: c.Level, Summary: c.Summary, Why: c.Why, Fix: c.Fix})
	}
	return rules
}

// sign gives the run the name and currency of its studio, where all its plans
// are of one.
func (l *line) sign(run *report.Run) {
	if len(l.projects) != 1 {
		return
	}
	if s := l.projects[0].settings; s != nil {
		run.Studio, run.Currency = s.Studio.Text, s.Currency
	}
}

// finish makes the line's own tables and hands the run on.
func (l *line) finish(ctx context.Context, run *report.Run) {
	if !l.Tables || len(l.plans) == 0 {
		return
	}
	stage := "tabulating"
	err := guard(func() string { return stage }, func() error {
		summaries := l.summaries()
		l.compare(run, summaries)
		run.Basis = l.lineBasis(run, summaries)
		if l.Sink != nil && l.Sink.Has("", run.Basis) {
			return nil
		}
		run.Sheets = tabulate.Line(run, summaries, l.supplies()...)
		stage = "exporting"
		if l.Sink == nil {
			return nil
		}
		return l.Sink.Line(ctx, run)
	})
	if err != nil {
		run.Findings = diag.Sort(append(run.Findings, failure(err, "", "")...))
	}
}
