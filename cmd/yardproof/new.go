package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"yardproof/exporters"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
	"yardproof/schema/starter"
)

// planSuffix ends the name of every plan file.
const planSuffix = ".plan.json"

func newCommand() command {
	return command{
		name: "new", args: "[SHAPE [PATH]]",
		summary: "write a new plan from a starting shape, or list the shapes",
		about: `The plan is small and in order; change its fabrics, cuts and sizes from there.
PATH is the file to write, a folder to write ID.plan.json in, or - for standard
output; without it the plan is written in this folder. Nothing is replaced.

Shapes:
` + shapeList(),
		flags: newFlags,
		takes: shapeOffers,
		paths: true,
		exits: `Exit status:
  0  the plan was written
  2  the command line makes no sense, and nothing was done
  3  the plan could not be written: there is a file of that name, or the
     system refused
`,
		run: newPlan,
	}
}

func shapeOffers() []offer {
	var offers []offer
	for _, s := range starter.Shapes() {
		offers = append(offers, offer{s.Name, s.Summary})
	}
	return offers
}

func newFlags(f *pflag.FlagSet, o *options) {
	f.StringVar(&o.id, "id", "", "the plan's `ID`: small letters, digits and hyphens; that of PATH or SHAPE if it is not given")
	f.StringVar(&o.title, "title", "", "the pattern's `TITLE`; made of the id if it is not given")
	f.StringVar(&o.units, "units", "in", "the `UNIT` of the plan: in or cm")
	choose(f, "units", "in", "cm")
}

func shapeList() string {
	var s strings.Builder
	for _, shape := range starter.Shapes() {
		fmt.Fprintf(&s, "  %-18s %s\n", shape.Name, shape.Summary)
	}
	return s.String()
}

func newPlan(ctx context.Context, s streams, o *options, args []string) (int, error) {
	switch {
	case len(args) == 0 && o.id == "" && o.title == "":
		_, err := io.WriteString(s.stdout, shapeList())
		return exitClean, err
	case len(args) == 0 || len(args) > 2:
		return 0, misuse("name one shape and at most one path")
	case len(args) == 2 && args[1] == "":
		return 0, misuse("the path is empty")
	}
	path := "."
	if len(args) == 2 {
		path = args[1]
	}
	b := o.begin(args[0], path)
	text, err := begun(args[0], b)
	if err != nil {
		return 0, err
	}
	if path == toStdout {
		_, err := s.stdout.Write(text)
		return exitClean, err
	}
	if isFolder(path) {
		path = filepath.Join(path, b.ID+planSuffix)
	}
	return lay(ctx, s, path, text)
}

// lay writes a new plan and says where it is.
func lay(ctx context.Context, s streams, path string, text []byte) (int, error) {
	dir, base := filepath.Split(path)
	if !strings.HasSuffix(base, planSuffix) || base == planSuffix {
		return 0, misuse("%q is not a plan by its name, which should end in %s", filepath.ToSlash(path), planSuffix)
	}
	if err := store.Lay(ctx, filepath.Clean(dir), []report.File{{Name: base, Bytes: text}}); err != nil {
		return 0, err
	}
	_, err := fmt.Fprintln(s.stdout, exporters.Shown(path))
	return exitClean, err
}

func isFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir() || os.IsPathSeparator(path[len(path)-1])
}

// begin is what the flags say of a plan, and what follows where they do not.
func (o *options) begin(shape, path string) starter.Begin {
	b := starter.Begin{ID: o.id, Title: o.title, Units: o.units}
	if b.ID == "" {
		b.ID = shape
		if base, ok := strings.CutSuffix(filepath.Base(path), planSuffix); ok && base != "" {
			b.ID = base
		}
	}
	if b.Title == "" {
		b.Title = titleOf(b.ID)
	}
	return b
}

// titleOf makes "Garden Path" of "garden-path".
func titleOf(id string) string {
	words := strings.Split(id, "-")
	for i, w := range words {
		if w != "" {
			words[i] = strings.ToUpper(w[:1]) + w[1:]
		}
	}
	return strings.Join(words, " ")
}

// begun is the text of a new plan. An error is one of usage.
func begun(shape string, b starter.Begin) ([]byte, error) {
	text, problems, err := starter.Plan(shape, b)
	switch {
	case err != nil:
		return nil, usageError{fmt.Errorf("%w; `yardproof new` lists the shapes", err)}
	case len(problems) > 0:
		return nil, usageError{errors.New(problems[0].Message + ": " + problems[0].Hint)}
	}
	return text, nil
}
