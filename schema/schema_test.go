package schema_test

import (
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	outside "github.com/santhosh-tekuri/jsonschema/v6"

	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

func parse(t testing.TB, text string) *jsontree.Node {
	t.Helper()
	tree, problems := jsontree.Parse(source.New("test.json", []byte(text)), jsontree.Limits{})
	if len(problems) > 0 {
		t.Fatalf("not JSON: %v", problems)
	}
	return tree
}

// lines are problems as "code pointer: message -> hint".
func lines(tree *jsontree.Node, problems []source.Problem) []string {
	var out []string
	for _, p := range problems {
		s := p.Code + " " + tree.PointerAt(p.Range.Start) + ": " + p.Message
		if p.Hint != "" {
			s += " -> " + p.Hint
		}
		out = append(out, s)
	}
	return out
}

// outsider compiles a schema with a validator that the program does not use.
func outsider(t testing.TB, name string) *outside.Schema {
	t.Helper()
	text, _ := schema.Text(name)
	doc, err := outside.UnmarshalJSON(strings.NewReader(string(text)))
	if err != nil {
		t.Fatal(err)
	}
	c := outside.NewCompiler()
	if err := c.AddResource("mem:///schema.json", doc); err != nil {
		t.Fatal(err)
	}
	return c.MustCompile("mem:///schema.json")
}

// TestCases breaks one keyword at a time and compares the whole of what is
// said. santhosh-tekuri/jsonschema, a draft-07 validator that works by other
// code, has to refuse the same texts.
func TestCases(t *testing.T) {
	tests := []struct {
		name, right string
		wrongs      []wrong
		check       func(*jsontree.Node) []source.Problem
	}{
		{"plan", rightPlan, wrongPlans(), schema.Plan},
		{"project", rightProject, wrongProjects(), schema.Project},
		{"baseline", rightBaseline, wrongBaselines(), schema.Baseline},
	}
	for _, tt := range tests {
		other := outsider(t, tt.name)
		tree := parse(t, tt.right)
		if got := tt.check(tree); len(got) > 0 || other.Validate(tree.Interface()) != nil {
			t.Fatalf("the right %s is refused: %v", tt.name, lines(tree, got))
		}
		for _, w := range tt.wrongs {
			t.Run(tt.name+"/"+w.keyword+" "+w.new[:min(24, len(w.new))], func(t *testing.T) {
				if strings.Count(tt.right, w.old) != 1 {
					t.Fatalf("%s stands %d times in the right text", w.old, strings.Count(tt.right, w.old))
				}
				tree := parse(t, strings.Replace(tt.right, w.old, w.new, 1))
				if diff := cmp.Diff([]string{w.want}, lines(tree, tt.check(tree))); diff != "" {
					t.Errorf("(-want +got)\n%s", diff)
				}
				if !strings.Contains(w.new, "1e399") && other.Validate(tree.Interface()) == nil {
					t.Error("the other validator accepts it")
				}
			})
		}
	}
}

// TestEveryKeywordCanFail keeps the table complete: a keyword that the schema
// uses and the validator does not know would pass everything in silence.
func TestEveryKeywordCanFail(t *testing.T) {
	neverFails := map[string]bool{
		"$schema": true, "title": true, "description": true, "default": true, "examples": true,
		"definitions": true, "properties": true, "items": true, "$ref": true, "if": true,
	}
	for name, wrongs := range map[string][]wrong{"plan": wrongPlans(), "project": wrongProjects(), "baseline": wrongBaselines()} {
		broken := map[string]bool{}
		for _, w := range wrongs {
			broken[w.keyword] = true
		}
		walk(t, name, func(_ string, s *jsontree.Node) {
			for _, m := range s.Members {
				if !neverFails[m.Key] && !broken[m.Key] {
					t.Errorf("%s: no case breaks the keyword %q", name, m.Key)
					broken[m.Key] = true
				}
			}
		})
	}
}

// TestSeveral finds all faults at once, in the order of the file, and the same
// on every run though the validator's own order is that of a map.
func TestSeveral(t *testing.T) {
	text := strings.NewReplacer(`"units": "in"`, `"units": "inch"`, `"allowance"`, `"allowence"`,
		`"count": 20`, `"count": 0`, `"rows": 3, `, ``).Replace(rightPlan)
	tree := parse(t, text)
	want := []string{
		`schema/not-allowed /units: "units" is "inch"; wanted: "in" or "cm"`,
		`schema/unknown-key /seam/allowence: there is no "allowence" in "seam" -> write "allowance"`,
		`schema/out-of-range /fabrics/pack/precut/count: "count" of "precut" is 0; the least is 1`,
		`schema/missing /layout/grid: "rows" is missing from "grid" of "layout" -> add "rows"`,
	}
	for range 50 {
		if diff := cmp.Diff(want, lines(tree, schema.Plan(tree))); diff != "" {
			t.Fatalf("(-want +got)\n%s", diff)
		}
	}
}

// TestOutsideTheRoot is for trees that are no object at all.
func TestOutsideTheRoot(t *testing.T) {
	for text, want := range map[string]string{
		`[]`:     `schema/wrong-type : the plan is a list; wanted: an object in braces`,
		`"plan"`: `schema/wrong-type : the plan is "plan"; wanted: an object in braces`,
		`null`:   `schema/wrong-type : the plan is null; wanted: an object in braces`,
	} {
		tree := parse(t, text)
		if diff := cmp.Diff([]string{want}, lines(tree, schema.Plan(tree))); diff != "" {
			t.Errorf("%s (-want +got)\n%s", text, diff)
		}
	}
	if got := schema.Plan(nil); got != nil {
		t.Errorf("no tree: %v", got)
	}
}

// TestSamples accepts files that use every word of the vocabulary, and so does
// the other validator.
func TestSamples(t *testing.T) {
	for file, name := range map[string]string{
		"lattice-walk.plan.json": "plan", "unit-drawer.plan.json": "plan", "everything-later.plan.json": "plan", "studio.project.json": "project",
	} {
		tree := parse(t, sample(t, file))
		check := schema.Plan
		if name == "project" {
			check = schema.Project
		}
		if got := check(tree); len(got) > 0 {
			t.Errorf("%s: %q", file, lines(tree, got))
		}
		if err := outsider(t, name).Validate(tree.Interface()); err != nil {
			t.Errorf("%s: the other validator: %v", file, err)
		}
	}
}

// TestKeyWithNUL: the validator's paths are split at NUL, which JSON allows in a
// key, and which no tree that it is given has.
func TestKeyWithNUL(t *testing.T) {
	text := strings.Replace(rightPlan, `"plain": { "cut"`, `"a\u0000b": 3, "plain": { "cut"`, 1)
	if tree, problems := jsontree.Parse(source.New("p", []byte(text)), jsontree.DefaultLimits()); tree != nil || len(problems) != 1 || problems[0].Code != "schema/encoding" {
		t.Errorf("%v", problems)
	}
}

func sample(t testing.TB, name string) string {
	t.Helper()
	b, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func FuzzPlan(f *testing.F) {
	f.Add(rightPlan)
	for _, w := range wrongPlans() {
		f.Add(strings.Replace(rightPlan, w.old, w.new, 1))
	}
	f.Add(`{"a\u0000b": {"": []}, "turn": 1e308}`)
	f.Fuzz(func(t *testing.T, text string) {
		file := source.New("fuzz.json", []byte(text))
		tree, _ := jsontree.Parse(file, jsontree.Limits{})
		for _, p := range append(schema.Plan(tree), schema.Project(tree)...) {
			if !p.Range.Valid() || p.Range.End > len(text) || p.Message == "" || p.Code == schema.NotChecked {
				t.Fatalf("%+v", p)
			}
		}
	})
}
