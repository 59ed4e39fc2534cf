package xlsx

import (
	"math"

	"yardproof/pipeline/report"
)

// block is what had better not be split over two pages: a table with its
// heading, or a chart.
type block struct {
	table       *report.Table // nil for a chart
	first, last int           // rows of the sheet
	rows        int           // the first that holds data
}

// largeType is how much larger than usual large type is.
const largeType = 1.5

// usualHeight is what a row takes in points whose height is left to the program,
// which may make it less.
const usualHeight = 15.0

// fixedScale is the scale at which the columns of a sheet fit its paper, in
// whole per cent, or 0 for a sheet that is left to fit itself: programs that
// do so take no notice of where pages are to begin, so only a sheet with one
// table and nothing else is.
func (p *page) fixedScale(s *report.Sheet, h heading) float64 {
	const least = 0.1 // of the file format
	if len(s.Tables) < 2 && len(s.Charts)+len(s.Pictures) == 0 {
		return 0
	}
	total := p.grid.between(0, len(p.grid.columns)) * p.size
	return max(least, min(1, math.Floor(100*pageWidth(h, p.wide)/total)/100))
}

// pageHeight is the room in points on an unscaled page, between the margins.
func pageHeight(h heading, wide bool) float64 {
	switch {
	case h.metric && wide:
		return 475
	case h.metric:
		return 720
	case wide:
		return 490
	}
	return 670
}

// breakPages begins a page with each block that would be split and fits on one
// page. One that fits on none goes on after a break only where little of it
// would stand on the page it begins on.
func (p *page) breakPages(h heading) {
	if p.scale == 0 {
		return
	}
	room := pageHeight(h, p.wide) / p.scale
	repeated := p.height(1, p.titleRows(h))
	used := 0.0
	if len(p.blocks) > 0 {
		used = p.height(1, p.blocks[0].first-1)
	}
	for i, b := range p.blocks {
		height := p.height(b.first, b.last)
		splits := used+height > room
		if i > 0 && splits && (height+repeated <= room || used > room*2/3) {
			p.breaks = append(p.breaks, b.first)
			used = repeated
		}
		used += height
		for used > room {
			used -= room - repeated
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
		return spaceHeight
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
func (p *page) endsLong(h heading) bool {
	for i := len(p.blocks) - 1; i >= 0 && p.scale > 0; i-- {
		if b := p.blocks[i]; b.table != nil {
			return p.height(b.first, b.last) > pageHeight(h, p.wide)/p.scale
		}
	}
	return false
}
