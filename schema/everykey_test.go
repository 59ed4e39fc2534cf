package schema_test

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// place is a value of a sample file: where it stands and its range.
type place struct {
	pointer string
	at      source.Range
}

// places lists every value of a tree but the root.
func places(n *jsontree.Node, pointer string, out []place) []place {
	if pointer != "" {
		out = append(out, place{pointer, n.Range})
	}
	for _, m := range n.Members {
		out = places(m.Value, pointer+jsontree.Pointer(m.Key), out)
	}
	for i, item := range n.Items {
		out = places(item, fmt.Sprintf("%s/%d", pointer, i), out)
	}
	return out
}

// wrongKinds are values of every type, of which each place takes some at most.
var wrongKinds = []string{`0.5`, `"2 1/2"`, `true`, `null`, `["red"]`, `{ "red": "2 1/2" }`, `[]`, `{}`}

// TestEveryKey puts a value of every type in every place of files that use the
// whole vocabulary. One wrong value is one finding, at its own place or at what
// stands in it, in whole words; YARDPROOF_READ names a file to read them in.
func TestEveryKey(t *testing.T) {
	var read strings.Builder
	for file, check := range map[string]func(*jsontree.Node) []source.Problem{
		"lattice-walk.plan.json": schema.Plan, "unit-drawer.plan.json": schema.Plan, "settings.plan.json": schema.Plan,
		"everything-later.plan.json": schema.Plan, "studio.project.json": schema.Project,
	} {
		text := sample(t, file)
		for _, p := range places(parse(t, text), "", nil) {
			for _, kind := range wrongKinds {
				tree := parse(t, text[:p.at.Start]+kind+text[p.at.End:])
				problems := check(tree)
				fmt.Fprintf(&read, "%s = %s\n", p.pointer, kind)
				for _, line := range lines(tree, problems) {
					fmt.Fprintf(&read, "\t%s\n", line)
				}
				oneOfEach(t, p.pointer+" = "+kind, problems, source.Range{Start: p.at.Start, End: p.at.Start + len(kind)})
			}
		}
	}
	if name := os.Getenv("YARDPROOF_READ"); name != "" {
		if err := os.WriteFile(name, []byte(read.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func oneOfEach(t *testing.T, what string, problems []source.Problem, at source.Range) {
	t.Helper()
	elsewhere := func(p source.Problem) bool {
		// That a list lacks its rows is told at the list.
		return !at.Encloses(p.Range) && !strings.Contains(p.Message, "by themselves")
	}
	holds := strings.HasSuffix(what, "}") || strings.HasSuffix(what, "]")
	if slices.ContainsFunc(problems, elsewhere) || len(problems) > 1 && !holds {
		t.Errorf("%s: %v", what, problems)
	}
	for _, p := range problems {
		whole := p.Message + " / " + p.Hint
		for _, odd := range []string{"  ", "nothing", " of ;", "(MISSING)", "%!", " or or ", ": ;", "<nil>", "1 items", "1 characters", "exactly 1 are"} {
			if strings.Contains(whole, odd) {
				t.Errorf("%s: %q in %s", what, odd, whole)
			}
		}
	}
}
