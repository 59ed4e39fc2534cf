package main

import (
	"context"
	"os"
	"slices"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"yardproof/exporters"
	"yardproof/pipeline"
	"yardproof/pipeline/diag"
	"yardproof/schema/plan"
)

// options are the flags of all commands as they were typed; a command uses
// those that it declares.
type options struct {
	failOn  string
	reports []string
	jobs    int
	color   string
	quiet   bool
	verbose bool
	today   string
	known   string
	record  string
	since   string // of check
	list    string

	out     string
	formats []string
	draft   bool

	overwrite bool
	wait      bool
	fresh     bool
	results   string
	line      []string
	check     bool // of fmt

	id, title, units string // of new

	config    string
	exclude   []string
	rules     []string
	stdinPath string // of check
	asJSON    bool   // of version and explain

	writeText, markdown bool // of words
	size                string

	depth int // of why
}

// checkFlags declares the flags of every command that works through plans.
func checkFlags(f *pflag.FlagSet, o *options) {
	f.StringVar(&o.failOn, "fail-on", "error", "the least `LEVEL` of a finding that makes the exit status 1: error, warning or note")
	choose(f, "fail-on", "error", "warning", "note")
	reportFlag(f, o)
	jobsFlag(f, o)
	colorFlag(f, o)
	lineFlags(f, o)
	knownFlag(f, o)
	f.StringVar(&o.record, "write-baseline", "", "record all findings of this run in `FILE`, unless something kept it from being finished")
	f.StringVar(&o.today, "today", "", "hold the last day of exceptions against this `DATE`, YYYY-MM-DD; SOURCE_DATE_EPOCH's, in UTC, or the system's if it is not given")
	f.StringVar(&o.list, "files-from", "", "take paths from `FILE` too, - being standard input: one a line, or ended by NUL when there is any")
	f.BoolVar(&o.verbose, "verbose", false, "the text report also lists accepted findings with their reasons")
	f.BoolVar(&o.quiet, "quiet", false, "no progress bar, and no report that was not asked for with --report")
}

func reportFlag(f *pflag.FlagSet, o *options) {
	f.StringArrayVar(&o.reports, "report", nil,
		"write the findings as `FORMAT=PATH`, - being standard output; may be given several times, or several after commas; text=- if it is not given. Formats: "+strings.Join(reportNames(), ", "))
	choose(f, "report", each(reportNames(), "=")...)
}

func jobsFlag(f *pflag.FlagSet, o *options) {
	f.IntVar(&o.jobs, "jobs", 0, "work on `N` plans at the same time; 0 is one a processor")
}

func colorFlag(f *pflag.FlagSet, o *options) {
	f.StringVar(&o.color, "color", "auto", "colours on standard output, `WHEN`: auto (on a terminal, unless NO_COLOR is set), always or never")
	choose(f, "color", "auto", "always", "never")
}

func knownFlag(f *pflag.FlagSet, o *options) {
	f.StringVar(&o.known, "baseline", "", "tell only of findings that are not recorded in `FILE`, and count the others")
}

// outFlags declares the flags of every command that writes tables.
func outFlags(f *pflag.FlagSet, o *options) {
	f.StringVar(&o.out, "out", "", "the folder `DIR` to write to; it is created if need be")
	f.StringArrayVar(&o.formats, "format", []string{"xlsx"},
		"write the tables as `FORMAT`; may be given several times, or several after commas. Formats: "+strings.Join(exportNames(), ", "))
	choose(f, "format", exportNames()...)
	annotate(f, "format", several, "")
	f.BoolVar(&o.overwrite, "overwrite", false, "replace and remove files of the folder that somebody changed, too, or that were there before")
	f.BoolVar(&o.wait, "wait", false, "where another run is writing to the folder, wait for it to end")
}

func exportFlags(f *pflag.FlagSet, o *options) {
	outFlags(f, o)
	f.BoolVar(&o.fresh, "fresh", false, "work everything out again, whatever the folder remembers")
	f.StringVar(&o.results, "results", "", "write a result of each plan to the folder `DIR` for yardproof gather, and nothing of the line")
	f.BoolVar(&o.draft, "draft", false, "export plans with errors too, every sheet marked as not proved")
	checkFlags(f, o)
}

// lineFlags declares what every command takes that judges a line: which plans
// are its, and by what.
func lineFlags(f *pflag.FlagSet, o *options) {
	f.StringVar(&o.config, "config", "", "the project `FILE` of all plans; the nearest yardproof.json upward of each if it is not given")
	ruleFlag(f, o)
	excludeFlag(f, o)
}

func ruleFlag(f *pflag.FlagSet, o *options) {
	f.StringArrayVar(&o.rules, "rule", nil,
		"in this run a rule has another level, `NAME=LEVEL`: error, warning, note or off; may be given several times, or several after commas")
	choose(f, "rule", each(changeableRules(), "=")...)
	annotate(f, "rule", second, "error", "warning", "note", "off")
	annotate(f, "rule", several, "")
}

func excludeFlag(f *pflag.FlagSet, o *options) {
	f.StringArrayVar(&o.exclude, "exclude", nil,
		"leave out files and folders that match `GLOB`, by their paths as reports show them; without a slash, by their names; may be given several times")
}

// choose says which few values a flag takes, for completion.
func choose(f *pflag.FlagSet, name string, values ...string) { annotate(f, name, choices, values...) }

func annotate(f *pflag.FlagSet, name, key string, values ...string) {
	if err := f.SetAnnotation(name, key, values); err != nil {
		panic(err) // there is no such flag: a mistake in this file
	}
}

func each(words []string, end string) []string {
	var all []string
	for _, w := range words {
		all = append(all, w+end)
	}
	return all
}

func reportNames() []string {
	var names []string
	for _, f := range exporters.Reports() {
		names = append(names, f.Name)
	}
	return names
}

func exportNames() []string {
	var names []string
	for _, f := range exporters.Exports() {
		names = append(names, f.Name)
	}
	return names
}

// settings are the options of a run, understood.
type settings struct {
	paths   []string
	failOn  diag.Level
	reports []target
	jobs    int
	color   bool
	quiet   bool
	verbose bool
	today   plan.Date
	config  string // the project file of all plans, empty for the nearest of each
	rules   pipeline.Levels
	exclude []plan.Glob
	known   string   // a baseline to compare with, empty for none
	record  string   // a baseline to write, empty for none
	since   string   // a git revision to compare with, empty for none
	reads   []string // files that are read besides plans and what their projects name
	out     string
	formats []exporters.ExportFormat
	draft   bool

	overwrite bool
	wait      bool
	fresh     bool
	results   string
}

// settle understands the options that check and export share. Every error is
// one of usage, or that of a list of paths.
func (o *options) settle(ctx context.Context, s streams, paths []string) (settings, error) {
	set := settings{paths: paths, jobs: o.jobs, quiet: o.quiet, verbose: o.verbose, known: o.known, record: o.record, config: o.config}
	if len(paths) == 0 && o.list == "" || slices.Contains(paths, "") {
		return set, misuse("name a plan or a folder of plans")
	}
	var ok bool
	if set.failOn, ok = diag.ParseLevel(o.failOn); !ok {
		return set, misuse("--fail-on %q is not error, warning or note", o.failOn)
	}
	if o.jobs < 0 {
		return set, misuse("--jobs %d is less than 0", o.jobs)
	}
	var err error
	if set.today, err = today(o.today, os.Getenv("SOURCE_DATE_EPOCH"), time.Now()); err != nil {
		return set, err
	}
	if set.color, err = useColor(o.color, s.stdout); err != nil {
		return set, err
	}
	if set.rules, err = ruleLevels(o.rules); err != nil {
		return set, err
	}
	if set.exclude, err = globs(o.exclude); err != nil {
		return set, err
	}
	if len(o.reports) == 0 && !o.quiet {
		o.reports = []string{"text=" + toStdout}
	}
	if set.reports, err = targets(o.reports); err != nil || o.list == "" {
		return set, err
	}
	listed, err := pathsFrom(ctx, o.list, s.stdin)
	set.paths = append(slices.Clone(paths), listed...)
	if o.list != toStdout {
		set.reads = []string{o.list}
	}
	return set, err
}

// settleExport understands the options of export besides.
func (o *options) settleExport(set *settings) error {
	if o.out == "" {
		return misuse("name the folder to write to: --out DIR")
	}
	set.out, set.draft = o.out, o.draft
	set.overwrite, set.wait, set.fresh, set.results = o.overwrite, o.wait, o.fresh, o.results
	for _, name := range slices.Compact(slices.Sorted(slices.Values(commas(o.formats)))) {
		f, ok := exporters.Export(name)
		if !ok {
			return misuse("--format %q is not one of %s", name, strings.Join(exportNames(), ", "))
		}
		set.formats = append(set.formats, f)
	}
	return nil
}
