package pipeline

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// eachPlace calls do for every value of a tree but the root.
func eachPlace(n *jsontree.Node, pointer string, do func(pointer string, at source.Range)) {
	if pointer != "" {
		do(pointer, n.Range)
	}
	for _, m := range n.Members {
		eachPlace(m.Value, pointer+jsontree.Pointer(m.Key), do)
	}
	for i, item := range n.Items {
		eachPlace(item, fmt.Sprintf("%s/%d", pointer, i), do)
	}
}

// TestOneWrongValue puts a value of a wrong type in every place of files that
// use most of the vocabulary: nothing but that is said, whatever the sizes and
// the decoder make of the rest.
func TestOneWrongValue(t *testing.T) {
	tried := 0
	for _, name := range []string{"lattice-walk.plan.json", "unit-drawer.plan.json", "settings.plan.json"} {
		text, err := os.ReadFile("../schema/testdata/" + name)
		if err != nil {
			t.Fatal(err)
		}
		tree, problems := jsontree.Parse(source.New(name, text), jsontree.Limits{})
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		eachPlace(tree, "", func(pointer string, at source.Range) {
			if pointer == "/sizes/stair/parts/plain/cut/square" {
				return // null there takes a key away, which is then there beside the size
			}
			tried++
			wrong := string(text[:at.Start]) + "0.5" + string(text[at.End:])
			if strings.ContainsAny(string(text[at.Start]), "0123456789\"") {
				wrong = string(text[:at.Start]) + "true" + string(text[at.End:])
			}
			w := &work{planFile: &planFile{}, file: source.New(name, []byte(wrong))}
			if found := w.text(t.Context()); len(found) > 1 {
				t.Errorf("%s %s: %d findings", name, pointer, len(found))
				for _, f := range found {
					t.Logf("%s: %s", f.Rule, f.Message)
				}
			}
		})
	}
	if tried < 400 {
		t.Errorf("only %d places were tried", tried)
	}
}
