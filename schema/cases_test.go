package schema_test

import (
	"fmt"
	"strings"
)

// wrong is a small change that makes a right plan or project file wrong, and
// the one thing that is then said about it.
type wrong struct {
	keyword string // the schema's keyword that is broken
	old     string // what is replaced in the right text
	new     string
	want    string // code pointer: message -> hint
}

const rightPlan = `{
  "format": 1, "id": "tea-cosy", "title": "Tea Cosy", "units": "in", "skill": "beginner",
  "cautions": ["iron", "pins"],
  "seam": { "allowance": "1/4" },
  "fabrics": {
    "sky": { "yardage": { "usable_width": 42 }, "colour": "#a0b0c0" },
    "pack": { "precut": { "piece": ["2 1/2", "44"], "count": 20 } }
  },
  "tools": { "rulers": [{ "square": "9 1/2", "angles": [45, 60] }] },
  "parts": {
    "plain": { "cut": { "fabric": "sky", "square": "4 1/2" } },
    "set": { "strip_set": { "strips": ["pack", { "fabric": "sky", "width": "2 1/2" }] } },
    "loop": { "tube": { "sets": ["set", "set"], "tip": "far seam" } },
    "petal": { "template": { "fabric": "sky", "box": ["3", "4"], "area": 9.5 } }
  },
  "layout": { "grid": { "rows": 3, "columns": 4, "blocks": [["plain", { "part": "plain", "turn": 90 }]] } },
  "sizes": { "small": {} },
  "printed": { "small": { "finished": ["16 1/2", "12 1/2"], "parts": { "plain": 12 }, "strips": { "plain": 2 }, "fabric": { "sky": "1/2 yd" } } }
}`

func wrongPlans() []wrong {
	return []wrong{
		{"type", `"title": "Tea Cosy"`, `"title": 7`,
			`schema/wrong-type /title: "title" is 7; wanted: text in quotation marks -> write "7"`},
		{"type", `"allowance": "1/4"`, `"allowance": true`,
			`schema/wrong-type /seam/allowance: "allowance" of "seam" is true; wanted: a number or text in quotation marks -> write it like "1/4"`},
		{"type", `"rows": 3`, `"rows": "3"`,
			`schema/wrong-type /layout/grid/rows: "rows" of "grid" is "3"; wanted: a whole number -> leave out the quotation marks`},
		{"type", `"rows": 3`, `"rows": 2.5`,
			`schema/wrong-type /layout/grid/rows: "rows" of "grid" is 2.5; wanted: a whole number`},
		{"type", `"sky": "1/2 yd"`, `"sky": 0.5`,
			`schema/wrong-type /printed/small/fabric/sky: "sky" of "fabric" is 0.5; wanted: text in quotation marks -> write "0.5 yd" or "0.5 m"`},
		{"type", `["set", "set"]`, `{ "a": "set" }`,
			`schema/wrong-type /parts/loop/tube/sets: "sets" of "tube" is an object; wanted: a list in square brackets -> write it like "sets": ["pair", "pair"]`},
		{"type", `"sizes": { "small": {} }`, `"sizes": { "small": null }`,
			`schema/wrong-type /sizes/small: "small" of "sizes" is null; wanted: an object in braces -> write it like "small": {}`},
		{"type", `["plain", {`, `[["plain"], {`,
			`schema/wrong-type /layout/grid/blocks/0/0: item 1 of item 1 of "blocks" of "grid" is a list; wanted: text in quotation marks or an object in braces -> write it like "star" or { "part": "star", "turn": 90 }`},
		{"type", `"seam": { "allowance": "1/4" }`, `"seam": "1/4"`,
			`schema/wrong-type /seam: "seam" is "1/4"; wanted: an object in braces -> write it like "seam": { "allowance": "1/4" }`},
		{"type", `[{ "square": "9 1/2", "angles": [45, 60] }]`, `{ "square": "9 1/2" }`,
			`schema/wrong-type /tools/rulers: "rulers" of "tools" is an object; wanted: a list in square brackets -> write it like "rulers": [{ "square": "9 1/2" }]`},
		{"type", `["3", "4"]`, `"3"`,
			`schema/wrong-type /parts/petal/template/box: "box" of "template" is "3"; wanted: a list in square brackets -> write it like "box": ["3", "3"]`},
		{"type", `"sizes": { "small": {} }`, `"sizes": ["small"]`,
			`schema/wrong-type /sizes: "sizes" is a list; wanted: an object in braces -> write it like "sizes": { "throw": {} }`},
		{"type", `[["plain", { "part": "plain", "turn": 90 }]]`, `["plain", "petal"]`,
			`schema/wrong-type /layout/grid/blocks: the items of "blocks" of "grid" stand in it by themselves; wanted: a list of rows, each a list in square brackets -> write it like "blocks": [["plain", "petal"]]`},
		{"type", `"layout": { "grid"`, `"layout": { "borders": { "fabric": "sky", "width": "3", "corners": "mitred" }, "grid"`,
			`schema/wrong-type /layout/borders: what stands in "borders" of "layout" has names, and here is one without: "fabric", "width" and "corners" are keys of what is named -> give it a name: "borders": { "frame": { "fabric": "sky", "width": "3", "corners": "mitred" } }`},
		{"type", `"parts": {
    "plain": { "cut": { "fabric": "sky", "square": "4 1/2" } },
    "set": { "strip_set": { "strips": ["pack", { "fabric": "sky", "width": "2 1/2" }] } },
    "loop": { "tube": { "sets": ["set", "set"], "tip": "far seam" } },
    "petal": { "template": { "fabric": "sky", "box": ["3", "4"], "area": 9.5 } }
  }`, `"parts": { "cut": { "fabric": "sky", "square": "4 1/2" } }`,
			`schema/wrong-type /parts: what stands in "parts" has names, and here is one without: "cut" is a key of what is named -> give it a name: "parts": { "plain": { "cut": { "fabric": "sky", "square": "4 1/2" } } }`},
		{"type", `"printed": { "small": { "finished": ["16 1/2", "12 1/2"], "parts": { "plain": 12 }, "strips": { "plain": 2 }, "fabric": { "sky": "1/2 yd" } } }`, `"printed": { "finished": ["16 1/2", "12 1/2"] }`,
			`schema/wrong-type /printed: what stands in "printed" has names, and here is one without: "finished" is a key of what is named -> give it a name: "printed": { "throw": { "finished": ["16 1/2", "12 1/2"] } }`},
		{"required", `"units": "in", `, ``,
			`schema/missing : "units" is missing from the plan -> add "units"`},
		{"required", `"fabric": "sky", "square"`, `"square"`,
			`schema/missing /parts/plain/cut: "fabric" is missing from "cut" of "plain" -> add "fabric"`},
		{"additionalProperties", `"layout": { "grid"`, `"layout": { "bording": {}, "grid"`,
			`schema/unknown-key /layout/bording: there is no "bording" in "layout" -> write "borders"`},
		{"additionalProperties", `"allowance": "1/4"`, `"alowance": "1/4"`,
			`schema/unknown-key /seam/alowance: there is no "alowance" in "seam" -> write "allowance"`},
		{"additionalProperties", `"cut": { "fabric"`, `"cutt": { "fabric"`,
			`schema/unknown-key /parts/plain/cutt: there is no "cutt" in "plain" of "parts" -> write "cut"`},
		{"additionalProperties", `"angles": [45, 60]`, `"brand": "x"`,
			`schema/unknown-key /tools/rulers/0/brand: there is no "brand" in item 1 of "rulers" of "tools" -> remove it, or use "size", "angles" or "lines"`},
		{"additionalProperties", `"columns": 4`, `"cols": 4`,
			`schema/unknown-key /layout/grid/cols: there is no "cols" in "grid" of "layout" -> write "columns"`},
		{"additionalProperties", `"yardage": { "usable_width": 42 }, `, `"usable_width": 42, `,
			`schema/unknown-key /fabrics/sky/usable_width: there is no "usable_width" in "sky" of "fabrics" -> it belongs in fabrics.sky.yardage: write "yardage": { "usable_width": 42 }`},
		{"additionalProperties", `"seam": { "allowance": "1/4" }`, `"seam_allowance": "1/4"`,
			`schema/unknown-key /seam_allowance: there is no "seam_allowance" in the plan -> it belongs in seam: write "seam": { "allowance": "1/4" }`},
		{"additionalProperties", `"units": "in", `, `"units": "in", "usable_width": "42", `,
			`schema/unknown-key /usable_width: there is no "usable_width" in the plan -> it belongs in fabrics.X.yardage: write "yardage": { "usable_width": "42" }`},
		{"additionalProperties", `"square": "4 1/2" }`, `"square": "4 1/2", "press": "open" }`,
			`schema/unknown-key /parts/plain/cut/press: there is no "press" in "cut" of "plain" -> it belongs in parts.plain, beside "cut"`},
		{"additionalProperties", `"layout": { "grid"`, `"layout": { "backing": { "fabric": "sky" }, "grid"`,
			`schema/unknown-key /layout/backing: there is no "backing" in "layout" -> remove it, or use "rows", "map", "setting", "triangles", "sashing" or "borders"; "backing" is a key of finish or printed.X`},
		{"additionalProperties", `"units": "in", `, `"units": "in", "overhang": "4", `,
			`schema/unknown-key /overhang: there is no "overhang" in the plan -> it belongs in finish.backing or finish.batting`},
		{"additionalProperties", `"fabric": "sky", "square": "4 1/2"`, `"colour": "sky", "square": "4 1/2"`,
			`schema/unknown-key /parts/plain/cut/colour: there is no "colour" in "cut" of "plain", and "fabric" is missing -> write "fabric" if that is what is meant`},
		{"additionalProperties", `"fabric": "sky", "square": "4 1/2"`, `"fabric": "sky", "side": "4 1/2"`,
			`schema/unknown-key /parts/plain/cut/side: there is no "side" in "cut" of "plain", and "square" is missing -> write "square" if that is what is meant`},
		{"additionalProperties", `"units": "in", `, `"units": "in", "currency": "EUR", `,
			`schema/unknown-key /currency: there is no "currency" in the plan -> remove it; "currency" is a key of the project file`},
		{"propertyNames", `"plain": 12`, `"Plain Square": 12`,
			`schema/not-allowed /printed/small/parts/Plain Square: "Plain Square" cannot be a name in "parts" of "small"; wanted: 1 to 32 lower-case letters, digits and hyphens, with a letter first -> write "plain-square"`},
		{"propertyNames", `"sky": "1/2 yd"`, `"2": "1/2 yd"`,
			`schema/not-allowed /printed/small/fabric/2: "2" cannot be a name in "fabric" of "small"; wanted: 1 to 32 lower-case letters, digits and hyphens, with a letter first`},
		{"pattern", `"id": "tea-cosy"`, `"id": "Tea cosy"`,
			`schema/not-allowed /id: "id" is "Tea cosy"; wanted: lower-case letters and digits, with single hyphens between them -> write "tea-cosy"`},
		{"pattern", `"#a0b0c0"`, `"sky blue"`,
			`schema/not-allowed /fabrics/sky/colour: "colour" of "sky" is "sky blue"; wanted: # and six hexadecimal digits`},
		{"pattern", `["set", "set"]`, `["set", "Set"]`,
			`schema/not-allowed /parts/loop/tube/sets/1: item 2 of "sets" of "tube" is "Set"; wanted: 1 to 32 lower-case letters, digits and hyphens, with a letter first -> write "set"`},
		{"enum", `"seam": { "allowance": "1/4" }`, `"seam": { "allowance": "1/4", "stitch": 301 }`,
			`schema/not-allowed /seam/stitch: "stitch" of "seam" is 301; wanted: "301", "401", "503", "504", "512", "514" or "516" -> write "301"`},
		{"enum", `"skill": "beginner"`, `"skill": "confidant beginner"`,
			`schema/not-allowed /skill: "skill" is "confidant beginner"; wanted: "beginner", "confident beginner", "intermediate" or "advanced" -> write "confident beginner"`},
		{"enum", `"turn": 90`, `"turn": 45`,
			`schema/not-allowed /layout/grid/blocks/0/1/turn: "turn" of item 2 of item 1 of "blocks" is 45; wanted: 0, 90, 180 or 270`},
		{"enum", `"turn": 90`, `"turn": "90"`,
			`schema/not-allowed /layout/grid/blocks/0/1/turn: "turn" of item 2 of item 1 of "blocks" is "90"; wanted: 0, 90, 180 or 270 -> write 90`},
		{"then", `"tip": "far seam"`, `"tip": "near seam"`,
			`schema/not-allowed /parts/loop/tube/tip: "tip" of "tube" is "near seam"; wanted: "far seam", "raw edge" or an object in braces -> write "far seam"`},
		{"if", `"tip": "far seam"`, `"tip": {}`,
			`schema/missing /parts/loop/tube/tip: "beyond" is missing from "tip" of "tube" -> add "beyond"`},
		{"const", `"format": 1`, `"format": 2`,
			`schema/not-allowed /format: "format" is 2; wanted: 1 -> write 1`},
		{"const", `"small": { "finished": ["16 1/2", "12 1/2"], "parts": { "plain": 12 }, "strips": { "plain": 2 }, "fabric": { "sky": "1/2 yd" } }`, `"small": "none"`,
			`schema/not-allowed /printed/small: "small" of "printed" is "none"; wanted: "not printed" or an object in braces -> write "not printed" or { "finished": ["60", "72"] }`},
		{"minimum", `"rows": 3`, `"rows": 0`,
			`schema/out-of-range /layout/grid/rows: "rows" of "grid" is 0; the least is 1`},
		{"maximum", `"rows": 3`, `"rows": 201`,
			`schema/out-of-range /layout/grid/rows: "rows" of "grid" is 201; the most is 200`},
		{"type", `"strips": { "plain": 2 }`, `"strips": { "plain": "2" }`,
			`schema/wrong-type /printed/small/strips/plain: "plain" of "strips" is "2"; wanted: a whole number, an object in braces or a list in square brackets -> leave out the quotation marks`},
		{"required", `"strips": { "plain": 2 }`, `"strips": { "plain": { "width": "4 1/2" } }`,
			`schema/missing /printed/small/strips/plain: "count" is missing from "plain" of "strips" -> add "count"`},
		{"additionalProperties", `"strips": { "plain": 2 }`, `"strips": { "plain": [{ "count": 2, "wide": "4 1/2" }] }`,
			`schema/unknown-key /printed/small/strips/plain/0/wide: there is no "wide" in item 1 of "plain" of "strips" -> write "width"`},
		{"minItems", `"strips": { "plain": 2 }`, `"strips": { "plain": [] }`,
			`schema/out-of-range /printed/small/strips/plain: "plain" of "strips" has 0 items; the least is 1`},
		{"propertyNames", `"strips": { "plain": 2 }`, `"strips": { "Plain strips": 2 }`,
			`schema/not-allowed /printed/small/strips/Plain strips: "Plain strips" cannot be a name in "strips" of "small"; wanted: 1 to 32 lower-case letters, digits and hyphens, with a letter first -> write "plain-strips"`},
		{"exclusiveMinimum", `"area": 9.5`, `"area": 0`,
			`schema/out-of-range /parts/petal/template/area: "area" of "template" is 0; it must be more than 0`},
		{"minLength", `"title": "Tea Cosy"`, `"title": ""`,
			`schema/out-of-range /title: "title" has 0 characters; the least is 1`},
		{"maxLength", `"tea-cosy"`, `"` + strings.Repeat("a", 65) + `"`,
			`schema/out-of-range /id: "id" has 65 characters; the most is 64`},
		{"minItems", `["set", "set"]`, `["set"]`,
			`schema/out-of-range /parts/loop/tube/sets: "sets" of "tube" has 1 item; exactly 2 are wanted -> write it like "sets": ["pair", "pair"]`},
		{"minItems", `["pack", { "fabric": "sky", "width": "2 1/2" }]`, `["pack"]`,
			`schema/out-of-range /parts/set/strip_set/strips: "strips" of "strip_set" has 1 item; the least is 2 -> write it like "strips": ["roll", "roll"]`},
		{"maxItems", `["3", "4"]`, `["3", "4", "5"]`,
			`schema/out-of-range /parts/petal/template/box: "box" of "template" has 3 items; exactly 2 are wanted`},
		{"items", `["3", "4"]`, `["3", null]`,
			`schema/wrong-type /parts/petal/template/box/1: item 2 of "box" of "template" is null; wanted: a number or text in quotation marks -> write it like "2 1/2"`},
		{"minProperties", `"sizes": { "small": {} }`, `"sizes": {}`,
			`schema/out-of-range /sizes: "sizes" has 0 entries; the least is 1 -> write it like "sizes": { "throw": {} }`},
		{"maxProperties", `"small": {} }`, many(41, `"s%d": {}`) + ` }`,
			`schema/out-of-range /sizes: "sizes" has 41 entries; the most is 40`},
		{"uniqueItems", `["iron", "pins"]`, `["iron", "pins", "iron"]`,
			`schema/not-allowed /cautions/2: "iron" stands in "cautions" twice, as item 1 and item 3 -> remove one of them`},
		{"dependencies", `"square": "4 1/2"`, `"size": ["4 1/2", "4 1/2"], "halved": "once"`,
			`schema/missing /parts/plain/cut/halved: "halved" is possible only beside "square", which is missing from "cut" of "plain" -> add "square" or remove "halved"`},
		{"oneOf", `"square": "4 1/2"`, `"square": "4 1/2", "size": ["4", "4"]`,
			`schema/one-of /parts/plain/cut/size: "cut" of "plain" has "square" and "size"; exactly one of "square" and "size" is wanted -> keep one of them and remove the rest`},
		{"oneOf", `"yardage": { "usable_width": 42 }, `, ``,
			`schema/one-of /fabrics/sky: "sky" of "fabrics" has none of "yardage" and "precut"; exactly one is wanted -> add "yardage" or "precut"`},
		{"oneOf", `{ "square": "9 1/2", `, `{ `,
			`schema/one-of /tools/rulers/0: item 1 of "rulers" of "tools" has none of "square" and "size"; exactly one is wanted -> add "square" or "size"`},
		{"oneOf", `"yardage": { "usable_width": 42 }`, `"yardge": { "usable_width": 42 }`,
			`schema/unknown-key /fabrics/sky/yardge: there is no "yardge" in "sky" of "fabrics" -> write "yardage"`},
		{"$ref", `"count": 20`, `"count": 1e399`,
			`schema/out-of-range /fabrics/pack/precut/count: the number 1e399 is far beyond anything a plan can mean -> write the number that is meant`},
	}
}

const rightProject = `{
  "format": 1, "currency": "USD", "run": 10, "margin": "50%",
  "rulers": [{ "size": ["6 1/2", "24 1/2"], "angles": [45, 60] }],
  "defaults": { "in": { "grid": "1/8 yd" } },
  "rules": { "fabric/tight": "note" },
  "exceptions": [{ "rule": "fabric/tight", "plan": "tea-cosy", "at": "/fabrics/sky", "reason": "seen", "until": "2027-03-31" }]
}`

func wrongProjects() []wrong {
	return []wrong{
		{"type", `"margin": "50%"`, `"margin": 50`,
			`schema/wrong-type /margin: "margin" is 50; wanted: text in quotation marks -> write "50%"`},
		{"required", `"format": 1, `, ``, `schema/missing : "format" is missing from the project file -> add "format"`},
		{"required", `, "reason": "seen"`, ``,
			`schema/missing /exceptions/0: "reason" is missing from item 1 of "exceptions" -> add "reason"`},
		{"additionalProperties", `"run": 10`, `"runs": 10`, `schema/unknown-key /runs: there is no "runs" in the project file -> write "run"`},
		{"const", `"format": 1`, `"format": "1"`, `schema/not-allowed /format: "format" is "1"; wanted: 1 -> write 1`},
		{"enum", `"note"`, `"notes"`,
			`schema/not-allowed /rules/fabric~1tight: "fabric/tight" of "rules" is "notes"; wanted: "error", "warning", "note" or "off" -> write "note"`},
		{"propertyNames", `"fabric/tight": "note"`, `"tight": "note"`,
			`schema/not-allowed /rules/tight: "tight" cannot be a name in "rules"; wanted: a rule's name, like "fabric/tight"`},
		{"propertyNames", `"run": 10`, `"prices": [{ "file": "a.csv", "columns": { "prize": "Net" } }]`,
			`schema/not-allowed /prices/0/columns/prize: "prize" cannot be a name in "columns" of item 1 of "prices"; wanted: "sku", "description", "unit", "price", "currency", "from", "dated", "supplier", "bolt", "loss", "minimum", "multiple", "lead_days", "width", "repeat", "discontinued" or "substitute" -> write "price"`},
		{"additionalProperties", `"run": 10`, `"usable_width": "42"`,
			`schema/unknown-key /usable_width: there is no "usable_width" in the project file -> it belongs in defaults.in or defaults.cm`},
		{"additionalProperties", `"run": 10`, `"binding": {}`,
			`schema/unknown-key /binding: there is no "binding" in the project file -> remove it; "binding" is a key of the plan`},
		{"pattern", `"USD"`, `"usd"`,
			`schema/not-allowed /currency: "currency" is "usd"; wanted: a currency's three capital letters (ISO 4217) -> write "USD"`},
		{"pattern", `"/fabrics/sky"`, `"fabrics/sky"`,
			`schema/not-allowed /exceptions/0/at: "at" of item 1 of "exceptions" is "fabrics/sky"; wanted: a JSON Pointer, which begins with a slash -> write "/fabrics/sky"`},
		{"pattern", `"2027-03-31"`, `"31 March"`,
			`schema/not-allowed /exceptions/0/until: "until" of item 1 of "exceptions" is "31 March"; wanted: a day as year, month and day, like "2027-03-31"`},
		{"pattern", `"seen"`, `"  "`,
			`schema/not-allowed /exceptions/0/reason: "reason" of item 1 of "exceptions" is "  "; wanted: some words`},
		{"dependencies", `"currency": "USD"`, `"labour_rate": 20`,
			`schema/missing /labour_rate: "labour_rate" is possible only beside "currency", which is missing from the project file -> add "currency" or remove "labour_rate"`},
		{"minimum", `"run": 10`, `"run": 0`, `schema/out-of-range /run: "run" is 0; the least is 1`},
		{"maximum", `"run": 10`, `"run": 100001`, `schema/out-of-range /run: "run" is 100001; the most is 100000`},
		{"minLength", `"run": 10`, `"studio": ""`, `schema/out-of-range /studio: "studio" has 0 characters; the least is 1`},
		{"maxLength", `"tea-cosy"`, `"` + strings.Repeat("a", 65) + `"`,
			`schema/out-of-range /exceptions/0/plan: "plan" of item 1 of "exceptions" has 65 characters; the most is 64`},
		{"minItems", `["6 1/2", "24 1/2"]`, `[]`,
			`schema/out-of-range /rulers/0/size: "size" of item 1 of "rulers" has 0 items; exactly 2 are wanted -> write it like "size": ["6 1/2", "24 1/2"]`},
		{"maxItems", `["6 1/2", "24 1/2"]`, `[1, 2, 3]`,
			`schema/out-of-range /rulers/0/size: "size" of item 1 of "rulers" has 3 items; exactly 2 are wanted`},
		{"maxProperties", `"fabric/tight": "note"`, many(401, `"fabric/r%d": "off"`),
			`schema/out-of-range /rules: "rules" has 401 entries; the most is 400`},
		{"items", `[45, 60]`, `[45, 15]`,
			`schema/not-allowed /rulers/0/angles/1: item 2 of "angles" of item 1 of "rulers" is 15; wanted: 30, 45 or 60`},
		{"uniqueItems", `[45, 60]`, `[45, 45.0]`,
			`schema/not-allowed /rulers/0/angles/1: 45.0 stands in "angles" of item 1 of "rulers" twice, as item 1 and item 2 -> remove one of them`},
		{"oneOf", `"size": ["6 1/2", "24 1/2"], `, ``,
			`schema/one-of /rulers/0: item 1 of "rulers" has none of "square" and "size"; exactly one is wanted -> add "square" or "size"`},
	}
}

// many is n members of an object, numbered.
func many(n int, format string) string {
	members := make([]string, n)
	for i := range members {
		members[i] = fmt.Sprintf(format, i)
	}
	return strings.Join(members, ", ")
}

const rightBaseline = `{
  "format": 1,
  "findings": [{ "rule": "fabric/tight", "plan": "tea-cosy", "pointer": "/fabrics/sky", "sizes": ["small"], "number": 2, "level": "note", "message": "1 yd is tight" }]
}`

func wrongBaselines() []wrong {
	return []wrong{
		{"type", `"/fabrics/sky"`, `7`, `schema/wrong-type /findings/0/pointer: "pointer" of item 1 of "findings" is 7; wanted: text in quotation marks -> write "7"`},
		{"required", `"format": 1,`, ``, `schema/missing : "format" is missing from the baseline -> add "format"`},
		{"additionalProperties", `"sizes"`, `"size"`, `schema/unknown-key /findings/0/size: there is no "size" in item 1 of "findings" -> write "sizes"`},
		{"const", `"format": 1`, `"format": 2`, `schema/not-allowed /format: "format" is 2; wanted: 1 -> write 1`},
		{"pattern", `"fabric/tight"`, `"tight"`, `schema/not-allowed /findings/0/rule: "rule" of item 1 of "findings" is "tight"; wanted: a rule's name, like "fabric/tight"`},
		{"enum", `"note"`, `"off"`, `schema/not-allowed /findings/0/level: "level" of item 1 of "findings" is "off"; wanted: "error", "warning" or "note"`},
		{"minimum", `"number": 2`, `"number": 1`, `schema/out-of-range /findings/0/number: "number" of item 1 of "findings" is 1; the least is 2`},
		{"minItems", `["small"]`, `[]`, `schema/out-of-range /findings/0/sizes: "sizes" of item 1 of "findings" has 0 items; the least is 1`},
		{"minLength", `"tea-cosy"`, `""`, `schema/out-of-range /findings/0/plan: "plan" of item 1 of "findings" has 0 characters; the least is 1`},
	}
}
