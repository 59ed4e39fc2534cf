package derive_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
	"yardproof/scripts/fixtures/fixture"
)

// seeds are the plans of the tests and all plans under testdata.
func seeds(t testing.TB) []string {
	t.Helper()
	texts := []string{ninePatch, tubeQuilt, halfSquares, metric}
	fixtures := t.TempDir()
	if err := fixture.Write("../../../testdata/checks", "../../../testdata/checks", fixtures); err != nil {
		t.Fatal(err)
	}
	for _, pattern := range []string{
		"../../../testdata/*/*.plan.json", fixtures + "/*/*/*/*.plan.json", "../../../schema/testdata/*.plan.json",
	} {
		files, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			b, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			texts = append(texts, string(b))
		}
	}
	return texts
}

// FuzzPlanToDerive: whatever follows the schema is derived without a panic,
// and no fabric is bought below its bound. The text is a plan in which values
// have been exchanged for others: plain bytes would hardly ever be a plan.
func FuzzPlanToDerive(f *testing.F) {
	for _, text := range seeds(f) {
		f.Add(text, []byte{})
		f.Add(text, []byte{12, 0, 40, 1, 77, 2, 130, 9, 9, 5})
	}
	f.Fuzz(func(t *testing.T, text string, edits []byte) {
		p, _ := decode(edited(text, edits))
		if p == nil {
			return
		}
		for i := range p.Sizes {
			s := derive.Of(p, &p.Sizes[i])
			explain(s)
			sane(t, s)
		}
	})
}

func sane(t *testing.T, s *derive.Size) {
	for _, f := range s.Fabrics {
		if f.Err == nil && (f.Least.Length > f.Gross || f.Buy < f.Gross || f.Packs < 0 || f.Left < 0) {
			t.Errorf("%s: bound %d, gross %d, buy %d, packs %d, left %d", f.Role.Text, f.Least.Length, f.Gross, f.Buy, f.Packs, f.Left)
		}
	}
	for _, p := range s.Parts {
		if p.Needed < 0 || p.Made < 0 {
			t.Errorf("%s: needed %d, made %d", p.Name.Text, p.Needed, p.Made)
		}
	}
}

// edited exchanges values of a plan: each pair of bytes is which of its values
// and what for.
func edited(text string, edits []byte) string {
	for ; len(edits) >= 2; edits = edits[2:] {
		tree, problems := jsontree.Parse(source.New("", []byte(text)), jsontree.DefaultLimits())
		if tree == nil || len(problems) > 0 {
			return text
		}
		values := leaves(tree, nil)
		if len(values) == 0 {
			return text
		}
		at := values[int(edits[0])%len(values)].Range
		pool := append(names(tree), strings.Fields(`0 1 2 3 7 40 400 99999 0.01 "1/4" "1/64" "100000" 90 true null "cm" "in" {}`)...)
		text = text[:at.Start] + pool[int(edits[1])%len(pool)] + text[at.End:]
	}
	return text
}

// leaves are all values that are neither object nor array.
func leaves(n *jsontree.Node, found []*jsontree.Node) []*jsontree.Node {
	if len(n.Members)+len(n.Items) == 0 {
		return append(found, n)
	}
	for _, m := range n.Members {
		found = leaves(m.Value, found)
	}
	for _, item := range n.Items {
		found = leaves(item, found)
	}
	return found
}

// names are the plan's parts and fabrics, quoted.
func names(tree *jsontree.Node) []string {
	var quoted []string
	for _, key := range []string{"parts", "fabrics"} {
		if n := tree.Get(key); n != nil {
			for _, m := range n.Members {
				quoted = append(quoted, `"`+m.Key+`"`)
			}
		}
	}
	return quoted
}
