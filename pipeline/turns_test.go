package pipeline_test

import (
	"encoding/json"
	"strings"
	"testing"

	"yardproof/pipeline"
	"yardproof/schema"
)

// places of a picture, as row and column in sixteenths.
var places = map[string][2]int{
	"top left": {1, 1}, "top": {1, 8}, "top right": {1, 15}, "left": {8, 1}, "middle": {8, 8}, "right": {8, 15},
	"bottom left": {15, 1}, "bottom": {15, 8}, "bottom right": {15, 15},
	"low left": {13, 5}, "low right": {13, 11},
}

func at(t *testing.T, picture []string, place string) string {
	t.Helper()
	to, ok := places[place]
	if !ok || len(picture) == 0 {
		t.Fatalf("no %s in %q", place, picture)
	}
	row := picture[to[0]*len(picture)/16]
	return row[to[1]*len(row)/16 : to[1]*len(row)/16+1]
}

// What the words say is what is drawn, and the schema says the same words.
func TestWordsOfTurnsAreDrawn(t *testing.T) {
	drawn := map[string]string{ // place and the fabric there
		"half-squares":    "top left a, bottom right b",
		"triangle-square": "top left a, bottom right b",
		"four-triangles":  "top a, right b, bottom c, left b",
		"hourglass":       "top a, right b, bottom a, left b",
		"flying-geese":    "top left b, top right b, bottom a, low left a, low right a, top a",
		"flip-corners":    "top left b, top right a, bottom left a, bottom right c",
		"logs":            "top b, right c, bottom b, left c, middle a",
		"near-square":     "top left b, left a, top a, bottom c, right c, bottom right d",
		"far-square":      "top left a, left b, top b, bottom d, right d, bottom right c",
		"segment":         "top left a, top right a, middle b, bottom left c, bottom right c",
		"slanted":         "top right a, bottom left c, middle b, top left  , bottom right  ",
		"loop":            "top left b, bottom left a, top right c, bottom right b",
		"triangles":       "top left c, low left a, top right b, bottom right c",
		"rows":            "top left a, top right b, bottom left c, bottom right c",
		"recut":           "top left b, top right a, bottom c",
		"quarter-turn":    "top right a, bottom right b, top left c, bottom left c",
		"mirror":          "top left b, top right a, bottom c",
	}
	text, _ := schema.Text("plan")
	if len(pipeline.Lyings()) != len(drawn) {
		t.Errorf("%d are drawn, want %d", len(pipeline.Lyings()), len(drawn))
	}
	for _, l := range pipeline.Lyings() {
		picture := pipeline.Lies(l.Part)
		wants := strings.Split(drawn[l.Part], ", ")
		for _, want := range wants {
			place, fabric := want[:len(want)-2], want[len(want)-1:]
			if got := at(t, picture, place); got != fabric {
				t.Errorf("%s: %q at the %s, want %q\n%s", l.Part, got, place, fabric, strings.Join(picture, "\n"))
			}
		}
		if !strings.Contains(string(text), l.Says) {
			t.Errorf("the schema does not say: %s", l.Says)
		}
	}
}

// Every operation is among those that are drawn, or there is a reason why it looks
// alike from all sides or lies as what it is made of does.
func TestEveryOperationIsDrawn(t *testing.T) {
	alike := map[string]string{
		"cut": "one piece of fabric", "strip": "one piece of fabric", "chain": "strips end to end", "template": "one piece, of any outline",
		"square_in_square": "four corners alike", "mosaic": "as the pattern draws it",
		"trim": "as its part", "bordered": "as its part", "sashed": "as a layout", "on_point": "as a layout",
	}
	text, _ := schema.Text("plan")
	var plan struct {
		Definitions struct {
			Part struct {
				OneOf []struct{ Required []string }
			}
		}
	}
	if err := json.Unmarshal(text, &plan); err != nil || len(plan.Definitions.Part.OneOf) == 0 {
		t.Fatal(err)
	}
	drawn := map[string]bool{}
	for _, l := range pipeline.Lyings() {
		drawn[l.Operation] = true
	}
	for _, way := range plan.Definitions.Part.OneOf {
		if name := way.Required[0]; drawn[name] == (alike[name] != "") {
			t.Errorf("%s: drawn %v, and the reason why not is %q", name, drawn[name], alike[name])
		}
	}
}
