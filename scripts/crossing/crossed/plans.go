// Package crossed makes a plan of every operation at every place that takes a part.
package crossed

import (
	_ "embed"
	"fmt"
	"strings"
)

// Plan is one crossing: an operation as an ingredient of a place.
type Plan struct {
	Operation, Place string
	Text             string // the plan
}

// Name is the plan's id, and its file's name without the ending.
func (p Plan) Name() string { return p.Operation + "-in-" + p.Place }

//go:embed operations.txt
var operationsText string

//go:embed places.txt
var placesText string

// operation is a part "x" made by one operation, with the parts that it needs.
type operation struct {
	name  string
	parts string // members of "parts"
}

// place is somewhere that names the part "x".
type place struct {
	name   string
	layout string // the value of "layout"
	parts  string // members of "parts" that stand beside those of the operation
}

// operations are all ways to make a part.
func operations() (all []operation) {
	for _, line := range lines(operationsText) {
		name, parts, _ := strings.Cut(line, ": ")
		all = append(all, operation{name, parts})
	}
	return all
}

// places are all places of a plan that take a part.
func places() (all []place) {
	for _, line := range lines(placesText) {
		if parts, more := strings.CutPrefix(line, "  "); more {
			all[len(all)-1].parts = parts
			continue
		}
		name, layout, _ := strings.Cut(line, ": ")
		all = append(all, place{name: name, layout: layout})
	}
	return all
}

// lines are those of a text that are no remarks.
func lines(text string) (all []string) {
	for line := range strings.Lines(text) {
		if !strings.HasPrefix(line, "#") {
			all = append(all, strings.TrimSuffix(line, "\n"))
		}
	}
	return all
}

// Plans are every operation at every place, in one order.
func Plans() []Plan {
	var all []Plan
	for _, o := range operations() {
		for _, p := range places() {
			plan := Plan{Operation: o.name, Place: p.name}
			plan.Text = text(plan.Name(), o, p)
			all = append(all, plan)
		}
	}
	return all
}

// text is the whole plan: one size, bound, with nothing printed.
func text(name string, o operation, p place) string {
	parts := o.parts
	if p.parts != "" {
		parts += ",\n    " + p.parts
	}
	lines := []string{
		`{`,
		fmt.Sprintf(`  "format": 1, "id": %q, "title": %q, "status": "draft", "skill": "advanced", "use": "wall", "units": "in",`, name, strings.ReplaceAll(name, "-", " ")),
		`  "cautions": ["rotary-cutter", "iron", "bias-edges", "bias-outside"],`,
		`  "tools": { "rulers": [{ "square": "16 1/2", "angles": [45, 60] }] },`,
		`  "seam": { "allowance": "1/4", "stitch": "301" },`,
		`  "fabrics": { "plum": { "name": "Plum", "yardage": {} }, "sand": { "name": "Sand", "yardage": {} }, "mist": { "name": "Mist", "yardage": {} } },`,
		`  "parts": {`,
		`    ` + parts,
		`  },`,
		`  "layout": ` + p.layout + `,`,
		`  "finish": { "backing": { "fabric": "sand" }, "binding": { "fabric": "mist", "cut": "2 1/2" } },`,
		`  "sizes": { "one": {} },`,
		`  "printed": { "one": "not printed" }`,
		`}`,
	}
	return strings.Join(lines, "\n") + "\n"
}
