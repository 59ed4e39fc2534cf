package drawing_test

import (
	"math"
	"strings"
	"testing"

	"yardproof/exporters/internal/drawing"
	"yardproof/exporters/internal/sample"
	"yardproof/pipeline/report"
)

// papers are the pages that the formats lay pictures out on, and a small one.
func papers() []drawing.Paper {
	return []drawing.Paper{drawing.Page(), {Width: 236, Height: 150}, {Width: 90, Height: 90}}
}

// Whatever is drawn lies on the paper, and texts do so by their estimated
// width.
func TestEverythingIsOnThePaper(t *testing.T) {
	for _, paper := range papers() {
		bare := report.Picture{ID: "bare", Panels: []report.Panel{{Width: 4, Height: 1, Shapes: []report.Shape{{
			Kind: report.Outline, Points: []report.Point{{}, {X: 4}, {X: 4, Y: 1}, {Y: 1}},
		}}}}}
		for _, p := range []report.Picture{sample.Picture(), sample.Units(), bare} {
			d := drawing.Lay(p, paper)
			if d.Height > paper.Height+0.01 || d.Width != paper.Width {
				t.Errorf("%s: %v x %v on %v", p.ID, d.Width, d.Height, paper)
			}
			for _, s := range d.Shapes {
				for _, q := range s.Points { // with the line along it, of which half lies outside
					on(t, p.ID, d, drawing.Point{X: q.X - s.Stroke/2, Y: q.Y - s.Stroke/2})
					on(t, p.ID, d, drawing.Point{X: q.X + s.Stroke/2, Y: q.Y + s.Stroke/2})
				}
			}
			for _, text := range d.Texts {
				on(t, p.ID+" "+text.Text, d, text.At)
				long := 0.5 * text.Size * float64(len([]rune(text.Text)))
				switch {
				case text.Upright:
				case text.Anchor == drawing.Start:
					on(t, p.ID+" end of "+text.Text, d, drawing.Point{X: text.At.X + 0.8*long, Y: text.At.Y})
				case text.Anchor == drawing.End:
					on(t, p.ID+" start of "+text.Text, d, drawing.Point{X: text.At.X - 0.8*long, Y: text.At.Y})
				}
			}
		}
	}
}

func on(t *testing.T, what string, d drawing.Drawing, p drawing.Point) {
	t.Helper()
	const close = 0.01
	if p.X < -close || p.Y < -close || p.X > d.Width+close || p.Y > d.Height+close {
		t.Errorf("%s: (%.2f, %.2f) is not on %v x %v", what, p.X, p.Y, d.Width, d.Height)
	}
}

// To scale: all patches of a picture are drawn as many times smaller, whatever
// panel they are in.
func TestOneScale(t *testing.T) {
	p := sample.Units()
	d := drawing.Lay(p, drawing.Page())
	var scales []float64
	panel := 0
	for _, s := range d.Shapes {
		if s.Fill != nil && panel < len(p.Panels) {
			scales = append(scales, (s.Points[1].X-s.Points[0].X)/p.Panels[panel].Width, (s.Points[2].Y-s.Points[1].Y)/p.Panels[panel].Height)
			panel++
		}
	}
	if len(scales) != 10 {
		t.Fatalf("%d scales", len(scales))
	}
	for _, s := range scales {
		if math.Abs(s-scales[0]) > 1e-9 || s <= 0 {
			t.Errorf("scales %v", scales)
		}
	}
}

// Of several labels the first that fits is written: here the short one.
func TestLabelsFit(t *testing.T) {
	d := drawing.Lay(sample.Picture(), drawing.Page())
	seen := map[string]int{}
	for _, text := range d.Texts {
		seen[text.Text]++
		if strings.Contains(text.Text, "far too long") {
			t.Errorf("%q was written", text.Text)
		}
	}
	for _, want := range []string{"A", "K", "left over", "24 in", "10 in", "30 in", "A: Strip & <tone>"} {
		if seen[want] == 0 {
			t.Errorf("%q is missing (%v)", want, seen)
		}
	}
}

// Eight tones are told apart without colours, and so are eight fabrics of one
// colour.
func TestTonesDiffer(t *testing.T) {
	for _, colour := range []string{"", "#1f2d4d", "#f2ead6"} {
		p := report.Picture{Panels: []report.Panel{{Width: 1, Height: 1}}}
		for i := range 8 {
			p.Legend = append(p.Legend, report.Key{Letter: "A", Tone: i, Colour: colour})
		}
		fills := map[drawing.Fill]bool{}
		for _, s := range drawing.Lay(p, drawing.Page()).Shapes {
			if s.Fill != nil {
				fills[*s.Fill] = true
				if s.Fill.Hatch != drawing.NoHatch && s.Fill.Ink == s.Fill.Ground {
					t.Errorf("%+v shows no hatching", s.Fill)
				}
			}
		}
		if len(fills) != 8 {
			t.Errorf("colour %q: %d fills", colour, len(fills))
		}
	}
}

// Characters that are not meant to be seen are taken out of every text.
func TestTextIsNeutral(t *testing.T) {
	p := sample.Units()
	hostile := "a\x00b\u202ec\ufffe\x1bd"
	p.Title, p.About, p.Legend[0].Name = hostile, hostile, hostile
	p.Panels[0].Caption, p.Panels[0].Shapes[0].Labels, p.Panels[0].Dimensions[0].Text = []string{hostile}, []string{hostile}, hostile
	d := drawing.Lay(p, drawing.Page())
	for _, text := range append(d.Texts, drawing.Text{Text: d.Title}, drawing.Text{Text: d.About}) {
		if strings.ContainsAny(text.Text, "\x00\x1b\u202e\ufffe") {
			t.Errorf("%q", text.Text)
		}
	}
}

// A picture of nothing, of a point and of a line does no harm.
func TestEmptyPictures(t *testing.T) {
	for _, p := range []report.Picture{
		{}, {Panels: []report.Panel{{}}}, {Panels: []report.Panel{{Width: 1, Shapes: []report.Shape{{Kind: report.Outline}}}}},
		{Panels: []report.Panel{{Height: 1, Shapes: []report.Shape{{Kind: report.LeftOver, Points: make([]report.Point, 4), Labels: []string{"x"}}}}}},
	} {
		d := drawing.Lay(p, drawing.Page())
		for _, s := range d.Shapes {
			for _, q := range s.Points {
				if math.IsNaN(q.X) || math.IsInf(q.X, 0) || math.IsNaN(q.Y) || math.IsInf(q.Y, 0) {
					t.Errorf("%+v: drawn at %v", p, q)
				}
			}
		}
	}
}
