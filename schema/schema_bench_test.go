package schema_test

import (
	"os"
	"testing"

	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// BenchmarkValidate is one plan of 4 KB that follows the schema.
func BenchmarkValidate(b *testing.B) {
	text, err := os.ReadFile("testdata/lattice-walk.plan.json")
	if err != nil {
		b.Fatal(err)
	}
	tree, _ := jsontree.Parse(source.New("", text), jsontree.Limits{})
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		if problems := schema.Plan(tree); len(problems) > 0 {
			b.Fatal(problems)
		}
	}
}
