// Package crossed makes a plan of every operation at every place that takes a part.
package crossed

import (
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

// operation is a part "x" made by one operation, with the parts that it needs.
type operation struct {
	name  string
	parts string // members of "parts"
}

// place is somewhere that names the part "x".
type place struct {
	name   string
	parts  string // members of "parts" that stand beside those of the operation
	layout string // the value of "layout"
}

// operations are all ways to make a part, most of them 6 1/2 in square unfinished. The
// sizes are invented.
func operations() []operation {
	const (
		sets = `"pair": { "strip_set": { "strips": [{ "fabric": "plum", "width": "3 1/2" }, { "fabric": "sand", "width": "3 1/2" }] } }`
		half = `"half": { "half_squares": { "fabrics": ["plum", "sand"], "square": "7 3/8", "trim": "6 1/2" } }`
		body = `"body": { "cut": { "fabric": "plum", "square": "6 1/2" } }`
	)
	return []operation{
		{"cut", `"x": { "cut": { "fabric": "plum", "square": "6 1/2" } }`},
		{"cut-once", `"x": { "cut": { "fabric": "plum", "square": "7 3/8", "halved": "once" } }`},
		{"cut-twice", `"x": { "cut": { "fabric": "plum", "square": "7 3/4", "halved": "twice" } }`},
		{"strip", `"x": { "strip": { "fabric": "plum", "width": "6 1/2" } }`},
		{"strip-set", `"x": { "strip_set": { "strips": [{ "fabric": "plum", "width": "3 1/2" }, { "fabric": "sand", "width": "3 1/2" }] } }`},
		{"segment", `"x": { "strip_set": { "strips": [{ "fabric": "plum", "width": "3 1/2" }, { "fabric": "sand", "width": "3 1/2" }], "segment": "6 1/2" } }`},
		{"slanted-segment", `"x": { "strip_set": { "strips": [{ "fabric": "plum", "width": "3 1/2" }, { "fabric": "sand", "width": "3 1/2" }], "segment": "6 1/2", "angle": 45 } }`},
		{"tube", sets + `, "x": { "tube": { "sets": ["pair", "pair"], "trim": "6 1/2" } }`},
		{"joined-tube", sets + `, "x": { "tube": { "sets": ["pair", "pair"], "joined": 2, "trim": "6 1/2" } }`},
		{"half-squares", `"x": { "half_squares": { "fabrics": ["plum", "sand"], "square": "7 3/8", "trim": "6 1/2" } }`},
		{"triangle-square", `"light": { "cut": { "fabric": "sand", "square": "7 3/8", "halved": "once" } }, "dark": { "cut": { "fabric": "plum", "square": "7 3/8", "halved": "once" } }, "x": { "triangle_square": { "of": ["light", "dark"], "trim": "6 1/2" } }`},
		{"hourglass", `"x": { "hourglass": { "half_squares": ["plum", "sand"], "trim": "6 1/2" } }`},
		{"flying-geese", `"x": { "flying_geese": { "goose": "plum", "sky": "sand", "finished": ["6", "3"] } }`},
		{"flip-corners", body + `, "x": { "flip_corners": { "body": "body", "corners": { "top left": { "fabric": "sand", "square": "2 1/2" } } } }`},
		{"square-in-square", `"x": { "square_in_square": { "centre": "plum", "corners": "sand", "finished": "6", "method": "flip" } }`},
		{"logs", `"x": { "logs": { "centre": { "fabric": "plum", "finished": "2" }, "log": "1", "rounds": 2, "fabrics": { "rounds": ["sand", "plum"] } } }`},
		{"triangle-60", `"x": { "shape": { "kind": "triangle 60", "fabric": "plum", "finished": "6" } }`},
		{"half-triangle-60", `"x": { "shape": { "kind": "half triangle 60", "fabric": "plum", "finished": "6" } }`},
		{"hexagon", `"x": { "shape": { "kind": "hexagon", "fabric": "plum", "finished": "3" } }`},
		{"diamond-45", `"x": { "shape": { "kind": "diamond 45", "fabric": "plum", "finished": "3" } }`},
		{"template", `"x": { "template": { "fabric": "plum", "box": ["6 1/2", "6 1/2"], "finished": ["6", "6"] } }`},
		{"rows", body + `, "other": { "cut": { "fabric": "sand", "size": ["3 1/2", "6 1/2"] } }, "x": { "rows": [["body", "other"]] }`},
		{"trim", body + `, "x": { "trim": { "part": "body", "square": "6" } }`},
		{"bordered", body + `, "x": { "bordered": { "part": "body", "borders": { "frame": { "fabric": "sand", "width": "1" } } } }`},
		{"sashed", `"small": { "cut": { "fabric": "plum", "square": "3 1/2" } }, "x": { "sashed": { "grid": { "rows": 2, "columns": 2, "blocks": [["small"]] }, "sashing": { "fabric": "sand", "width": "1" } } }`},
		{"on-point", `"small": { "cut": { "fabric": "plum", "square": "3 1/2" } }, "x": { "on_point": { "grid": { "rows": 2, "columns": 2, "blocks": [["small"]] }, "sides": "sand" } }`},
		{"recut", half + `, "x": { "recut": { "part": "half", "pieces": [2, 2], "turns": [0, 90, 180, 270] } }`},
		{"loop", sets + `, "x": { "loop": { "set": "pair", "cut": "2 1/2", "open": [1, 2] } }`},
		{"chain", `"x": { "chain": { "strips": "plum", "width": "2 1/2", "length": "160", "folds": 2 } }`},
		{"mosaic", `"gem": { "shape": { "kind": "diamond 45", "fabric": "plum", "finished": "3" } }, "x": { "mosaic": { "pieces": { "gem": 4 }, "finished": ["6", "6"], "edges": "trimmed" } }`},
	}
}

// places are all places of a plan that take a part. Where a part is an
// ingredient of another the layout is that other part.
func places() []place {
	grid := func(blocks string) string { return `{ "grid": { "rows": 2, "columns": 2, "blocks": ` + blocks + ` } }` }
	part := func(name, made string) place {
		return place{name, `"y": { ` + made + ` }`, grid(`[["y"]]`)}
	}
	const whole = `"whole": { "cut": { "fabric": "mist", "square": "12 1/2" } }`
	return []place{
		{"grid", "", grid(`[["x", { "part": "x", "turn": 90 }]]`)},
		{"mirrored-grid", "", `{ "grid": { "rows": 2, "columns": 2, "blocks": [["x"]], "symmetry": "mirror" } }`},
		{"written-rows", "", `{ "rows": [["x", "x"], [{ "part": "x", "mirror": true }, "x"]] }`},
		{"map", "", `{ "map": { "key": { "a": "x", "b": { "part": "x", "turn": 180 } }, "rows": ["ab", "ba"] } }`},
		{"sashed-layout", "", `{ "grid": { "rows": 2, "columns": 2, "blocks": [["x"]] }, "sashing": { "fabric": "mist", "width": "1" } }`},
		{"on-point-layout", "", `{ "setting": "on point", "grid": { "rows": 2, "columns": 2, "blocks": [["x"]] }, "triangles": { "sides": "mist" } }`},
		{"between-on-point", `"plain": { "cut": { "fabric": "mist", "square": "6 1/2" } }`, `{ "setting": "on point", "grid": { "rows": 2, "columns": 2, "blocks": [["plain"]], "between": [["x"]] }, "triangles": { "sides": "mist" } }`},
		{"pieced-border", whole, `{ "grid": { "rows": 1, "columns": 1, "blocks": [["whole"]] }, "borders": { "edge": { "part": "x", "width": "6" } } }`},
		{"border-corner", whole, `{ "grid": { "rows": 1, "columns": 1, "blocks": [["whole"]] }, "borders": { "edge": { "fabric": "sand", "width": "6", "corners": "corner squares", "corner_part": "x" } } }`},
		part("rows", `"rows": [["x", { "part": "x", "turn": 90 }], [{ "part": "x", "mirror": true }, "x"]]`),
		part("trim", `"trim": { "part": "x", "square": "5" }`),
		part("bordered", `"bordered": { "part": "x", "borders": { "frame": { "fabric": "mist", "width": "1" } } }`),
		part("sashed", `"sashed": { "grid": { "rows": 2, "columns": 2, "blocks": [["x"]] }, "sashing": { "fabric": "mist", "width": "1" } }`),
		part("on-point", `"on_point": { "grid": { "rows": 2, "columns": 2, "blocks": [["x"]] }, "sides": "mist" }`),
		part("recut", `"recut": { "part": "x", "pieces": [2, 1] }`),
		part("loop", `"loop": { "set": "x", "cut": "2 1/2", "open": [1] }`),
		part("tube", `"tube": { "sets": ["x", "x"] }`),
		part("triangle-square", `"triangle_square": { "of": ["x", "x"] }`),
		part("hourglass", `"hourglass": { "half_squares": "x" }`),
		part("mosaic", `"mosaic": { "pieces": { "x": 4 }, "finished": ["12", "12"] }`),
		part("flip-corners", `"flip_corners": { "body": "x", "corners": { "bottom right": { "fabric": "mist", "square": "2" } } }`),
		part("triangle-of-set", `"shape": { "kind": "triangle 60", "set": "x", "finished": "5" }`),
	}
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
