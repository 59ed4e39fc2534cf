package text

import (
	"strconv"
	"strings"

	"github.com/fatih/color"

	"yardproof/schema/source"
)

// tabStop is how far apart tabs are shown.
const tabStop = 4

// gutterDigits is the room for a line number, so that the excerpts of one
// finding stand below each other.
const gutterDigits = 5

// gap marks where a line goes on beside its excerpt.
const gap = "..."

// excerpt prints the line of a file and marks a part of it below.
func (p *printer) excerpt(e source.Excerpt, mark string, ink *color.Color) {
	if e.Line == 0 {
		return
	}
	number := strconv.Itoa(e.Line)
	blank := strings.Repeat(" ", max(gutterDigits, len(number)))
	number = blank[len(number):] + number
	text, from, to := draw(e, p.room(len(blank)+3))
	p.line(p.palette.quiet.Sprint(number+" |") + strings.TrimRight(" "+text, " "))
	p.line(p.palette.quiet.Sprint(blank+" |") + " " + strings.Repeat(" ", from) + ink.Sprint(strings.Repeat(mark, to-from)))
}

// glyph is a code point as a terminal shows it.
type glyph struct {
	text  string
	cells int
}

// draw lays the excerpt out in terminal cells, at most room of them unless
// room is 0. The marked part is the cells from..to, at least one.
func draw(e source.Excerpt, room int) (text string, from, to int) {
	glyphs := glyphsOf(e.Text)
	first, last := min(e.Start-1, len(glyphs)), min(max(e.End-1, e.Start), len(glyphs))
	low, high := window(glyphs, first, room)
	var s strings.Builder
	if e.CutLeft || low > 0 {
		s.WriteString(gap)
	}
	lead := s.Len()
	for _, g := range glyphs[low:high] {
		s.WriteString(g.text)
	}
	if e.CutRight || high < len(glyphs) {
		s.WriteString(gap)
	}
	from = lead + cells(glyphs[low:first])
	to = from + cells(glyphs[first:max(first, min(last, high))])
	return s.String(), from, max(to, from+1)
}

// glyphsOf turns tabs into blanks and looks every width up.
func glyphsOf(text string) []glyph {
	var glyphs []glyph
	column := 0
	for _, r := range text {
		g := glyph{string(r), cellsOf(r)}
		if r == '\t' {
			g.cells = tabStop - column%tabStop
			g.text = strings.Repeat(" ", g.cells)
		}
		column += g.cells
		glyphs = append(glyphs, g)
	}
	return glyphs
}

// window is the part of the line, around glyph number first, that fits.
func window(glyphs []glyph, first, room int) (low, high int) {
	if room <= 0 || cells(glyphs) <= room {
		return 0, len(glyphs)
	}
	room -= 2 * len(gap)
	for low < first && cells(glyphs[low:first]) > room/3 {
		low++
	}
	for low > 0 && cells(glyphs[low-1:]) <= room {
		low--
	}
	high = low
	for high < len(glyphs) && cells(glyphs[low:high+1]) <= room {
		high++
	}
	return low, high
}

func cells(glyphs []glyph) int {
	n := 0
	for _, g := range glyphs {
		n += g.cells
	}
	return n
}
