package drawing

import "yardproof/pipeline/report"

// Paper is the room that a picture has.
type Paper struct{ Width, Height float64 }

// Page fits both A4 and letter paper in portrait, with margins and a header.
func Page() Paper { return Paper{180, 220} }

// Room between things.
const (
	gap        = 4.0
	lineHeight = 1.35 // of text, in its size
)

// Lay lays a picture out: its title, its panels row by row at one scale, and
// what its letters stand for.
func Lay(p report.Picture, paper Paper) Drawing {
	d := Drawing{Title: neutral(p.Title), About: neutral(p.About), Width: paper.Width}
	keys, y := legendBox{}, 0.0
	if !p.Plain {
		keys, y = legend(p.Legend, paper.Width), d.heading()
	}
	g := arrange(p.Panels, Paper{paper.Width, paper.Height - y - keys.height})
	for first := 0; first < len(p.Panels); first += g.columns {
		row := p.Panels[first:min(len(p.Panels), first+g.columns)]
		x, high := 0.0, 0.0
		for i := range row {
			b := boxOf(&row[i], g.scale, g.width)
			d.panel(&row[i], p.Legend, g.scale, Point{x + b.left, y + b.top}, b)
			x += max(g.width, b.width()) + gap
			high = max(high, b.height())
		}
		y += high + gap
	}
	if !p.Plain {
		d.keys(keys, p.Legend, y)
	}
	d.Height = y + keys.height
	return d
}

// heading writes the title and tells how much room it takes.
func (d *Drawing) heading() float64 {
	const boldWider = 1.07
	if d.Title == "" {
		return 0
	}
	y := titleSize / 2
	for _, text := range wrap(d.Title, boldWider*titleSize, d.Width) {
		d.text(Point{0, y}, Start, titleSize, text).Bold = true
		y += titleSize * lineHeight
	}
	return y
}

// arrangement is how panels share the page.
type arrangement struct {
	columns int
	width   float64 // of a column
	scale   float64 // millimetres to the picture's unit
}

const mostColumns = 4

// arrange finds the number of columns at which the panels, at one scale, can
// be largest. Panels with a caption are small things, and not blown up to the
// whole page.
func arrange(panels []report.Panel, room Paper) arrangement {
	best := arrangement{columns: 1}
	for n := 1; n <= min(mostColumns, max(len(panels), 1)); n++ {
		share := n
		if captioned(panels) {
			share = max(share, 2)
		}
		a := arrangement{columns: n, width: (room.Width - float64(share-1)*gap) / float64(share)}
		a.scale = min(a.across(panels), a.down(panels, room.Height))
		if a.scale > best.scale {
			best = a
		}
	}
	return best
}

func captioned(panels []report.Panel) bool {
	for _, p := range panels {
		if len(p.Caption) > 0 {
			return true
		}
	}
	return false
}

// across is the scale at which every panel fits its column.
func (a arrangement) across(panels []report.Panel) float64 {
	scale := -1.0
	for i := range panels {
		b := boxOf(&panels[i], 0, a.width)
		if s := (a.width - b.width()) / panels[i].Width; scale < 0 || s < scale {
			scale = s
		}
	}
	return max(scale, 0)
}

// down is the scale at which all rows fit the page.
func (a arrangement) down(panels []report.Panel, room float64) float64 {
	high := 0.0
	for first := 0; first < len(panels); first += a.columns {
		fixed, most := 0.0, 0.0
		for i := first; i < min(len(panels), first+a.columns); i++ {
			fixed = max(fixed, boxOf(&panels[i], 0, a.width).height())
			most = max(most, panels[i].Height)
		}
		room -= fixed + gap
		high += most
	}
	return max(room/max(high, 1e-9), 0)
}

// box is the room that a panel takes.
type box struct {
	left, right, top, bottom float64 // of sizes and caption
	inner                    Paper
	caption                  []string
}

func (b box) width() float64  { return b.left + b.inner.Width + b.right }
func (b box) height() float64 { return b.top + b.inner.Height + b.bottom }

func boxOf(p *report.Panel, scale, column float64) box {
	const half = outlineLine / 2 // of the line round what is drawn
	b := box{left: half, right: half, top: half, bottom: half, inner: Paper{p.Width * scale, p.Height * scale}}
	for _, m := range p.Dimensions {
		need := tierAt(m.Tier) + 2*tickLength
		switch m.Edge {
		case report.Top:
			b.top = max(b.top, need+sizeSize)
		case report.Bottom:
			b.bottom = max(b.bottom, need+sizeSize)
		case report.Right:
			b.right = max(b.right, need+width(m.Text, sizeSize))
		case report.Left:
			if m.Mark {
				need += width(m.Text, sizeSize) - sizeSize
			}
			b.left = max(b.left, need+sizeSize)
		}
	}
	for _, text := range p.Caption {
		b.caption = append(b.caption, wrap(neutral(text), captionSize, column-b.left)...)
	}
	b.bottom += float64(len(b.caption)) * captionSize * lineHeight
	return b
}

func (d *Drawing) text(at Point, a Anchor, size float64, text string) *Text {
	d.Texts = append(d.Texts, Text{At: at, Text: text, Size: size, Anchor: a})
	return &d.Texts[len(d.Texts)-1]
}

func (d *Drawing) line(a, b Point, stroke float64) {
	d.Shapes = append(d.Shapes, Shape{Points: []Point{a, b}, Stroke: stroke})
}
