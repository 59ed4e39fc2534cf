package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"time"

	"yardproof/pipeline"
	"yardproof/pipeline/diag"
	"yardproof/schema/amend"
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/source"
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
	took  time.Duration  // of a processor
}

// try makes a slip and follows what is told of it.
func (b *bench) try(s slip) (outcome, error) {
	begun := processor()
	found, err := b.check(s.text)
	if err != nil {
		return outcome{}, err
	}
	o := outcome{found: b.news(found), took: processor() - begun}
	if len(o.found) == 0 {
		return o, nil
	}
	o.first = b.restores(s.text, o.found[0])
	if !o.first {
		o.hints, err = b.follow(s.text)
	} else {
		o.hints = true
	}
	return o, err
}

// first is what the first way out that is told of a finding makes of a text; ok is
// false where it tells none that can be written.
func first(text string, f diag.Finding) (string, bool) {
	told := f.Told()
	if len(told) == 0 || len(told[0].Edits) == 0 {
		return "", false
	}
	after, err := amend.Apply([]byte(text), told[0].All())
	return string(after), err == nil
}

// restores reports whether the first way out of a finding brings back the plan as it is.
func (b *bench) restores(text string, f diag.Finding) bool {
	after, ok := first(text, f)
	return ok && b.of.same(after)
}

// mostSteps is how many ways out are followed, one after another.
const mostSteps = 4

// follow follows the first way out of the first finding until nothing new is found,
// and reports whether that brings back the plan as it is.
func (b *bench) follow(text string) (bool, error) {
	for range mostSteps {
		found, err := b.check(text)
		if err != nil {
			return false, err
		}
		news := b.news(found)
		if len(news) == 0 {
			break
		}
		after, ok := first(text, news[0])
		if !ok {
			break
		}
		text = after
	}
	return b.of.same(text), nil
}

// same reports whether a text says what the plan says, in other words perhaps: 4 1/2 is 4.5.
func (l *line) same(text string) bool {
	tree, problems := jsontree.Parse(source.New(l.name, []byte(text)), jsontree.DefaultLimits())
	return len(problems) == 0 && l.alike(l.tree, tree)
}

func (l *line) alike(a, b *jsontree.Node) bool {
	if a == nil || b == nil || a.Kind == jsontree.Object && b.Kind != jsontree.Object || len(a.Members) != len(b.Members) || len(a.Items) != len(b.Items) {
		return false
	}
	for _, m := range a.Members {
		if !l.alike(m.Value, b.Get(m.Key)) {
			return false
		}
	}
	for i := range a.Items {
		if !l.alike(a.Items[i], b.Items[i]) {
			return false
		}
	}
	if a.Text == b.Text {
		return true
	}
	x, err := measure.ParseLength(a.Text, l.plan.Units)
	y, also := measure.ParseLength(b.Text, l.plan.Units)
	return err == nil && also == nil && x == y
}
