package check

import (
	"fmt"
	"slices"

	"yardproof/pipeline/diag"
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
		Ways:    p.level(low, high, a.RowHeights[r], a.Tallest[r]),
		About:   geometryOf(part),
		Root:    true,
		Related: []Related{{high.At, fmt.Sprintf("%q, the higher of the two", high.Part.Text)}, {sizeAt(part), fmt.Sprintf("%q is made here", low.Part.Text)}},
	})
}

// level are the ways out of two parts of a row that are not equally high: the turn of
// the lower one, then its size, then that of the higher one. What the size's own patch
// says comes first.
func (p *Pass) level(low, high plan.Cell, least, most measure.Surd) []diag.Way {
	var all []diag.Way
	if p.height(plan.Cell{Part: low.Part, Turn: (low.Turn + 90) % 360}).Equal(most) {
		all = append(all, p.turnBy(low))
	}
	lower := p.resize(p.Size.Part(low.Part.Text), !low.Sideways(), most)
	higher := p.resize(p.Size.Part(high.Part.Text), !high.Sideways(), least)
	if low.Part.Text == high.Part.Text { // one part, turned here and not there
		return ways(append(all, advise(fmt.Sprintf("turn all of %q alike", low.Part.Text)))...)
	}
	if !p.patches(lower) && p.patches(higher) {
		lower, higher = higher, lower
	}
	all = append(append(all, lower...), higher...)
	return ways(append(all, lastly("bring both to one height"))...)
}

// patches reports whether the first of ways out lies in what the size itself says.
func (p *Pass) patches(all []diag.Way) bool {
	patch := p.Plan.Tree.Get("sizes").Get(p.Size.Of.Name.Text)
	return len(all) > 0 && patch != nil && patch.Range.Encloses(all[0].Edits[0].Range)
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
	p.rowsBeyond(driftWarns.Surd(), driftFails.Surd(), "trim the units to the size that they are drafted to")
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
			Ways:    ways(lastly(hint)),
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
	narrower, wider := p.resize(part, narrow.Sideways(), p.width(wide)), p.resize(p.Size.Part(wide.Part.Text), wide.Sideways(), p.width(narrow))
	if !p.patches(narrower) && p.patches(wider) {
		narrower, wider = wider, narrower
	}
	f.Ways = append(append(narrower, wider...), f.Ways...)
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
