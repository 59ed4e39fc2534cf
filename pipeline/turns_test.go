package pipeline_test

import (
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
