package derive

import "yardproof/schema/plan"

// InRow is how many of a part lie in the fullest row of the layout or, when
// down, in its fullest column: what its error left adds up over.
func (s *Size) InRow(p *Part, down bool) int64 {
	return s.fullest(gridRows(s.Of.Layout.Grid), p, down, map[across]int64{})
}

// gridRows are the cells of a grid as they are set, row by row, without the short
// rows of a setting on point.
func gridRows(g *plan.Grid) [][]plan.Cell {
	if g == nil || len(g.Blocks) == 0 {
		return nil
	}
	rows := make([][]plan.Cell, g.Rows.N)
	for r := range rows {
		rows[r] = g.Row(r)
	}
	return rows
}

// across is a part and the direction it is looked through in.
type across struct {
	part string
	down bool
}

// fullest is the most of a part in any row of cells, or in any column.
func (s *Size) fullest(rows [][]plan.Cell, of *Part, down bool, seen map[across]int64) int64 {
	sum, most := int64(0), int64(0)
	for _, row := range rows {
		along, widest := int64(0), int64(0)
		for _, c := range row {
			n := s.inCell(c, of, down, seen)
			along, widest = min(along+n, countless), max(widest, n)
		}
		sum, most = min(sum+widest, countless), max(most, along)
	}
	if down {
		return sum
	}
	return most
}

func (s *Size) inCell(c plan.Cell, of *Part, down bool, seen map[across]int64) int64 {
	p := s.byName[c.Part.Text]
	if p == nil {
		return 0
	}
	if c.Sideways() {
		down = !down
	}
	if p == of {
		return 1
	}
	return s.inPart(p, of, down, seen)
}

func (s *Size) inPart(p, of *Part, down bool, seen map[across]int64) int64 {
	key := across{p.Name.Text, down}
	if n, ok := seen[key]; ok {
		return n
	}
	seen[key] = 0 // a part made of itself holds nothing
	n := int64(0)
	if room, ok := p.Room.(celled); ok {
		n = s.fullest(room.Cells(), of, down, seen)
	}
	seen[key] = n
	return n
}
