package drafting_test

import (
	"os"
	"testing"

	"yardproof/pipeline/internal/drafting"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Every operation of the vocabulary that makes one part of another: each part
// of the sample is drafted, has exactly its derived size, and closes.
func TestUnitsClose(t *testing.T) {
	const path = "../../../schema/testdata/unit-drawer.plan.json"
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	s := sizes(path, text)[0]
	d := drafting.Of(s)
	for _, p := range s.Parts {
		if _, triangle := p.Operation.(plan.Shape); triangle {
			continue // drafted where it is sewn
		}
		w, ok := d.Part(p.Name.Text)
		if !ok {
			t.Errorf("%s is not drafted", p.Name.Text)
			continue
		}
		filled(t, p.Name.Text, w, p.Box)
	}
}

// Ways to set blocks that the demo line does not show, each drawn as large as
// derived, and closed. Blocks in a border's corners are turned on clockwise.
func TestSettingsClose(t *testing.T) {
	for what, layout := range map[string]string{
		"sashed on point": `"grid": {"rows": 2, "columns": 3, "blocks": [["pair"]], "between": [["plain"]]}, "setting": "on point", "triangles": {"sides": "ink"},
			"sashing": {"fabric": "milk", "width": "1", "cornerstones": "ink", "outer": true}`,
		"strips between rows": `"rows": [["pair", "pair"], ["third", "third", "third"]], "sashing": {"fabric": "milk", "width": "1", "between": "rows", "outer": true}`,
		"rows sashed":         `"rows": [["pair", "plain"], ["plain", "pair"]], "sashing": {"fabric": "milk", "width": "1"}`,
		"on one pair": `"grid": {"rows": 1, "columns": 2, "blocks": [["plain"]]}, "borders": {
			"wide": {"fabric": "milk", "width": "1", "on": "sides"}, "high": {"fabric": "ink", "width": "2", "on": "ends"},
			"units": {"part": "step", "width": "3", "on": "ends"}, "steps": {"part": "tall", "width": "2", "on": "sides"},
			"cope": {"fabric": "milk", "to": ["18", "25"]}, "longer": {"fabric": "milk", "to": ["18", "26"]}, "wider": {"fabric": "ink", "to": ["19 1/4", "26"]}}`,
		"blocks in corners": `"grid": {"rows": 1, "columns": 1, "blocks": [["plain"]]},
			"borders": {"edge": {"fabric": "milk", "width": "6", "corners": "corner squares", "corner_part": "pair"}}`,
	} {
		text := `{"format": 1, "id": "a", "title": "A", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
			"fabrics": {"ink": {"yardage": {}}, "milk": {"yardage": {}}},
			"parts": {"ink": {"cut": {"fabric": "ink", "size": ["6 1/2", "3 1/2"]}}, "milk": {"cut": {"fabric": "milk", "size": ["6 1/2", "3 1/2"]}},
				"pair": {"rows": [["ink"], ["milk"]]}, "plain": {"cut": {"fabric": "ink", "square": "6 1/2"}}, "step": {"cut": {"fabric": "ink", "size": ["7 1/2", "3 1/2"]}}, "tall": {"cut": {"fabric": "ink", "size": ["8 1/2", "2 1/2"]}}, "third": {"cut": {"fabric": "ink", "square": "4 1/2"}}},
			"layout": {` + layout + `}, "sizes": {"only": {}}}`
		s := sizes("a.plan.json", []byte(text))[0]
		top, ok := drafting.Of(s).Top()
		if !ok {
			t.Errorf("%s: not drafted", what)
			continue
		}
		filled(t, what, top, s.Top.Finished)
		if what != "blocks in corners" {
			continue
		}
		// Ink lies above in the block as sewn: at the top left corner above, at the
		// top right one on the right, and so on.
		for _, at := range [][2]int64{{3, 1}, {17, 3}, {15, 17}, {1, 15}} {
			point := piecing.Point{X: (measure.Length(at[0]) * measure.Inch).Surd(), Y: (measure.Length(at[1]) * measure.Inch).Surd()}
			shows(t, what, top, point, 0)
		}
	}
}

// Rings of three strips opened at seams 1, 2 and 3 show each fabric of the
// set in turn at the top: the second strip, the third, the first.
func TestRingsAreTurnedOn(t *testing.T) {
	const path = "../../../schema/testdata/unit-drawer.plan.json"
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	w, ok := drafting.Of(sizes(path, text)[0]).Part("ring")
	if !ok {
		t.Fatal("the ring is not drafted")
	}
	got := ""
	for _, p := range w.Patches {
		if corner, _ := p.Outline.Bounds(); corner.Y.IsZero() {
			got += string(rune('0' + p.Fabric))
		}
	}
	if got != "100" { // ink, milk, ink: milk at the top, then ink, then ink
		t.Errorf("fabrics %s at the top", got)
	}
}
