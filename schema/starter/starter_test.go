package starter

import (
	"io/fs"
	"strings"
	"testing"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// Every shape makes a plan in both units, and every plan that lies here is a
// shape. That the plans are in order is tested where the rules are run.
func TestShapes(t *testing.T) {
	listed := map[string]bool{}
	for _, s := range Shapes() {
		listed[s.Name+".json"] = true
		if s.Summary == "" || strings.HasSuffix(s.Summary, ".") {
			t.Errorf("%s: the summary is %q", s.Name, s.Summary)
		}
		for _, units := range []string{"in", "cm"} {
			text, problems, err := Plan(s.Name, Begin{ID: "a-b", Title: "A & “B”\\\n", Units: units})
			if err != nil || len(problems) > 0 {
				t.Errorf("%s in %s: %v %v", s.Name, units, err, problems)
				continue
			}
			tree, _ := jsontree.Parse(source.New("", text), jsontree.DefaultLimits())
			for key, want := range map[string]string{"id": "a-b", "title": "A & “B”\\\n", "units": units, "status": "draft"} {
				if got := tree.Get(key).Text; got != want {
					t.Errorf("%s in %s: %s is %q", s.Name, units, key, got)
				}
			}
		}
	}
	files, err := fs.ReadDir(plans, "shapes")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if !listed[f.Name()] {
			t.Errorf("%s is no shape", f.Name())
		}
	}
}

func TestPlanRefuses(t *testing.T) {
	cases := []struct {
		name, shape string
		begin       Begin
		want        string
	}{
		{"an id in capitals", "tube", Begin{"A", "A", "in"}, `"id" is "A"`},
		{"an id that is a device", "tube", Begin{"con", "A", "in"}, "Windows"},
		{"no id", "tube", Begin{"", "A", "in"}, `"id"`},
		{"an id that is too long", "tube", Begin{strings.Repeat("a", 65), "A", "in"}, `"id"`},
		{"no title", "tube", Begin{"a", "", "in"}, `"title"`},
		{"a title that is too long", "tube", Begin{"a", strings.Repeat("a", 121), "in"}, `"title"`},
		{"another unit", "tube", Begin{"a", "A", "mm"}, `"mm"`},
		{"another shape", "../shapes/tube", Begin{"a", "A", "in"}, `no shape "../shapes/tube"`},
	}
	for _, c := range cases {
		text, problems, err := Plan(c.shape, c.begin)
		said := ""
		if err != nil {
			said = err.Error()
		}
		for _, p := range problems {
			said += p.Message
		}
		if text != nil || !strings.Contains(said, c.want) {
			t.Errorf("%s: %q", c.name, said)
		}
	}
}
