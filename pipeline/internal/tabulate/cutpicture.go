package tabulate

import (
	"fmt"

	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// mostShapes is how many shapes a cutting layout is drawn with at most: with
// more, nobody could find a piece in it.
const mostShapes = 4000

// mostLengths is how many panels of a layout stand on a page and can be read.
const mostLengths = 6

// pictures are the drawn layout of the fabric, on as many pages as it takes.
// Which says of several layouts which it is.
func (c cutter) pictures(whichID, which string) []report.Picture {
	if c.f.Err != nil || c.crowded() {
		return nil
	}
	size := c.s.Of.Name.Text
	id, name := "cutting-"+size+"-"+c.f.Role.Text+whichID, "Cutting layout, "+size+": "+kit.Title(c.f)+which
	if p, _, ok := c.drawing(id, name); ok {
		return paged(p, mostLengths)
	}
	return nil
}

// drawing is the layout as one picture, and the letters in it by what is cut.
func (c cutter) drawing(id, name string) (p report.Picture, letters map[int]string, ok bool) {
	draw := c.boltPicture
	if c.f.Form == plan.Precut {
		draw = c.packPicture
	}
	f, ok := draw(id, name)
	letters = map[int]string{}
	for about, at := range f.keys {
		letters[about] = f.Legend[at].Letter
	}
	return f.Picture, letters, ok
}

// frame is a length of fabric, or a sheet, that strips are drawn on. Strips run
// along u and lie one below the other along v: u is across the fabric unless
// turned.
type frame struct {
	*sketch
	c              cutter
	pieces, strips []derive.Need
	turned         bool
	wide           measure.Length // of every strip
	panel          report.Panel
}

func (c cutter) frame(id, title string) *frame {
	f := &frame{sketch: newSketch(id, title, c.u), c: c}
	f.pieces, f.strips = c.needs()
	return f
}

// rectangle draws fabric from (u, v).
func (f *frame) rectangle(kind report.ShapeKind, key int, u, v, du, dv measure.Length, labels ...string) {
	if du <= 0 || dv <= 0 {
		return
	}
	if f.turned {
		u, v, du, dv = v, u, dv, du
	}
	x, y, right, bottom := f.length(u), f.length(v), f.length(u+du), f.length(v+dv)
	f.panel.Shapes = append(f.panel.Shapes, report.Shape{
		Kind: kind, Key: key, Labels: labels,
		Points: []report.Point{{X: x, Y: y}, {X: right, Y: y}, {X: right, Y: bottom}, {X: x, Y: bottom}},
	})
}

// leftOver draws fabric that no piece is cut from.
func (f *frame) leftOver(u, v, du, dv measure.Length) {
	f.rectangle(report.LeftOver, 0, u, v, du, dv, "left over "+du.BareRounded(f.Unit, measure.Down)+" x "+dv.AsThere(f.Unit), du.BareRounded(f.Unit, measure.Down)+" x "+dv.BareRounded(f.Unit, measure.Down))
}

// backing is the key of the backing's panels. Pieces are numbered from 0,
// strips from -1 down.
const backing = 1 << 30

// key enters what is cut under a small letter.
func (f *frame) key(about int, name string) int {
	return f.sketch.key(about, func() report.Key {
		return report.Key{Letter: letter(len(f.Legend), 'a'), Name: name, Tone: len(f.Legend)}
	})
}

func (f *frame) pieceKey(i int) int {
	n := f.pieces[i]
	return f.key(i, fmt.Sprintf("%s, %s%s", n.For.Text, extents(n.Across, n.Along, f.Unit), derive.Halved(n.Halving)+usedOf(n)))
}

func (f *frame) stripKey(i int) int {
	n := f.strips[i]
	return f.key(-1-i, fmt.Sprintf("%s, strip %s", n.For.Text, n.Along.AsCut(f.Unit)))
}

func extents(a, b measure.Length, u measure.Unit) string {
	if a == b {
		return a.AsCut(u) + " square"
	}
	return a.BareRounded(u, measure.Up) + " x " + b.AsCut(u)
}

// row draws one strip of a layout, at v. The strip is what is cut off, which
// may be higher than what is cut from it.
func (f *frame) row(r cutting.Row, v measure.Length) { f.strip(r, 0, v) }

// strip draws a strip that begins at u: further in than 0 in the panel beside
// lengthwise cuts.
func (f *frame) strip(r cutting.Row, u, v measure.Length) {
	if r.Strip >= 0 {
		key, high := f.stripKey(r.Strip), f.strips[r.Strip].Along
		f.rectangle(report.Patch, key, 0, v, f.wide, high, f.Legend[key].Letter+": "+f.Legend[key].Name, f.Legend[key].Letter)
		f.leftOver(0, v+high, f.wide, r.Height-high)
		return
	}
	for _, p := range r.Parts {
		key := f.stripKey(p.Strip)
		f.cell(key, u, v, p.Width, f.strips[p.Strip].Along, r.Height, p.Width.AsCut(f.Unit))
		u += f.along(p.Width, f.strips[p.Strip].Along)
	}
	for _, cut := range r.Cuts {
		u = f.cuts(cut, u, v, r.Height)
	}
	for _, s := range r.Stacks {
		u = f.stacks(s, u, v, r.Height)
	}
	below := v
	for _, q := range r.Panel {
		for range q.Repeat {
			f.strip(q, u, below)
			below += q.Height
		}
	}
	f.leftOver(u, below, f.wide-u, v+r.Height-below)
}

// along is the extent along the strip of a piece given across and along the
// fabric.
func (f *frame) along(across, along measure.Length) measure.Length {
	if f.turned {
		return f.c.f.Reserved(along)
	}
	return across
}

// cell draws a piece given across and along the fabric, and what the strip is
// higher than it.
func (f *frame) cell(key int, u, v, across, along, height measure.Length, size string) {
	if f.turned {
		across, along = along, across
	}
	letter := f.Legend[key].Letter
	f.rectangle(report.Patch, key, u, v, across, along, letter+": "+size, letter)
	f.leftOver(u, v+along, across, height-along)
}

// sides are the extents of a cut across and along the fabric.
func (f *frame) sides(cut cutting.Cut) (across, along measure.Length) {
	n := f.pieces[cut.Piece]
	if cut.Turned {
		return n.Along, n.Across
	}
	return n.Across, n.Along
}

func (f *frame) cuts(cut cutting.Cut, u, v, height measure.Length) measure.Length {
	across, along := f.sides(cut)
	key := f.pieceKey(cut.Piece)
	for range cut.Count {
		f.cell(key, u, v, across, along, height, across.BareRounded(f.Unit, measure.Up)+" x "+along.BareRounded(f.Unit, measure.Up))
		u += f.along(across, along)
	}
	return u
}

// stacks draws equal columns of a strip.
func (f *frame) stacks(s cutting.Stack, u, v, height measure.Length) measure.Length {
	for range s.Count {
		down := v
		for _, cut := range s.Cuts {
			across, along := f.sides(cut)
			key := f.pieceKey(cut.Piece)
			high := across + along - f.along(across, along)
			for range cut.Count {
				f.cell(key, u, down, across, along, high, across.BareRounded(f.Unit, measure.Up)+" x "+along.BareRounded(f.Unit, measure.Up))
				f.leftOver(u+f.along(across, along), down, s.Width-f.along(across, along), high)
				down += high
			}
		}
		f.leftOver(u, down, s.Width, v+height-down)
		u += s.Width
	}
	return u
}

// crowded reports whether a layout has more pieces than can be drawn.
func (c cutter) crowded() bool {
	n := shapesOf(c.layout.Rows)
	for _, s := range c.sheets.Sheets {
		n += shapesOf(s.Rows)
	}
	return c.f.Err == nil && n > mostShapes
}

// shapesOf is about how many shapes rows are drawn with.
func shapesOf(rows []cutting.Row) int {
	n := 0
	for _, r := range rows {
		each := 2 + len(r.Parts)
		for _, cut := range r.Cuts {
			each += cut.Count
		}
		for _, s := range r.Stacks {
			for _, cut := range s.Cuts {
				each += s.Count * (1 + cut.Count)
			}
		}
		each += shapesOf(r.Panel)
		if n += each * r.Repeat; n > mostShapes {
			return n
		}
	}
	return n
}
