package main

import (
	"context"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"yardproof/exporters"
	"yardproof/pipeline"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
	"yardproof/pipeline/why"
)

const whyText = `WHAT is one or several numbers that are derived of the plan:

  trio                    every number of a part, fabric or border
  "finished width"        a number by its name, in every size
  "strips of trio"        those of trio in whose name each of the words stands
  "background in queen"   those of one size
  /parts/step/tube/trim   those that are worked out from what the plan says there

Without it all of them are listed. Each is told with its formula, what stands for
the symbols of it, and the line of the plan that says that; what was derived
itself is told in the same way below it, once.
`

func whyCommand() command {
	return command{
		name: "why", args: "PLAN [WHAT]",
		summary: "tell how a number of a plan came about",
		about:   whyText,
		flags: func(f *pflag.FlagSet, o *options) {
			f.IntVar(&o.depth, "depth", 0, "tell so many `LEVELS` of formulas; all of them if it is 0")
			f.BoolVar(&o.markdown, "markdown", false, "print Markdown")
			f.BoolVar(&o.asJSON, "json", false, "print JSON")
			f.StringVar(&o.config, "config", "", "the project `FILE` of the plan; the nearest yardproof.json upward if it is not given")
		},
		exits: `Exit status:
  0  it was printed
  1  the plan cannot be read
  2  the command line makes no sense, or the plan has no such number
  3  could not finish
`,
		paths: true,
		run:   tellWhy,
	}
}

func tellWhy(ctx context.Context, s streams, o *options, args []string) (int, error) {
	switch {
	case len(args) == 0 || slices.Contains(args, "") || args[0] == toStdout:
		return 0, misuse("name a plan and one of its numbers")
	case folder(args[0]):
		return 0, misuse("%s is a folder: name one plan", exporters.Shown(args[0]))
	case o.depth < 0:
		return 0, misuse("--depth is 0 or more, not %d", o.depth)
	case o.markdown && o.asJSON:
		return 0, misuse("choose one of --markdown and --json")
	}
	o.failOn, o.color = diag.Error.String(), "never"
	set, err := o.settle(ctx, s, args[:1])
	if err != nil {
		return set.refuse(ctx, s, err)
	}
	set.quiet = true // one plan needs no progress bar
	asked := strings.Join(args[1:], " ")
	w := &numbersOf{asked: asked, depth: o.depth}
	run, err := set.run(ctx, s, pipeline.Config{Tables: true, Draft: true, Numbers: true, Sink: w})
	switch {
	case err != nil:
		return 0, err
	case w.plan == nil:
		return status(run.All(), diag.Error), s.complain(run)
	case len(w.found) == 0 && asked != "":
		return 0, misuse("the plan has no number %q; it has some of %s", asked, w.names())
	}
	return exitClean, w.print(s, o, args[0])
}

// numbersOf is a sink that finds numbers of the one plan that it is handed.
type numbersOf struct {
	asked string
	depth int
	plan  *report.Plan
	found []report.Derived
}

// print writes what was found.
func (w *numbersOf) print(s streams, o *options, file string) error {
	all := why.Answers(w.plan, w.found, w.depth)
	text := ""
	switch {
	case o.asJSON:
		return s.json(map[string]any{"plan": exporters.Shown(file), "numbers": all})
	case o.markdown:
		text = why.Markdown(all, exporters.Shown(file))
	default:
		text = why.Text(all, exporters.Shown(file))
	}
	for line := range strings.Lines(text) {
		if _, err := io.WriteString(s.stdout, exporters.OneLine(strings.TrimSuffix(line, "\n"))+"\n"); err != nil {
			return err
		}
	}
	return nil
}

// names are what the plan's numbers are of.
func (w *numbersOf) names() string {
	var all []string
	for _, n := range w.plan.Numbers {
		name := n.Of
		if name == "" {
			name = n.Is
		}
		if !slices.Contains(all, name) {
			all = append(all, name)
		}
	}
	return strings.Join(all, ", ")
}

// Begin implements store.Sink.
func (*numbersOf) Begin([]string) {}

// Has implements store.Sink.
func (*numbersOf) Has(string, string) bool { return false }

// Plan implements store.Sink.
func (w *numbersOf) Plan(_ context.Context, p *report.Plan) error {
	w.plan, w.found = p, why.Find(p, w.asked)
	return nil
}

// Line implements store.Sink.
func (*numbersOf) Line(context.Context, *report.Run) error { return nil }

// End implements store.Sink.
func (*numbersOf) End(context.Context, bool) (store.Left, error) { return store.Left{}, nil }
