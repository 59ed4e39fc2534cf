package tabulate

import (
	"fmt"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// asCut is the size that a part should measure as it is: of a triangle the
// box round it as it is cut, not its place in a row.
func asCut(p *derive.Part) piecing.Box {
	if p.Shape != nil {
		return p.Shape.Cut
	}
	return p.Box
}

// strip says what becomes of a strip that is cut whole across the fabric, and how
// many pieces it is.
func (c cutter) strip(n derive.Need, height measure.Length) (does string, pieces int64) {
	down := c.cutDown(n, height)
	if p := c.s.Part(n.For.Text); p != nil && p.Shape != nil {
		pieces = p.ShapesOf(false)
		if down != "" {
			return fmt.Sprintf("%s, then cut into %s, %d from a whole strip.", strings.ToUpper(down[:1])+down[1:], p.Shape.Cutting(), pieces), pieces
		}
		return fmt.Sprintf("Cut into %s, %d from a whole strip.", p.Shape.Cutting(), pieces), pieces
	}
	if down != "" {
		return "Use whole, " + down + ".", 1
	}
	return "Use whole.", 1
}

// cutDown says how wide what is used from a higher strip is; nothing where it
// is as wide as the strip.
func (c cutter) cutDown(n derive.Need, height measure.Length) string {
	if n.Along >= height {
		return ""
	}
	return "cut down to " + n.Along.AsCut(c.u) + " wide"
}

// part says what becomes of the last strip, so high, of which only a width is
// used; alone tells that nothing else is cut from it.
func (c cutter) part(n derive.Need, width, height measure.Length, alone bool) (does string, pieces int64) {
	of := width.AsCut(c.u) + " of it"
	if down := c.cutDown(n, height); down != "" {
		of += " " + down
	}
	if alone {
		of = "at least " + of
	}
	if p := c.s.Part(n.For.Text); p != nil && p.Shape != nil {
		pieces = p.ShapesOf(true)
		return fmt.Sprintf("cut %d from %s: %s", pieces, of, p.Shape.Cutting()), pieces
	}
	return "use " + of, 1
}

// unproved are pieces cut round a template, of which only the box is proved, and
// mosaics, of which only the number of pieces and what they cover is.
func (in Input) unproved() []report.Row {
	var templates, mosaics, atMost, unknown []string
	for _, s := range in.Sizes {
		for _, p := range s.Parts {
			if p.Needed == 0 {
				continue
			}
			if p.Room.Traits().OnTrust {
				templates = append(templates, p.Name.Text)
			}
			switch m := p.Mosaic; {
			case m == nil:
			case m.Known && m.Exact():
				mosaics = append(mosaics, p.Name.Text)
			case m.Known:
				atMost = append(atMost, p.Name.Text)
			default:
				unknown = append(unknown, p.Name.Text)
			}
		}
	}
	var rows []report.Row
	add := func(names []string, before, after string) {
		if len(names) > 0 {
			rows = append(rows, row(report.T("not proved"), report.T(before+strings.Join(unique(names), ", ")+after)))
		}
	}
	add(templates, "The outline and fit of pieces cut round a template: ", ". The box that each is cut from is counted, and the finished size is the plan's word.")
	add(mosaics, "How the pieces of ", " fit together. They are counted and cut, and what they cover is held against the finished size.")
	add(atMost, "How the pieces of ", " fit together. They are counted and cut. With templates among them, only what they cover at most and at least is held against the finished size.")
	add(unknown, "How the pieces of ", " fit together, and what they cover. They are counted and cut.")
	return rows
}
