package derive_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/figure"
)

// around is a plan with the given parts and one grid, in which all but the
// parts is in order.
func around(parts string) string {
	return strings.Replace(`{
  "format": 1, "id": "broken", "title": "Broken", "units": "in", "seam": { "allowance": "1/4" },
  "fabrics": { "a": { "yardage": {} } },
  "parts": PARTS,
  "layout": { "grid": { "rows": 2, "columns": 2, "blocks": [["top"]] }, "borders": { "frame": { "fabric": "b", "width": 2 } } },
  "finish": { "backing": { "fabric": "c" }, "batting": {}, "binding": { "fabric": "d", "cut": 2 } },
  "sizes": { "one": {} }
}`, "PARTS", parts, 1)
}

// What names something that is not there, or the wrong kind of thing, stays
// unknown with all that is made of it; the rest is derived.
func TestUnknownNames(t *testing.T) {
	for what, parts := range map[string]string{
		"no such block":          `{ "p": { "cut": { "fabric": "a", "square": 3 } } }`,
		"no such part":           `{ "top": { "rows": [["p"]] } }`,
		"no such fabric":         `{ "top": { "cut": { "fabric": "z", "square": 3 } } }`,
		"a set of no fabric":     `{ "top": { "strip_set": { "strips": ["a", "z"], "segment": 3 } } }`,
		"a part for a fabric":    `{ "p": { "cut": { "fabric": "a", "square": 3 } }, "top": { "cut": { "fabric": "p", "square": 3 } } }`,
		"a fabric for a part":    `{ "top": { "rows": [["a"]] } }`,
		"a tube of nothing":      `{ "top": { "tube": { "sets": ["x", "y"] } } }`,
		"a tube of cut pieces":   `{ "p": { "cut": { "fabric": "a", "square": 3 } }, "top": { "tube": { "sets": ["p", "p"] } } }`,
		"half squares of none":   `{ "top": { "half_squares": { "fabrics": ["a", "z"], "square": 3 } } }`,
		"trimmed from nothing":   `{ "top": { "trim": { "part": "z", "square": 3 } } }`,
		"made of itself":         `{ "top": { "rows": [["top"]] } }`,
		"a strip without fabric": `{ "top": { "strip": { "fabric": "z", "width": 2 } } }`,
	} {
		s := derived(t, around(parts))["one"]
		if s.Top.Known || s.Backing != nil || s.Binding != nil || s.Batting != nil {
			t.Errorf("%s: a quilt top all the same", what)
		}
		if p := s.Part("top"); p != nil && p.Known {
			t.Errorf("%s: the part is known", what)
		}
		explain(s)
	}
}

// Parts made of each other, and all that is made of them, are set apart.
func TestCycle(t *testing.T) {
	s := derived(t, around(`{
    "good": { "cut": { "fabric": "a", "square": 3 } },
    "p": { "rows": [["good", "q"]] },
    "q": { "rows": [["r"]] },
    "r": { "rows": [["p"]] },
    "top": { "rows": [["p", "good"]] }
  }`))["one"]
	var cycle []string
	for _, p := range s.Cycle {
		cycle = append(cycle, p.Name.Text)
	}
	if got := strings.Join(cycle, " "); got != "p q r top" {
		t.Errorf("made of themselves: %q", got)
	}
	if len(s.Parts) != 1 || !s.Part("good").Known || s.Part("top").Known {
		t.Errorf("%d parts in order", len(s.Parts))
	}
	if slices.Contains(s.Effects(size("p")), s.Number(size("p"))) {
		t.Error("a part follows from itself")
	}
	explain(s)
}

// Seams that eat the pieces leave nothing, and nothing is counted from it.
func TestSeamEatsPieces(t *testing.T) {
	for what, parts := range map[string]string{
		"strips":       `{ "set": { "strip_set": { "strips": [{ "fabric": "a", "width": "1/4" }, { "fabric": "a", "width": "1/4" }] } }, "top": { "tube": { "sets": ["set", "set"] } } }`,
		"half squares": `{ "top": { "half_squares": { "fabrics": ["a", "a"], "square": "1/4" } } }`,
	} {
		s := derived(t, around(parts))["one"]
		if p := s.Part("top"); p.Known || s.Top.Known {
			t.Errorf("%s: a size of %v x %v", what, p.Width, p.Height)
		}
		explain(s)
	}
}

// A piece wider than its fabric is an error of that fabric alone.
func TestPieceTooWide(t *testing.T) {
	s := derived(t, around(`{ "top": { "cut": { "fabric": "a", "square": 41 } } }`))["one"]
	if f := s.Fabric("a"); f.Err == nil || f.Buy != 0 {
		t.Errorf("%v, %d", f.Err, f.Buy)
	}
	if !s.Top.Known {
		t.Error("the top's size is lost with it")
	}
}

// A strip too short to yield anything asks for no endless number of strips.
func TestYieldOfNothing(t *testing.T) {
	s := derived(t, around(`{
    "set": { "strip_set": { "strips": [{ "fabric": "a", "width": 15 }, { "fabric": "a", "width": 15 }] } },
    "top": { "tube": { "sets": ["set", "set"] } }
  }`))["one"]
	top := s.Part("top")
	if top.Tube.Yield.Each != 0 || top.Tube.Count != 0 || s.Part("set").Needed != 0 {
		t.Errorf("%d squares, %d tubes, %d sets", top.Tube.Yield.Each, top.Tube.Count, s.Part("set").Needed)
	}
	explain(s)

	s = derived(t, around(`{ "top": { "strip_set": { "strips": [{ "fabric": "a", "width": 2 }, { "fabric": "a", "width": 2 }], "segment": 41 } } }`))["one"]
	if f := s.Fabric("a"); s.Part("top").Set.Count != 0 || f.Used() || f.Least.Length != 0 {
		t.Errorf("no segment from a set: %d sets, fabric used %v, bound %d", s.Part("top").Set.Count, f.Used(), f.Least.Length)
	}
}

// Blocks of blocks of blocks soon need more pieces than an int64 counts. They
// must not come round to a number that looks possible.
func TestCountsDoNotOverflow(t *testing.T) {
	parts := `{ "p0": { "cut": { "fabric": "a", "square": 3 } }`
	row := `["p#","p#","p#","p#","p#","p#","p#","p#","p#","p#"]`
	rows := strings.TrimSuffix(strings.Repeat(row+",", 10), ",")
	for i := range 12 {
		parts += fmt.Sprintf(`, "p%d": { "rows": [%s] }`, i+1, strings.ReplaceAll(rows, "#", strconv.Itoa(i)))
	}
	s := derived(t, around(parts+`, "top": { "rows": [["p12"]] } }`))["one"]
	if n := s.Part("p0").Needed; n < 1_000_000 {
		t.Errorf("%d squares are enough for 4 x 10^24", n)
	}
	if s.Fabric("a").Err == nil {
		t.Error("they are laid out on fabric")
	}
	explain(s)
}

// explain asks for the work of everything there is, as a report does.
func explain(s *derive.Size) {
	var works []figure.F
	for _, p := range append(s.Parts, s.Cycle...) {
		if !p.Known {
			continue
		}
		works = append(works, p.NeededFigure(), p.Figures.Size, p.YieldFigure(), p.CountFigure())
		if p.Tube != nil {
			p.Tube.SeamSlack()
		}
	}
	if s.Top.Known {
		works = append(works, s.FinishedFigure(false), s.FinishedFigure(true))
		for _, b := range s.Top.Borders {
			works = append(works, b.Strips.Told)
		}
	}
	if s.Binding != nil {
		works = append(works, s.Binding.Strips.Told)
	}
	for _, f := range s.Fabrics {
		if f.Used() && f.Err == nil {
			works = append(works, f.BuyFigure())
		}
	}
	if s.Binding != nil && s.Binding.Bias != nil {
		works = append(works, s.BiasFigure(s.Binding))
	}
	for _, use := range s.Thread.Uses {
		works = append(works, s.SeamFigure(use))
	}
	s.Directions()
	s.Cautions()
	seen := map[figure.F]bool{}
	for _, w := range works {
		walk(w, seen)
	}
}

// walk goes through all work behind a number, shared work once.
func walk(w figure.F, seen map[figure.F]bool) {
	if seen[w] {
		return
	}
	seen[w] = true
	w.Formula()
	for _, term := range w.Terms() {
		term.Says()
		walk(term, seen)
		walk(term.Working(), seen)
	}
}

// Every derived number tells its formula and the places of the plan that it
// came from.
func TestWork(t *testing.T) {
	s := derived(t, tubeQuilt)["throw"]
	w := s.Part("step").CountFigure()
	if w.Formula() != "ceil(N / each)" || w.N() != 6 || len(w.Terms()) != 2 {
		t.Fatalf("%s = %d", w.Formula(), w.N())
	}
	yield := w.Terms()[1].Working()
	if yield.N() != 5 {
		t.Fatalf("%d", yield.N())
	}
	l := yield.Terms()[0]
	if at := l.At(); l.Symbol() != "L" || tubeQuilt[at.Start:at.End] != `"41 1/2"` {
		t.Errorf("%s is said to stand at %q", l.Symbol(), tubeQuilt[at.Start:at.End])
	}
}
