package derive_test

import (
	"strings"
	"testing"

	"yardproof/schema/measure"
)

// An invented tube quilt from a strip roll, worked by hand: at 41 1/2 in of
// usable strip a tube of three 2 1/2 in strips yields five squares, for six
// need 42 in.
const tubeQuilt = `{
  "format": 1, "id": "harbour-wall", "title": "Harbour Wall", "units": "in", "use": "throw",
  "seam": { "allowance": "1/4", "stitch": "514" },
  "fabrics": {
    "roll": { "precut": { "piece": ["2 1/2", 42], "usable": ["2 1/2", "41 1/2"], "count": 40, "assorted": true } },
    "edge": { "yardage": { "usable_width": 40 } },
    "back": { "yardage": {} }
  },
  "parts": {
    "trio": { "strip_set": { "strips": ["roll", "roll", "roll"] } },
    "step": { "tube": { "sets": ["trio", "trio"], "tip": "far seam", "trim": "8 3/8" } }
  },
  "layout": {
    "grid": { "rows": 6, "columns": 5, "blocks": [["step", { "part": "step", "turn": 90 }]] },
    "borders": { "frame": { "fabric": "edge", "width": 3 } }
  },
  "finish": {
    "backing": { "fabric": "back", "overhang": 4 },
    "binding": { "fabric": "edge", "cut": "2 1/2", "joins": "diagonal" }
  },
  "sizes": {
    "throw": {},
    "wall": { "layout": { "grid": { "rows": 4, "columns": 4 } } },
    "raw": { "parts": { "step": { "tube": { "tip": "raw edge", "ends": "ears kept", "trim": null } } } },
    "wide": { "fabrics": { "roll": { "precut": { "usable": ["2 1/2", 42] } } } }
  }
}`

func TestTubeCounts(t *testing.T) {
	sizes := derived(t, tubeQuilt)
	for _, c := range []struct {
		size                                    string
		squares, each, tubes, sets, packs, left int64
		made                                    int64
	}{
		{"throw", 30, 5, 6, 12, 1, 4, 30},
		{"wall", 16, 5, 4, 8, 1, 16, 20},
		// Ears kept with the tip on the raw edge: floor(41.5 / 6.5) - 1 = 5.
		{"raw", 30, 5, 6, 12, 1, 4, 30},
		// 42 in: six to a tube, five tubes, ten sets, 30 strips.
		{"wide", 30, 6, 5, 10, 1, 10, 30},
	} {
		s := sizes[c.size]
		step := s.Part("step")
		wantCount(t, c.size+", squares", step.Needed, c.squares)
		wantCount(t, c.size+", squares a tube", step.Tube.Yield.Each, c.each)
		wantCount(t, c.size+", tubes", step.Tube.Count, c.tubes)
		wantCount(t, c.size+", squares that come out", step.Made, c.made)
		wantCount(t, c.size+", sets", s.Part("trio").Set.Count, c.sets)
		wantCount(t, c.size+", packs", s.Fabric("roll").Packs, c.packs)
		wantCount(t, c.size+", strips left", s.Fabric("roll").Left, c.left)
		if !step.Bias {
			t.Errorf("%s: the squares' edges are not on the bias", c.size)
		}
	}
}

func TestTubeSizes(t *testing.T) {
	sizes := derived(t, tubeQuilt)
	// 8 3/8 - 1/2 = 7 7/8 a square: 39 3/8 x 47 1/4, and 3 in all round.
	throw, wall := sizes["throw"], sizes["wall"]
	wantSize(t, "throw", throw.Top.Finished.Width, throw.Top.Finished.Height, "45 3/8", "53 1/4")
	wantSize(t, "wall", wall.Top.Finished.Width, wall.Top.Finished.Height, "37 1/2", "37 1/2")
	// Untrimmed from the raw edge the side is 6 1/4 x sqrt2.
	raw := sizes["raw"].Part("step")
	if want := (inch * 25 / 4).Surd().Mul(measure.Root2()); !raw.Width.Equal(want) || !raw.Tube.Side().Equal(want) {
		t.Errorf("untrimmed square: %v, want %v", raw.Width, want)
	}
	if got := raw.Tube.Stub(); got != inch/2 {
		t.Errorf("stub of %v, want 1/2 in", got.Format(measure.In))
	}
}

// How far things may drift: five squares need 36 in of the 41 1/2, six 42.
// The length of five is 6h = 6 (7 1/2 - 6s), so the seam may be 5.5 / 36 in
// narrower.
func TestTubeSlack(t *testing.T) {
	tube := derived(t, tubeQuilt)["throw"].Part("step").Tube
	wantLength(t, "slack", tube.Yield.Slack(), "5 1/2")
	wantLength(t, "six squares", tube.Yield.Next, "42")
	slack, ok := tube.SeamSlack()
	want := (inch * 11 / 2).Surd().DivInt(36).FloorTo(measure.Tick)
	if !ok || slack != want {
		t.Errorf("seam slack %v %v, want %v", slack, ok, want)
	}
}

func TestTubeFabric(t *testing.T) {
	s := derived(t, tubeQuilt)["throw"]
	// Border: 2 (47 3/4 + 45 7/8) = 187 1/4 in of 3 1/2; five strips give 186,
	// so six, 21 in. Binding: 2 (45 3/8 + 53 1/4) + 10 = 207 1/4 of 2 1/2;
	// five give 190, so six, 15 in.
	wantCount(t, "border strips", s.Top.Borders[0].Strips.Count, 6)
	wantCount(t, "binding strips", s.Binding.Strips.Count, 6)
	wantBuy(t, s, "edge", "37", "40 1/2")
	// 53 3/8 x 61 1/4 in: crosswise two panels of 53 3/8, and 1 in to
	// square up.
	wantBuy(t, s, "back", "107 3/4", "108")
}

// The squares cannot take less of a strip than one advance each, whatever
// the arrangement of tubes.
func TestTubeOnYardage(t *testing.T) {
	s := derived(t, `{
  "format": 1, "id": "quay", "title": "Quay", "units": "in",
  "seam": { "allowance": "1/4" },
  "fabrics": { "sea": { "yardage": { "usable_width": 40 } }, "sand": { "yardage": { "usable_width": 44 } } },
  "parts": {
    "a": { "strip_set": { "strips": [ { "fabric": "sea", "width": "2 1/2" }, { "fabric": "sea", "width": "2 1/2" } ] } },
    "b": { "strip_set": { "strips": [ { "fabric": "sand", "width": "2 1/2" }, { "fabric": "sand", "width": "2 1/2" } ] } },
    "square": { "tube": { "sets": ["a", "b"] } }
  },
  "layout": { "grid": { "rows": 10, "columns": 10, "blocks": [["square"]] } },
  "sizes": { "one": {} }
}`)["one"]
	// The shorter set, 40 in, holds floor(40 / 4) - 1 = 9: twelve tubes, 24
	// strips of each fabric, 60 in and one to square up.
	wantCount(t, "squares a tube", s.Part("square").Tube.Yield.Each, 9)
	wantCount(t, "tubes", s.Part("square").Tube.Count, 12)
	wantBuy(t, s, "sea", "61", "63")
	wantBuy(t, s, "sand", "61", "63")
	// 100 squares x 2 strips x 4 x 2 1/2 in over 40 in.
	wantLength(t, "bound", s.Fabric("sea").Least.Length, "50")
}

// A tip that the plan lays 1/4 in beyond the far seam stays there when the seam is
// sewn narrower, and one on the raw edge comes nearer: five squares take 45 - 36s +
// 10e of 41 1/2 in, so that with e = 1/4 in the seam may be 1/12 in narrower, and with
// e = s 3/26 in. Derived from geometry.
func TestTipSaidAsLengthStays(t *testing.T) {
	for tip, want := range map[string]measure.Length{`{"beyond": "1/4"}`: inch / 12, `"raw edge"`: 3 * inch / 26} {
		text := strings.Replace(tubeQuilt, `"tip": "far seam"`, `"tip": `+tip, 1)
		tube := derived(t, text)["throw"].Part("step").Tube
		wantCount(t, tip+", squares", tube.Yield.Each, 5)
		if slack, ok := tube.SeamSlack(); !ok || slack != want {
			t.Errorf("tip %s: %v, want %v", tip, slack, want)
		}
	}
}
