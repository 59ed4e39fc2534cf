package words

import (
	"math/big"
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// Write writes what to buy, how to cut and how to sew from the tables of a plan,
// for one size by its name, or for all where there is none; as Markdown or as
// plain text.
func Write(p *report.Plan, size string, markdown bool) string {
	w := &writer{markdown: markdown, units: p.Units, sheets: p.Sheets}
	w.heading(1, oneLine(p.Title))
	for _, name := range p.Sizes {
		if size == "" || size == name {
			w.size(name, len(p.Sizes) > 1)
		}
	}
	w.cautions()
	return w.b.String()
}

// writer makes lines of a plan's tables.
type writer struct {
	b        strings.Builder
	markdown bool
	units    measure.Unit
	sheets   []report.Sheet
}

// heading begins a section: of the pattern, of a size, of a kind of work, of a
// fabric.
func (w *writer) heading(level int, text string) {
	if w.b.Len() > 0 && !strings.HasSuffix(w.b.String(), "\n\n") {
		w.b.WriteString("\n")
	}
	switch {
	case w.markdown:
		w.b.WriteString(strings.Repeat("#", level) + " " + escaped(text) + "\n\n")
	case level < 3:
		text = oneLine(text)
		w.b.WriteString(text + "\n" + strings.Repeat([]string{"=", "-"}[level-1], len([]rune(text))) + "\n\n")
	default:
		w.b.WriteString(oneLine(text) + "\n\n")
	}
}

// item is a line of a list.
func (w *writer) item(text string) {
	if w.markdown {
		text = escaped(text)
	}
	w.b.WriteString("- " + text + "\n")
}

// escaped keeps what Markdown would take for its own marks.
func escaped(text string) string {
	return strings.NewReplacer("\\", "\\\\", "*", "\\*", "_", "\\_", "`", "\\`", "<", "&lt;", "|", "\\|", "[", "\\[", "#", "\\#").Replace(oneLine(text))
}

// oneLine leaves out what a terminal would obey.
func oneLine(text string) string {
	text = strings.Join(strings.Fields(strings.ToValidUTF8(text, "\ufffd")), " ")
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || r == '\u2028' || r == '\u2029' {
			return -1
		}
		return r
	}, text)
}

// size writes one size.
func (w *writer) size(name string, several bool) {
	if several {
		w.heading(2, strings.ToUpper(name[:1])+name[1:])
	}
	if finished := w.finished(name); finished != "" {
		w.item("Finished size: " + finished)
	}
	w.need(name)
	w.cutting(name)
	w.sewing(name)
}

func cell(r report.Row, i int) report.Cell {
	if i < len(r.Cells) {
		return r.Cells[i]
	}
	return report.Cell{}
}

// table finds a table of a sheet.
func (w *writer) table(sheet, id string) (report.Table, bool) {
	for _, s := range w.sheets {
		if s.ID != sheet {
			continue
		}
		for _, t := range s.Tables {
			if t.ID == id {
				return t, true
			}
		}
	}
	return report.Table{}, false
}

// text is what a cell shows.
func (w *writer) text(c report.Cell) string {
	switch c.Kind {
	case report.Text:
		return w.rounded(oneLine(c.Text))
	case report.Count:
		return strconv.FormatInt(c.Int, 10)
	case report.Length:
		return w.length(c)
	case report.Fabric:
		if l, ok := c.Exact.Length(); ok {
			return measure.FormatFabric(l, w.units)
		}
		return c.Exact.Rounded(w.units, c.Toward)
	}
	return ""
}

// length is a length as a ruler shows it: one that is on no ruler is rounded the
// way that its cell says, and marked.
func (w *writer) length(c report.Cell) string {
	if l, ok := c.Exact.Length(); ok {
		if text := l.Rounded(w.units, c.Toward); !strings.HasPrefix(text, "about ") {
			return text
		}
	}
	switch c.Toward {
	case measure.Up:
		return "at least " + c.Exact.CeilTo(w.grid()).Format(w.units)
	case measure.Down:
		return "no more than " + c.Exact.FloorTo(w.grid()).Format(w.units)
	}
	return "about " + c.Exact.NearestTo(w.grid()).Format(w.units)
}

// grid is the lines of a ruler.
func (w *writer) grid() measure.Length {
	if w.units == measure.Cm {
		return measure.Millimetre
	}
	return measure.Inch / 8
}

var decimals = regexp.MustCompile(`about ([0-9]+)\.([0-9]{3,4}) (in|cm)`)

// rounded puts the long decimals of a sentence on a ruler, to its nearest line.
func (w *writer) rounded(text string) string {
	return decimals.ReplaceAllStringFunc(text, func(found string) string {
		l, ok := new(big.Rat).SetString(strings.Fields(found)[1])
		if !ok {
			return found
		}
		ticks := measure.FromRat(l.Mul(l, big.NewRat(int64(w.units.Length()), 1)))
		return "about " + ticks.NearestTo(w.grid()).Format(w.units)
	})
}

// sides is width by length.
func (w *writer) sides(a, b report.Cell) string {
	return w.text(a) + " x " + w.text(b)
}

// finished is the finished size of a size, as a pattern prints it.
func (w *writer) finished(size string) string {
	top, _ := w.table("sewing-"+size, "top-"+size)
	for _, r := range top.Rows {
		if w.text(cell(r, 0)) != "finished" {
			continue
		}
		if _, nearest, ok := strings.Cut(w.text(cell(r, 1)), "to the nearest "); ok {
			_, nearest, _ = strings.Cut(nearest, "it is ")
			return "about " + nearest
		}
		return w.sides(cell(r, 3), cell(r, 4))
	}
	return ""
}

// need writes what to buy.
func (w *writer) need(size string) {
	t, ok := w.table("requirements", "to-buy")
	if !ok {
		return
	}
	w.heading(3, "You will need")
	for i, c := range t.Columns {
		if i < 2 || c.ID != size {
			continue
		}
		for _, r := range t.Rows {
			if amount := w.text(cell(r, i)); amount != "" {
				w.item(w.text(cell(r, 0)) + ": " + amount + soldAs(w.text(cell(r, 1))))
			}
		}
	}
	if t, ok := w.table("requirements", "tools"); ok {
		for _, r := range t.Rows {
			w.item(w.text(cell(r, 0)))
		}
	}
}

func soldAs(form string) string {
	if form == "" || strings.HasPrefix(form, "sheet") {
		return ""
	}
	return " (" + form + ")"
}

// cautions writes the safety lines, of all sizes.
func (w *writer) cautions() {
	t, ok := w.table("overview", "cautions")
	if !ok || len(t.Rows) == 0 {
		return
	}
	w.heading(2, "Take care")
	for _, r := range t.Rows {
		w.item(w.text(cell(r, 0)))
	}
	for _, foot := range t.Foot {
		w.item(foot)
	}
}
