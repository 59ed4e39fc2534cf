package xlsx

import (
	"yardproof/pipeline/report"
)

// block is what had better not be split over two pages: a table with its
// heading, or a chart.
type block struct {
	table       *report.Table // nil for a chart
	first, last int           // rows of the sheet
	rows        int           // the first that holds data
	begins      bool          // it begins a page
}

// Scales of printing. Type is of fontSize before it is scaled.
const (
	scaleStep     = 0.05
	smallestType  = 8.0 // in points, that anybody should have to read
	smallestScale = 0.1 // of the file format
)

// leastScale is the scale at which the type of a sheet is as small as it may be.
func leastScale(s *report.Sheet) float64 {
	return max(smallestType, float64(s.Type)) / fontSize
}

// usualHeight is what a row takes in points whose height is left to the program,
// which may make it less.
const usualHeight = 15.0

// pageHeight is the room in points on an unscaled page, between the margins: on
// A4 and on letter paper.
func pageHeight(wide bool) float64 {
	if wide {
		return 495
	}
	return 690
}

// breakPages begins a page with each block that would be split and fits on one
// page. One that fits on none goes on after a break only where little of it
// would stand on the page it begins on.
func (p *page) breakPages(h heading) {
	room := pageHeight(p.wide) / p.scale
	repeated := p.height(1, p.titleRows(h))
	used := 0.0
	p.pages = 1
	if len(p.blocks) > 0 {
		used = p.height(1, p.blocks[0].first-1)
	}
	for i, b := range p.blocks {
		height := p.height(b.first, b.last)
		splits := used+height > room
		if i > 0 && (b.begins || splits && (height+repeated <= room || used > room*2/3)) {
			p.breaks = append(p.breaks, b.first)
			used = repeated
			p.pages++
		}
		used += height
		for used > room {
			used -= room - repeated
			p.pages++
		}
	}
}

// height is what some rows take, in points.
func (p *page) height(first, last int) float64 {
	total := 0.0
	for _, l := range p.lines[first-1 : last] {
		total += p.rowHeight(l)
	}
	return total
}

func (p *page) rowHeight(l line) float64 {
	switch l.part {
	case blank:
		return usualHeight
	case space:
		return l.spaceTall()
	}
	if given := l.height(p); given > 0 {
		return given
	}
	return usualHeight
}

// titleRows is how many rows at the top of a sheet with several tables are
// repeated on every page.
func (p *page) titleRows(h heading) int {
	if h.proved {
		return 1
	}
	return 2
}

// endsLong reports whether the last table of a sheet fits on no page.
func (p *page) endsLong() bool {
	for i := len(p.blocks) - 1; i >= 0; i-- {
		if b := p.blocks[i]; b.table != nil {
			return p.height(b.first, b.last) > pageHeight(p.wide)/p.scale
		}
	}
	return false
}
