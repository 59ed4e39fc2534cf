package tabulate

import (
	"math"
	"testing"

	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

const inch = measure.Inch

// hand is a cutter of a fabric made by hand: two kinds of pieces and a strip.
func hand(form plan.Form) cutter {
	f := &derive.Fabric{Fabric: &plan.Fabric{Form: form}, Width: 20 * inch}
	f.Usable = [2]plan.Length{{Length: 20 * inch}, {Length: 18 * inch}}
	text := func(s string) plan.Text { return plan.Text{Text: s} }
	f.Needs = []derive.Need{
		{For: text("star"), Across: 6 * inch, Along: 4 * inch, Count: 9},
		{For: text("dot"), Across: 2 * inch, Along: 2 * inch, Count: 8},
		{For: text("frame"), Strip: true, Across: 20 * inch, Along: 3 * inch, Count: 2, Last: 7 * inch},
	}
	s := &derive.Size{Plan: &plan.Plan{}, Of: &plan.Size{Name: text("only")}}
	return cutter{s: s, f: f, u: measure.In}
}

// shown is how much of a panel is covered, in square inches, and how many
// pieces of each kind it shows.
func shown(p report.Picture) (covered float64, pieces map[string]int) {
	pieces = map[string]int{}
	for _, panel := range p.Panels {
		for _, s := range panel.Shapes {
			if s.Kind != report.Patch && s.Kind != report.LeftOver {
				continue
			}
			low, high := s.Points[0], s.Points[2]
			covered += (high.X - low.X) * (high.Y - low.Y)
			if s.Kind == report.Patch {
				pieces[p.Legend[s.Key].Name]++
			}
		}
	}
	return covered, pieces
}

func wantShown(t *testing.T, what string, p report.Picture, area float64, want map[string]int) {
	t.Helper()
	covered, pieces := shown(p)
	if math.Abs(covered-area) > 1e-9 {
		t.Errorf("%s: %v sq in covered of %v", what, covered, area)
	}
	for name, n := range want {
		if pieces[name] != n {
			t.Errorf("%s: %d of %q, want %d (%v)", what, pieces[name], name, n, pieces)
		}
	}
}

// All that a row can hold: pieces lower than the strip, turned pieces, the last
// part of a joined strip, and columns cut once more. Layout by hand.
func TestRowsOfEveryKind(t *testing.T) {
	c := hand(plan.Yardage)
	c.layout = cutting.Layout{Length: 20 * inch, Rows: []cutting.Row{
		{Height: 4 * inch, Repeat: 1, Strip: 0}, // a repeat makes it higher than the 3 in asked for
		{Height: 6 * inch, Repeat: 1, Strip: -1, Parts: []cutting.Part{{Strip: 0, Width: 7 * inch}},
			Cuts: []cutting.Cut{{Piece: 0, Turned: true, Count: 2}, {Piece: 1, Count: 1}}},
		{Height: 5 * inch, Repeat: 2, Strip: -1, Cuts: []cutting.Cut{{Piece: 0, Count: 2}},
			Stacks: []cutting.Stack{{Width: 3 * inch, Count: 2, Cuts: []cutting.Cut{{Piece: 1, Count: 2}}}}},
	}}
	p, ok := c.boltPicture("id", "name")
	if !ok {
		t.Fatal("not drawn")
	}
	wantShown(t, "bolt", p.Picture, 20*20, map[string]int{"frame, strip 3 in": 2, "star, 6 x 4 in": 6, "dot, 2 in square": 9})
	for _, s := range p.Panels[0].Shapes {
		if s.Kind == report.Patch && s.Labels[0] == "b: 4 x 6" && s.Points[2].X-s.Points[0].X != 4 {
			t.Errorf("a turned piece is drawn %v wide", s.Points[2].X-s.Points[0].X)
		}
	}
}

// What is cut lengthwise leaves a panel beside it with strips of its own. Layout
// by hand: two of 6 x 4 in across leave 8 in of 20, and below them in the band
// of 4 in a strip of 2 in holds three squares.
func TestPanelsBesideAreDrawn(t *testing.T) {
	c := hand(plan.Yardage)
	c.layout = cutting.Layout{Length: 4 * inch, Rows: []cutting.Row{
		{Height: 4 * inch, Repeat: 1, Strip: -1, Cuts: []cutting.Cut{{Piece: 0, Count: 2}},
			Panel: []cutting.Row{{Height: 2 * inch, Repeat: 1, Strip: -1, Cuts: []cutting.Cut{{Piece: 1, Count: 3}}}}},
	}}
	p, ok := c.boltPicture("id", "name")
	if !ok {
		t.Fatal("not drawn")
	}
	wantShown(t, "bolt", p.Picture, 20*4, map[string]int{"star, 6 x 4 in": 2, "dot, 2 in square": 3})
	for _, s := range p.Panels[0].Shapes {
		if s.Kind == report.Patch && s.Labels[0] == "b: 2 x 2" && s.Points[0].X < 12 {
			t.Errorf("a square beside lies at %v in", s.Points[0].X)
		}
	}
	var list report.Table
	c.yardage(&list)
	if n := len(list.Rows); n != 2 || list.Rows[0].Cells[2].Text != "Cut along the fabric: 2 rectangles 6 x 4 in. Cut the panel left beside, 8 in wide, into the strips that follow." ||
		list.Rows[1].Cells[5].Text != "beside" || list.Rows[1].Cells[4].Int != 3 {
		t.Errorf("%+v", list.Rows)
	}
}

// A sheet whose first cuts run along it is drawn with its strips upright, and
// every piece keeps its sides across and along the fabric.
func TestSheetsCutAlong(t *testing.T) {
	for _, turned := range []bool{false, true} {
		c := hand(plan.Precut)
		high := 4 * inch
		if turned {
			high = 6 * inch // across the sheet
		}
		c.sheets = cutting.SheetLayout{Count: 3, Sheets: []cutting.CutSheet{
			{Repeat: 2, Turned: turned, Rows: []cutting.Row{{Height: high, Repeat: 2, Strip: -1, Cuts: []cutting.Cut{{Piece: 0, Count: 3}, {Piece: 1, Count: 1}}}}},
			{Repeat: 1, Rows: []cutting.Row{{Height: 18 * inch, Repeat: 1, Strip: 0}}}, // used as it comes
		}}
		p, ok := c.packPicture("id", "name")
		if !ok || len(p.Panels) != 1 || p.Panels[0].Caption[0] != "cut 2 pieces so" {
			t.Fatalf("panels %+v", p.Panels)
		}
		wantShown(t, "sheet", p.Picture, 20*18, map[string]int{"star, 6 x 4 in": 6, "dot, 2 in square": 2})
		for _, s := range p.Panels[0].Shapes {
			w, h := s.Points[2].X-s.Points[0].X, s.Points[2].Y-s.Points[0].Y
			if s.Kind == report.Patch && p.Legend[s.Key].Name == "star, 6 x 4 in" && (w != 6 || h != 4) {
				t.Errorf("turned %v: a piece of 6 x 4 in is drawn %v x %v", turned, w, h)
			}
		}
	}
}

// A layout with more pieces than anybody could find is not drawn, nor is one
// without any.
func TestTooMuchOrNothingIsNotDrawn(t *testing.T) {
	c := hand(plan.Yardage)
	if _, ok := c.boltPicture("id", "name"); ok {
		t.Error("an empty layout was drawn")
	}
	c.layout = cutting.Layout{Length: 2000 * inch, Rows: []cutting.Row{{Height: 2 * inch, Repeat: 1000, Strip: -1, Cuts: []cutting.Cut{{Piece: 1, Count: 10}}}}}
	if !c.crowded() || c.pictures("", "") != nil {
		t.Error("10000 pieces were drawn")
	}
	c.layout.Rows[0].Repeat = 100
	if c.crowded() || len(c.pictures("", "")) != 2 {
		t.Errorf("%d pictures of 1000 pieces", len(c.pictures("", "")))
	}
}

// A long layout goes on in further panels, at the ends of strips, and keeps
// its running length.
func TestLongLayoutsGoOn(t *testing.T) {
	c := hand(plan.Yardage)
	c.layout = cutting.Layout{Length: 90 * inch, Rows: []cutting.Row{{Height: 3 * inch, Repeat: 30, Strip: 0}}}
	p, ok := c.boltPicture("id", "name")
	if !ok || len(p.Panels) != 5 {
		t.Fatalf("%d panels", len(p.Panels))
	}
	running := ""
	for _, panel := range p.Panels {
		if panel.Height != 18 { // six strips; a seventh does not fit 20 in
			t.Errorf("a panel is %v long", panel.Height)
		}
		for _, d := range panel.Dimensions {
			if d.Mark {
				running = d.Text
			}
		}
	}
	if running != "90 in" {
		t.Errorf("it ends at %s", running)
	}
}
