package derive_test

import (
	"strings"
	"testing"

	"yardproof/schema/measure"
)

// An invented nine-patch of 2 1/2-in squares is 6 1/2 in; cut in four its
// pieces are 3 1/4 in, and sewn again it is 6 in: every cut costs a seam each
// way. Derived from geometry.
func TestRecut(t *testing.T) {
	s := derived(t, unitPlan(`"rows": 4, "columns": 3`, `
    "dark": { "cut": { "fabric": "a", "square": "2 1/2" } }, "light": { "cut": { "fabric": "b", "square": "2 1/2" } },
    "nine": { "rows": [["dark", "light", "dark"], ["light", "dark", "light"], ["dark", "light", "dark"]] },
    "unit": { "recut": { "part": "nine", "pieces": [2, 2], "turns": [0, 90, 270, 180] } }`))["one"]
	nine, p := s.Part("nine"), s.Part("unit")
	wantSize(t, "nine-patch", nine.Width, nine.Height, "6 1/2", "6 1/2")
	wantSize(t, "piece", p.Recut.Piece.Width, p.Recut.Piece.Height, "3 1/4", "3 1/4")
	wantSize(t, "sewn again", p.Width, p.Height, "6", "6")
	wantCount(t, "nine-patches", nine.Needed, 12)
	wantCount(t, "dark squares", s.Part("dark").Needed, 60)
	wantSize(t, "finished", s.Top.Finished.Width, s.Top.Finished.Height, "16 1/2", "22")
	if w := p.Figures.Size; !w.Known() || !w.Terms()[0].Working().Known() {
		t.Error("no work behind its size")
	}
}

// Rings of 2 in from a loop of three strips 2 in wide: 20 from 40 in. Four
// parts of seven rings are 28, from two loops; seven rings side by side are
// 7 x 2 - 6 x 1/2 = 11 in, and as high as the set, 5 in. Derived from geometry.
func TestLoop(t *testing.T) {
	s := derived(t, unitPlan(`"rows": 2, "columns": 2`, `
    "set": { "strip_set": { "strips": [{ "fabric": "a", "width": 2 }, { "fabric": "b", "width": 2 }, { "fabric": "a", "width": 2 }] } },
    "unit": { "loop": { "set": "set", "cut": 2, "open": [3, 1, 2, 3, 1, 2, 3] } }`))["one"]
	p, set := s.Part("unit"), s.Part("set")
	wantSize(t, "opened and sewn", p.Width, p.Height, "11", "5")
	wantCount(t, "rings from a loop", p.Loop.Yield.Each, 20)
	wantCount(t, "loops", p.Loop.Count, 2)
	wantCount(t, "sets", set.Set.Count, 2)
	if w := set.NeededFigure(); w.Terms()[0].N() != 2 {
		t.Errorf("sets needed because of %d", w.Terms()[0].N())
	}
	wantBuy(t, s, "a", "9", "9")
}

// Forty precut strips of 2 1/2 x 42 in joined on the diagonal are 40 x 42 -
// 39 x 2 1/2 = 1582 1/2 in. Folded five times they are 32 strips high, 64 1/2
// in, and a thirty-second as long. A tick more takes another strip. Derived
// from geometry; that 40 strips make a roll is common practice, no source.
func TestChain(t *testing.T) {
	text := strings.Replace(unitPlan(`"rows": 1, "columns": 1`, `"unit": { "chain": { "strips": "a", "length": "LENGTH", "folds": 5 } }`),
		`"a": { "yardage": { "usable_width": 40 } }`, `"a": { "precut": { "piece": ["2 1/2", 42], "count": 40 } }`, 1)
	s := derived(t, strings.Replace(text, "LENGTH", "1582 1/2", 1))["one"]
	p := s.Part("unit")
	wantCount(t, "strips", p.Chain.Joined.Count, 40)
	wantCount(t, "packs", s.Fabric("a").Packs, 1)
	wantLength(t, "height", p.Height.FloorTo(measure.Tick), "64 1/2")
	wantDecimal(t, "width", p.Width.MulInt(32), "1582.500000")
	s = derived(t, strings.Replace(text, "LENGTH", "1582 33/64", 1))["one"]
	wantCount(t, "a little more, strips", s.Part("unit").Chain.Joined.Count, 41)
	wantCount(t, "a little more, packs", s.Fabric("a").Packs, 2)
}
