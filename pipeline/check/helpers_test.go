package check

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

var update = flag.Bool("update", false, "rewrite the goldens of this package and of testdata/checks")

const fixtures = "../../testdata/checks"

func golden(t *testing.T, path, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s:\ngot\n%s\nwant\n%s", filepath.Base(path), got, want)
	}
}

// checkText takes a plan through the whole way from text to findings. The
// plan is nil when it could not be read.
func checkText(f *source.File, project *plan.Project) (*plan.Plan, []diag.Finding) {
	tree, problems := jsontree.Parse(f, jsontree.Limits{})
	if problems = append(problems, schema.Plan(tree)...); len(problems) > 0 {
		return nil, Problems(f, tree, "", problems)
	}
	trees := plan.Merge(tree)
	for _, s := range trees {
		if !s.Same {
			problems = append(problems, schema.Plan(s.Tree)...)
		}
	}
	if len(problems) > 0 {
		return nil, Problems(f, tree, "", problems)
	}
	p, problems := plan.Decode(f, tree, trees, project)
	if len(problems) > 0 {
		return nil, Problems(f, tree, p.ID.Text, problems)
	}
	var sizes []*derive.Size
	for i := range p.Sizes {
		sizes = append(sizes, derive.Of(p, &p.Sizes[i]))
	}
	return p, All(Input{Plan: p, Sizes: sizes, Project: project})
}

// short prints findings for people to read in a .want file.
func short(found []diag.Finding) string {
	var b strings.Builder
	for _, f := range found {
		write(&b, f, "")
	}
	return b.String()
}

func write(b *strings.Builder, f diag.Finding, indent string) {
	fmt.Fprintf(b, "%s%s: %s: %s [%s]\n", indent, where(f.Place), f.Level, f.Message, f.Rule)
	if len(f.Sizes) > 0 {
		fmt.Fprintf(b, "%s  sizes: %s\n", indent, strings.Join(f.Sizes, ", "))
	}
	if f.Hint != "" {
		fmt.Fprintf(b, "%s  hint: %s\n", indent, f.Hint)
	}
	for _, r := range f.Related {
		fmt.Fprintf(b, "%s  %s: %s\n", indent, where(r.Place), r.Message)
	}
	for _, next := range f.Follows {
		write(b, next, indent+"  follows: ")
	}
}

func where(p diag.Place) string {
	return fmt.Sprintf("%s:%d:%d", p.File, p.Start.Line, p.Start.Column)
}
