package derive_test

import (
	"fmt"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// top derives the one size of an invented plan, fabrics ink and milk of 40 in,
// with its layout and parts given.
func top(t *testing.T, parts, layout string) *derive.Size {
	t.Helper()
	return derived(t, `{
		"format": 1, "id": "top", "title": "Top", "units": "in", "seam": {"allowance": "1/4"},
		"fabrics": {"ink": {"yardage": {}}, "milk": {"yardage": {}}},
		"parts": {`+parts+`}, "layout": {`+layout+`}, "sizes": {"only": {}}}`)["only"]
}

// block is a square part of milk that finishes at a side.
func block(finished int) string {
	return fmt.Sprintf(`"block": {"cut": {"fabric": "milk", "square": "%d 1/2"}}`, finished)
}

func grid(rows, columns int) string {
	return fmt.Sprintf(`"grid": {"rows": %d, "columns": %d, "blocks": [["block"]]}`, rows, columns)
}

// wantNeed adds up what is cut of a size for something, however it lies.
func wantNeed(t *testing.T, s *derive.Size, role, of, across, along string, want int64) {
	t.Helper()
	a, b := length(t, across), length(t, along)
	got := int64(0)
	for _, n := range s.Fabric(role).Needs {
		if n.For.Text == of && (n.Across == a && n.Along == b || n.Across == b && n.Along == a) {
			got += n.Count
		}
	}
	wantCount(t, fmt.Sprintf("%s %s x %s", of, across, along), got, want)
}

// wantNear compares an irrational size with published decimals.
func wantNear(t *testing.T, what string, got measure.Surd, want string) {
	t.Helper()
	if text := got.Format(measure.In); !strings.Contains(text, want) {
		t.Errorf("%s: %s, want %s", what, text, want)
	}
}

// TestSashed: three by four 10-in blocks with 2-in sashing all round finish at
// 38 by 50 with 31 sashes and 20 cornerstones, and the sashes take 21 in of
// 40-in fabric. Derived from geometry.
func TestSashed(t *testing.T) {
	s := top(t, block(10), grid(4, 3)+`, "sashing": {"fabric": "ink", "width": "2", "cornerstones": "milk", "outer": true}`)
	wantSize(t, "finished", s.Top.Finished.Width, s.Top.Finished.Height, "38", "50")
	wantNeed(t, s, "ink", "sashing", "2 1/2", "10 1/2", 31)
	wantNeed(t, s, "milk", "cornerstones", "2 1/2", "2 1/2", 20)
	wantLength(t, "strips for the sashes", s.Fabric("ink").Layout.Length, "21")
	wantBuy(t, s, "ink", "22", "22 1/2")

	s = top(t, block(10), grid(4, 3)+`, "sashing": {"fabric": "ink", "width": "2"}`)
	wantSize(t, "inner only", s.Top.Finished.Width, s.Top.Finished.Height, "34", "46")
	wantNeed(t, s, "ink", "sashing", "2 1/2", "10 1/2", 8)
	wantNeed(t, s, "ink", "sashing", "2 1/2", "34 1/2", 3)
}

// TestSashesRunThrough: strips longer than the fabric is wide are joined: five
// of 62 1/2 in take 312 1/2 in, and nine of 40 in less eight joins of 2 1/2 in
// give 340; eight would give 302 1/2.
func TestSashesRunThrough(t *testing.T) {
	s := top(t, block(10), grid(4, 5)+`, "sashing": {"fabric": "ink", "width": "2", "outer": true}`)
	g := s.Top.Setting.Sashing
	wantCount(t, "strips that run through", g.Runs(), 5)
	wantCount(t, "strips to join", g.Through.Count, 9)
	wantLength(t, "joined", g.Through.Length, "340")
	wantNeed(t, s, "ink", "sashing", "2 1/2", "10 1/2", 24)
}

// TestSashedRows: rows of two 6-in blocks and of three 4-in ones, 12 in wide
// each, with 1-in strips between them: 6 + 4 + 6 and two strips high, four when
// they also lie above and below. The strips run through, 12 1/2 in.
func TestSashedRows(t *testing.T) {
	rows := `"rows": [["block", "block"], ["small", "small", "small"], ["block", "block"]]`
	small := `, "small": {"cut": {"fabric": "milk", "square": "4 1/2"}}`
	for outer, want := range map[string]struct {
		high  string
		count int64
	}{"false": {"18", 2}, "true": {"20", 4}} {
		s := top(t, block(6)+small, rows+`, "sashing": {"fabric": "ink", "width": "1", "between": "rows", "outer": `+outer+`}`)
		wantSize(t, "finished", s.Top.Finished.Width, s.Top.Finished.Height, "12", want.high)
		wantNeed(t, s, "ink", "sashing", "1 1/2", "12 1/2", want.count)
		wantCount(t, "needs", int64(len(s.Fabric("ink").Needs)), 1)
		// Only the length has strips in it: rows of 16 in and so many strips.
		if why := s.FinishedFigure(false).Terms()[0].Working(); why.Known() {
			t.Errorf("the width is told as %s", why.Formula())
		}
		why := s.FinishedFigure(true).Terms()[0].Working()
		if why.Formula() != "rows + n x t" || why.Terms()[0].Length() != length(t, "16") || why.Terms()[1].N() != want.count {
			t.Errorf("the length is told as %s", why.Formula())
		}
	}
}

// TestOnPoint: 9-in blocks on point, four by five. Blocks, side triangles and
// finished size derived from geometry; the squares also after the trade's
// diagonal + 1 1/4 in and half of it + 7/8 in (common practice, no source).
func TestOnPoint(t *testing.T) {
	s := top(t, block(9), grid(5, 4)+`, "setting": "on point", "triangles": {"sides": "ink"}`)
	wantCount(t, "blocks", s.Part("block").Needed, 32)
	o := s.Top.Setting.OnPoint
	wantCount(t, "side triangles", o.Side.Triangles, 14)
	wantNeed(t, s, "ink", "side triangles", "14", "14", 4)
	wantNeed(t, s, "ink", "corner triangles", "7 1/4", "7 1/4", 2)
	wantNear(t, "width", s.Top.Finished.Width, "50.9117")
	wantNear(t, "length", s.Top.Finished.Height, "63.6396")
	// 14-in and 7 1/4-in squares with an inch to square up: 1 1/8 yd by size,
	// 7/8 yd nested.
	wantLength(t, "to buy", s.Fabric("ink").Buy, "40 1/2")
	wantLength(t, "to buy, packed", s.Fabric("ink").Packed().Buy, "31 1/2")
	for _, n := range s.Fabric("ink").Needs {
		if want := map[string]plan.Halving{"side triangles": plan.CutTwice, "corner triangles": plan.CutOnce}[n.For.Text]; n.Halving != want {
			t.Errorf("%s are cut %s", n.For.Text, n.Halving)
		}
	}
}

// TestSettingSquares: the cut squares for common blocks, exact up to an
// eighth. 15 3/8 and 23 7/8 in suffice where rounding the diagonal first gives
// an eighth more.
func TestSettingSquares(t *testing.T) {
	for finished, want := range map[int][2]string{
		6: {"9 3/4", "5 1/8"}, 8: {"12 5/8", "6 5/8"}, 9: {"14", "7 1/4"}, 10: {"15 3/8", "8"},
		12: {"18 1/4", "9 3/8"}, 14: {"21 1/8", "10 7/8"}, 15: {"22 1/2", "11 1/2"}, 16: {"23 7/8", "12 1/4"},
	} {
		s := top(t, block(finished), grid(3, 3)+`, "setting": "on point", "triangles": {"sides": "ink"}`)
		wantLength(t, "side square", s.Top.Setting.OnPoint.Side.Cut, want[0])
		wantLength(t, "corner square", s.Top.Setting.OnPoint.Corner.Cut, want[1])
	}
}

// TestFloat: points that float half an inch make the top an inch larger each
// way, and both squares an inch. Derived from geometry.
func TestFloat(t *testing.T) {
	s := top(t, block(9), grid(5, 4)+`, "setting": "on point", "triangles": {"sides": "ink", "float": "1/2"}`)
	wantNear(t, "width", s.Top.Finished.Width, "51.9117")
	wantLength(t, "side square", s.Top.Setting.OnPoint.Side.Cut, "15")
	wantLength(t, "corner square", s.Top.Setting.OnPoint.Corner.Cut, "8 1/4")
}

// TestSashedOnPoint: 9-in blocks with 2-in sashes, four by five on point. 80
// sashes 2 1/2 by 9 1/2 in, 49 cornerstones of 2 1/2 in, setting triangles as
// without sashes, and 44 sqrt2 by 55 sqrt2 in. Derived from geometry.
func TestSashedOnPoint(t *testing.T) {
	s := top(t, block(9), grid(5, 4)+`, "setting": "on point", "triangles": {"sides": "ink"},
		"sashing": {"fabric": "ink", "width": "2", "cornerstones": "milk", "outer": true}`)
	wantCount(t, "blocks", s.Part("block").Needed, 32)
	wantNear(t, "width", s.Top.Finished.Width, "62.2254")
	wantNear(t, "length", s.Top.Finished.Height, "77.7817")
	wantNeed(t, s, "ink", "sashing", "2 1/2", "9 1/2", 80)
	wantNeed(t, s, "milk", "cornerstones", "2 1/2", "2 1/2", 49)
	wantNeed(t, s, "ink", "side triangles", "14", "14", 4)
	wantNeed(t, s, "ink", "corner triangles", "7 1/4", "7 1/4", 2)
}

// TestAlternates: the blocks between the full rows, 3 of a 2 by 4 setting,
// may be others.
func TestAlternates(t *testing.T) {
	s := top(t, block(9)+`, "other": {"cut": {"fabric": "ink", "square": "9 1/2"}}`,
		`"grid": {"rows": 2, "columns": 4, "blocks": [["block"]], "between": [["other"]]}, "setting": "on point", "triangles": {"sides": "ink"}`)
	wantCount(t, "blocks", s.Part("block").Needed, 8)
	wantCount(t, "alternates", s.Part("other").Needed, 3)
}

// TestOtherHalving: cut the other way, a side triangle still has finished legs
// of a block's side, so its square is that + 7/8 in, and there are two from
// each. Derived from geometry.
func TestOtherHalving(t *testing.T) {
	s := top(t, block(9), grid(5, 4)+`, "setting": "on point", "triangles": {"sides": "ink",
		"side_cut": {"square": "9 7/8", "halved": "once"}, "corner_cut": {"square": "10 1/4", "halved": "twice"}}`)
	o := s.Top.Setting.OnPoint
	wantCount(t, "side squares", o.Side.Squares, 7)
	wantCount(t, "corner squares", o.Corner.Squares, 1)
	wantNear(t, "side square, exact", o.Side.Exact, "9.8536")
	wantNear(t, "corner square, exact", o.Corner.Exact, "10.2071")
}

// bordered is twelve 5-in blocks, 15 by 20 in, with one border.
func bordered(t *testing.T, border string) (*derive.Size, derive.Border) {
	t.Helper()
	s := top(t, block(5)+`, "unit": {"cut": {"fabric": "milk", "size": ["3", "2 1/2"]}}`, grid(4, 3)+`, "borders": {"edge": {`+border+`}}`)
	return s, s.Top.Borders[0]
}

// TestBorderCorners: corner squares, W+2s and H+2s and four squares g+2s;
// mitred, W+2g+(2+2 sqrt2)s. Derived from geometry.
func TestBorderCorners(t *testing.T) {
	s, b := bordered(t, `"fabric": "ink", "width": "2", "corners": "corner squares", "corner_fabric": "milk"`)
	wantSize(t, "ends and sides", b.Ends, b.Sides, "15 1/2", "20 1/2")
	wantNeed(t, s, "milk", "edge corners", "2 1/2", "2 1/2", 4)
	wantSize(t, "finished", s.Top.Finished.Width, s.Top.Finished.Height, "19", "24")

	s, _ = bordered(t, `"fabric": "ink", "width": "5", "corners": "corner squares", "corner_part": "block"`)
	wantCount(t, "blocks, 4 of them in the corners", s.Part("block").Needed, 16)
	wantCount(t, "needs, no squares among them", int64(len(s.Fabric("ink").Needs)), 1)

	_, b = bordered(t, `"fabric": "ink", "width": "2", "corners": "mitred"`)
	wantNear(t, "mitred ends", b.Ends, "20.2071")
	wantNear(t, "mitred sides", b.Sides, "25.2071")
}

// TestMitreAllowance: with 2 in for the mitre every strip is 2 in longer, and
// all four 8 in; each of two borders mitred as one has its own. 2 to 4 in is
// common practice, no source.
func TestMitreAllowance(t *testing.T) {
	_, exact := bordered(t, `"fabric": "ink", "width": "2", "corners": "mitred"`)
	s, b := bordered(t, `"fabric": "ink", "width": "2", "corners": "mitred", "allowance": "2"`)
	wantNear(t, "ends", b.Ends, "22.2071")
	wantNear(t, "sides", b.Sides, "27.2071")
	wantNear(t, "more in all", b.Needed.Sub(exact.Needed), "8")
	wantSize(t, "finished", s.Top.Finished.Width, s.Top.Finished.Height, "19", "24")
	// 90.83 in and two joins of 2 1/2 in fit three strips of 40 in; 8 in more do too,
	// and at 7 1/4 in each the 119.83 in do not.
	wantCount(t, "strips", b.Strips.Count, 3)
	_, b = bordered(t, `"fabric": "ink", "width": "2", "corners": "mitred", "allowance": "7 1/4"`)
	wantCount(t, "strips at 7 1/4 in", b.Strips.Count, 4)

	s = top(t, block(5), grid(4, 3)+`, "borders": {
		"a": {"fabric": "ink", "width": "1", "corners": "mitred", "allowance": "3"}, "b": {"fabric": "milk", "width": "2", "corners": "mitred", "allowance": "1"}}`)
	wantNear(t, "inner ends", s.Top.Borders[0].Ends, "25.2071")
	wantNear(t, "outer ends", s.Top.Borders[1].Ends, "23.2071")
}

// TestSpacerOnOnePair: a 2-in border on the sides of 15 by 20 in makes 19 by 20,
// its two strips 20 1/2 in long; on the ends 15 by 24, of 15 1/2 in. What comes
// round it goes round that. Derived from geometry.
func TestSpacerOnOnePair(t *testing.T) {
	s, b := bordered(t, `"fabric": "ink", "width": "2", "on": "sides"`)
	wantSize(t, "finished", s.Top.Finished.Width, s.Top.Finished.Height, "19", "20")
	wantSize(t, "strips", b.Ends, b.Sides, "0", "20 1/2")
	wantNear(t, "in all", b.Needed, "41")
	wantCount(t, "strips of 40 in", b.Strips.Count, 2)

	s, b = bordered(t, `"fabric": "ink", "width": "2", "on": "ends"`)
	wantSize(t, "finished", s.Top.Finished.Width, s.Top.Finished.Height, "15", "24")
	wantSize(t, "strips", b.Ends, b.Sides, "15 1/2", "0")
	wantCount(t, "strips of 40 in", b.Strips.Count, 1)

	s, _ = bordered(t, `"fabric": "ink", "width": "2", "on": "sides", "strips": "lengthwise"`)
	wantNeed(t, s, "ink", "edge", "2 1/2", "20 1/2", 2)
	_, b = bordered(t, `"fabric": "ink", "width": "2", "on": "sides", "cut": "each side"`)
	wantCount(t, "strips, each side by itself", b.Strips.Count, 2)
	s, b = bordered(t, `"part": "unit", "width": "2", "on": "ends"`)
	wantCount(t, "units on an end", b.Units.Ends, 6)
	wantCount(t, "units", s.Part("unit").Needed, 12)

	s = top(t, block(5), grid(4, 3)+`, "borders": {"spacer": {"fabric": "ink", "width": "2 1/2", "on": "sides"}, "frame": {"fabric": "milk", "width": "1"}}`)
	wantSize(t, "finished in a frame", s.Top.Finished.Width, s.Top.Finished.Height, "22", "22")
	wantSize(t, "the frame", s.Top.Borders[1].Ends, s.Top.Borders[1].Sides, "22 1/2", "20 1/2")
}

// TestCopingOnOnePair: where only the width is missing, there are no strips on
// the ends; 20 in is reached already. Derived from geometry.
func TestCopingOnOnePair(t *testing.T) {
	s, b := bordered(t, `"fabric": "ink", "to": ["18", "20"]`)
	wantSize(t, "finished", s.Top.Finished.Width, s.Top.Finished.Height, "18", "20")
	wantSize(t, "strips", b.Ends, b.Sides, "0", "20 1/2")
	wantLength(t, "cut", b.Cut, "2")
	wantCount(t, "strips", b.Strips.Count+b.EndStrips.Count, 2)
	_, b = bordered(t, `"fabric": "ink", "to": ["15", "21"]`)
	wantSize(t, "strips", b.Ends, b.Sides, "15 1/2", "0")
	wantLength(t, "cut", b.EndCut, "1")
	for _, to := range []string{`["15", "20"]`, `["14", "24"]`, `["19", "19 63/64"]`} {
		if _, b = bordered(t, `"fabric": "ink", "to": `+to); b.Known {
			t.Errorf("to %s: strips of nothing", to)
		}
	}
}

// TestMitredTogether: two mitred borders are sewn together first, so that the
// inner one is as long as the outer.
func TestMitredTogether(t *testing.T) {
	s := top(t, block(5), grid(4, 3)+`, "borders": {
		"a": {"fabric": "ink", "width": "1", "corners": "mitred"}, "b": {"fabric": "milk", "width": "2", "corners": "mitred"}}`)
	a, b := s.Top.Borders[0], s.Top.Borders[1]
	if !a.Sides.Equal(b.Sides) || !a.Ends.Equal(b.Ends) || !a.Together || b.Together {
		t.Errorf("inner %s x %s, outer %s x %s", a.Ends.Format(measure.In), a.Sides.Format(measure.In), b.Ends.Format(measure.In), b.Sides.Format(measure.In))
	}
	wantNear(t, "ends", b.Ends, "22.2071")
}

// TestEachSide: 44-in sides at 40 in of fabric: joined in one, 4 x 44 in and
// three joins take five strips; each side by itself takes two, so eight.
func TestEachSide(t *testing.T) {
	for cut, want := range map[string]int64{"one joined strip": 5, "each side": 8} {
		s := top(t, block(10), grid(4, 4)+`, "borders": {"edge": {"fabric": "ink", "width": "2", "joins": "straight", "corners": "corner squares", "cut": "`+cut+`"}}`)
		wantCount(t, cut, s.Top.Borders[0].Strips.Count, want)
	}
}

// TestLengthwise: four strips of 5 1/2 in lie side by side in 40 in, so the
// fabric is as long as the longest of them; of 13-in strips three do, and the
// fourth needs its own length.
func TestLengthwise(t *testing.T) {
	s := top(t, block(10), grid(6, 5)+`, "borders": {"edge": {"fabric": "ink", "width": "5", "strips": "lengthwise"}}`)
	wantNeed(t, s, "ink", "edge", "5 1/2", "60 1/2", 4)
	wantLength(t, "of fabric", s.Fabric("ink").Layout.Length, "60 1/2")
	s = top(t, block(10), grid(6, 5)+`, "borders": {"edge": {"fabric": "ink", "width": "12 1/2", "strips": "lengthwise"}}`)
	wantNeed(t, s, "ink", "edge", "13", "75 1/2", 3)
	wantNeed(t, s, "ink", "edge", "13", "60 1/2", 1)
	wantLength(t, "of fabric, in two rows", s.Fabric("ink").Layout.Length, "136")
}

// TestPiecedBorder: 2 1/2-in units on 15 by 20 in: six on each end and eight on
// each side.
func TestPiecedBorder(t *testing.T) {
	s, b := bordered(t, `"part": "unit", "width": "2", "corners": "corner squares", "corner_fabric": "ink"`)
	wantCount(t, "on a side", b.Units.Sides, 8)
	wantCount(t, "on an end", b.Units.Ends, 6)
	wantCount(t, "units", s.Part("unit").Needed, 28)
	wantNeed(t, s, "ink", "edge corners", "2 1/2", "2 1/2", 4)
	if !b.Units.SideDrift.IsZero() || !b.Units.EndDrift.IsZero() {
		t.Error("the units divide the sides, and a drift is left")
	}
}

// TestCoping: a panel measured at 23 1/2 by 43 1/4 in, brought to 28 by 48
// finished, takes strips of 2 1/2 in on the sides and 2 5/8 in on the ends
// finished: half of 28 - 23 and of 48 - 42 3/4.
func TestCoping(t *testing.T) {
	s := top(t, `"block": {"cut": {"fabric": "milk", "size": ["23 1/2", "43 1/4"]}}, "framed": {"bordered": {"part": "block",
		"borders": {"cope": {"fabric": "ink", "to": ["28", "48"]}}}}`, strings.Replace(grid(1, 1), "block\"]]", "framed\"]]", 1))
	b := s.Part("framed").Borders[0]
	wantLength(t, "sides", b.Cut, "3")
	wantLength(t, "ends", b.EndCut, "3 1/8")
	wantSize(t, "finished", s.Top.Finished.Width, s.Top.Finished.Height, "28", "48")
	wantSize(t, "strips", b.Ends, b.Sides, "28 1/2", "43 1/4")
}

// TestMedallion: settings and borders round parts count what they hold.
func TestMedallion(t *testing.T) {
	s := top(t, block(6)+`,
		"core": {"on_point": {"grid": {"rows": 1, "columns": 1, "blocks": [["block"]]}, "sides": "ink"}},
		"trimmed": {"trim": {"part": "core", "square": "8 3/4"}},
		"framed": {"bordered": {"part": "trimmed", "borders": {"a": {"fabric": "ink", "width": "2"}}}},
		"laced": {"sashed": {"grid": {"rows": 2, "columns": 2, "blocks": [["framed"]]}, "sashing": {"fabric": "milk", "width": "1"}}}`,
		strings.Replace(grid(1, 2), "block\"]]", "laced\"]]", 1))
	wantCount(t, "cores", s.Part("core").Needed, 8)
	wantNeed(t, s, "ink", "core corner triangles", "5 1/8", "5 1/8", 16)
	wantNeed(t, s, "ink", "framed a", "2 1/2", "8 3/4", 16)
	wantNeed(t, s, "ink", "framed a", "2 1/2", "12 3/4", 16)
	wantNeed(t, s, "milk", "laced sashing", "1 1/2", "12 3/4", 4)
	wantNeed(t, s, "milk", "laced sashing", "1 1/2", "26", 2)
	wantSize(t, "laced", s.Part("laced").Width, s.Part("laced").Height, "26", "26")
}

// TestRowQuilt: rows of unlike blocks that come out equally wide.
func TestRowQuilt(t *testing.T) {
	s := top(t, block(6)+`, "wide": {"cut": {"fabric": "ink", "size": ["12 1/2", "3 1/2"]}}`,
		`"rows": [["block", "block", "block", "block"], ["wide", "wide"], ["block", "block", "block", "block"]]`)
	wantSize(t, "finished", s.Top.Finished.Width, s.Top.Finished.Height, "24", "15")
	wantCount(t, "blocks", s.Part("block").Needed, 8)
	wantCount(t, "wide", s.Part("wide").Needed, 2)
}

// TestMirrorImages: a mirrored block holds the mirror images of its parts, and
// of a mirror image the part itself.
func TestMirrorImages(t *testing.T) {
	s := top(t, block(5)+`, "pair": {"rows": [["block", {"part": "block", "mirror": true}]]}`,
		`"grid": {"rows": 4, "columns": 2, "blocks": [["pair"]], "symmetry": "mirror"}`)
	wantCount(t, "pairs", s.Part("pair").Needed, 8)
	wantCount(t, "mirrored pairs", s.Part("pair").Mirrored, 4)
	wantCount(t, "mirrored blocks", s.Part("block").Mirrored, 8)
}
