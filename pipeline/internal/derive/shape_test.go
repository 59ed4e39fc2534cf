package derive_test

import (
	"strings"
	"testing"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

const ridges = `{
  "format": 1, "id": "ridges", "title": "Ridges", "units": "in", "seam": { "allowance": "1/4" },
  "fabrics": { "a": { "yardage": { "usable_width": 40 } }, "b": { "yardage": { "usable_width": 40 } } },
  "parts": {
    "peak": { "shape": { "fabric": "a", "kind": "triangle 60", "finished": 6 } },
    "end": { "shape": { "fabric": "b", "kind": "half triangle 60", "finished": 6 } },
    "ridge": { "rows": [["end", "peak", "peak", "peak", "peak", "peak", "end"]] }
  },
  "layout": { "grid": { "rows": 8, "columns": 1, "blocks": [["ridge"]] } },
  "sizes": { "pointed": {}, "blunted": { "parts": { "peak": { "shape": { "tips": "blunted" } }, "end": { "shape": { "tips": "blunted" } } } } }
}`

// Triangles that finish 6 in high at a 1/4-in seam, derived from geometry:
// strips of 6 3/4 in, finished side 6.928203, cut side 7.794229, nine from 40
// in pointed; from strips of 6 1/2 in with blunted tips, eight. Five between
// two halves are three sides wide.
func TestTriangles(t *testing.T) {
	sizes := derived(t, ridges)
	for _, c := range []struct {
		size, strip    string
		each, strips   int64
		half, halfRows int64
	}{
		// 40 triangles: nine from a strip, 5 strips; eight, 5 strips. Half ones
		// are 4.147115 wide along one edge; along the other 0.25 from the taller
		// strip, so nine pairs of 4.397115, and 0.394338 from the lower, so eight
		// of 4.541452 and too little left for another.
		{"pointed", "6 3/4", 9, 5, 18, 1},
		{"blunted", "6 1/2", 8, 5, 16, 1},
	} {
		s := sizes[c.size]
		peak, end := s.Part("peak"), s.Part("end")
		wantCount(t, c.size+", triangles", peak.Needed, 40)
		wantLength(t, c.size+", strip", peak.Shape.Height, c.strip)
		wantCount(t, c.size+", from a strip", peak.Shape.Yield.Each, c.each)
		wantCount(t, c.size+", strips", peak.Shape.Count, c.strips)
		wantDecimal(t, c.size+", finished side", peak.Shape.Side(), "6.928203")
		wantDecimal(t, c.size+", cut side", peak.Shape.Cut.Width, "7.794229")
		wantCount(t, c.size+", half ones", end.Needed, 16)
		wantCount(t, c.size+", half ones from a strip", end.Shape.Yield.Each, c.half)
		wantCount(t, c.size+", strips of half ones", end.Shape.Count, c.halfRows)
		wantDecimal(t, c.size+", a row", s.Part("ridge").Width.Sub((inch / 2).Surd()), "20.784610")
		wantDecimal(t, c.size+", finished", s.Top.Finished.Height, "48.000000")
		if !s.Top.Finished.Width.Equal(peak.Shape.Side().MulInt(3)) {
			t.Errorf("%s: %s wide", c.size, s.Top.Finished.Width.Decimal(measure.In, 6))
		}
	}
	pointed := sizes["pointed"]
	// 5 strips of 6 3/4 in and an inch to square up.
	wantBuy(t, pointed, "a", "34 3/4", "36")
	// The last strip of a is used for 4 triangles, (P/2) x 5 of it.
	for _, n := range pointed.Fabric("a").Needs {
		if want := pointed.Part("peak").Shape.CutSide().DivInt(2).MulInt(5).CeilTo(measure.Tick); n.Last != want {
			t.Errorf("%s used of the last strip, want %s", n.Last.Format(measure.In), want.Format(measure.In))
		}
	}
}

// A template's box lies as its grain says; one on the bias takes a square of
// (w + h) / sqrt2, up to the ruler's grid. Derived from geometry: 6 + 9 in are
// 10.606602, 10 5/8 in. Ten come from strips across a rectangle 28 in high, which takes
// less than four rows of squares: three from the strip from edge to edge, 39.60 in
// long, and of each corner's strips two of 9 in from two, one from one of 18 in and of
// 27 in, 4 + 2 + 2. It is 28 + 6 sqrt2 = 36.49 in wide.
func TestTemplate(t *testing.T) {
	for grain, want := range map[string]string{
		`, "grain": "along"`: "6 9 fixed", `, "grain": "across"`: "9 6 fixed", `, "grain": "bias"`: "36 1/2 28 fixed", ``: "6 9 free",
	} {
		s, p := unitOf(t, `"rows": 2, "columns": 5`, `"unit": { "template": { "fabric": "a", "box": [6, 9], "finished": [5, 8]`+grain+` } }`)
		n := s.Fabric("a").Needs[0]
		got := strings.Join([]string{n.Across.Bare(measure.In), n.Along.Bare(measure.In), map[bool]string{true: "free", false: "fixed"}[s.Fabric("a").Turnable(n)]}, " ")
		if got != want {
			t.Errorf("%s: cut %s, want %s", grain, got, want)
		}
		if n.OnBias != nil {
			wantCount(t, "rectangles", n.Count, 1)
			n.Count = n.OnBias.Pieces
		}
		wantCount(t, "pieces", n.Count, 10)
		wantSize(t, grain, p.Width, p.Height, "5 1/2", "8 1/2")
	}
	one, _ := unitOf(t, `"rows": 1, "columns": 1`, `"unit": { "template": { "fabric": "a", "box": [6, 9], "grain": "bias" } }`)
	if n := one.Fabric("a").Needs[0]; n.Across != 85*inch/8 || n.Along != 85*inch/8 || n.OnBias.From != nil {
		t.Errorf("one on the bias is cut %s x %s", n.Across.Bare(measure.In), n.Along.Bare(measure.In))
	}
	// Without a finished size it fills its box.
	_, p := unitOf(t, `"rows": 1, "columns": 1`, `"unit": { "template": { "fabric": "a", "box": [6, 9] } }`)
	wantSize(t, "its box", p.Width, p.Height, "6", "9")
}

// Triangles 6 in high come from sets 6 3/4 in wide, nine from 40 in (as from
// strips); 18 of them take two sets, whose strips are counted. From sets wider
// by 1/8 they would be larger by as much.
func TestTrianglesFromSets(t *testing.T) {
	const plan = `{
		"format": 1, "id": "tiles", "title": "Tiles", "units": "in", "seam": { "allowance": "1/4" },
		"fabrics": { "a": { "yardage": { "usable_width": 40 } }, "b": { "yardage": { "usable_width": 40 } } },
		"parts": {
			"courses": { "strip_set": { "strips": [{ "fabric": "a", "width": "3 5/8" }, { "fabric": "b", "width": WIDTH }] } },
			"tile": { "shape": { "set": "courses", "kind": "triangle 60", "finished": 6 } },
			"end": { "shape": { "fabric": "b", "kind": "half triangle 60", "finished": 6 } },
			"run": { "rows": [["end", "tile", "tile", "tile", "tile", "tile", "tile", "end"]] }
		},
		"layout": { "grid": { "rows": 3, "columns": 1, "blocks": [["run"]] } }, "sizes": { "only": {} }
	}`
	s := derived(t, strings.Replace(plan, "WIDTH", `"3 5/8"`, 1))["only"]
	tile := s.Part("tile")
	wantCount(t, "from a set", tile.Shape.Yield.Each, 9)
	wantCount(t, "sets", tile.Shape.Count, 2)
	wantCount(t, "sets to sew", s.Part("courses").Set.Count, 2)
	wantCount(t, "strips of a", s.Fabric("a").Needs[0].Count, 2)
	if !tile.Shape.Over().IsZero() {
		t.Errorf("over by %s", tile.Shape.Over().Format(measure.In))
	}
	wider := derived(t, strings.Replace(plan, "WIDTH", `"3 3/4"`, 1))["only"].Part("tile").Shape
	wantDecimal(t, "over", wider.Over(), "0.125000")
}

const cells = `{
  "format": 1, "id": "cells", "title": "Cells", "units": "in", "seam": { "allowance": "1/4" },
  "fabrics": { "a": { "yardage": { "usable_width": 40 } } },
  "parts": {
    "cell": { "shape": { "fabric": "a", "kind": "hexagon", "finished": 2 } },
    "gem": { "shape": { "fabric": "a", "kind": "diamond 60", "finished": 3 } },
    "ray": { "shape": { "fabric": "a", "kind": "diamond 45", "finished": "3 1/2" } },
    "slice45": { "strip_set": { "segment": "2 1/2", "angle": 45, "strips": [
      { "fabric": "a", "width": "2 1/2" }, { "fabric": "a", "width": "2 1/2" }, { "fabric": "a", "width": "2 1/2" } ] } },
    "slice60": { "strip_set": { "segment": "2 1/2", "angle": 60, "strips": [
      { "fabric": "a", "width": "2 1/2" }, { "fabric": "a", "width": "2 1/2" }, { "fabric": "a", "width": "2 1/2" } ] } },
    "once": { "cut": { "fabric": "a", "square": "4", "halved": "once" } },
    "twice": { "cut": { "fabric": "a", "square": "6", "halved": "twice" } },
    "peak": { "shape": { "fabric": "a", "kind": "triangle 60", "finished": 6 } },
    "field": { "mosaic": { "pieces": { "cell": 5, "gem": 4, "ray": 8, "slice45": 3, "slice60": 2, "once": 6, "twice": 7, "peak": 9 }, "finished": [20, 20] } }
  },
  "layout": { "grid": { "rows": 2, "columns": 2, "blocks": [["field"]] } },
  "sizes": { "only": {} }
}`

// Hexagons, diamonds and slanted segments at a 1/4-in seam (derived from
// geometry): a hexagon of 2 in takes 3.9641 in, so strips of 4, one every
// 8/sqrt3 = 4.6188; a diamond of 60 degrees 3.0981, so strips of 3 1/8, after
// 1.8042 of waste one every 3.6084; one of 45 degrees 2.9749, so strips of 3,
// after 3 in one every 4.2426. A set of three is 6 1/2 wide: at 45 degrees it
// wastes 6 1/2 and gives one every 3.5355, at 60 3.7528 and 2.8868.
func TestShapesInMosaic(t *testing.T) {
	s := derived(t, cells)["only"]
	for _, c := range []struct {
		part, strip          string
		each, needed, strips int64
	}{
		{"cell", "4", 8, 20, 3}, {"gem", "3 1/8", 10, 16, 2}, {"ray", "3", 8, 32, 4},
	} {
		p := s.Part(c.part)
		wantLength(t, c.part+", strip", p.Shape.Height, c.strip)
		wantCount(t, c.part+", from a strip", p.Shape.Yield.Each, c.each)
		wantCount(t, c.part+", needed", p.Needed, c.needed)
		wantCount(t, c.part+", strips", p.Shape.Count, c.strips)
	}
	for part, each := range map[string]int64{"slice45": 9, "slice60": 12} {
		wantCount(t, part+", from a set", s.Part(part).Set.Cut.Each, each)
	}
}

// What the pieces of a mosaic cover is the sum of their outlines' areas, once
// the seams are off: the outlines are those that the pictures and the piecing
// checks use, and their areas are found by the shoelace formula.
func TestMosaicCovers(t *testing.T) {
	s := derived(t, cells)["only"]
	inches := func(l string) measure.Length { return length(t, l) }
	quarter := inches("1/4")
	side := inches("3 1/2").Surd().Div(measure.Root3()) // of a hexagon from a 4-in strip
	diamond := func(strip string, a piecing.Angle) piecing.Polygon {
		net := (inches(strip) - 2*quarter).Surd()
		return piecing.Slant{Strip: net, Width: net, Angle: a}.Outline()
	}
	slice := func(a piecing.Angle) piecing.Polygon {
		return piecing.Slant{Strip: inches("6").Surd(), Width: inches("2").Surd(), Angle: a}.Outline()
	}
	right := func(leg measure.Surd) piecing.Polygon {
		return piecing.Polygon{{}, {X: leg}, {Y: leg}}
	}
	across := side.Mul(measure.Root3())
	hexagon := piecing.Polygon{
		{X: side.DivInt(2)}, {X: side.MulInt(3).DivInt(2)}, {X: side.MulInt(2), Y: across.DivInt(2)},
		{X: side.MulInt(3).DivInt(2), Y: across}, {X: side.DivInt(2), Y: across}, {Y: across.DivInt(2)},
	}
	peak := inches("6").Surd()
	half := peak.Div(measure.Root3())
	var want measure.Surd
	for _, c := range []struct {
		n  int64
		of piecing.Polygon
	}{
		{5, hexagon}, {4, diamond("3 1/8", 60)}, {8, diamond("3", 45)}, {3, slice(45)}, {2, slice(60)},
		{6, right(inches("4").Surd().Sub(piecing.HalfSquareAdd(quarter)))},
		{7, right(inches("6").Surd().Sub(piecing.QuarterSquareAdd(quarter)).Div(measure.Root2()))},
		{9, piecing.Polygon{{}, {X: half.MulInt(2)}, {X: half, Y: peak}}},
	} {
		area := c.of.Area()
		if area.Sign() < 0 {
			area = area.Neg()
		}
		want = want.Add(area.MulInt(c.n))
	}
	m := s.Part("field").Mosaic
	if !m.Known || !m.Exact() || !m.Most.Equal(want) {
		t.Errorf("%s, want %s", measure.FormatArea(m.Most, measure.In), measure.FormatArea(want, measure.In))
	}
	if !m.Wanted.Equal(measure.Area(inches("20").Surd(), inches("20").Surd())) {
		t.Error(measure.FormatArea(m.Wanted, measure.In))
	}
}
