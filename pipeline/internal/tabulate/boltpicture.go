package tabulate

import (
	"fmt"

	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// A long layout goes on in further panels: one as long as all of it would be
// too narrow to read.
const (
	longest = 2 // of one panel, in usable widths
	fold    = 1 // from where on the next begins, where there are several
)

// bolt draws a layout from the top of the fabric down.
type bolt struct {
	*frame
	y       measure.Length // in the panel
	running measure.Length // from the cut end
	room    measure.Length // in a panel
}

// boltPicture draws a layout on yardage, to scale: every strip across the
// usable width with what is cut from it, what is left over, and the running
// length along the edge. ok is false where there is nothing to draw.
func (c cutter) boltPicture(id, name string) (f *frame, ok bool) {
	l := c.layout
	b := &bolt{frame: c.frame(id, name)}
	b.wide = c.f.Width
	end := measure.Length(0)
	if l.Length > 0 {
		end = c.f.SquaringUp.Length
	}
	total := end + l.Length + c.f.Panels
	if b.room = total; total > longest*b.wide {
		b.room = fold * b.wide
	}
	b.begin()
	if end > 0 {
		b.band(end, "", func() { b.rectangle(report.LeftOver, 0, 0, b.y, b.wide, end, "straighten the end") })
	}
	for _, r := range l.Rows {
		for range r.Repeat {
			b.band(r.Height, r.Height.BareRounded(b.Unit, measure.Up), func() { b.row(r, b.y) })
		}
	}
	b.backing()
	if b.running == 0 {
		return b.frame, false
	}
	b.end()
	b.About = fmt.Sprintf("How to cut %s of %s for size %s, usable width %s, drawn to scale with the running length on the left; grey is left over.",
		total.AsCut(b.Unit), kit.Title(c.f), c.s.Of.Name.Text, b.wide.AsThere(b.Unit))
	return b.frame, true
}

func (b *bolt) begin() { b.panel, b.y = report.Panel{Width: b.length(b.wide)}, 0 }

func (b *bolt) end() {
	b.panel.Height = b.length(b.y)
	b.panel.Dimensions = append(b.panel.Dimensions, report.Dimension{Edge: report.Top, To: b.length(b.wide), Text: b.wide.AsThere(b.Unit)})
	b.Panels = append(b.Panels, b.panel)
}

// band draws what is cut off next, beginning another panel where the last one
// is full.
func (b *bolt) band(height measure.Length, size string, draw func()) {
	if b.y > 0 && b.y+height > b.room {
		b.end()
		b.begin()
	}
	draw()
	from := b.y
	b.y += height
	b.running += height
	b.panel.Dimensions = append(b.panel.Dimensions,
		report.Dimension{Edge: report.Left, To: b.length(b.y), Text: b.running.AsCut(b.Unit), Mark: true})
	if size != "" {
		b.panel.Dimensions = append(b.panel.Dimensions, report.Dimension{Edge: report.Right, From: b.length(from), To: b.length(b.y), Text: size})
	}
}

// backing draws the panels of the backing, which take the full width.
func (b *bolt) backing() {
	d := b.c.s.Backing
	if b.c.f.Panels == 0 || d == nil || !d.Known {
		return
	}
	each := d.Each.CeilTo(measure.Tick)
	key := b.key(backing, "backing panel, "+each.AsCut(b.Unit)+" long")
	for range d.Panels {
		b.band(each, each.BareRounded(b.Unit, measure.Up), func() {
			b.rectangle(report.Patch, key, 0, b.y, b.wide, each, b.Legend[key].Letter+": "+b.Legend[key].Name, b.Legend[key].Letter)
		})
	}
}

// packPicture draws every different way in which the pieces of a pack are cut,
// to scale. ok is false where none is cut up.
func (c cutter) packPicture(id, name string) (f *frame, ok bool) {
	f = c.frame(id, name)
	across, along := c.f.StripLength().Length, c.f.StripWidth().Length
	for _, s := range c.sheets.Sheets {
		if !whole(s, along) {
			f.sheet(s, across, along)
		}
	}
	f.About = fmt.Sprintf("How to cut the pieces of %s for size %s, each different piece drawn to scale; grey is left over.", kit.Title(c.f), c.s.Of.Name.Text)
	return f, len(f.Panels) > 0
}

// whole reports whether a sheet is used as it comes.
func whole(s cutting.CutSheet, along measure.Length) bool {
	return len(s.Rows) == 1 && s.Rows[0].Strip >= 0 && s.Rows[0].Repeat == 1 && s.Rows[0].Height == along
}

func (f *frame) sheet(s cutting.CutSheet, across, along measure.Length) {
	f.panel = report.Panel{Width: f.length(across), Height: f.length(along), Caption: []string{"cut " + say.Many(int64(s.Repeat), "piece") + " so"}}
	f.turned, f.wide = s.Turned, across
	high := along
	if s.Turned {
		f.wide, high = along, across
	}
	v := measure.Length(0)
	for _, r := range s.Rows {
		for range r.Repeat {
			f.row(r, v)
			v += r.Height
		}
	}
	f.leftOver(0, v, f.wide, high-v)
	f.panel.Shapes = append(f.panel.Shapes, report.Shape{Kind: report.Outline, Points: []report.Point{
		{}, {X: f.panel.Width}, {X: f.panel.Width, Y: f.panel.Height}, {Y: f.panel.Height},
	}})
	f.panel.Dimensions = []report.Dimension{
		{Edge: report.Top, To: f.panel.Width, Text: across.AsThere(f.Unit)},
		{Edge: report.Left, To: f.panel.Height, Text: along.AsThere(f.Unit)},
	}
	f.Panels = append(f.Panels, f.panel)
}
