package derive_test

import (
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
)

// unitPlan is an invented top of rows by columns of the part "unit".
func unitPlan(grid, parts string) string {
	return `{
  "format": 1, "id": "units", "title": "Units", "units": "in", "seam": { "allowance": "1/4" },
  "fabrics": { "a": { "yardage": { "usable_width": 40 } }, "b": { "yardage": { "usable_width": 40 } } },
  "parts": { ` + parts + ` },
  "layout": { "grid": { ` + grid + `, "blocks": [["unit"]] } },
  "sizes": { "one": {} }
}`
}

func unitOf(t *testing.T, grid, parts string) (*derive.Size, *derive.Part) {
	t.Helper()
	s := derived(t, unitPlan(grid, parts))["one"]
	p := s.Part("unit")
	if p.Unit == nil || !p.Known {
		t.Fatalf("the unit is not derived: %+v", p)
	}
	return s, p
}

// wantDecimal compares in as many decimal places as are wanted.
func wantDecimal(t *testing.T, what string, got measure.Surd, want string) {
	t.Helper()
	_, places, _ := strings.Cut(want, ".")
	if d := got.Decimal(measure.In, len(places)); d != want {
		t.Errorf("%s: %s in, want %s", what, d, want)
	}
}

func wantPieces(t *testing.T, p *derive.Part, want string) {
	t.Helper()
	var got []string
	for _, c := range p.Unit.Pieces {
		got = append(got, strings.Join([]string{c.Fabric.Role.Text, c.Width.Bare(measure.In), c.Height.Bare(measure.In), c.Halving.String()}, " "))
	}
	if text := strings.Join(got, ", "); text != want {
		t.Errorf("pieces %q, want %q", text, want)
	}
}

// Flying geese that finish 6 by 3 in, four at a time: W + 1 1/4 and H + 7/8
// (widely published, no authority), which leave 0.0429 in of width and 0.0214
// of height, derived from geometry. 30 geese are 8 lots: 8 squares of 7 1/4
// and 32 of 3 7/8, 5 and 10 from a strip: 2 and 4 strips.
func TestFourGeese(t *testing.T) {
	s, p := unitOf(t, `"rows": 10, "columns": 3`, `"unit": { "flying_geese": { "goose": "a", "sky": "b", "finished": [6, 3], "at_a_time": 4 } }`)
	wantPieces(t, p, "a 7 1/4 7 1/4 whole, b 3 7/8 3 7/8 whole")
	wantDecimal(t, "goose square, exact", p.Unit.Pieces[0].Exact.Width, "7.207107")
	wantDecimal(t, "sky square, exact", p.Unit.Pieces[1].Exact.Width, "3.853553")
	wantDecimal(t, "width as sewn", p.Width, "6.542893")
	wantDecimal(t, "height as sewn", p.Height, "3.521447")
	left, ok := p.Left()
	if !ok {
		t.Fatal("no error left")
	}
	wantDecimal(t, "left over the row of 3", left.Width.MulInt(s.InRow(p, false)), "0.128680")
	wantDecimal(t, "left over the column of 10", left.Height.MulInt(s.InRow(p, true)), "0.214466")
	wantCount(t, "lots", p.Unit.Batches, 8)
	wantCount(t, "made", p.Made, 32)
	wantBuy(t, s, "a", "15 1/2", "18")
	wantBuy(t, s, "b", "16 1/2", "18")
}

// Trimmed, the same geese are what they were drafted as, whatever is left.
func TestFourGeeseTrimmed(t *testing.T) {
	_, p := unitOf(t, `"rows": 2, "columns": 2`, `"unit": { "flying_geese": { "goose": "a", "sky": "b", "finished": [6, 3], "at_a_time": 4, "cut": { "goose": "7 1/2", "sky": 4 }, "trim": ["6 1/2", "3 1/2"] } }`)
	wantPieces(t, p, "a 7 1/2 7 1/2 whole, b 4 4 whole")
	wantSize(t, "trimmed", p.Width, p.Height, "6 1/2", "3 1/2")
	wantDecimal(t, "as sewn", p.Unit.Sewn.Width, "6.792893")
}

// One goose at a time is exact: a rectangle of the unfinished size and two
// squares of its height. Each corner cut away from a 3 1/2-in square gives a
// bonus unit of 2.792893 in, derived from geometry.
func TestOneGoose(t *testing.T) {
	s, p := unitOf(t, `"rows": 4, "columns": 2`, `"unit": { "flying_geese": { "goose": "a", "sky": "b", "finished": [6, 3], "bonus": "kept" } }`)
	wantPieces(t, p, "a 6 1/2 3 1/2 whole, b 3 1/2 3 1/2 whole")
	wantSize(t, "as sewn", p.Width, p.Height, "6 1/2", "3 1/2")
	if left, _ := p.Left(); !left.Width.IsZero() || !left.Height.IsZero() {
		t.Errorf("left %v", left)
	}
	wantDecimal(t, "bonus unit", p.Unit.Bonus[0].Side, "2.792893")
	wantCount(t, "bonus units from one", p.Unit.Bonus[0].Count, 2)
	// 8 rectangles, 6 from a strip of 3 1/2, or 11 from one of 6 1/2: 6 1/2 in;
	// 16 squares, 11 from a strip: 2 strips.
	wantBuy(t, s, "a", "7 1/2", "9")
	wantBuy(t, s, "b", "8", "9")
	wantSize(t, "finished", s.Top.Finished.Width, s.Top.Finished.Height, "12", "12")
}

// An hourglass that finishes 4 in: 4 + 1 1/4 (widely published, no
// authority) leaves 0.042893 in, derived from geometry. 9 need 5 pairs. From
// half-square units the second cut costs s x sqrt2 once more.
func TestHourglass(t *testing.T) {
	s, p := unitOf(t, `"rows": 3, "columns": 3`, `"unit": { "hourglass": { "half_squares": ["a", "b"], "square": "5 1/4" } }`)
	wantDecimal(t, "as sewn", p.Width, "4.542893")
	wantCount(t, "pairs", p.Unit.Batches, 5)
	wantCount(t, "made", p.Made, 10)
	wantBuy(t, s, "a", "6 1/4", "9")

	s, p = unitOf(t, `"rows": 3, "columns": 3`, `"half": { "half_squares": { "fabrics": ["a", "b"], "square": "5 1/4" } },
    "unit": { "hourglass": { "half_squares": "half", "trim": "4 1/2" } }`)
	wantDecimal(t, "as sewn from units", p.Unit.Sewn.Width, "4.542893")
	wantSize(t, "trimmed", p.Width, p.Height, "4 1/2", "4 1/2")
	wantCount(t, "half-square units", s.Part("half").Needed, 10)
	if w := s.Part("half").NeededFigure(); w.Terms()[0].N() != 10 {
		t.Errorf("needed because of %d", w.Terms()[0].N())
	}

	// With only the trim said, the square follows from it, up to the grid.
	_, p = unitOf(t, `"rows": 3, "columns": 3`, `"unit": { "hourglass": { "half_squares": ["a", "b"], "trim": "4 1/2" } }`)
	wantPieces(t, p, "a 5 1/4 5 1/4 whole, b 5 1/4 5 1/4 whole")
}

// Square in a square, the trade's centres: f/sqrt2 + 1/2 to the nearest
// eighth, and what each is over the exact one; derived from geometry.
func TestSquareInSquare(t *testing.T) {
	for finished, want := range map[string][3]string{
		"6":  {"a 4 3/4 4 3/4 whole, b 3 7/8 3 7/8 once", "4.742641", "0.007359"},
		"8":  {"a 6 1/8 6 1/8 whole, b 4 7/8 4 7/8 once", "6.156854", "-0.031854"},
		"12": {"a 9 9 whole, b 6 7/8 6 7/8 once", "8.985281", "0.014719"},
		"5":  {"a 4 4 whole, b 3 3/8 3 3/8 once", "4.035534", "-0.035534"},
		"4":  {"a 3 3/8 3 3/8 whole, b 2 7/8 2 7/8 once", "3.328427", "0.046573"},
	} {
		_, p := unitOf(t, `"rows": 2, "columns": 2`, `"unit": { "square_in_square": { "centre": "a", "corners": "b", "finished": `+finished+` } }`)
		wantPieces(t, p, want[0])
		wantDecimal(t, finished+", centre", p.Unit.Pieces[0].Exact.Width, want[1])
		wantDecimal(t, finished+", over", p.Unit.Pieces[0].Over(), want[2])
	}
	// Trimmed too the centre goes to the nearest mark: at 6 1/4 the points would lie
	// (6.25 - 6.156854)/sqrt2 = 0.0659 in in the seam. At 6 1/8 the unit wants corner
	// squares of 8.5 - 6.125/sqrt2 + 0.5 sqrt2 = 4.8761 in, so 5.
	s, p := unitOf(t, `"rows": 2, "columns": 2`, `"unit": { "square_in_square": { "centre": "a", "corners": "b", "finished": 8, "trim": "8 1/2" } }`)
	wantPieces(t, p, "a 6 1/8 6 1/8 whole, b 5 5 once")
	wantCount(t, "corner squares", s.Fabric("b").Needs[0].Count, 8)
	// Flipped it is exact: f + 1/2, and four squares of f/2 + 1/2.
	_, p = unitOf(t, `"rows": 2, "columns": 2`, `"unit": { "square_in_square": { "centre": "a", "corners": "b", "finished": 8, "method": "flip" } }`)
	wantPieces(t, p, "a 8 1/2 8 1/2 whole, b 4 1/2 4 1/2 whole")
	wantSize(t, "flipped", p.Width, p.Height, "8 1/2", "8 1/2")
	wantDecimal(t, "its points", *p.Unit.Point, "0.250000")
}

// Corners on two places of a rectangle: the part keeps its size, and each
// corner takes a square of its own.
func TestFlipCorners(t *testing.T) {
	s, p := unitOf(t, `"rows": 4, "columns": 3`, `"brick": { "cut": { "fabric": "a", "size": ["8 1/2", "4 1/2"] } },
    "unit": { "flip_corners": { "body": "brick", "corners": { "top left": { "fabric": "b", "square": "2 1/2" }, "bottom right": { "fabric": "b", "square": "2 1/2" } } } }`)
	wantSize(t, "as its body", p.Width, p.Height, "8 1/2", "4 1/2")
	wantCount(t, "bodies", s.Part("brick").Needed, 12)
	// 24 squares, 16 from a strip: 2 strips; 12 bricks, 8 from a strip of 8 1/2
	// high or 4 from one of 4 1/2: 3 of these.
	wantBuy(t, s, "b", "6", "9")
	wantBuy(t, s, "a", "14 1/2", "18")
	// Common practice, no source, for calling both corners one size of bonus.
	wantCount(t, "bonus units", p.Unit.Bonus[0].Count, 2)
	wantDecimal(t, "bonus unit", p.Unit.Bonus[0].Side, "1.792893")
}

// InRow counts through blocks, turned ones the other way.
func TestInRow(t *testing.T) {
	s := derived(t, strings.Replace(unitPlan(`"rows": 2, "columns": 3`, `
    "goose": { "flying_geese": { "goose": "a", "sky": "b", "finished": [6, 3], "at_a_time": 4, "trim": ["6 1/2", "3 1/2"] } },
    "pair": { "rows": [["goose"], ["goose"]] },
    "unit": { "rows": [["pair", { "part": "pair", "turn": 90 }]] }`), `[["unit"]]`, `[["unit", "pair"]]`, 1))["one"]
	goose := s.Part("goose")
	wantCount(t, "in a row", s.InRow(goose, false), (1+2)+1+(1+2))
	wantCount(t, "in a column", s.InRow(goose, true), 4)
}
