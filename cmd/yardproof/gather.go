package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"yardproof/pipeline"
	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/store"
)

func gatherCommand() command {
	return command{
		name: "gather", args: "RESULT... --out DIR",
		summary: "make one line of what several exports have found",
		about: `A RESULT is a file that yardproof export --results wrote, or a folder of them.
Start gather where the exports were started, beside the same plans, project
files and price lists: it derives nothing, and writes the reports and the line's
own tables, byte for byte as one export of all the plans would.

A result of another version of yardproof, of another text of the plan or of
other settings or prices is refused. With --line each plan below a PATH must
have its result; without it the line is the plans that have one.
`,
		flags: gatherFlags,
		paths: true,
		run:   gather,
	}
}

func gatherFlags(f *pflag.FlagSet, o *options) {
	f.StringArrayVar(&o.line, "line", nil, "the plans of the line, `PATH` as export takes it; may be given several times")
	outFlags(f, o)
	checkFlags(f, o)
}

func gather(ctx context.Context, s streams, o *options, paths []string) (int, error) {
	if len(paths) == 0 && o.list == "" {
		return 0, misuse("name a result or a folder of results")
	}
	set, err := o.settle(ctx, s, paths)
	if err != nil {
		return set.refuse(ctx, s, err)
	}
	if err := o.settleExport(&set); err != nil {
		return 0, err
	}
	version := identityOf(buildInfo())
	g := readResults(set.paths, version)
	set.reads = append(set.reads, g.files...)
	if err := set.spare(set.reads); err != nil {
		return 0, err
	}
	if len(g.findings) > 0 {
		return set.conclude(ctx, s, pipeline.Refused(g.findings))
	}
	w, err := openWriter(ctx, s, set)
	if err != nil {
		return set.conclude(ctx, s, pipeline.Unwritable(ctx, err))
	}
	defer w.close()
	for _, r := range g.results {
		w.ledger.Know(r.Exports)
	}
	if set.paths = o.line; len(set.paths) == 0 {
		set.paths = slices.Sorted(maps.Keys(g.results))
	}
	run, err := set.run(ctx, s, pipeline.Config{
		Tables: true, Gather: true, Version: version,
		Inputs: w.spare,
		Recall: func(file string) *store.Result { return g.results[file] },
		Keep: func(r *store.Result) error {
			return errors.Join(w.adopt(r, g.results[r.File].Exports), w.keep(r))
		},
		CurrentLine: w.currentLine, Line: w.line,
	})
	if err != nil {
		return 0, err
	}
	w.finish(ctx, run)
	return set.conclude(ctx, s, run)
}

// gathered is what the results of a line say, by plan.
type gathered struct {
	results  map[string]*store.Result
	files    []string // that the results were read from
	texts    map[string][]byte
	findings []diag.Finding
}

// readResults reads results. What is wrong with one is a finding, and nothing
// is gathered then.
func readResults(paths []string, version string) *gathered {
	g := &gathered{results: map[string]*store.Result{}, texts: map[string][]byte{}}
	for _, path := range paths {
		g.path(path, version)
	}
	g.findings = diag.Sort(g.findings)
	return g
}

func (g *gathered) path(path, version string) {
	info, err := os.Stat(path)
	if err != nil || !info.IsDir() {
		g.file(path, version)
		return
	}
	entries, err := os.ReadDir(path)
	if err != nil {
		g.refuse(path, "the folder could not be read: "+err.Error())
		return
	}
	before := len(g.files) + len(g.findings)
	for _, e := range entries {
		file := filepath.Join(path, e.Name())
		switch {
		case !strings.HasSuffix(e.Name(), store.ResultSuffix):
		case pipeline.LeadsOut(file, []string{identity(path)}):
			g.findings = append(g.findings, pipeline.Outside(file, "the folder"))
		default:
			g.file(file, version)
		}
	}
	if before == len(g.files)+len(g.findings) {
		g.refuse(path, "the folder holds no result: none of its files has a name that ends in "+store.ResultSuffix)
	}
}

func (g *gathered) file(path, version string) {
	text, findings := pipeline.ReadFile(path, store.MaxResultBytes)
	g.files = append(g.files, path)
	if len(findings) > 0 {
		g.findings = append(g.findings, findings...)
		return
	}
	name := filepath.ToSlash(path)
	r, err := store.ReadResult(name, text, version)
	other, isOther := errors.AsType[store.OtherVersion](err)
	switch {
	case isOther:
		g.refuse(path, fmt.Sprintf("the result was made by yardproof %s, and this is %s", other.Made, version))
	case err != nil:
		g.findings = append(g.findings, store.Unusable(name, text, err))
	case g.results[r.File] != nil && !bytes.Equal(g.texts[r.File], text):
		g.refuse(path, "there is another result of "+r.File+", and the two differ")
	default:
		g.results[r.File], g.texts[r.File] = r, text
	}
}

func (g *gathered) refuse(path, message string) {
	g.findings = append(g.findings, check.Trouble("run/no-result", filepath.ToSlash(path), message,
		"export all plans of the line with --results, with one version of yardproof, and gather those"))
}
