package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"yardproof/schema/starter"
)

// sources are the plans that slips are made in: those of a folder, and every
// shape that a new plan begins as, in inches and in centimetres. They are in
// order of their names.
func sources(folder string) ([]*line, error) {
	paths, err := filepath.Glob(filepath.Join(folder, "*.plan.json"))
	if err != nil {
		return nil, err
	}
	var all []*line
	for _, path := range paths {
		l, err := open(path, strings.TrimSuffix(filepath.Base(path), ".plan.json"))
		if err != nil {
			return nil, err
		}
		l.folder = folder
		all = append(all, l)
	}
	for _, shape := range starter.Shapes() {
		for _, units := range []string{"in", "cm"} {
			name := shape.Name + "-" + units
			text, _, err := starter.Plan(shape.Name, starter.Begin{ID: name, Title: name, Units: units})
			if err != nil {
				return nil, err
			}
			l, err := read(name, text)
			if err != nil {
				return nil, err
			}
			all = append(all, l)
		}
	}
	slices.SortFunc(all, func(a, b *line) int { return strings.Compare(a.name, b.name) })
	for i, l := range all {
		l.apart = i%3 == 2
	}
	return all, nil
}

// settled lays what the line of a plan has besides plans in a folder.
func (l *line) settled(dir string) error {
	if l.folder == "" {
		return os.MkdirAll(dir, 0o755)
	}
	return settle(l.folder, dir)
}
