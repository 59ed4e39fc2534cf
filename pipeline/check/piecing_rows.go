package check

import (
	"fmt"
	"slices"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// assembly is rows of parts and the place to complain about each.
type assembly struct {
	name  string
	about Subject
	piecing.Assembly
	cells func(r int) []plan.Cell // the cells of a row, as written
}

func (a assembly) row(r int) source.Range { return cover(a.cells(r)) }

func (p *Pass) assemblies() []assembly {
	var out []assembly
	for _, part := range p.Size.Parts {
		if room, ok := part.Room.(derive.Holding); ok && part.Rows != nil {
			rows := room.Rows()
			out = append(out, assembly{fmt.Sprintf("%q", part.Name.Text), geometryOf(part), *part.Rows, func(r int) []plan.Cell { return rows[r] }})
		}
	}
	if g := p.Size.Of.Layout.Grid; g != nil && p.Size.Top.Known {
		out = append(out, assembly{"the layout", Subject{Kind: derive.TopSize}, p.Size.Top.Grid, written(g)})
	}
	for _, part := range p.Size.Parts {
		if room, ok := part.Room.(derive.Gridded); ok && part.Known {
			out = append(out, assembly{fmt.Sprintf("%q", part.Name.Text), geometryOf(part), part.Setting.Rows, written(room.Grid())})
		}
	}
	return out
}

// written gives the cells of a grid's rows as the plan writes them; where a
// symmetry brings them from elsewhere, as they come to stand.
func written(g *plan.Grid) func(r int) []plan.Cell {
	if g.Written || g.Symmetry != plan.NoSymmetry {
		return g.Row
	}
	return func(r int) []plan.Cell { return g.Blocks[r%len(g.Blocks)] }
}

// cover is the range from a row's first cell to its last.
func cover(row []plan.Cell) source.Range {
	if len(row) == 0 {
		return source.Range{}
	}
	first, last := row[0].At, row[len(row)-1].At
	return source.Range{Start: min(first.Start, last.Start), End: max(first.End, last.End)}
}

func rowHeights(p *Pass) {
	for _, a := range p.assemblies() {
		for r := range a.RowHeights {
			if a.Tallest[r].Sub(a.RowHeights[r]).Cmp(easedHeight.Surd()) <= 0 || slices.ContainsFunc(a.cells(r), p.loose) {
				continue
			}
			p.unequal(a, r)
			break // the rows of a repeating arrangement repeat the fault
		}
	}
}

// loose reports whether a cell is a part that has no place in a row, which another
// rule says.
func (p *Pass) loose(c plan.Cell) bool {
	part := p.Size.Part(c.Part.Text)
	if part == nil {
		return false
	}
	m, ok := part.Room.Serves(derive.InRow)
	return !ok && m.Loose != ""
}

// unequal reports the lowest and the highest part of a row. The lowest is
// taken for the fault: fabric can be trimmed off, not on.
func (p *Pass) unequal(a assembly, r int) {
	var low, high plan.Cell
	for _, c := range a.cells(r) {
		if height := p.height(c); height.Equal(a.RowHeights[r]) {
			low = c
		} else if height.Equal(a.Tallest[r]) {
			high = c
		}
	}
	part := p.Size.Part(low.Part.Text)
	p.Report(low.At, Finding{
		Message: fmt.Sprintf("%q is %s high in row %d of %s, and %q beside it %s", low.Part.Text,
			a.RowHeights[r].Format(p.Plan.Units), r+1, a.name, high.Part.Text, a.Tallest[r].Format(p.Plan.Units)),
		Hint:    p.heighten(part, low, a.Tallest[r]),
		About:   geometryOf(part),
		Root:    true,
		Related: []Related{{high.At, fmt.Sprintf("%q, the higher of the two", high.Part.Text)}, {sizeAt(part), fmt.Sprintf("%q is made here", low.Part.Text)}},
	})
}

// heighten is the way out for a part that is lower than its neighbours.
func (p *Pass) heighten(part *derive.Part, c plan.Cell, wanted measure.Surd) string {
	turned := c
	turned.Turn += 90
	if p.height(plan.Cell{Part: c.Part, Turn: turned.Turn % 360}).Equal(wanted) {
		return fmt.Sprintf("turn %q", c.Part.Text)
	}
	if cut, ok := p.recut(part, wanted); ok {
		return fmt.Sprintf("cut the squares of %q %s", c.Part.Text, cut)
	}
	return fmt.Sprintf("make %q %s high", c.Part.Text, wanted.Format(p.Plan.Units))
}

// recut is the cut size, up to the ruler's grid, of the squares of a unit made
// from triangles that is to come out with a side; ok is false for other parts.
func (p *Pass) recut(part *derive.Part, side measure.Surd) (cut string, ok bool) {
	room, ok := part.Room.(derive.Resized)
	if !ok {
		return "", false
	}
	return p.ruler(room.CutFor(side)), true
}

// sizeAt is where the plan says what a part's size comes from, as the size's
// patch may: its cut width, else its name.
func sizeAt(part *derive.Part) source.Range {
	if room, ok := part.Room.(derive.Sized); ok {
		return room.SizeAt()
	}
	return part.Name.At
}

// height is a cell's unfinished height as it is turned.
func (p *Pass) height(c plan.Cell) measure.Surd {
	part := p.Size.Part(c.Part.Text)
	switch {
	case part == nil:
		return measure.Surd{}
	case c.Sideways():
		return part.Width
	}
	return part.Height
}

func rowDrift(p *Pass) {
	p.rowsBeyond(driftWarns.Surd(), driftFails.Surd(), "trim the units to the drafted size")
}

func rowWidths(p *Pass) {
	p.rowsBeyond(driftFails.Surd(), measure.Surd{}, "count the parts of each row and check their turns")
}

// rowsBeyond reports assemblies whose widest and narrowest row differ by more
// than least and, unless most is zero, by no more than most.
func (p *Pass) rowsBeyond(least, most measure.Surd, hint string) {
	for _, a := range p.assemblies() {
		lo, hi := 0, 0
		for r := range a.RowWidths {
			if a.RowWidths[r].Cmp(a.RowWidths[lo]) < 0 {
				lo = r
			}
			if a.RowWidths[r].Cmp(a.RowWidths[hi]) > 0 {
				hi = r
			}
		}
		gap := a.RowWidths[hi].Sub(a.RowWidths[lo])
		if gap.Cmp(least) <= 0 || !most.IsZero() && gap.Cmp(most) > 0 {
			continue
		}
		f := Finding{
			Message: fmt.Sprintf("row %d of %s comes out %s wide and row %d %s", hi+1, a.name,
				a.RowWidths[hi].Format(p.Plan.Units), lo+1, a.RowWidths[lo].Format(p.Plan.Units)),
			Hint:    hint,
			About:   a.about,
			Root:    true,
			Related: []Related{{a.row(lo), "the narrower row"}},
		}
		if wide, narrow, ok := p.column(a.cells(hi), a.cells(lo)); ok {
			p.blameColumn(&f, wide, narrow)
		}
		p.Report(a.row(hi), f)
	}
}

// blameColumn names the part that makes a row the narrower one.
func (p *Pass) blameColumn(f *Finding, wide, narrow plan.Cell) {
	part := p.Size.Part(narrow.Part.Text)
	wanted := p.width(wide).Format(p.Plan.Units)
	f.Message += fmt.Sprintf(": %q is %s wide where %q is %s", wide.Part.Text, wanted, narrow.Part.Text, p.width(narrow).Format(p.Plan.Units))
	f.Hint = fmt.Sprintf("make %q %s wide", narrow.Part.Text, wanted)
	f.Related = append(f.Related, Related{sizeAt(part), fmt.Sprintf("%q is made here", narrow.Part.Text)})
}

// column is the first place at which two rows of as many cells hold parts of
// different widths, the wider one first.
func (p *Pass) column(a, b []plan.Cell) (wide, narrow plan.Cell, ok bool) {
	if len(a) != len(b) {
		return wide, narrow, false
	}
	for i := range a {
		switch p.width(a[i]).Cmp(p.width(b[i])) {
		case 1:
			return a[i], b[i], true
		case -1:
			return b[i], a[i], true
		}
	}
	return wide, narrow, false
}

// width is a cell's unfinished width as it is turned.
func (p *Pass) width(c plan.Cell) measure.Surd {
	c.Turn = (c.Turn + 90) % 360
	return p.height(c)
}
