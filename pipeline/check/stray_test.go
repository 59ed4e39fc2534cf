package check

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/schema/source"
)

// ofTotals are the rules that say of a total that it is too much, just enough
// or exactly so: of what was counted without knowing all, none of it is known.
// Shortages are not among them: what is short of a part of the need is short
// of the whole.
var ofTotals = []string{
	"cost/below-cost", "cost/kit-contents", "cost/under-target",
	"fabric/article-strips", "fabric/could-ask-less", "fabric/generous", "fabric/pack-tight", "fabric/packs-over", "fabric/quarter-size",
	"fabric/tight", "fabric/unsettled", "fabric/unsquared", "fabric/wide-only",
	"printed/left", "printed/parts", "printed/sets", "printed/strips", "printed/tubes",
	"reference/unused-fabric", "reference/unused-part",
	"yield/ears-lost", "yield/no-slack", "yield/sets-left-over", "yield/strips-left-over", "yield/tube-squares", "yield/units-over",
}

// offending are the findings about totals, and figures to print that do not say
// 'at least', also among those that may follow.
func offending(found []diag.Finding) (bad []diag.Finding) {
	for _, f := range found {
		figure := strings.HasPrefix(f.Hint, "print ") && strings.HasPrefix(f.Rule, "fabric/") && !strings.HasPrefix(f.Hint, "print at least ")
		if slices.Contains(ofTotals, f.Rule) || figure {
			bad = append(bad, f)
		}
		bad = append(bad, offending(f.Follows)...)
	}
	return bad
}

// Every name of every plan of the demo line is misspelt in turn, wherever a part
// or a fabric goes into something: nothing may then be said of totals.
func TestMisspeltNameLeavesNoTotalKnown(t *testing.T) {
	files, err := filepath.Glob("../../testdata/line/*/*.plan.json")
	more, _ := filepath.Glob("../../testdata/line/*.plan.json")
	if files = append(files, more...); err != nil || len(files) == 0 {
		t.Fatal("no demo line")
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		p, _ := checkText(source.New(name, text), nil)
		if p == nil {
			continue
		}
		seen := map[string]bool{}
		for _, m := range p.Sizes[0].Mentions() {
			if kind := m.By + m.Name.Text; !m.Made || seen[kind] || m.Name.At.End > len(text) {
				continue
			} else {
				seen[kind] = true
			}
			wrong := string(text[:m.Name.At.Start]) + `"egde"` + string(text[m.Name.At.End:])
			_, found := checkText(source.New(name, []byte(wrong)), nil)
			if !strings.Contains(rulesOf(found), "reference/unknown-") {
				t.Errorf("%s: %q of %s misspelt: not told", name, m.Name.Text, m.By)
			}
			if bad := offending(found); len(bad) > 0 {
				t.Errorf("%s: %q of %s misspelt:\n%s", name, m.Name.Text, m.By, short(bad))
			}
		}
	}
}
