package words

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

const (
	line  = "../../testdata/line"
	texts = "../../testdata/words"
)

// never does not stop.
func never() bool { return false }

// demo is a plan of the demo line, by its id, and its sizes.
func demo(t testing.TB, id string) (*plan.Plan, []*derive.Size) {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(line, id+".plan.json"))
	if err != nil {
		t.Fatal(err)
	}
	return derived(t, b)
}

func derived(t testing.TB, b []byte) (*plan.Plan, []*derive.Size) {
	t.Helper()
	file := source.New("test.plan.json", b)
	tree, problems := jsontree.Parse(file, jsontree.DefaultLimits())
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	p, problems := plan.Decode(file, tree, plan.Merge(tree), nil)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	var sizes []*derive.Size
	for i := range p.Sizes {
		sizes = append(sizes, derive.Of(p, &p.Sizes[i]))
	}
	return p, sizes
}

// sample is one of the invented texts.
type sample struct {
	name, text string
	reader     *Reader
}

func samples(t testing.TB) []sample {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(texts, "*.*.*"))
	if err != nil || len(names) < 20 {
		t.Fatalf("texts: %v, %v", names, err)
	}
	var all []sample
	for _, name := range names {
		b, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		base := filepath.Base(name)
		id, _, _ := strings.Cut(base, ".")
		p, sizes := demo(t, id)
		all = append(all, sample{base, string(b), NewReader(p, sizes)})
	}
	return all
}

// TestTexts reads the invented texts, in which everything is right: nothing may
// disagree, and of the numbers that state a quantity at most one in twenty may not
// be placed.
func TestTexts(t *testing.T) {
	total, unplaced := 0, 0
	for _, s := range samples(t) {
		file := source.New(s.name, []byte(s.text))
		for _, n := range s.reader.Check(s.text, never) {
			at := file.Position(n.At.Start)
			switch n.Verdict {
			case Disagrees:
				t.Errorf("%s:%d:%d %q disagrees with %s (%s), which is %s:\n%s", s.name, at.Line, at.Column, file.Slice(n.At), n.States, n.Size, n.Is, file.Line(at.Line))
			case NotPlaced:
				unplaced++
				t.Logf("%s:%d:%d %q is not placed", s.name, at.Line, at.Column, file.Slice(n.At))
			case NoQuantity:
				continue
			}
			total++
		}
	}
	if total < 900 {
		t.Errorf("only %d numbers are taken for quantities", total)
	}
	if 20*unplaced > total {
		t.Errorf("%d of %d numbers are not placed", unplaced, total)
	}
}

// TestSenses holds what the noisy text says beside quantities against what it is.
func TestSenses(t *testing.T) {
	p, sizes := demo(t, "first-wheels")
	r := NewReader(p, sizes)
	for text, want := range map[string]string{
		"Step 3. Sew.": "label", "See page 12.": "label", "Figure 2 shows it.": "label", "1) Sew the rows.": "label", "Pattern no. 117": "label",
		"Printed 3 June 2024.": "date date", "Printed June 3, 2024.": "date date", "14/05/2025": "date", "© 2025 The Room": "date",
		"Price € 9.50": "price", "12.50 EUR": "price", "$14": "price", "100% cotton": "percentage", "100 % cotton": "percentage",
		"the 45-degree line": "angle", "at 60°": "angle", "in 3 hours and 45 minutes": "duration duration", "from the age of 8": "duration",
		"Phone +44 20 7946 0000": "code code code code", "Call 555-0142": "code code", "ISBN 978-0-00-000000-2": "code code code code code",
		"Pattern WR-07": "code", "needle 80/12": "machine setting", "Set the stitch length to 2.2 mm": "machine setting", "Monday, 9.00 to 17.30": "time of day time of day",
		"the 2nd row": "ordinal", "on two sides": "of nothing that a plan counts",
	} {
		var got []string
		for _, n := range r.Check(text, never) {
			got = append(got, n.Sense)
			if n.Verdict != NoQuantity {
				t.Errorf("%q: %q %v (%s)", text, text[n.At.Start:n.At.End], n.Verdict, n.States)
			}
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%q is read as %q, want %q", text, strings.Join(got, " "), want)
		}
	}
}
