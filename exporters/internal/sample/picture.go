package sample

import "yardproof/pipeline/report"

// Picture is a picture with every kind of shape and size: eleven fabrics, so
// that tones come again, of which two have a colour; all of it invented.
func Picture() report.Picture {
	p := report.Picture{ID: "quilt-throw", Title: "Quilt top, throw", About: "Eleven strips & a <border>."}
	panel := report.Panel{Width: 24, Height: 30}
	for i := range 11 {
		p.Legend = append(p.Legend, report.Key{Letter: string(rune('A' + i)), Name: "Strip & <tone>", Tone: i})
		panel.Shapes = append(panel.Shapes, report.Shape{
			Kind: report.Patch, Key: i, Points: rectangle(2, 2+2*float64(i), 10, 2),
			Labels: []string{p.Legend[i].Letter + ": a label that is far too long for a strip of this size, even in letters of a size that can hardly be read", p.Legend[i].Letter},
		})
	}
	p.Legend[1].Colour, p.Legend[2].Colour = "#f2ead6", "#1f2d4d"
	panel.Shapes = append(panel.Shapes,
		report.Shape{Kind: report.Patch, Key: 2, Points: []report.Point{{X: 12, Y: 2}, {X: 22, Y: 2}, {X: 22, Y: 12}}, Labels: []string{"C"}},
		report.Shape{Kind: report.LeftOver, Points: rectangle(12, 14, 10, 10), Labels: []string{"left over"}},
		report.Shape{Kind: report.Seam, Points: rectangle(3, 3, 8, 20)},
		report.Shape{Kind: report.Outline, Points: rectangle(0, 0, 24, 30)},
	)
	panel.Dimensions = []report.Dimension{
		{Edge: report.Top, To: 24, Text: "24 in", Tier: 1}, {Edge: report.Top, From: 2, To: 12, Text: "10 in"},
		{Edge: report.Left, To: 30, Text: "30 in"}, {Edge: report.Right, From: 2, To: 12, Text: "10 in"}, {Edge: report.Bottom, From: 2, To: 12, Text: "10 in"},
	}
	p.Panels = []report.Panel{panel}
	return p
}

// Units is a picture of several panels with captions and running lengths.
func Units() report.Picture {
	p := report.Picture{ID: "units-throw", Title: "What the quilt top is sewn from, throw", About: "Five units.",
		Legend: []report.Key{{Letter: "A", Name: "Border and binding"}}}
	for i := range 5 {
		side := float64(3 + i)
		p.Panels = append(p.Panels, report.Panel{
			Caption: []string{"unit, make 4", "should measure 3 1/2 in square, before it is sewn to anything else at all"}, Width: side, Height: side,
			Shapes: []report.Shape{{Kind: report.Patch, Points: rectangle(0, 0, side, side), Labels: []string{"A"}}},
			Dimensions: []report.Dimension{
				{Edge: report.Left, To: side / 2, Text: "1 1/2 in", Mark: true}, {Edge: report.Left, To: side, Text: "3 in", Mark: true},
			},
		})
	}
	return p
}

func rectangle(x, y, w, h float64) []report.Point {
	return []report.Point{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w, Y: y + h}, {X: x, Y: y + h}}
}
