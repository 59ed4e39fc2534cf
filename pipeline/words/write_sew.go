package words

import (
	"strings"

	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
)

// sewing writes what is sewn and in what order.
func (w *writer) sewing(size string) {
	parts, ok := w.table("sewing-"+size, "parts-"+size)
	if ok && len(parts.Rows) > 0 {
		w.heading(3, "Sewing")
		for _, r := range parts.Rows {
			w.item(w.part(r))
		}
	}
	top, ok := w.table("sewing-"+size, "top-"+size)
	if !ok {
		return
	}
	w.heading(3, "Putting it together")
	if t, ok := w.table("sewing-"+size, "arrangement-"+size); ok {
		for _, lead := range t.Lead {
			w.item(lead)
		}
	}
	before := ""
	for _, r := range top.Rows {
		if step := w.text(cell(r, 0)); step != "" {
			before = step
		}
		w.item(w.step(before, r))
	}
}

// part is a row of the parts: how it is made, how many, and what it measures.
func (w *writer) part(r report.Row) string {
	text := w.text(cell(r, 0)) + ": " + w.text(cell(r, 1)) + ". Make " + w.text(cell(r, 2)) + "."
	if cell(r, 4).Kind == report.Length {
		text += " Each should measure " + w.sides(cell(r, 4), cell(r, 5)) + ", unfinished."
	}
	return text
}

// pieces are what the rows of the top count, where it is not strips.
var pieces = map[string]string{"blocks": "block", "side triangles": "square", "corner triangles": "square", "cornerstones": "square", "sashing": "piece"}

// step is a row of the top and the finishing.
func (w *writer) step(of string, r report.Row) string {
	how, n := w.text(cell(r, 1)), cell(r, 2)
	size := ""
	if cell(r, 3).Kind == report.Length && cell(r, 4).Kind == report.Length {
		size = w.sides(cell(r, 3), cell(r, 4))
	}
	switch {
	case strings.Contains(how, "to the nearest "):
		return of + ": " + how + "."
	case strings.HasSuffix(how, ", unfinished"):
		return of + ": " + strings.TrimSuffix(how, ", unfinished") + " " + size + ", unfinished."
	case pieces[of] != "" && n.Kind == report.Count:
		how = strings.TrimSuffix(strings.TrimSuffix(strings.TrimSuffix(how, "; squares"), "; each"), "should measure")
		return of + ": " + how + "; " + say.Many(n.Int, pieces[of]) + ", " + size + "."
	case n.Kind == report.Count && (of == "binding" || of == "sleeve"):
		return of + ": " + how + "; " + say.Many(n.Int, "strip") + " " + w.text(cell(r, 3)) + " wide, which give " + w.text(cell(r, 4)) + "."
	case n.Kind == report.Count && of != "backing":
		return of + ": " + how + " " + size + "; it takes " + say.Many(n.Int, "strip") + "."
	case size == "":
		return of + ": " + how + "."
	}
	return of + ": " + strings.TrimSuffix(how, ", at least") + " " + size + "."
}
