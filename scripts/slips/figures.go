package main

import (
	"cmp"
	"fmt"
	"os"
	"slices"
	"strings"

	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// figure is one printed figure of a plan.
type figure struct {
	kind   string // "strips", "finished"
	at     source.Range
	text   string // the JSON value
	count  int64
	length measure.Length
	step   measure.Length // of the grid that a length lives on, 0 of a count
	write  func(measure.Length) string
	side   string // of a size, which it is; empty of a figure on its own
}

// line is a plan and its printed figures.
type line struct {
	name    string
	folder  string // whose project it is of, empty of a plan on its own
	apart   bool   // it is one of those that are set aside
	file    *source.File
	tree    *jsontree.Node
	plan    *plan.Plan
	figures []figure
}

// open reads a plan and lists its printed figures in the order written.
func open(path, name string) (*line, error) {
	text, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	return read(name, text)
}

func read(name string, text []byte) (*line, error) {
	l := &line{name: name, file: source.New(name, text)}
	tree, problems := jsontree.Parse(l.file, jsontree.DefaultLimits())
	if len(problems) > 0 {
		return nil, fmt.Errorf("%s: %s", name, problems[0].Message)
	}
	l.tree = tree
	l.plan, problems = plan.Decode(l.file, tree, plan.Merge(tree), nil)
	if len(problems) > 0 {
		return nil, fmt.Errorf("%s: %s", name, problems[0].Message)
	}
	for i := range l.plan.Sizes {
		if p := l.plan.Sizes[i].Printed; p != nil {
			l.list(&l.plan.Sizes[i], p)
		}
	}
	slices.SortStableFunc(l.figures, func(a, b figure) int { return cmp.Compare(a.at.Start, b.at.Start) })
	return l, nil
}

// list adds the printed figures of a size.
func (l *line) list(s *plan.Size, p *plan.Printed) {
	l.counts("parts", p.Parts)
	l.counts("sets", p.Sets)
	l.counts("tubes", p.Tubes)
	l.counts("per_tube", p.PerTube)
	l.counts("per_set", p.PerSet)
	l.counts("left", p.Left)
	l.counts("precuts", p.Precuts)
	l.counts("setting", p.Setting)
	for _, c := range p.Strips {
		l.add("strips", figure{at: c.Count.At, count: int64(c.N)})
		l.size("strip width", "", c.Width, l.ruler())
	}
	l.size("finished", "width", p.Finished[0], p.Rounding.Length)
	l.size("finished", "height", p.Finished[1], p.Rounding.Length)
	for _, m := range p.Measures {
		l.size("measures", "width", m.Width, l.ruler())
		if m.Height.At != m.Width.At {
			l.size("measures", "height", m.Height, l.ruler())
		}
	}
	for _, b := range p.Borders {
		l.size("border cut", "", b.Cut, l.ruler())
		l.size("border lengths", "sides", b.Sides, l.ruler())
		l.size("border lengths", "ends", b.Ends, l.ruler())
	}
	l.size("backing", "width", p.Backing.Width, p.Rounding.Length)
	l.size("backing", "height", p.Backing.Height, p.Rounding.Length)
	l.size("batting", "width", p.Batting.Width, p.Rounding.Length)
	l.size("batting", "height", p.Batting.Height, p.Rounding.Length)
	for _, f := range p.Fabric {
		grid := measure.Yard / 8
		if of := s.Fabric(f.Of.Text); of != nil && of.Grid > 0 {
			grid = of.Grid
		}
		l.fabric(f.Length, grid)
	}
	for _, t := range p.Thread {
		l.thread(t.Length)
	}
}

// ruler is the step of what is measured by a ruler: 1/8 in, or 1/2 cm.
func (l *line) ruler() measure.Length {
	if l.plan.Units == measure.Cm {
		return measure.Centimetre / 2
	}
	return measure.Inch / 8
}

func (l *line) add(kind string, f figure) {
	if f.at.Empty() {
		return
	}
	f.kind, f.text = kind, l.file.Slice(f.at)
	l.figures = append(l.figures, f)
}

func (l *line) counts(kind string, counts []plan.PrintedCount) {
	for _, c := range counts {
		l.add(kind, figure{at: c.At, count: int64(c.N)})
	}
}

// size is a length as cut or sewn, in the plan's unit.
func (l *line) size(kind, side string, x plan.Length, step measure.Length) {
	if x.Length > 0 {
		l.add(kind, figure{at: x.At, length: x.Length, step: step, side: side, write: func(y measure.Length) string { return quoted(y.Format(l.plan.Units)) }})
	}
}

// fabric is a length as fabric is sold, in the unit that it is printed in.
func (l *line) fabric(x plan.Length, step measure.Length) {
	unit := measure.In
	if strings.HasSuffix(strings.Trim(l.file.Slice(x.At), `"`), "m") {
		unit = measure.Cm
	}
	l.add("fabric", figure{at: x.At, length: x.Length, step: step, write: func(y measure.Length) string {
		text := measure.FormatFabric(y, unit)
		if strings.HasPrefix(text, "about ") {
			text = y.Format(unit)
		}
		return quoted(text)
	}})
}

// thread is a length of thread, in metres or yards.
func (l *line) thread(x plan.Length) {
	step, name := measure.Metre, "m"
	if strings.HasSuffix(strings.Trim(l.file.Slice(x.At), `"`), "yd") {
		step, name = measure.Yard, "yd"
	}
	l.add("thread", figure{at: x.At, length: x.Length, step: step, write: func(y measure.Length) string {
		return quoted(fmt.Sprintf("%s %s", measure.Rational(int64(y), int64(step)).Number(2), name))
	}})
}

func quoted(text string) string { return `"` + text + `"` }
