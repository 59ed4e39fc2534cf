package pipeline_test

import (
	"encoding/json"
	"os"
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

// turnsRecord is what testdata/turns.txt says: what lies where in the picture of a part,
// and why an operation is not drawn.
func turnsRecord(t *testing.T) (drawn, alike map[string]string) {
	t.Helper()
	text, err := os.ReadFile("testdata/turns.txt")
	if err != nil {
		t.Fatal(err)
	}
	drawn, alike = map[string]string{}, map[string]string{}
	for line := range strings.Lines(string(text)) {
		name, says, ok := strings.Cut(strings.TrimSuffix(line, "\n"), ": ")
		operation, looks := strings.CutSuffix(name, " looks alike")
		switch {
		case !ok || strings.HasPrefix(line, "#"):
		case looks:
			alike[operation] = says
		default:
			drawn[name] = says
		}
	}
	return drawn, alike
}

// What the words say is what is drawn, and the schema says the same words.
func TestWordsOfTurnsAreDrawn(t *testing.T) {
	drawn, _ := turnsRecord(t)
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
	_, alike := turnsRecord(t)
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
