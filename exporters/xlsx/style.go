package xlsx

import "github.com/xuri/excelize/v2"

// look is everything that decides the style of a cell.
type look struct {
	part   part
	number bool // to the right, not wrapped
	right  bool // text to the right
	box    bool // to be ticked
	beside bool // text with a column before it, whose numbers it must not touch
	input  bool
	format string // number format; empty for text
}

// The few greys and strengths the sheets are drawn with: all of them survive a
// black-and-white printer.
const (
	fontFamily = "Arial"
	fontSize   = 10
	black      = "000000"
	grey       = "A6A6A6"
	shade      = "E4E4E4"
	lightShade = "F2F2F2"
	markShade  = "CFCFCF"
)

// Border styles of the file format.
const (
	thinLine   = 1
	mediumLine = 2
	hairLine   = 7
)

// style is the number of a look in the workbook.
func (b *book) style(l look) (int, error) {
	if id, ok := b.styles[l]; ok {
		return id, nil
	}
	id, err := b.file.NewStyle(l.style())
	if err == nil {
		b.styles[l] = id
	}
	return id, err
}

func (l look) style() *excelize.Style {
	s := &excelize.Style{
		Font:      l.font(),
		Border:    l.borders(),
		Alignment: &excelize.Alignment{Vertical: "center", WrapText: !l.number, Horizontal: "left"},
	}
	switch {
	case l.box:
		s.Alignment.Horizontal = "center"
	case l.number || l.right:
		s.Alignment.Horizontal = "right"
		if l.input {
			s.Alignment.Indent = 1
		}
	case l.beside:
		s.Alignment.Indent = 1
	}
	switch l.part {
	case head:
		s.Alignment.Vertical, s.Alignment.WrapText = "bottom", true
	case unproved:
		s.Alignment.Vertical, s.Alignment.Horizontal = "center", "center"
	}
	if color := l.fill(); color != "" {
		s.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{color}}
	}
	if l.format != "" {
		s.CustomNumFmt = &l.format
	}
	if l.input || l.box {
		s.Protection = &excelize.Protection{Locked: false}
	}
	return s
}

func (l look) font() *excelize.Font {
	f := &excelize.Font{Family: fontFamily, Size: l.size(), Color: black}
	switch l.part {
	case title, subtitle, head, group, total, alert, unproved:
		f.Bold = true
	}
	return f
}

func (l look) size() float64 {
	switch l.part {
	case title:
		return 14
	case subtitle:
		return 11.5
	}
	return fontSize
}

func (l look) fill() string {
	switch l.part {
	case head:
		return shade
	case group:
		return lightShade
	}
	return ""
}

func (l look) borders() []excelize.Border {
	switch {
	case l.input:
		return box(mediumLine, black)
	case l.box:
		return box(thinLine, black)
	}
	switch l.part {
	case head:
		return []excelize.Border{{Type: "bottom", Style: thinLine, Color: black}}
	case body, group:
		return []excelize.Border{{Type: "bottom", Style: hairLine, Color: grey}}
	case total:
		return []excelize.Border{{Type: "top", Style: thinLine, Color: black}, {Type: "bottom", Style: thinLine, Color: black}}
	case alert:
		return []excelize.Border{{Type: "top", Style: mediumLine, Color: black}, {Type: "bottom", Style: mediumLine, Color: black}}
	case unproved:
		return box(mediumLine, black)
	}
	return nil
}

func box(style int, color string) []excelize.Border {
	var sides []excelize.Border
	for _, side := range []string{"left", "right", "top", "bottom"} {
		sides = append(sides, excelize.Border{Type: side, Style: style, Color: color})
	}
	return sides
}

// tall is the height in points of a line that wraps into n lines of text.
func (p part) tall(n int) float64 {
	switch p {
	case title:
		return 6 + 18*float64(n)
	case subtitle:
		return 4 + 15*float64(n)
	case unproved:
		return 7 + 13*float64(n)
	}
	return 2 + 13*float64(n)
}
