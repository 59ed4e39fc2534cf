package plan

import (
	"encoding/json"
	"maps"
	"slices"
	"testing"

	"yardproof/schema"
)

// TestDecoders: the schema's ways to make a part are those that can be read.
func TestDecoders(t *testing.T) {
	text, ok := schema.Text("plan")
	if !ok {
		t.Fatal("no schema")
	}
	var s struct {
		Definitions struct {
			Part struct {
				Properties map[string]any `json:"properties"`
			} `json:"part"`
		} `json:"definitions"`
	}
	if err := json.Unmarshal(text, &s); err != nil {
		t.Fatal(err)
	}
	keys := s.Definitions.Part.Properties
	for _, said := range []string{"seam", "press", "note"} {
		if _, ok := keys[said]; !ok {
			t.Errorf("a part has no %q in the schema", said)
		}
		delete(keys, said)
	}
	want, got := slices.Sorted(maps.Keys(keys)), slices.Sorted(maps.Keys(decoders))
	if !slices.Equal(want, got) {
		t.Errorf("the schema has %q, and there are decoders for %q", want, got)
	}
}
