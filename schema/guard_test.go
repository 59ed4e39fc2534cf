package schema

import (
	"testing"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// TestGuard: a validator that panics costs one problem and not the run.
func TestGuard(t *testing.T) {
	tree, _ := jsontree.Parse(source.New("", []byte(`{ "format": 1 }`)), jsontree.Limits{})
	broken := rules{what: "the plan"} // without a schema the validator panics
	got := broken.check(tree)
	if len(got) != 1 || got[0].Code != NotChecked || got[0].Range != (source.Range{Start: 0, End: 1}) {
		t.Errorf("got %+v", got)
	}
}
