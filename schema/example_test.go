package schema_test

import (
	"net/url"
	"strings"
	"testing"

	outside "github.com/santhosh-tekuri/jsonschema/v6"

	"yardproof/schema"
	"yardproof/schema/jsontree"
)

// TestExamples: hints show the schema's examples, and make up those that it
// does not give. santhosh-tekuri/jsonschema, a draft-07 validator that the
// program does not use, accepts every one of them where it stands.
func TestExamples(t *testing.T) {
	for name, least := range map[string]int{"plan": 300, "project": 80} {
		text, _ := schema.Text(name)
		doc, err := outside.UnmarshalJSON(strings.NewReader(string(text)))
		if err != nil {
			t.Fatal(err)
		}
		c := outside.NewCompiler()
		if err := c.AddResource("mem:///schema.json", doc); err != nil {
			t.Fatal(err)
		}
		madeUp := 0
		walk(t, name, func(at string, s *jsontree.Node) {
			if at == "" || strings.Contains(at, "propertyNames") || strings.HasSuffix(at, "/if") || strings.HasSuffix(at, "/then") || strings.HasSuffix(at, "/oneOf") {
				return
			}
			here := c.MustCompile("mem:///schema.json#" + (&url.URL{Path: at}).EscapedPath())
			if examples := s.Get("examples"); examples != nil {
				for _, e := range examples.Items {
					if err := here.Validate(e.Interface()); err != nil {
						t.Errorf("%s %s: %v", name, at, err)
					}
				}
			}
			shown, ok := schema.MadeUp(name, at)
			if !ok {
				if !takesText(s) {
					t.Errorf("%s %s: nothing to show", name, at)
				}
				return
			}
			madeUp++
			if err := here.Validate(parse(t, shown).Interface()); err != nil {
				t.Errorf("%s %s: shows %s: %v", name, at, shown, err)
			}
		})
		if madeUp < least {
			t.Errorf("%s: only %d examples were looked at", name, madeUp)
		}
	}
}

// takesText: a text need not be shown, for the hint puts what is there in
// quotation marks.
func takesText(s *jsontree.Node) bool {
	types := s.Get("type")
	return types != nil && (types.Text == "string" || len(types.Items) > 0 && types.Items[0].Text == "string")
}
