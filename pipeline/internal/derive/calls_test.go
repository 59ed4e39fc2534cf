package derive_test

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/scripts/crossing/crossed"
)

// everySize derives all sizes of the demo line, and every operation at every place
// that takes a part.
func everySize(t *testing.T, look func(t *testing.T, what string, s *derive.Size)) {
	t.Helper()
	texts := map[string]string{}
	files, err := filepath.Glob("../../../testdata/line/*.plan.json")
	if err != nil || len(files) == 0 {
		t.Fatal("no plans", err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		texts[filepath.Base(file)] = string(text)
	}
	for _, p := range crossed.Plans() {
		texts[p.Name()] = p.Text
	}
	for name, text := range texts {
		p, problems := decode(text)
		if p == nil {
			t.Fatal(name, problems)
		}
		for i := range p.Sizes {
			look(t, name+", "+p.Sizes[i].Name.Text, derive.Of(p, &p.Sizes[i]))
		}
	}
}

// TestNeededAddsUp: what the sheet of each part tells of who asks for it adds up to
// how many are needed.
func TestNeededAddsUp(t *testing.T) {
	everySize(t, func(t *testing.T, what string, s *derive.Size) {
		for _, p := range s.Parts {
			var sum int64
			work := p.NeededFigure()
			for _, term := range work.Terms() {
				sum += term.N()
			}
			if sum != p.Needed || work.N() != p.Needed {
				t.Errorf("%s: %s: %d are needed, and %d by those who ask, which come to %d", what, p.Name.Text, p.Needed, work.N(), sum)
			}
		}
	})
}

// TestNothingIsMadeOfNothing: a part of known size that is needed asks for other
// parts or for fabric, unless the strips that it is cut from are too short for one.
func TestNothingIsMadeOfNothing(t *testing.T) {
	looked := 0
	everySize(t, func(t *testing.T, what string, s *derive.Size) {
		for _, p := range s.Parts {
			if y := p.Yield(); !p.Known || p.Needed == 0 || y != nil && y.Each == 0 {
				continue
			}
			looked++
			if !asks(s, p) && (p.Pool == nil || !slices.ContainsFunc(p.Pool.Parts, func(q *derive.Part) bool { return asks(s, q) })) {
				t.Errorf("%s: %d of %s are made of nothing", what, p.Needed, p.Name.Text)
			}
		}
	})
	if looked < 500 {
		t.Errorf("only %d parts were looked at", looked)
	}
}

// asks reports whether something is asked for in a part's name.
func asks(s *derive.Size, p *derive.Part) bool {
	byPart := slices.ContainsFunc(s.Parts, func(q *derive.Part) bool {
		return slices.ContainsFunc(q.Calls, func(c derive.Call) bool { return c.By == p && c.N > 0 })
	})
	return byPart || slices.ContainsFunc(s.Fabrics, func(f *derive.Fabric) bool {
		return slices.ContainsFunc(f.Needs, func(n derive.Need) bool { return n.For.At == p.Name.At && n.Count > 0 })
	})
}
