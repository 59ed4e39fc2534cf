package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

func square(side measure.Surd) piecing.Box { return piecing.Box{Width: side, Height: side} }

// stripWidth is the cut width of a strip: what the plan says, else a precut
// strip's own.
func (f *Fabric) stripWidth(said plan.Length) measure.Length {
	if said.Given() || f.Form == plan.Yardage {
		return said.Length
	}
	return f.StripWidth().Length
}

// stripLength is the usable length of a strip across the fabric, after
// shrinkage; precut packs are not prewashed.
func (f *Fabric) stripLength() measure.Length {
	if f.Form == plan.Yardage {
		return f.Width
	}
	return f.StripLength().Length
}

func (p *Part) trimTo(t *Triangle, trim plan.Length) {
	p.Triangle, p.Known = t, t.Untrimmed.Sign() > 0
	p.trimmed(p.Figures.Size, trim)
}

// trimmed is a square of a side as sewn, or trimmed to what the plan says.
func (p *Part) trimmed(side figure.F, trim plan.Length) {
	p.Box = square(side.Surd())
	if trim.Given() {
		p.Box = square(trim.Surd())
	}
}

// boxes are the sizes of the parts in rows of cells, as turned; ok is false
// when one of them is unknown.
func (s *Size) boxes(rows int, row func(int) []plan.Cell) (boxes [][]piecing.Box, ok bool) {
	for r := range rows {
		var line []piecing.Box
		for _, c := range row(r) {
			q := s.byName[c.Part.Text]
			if q == nil || !q.Known {
				return nil, false
			}
			b := q.Box
			if c.Sideways() {
				b = b.Turned()
			}
			line = append(line, b)
		}
		boxes = append(boxes, line)
	}
	return boxes, true
}
