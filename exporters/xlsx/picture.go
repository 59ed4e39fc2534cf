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

// picture is a picture below the tables of a sheet.
type picture struct {
	row     int // of its upper edge
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
	cell := fmt.Sprintf("A%d", pic.row)
	if pic.breaks && pic.row > 1 {
		if err := b.file.InsertPageBreak(p.name, cell); err != nil {
			return err
		}
	}
	scale := p.onSheet(millimetres) * pixelsPerInch / (raster.PerMillimetre * millimetres)
	return b.file.AddPictureFromBytes(p.name, cell, &excelize.Picture{
		Extension: ".png", File: bytes,
		Format: &excelize.GraphicOptions{
			AltText: cut(pic.drawing.Title+". "+pic.drawing.About, excelize.TotalCellChars),
			ScaleX:  scale, ScaleY: scale, Positioning: "oneCell", LockAspectRatio: true,
		},
	})
}

// sortTypes puts the kinds of the archive's parts in order, in which the
// library does not keep them.
func (b *book) sortTypes() {
	kinds := b.file.ContentTypes.Defaults
	sort.Slice(kinds, func(i, j int) bool { return kinds[i].Extension < kinds[j].Extension })
}
