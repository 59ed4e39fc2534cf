package derive_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
)

// laid is how the directional prints of a quilt of two by two blocks lie: fabric,
// how many of how many places are wrong, and why.
func laid(t *testing.T, print, parts, layout string) []string {
	t.Helper()
	if layout == "" {
		layout = `"grid": {"rows": 2, "columns": 2, "blocks": [["unit"]]}`
	}
	s := derived(t, fmt.Sprintf(`{"format": 1, "id": "birds", "title": "Birds", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
		"fabrics": {"birds": {"print": %q, "yardage": {}}, "sky": {"yardage": {}}}, "parts": {%s}, "layout": {%s}, "sizes": {"only": {}}}`, print, parts, layout))["only"]
	ways := map[derive.Way]string{
		derive.Turned: "turned", derive.Paired: "paired", derive.Halves: "halves", derive.Slanted: "slanted", derive.Untold: "untold",
		derive.Crossed: "crossed", derive.Around: "around", derive.Beside: "beside", derive.Folded: "folded", derive.Sideways: "sideways", derive.Endways: "endways",
	}
	var all []string
	for _, l := range s.Directions() {
		all = append(all, fmt.Sprintf("%s %d/%d %s", l.Fabric.Role.Text, l.Wrong, l.Places, ways[l.Way]))
	}
	slices.Sort(all)
	return all
}

// How a print lies in every unit, in four blocks that are not turned unless the
// layout says so. All derived from geometry and worked by hand.
func TestDirectionsOfUnits(t *testing.T) {
	const (
		patch   = `"patch": {"cut": {"fabric": "birds", "square": "4 1/2"}}, `
		turning = `"grid": {"rows": 2, "columns": 2, "blocks": [["unit", {"part": "unit", "turn": 90}], [{"part": "unit", "turn": 90}, "unit"]]}`
		pinned  = `"grid": {"rows": 2, "columns": 2, "blocks": [["unit", {"part": "unit", "turn": 90}], [{"part": "unit", "turn": 270}, {"part": "unit", "turn": 180}]]}`
		facing  = `, "pair": {"rows": [["unit"], [{"part": "unit", "turn": 180}]]}`
		point   = `"setting": "on point", "grid": {"rows": 2, "columns": 2, "blocks": [["unit"]]}, "triangles": {"sides": "sky"}`
	)
	hourglass := `"unit": {"hourglass": {"half_squares": ["birds", "sky"], "square": "6"}}`
	four := func(goose, sky string) string {
		return fmt.Sprintf(`"unit": {"flying_geese": {"goose": %q, "sky": %q, "finished": ["4", "2"], "at_a_time": 4}}`, goose, sky)
	}
	single := `"unit": {"flying_geese": {"goose": "birds", "sky": "birds", "finished": ["4", "2"], "at_a_time": 1}}`
	square := func(centre, corners, method string) string {
		return fmt.Sprintf(`"unit": {"square_in_square": {"centre": %q, "corners": %q, "finished": "4", "method": %q}}`, centre, corners, method)
	}
	logs := func(side string) string {
		return fmt.Sprintf(`"unit": {"logs": {"centre": {"fabric": "sky", "finished": "2"}, "log": "1", "rounds": 1, "fabrics": {%q: "birds", "rounds": ["sky"]}}}`, side)
	}
	for _, c := range []struct {
		name, print, parts, layout, want string
	}{
		{"hourglass", "one-way", hourglass, "", "birds 2/4 crossed"},
		{"sashes on point", "two-way", `"unit": {"cut": {"fabric": "sky", "square": "4 1/2"}}`,
			point + `, "sashing": {"fabric": "birds", "width": "1", "cornerstones": "sky", "outer": true}`, "birds 1/1 slanted"},
		{"corners of a border", "one-way", `"unit": {"cut": {"fabric": "birds", "square": "4 1/2"}}`,
			`"grid": {"rows": 2, "columns": 2, "blocks": [["unit"]]}, "borders": {"edge": {"fabric": "sky", "width": "4", "corners": "corner squares", "corner_part": "unit"}}`, "birds 3/8 turned"},
		{"hourglass, two-way", "two-way", hourglass, "", "birds 2/4 crossed"},
		{"hourglass, turned about", "one-way", hourglass, turning, ""},
		{"goose of four", "one-way", four("birds", "sky"), "", "birds 3/4 around"},
		{"goose of four, two-way", "two-way", four("birds", "sky"), "", "birds 2/4 around"},
		{"goose of four, four ways", "one-way", four("birds", "sky") + facing, `"grid": {"rows": 1, "columns": 2, "blocks": [["pair", {"part": "pair", "turn": 90}]]}`, ""},
		{"goose of four, two ways", "one-way", four("birds", "sky") + facing, `"grid": {"rows": 1, "columns": 2, "blocks": [["pair"]]}`, "birds 2/4 around"},
		{"sky of four", "one-way", four("sky", "birds"), "", "birds 2/4 around"},
		{"single goose", "one-way", single, "", ""},
		{"single goose, turned", "one-way", single, `"grid": {"rows": 2, "columns": 2, "blocks": [["unit"], [{"part": "unit", "turn": 180}]]}`, "birds 2/4 turned"},
		{"single goose, turned, two-way", "two-way", single, `"grid": {"rows": 2, "columns": 2, "blocks": [["unit"], [{"part": "unit", "turn": 180}]]}`, ""},
		{"flipped corner", "one-way", `"patch": {"cut": {"fabric": "sky", "square": "4 1/2"}}, "unit": {"flip_corners": {"body": "patch", "corners": {"top left": {"fabric": "birds", "square": "2"}}}}`, "", ""},
		{"body of flipped corners, turned", "one-way", patch + `"unit": {"flip_corners": {"body": "patch", "corners": {"top left": {"fabric": "sky", "square": "2"}}}}`, pinned, "birds 3/4 turned"},
		{"centre on its corner", "two-way", square("birds", "sky", "triangles"), "", "birds 4/4 slanted"},
		{"centre on its corner, on point", "one-way", square("birds", "sky", "triangles"), point, ""},
		{"centre of flipped corners", "one-way", square("birds", "sky", "flip"), "", ""},
		{"corners", "one-way", square("sky", "birds", "triangles"), "", ""},
		{"top log", "one-way", logs("top"), "", ""},
		{"right log", "one-way", logs("right"), "", ""},
		{"right log, turned a quarter", "one-way", logs("right"), turning, "birds 2/4 turned"},
		{"border across the fabric", "one-way", `"unit": {"cut": {"fabric": "sky", "square": "4 1/2"}}`, `"grid": {"rows": 2, "columns": 2, "blocks": [["unit"]]}, "borders": {"edge": {"fabric": "birds", "width": "4"}}`, "birds 2/4 sideways"},
		{"border along the fabric", "one-way", `"unit": {"cut": {"fabric": "sky", "square": "4 1/2"}}`, `"grid": {"rows": 2, "columns": 2, "blocks": [["unit"]]}, "borders": {"edge": {"fabric": "birds", "width": "4", "strips": "lengthwise"}}`, "birds 2/4 endways"},
		{"border of a part, along the fabric", "one-way", patch + `"plain": {"cut": {"fabric": "sky", "square": "4 1/2"}}, "unit": {"bordered": {"part": "plain", "borders": {"edge": {"fabric": "birds", "width": "4", "strips": "lengthwise"}}}}`, "", "birds 8/16 endways"},
		{"cut in four and turned", "one-way", patch + `"unit": {"recut": {"part": "patch", "pieces": [2, 2], "turns": [0, 90, 270, 180]}}`, "", "birds 12/16 turned"},
		{"rings of a loop", "one-way", `"set": {"strip_set": {"strips": [{"fabric": "birds", "width": "2"}, {"fabric": "sky", "width": "2"}]}}, "unit": {"loop": {"set": "set", "cut": "3", "open": [1, 2]}}`, "", ""},
		{"folded chain", "one-way", `"unit": {"chain": {"strips": "birds", "width": "2", "length": "20", "folds": 2}}`, "", "birds 8/16 folded"},
		{"folded chain, two-way", "two-way", `"unit": {"chain": {"strips": "birds", "width": "2", "length": "20", "folds": 2}}`, "", ""},
		{"template along", "one-way", `"unit": {"template": {"fabric": "birds", "box": ["3", "4"], "grain": "along"}}`, "", ""},
		{"template across", "one-way", `"unit": {"template": {"fabric": "birds", "box": ["3", "4"], "grain": "across"}}`, "", "birds 4/4 turned"},
		{"template on the bias", "two-way", `"unit": {"template": {"fabric": "birds", "box": ["3", "4"], "grain": "bias"}}`, "", "birds 4/4 slanted"},
		{"on point", "two-way", patch + `"unit": {"trim": {"part": "patch", "to": ["4", "4"]}}`, point, "birds 5/5 slanted"},
		{"sides on point", "one-way", `"unit": {"cut": {"fabric": "sky", "square": "4 1/2"}}`, strings.Replace(point, `"sides": "sky"`, `"sides": "birds", "corners": "sky"`, 1), ""},
		{"sides on point, wider than high", "one-way", `"unit": {"cut": {"fabric": "sky", "square": "4 1/2"}}`,
			`"setting": "on point", "grid": {"rows": 2, "columns": 4, "blocks": [["unit"]]}, "triangles": {"sides": "birds", "corners": "sky"}`, "birds 2/8 halves"},
		{"triangles pointing up and down", "one-way", triangles("up", "up"), `"grid": {"rows": 2, "columns": 1, "blocks": [["unit"]]}`, ""},
		{"triangles pointing up", "one-way", triangles("up", "down"), `"grid": {"rows": 2, "columns": 1, "blocks": [["unit"]]}`, "birds 2/4 turned"},
		{"strips on the sides", "one-way", `"unit": {"cut": {"fabric": "sky", "square": "4 1/2"}}`, `"grid": {"rows": 2, "columns": 2, "blocks": [["unit"]]}, "borders": {"edge": {"fabric": "birds", "width": "2", "on": "sides"}}`, "birds 2/2 sideways"},
		{"strips on the ends", "one-way", `"unit": {"cut": {"fabric": "sky", "square": "4 1/2"}}`, `"grid": {"rows": 2, "columns": 2, "blocks": [["unit"]]}, "borders": {"edge": {"fabric": "birds", "width": "2", "on": "ends"}}`, ""},
		{"strips on the ends, along the fabric", "one-way", `"unit": {"cut": {"fabric": "sky", "square": "4 1/2"}}`, `"grid": {"rows": 2, "columns": 2, "blocks": [["unit"]]}, "borders": {"edge": {"fabric": "birds", "width": "2", "on": "ends", "strips": "lengthwise"}}`, "birds 2/2 endways"},
		{"strips on the sides, along the fabric", "one-way", `"unit": {"cut": {"fabric": "sky", "square": "4 1/2"}}`, `"grid": {"rows": 2, "columns": 2, "blocks": [["unit"]]}, "borders": {"edge": {"fabric": "birds", "to": ["10", "8"], "strips": "lengthwise"}}`, ""},
		{"triangles of a square, alike", "one-way", used("once", 2, 4), `"grid": {"rows": 2, "columns": 2, "blocks": [["unit"]]}`, "birds 2/4 halves"},
		{"one triangle of each", "one-way", used("once", 1, 2), `"grid": {"rows": 2, "columns": 2, "blocks": [["unit"]]}`, ""},
		{"one of four, four ways", "one-way", used("twice", 1, 4), "", ""},
		{"two of four, two ways", "one-way", used("twice", 2, 2), "", ""},
		{"two of four, one way", "one-way", used("twice", 2, 1), "", "birds 2/4 halves"},
		{"two of four, one way, two-way", "two-way", used("twice", 2, 1), "", ""},
		{"three of four, one way, two-way", "two-way", used("twice", 3, 1), "", ""},
		{"three of four, one way", "one-way", used("twice", 3, 1), "", "birds 2/4 halves"},
		{"pieces of a mosaic", "one-way", patch + `"unit": {"mosaic": {"pieces": {"patch": 1}, "finished": ["4", "4"]}}`, "", "birds 4/4 untold"},
	} {
		if got := strings.Join(laid(t, c.print, c.parts, c.layout), ", "); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// used is squares of birds of which so many triangles are used. Cut once, a unit
// is one of them and one of sky; cut twice, ways of its four are birds, from the
// top clockwise, or the top and the bottom one.
func used(halved string, n, ways int) string {
	cut := fmt.Sprintf(`"bird": {"cut": {"fabric": "birds", "square": "6", "halved": %[1]q, "used": %[2]d}}, "air": {"cut": {"fabric": "sky", "square": "6", "halved": %[1]q}}, `, halved, n)
	of := map[int]string{1: `"bird", "air", "air", "air"`, 2: `"bird", "air", "bird", "air"`, 4: `"bird", "bird", "bird", "bird"`}[ways]
	if halved == "once" {
		of = `"bird", "air"`
	}
	return cut + `"unit": {"triangle_square": {"of": [` + of + `]}}`
}

// triangles is a row of two triangles of birds among others: both point the same
// way, or one up and one down.
func triangles(first, second string) string {
	row := `["end", "bird", "plain", "bird", "end"]`
	if first == second {
		row = `["end", "bird", "bird", "plain", "end"]`
	}
	return `"bird": {"shape": {"fabric": "birds", "kind": "triangle 60", "finished": "6"}}, "plain": {"shape": {"fabric": "sky", "kind": "triangle 60", "finished": "6"}},
		"end": {"shape": {"fabric": "sky", "kind": "half triangle 60", "finished": "6"}}, "unit": {"rows": [` + row + `]}`
}
