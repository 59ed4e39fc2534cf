package drawing

import "yardproof/pipeline/report"

// Room of sizes along the edges, in millimetres.
const (
	tierHeight = 5.0
	firstTier  = 2.0
	tickLength = 0.9
	sizeLine   = 0.15
)

// tierAt is how far from the edge the line of a tier runs.
func tierAt(tier int) float64 { return firstTier + float64(tier)*tierHeight }

// edgeTier is a line of sizes along an edge.
type edgeTier struct {
	edge report.Edge
	tier int
}

// dimensions draws the sizes along the edges. A size that would run into the
// last one written on its line, or into the very last, is left out: it can be
// read from those beyond it.
func (c canvas) dimensions(p *report.Panel, b box) {
	used := map[edgeTier]float64{} // up to where each line is written on
	for i, m := range p.Dimensions {
		line := edgeTier{m.Edge, m.Tier}
		end, seen := used[line]
		from, to := c.written(m)
		final := last(p.Dimensions[i:])
		if begin, _ := c.written(final); seen && from < end || m.Mark && final.To > m.To && to > begin {
			continue
		}
		used[line] = to
		c.dimension(m, b, m.From*c.scale, m.To*c.scale)
	}
}

// written is where along its edge a size is written.
func (c canvas) written(m report.Dimension) (from, to float64) {
	room := width(m.Text, sizeSize)
	if m.Mark || m.Edge == report.Right {
		room = sizeSize
	}
	middle := (m.From + m.To) / 2 * c.scale
	if m.Mark {
		middle = m.To * c.scale
	}
	return middle - room/2, middle + room/2
}

// last is the last dimension on the line of the first.
func last(list []report.Dimension) report.Dimension {
	found := list[0]
	for _, m := range list {
		if m.Edge == found.Edge && m.Tier == found.Tier {
			found = m
		}
	}
	return found
}

func (c canvas) dimension(m report.Dimension, b box, from, to float64) {
	away, beyond := tierAt(m.Tier), tierAt(m.Tier)+tickLength+sizeSize/2
	place := func(along, off float64) Point {
		switch m.Edge {
		case report.Top:
			return Point{c.origin.X + along, c.origin.Y - off}
		case report.Bottom:
			return Point{c.origin.X + along, c.origin.Y + b.inner.Height + off}
		case report.Right:
			return Point{c.origin.X + b.inner.Width + off, c.origin.Y + along}
		}
		return Point{c.origin.X - off, c.origin.Y + along}
	}
	if m.Mark {
		c.line(place(to, 0), place(to, tickLength), sizeLine)
		c.text(place(to, firstTier), End, sizeSize, neutral(m.Text))
		return
	}
	c.line(place(from, away), place(to, away), sizeLine)
	for _, end := range [...]float64{from, to} {
		c.line(place(end, away-tickLength), place(end, away+tickLength), sizeLine)
	}
	if m.Edge == report.Right {
		c.text(place((from+to)/2, away+tickLength), Start, sizeSize, neutral(m.Text))
		return
	}
	c.text(place((from+to)/2, beyond), Middle, sizeSize, neutral(m.Text)).Upright = m.Edge == report.Left
}
