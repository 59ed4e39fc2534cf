package plan

import (
	"encoding/json"
	"maps"
	"reflect"
	"slices"
	"testing"

	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// ways are the schema's ways to make a part: the keys of it that are no others.
func ways(t *testing.T) []string {
	t.Helper()
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
	return slices.Sorted(maps.Keys(keys))
}

// TestDecoders: the schema's ways to make a part are those that can be read.
func TestDecoders(t *testing.T) {
	want, got := ways(t), slices.Sorted(maps.Keys(decoders))
	if !slices.Equal(want, got) {
		t.Errorf("the schema has %q, and there are decoders for %q", want, got)
	}
}

// TestMakerMethods: what a decoder reads is handed to a method of a maker that is
// named after it, and every method of a maker has a decoder of what it takes.
func TestMakerMethods(t *testing.T) {
	maker, read := reflect.TypeFor[Maker](), map[string]bool{"NotDerived": true}
	for _, key := range ways(t) {
		tree, problems := jsontree.Parse(source.New("part", []byte("{}")), jsontree.DefaultLimits())
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		of := reflect.TypeOf(decoders[key](&reader{}, tree, Seam{}))
		method, ok := maker.MethodByName(of.Name())
		if !ok || method.Type.In(0) != of || of == reflect.TypeFor[NotDerived]() {
			t.Errorf("%s is read as %s, for which a maker has no method", key, of)
		}
		read[of.Name()] = true
	}
	for i := range maker.NumMethod() {
		if name := maker.Method(i).Name; !read[name] {
			t.Errorf("a maker has the method %s, and nothing is read as that", name)
		}
	}
}
