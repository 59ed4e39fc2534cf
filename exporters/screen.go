package exporters

import (
	"fmt"
	"io"
	"strings"

	"yardproof/exporters/text"
)

// Screen shows a text on a terminal and, when it changes, draws only the rows
// that have changed. It has a page of the terminal to itself until it is closed.
type Screen struct {
	out           io.Writer
	width, height int
	shown         []string // rows
}

// The control functions used (ECMA-48), and the private mode that terminals
// have in common for a second page.
const (
	secondPage = "\x1b[?1049h\x1b[?25l\x1b[H\x1b[2J"
	firstPage  = "\x1b[?25h\x1b[?1049l"
	clearPage  = "\x1b[2J"
	clearRest  = "\x1b[K"
)

// OpenScreen takes the terminal over.
func OpenScreen(out io.Writer) (*Screen, error) {
	_, err := io.WriteString(out, secondPage)
	return &Screen{out: out}, err
}

// Close gives the terminal back as it was.
func (s *Screen) Close() error {
	_, err := io.WriteString(s.out, firstPage)
	return err
}

// Draw shows a text from the top, and a line in the last row. What there is no
// room for is counted.
func (s *Screen) Draw(page, last string, width, height int) error {
	var out strings.Builder
	if width != s.width || height != s.height {
		s.width, s.height, s.shown = width, height, nil
		out.WriteString(clearPage)
	}
	rows := s.rows(page, last)
	for i := range max(len(rows), len(s.shown)) {
		row, old := at(rows, i), at(s.shown, i)
		if row != old {
			fmt.Fprintf(&out, "\x1b[%d;1H%s%s", i+1, row, clearRest)
		}
	}
	s.shown = rows
	_, err := io.WriteString(s.out, out.String())
	return err
}

func at(rows []string, i int) string {
	if i < len(rows) {
		return rows[i]
	}
	return ""
}

// rows lays a page out in as many rows as the terminal has.
func (s *Screen) rows(page, last string) []string {
	var rows []string
	for line := range strings.SplitSeq(strings.TrimRight(page, "\n"), "\n") {
		rows = append(rows, text.Fold(line, s.width)...)
	}
	room := max(s.height-1, 1)
	if len(rows) > room {
		left := len(rows) - room + 1
		rows = append(rows[:room-1], text.Fold(fmt.Sprintf("... and %d more lines, for which the window is too low", left), s.width)[0])
	}
	for len(rows) < room {
		rows = append(rows, "")
	}
	return append(rows, text.Fold(last, s.width)[0])
}
