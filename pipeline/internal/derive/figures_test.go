package derive_test

import (
	"flag"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/scripts/fixtures/fixture"
)

// TestFiguresAreTheirFormulas: of every size each number that has a name comes out
// the same when it is worked out anew from what the plan states, no two have one
// name, and all symbols of its formula are told beside it.
func TestFiguresAreTheirFormulas(t *testing.T) {
	looked := 0
	everySize(t, func(t *testing.T, what string, s *derive.Size) {
		names := map[string]bool{}
		for _, f := range s.Told() {
			looked++
			if names[f.Name()] {
				t.Errorf("%s: two are named %q", what, f.Name())
			}
			names[f.Name()] = true
			for _, symbol := range untold(f) {
				t.Errorf("%s: %s = %s, and %q is not told", what, f.Name(), f.Formula(), symbol)
			}
			for _, in := range f.Inputs() {
				if v, ok := f.With(in, in.Surd()); ok && !v.Equal(f.Surd()) {
					t.Errorf("%s: %s comes to %s when %s is what it is", what, f.Name(), v.Number(4), in.Says())
				}
			}
		}
	})
	if looked < 2000 {
		t.Errorf("only %d numbers were looked at", looked)
	}
}

var word = regexp.MustCompile(`[A-Za-z][A-Za-z0-9]*`)

// untold are the symbols of a formula that is no sentence which no term tells.
func untold(f figure.F) (missing []string) {
	if inWords(f.Formula()) {
		return nil
	}
	told := map[string]bool{"x": true, "sqrt2": true, "sqrt3": true, "floor": true, "ceil": true, "max": true, "min": true, "none": true, "when": true}
	for _, t := range f.Terms() {
		for _, w := range word.FindAllString(t.Symbol()+" "+t.Says(), -1) {
			told[w] = true
		}
	}
	for _, w := range word.FindAllString(f.Formula(), -1) {
		if !told[w] && !slices.Contains(missing, w) {
			missing = append(missing, w)
		}
	}
	return missing
}

// inWords reports whether a formula is one that is told in words.
func inWords(formula string) bool { return slices.Contains(sentences(), formula) }

func sentences() []string {
	text, err := os.ReadFile("testdata/words.golden")
	if err != nil {
		return nil
	}
	return strings.Split(strings.TrimSpace(string(text)), "\n")
}

// TestFormulasInWords lists the formulas that are told in words. They are the only
// ones that a change of the arithmetic does not change, so each has to be read here.
func TestFormulasInWords(t *testing.T) {
	all := map[string]bool{}
	look := func(_ *testing.T, _ string, s *derive.Size) {
		for _, f := range s.Told() {
			if f.Worded() {
				all[f.Formula()] = true
			}
		}
	}
	everySize(t, look)
	everyFixture(t, look)
	got := strings.Join(slices.Sorted(maps.Keys(all)), "\n") + "\n"
	if flag.Lookup("update").Value.String() == "true" { // the tests from within have it

		if err := os.WriteFile("testdata/words.golden", []byte(got), 0o600); err != nil {
			t.Fatal(err)
		}
		return
	}
	if want := strings.Join(sentences(), "\n") + "\n"; got != want {
		t.Errorf("formulas in words:\n%swant:\n%s", got, want)
	}
}

// fixtures are all sizes of the rules' fixtures that can be read, derived once.
var fixtures = sync.OnceValues(func() (all []sizeOfFixture, err error) {
	const checks = "../../../testdata/checks"
	whole, err := os.MkdirTemp("", "fixtures")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(whole)
	if err := fixture.Write(checks, checks, whole); err != nil {
		return nil, err
	}
	files, err := filepath.Glob(whole + "/*/*/*/*.plan.json")
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			return nil, err
		}
		if p, _ := decode(string(text)); p != nil {
			for i := range p.Sizes {
				all = append(all, sizeOfFixture{file + ", " + p.Sizes[i].Name.Text, derive.Of(p, &p.Sizes[i])})
			}
		}
	}
	return all, err
})

type sizeOfFixture struct {
	what string
	*derive.Size
}

// everyFixture looks at all sizes of the rules' fixtures.
func everyFixture(t *testing.T, look func(t *testing.T, what string, s *derive.Size)) {
	t.Helper()
	all, err := fixtures()
	if err != nil || len(all) == 0 {
		t.Fatal("no fixtures", err)
	}
	for _, s := range all {
		look(t, s.what, s.Size)
	}
}

// TestFiguresAreWhatIsUsed: numbers that tell how they came about are those that are
// reckoned with, and agree with the formulas that are held against polygons.
func TestFiguresAreWhatIsUsed(t *testing.T) {
	look := func(t *testing.T, what string, s *derive.Size) {
		for _, p := range s.Parts {
			part(t, what+", "+p.Name.Text, p)
		}
		if s.Top.Known && (!s.FinishedFigure(false).Surd().Equal(s.Top.Finished.Width) || !s.FinishedFigure(true).Surd().Equal(s.Top.Finished.Height)) {
			t.Errorf("%s finishes at %v and is told to at %v", what, s.Top.Finished, s.FinishedFigure(false).Surd())
		}
		for _, f := range s.Fabrics {
			if want := int64(f.Buy); f.Used() && f.Err == nil && f.BuyFigure().N() != max(want, f.Packs) {
				t.Errorf("%s, %s: %d are bought and %d told", what, f.Role.Text, want, f.BuyFigure().N())
			}
		}
		if b := s.Binding; b != nil && b.Bias != nil && b.Bias.OK && !s.BiasFigure(b).Surd().Equal(b.Bias.Length) {
			t.Errorf("%s: bias of %v is told to be %v", what, b.Bias.Length, s.BiasFigure(b).Surd())
		}
		for _, use := range s.Thread.Uses {
			if !s.SeamFigure(use).Surd().Equal(use.Seam) {
				t.Errorf("%s: seams of %v are told to be %v", what, use.Seam, s.SeamFigure(use).Surd())
			}
		}
	}
	everySize(t, look)
	everyFixture(t, look)
}

func part(t *testing.T, what string, p *derive.Part) {
	t.Helper()
	if f := p.NeededFigure(); f.N() != p.Needed {
		t.Errorf("%s: %d are needed and %d told", what, p.Needed, f.N())
	}
	if y := p.Yield(); y != nil && y.Told.N() != y.Each {
		t.Errorf("%s: %d come from one and %d are told", what, y.Each, y.Told.N())
	}
	if p.Set != nil && p.Set.Wide.Length() != p.Set.Width {
		t.Errorf("%s: a set %d wide is told as %d", what, p.Set.Width, p.Set.Wide.Length())
	}
	if tube := p.Tube; tube != nil && p.Known {
		if tube.High.Length() != tube.Height() || !p.Figures.Size.Surd().Equal(tube.Side()) {
			t.Errorf("%s: a triangle %d high is told as %d", what, tube.Height(), tube.High.Length())
		}
		if n := tube.Each(tube.Aside); n != tube.Yield.Each {
			t.Errorf("%s: a tube gives %d, and by its polygons %d", what, tube.Yield.Each, n)
		}
		if n := tube.CountAt(tube.Yield.Each); p.Needed > 0 && n != tube.Count {
			t.Errorf("%s: %d tubes, and by their kinds %d", what, tube.Count, n)
		}
	}
	if h := p.Shape; h != nil && h.Kind.Triangular() && h.Yield.Each != perStrip(h) {
		t.Errorf("%s: a strip gives %d, and by its polygons %d", what, h.Yield.Each, perStrip(h))
	}
	if p.Set != nil && p.Set.Slant != nil && p.Set.Cut.Each != p.Set.Slant.PerStrip(p.Set.Length) {
		t.Errorf("%s: a set gives %d, and by its polygons %d", what, p.Set.Cut.Each, p.Set.Slant.PerStrip(p.Set.Length))
	}
	if u := p.Unit; u != nil && p.Known && !p.Figures.Size.Surd().Equal(u.Sewn.Width) {
		t.Errorf("%s is %v wide and told to be %v", what, u.Sewn.Width, p.Figures.Size.Surd())
	}
	for _, b := range p.Borders {
		joinedStrips(t, what, b.Strips)
	}
}

func perStrip(h *derive.Shape) int64 {
	if h.Height.Surd().IsZero() || h.Yield.Told.Formula() == "two head to tail in the length of their two widths" {
		return h.Yield.Each
	}
	return h.PerStrip(h.Yield.Length)
}

func joinedStrips(t *testing.T, what string, j derive.Joined) {
	t.Helper()
	if n, ok := piecing.JoinedStrips(j.Need, j.Each, j.Loss); ok && n != j.Count {
		t.Errorf("%s: %d strips are joined, want %d", what, j.Count, n)
	}
}

// TestPlacesOfJoinedStrips: the length and width of the strips that are joined, and the
// pack that pieces come from, stand at the places where the plan says them.
func TestPlacesOfJoinedStrips(t *testing.T) {
	s := derived(t, tubeQuilt)["throw"]
	at := func(f figure.F, symbol string) string { return s.Plan.File.Slice(find(t, f, symbol).At()) }
	if got := at(s.Binding.Strips.Told, "U"); got != "40" {
		t.Errorf("U stands at %s", got)
	}
	if got := at(s.Binding.Strips.Told, "join"); got != `"2 1/2"` {
		t.Errorf("the join's length stands at %s", got)
	}
	if got := at(s.Fabric("roll").BuyFigure(), "each"); got != "40" {
		t.Errorf("the pieces of a pack stand at %s", got)
	}
}
