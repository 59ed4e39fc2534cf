package words

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
)

// cutting writes the cut list of a size, fabric by fabric. A layout that is shown
// beside the pattern's own is left out.
func (w *writer) cutting(size string) {
	for _, s := range w.sheets {
		if s.ID != "cut-list-"+size {
			continue
		}
		w.heading(3, "Cutting")
		ids := map[string]bool{}
		for _, t := range s.Tables {
			ids[t.ID] = true
		}
		for _, t := range s.Tables {
			if at := strings.LastIndexByte(t.ID, '-'); at > 0 && ids[t.ID[:at]] {
				continue
			}
			w.heading(4, t.Heading)
			for _, line := range w.cuts(t, size) {
				w.item(line)
			}
		}
	}
}

// run is rows of a cut list that are told together: strips of one width, of which
// the same is cut.
type run struct {
	strips, pieces int64
	width, what    string // what is cut, without how many; empty of strips that are sewn whole
	to             string
	each           []int64  // pieces from each strip, of every row
	last           string   // how much of the last strip is used
	pack           bool     // it is cut from precut pieces
	packed         bool     // it is one of the kinds of strips of a packed layout
	others         []string // those of the strips after the first
	other          string   // a sentence that is told as it stands
}

var (
	onePiece = regexp.MustCompile(`^([0-9]+) (squares?|rectangles?|triangles?) ([^;]*)\.$`)
	atLeast  = regexp.MustCompile(`^Use at least (.*) of it\.$`)
)

// cuts are the lines of one fabric.
func (w *writer) cuts(t report.Table, size string) []string {
	var lines []string
	var runs []*run
	packs := slices.ContainsFunc(t.Lead, func(l string) bool { return strings.Contains(l, "cut into; ") })
	packed := slices.ContainsFunc(t.Lead, func(l string) bool { return strings.HasPrefix(l, "Packed layout") }) ||
		slices.ContainsFunc(t.Rows, func(r report.Row) bool { return strings.Contains(cell(r, 2).Text, ", then ") })
	for _, r := range t.Rows {
		strips, width, then := cell(r, 0), cell(r, 1), w.text(cell(r, 2))
		switch {
		case packs && strips.Kind == report.Text:
			strips = report.Cell{} // more of the same pieces
		case strips.Kind != report.Count:
			if then != "" {
				lines = append(lines, then)
			}
			continue
		case width.Kind != report.Length:
			lines = append(lines, fmt.Sprintf("Cut %s %s.", say.Many(strips.Int, "panel"), panelOf(then)))
			continue
		}
		next := w.row(r, size, packs, packed)
		if n := len(runs); n > 0 && !packed && runs[n-1].takes(next) {
			runs[n-1].add(next)
			continue
		}
		runs = append(runs, next)
	}
	for _, r := range runs {
		lines = append(lines, r.sentence())
	}
	return lines
}

// panelOf is the length of panels: "Backing panel, full width, each 97 in long."
func panelOf(then string) string {
	return "of the full width of the fabric, " + strings.TrimSuffix(strings.TrimPrefix(then, "Backing panel, full width, "), ".")
}

func (w *writer) row(r report.Row, size string, pack, packed bool) *run {
	out := &run{pack: pack, strips: cell(r, 0).Int, width: w.text(cell(r, 1)), to: w.cutFor(w.text(cell(r, 3)), size), pieces: cell(r, 4).Int}
	out.packed = packed
	then := w.text(cell(r, 2))
	if _, last, ok := strings.Cut(then, "from each piece. "); ok && pack {
		then = last
	}
	switch m := onePiece.FindStringSubmatch(then); {
	case m != nil && !strings.Contains(m[3], ", then"):
		n, _ := strconv.ParseInt(m[1], 10, 64)
		out.what, out.each = strings.TrimSuffix(m[2], "s")+" "+m[3], []int64{n}
	case strings.HasPrefix(then, "Use whole"):
	case atLeast.MatchString(then):
		out.last = atLeast.FindStringSubmatch(then)[1]
	default:
		out.other = then
	}
	return out
}

// cutFor is what pieces are for: borders are called what they are.
func (w *writer) cutFor(to, size string) string {
	top, _ := w.table("sewing-"+size, "top-"+size)
	names := strings.Split(to, ", ")
	for i, name := range names {
		for _, r := range top.Rows {
			if cell(r, 0).Text == "border "+name {
				names[i] = "border " + name
			}
		}
		if name == "binding" || name == "sleeve" || name == "label" || name == "sashing" || name == "backing" {
			names[i] = "the " + name
		}
	}
	return strings.Join(names, ", ")
}

func (r *run) takes(next *run) bool {
	if r.other != "" && next.other != "" && !strings.Contains(r.to, ",") && !strings.Contains(r.other, "then") {
		return r.width == next.width && r.to == next.to
	}
	return r.other == "" && next.other == "" && r.width == next.width && r.to == next.to && r.what == next.what && r.last == ""
}

func (r *run) add(next *run) {
	r.strips += next.strips
	r.pieces += next.pieces
	r.each = append(r.each, next.each...)
	r.last = next.last
	if next.other != "" {
		r.others = append(r.others, next.other)
	}
}

func (r *run) sentence() string {
	if r.pack {
		return r.ofPieces()
	}
	text := fmt.Sprintf("Cut %s %s wide", say.Many(r.strips, "strip"), r.width)
	if r.other != "" {
		for _, more := range r.others {
			r.other += " Of the last: " + lowered(more)
		}
		return text + " for " + r.to + ". Of each: " + lowered(r.other)
	}
	if r.what == "" {
		text += " for " + r.to
		if r.last != "" && r.strips > 1 {
			text += "; of the last, " + r.last + " are used"
		}
		return text + "."
	}
	noun, rest, _ := strings.Cut(r.what, " ")
	from := "them"
	if r.strips == 1 {
		from = "it"
	}
	if r.packed {
		return text + fmt.Sprintf(", for %s. Of each: %s %s.", r.to, say.Many(r.each[0], noun), rest)
	}
	text += fmt.Sprintf(". Cut from %s %s %s, for %s", from, say.Many(r.pieces, noun), rest, r.to)
	if r.strips > 1 {
		text += fmt.Sprintf("; %d from each strip", r.each[0])
	}
	return text + "."
}

// ofPieces is what is cut from precut pieces.
func (r *run) ofPieces() string {
	switch {
	case r.what != "":
		noun, rest, _ := strings.Cut(r.what, " ")
		return fmt.Sprintf("Cut from %s %s %s, for %s.", say.Many(r.strips, "piece"), say.Many(r.pieces, noun), rest, r.to)
	case r.other != "":
		return fmt.Sprintf("Of %s, for %s: %s", say.Many(r.strips, "piece"), r.to, lowered(r.other))
	}
	text := fmt.Sprintf("Take %s %s wide for %s", say.Many(r.strips, "strip"), r.width, r.to)
	if r.last != "" && r.strips > 1 {
		text += "; of the last, " + r.last + " are used"
	}
	return text + "."
}

func lowered(text string) string { return strings.ToLower(text[:1]) + text[1:] }
