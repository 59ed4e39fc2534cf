package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// columned is rows whose columns should meet, and how far they may miss.
type columned struct {
	assembly
	rows int // as many as differ, and the one that follows them
	seam measure.Length
	most measure.Surd // seams that miss by more are meant to; zero where none are
	hint string
}

// columns are the assemblies of which every seam between two blocks should meet
// one of the row above: grids and maps, whose blocks stand in columns. The rows
// of a part may be built as they like; there only seams that nearly meet were
// meant to. Sashed blocks and blocks on point are of one size, which
// layout/block-sizes sees to, and sashing between the rows parts them.
func (p *Pass) columns() []columned {
	var out []columned
	for _, a := range p.assemblies() {
		part := p.Size.Part(a.about.Name)
		switch {
		case a.about.Kind == derive.TopSize:
			l := p.Size.Of.Layout
			if l.Sashing == nil && l.Triangles == nil && (!l.Grid.Written || l.Grid.Drawn) {
				a.cells = l.Grid.Row // whole rows, where a.cells gives what repeats
				rows := len(a.RowWidths)
				if l.Grid.Symmetry == plan.NoSymmetry {
					rows = len(l.Grid.Blocks) + 1
				}
				out = append(out, columned{a, rows, p.Size.Of.Seam.Allowance.Length, measure.Surd{},
					"make the blocks of a column equally wide; rows that need not meet are written as \"rows\" of the layout"})
			}
		case part != nil && part.Rows != nil:
			seam := part.Seam.Allowance.Length
			out = append(out, columned{a, len(a.RowWidths), seam, (2 * seam).Surd(), "make the parts of a column equally wide"})
		}
	}
	return out
}

// columnWidths reports the first seam of an assembly that misses the one above
// it. Rows that differ in width are piecing/row-widths' to report.
func columnWidths(p *Pass) {
	for _, c := range p.columns() {
		least, most := p.narrowAndWide(c.assembly)
		if most.Sub(least).Cmp(driftWarns.Surd()) > 0 {
			continue
		}
		for r := 1; r < min(len(c.RowWidths), c.rows); r++ {
			if p.missedSeam(c, r) {
				break // the rows of a repeating arrangement repeat the fault
			}
		}
	}
}

func (p *Pass) narrowAndWide(a assembly) (least, most measure.Surd) {
	for r, w := range a.RowWidths {
		if r == 0 {
			least, most = w, w
		}
		least, most = measure.Min(least, w), measure.Max(most, w)
	}
	return least, most
}

// missedSeam reports the seam of a row that misses its fellow of the row above
// by most.
func (p *Pass) missedSeam(c columned, r int) bool {
	above, below := c.cells(r-1), c.cells(r)
	if len(above) != len(below) {
		return false
	}
	both := (2 * c.seam).Surd()
	var up, down, worst, upAt, downAt measure.Surd
	column := 0
	for i := range below[:len(below)-1] {
		up, down = up.Add(p.width(above[i])).Sub(both), down.Add(p.width(below[i])).Sub(both)
		if miss := gap(up, down); miss.Cmp(worst) > 0 {
			worst, upAt, downAt, column = miss, up, down, i
		}
	}
	if worst.Cmp(driftWarns.Surd()) <= 0 || !c.most.IsZero() && worst.Cmp(c.most) > 0 {
		return false
	}
	level := diag.Error
	if worst.Cmp(driftFails.Surd()) <= 0 || !c.most.IsZero() {
		level = diag.Warning
	}
	p.reportColumn(c, level, [2]plan.Cell{above[column], below[column]}, fmt.Sprintf(
		"column %d of %s: %q in row %d ends %s from the left, finished, and %q above it %s: the seams miss each other by %s", column+1, c.name,
		below[column].Part.Text, r+1, downAt.Format(p.Plan.Units), above[column].Part.Text, upAt.Format(p.Plan.Units), worst.Format(p.Plan.Units)))
	return true
}

func (p *Pass) reportColumn(c columned, level diag.Level, cells [2]plan.Cell, message string) {
	f := Finding{Message: message, Ways: ways(advise(c.hint)), Level: level, About: c.about, Related: []Related{{cells[0].At, "the one above it"}}}
	for _, cell := range cells {
		if part := p.Size.Part(cell.Part.Text); part != nil && (len(f.Related) == 1 || cell.Part.Text != cells[0].Part.Text) {
			f.Related = append(f.Related, Related{sizeAt(part), fmt.Sprintf("%q is made here", cell.Part.Text)})
		}
	}
	p.Report(cells[1].At, f)
}
