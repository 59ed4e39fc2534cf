package derive_test

import (
	"fmt"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
)

// finishedAs is a quilt of columns x rows 4-in squares with a finish.
func finishedAs(t testing.TB, columns, rows int, fabric, finish string) *derive.Size {
	t.Helper()
	return finishedOf(t, "4 1/2", columns, rows, fabric, finish)
}

func finishedOf(t testing.TB, square string, columns, rows int, fabric, finish string) *derive.Size {
	t.Helper()
	return derived(t, fmt.Sprintf(`{"format": 1, "id": "finished", "title": "Finished", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
		"fabrics": {"sky": {"yardage": {}}, "edge": %s},
		"parts": {"square": {"cut": {"fabric": "sky", "square": %q}}},
		"layout": {"grid": {"rows": %d, "columns": %d, "blocks": [["square"]]}},
		"finish": {%s}, "sizes": {"only": {}}, "printed": {"only": "not printed"}}`, fabric, square, rows, columns, finish))["only"]
}

// The loops and lengths of continuous bias are derived from geometry; area over
// width is the bound that several tutorials publish.
func TestContinuousBiasFromAPlan(t *testing.T) {
	for _, c := range []struct {
		square, cut string
		loops       int64
		length      string // to two decimals
		byArea      string
	}{
		{"20", "2 1/4", 6, "165.46", "177.78"}, {"20", "2 1/2", 5, "137.89", "160.00"},
		{"24", "2 1/4", 7, "232.64", "256.00"}, {"24", "2 1/2", 6, "199.40", "230.40"},
		{"26", "2 1/4", 8, "288.50", "300.44"}, {"26", "2 1/2", 7, "252.44", "270.40"},
		{"30", "2 1/4", 9, "375.47", "400.00"}, {"30", "2 1/2", 8, "333.75", "360.00"},
		{"36", "2 1/4", 11, "552.25", "576.00"}, {"36", "2 1/2", 10, "502.05", "518.40"},
	} {
		s := finishedAs(t, 10, 10, `{"yardage": {}}`, fmt.Sprintf(`"binding": {"fabric": "edge", "cut": %q, "kind": "continuous bias", "square": %q}`, c.cut, c.square))
		b := s.Binding.Bias
		wantCount(t, "loops of "+c.square, b.Loops, c.loops)
		if got := b.Length.Decimal(measure.In, 2); got != c.length {
			t.Errorf("%s at %s: %s in, want %s", c.square, c.cut, got, c.length)
		}
		if got := b.ByArea.Decimal(measure.In, 2); got != c.byArea {
			t.Errorf("%s at %s: by area %s in, want %s", c.square, c.cut, got, c.byArea)
		}
		// The square is the only thing cut from the fabric, with 1 in to square up.
		wantLength(t, "fabric", s.Fabric("edge").Net-s.Fabric("edge").SquaringUp.Length, c.square)
	}
}

// 60 x 60 in take 240 in round and 10 in for corners: 250 in. By area the
// square is 23.72 in; by whole loops it is 26 in on half inches (derived from
// geometry).
func TestBiasSquareIsDerived(t *testing.T) {
	const binding = `"binding": {"fabric": "edge", "cut": "2 1/4", "kind": "KIND"}`
	b := finishedAs(t, 15, 15, `{"yardage": {}}`, strings.Replace(binding, "KIND", "continuous bias", 1)).Binding
	wantLength(t, "square", b.Bias.Square, "26")
	wantCount(t, "squares", b.Bias.Squares, 1)
	if !b.Bias.OK || b.Bias.Length.Decimal(measure.In, 2) != "288.50" {
		t.Errorf("26 in: %+v", b.Bias)
	}

	// Of a fat quarter, 18 in, it takes two squares; joining them costs 2 1/4 in.
	// Each has to give 126 1/8 in: 17 1/2 in give 5 loops, 120.21 in; 18 in 5, 123.74
	// in; so three squares are needed, each to give 84 5/6 in: 15 1/2 in, 4 loops, 84.85 in.
	b = finishedAs(t, 15, 15, `{"precut": {"piece": ["18", "21"], "count": 4}}`, strings.Replace(binding, "KIND", "continuous bias", 1)).Binding
	wantCount(t, "squares of a fat quarter", b.Bias.Squares, 3)
	wantLength(t, "each", b.Bias.Square, "15 1/2")

	// Single strips lie beside one another from the diagonal outwards.
	b = finishedAs(t, 15, 15, `{"yardage": {}}`, strings.Replace(binding, "KIND", "bias strips", 1)).Binding
	if !b.Bias.OK || b.Bias.Strips%2 != 0 || b.Bias.Length.Cmp(b.Strips.Need) < 0 || b.Bias.Length.Cmp(b.Bias.ByArea) > 0 {
		t.Errorf("strips: %+v", b.Bias)
	}
	less := finishedAs(t, 15, 15, `{"yardage": {}}`, fmt.Sprintf(`"binding": {"fabric": "edge", "cut": "2 1/4", "kind": "bias strips", "square": %q}`,
		(b.Bias.Square-inch/2).Bare(measure.In)))
	if less.Binding.Bias.OK {
		t.Errorf("half an inch less does: %+v", less.Binding.Bias)
	}
}

// A sleeve cut 8 1/2 in is 4 in deep, and one guild's show rule wants it in two
// above 90 in.
func TestSleeveFromAPlan(t *testing.T) {
	const sleeve = `"sleeve": {"fabric": "edge", "cut": "8 1/2", "shorter": "2", "widest": "90"}`
	s := finishedAs(t, 10, 10, `{"yardage": {}}`, sleeve) // 40 in wide
	if d, _ := s.Sleeve.Depth.Length(); d != 4*inch {
		t.Errorf("depth %s", d.Format(measure.In))
	}
	wantCount(t, "pieces", s.Sleeve.Pieces, 1)
	wantCount(t, "strips", s.Sleeve.Strips.Count, 1)
	wantBuy(t, s, "edge", "9 1/2", "13 1/2")

	wide := finishedAs(t, 23, 10, `{"yardage": {}}`, sleeve).Sleeve // 92 in: two of 45 in
	wantCount(t, "pieces", wide.Pieces, 2)
	if each, _ := wide.Each.Length(); each != 45*inch {
		t.Errorf("each %s", each.Format(measure.In))
	}
	wantCount(t, "strips", wide.Strips.Count, 3) // 2 strips give 79 1/2 in, 3 give 119 in
}

func TestLabelIsCut(t *testing.T) {
	s := finishedAs(t, 10, 10, `{"yardage": {}}`, `"label": {"fabric": "edge", "size": ["6", "4"]}`)
	wantBuy(t, s, "edge", "5", "9")
}

// 90 in off the roll cover the 48 x 88 in of a 40 x 80 in quilt either way: 48 in
// across are less than 88 in along (derived from geometry).
func TestBattingOffTheRoll(t *testing.T) {
	for _, c := range []struct {
		roll, cut, buy string
		across         bool
	}{
		{"90", "48", "49 1/2", true}, {"88", "48", "49 1/2", true}, {"87 7/8", "88", "90", false}, {"48", "88", "90", false}, {"47 7/8", "0", "0", false},
	} {
		b := finishedAs(t, 10, 20, `{"yardage": {}}`, fmt.Sprintf(`"binding": {"fabric": "edge", "cut": "2 1/2"}, "batting": {"roll": %q}`, c.roll)).Batting
		wantLength(t, c.roll+", cut", b.Cut, c.cut)
		wantLength(t, c.roll+", buy", b.Buy, c.buy)
		if b.Across != c.across {
			t.Errorf("%s: across is %v", c.roll, b.Across)
		}
	}
}

// Wide backing is one panel: 98 x 104 in of fabric with 106 in usable take 98 in,
// which with 1 in to square up is 2 3/4 yd; with 100 in usable only 104 in, 3 yd (derived from geometry).
func TestWideBacking(t *testing.T) {
	for _, c := range []struct{ usable, print, length, buy string }{
		{"106", "plain", "99", "99"}, {"100", "plain", "105", "108"}, {"106", "one-way", "105", "108"},
	} {
		s := finishedOf(t, "2 1/2", 45, 48, fmt.Sprintf(`{"print": %q, "yardage": {"usable_width": %q}}`, c.print, c.usable), `"backing": {"fabric": "edge"}`)
		wantCount(t, "panels", s.Backing.Panels, 1)
		wantBuy(t, s, "edge", c.length, c.buy)
	}
}

// A mattress of 160 x 200 cm with a drop of 30 cm takes 220 x 230 cm (derived
// from geometry). Drawn in by 3 %, that quilt is 213.4 x 223.1 cm and hangs 26.7
// cm at the sides and 23.1 cm at the foot.
func TestBedOfAMetricPlan(t *testing.T) {
	const plain = `{"format": 1, "id": "bed", "title": "Bed", "units": "cm", "seam": {"allowance": "0.75", "stitch": "301"},
		"fabrics": {"sky": {"yardage": {}}}, "parts": {"square": {"cut": {"fabric": "sky", "square": "11.5"}}},
		"layout": {"grid": {"rows": 23, "columns": 22, "blocks": [["square"]]}},
		"bed": {"mattress": ["160", "200"], "drop": "30"}, "sizes": {"new": {}, "washed": {"bed": {"draw_in": "3%"}}, "wall": {"bed": null}}}`
	sizes := derived(t, plain)
	cm := func(x measure.Surd) string { return x.Decimal(measure.Cm, 1) }
	b := sizes["new"].Bed
	if cm(b.Wanted.Width) != "220.0" || cm(b.Wanted.Height) != "230.0" || cm(b.Side) != "30.0" || cm(b.Foot) != "30.0" {
		t.Errorf("new: %+v", b)
	}
	b = sizes["washed"].Bed
	if cm(b.Lies.Width) != "213.4" || cm(b.Lies.Height) != "223.1" || cm(b.Side) != "26.7" || cm(b.Foot) != "23.1" {
		t.Errorf("washed: %+v", b)
	}
	if cm(b.Wanted.Width) != "226.8" || cm(b.Wanted.Height) != "237.1" {
		t.Errorf("to be made: %s x %s", cm(b.Wanted.Width), cm(b.Wanted.Height))
	}
	if sizes["wall"].Bed != nil {
		t.Error("the wall has a bed")
	}
}
