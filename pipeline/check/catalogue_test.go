package check

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"yardproof/pipeline/diag"
)

// without are rules that no plan in a folder can provoke: yardproof's own
// troubles and what is said of texts, which scripts provoke, and what only a fault in the program, a file
// too large to keep or a cutting too hard to settle brings about.
func without(c Check) bool {
	return c.Scope == Running || c.Scope == Text || slices.Contains([]string{"schema/not-checked", "schema/too-large"}, c.Rule)
}

// TestRegistry holds the list of rules together.
func TestRegistry(t *testing.T) {
	families := map[string]Scope{}
	for i, c := range registry {
		family, slug, ok := strings.Cut(c.Rule, "/")
		if !ok || family == "" || slug == "" {
			t.Errorf("%q is not family/slug", c.Rule)
		}
		if i > 0 && registry[i-1].Rule >= c.Rule {
			t.Errorf("%s is not after %s", c.Rule, registry[i-1].Rule)
		}
		if slices.Contains(retired, c.Rule) {
			t.Errorf("%s is a retired name", c.Rule)
		}
		if c.Summary == "" || c.Why == "" || c.Fix == "" || c.Since == "" || c.Level < diag.Note {
			t.Errorf("%s lacks its level, first version, summary, why or fix", c.Rule)
		}
		if c.Lesser >= c.Level {
			t.Errorf("%s: its lesser level is not lower", c.Rule)
		}
		if needs := c.Scope == Plan || c.Scope == Size; needs != (c.Run != nil) {
			t.Errorf("%s: only rules about plans and sizes run", c.Rule)
		}
		families[family] = c.Scope
		for _, kind := range []string{"bad", "good"} {
			if info, err := os.Stat(filepath.Join(fixtures, filepath.FromSlash(c.Rule), kind)); !without(c) && (err != nil || !info.IsDir()) {
				t.Errorf("%s has no %s fixture", c.Rule, kind)
			}
		}
	}
}

// catalogued keeps CHECKS.md and README's table what the rules and their
// fixtures say.
func catalogued(t *testing.T) {
	t.Helper()
	golden(t, "CHECKS.md", wholeCatalogue(t))
	path := filepath.Join("..", "..", "README.md")
	readme, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	before, rest, ok := strings.Cut(string(readme), "<!-- rules -->\n")
	_, after, closed := strings.Cut(rest, "<!-- end of rules -->")
	if !ok || !closed {
		t.Fatal("README has no place for the table of rules")
	}
	golden(t, path, before+"<!-- rules -->\n"+table()+"<!-- end of rules -->"+after)
}

func wholeCatalogue(t *testing.T) string {
	var b strings.Builder
	b.WriteString("# What yardproof finds\n\nGenerated from the rules and their fixtures in testdata/checks; a test keeps it fresh.\n\n")
	for i := range registry {
		c := &registry[i]
		example, err := os.ReadFile(filepath.Join(fixtures, filepath.FromSlash(c.Rule), "bad.want"))
		if err != nil && !without(*c) {
			t.Error(err)
		}
		b.WriteString(entry(c, string(example)))
		b.WriteString("\n")
	}
	return b.String()
}

// table is a line a family, naming its rules.
func table() string {
	var b strings.Builder
	b.WriteString("| about | rules |\n| --- | --- |\n")
	for i := 0; i < len(registry); {
		family, _, _ := strings.Cut(registry[i].Rule, "/")
		var slugs []string
		for ; i < len(registry) && strings.HasPrefix(registry[i].Rule, family+"/"); i++ {
			slugs = append(slugs, strings.TrimPrefix(registry[i].Rule, family+"/"))
		}
		fmt.Fprintf(&b, "| %s/ | %s |\n", family, strings.Join(slugs, ", "))
	}
	return b.String()
}

// TestExplain finds every rule's entry and nothing of its neighbours.
func TestExplain(t *testing.T) {
	for _, c := range registry {
		text, ok := Explain(c.Rule)
		if !ok || !strings.HasPrefix(text, "## "+c.Rule+"\n") || !strings.Contains(text, c.Fix) {
			t.Errorf("%s is explained as %q", c.Rule, text)
		}
		if strings.Count(text, "\n## ") > 0 {
			t.Errorf("%s is explained with its neighbour", c.Rule)
		}
	}
	if _, ok := Explain("no/such-rule"); ok {
		t.Error("a rule is explained that does not exist")
	}
}
