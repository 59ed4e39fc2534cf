package svg

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"yardproof/exporters/internal/drawing"
	"yardproof/exporters/internal/figure"
	"yardproof/pipeline/report"
)

// Named is a picture and the name of its file, without extension.
type Named struct {
	Name    string
	Picture report.Picture
}

// Name names the pictures of sheets by their IDs. Two that would share a file,
// also where upper and lower case are one, are told apart by a number.
func Name(sheets []report.Sheet) []Named {
	var all []Named
	taken := map[string]bool{}
	for _, s := range sheets {
		for _, p := range s.Pictures {
			name := p.ID
			for n := 2; taken[strings.ToLower(name)]; n++ {
				name = p.ID + "-" + strconv.Itoa(n)
			}
			taken[strings.ToLower(name)] = true
			all = append(all, Named{name, p})
		}
	}
	return all
}

// Bytes is the picture as a file. One of a plan that is not proved says so
// across its top.
func Bytes(p report.Picture, proved bool) []byte {
	d := drawing.Lay(p, drawing.Page())
	w := &writer{}
	top := 0.0
	if !proved {
		top = markHeight
	}
	w.open(d, top)
	w.patterns(d.Shapes)
	if !proved {
		w.text(drawing.Text{At: drawing.Point{Y: -top / 2}, Text: figure.Unproved("this plan"), Size: markSize, Bold: true})
	}
	for _, s := range d.Shapes {
		w.shape(s)
	}
	for _, t := range d.Texts {
		w.text(t)
	}
	w.b.WriteString("</svg>\n")
	return w.b.Bytes()
}

// Of the mark, in millimetres.
const (
	markHeight = 7.0
	markSize   = 3.4
)

type writer struct {
	b     bytes.Buffer
	fills []drawing.Fill // that patterns are defined for, in order
}

// open begins the file. The drawing begins at 0 and the mark is above it.
func (w *writer) open(d drawing.Drawing, top float64) {
	fmt.Fprintf(&w.b, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 %s %s %s" role="img" aria-labelledby="title about" font-family="sans-serif">`+"\n",
		number(d.Width), number(d.Height+top), number(-top), number(d.Width), number(d.Height+top))
	fmt.Fprintf(&w.b, "<title id=\"title\">%s</title>\n<desc id=\"about\">%s</desc>\n", escaped(d.Title), escaped(d.About))
	fmt.Fprintf(&w.b, "<rect x=\"0\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"#ffffff\"/>\n", number(-top), number(d.Width), number(d.Height+top))
}

// patterns defines every hatching that is used.
func (w *writer) patterns(shapes []drawing.Shape) {
	for _, s := range shapes {
		if s.Fill == nil || s.Fill.Hatch == drawing.NoHatch || slices.Contains(w.fills, *s.Fill) {
			continue
		}
		w.fills = append(w.fills, *s.Fill)
		w.pattern(len(w.fills), *s.Fill)
	}
}

func (w *writer) pattern(n int, f drawing.Fill) {
	pitch := number(drawing.Pitch)
	fmt.Fprintf(&w.b, "<pattern id=\"hatch%d\" width=\"%s\" height=\"%s\" patternUnits=\"userSpaceOnUse\">", n, pitch, pitch)
	fmt.Fprintf(&w.b, "<rect width=\"%s\" height=\"%s\" fill=\"%s\"/>", pitch, pitch, colour(f.Ground))
	if f.Hatch == drawing.Dots {
		middle := number(drawing.Pitch / 2)
		fmt.Fprintf(&w.b, "<circle cx=\"%s\" cy=\"%s\" r=\"%s\" fill=\"%s\"/>", middle, middle, number(drawing.DotRadius), colour(f.Ink))
	}
	for _, l := range f.Hatch.Lines() {
		fmt.Fprintf(&w.b, "<path d=\"%s\" stroke=\"%s\" stroke-width=\"%s\"/>", path(l[:]), colour(f.Ink), number(drawing.HatchWidth))
	}
	w.b.WriteString("</pattern>\n")
}

func (w *writer) shape(s drawing.Shape) {
	if len(s.Points) == 0 {
		return
	}
	d := path(s.Points)
	if len(s.Points) > 2 {
		d += "Z"
	}
	fill, stroke, dashes := "none", "#000000", ""
	if s.Fill != nil {
		fill = w.fill(*s.Fill)
	}
	if s.Grey {
		stroke = "#808080"
	}
	if s.Dashed {
		dashes = ` stroke-dasharray="1 0.7"`
	}
	fmt.Fprintf(&w.b, "<path d=\"%s\" fill=\"%s\" stroke=\"%s\" stroke-width=\"%s\" stroke-linejoin=\"round\"%s/>\n", d, fill, stroke, number(s.Stroke), dashes)
}

func (w *writer) fill(f drawing.Fill) string {
	if f.Hatch == drawing.NoHatch {
		return colour(f.Ground)
	}
	return fmt.Sprintf("url(#hatch%d)", 1+slices.Index(w.fills, f))
}

// text writes a line of text. Its place is half way up its capitals, which are
// about 0.7 of an em high.
func (w *writer) text(t drawing.Text) {
	const half = 0.35
	at := t.At
	turn := ""
	if t.Upright {
		turn = fmt.Sprintf(` transform="rotate(-90 %s %s)"`, number(at.X), number(at.Y))
	}
	looks := ""
	if t.Bold {
		looks += ` font-weight="bold"`
	}
	if a := [...]string{drawing.Start: "", drawing.Middle: "middle", drawing.End: "end"}[t.Anchor]; a != "" {
		looks += ` text-anchor="` + a + `"`
	}
	if t.Backed {
		looks += fmt.Sprintf(` stroke="#ffffff" stroke-width="%s" stroke-linejoin="round" paint-order="stroke"`, number(t.Size/3))
	}
	fmt.Fprintf(&w.b, "<text x=\"%s\" y=\"%s\" font-size=\"%s\"%s%s>%s</text>\n",
		number(at.X), number(at.Y+half*t.Size), number(t.Size), looks, turn, escaped(t.Text))
}

// path is a line from point to point.
func path(points []drawing.Point) string {
	var b strings.Builder
	for i, p := range points {
		if i == 0 {
			b.WriteByte('M')
		} else {
			b.WriteByte('L')
		}
		b.WriteString(number(p.X) + " " + number(p.Y))
	}
	return b.String()
}

// number is short to write: a hundredth of a millimetre is less than printers
// can show.
func number(x float64) string {
	rounded := math.Round(x*100) / 100
	if rounded == 0 {
		return "0" // and not -0
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

func colour(c drawing.Colour) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

func escaped(text string) string {
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(text)) // a bytes.Buffer takes everything
	return b.String()
}
