package jsonreport

import (
	"bytes"
	"encoding/json"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"yardproof/exporters/internal/edge"
	"yardproof/exporters/internal/sample"
	"yardproof/pipeline/report"
)

func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("mem:///report.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	return c.MustCompile("mem:///report.schema.json")
}

func runs() map[string]*report.Run {
	return map[string]*report.Run{"run": sample.Line(), "edge": edge.Run(), "empty": {}, "many": edge.Many(30),
		"compared": {Baseline: &report.Baseline{Recorded: 3, Gone: 1, Unseen: 2}},
		"since":    {Baseline: &report.Baseline{Since: "main", Same: 40, Unjudged: 2}}}
}

func TestReportsFollowTheSchema(t *testing.T) {
	schema := compiled(t)
	for name, r := range runs() {
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(written(t, r)))
		if err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(doc); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Each keyword that asks for something refuses a report that it is not in.
func TestTheSchemaRefuses(t *testing.T) {
	schema := compiled(t)
	whole := string(written(t, sample.Line()))
	for _, breakage := range [][2]string{
		{`"format": 1`, `"format": 2`},
		{`"level": "warning"`, `"level": "off"`},
		{`"rule": "fabric/tight"`, `"rule": "tight"`},
		{`"exported": true`, `"exported": "yes"`},
		{`"status": "draft"`, `"status": "done"`},
		{`"follow": 2`, `"follow": -1`},
		{`"worst": "error"`, `"worst": "fatal"`},
		{`"line": 4`, `"line": 0`},
		{`"column": 70`, `"column": 0`},
		{`"start": 196`, `"start": -1`},
		{`"end": 204`, `"stop": 204`},
		{`"pointer": "/fabrics`, `"pointer": "fabrics`},
		{`"range"`, `"bytes"`},
		{`"message"`, `"text"`},
		{`"findings"`, `"found"`},
		{`"hint": "close it with }"`, `"hint": ""`},
		{`"id": "tide-line"`, `"id": 4`},
		{`"title": "Tide Line"`, `"title": ""`},
		{`"file": "yardproof.json"`, `"file": ""`},
		{`"accepted"`, `"left_out"`},
		{"[\n        \"throw\"\n      ]", "[]"},
	} {
		broken := strings.ReplaceAll(whole, breakage[0], breakage[1])
		if broken == whole {
			t.Fatalf("nothing to break: %s", breakage[0])
		}
		doc, err := jsonschema.UnmarshalJSON(strings.NewReader(broken))
		if err != nil {
			t.Fatalf("%s: %v", breakage[1], err)
		}
		if schema.Validate(doc) == nil {
			t.Errorf("%s in place of %s follows the schema", breakage[1], breakage[0])
		}
	}
}

// What the project accepts has its reason, and a day where it has one.
func TestTheSchemaRefusesExceptions(t *testing.T) {
	schema := compiled(t)
	whole := string(written(t, edge.Run()))
	for _, breakage := range [][2]string{
		{`"until": "2027-03-31"`, `"until": "31 March"`},
		{`"reason": "a cushion`, `"because": "a cushion`},
		{`"by": {`, `"from": {`},
	} {
		broken := strings.Replace(whole, breakage[0], breakage[1], 1)
		doc, err := jsonschema.UnmarshalJSON(strings.NewReader(broken))
		if err != nil || broken == whole {
			t.Fatalf("nothing to break, or %v: %s", err, breakage[0])
		}
		if schema.Validate(doc) == nil {
			t.Errorf("%s in place of %s follows the schema", breakage[1], breakage[0])
		}
	}
}

// The schema has every member that is written, and no other.
func TestTheSchemaHasEveryMember(t *testing.T) {
	var s struct {
		Properties  map[string]any
		Definitions map[string]struct{ Properties map[string]any }
	}
	if err := json.Unmarshal(Schema(), &s); err != nil {
		t.Fatal(err)
	}
	described := map[string][]string{"document": slices.Sorted(maps.Keys(s.Properties))}
	for name, d := range s.Definitions {
		if d.Properties != nil {
			described[name] = slices.Sorted(maps.Keys(d.Properties))
		}
	}
	declared := map[string][]string{
		"document": members(document{}), "plan": members(plan{}), "counts": members(counts{}), "finding": members(finding{}),
		"related": members(related{}), "place": members(place{}), "range": members(span{}), "position": members(position{}),
		"excused": members(excused{}), "baseline": members(baseline{}), "text": members(reading{}), "stated": members(stated{}),
		"way": members(way{}), "edit": members(edit{}),
	}
	if diff := cmp.Diff(declared, described); diff != "" {
		t.Errorf("-written +described:\n%s", diff)
	}
}

// members are the JSON names of a struct's own fields.
func members(v any) []string {
	var names []string
	for _, f := range reflect.VisibleFields(reflect.TypeOf(v)) {
		if name, _, _ := strings.Cut(f.Tag.Get("json"), ","); name != "" && len(f.Index) == 1 {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}
