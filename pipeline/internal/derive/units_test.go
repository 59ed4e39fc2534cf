package derive_test

import (
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
)

// An invented checkerboard of half-square triangle units that finish 4 in,
// worked by hand.
const halfSquares = `{
  "format": 1, "id": "gulls", "title": "Gulls", "units": "in",
  "seam": { "allowance": "1/4" },
  "fabrics": { "navy": { "yardage": { "usable_width": 40 } }, "cream": { "yardage": { "usable_width": 40 } } },
  "parts": { "gull": { "half_squares": { "fabrics": ["navy", "cream"], "square": "4 7/8", "at_a_time": 2, "trim": "4 1/2" } } },
  "layout": { "grid": { "rows": 8, "columns": 6, "blocks": [["gull", { "part": "gull", "turn": 90 }], [{ "part": "gull", "turn": 270 }, { "part": "gull", "turn": 180 }]] } },
  "sizes": {
    "two":   {},
    "four":  { "parts": { "gull": { "half_squares": { "square": "6 7/8", "at_a_time": 4 } } } },
    "eight": { "parts": { "gull": { "half_squares": { "square": "9 3/4", "at_a_time": 8 } } } },
    "odd":   { "layout": { "grid": { "rows": 7, "columns": 7 } } }
  }
}`

func TestHalfSquares(t *testing.T) {
	sizes := derived(t, halfSquares)
	for _, c := range []struct {
		size               string
		needed, pairs      int64
		untrimmed, exact   string
		strips, net, toBuy string
		bias               bool
	}{
		// 24 squares of 4 7/8, 8 from a strip: 3 strips.
		{"two", 48, 24, "4.521447", "4.853553", "3", "15 5/8", "18", false},
		// 12 squares of 6 7/8, 5 from a strip: 3 strips; all edges bias.
		{"four", 48, 12, "4.507806", "6.863961", "3", "21 5/8", "22 1/2", true},
		// 6 squares of 9 3/4, 4 from a strip: 2 strips.
		{"eight", 48, 6, "4.521447", "9.707107", "2", "20 1/2", "22 1/2", false},
		// 49 units are 25 pairs, one unit over; 25 squares, 4 strips.
		{"odd", 49, 25, "4.521447", "4.853553", "4", "20 1/2", "22 1/2", false},
	} {
		s := sizes[c.size]
		p := s.Part("gull")
		wantCount(t, c.size+", units", p.Needed, c.needed)
		wantCount(t, c.size+", pairs of squares", p.Triangle.Pairs, c.pairs)
		wantCount(t, c.size+", units that come out", p.Made, c.pairs*int64(p.Triangle.AtATime))
		wantSize(t, c.size, p.Width, p.Height, "4 1/2", "4 1/2")
		if got := p.Triangle.Untrimmed.Decimal(measure.In, 6); got != c.untrimmed {
			t.Errorf("%s: %s in as sewn, want %s", c.size, got, c.untrimmed)
		}
		if got := p.Triangle.Exact.Decimal(measure.In, 6); got != c.exact {
			t.Errorf("%s: an exact cut of %s in, want %s", c.size, got, c.exact)
		}
		if p.Bias != c.bias {
			t.Errorf("%s: bias edges %v", c.size, p.Bias)
		}
		for _, role := range []string{"navy", "cream"} {
			wantBuy(t, s, role, c.net, c.toBuy)
			wantCount(t, c.size+", strips", int64(s.Fabric(role).Layout.Strips()), int64(c.strips[0]-'0'))
		}
	}
	two, odd := sizes["two"].Top.Finished, sizes["odd"].Top.Finished
	wantSize(t, "two", two.Width, two.Height, "24", "32")
	wantSize(t, "odd", odd.Width, odd.Height, "28", "28")
}

// Invented: 80 squares that finish 10 cm, seam 7.5 mm, all defaults of a
// centimetre plan: fabric 100 cm wide, 3 cm to square up, steps of 10 cm,
// overhang 10 cm, backing seam 1.25 cm, binding allowance 25 cm.
const metric = `{
  "format": 1, "id": "fliesen", "title": "Tiles", "units": "cm",
  "seam": { "allowance": 0.75 },
  "fabrics": { "red": { "yardage": {} }, "white": { "yardage": {} }, "rim": { "yardage": {} }, "back": { "yardage": {} } },
  "parts": {
    "a": { "cut": { "fabric": "red", "square": 11.5 } },
    "b": { "cut": { "fabric": "white", "square": "11.5 cm" } }
  },
  "layout": { "grid": { "rows": 10, "columns": 8, "blocks": [["a", "b"], ["b", "a"]] } },
  "finish": { "backing": { "fabric": "back" }, "batting": {}, "binding": { "fabric": "rim", "cut": 6.5 } },
  "sizes": {
    "play": {},
    "washed": { "fabrics": { "red": { "yardage": { "shrinkage": { "length": "3%", "width": "2%" } } } } }
  }
}`

func TestMetric(t *testing.T) {
	sizes := derived(t, metric)
	s := sizes["play"]
	wantCount(t, "red", s.Part("a").Needed, 40)
	wantCount(t, "white", s.Part("b").Needed, 40)
	wantSize(t, "finished", s.Top.Finished.Width, s.Top.Finished.Height, "80 cm", "100 cm")
	// floor(100 / 11.5) = 8 from a strip: 5 strips, 57.5 cm.
	wantBuy(t, s, "red", "60.5 cm", "70 cm")
	wantBuy(t, s, "white", "60.5 cm", "70 cm")
	// 2 (80 + 100) + 25 = 385 cm; four strips give 400 - 3 x 6.5 = 380.5.
	wantCount(t, "binding strips", s.Binding.Strips.Count, 5)
	wantBuy(t, s, "rim", "35.5 cm", "40 cm")
	// 100 x 120 cm: one panel lengthwise, exactly as wide as the fabric,
	// and 3 cm to square up.
	wantCount(t, "panels", s.Backing.Panels, 1)
	wantBuy(t, s, "back", "123 cm", "130 cm")
	wantSize(t, "batting", s.Batting.Size.Width, s.Batting.Size.Height, "100 cm", "120 cm")

	// Washed: 98 cm wide, still 8; 60.5 / 0.97 = 62.37 cm.
	red := sizes["washed"].Fabric("red")
	wantLength(t, "width after washing", red.Width, "98 cm")
	wantLength(t, "net", red.Net, "60.5 cm")
	wantLength(t, "to buy", red.Buy, "70 cm")
	if red.Gross != length(t, "60.5 cm").Surd().MulInt(100).DivInt(97).CeilTo(measure.Tick) {
		t.Errorf("before washing: %s", red.Gross.Format(measure.Cm))
	}
}

// A yard and a quarter less the squaring-up is exactly 1 1/4 yd of fabric, a
// tick more is the next eighth: 44 in of strips, and then 44 1/64.
func TestBuyingBoundary(t *testing.T) {
	text := `{
  "format": 1, "id": "edge", "title": "Edge", "units": "in", "seam": { "allowance": "1/4" },
  "fabrics": { "a": { "yardage": { "usable_width": 40 } } },
  "parts": { "p": { "cut": { "fabric": "a", "size": [40, "HIGH"] } } },
  "layout": { "grid": { "rows": 1, "columns": 1, "blocks": [["p"]] } },
  "sizes": { "one": {} }
}`
	for high, buy := range map[string]string{"39": "40 1/2", "39 1/2": "40 1/2", "39 33/64": "45"} {
		s := derived(t, strings.ReplaceAll(text, "HIGH", high))["one"]
		wantLength(t, high+" in of strip", s.Fabric("a").Buy, buy)
	}
}

// Squares cut diagonally are cut in whole squares: 5 triangles cut once need
// 3 squares, cut twice 2.
func TestHalvedSquares(t *testing.T) {
	text := `{
  "format": 1, "id": "fins", "title": "Fins", "units": "in", "seam": { "allowance": "1/4" },
  "fabrics": { "a": { "yardage": { "usable_width": 40 } } },
  "parts": { "fin": { "cut": { "fabric": "a", "square": "6 7/8", "halved": "HOW" } } },
  "layout": { "grid": { "rows": 1, "columns": 5, "blocks": [["fin"]] } },
  "sizes": { "one": {} }
}`
	for how, want := range map[string][2]int64{"once": {3, 6}, "twice": {2, 8}} {
		p := derived(t, strings.ReplaceAll(text, "HOW", how))["one"].Part("fin")
		wantCount(t, how+", squares", p.Cut.Squares, want[0])
		wantCount(t, how+", triangles", p.Made, want[1])
	}
}

// A directional print may not be turned: the sash stands up, and its backing
// runs lengthwise though crosswise is shorter.
func TestDirectionalFabric(t *testing.T) {
	text := `{
  "format": 1, "id": "reeds", "title": "Reeds", "units": "in", "seam": { "allowance": "1/4" },
  "fabrics": { "a": { "print": "PRINT", "yardage": { "usable_width": 40 } }, "b": { "print": "PRINT", "yardage": { "usable_width": 40 } } },
  "parts": { "sash": { "cut": { "fabric": "a", "size": ["10 1/2", "2 1/2"] } } },
  "layout": { "grid": { "rows": 31, "columns": 1, "blocks": [["sash"]] } },
  "finish": { "backing": { "fabric": "b", "overhang": 4 } },
  "sizes": { "one": {} }
}`
	// 31 pieces of 10 1/2 x 2 1/2: turned, 16 from a strip 10 1/2 high, two
	// strips, 21 in; as drawn, 3 from a strip, 11 strips, 27 1/2 in. The backing
	// of 18 x 70 in is one panel of 70 or two of 18, and 1 in to square up.
	for print, want := range map[string][2]string{"plain": {"22", "37"}, "one-way": {"28 1/2", "71"}, "two-way": {"28 1/2", "71"}} {
		s := derived(t, strings.ReplaceAll(text, "PRINT", print))["one"]
		wantLength(t, print, s.Fabric("a").Net, want[0])
		wantLength(t, print+", backing", s.Fabric("b").Net, want[1])
	}
}

// Triangles sewn into a square: two cut once from 4 7/8 in finish 4 in like
// half squares; four cut twice from 5 1/4 in finish 4 in. 20 units of each
// take 20 triangles of every part cut once, from 10 squares, and 40 of every
// part cut twice, from 10 squares.
func TestTriangleSquares(t *testing.T) {
	s := derived(t, `{
  "format": 1, "id": "kites", "title": "Kites", "units": "in", "seam": { "allowance": "1/4" },
  "fabrics": { "a": { "yardage": { "usable_width": 40 } }, "b": { "yardage": { "usable_width": 40 } } },
  "parts": {
    "dark":  { "cut": { "fabric": "a", "square": "4 7/8", "halved": "once" } },
    "light": { "cut": { "fabric": "b", "square": "4 7/8", "halved": "once" } },
    "north": { "cut": { "fabric": "a", "square": "5 1/4", "halved": "twice" } },
    "west":  { "cut": { "fabric": "b", "square": "5 1/4", "halved": "twice" } },
    "half":    { "triangle_square": { "of": ["dark", "light"], "trim": "4 1/2" } },
    "quarter": { "triangle_square": { "of": ["north", "west", "north", "west"], "trim": "4 1/2" } }
  },
  "layout": { "grid": { "rows": 8, "columns": 5, "blocks": [["half"], ["quarter"]] } },
  "sizes": { "one": {} }
}`)["one"]
	half, quarter := s.Part("half"), s.Part("quarter")
	wantCount(t, "of two", half.Needed, 20)
	wantCount(t, "of four", quarter.Needed, 20)
	for p, want := range map[*derive.Part][2]string{half: {"4.521447", "4.853553"}, quarter: {"4.542893", "5.207107"}} {
		if got := p.Triangle.Untrimmed.Decimal(measure.In, 6); got != want[0] {
			t.Errorf("%s: %s in as sewn, want %s", p.Name.Text, got, want[0])
		}
		if got := p.Triangle.Exact.Decimal(measure.In, 6); got != want[1] {
			t.Errorf("%s: an exact cut of %s in, want %s", p.Name.Text, got, want[1])
		}
		wantSize(t, p.Name.Text, p.Width, p.Height, "4 1/2", "4 1/2")
	}
	wantCount(t, "squares cut once", s.Part("dark").Cut.Squares, 10)
	wantCount(t, "triangles cut twice", s.Part("north").Needed, 40)
	wantCount(t, "squares cut twice", s.Part("north").Cut.Squares, 10)
	// 10 of 4 7/8, 8 from a strip: 2 strips; 10 of 5 1/4, 7 from a strip: 2.
	wantBuy(t, s, "a", "21 1/4", "22 1/2")
	wantSize(t, "finished", s.Top.Finished.Width, s.Top.Finished.Height, "20", "32")
}

// Pieces that belong together come from one print: 18 x 20 in of a fat quarter
// give 25 squares of 3 1/2 in, but only six whole groups of four. Invented
// plan; the 25 is common practice, no source.
func TestAlike(t *testing.T) {
	text := `{
  "format": 1, "id": "tiles", "title": "Tiles", "units": "in", "seam": { "allowance": "1/4" },
  "fabrics": { "a": { "precut": { "piece": [18, 20], "count": 1, "assorted": true } } },
  "parts": { "tile": { "cut": { "fabric": "a", "square": "3 1/2"ALIKE } } },
  "layout": { "grid": { "rows": 10, "columns": 10, "blocks": [["tile"]] } },
  "sizes": { "one": {} }
}`
	for alike, want := range map[string]int64{"": 4, `, "alike": 4`: 5, `, "alike": 25`: 4} {
		s := derived(t, strings.ReplaceAll(text, "ALIKE", alike))["one"]
		wantCount(t, "packs"+alike, s.Fabric("a").Packs, want)
	}
}
