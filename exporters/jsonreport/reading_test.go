package jsonreport

import (
	"bytes"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"yardproof/exporters/internal/sample"
)

// A report of a text follows the schema, and counts what it lists.
func TestReading(t *testing.T) {
	b := written(t, sample.Read())
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	if err := compiled(t).Validate(doc); err != nil {
		t.Error(err)
	}
	for _, want := range []string{`"agree": 1,`, `"disagree": 1,`, `"not_placed": 1,`, `"from": "printed"`, `"sense": "label"`} {
		if !bytes.Contains(b, []byte(want)) {
			t.Errorf("there is no %s in:\n%s", want, b)
		}
	}
}
