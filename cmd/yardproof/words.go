package main

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"yardproof/exporters"
	"yardproof/pipeline"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
	"yardproof/pipeline/words"
)

const wordsText = `TEXT is the pattern's own text, plain or Markdown, in UTF-8; - is standard input.
Every number in it is held against the figures of the plan: those that are
derived and those that it prints. Which figure a number states is told by the
words near it: the names of fabrics, parts, borders and sizes, the words of the
trade, headings, and the rows and columns of tables. A list like 4 (6, 9) gives
the sizes in the order of the plan.

A number that is another than the plan's is an error; one of which it cannot be
told what it states is a note. Lengths are compared exactly, or where the text
says 'about' as rounded to what it writes. With --verbose the text report lists
every number and what it was taken for; the reports json and markdown always do.

With --write there is no TEXT: what to buy, how to cut and how to sew is written
from the plan's own tables, ready to paste, in the plan's units. A plan with
errors is not written.
`

func wordsCommand() command {
	return command{
		name: "words", args: "PLAN [TEXT]",
		summary: "hold the text of a pattern against its plan, or write one",
		about:   wordsText,
		flags: func(f *pflag.FlagSet, o *options) {
			f.BoolVar(&o.writeText, "write", false, "write a text from the plan's tables to standard output")
			f.StringVar(&o.size, "size", "", "with --write, only this `SIZE`; all of the plan if it is not given")
			f.BoolVar(&o.markdown, "markdown", false, "with --write, Markdown rather than plain text")
			wordsFlags(f, o)
		},
		paths: true,
		run:   readWords,
	}
}

// wordsFlags declares the flags of a run over one plan.
func wordsFlags(f *pflag.FlagSet, o *options) {
	f.StringVar(&o.failOn, "fail-on", "error", "the least `LEVEL` of a finding that makes the exit status 1: error, warning or note")
	choose(f, "fail-on", "error", "warning", "note")
	reportFlag(f, o)
	colorFlag(f, o)
	f.StringVar(&o.config, "config", "", "the project `FILE` of the plan; the nearest yardproof.json upward if it is not given")
	ruleFlag(f, o)
	f.StringVar(&o.today, "today", "", "hold the last day of exceptions against this `DATE`, YYYY-MM-DD; SOURCE_DATE_EPOCH's, in UTC, or the system's if it is not given")
	f.BoolVar(&o.verbose, "verbose", false, "the text report also lists every number and what it was taken for, and accepted findings with their reasons")
	f.BoolVar(&o.quiet, "quiet", false, "no report that was not asked for with --report")
}

func readWords(ctx context.Context, s streams, o *options, args []string) (int, error) {
	switch {
	case o.writeText && len(args) != 1:
		return 0, misuse("words --write takes one plan and no text")
	case !o.writeText && len(args) != 2:
		return 0, misuse("name a plan and the text of its pattern, or --write")
	case !o.writeText && (o.markdown || o.size != ""):
		return 0, misuse("--markdown and --size are for --write")
	case slices.Contains(args, ""), args[0] == toStdout:
		return 0, misuse("name a plan; only the text can be standard input")
	case folder(args[0]):
		return 0, misuse("%s is a folder: name one plan", exporters.Shown(args[0]))
	}
	quiet := o.quiet
	set, err := o.settle(ctx, s, args[:1])
	if err != nil {
		return set.refuse(ctx, s, err)
	}
	set.quiet = true // one plan needs no progress bar
	if o.writeText {
		return set.writeWords(ctx, s, o, quiet)
	}
	text, findings := readText(ctx, s, args[1])
	switch {
	case ctx.Err() != nil:
		return set.refuse(ctx, s, ctx.Err())
	case len(findings) > 0:
		return set.conclude(ctx, s, pipeline.Refused(findings))
	}
	if args[1] != toStdout {
		set.reads = append(set.reads, args[1])
	}
	return set.work(ctx, s, pipeline.Config{Text: text})
}

func folder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

// readText reads the text from a file or from standard input: of one that is too
// large as much as is needed to see that.
func readText(ctx context.Context, s streams, path string) (*pipeline.Text, []diag.Finding) {
	if path == toStdout {
		given, findings := pipeline.ReadGiven(streamName, untilDone{ctx, s.stdin})
		if len(findings) > 0 {
			return nil, findings
		}
		return &pipeline.Text{Name: streamName, Bytes: given.Text}, nil
	}
	b, findings := pipeline.ReadFile(path, pipeline.LargestText())
	if len(findings) > 0 {
		return nil, findings
	}
	return &pipeline.Text{Name: filepath.ToSlash(path), Bytes: b}, nil
}

// writeWords writes a text from a plan's tables. Findings go where they do not mix
// with it.
func (set settings) writeWords(ctx context.Context, s streams, o *options, quiet bool) (int, error) {
	w := &inWords{size: o.size, markdown: o.markdown}
	run, err := set.run(ctx, s, pipeline.Config{Tables: true, Sink: w})
	switch {
	case err != nil:
		return 0, err
	case w.wrong != nil:
		return 0, w.wrong
	}
	if w.text == "" || status(run.All(), diag.Error) != exitClean {
		if quiet {
			return status(run.All(), set.failOn), nil
		}
		return status(run.All(), set.failOn), s.complain(run)
	}
	_, err = io.WriteString(s.stdout, w.text)
	return exitClean, err
}

// inWords is a sink that makes a text of the one plan that it is handed.
type inWords struct {
	size     string
	markdown bool
	text     string
	wrong    error
}

// Begin implements store.Sink.
func (*inWords) Begin([]string) {}

// Has implements store.Sink.
func (*inWords) Has(string, string) bool { return false }

// Plan implements store.Sink.
func (w *inWords) Plan(_ context.Context, p *report.Plan) error {
	if w.size != "" && !slices.Contains(p.Sizes, w.size) {
		w.wrong = misuse("the plan has no size %q; it has %s", w.size, strings.Join(p.Sizes, ", "))
		return nil
	}
	w.text = words.Write(p, w.size, w.markdown)
	return nil
}

// Line implements store.Sink.
func (*inWords) Line(context.Context, *report.Run) error { return nil }

// End implements store.Sink.
func (*inWords) End(context.Context, bool) (store.Left, error) { return store.Left{}, nil }
