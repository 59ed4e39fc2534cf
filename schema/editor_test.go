package schema_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// What editors are given says the recipe's words of what a size may change,
// however deep, refers to nothing that is not there, and demands nothing more.
// That its verdicts are the same is tested with another validator, over all
// plans of the project and mutants of them, in the outside checks.
func TestForEditors(t *testing.T) {
	text, ok := schema.ForEditors("plan")
	if !ok {
		t.Fatal("there is none")
	}
	tree, problems := jsontree.Parse(source.New("", text), jsontree.DefaultLimits())
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	compiler := jsonschema.NewCompiler()
	if err := compiler.AddResource("plan.json", value); err != nil {
		t.Fatal(err)
	}
	if _, err := compiler.Compile("plan.json"); err != nil { // all references lead somewhere
		t.Error(err)
	}
	words := func(pointer string) string {
		if n := tree.At(pointer + "/description"); n != nil {
			return n.Text
		}
		return ""
	}
	for size, recipe := range map[string]string{
		"/definitions/words_of_grid/properties/rows":                              "/definitions/grid/properties/rows",
		"/definitions/words_of_border/properties/width":                           "/definitions/border/properties/width",
		"/definitions/words_of_part/properties/cut/properties/square":             "/definitions/part/properties/cut/properties/square",
		"/definitions/words_of_kit/properties/minutes":                            "/definitions/kit/properties/minutes",
		"/definitions/words_of_fabric/properties/yardage/properties/usable_width": "/definitions/fabric/properties/yardage/properties/usable_width",
		"/definitions/size/properties/parts/allOf/0/additionalProperties":         "/properties/parts/additionalProperties",
		"/definitions/size/properties/layout/allOf/0":                             "/properties/layout",
	} {
		if got, want := words(size), words(recipe); got != want || want == "" {
			t.Errorf("%s says %q, wanted %q", size, got, want)
		}
	}
	demands := "type enum const required oneOf anyOf allOf not if dependencies pattern minimum maximum minItems maxItems minProperties additionalItems propertyNames uniqueItems"
	for _, m := range tree.Get("definitions").Members {
		if strings.HasPrefix(m.Key, "words_of_") {
			noDemand(t, m.Key, m.Value, strings.Fields(demands))
		}
	}
}

// noDemand looks at a schema and at those in it.
func noDemand(t *testing.T, at string, n *jsontree.Node, demands []string) {
	t.Helper()
	for _, d := range demands {
		if n.Get(d) != nil {
			t.Errorf("%s demands %s", at, d)
		}
	}
	if extra := n.Get("additionalProperties"); extra != nil {
		if extra.Kind != jsontree.Object {
			t.Errorf("%s allows no other members", at)
		}
		noDemand(t, at+"/additionalProperties", extra, demands)
	}
	if items := n.Get("items"); items != nil {
		noDemand(t, at+"/items", items, demands)
	}
	if members := n.Get("properties"); members != nil {
		for _, m := range members.Members {
			noDemand(t, at+"/"+m.Key, m.Value, demands)
		}
	}
}

func TestForEditorsOthers(t *testing.T) {
	want, _ := schema.Text("project")
	if got, ok := schema.ForEditors("project"); !ok || !bytes.Equal(got, want) {
		t.Error("the project's schema has words for editors of its own")
	}
	if _, ok := schema.ForEditors("quilt"); ok {
		t.Error("there is a schema of quilt")
	}
}
