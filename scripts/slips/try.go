package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"yardproof/pipeline"
	"yardproof/pipeline/diag"
)

// bench is where the plans of a line are tried, in a folder with its project's
// files.
type bench struct {
	of    *line
	dir   string
	known map[string]bool // what is said of the plan as it is
}

func newBench(l *line) (*bench, error) {
	dir, err := os.MkdirTemp("", "slips")
	if err != nil {
		return nil, err
	}
	b := &bench{of: l, dir: dir}
	if err := l.settled(dir); err != nil {
		return nil, err
	}
	found, err := b.check(string(l.file.Bytes))
	b.known = said(found)
	return b, err
}

func (b *bench) close() { os.RemoveAll(b.dir) }

// check is what the program finds in a text of the plan.
func (b *bench) check(text string) ([]diag.Finding, error) {
	path := filepath.Join(b.dir, b.of.name+".plan.json")
	run, err := pipeline.Run(context.Background(), pipeline.Config{Jobs: 1, Paths: []string{path}, Given: &pipeline.Given{Path: path, Text: []byte(text)}})
	if err != nil {
		return nil, err
	}
	if len(run.Plans) != 1 {
		return nil, fmt.Errorf("%s: %d plans were checked", b.of.name, len(run.Plans))
	}
	return run.All(), nil
}

// news are the findings of warning or error that the plan as it is does not have,
// those that are folded under others left there.
func (b *bench) news(found []diag.Finding) []diag.Finding {
	return slices.DeleteFunc(slices.Clone(found), func(f diag.Finding) bool { return b.known[named(f)] || f.Level < diag.Warning })
}

// outcome is what became of a slip.
type outcome struct {
	found []diag.Finding // that are new; none where it is not seen
	first bool           // the first way out that is told brings back what was there
	hints bool           // following first ways out does
}

// try makes a slip and follows what is told of it.
func (b *bench) try(s slip) (outcome, error) {
	found, err := b.check(s.text)
	if err != nil {
		return outcome{}, err
	}
	o := outcome{found: b.news(found)}
	if len(o.found) == 0 {
		return o, nil
	}
	was := strings.Trim(s.was, `"`)
	o.first = strings.Contains(o.found[0].Hint, was) && (o.found[0].Place.Pointer == s.at || slices.ContainsFunc(o.found[0].Related, func(r diag.Related) bool { return r.Place.Pointer == s.at }))
	return o, nil
}
