package derive_test

import (
	"testing"

	"yardproof/pipeline/internal/derive"
)

// An invented nine-patch, 5 blocks across and 7 down, worked by hand. The
// formulas are the trade's; the numbers in the comments of the test are ours.
const ninePatch = `{
  "format": 1, "id": "dovecote", "title": "Dovecote", "units": "in",
  "seam": { "allowance": "1/4", "stitch": "301" },
  "fabrics": {
    "dark":  { "yardage": { "usable_width": 40 } },
    "light": { "yardage": { "usable_width": 40 } },
    "plain": { "yardage": { "usable_width": 40 } },
    "back":  { "yardage": { "usable_width": 40 } }
  },
  "parts": {
    "outer":  { "strip_set": { "strips": [ { "fabric": "dark", "width": "2 1/2" }, { "fabric": "light", "width": "2 1/2" }, { "fabric": "dark", "width": "2 1/2" } ], "segment": "2 1/2" } },
    "middle": { "strip_set": { "strips": [ { "fabric": "light", "width": "2 1/2" }, { "fabric": "dark", "width": "2 1/2" }, { "fabric": "light", "width": "2 1/2" } ], "segment": "2 1/2" } },
    "nine":   { "rows": [["outer", "middle", "outer"]] },
    "blank":  { "cut": { "fabric": "plain", "square": "6 1/2" } }
  },
  "layout": {
    "grid": { "rows": 7, "columns": 5, "blocks": [["nine", "blank"], ["blank", "nine"]] },
    "borders": { "frame": { "fabric": "dark", "width": 3 } }
  },
  "finish": {
    "backing": { "fabric": "back", "overhang": 4 },
    "batting": { "overhang": 4 },
    "binding": { "fabric": "dark", "cut": "2 1/2" }
  },
  "sizes": { "throw": {} }
}`

func TestNinePatchBlocks(t *testing.T) {
	s := derived(t, ninePatch)["throw"]
	// 35 places of a checkerboard: 18 of one, 17 of the other.
	wantCount(t, "nine-patches", s.Part("nine").Needed, 18)
	wantCount(t, "plain squares", s.Part("blank").Needed, 17)
	// Two outer segments a block and one middle; 40 / 2 1/2 = 16 a set.
	wantSet(t, s, "outer", 36, 16, 3)
	wantSet(t, s, "middle", 18, 16, 2)
	wantCount(t, "outer segments that come out", s.Part("outer").Made, 48)
	for _, name := range []string{"nine", "blank"} {
		p := s.Part(name)
		wantSize(t, name, p.Width, p.Height, "6 1/2", "6 1/2")
	}
}

func wantSet(t *testing.T, s *derive.Size, name string, needed, each, sets int64) {
	t.Helper()
	p := s.Part(name)
	wantCount(t, name+", segments needed", p.Needed, needed)
	wantCount(t, name+", segments a set", p.Set.Cut.Each, each)
	wantCount(t, name+", sets", p.Set.Count, sets)
	wantLength(t, name+", set", p.Set.Width, "6 1/2")
	// 40 in hold 16 exactly: nothing may be squared off the end.
	wantLength(t, name+", slack", p.Set.Cut.Slack(), "0")
	wantLength(t, name+", one segment more", p.Set.Cut.Next, "42 1/2")
}

func TestNinePatchFinish(t *testing.T) {
	s := derived(t, ninePatch)["throw"]
	wantSize(t, "grid", s.Top.Grid.Width, s.Top.Grid.Height, "30 1/2", "42 1/2")
	wantSize(t, "finished", s.Top.Finished.Width, s.Top.Finished.Height, "36", "48")
	// Sides 42 1/2, ends 36 1/2, twice: 158 in of a 3 1/2 in border; four
	// strips give 160 - 3 x 3 1/2 = 149 1/2, five 186.
	b := s.Top.Borders[0]
	wantSize(t, "sides and ends", b.Sides, b.Ends, "42 1/2", "36 1/2")
	wantLength(t, "border", b.Cut, "3 1/2")
	wantCount(t, "border strips", b.Strips.Count, 5)
	wantLength(t, "what they give", b.Strips.Length, "186")
	// 2 (36 + 48) + 10 = 178 in; four strips give 152 1/2, five 190.
	wantCount(t, "binding strips", s.Binding.Strips.Count, 5)
	wantLength(t, "what they give", s.Binding.Strips.Length, "190")
	wantSize(t, "batting", s.Batting.Size.Width, s.Batting.Size.Height, "44", "56")
	// 44 x 56 in: lengthwise two panels of 56, crosswise two of 44.
	wantCount(t, "backing panels", s.Backing.Panels, 2)
	wantSize(t, "backing, each and all", s.Backing.Each, s.Backing.Length, "44", "88")
	if s.Backing.Lengthwise {
		t.Error("the backing takes the way that needs more fabric")
	}
}

func TestNinePatchFabric(t *testing.T) {
	s := derived(t, ninePatch)["throw"]
	// Dark: 2 x 3 + 2 = 8 strips of 2 1/2, 5 of 3 1/2, 5 of 2 1/2: 50 in; 1 in
	// to square up; steps of 1/8 yd = 4 1/2 in.
	wantBuy(t, s, "dark", "51", "54")
	// Light: 3 + 2 x 2 = 7 strips.
	wantBuy(t, s, "light", "18 1/2", "22 1/2")
	// 17 squares, 6 from a strip: 3 strips of 6 1/2.
	wantBuy(t, s, "plain", "20 1/2", "22 1/2")
	// Two panels of 44, and 1 in to square up.
	wantBuy(t, s, "back", "89", "90")
	wantCount(t, "dark strips", int64(s.Fabric("dark").Layout.Strips()), 18)
	wantCount(t, "light strips", int64(s.Fabric("light").Layout.Strips()), 7)
	wantCount(t, "plain strips", int64(s.Fabric("plain").Layout.Strips()), 3)
}
