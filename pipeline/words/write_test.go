package words

import (
	"path/filepath"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/tabulate"
	"yardproof/pipeline/report"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// TestWritten writes a text from every plan of the demo line and holds it against
// the plan: by its own check nothing in it disagrees, and at most one number in
// twenty is not placed.
func TestWritten(t *testing.T) {
	names, err := filepath.Glob(filepath.Join(line, "*.plan.json"))
	if err != nil || len(names) < 25 {
		t.Fatalf("demo plans: %v, %v", names, err)
	}
	total, unplaced := 0, 0
	for _, name := range names {
		id := strings.TrimSuffix(filepath.Base(name), ".plan.json")
		p, sizes := demo(t, id)
		r, handed := NewReader(p, sizes), handedOn(p, sizes)
		for _, size := range append([]string{""}, handed.Sizes...) {
			text := Write(handed, size, size == "")
			if strings.Contains(text, "\n\n\n") || strings.Contains(text, "  ") {
				t.Errorf("%s: there is room where none belongs", id)
			}
			file := source.New(id, []byte(text))
			for _, n := range r.Check(text, never) {
				at := file.Position(n.At.Start)
				switch n.Verdict {
				case Disagrees:
					t.Errorf("%s %s:%d:%d %q disagrees with %s (%s), which is %s:\n%s", id, size, at.Line, at.Column, file.Slice(n.At), n.States, n.Size, n.Is, file.Line(at.Line))
				case NotPlaced:
					unplaced++
				case NoQuantity:
					continue
				}
				total++
			}
		}
	}
	if total < 5000 || 20*unplaced > total {
		t.Errorf("%d of %d numbers are not placed", unplaced, total)
	}
}

// handedOn is a plan as exports are handed it.
func handedOn(p *plan.Plan, sizes []*derive.Size) *report.Plan {
	out := &report.Plan{Outcome: report.Outcome{Title: p.Title.Text}, Units: p.Units}
	for i := range p.Sizes {
		out.Sizes = append(out.Sizes, p.Sizes[i].Name.Text)
	}
	out.Sheets = tabulate.Plan(tabulate.Input{Plan: p, Sizes: sizes, Project: &plan.Project{}})
	return out
}
