package xlsx

import (
	"fmt"
	_ "image/png" // the library reads a picture's size from its bytes
	"math"
	"sort"

	"github.com/xuri/excelize/v2"

	"yardproof/exporters/internal/drawing"
	"yardproof/exporters/internal/raster"
	"yardproof/pipeline/report"
)

// picture is a picture below the tables of a sheet, or beside one.
type picture struct {
	row     int     // of its upper edge
	column  int     // of its left edge, counted from 0
	top     float64 // of one beside a table, in points from the sheet's
	down    float64 // how far below the upper edge of its row it begins, in points
	drawing drawing.Drawing
	breaks  bool // it begins a page
}

// Heights of rows that pictures stand over. Points are the file format's unit.
const (
	spaceHeight   = 15.0
	pointsPerInch = 72
	millimetres   = 25.4 // to the inch
)

// paperFor is the room for a picture on a printed page, below the lines that
// are repeated on each.
func paperFor(wide bool) drawing.Paper {
	if wide {
		return drawing.Paper{Width: 236, Height: 150}
	}
	return drawing.Page()
}

// addPictures reserves rows for the pictures. Their first begins a page, and
// so does each that would not fit below the last.
func (p *page) addPictures(list []report.Picture) {
	paper := paperFor(p.wide)
	room := 0.0
	for _, r := range list {
		d := drawing.Lay(r, paper)
		pic := picture{row: len(p.lines) + 1, drawing: d, breaks: d.Height > room}
		if pic.breaks {
			room = paper.Height
		}
		rows := math.Ceil(p.onSheet(d.Height)*pointsPerInch/spaceHeight) + 1
		for range int(rows) {
			p.add(line{part: space})
		}
		room -= rows * spaceHeight / pointsPerInch * millimetres * p.scale
		p.pictures = append(p.pictures, pic)
	}
}

// besideGap is the room between a table and what stands beside it, in
// millimetres.
const besideGap = 4.0

// setBeside puts pictures beside their tables, each below the one before, and
// makes room for what is higher than the tables there.
func (p *page) setBeside() {
	if !p.hasNarrow() {
		return
	}
	lines, blocks := p.lines, p.blocks
	first := blocks[0].first - 1
	p.lines, p.blocks, p.heads = lines[:first:first], nil, nil
	low := 0.0 // how far pictures reach down, in points from the top
	for _, b := range blocks {
		if t := b.table; !t.Narrow || len(t.Beside) > 0 || t.Begins {
			p.padTo(low)
		}
		moved := len(p.lines) - (b.first - 1)
		p.lines = append(p.lines, lines[b.first-1:b.last]...)
		b.first, b.rows, b.last = b.first+moved, b.rows+moved, b.last+moved
		if b.rows > b.first && p.lines[b.rows-2].part == head {
			p.heads = append(p.heads, b.rows-1)
		}
		p.blocks = append(p.blocks, b)
		if len(b.table.Beside) > 0 {
			low = p.addBeside(b)
		}
	}
	p.padTo(low)
	p.anchor()
}

// addBeside puts the pictures of a table to its right and tells how far they
// reach.
func (p *page) addBeside(b block) (low float64) {
	perUnit := paperFor(p.wide).Width / (pageWidth(p.wide) / p.scale) // millimetres on paper
	width := perUnit*p.grid.between(p.grid.narrow, p.grid.span) - besideGap
	low = p.height(1, b.first) // below the blank line before it
	for _, beside := range b.table.Beside {
		d := drawing.Lay(beside.Picture, drawing.Paper{Width: width, Height: beside.Tall})
		p.pictures = append(p.pictures, picture{top: low, column: p.grid.narrow, drawing: d})
		low += p.onSheet(d.Height+besideGap) * pointsPerInch
	}
	return low
}

// anchor finds the rows in which pictures beside tables begin.
func (p *page) anchor() {
	for i := range p.pictures {
		pic := &p.pictures[i]
		at := 0.0
		for row, l := range p.lines {
			high := p.rowHeight(l)
			if at+high > pic.top || row == len(p.lines)-1 {
				pic.row, pic.down = row+1, min(pic.top-at, high)
				break
			}
			at += high
		}
	}
}

// padTo adds lines of space until they reach so far down, all to the block before.
func (p *page) padTo(low float64) {
	for short := low - p.height(1, len(p.lines)); short > 0; short = low - p.height(1, len(p.lines)) {
		p.add(line{part: space, tall: max(1, min(short, excelize.MaxRowHeight)), narrow: true})
		p.blocks[len(p.blocks)-1].last = len(p.lines)
	}
}

// onSheet is how many inches of the sheet print as so many millimetres.
func (p *page) onSheet(printed float64) float64 { return printed / millimetres / p.scale }

// place puts the pictures of a sheet on it.
func (b *book) place(p *page) error {
	for _, pic := range p.pictures {
		if b.heading.stop != nil && b.heading.stop() {
			return errStopped
		}
		if err := b.placeOne(p, pic); err != nil {
			return fmt.Errorf("picture %s: %w", pic.drawing.Title, err)
		}
	}
	return nil
}

func (b *book) placeOne(p *page, pic picture) error {
	const pixelsPerInch = 96 // of the library
	bytes, err := raster.PNG(pic.drawing)
	if err != nil {
		return err
	}
	cell := relative(pic.column+1, pic.row)
	if pic.breaks && pic.row > 1 {
		if err := b.file.InsertPageBreak(p.name, cell); err != nil {
			return err
		}
	}
	right := 0.0
	if pic.column > 0 {
		right = p.onSheet(besideGap)
	}
	scale := p.onSheet(millimetres) * pixelsPerInch / (raster.PerMillimetre * millimetres)
	return b.file.AddPictureFromBytes(p.name, cell, &excelize.Picture{
		Extension: ".png", File: bytes,
		Format: &excelize.GraphicOptions{
			AltText: cut(pic.drawing.Title+". "+pic.drawing.About, excelize.TotalCellChars),
			OffsetX: int(right * pixelsPerInch), OffsetY: int(pic.down / pointsPerInch * pixelsPerInch),
			ScaleX: scale, ScaleY: scale, Positioning: "oneCell", LockAspectRatio: true,
		},
	})
}

// sortTypes puts the kinds of the archive's parts in order, in which the
// library does not keep them.
func (b *book) sortTypes() {
	kinds := b.file.ContentTypes.Defaults
	sort.Slice(kinds, func(i, j int) bool { return kinds[i].Extension < kinds[j].Extension })
}
