package main

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"yardproof/pipeline"
	"yardproof/pipeline/diag"
)

// verdict is what was said of a move.
type verdict struct {
	level  diag.Level // of the gravest finding at the figure or with it as second place, 0 where there is none
	rule   string
	follow bool // it is folded under another
}

// judge runs the pipeline over all moves of a plan, each a plan of its own in a
// folder with the line's project file, and looks for findings that the plan as
// it is does not have.
func judge(folder string, l *line, moves []move) ([]verdict, error) {
	dir, err := os.MkdirTemp("", "slips")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	if err := settle(folder, dir); err != nil {
		return nil, err
	}
	paths := []string{filepath.Join(dir, "as-it-is.plan.json")}
	if err := os.WriteFile(paths[0], l.file.Bytes, 0o644); err != nil {
		return nil, err
	}
	for i, m := range moves {
		path := filepath.Join(dir, fmt.Sprintf("moved-%04d.plan.json", i))
		if err := os.WriteFile(path, []byte(m.text), 0o644); err != nil {
			return nil, err
		}
		paths = append(paths, path)
	}
	run, err := pipeline.Run(context.Background(), pipeline.Config{Paths: paths})
	if err != nil {
		return nil, err
	}
	if len(run.Plans) != len(paths) {
		return nil, fmt.Errorf("%s: %d plans were judged of %d", l.name, len(run.Plans), len(paths))
	}
	known := said(run.Plans[0].Findings) // files in order: as-it-is before moved
	verdicts := make([]verdict, len(moves))
	for i, m := range moves {
		verdicts[i] = m.verdict(run.Plans[i+1].Findings, known, false)
	}
	return verdicts, nil
}

// settle lays the line's project file and lists in a folder, without the runs of
// kits: what is ordered for them has nothing to do with what is printed.
func settle(from, to string) error {
	entries, err := os.ReadDir(from)
	if err != nil {
		return err
	}
	for _, e := range entries {
		if e.IsDir() || strings.HasSuffix(e.Name(), ".plan.json") {
			continue
		}
		text, err := os.ReadFile(filepath.Join(from, e.Name()))
		if err != nil {
			return err
		}
		if e.Name() == "yardproof.json" {
			var settings map[string]any
			if err := json.Unmarshal(text, &settings); err != nil {
				return err
			}
			for _, key := range []string{"run", "stock", "landed", "exceptions"} {
				delete(settings, key)
			}
			if text, err = json.Marshal(settings); err != nil {
				return err
			}
		}
		if err := os.WriteFile(filepath.Join(to, e.Name()), text, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// said names findings, and those that are folded under them.
func said(found []diag.Finding) map[string]bool {
	all := map[string]bool{}
	for _, f := range found {
		all[named(f)] = true
		for name := range said(f.Follows) {
			all[name] = true
		}
	}
	return all
}

func named(f diag.Finding) string { return f.Rule + " " + f.Place.Pointer + " " + f.Message }

// verdict finds the gravest finding about the figure that is moved.
func (m move) verdict(found []diag.Finding, known map[string]bool, folded bool) verdict {
	var v verdict
	for _, f := range found {
		if !known[named(f)] && m.about(f) && f.Level > v.level {
			v = verdict{f.Level, f.Rule, folded}
		}
		if w := m.verdict(f.Follows, known, true); w.level > v.level {
			v = w
		}
	}
	return v
}

// about reports whether a finding stands at the figure, or at the one it is
// exchanged with, or names it as its second place.
func (m move) about(f diag.Finding) bool {
	if m.at(f.Place) {
		return true
	}
	for _, r := range f.Related {
		if m.at(r.Place) {
			return true
		}
	}
	return false
}

func (m move) at(p diag.Place) bool {
	return p.Pointer == m.of.place(m.fig) || m.other != nil && p.Pointer == m.of.place(*m.other) ||
		m.fig.pair() && strings.HasPrefix(p.Pointer, m.of.place(m.fig)+"/")
}

// pair tells a figure that is one side of a printed size: the size is the
// figure.
func (f figure) pair() bool { return f.side == "width" || f.side == "height" }

// place is the pointer to a figure, of a size to both its sides.
func (l *line) place(f figure) string {
	p := l.pointer(f.at)
	if f.pair() {
		return strings.TrimSuffix(strings.TrimSuffix(p, "/0"), "/1")
	}
	return p
}
