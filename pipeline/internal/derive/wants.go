package derive

import (
	"fmt"

	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// Want is a part that an operation takes, and what it has to be.
type Want struct {
	Part  plan.Text
	Place source.Range // of the cell that names it; empty where none does
	To    Wanted
	By    string // what takes it: `tube "step"`
}

// Wanted is what a part may have to be.
type Wanted int

// What a part may have to be.
const (
	WholeSet       Wanted = iota // a strip set that is not cut into segments
	HalfSquareUnit               // a unit of two triangles
	HalvedOnce                   // a triangle of a square cut once diagonally
	HalvedTwice                  // or of one cut twice
	FourSided                    // with square corners
	InRow                        // the same, or a triangle of 60 degrees
)

// Halving is how a square is cut into the triangles that are wanted; Whole where
// none are.
func (w Wanted) Halving() plan.Halving {
	switch w {
	case HalvedOnce:
		return plan.CutOnce
	case HalvedTwice:
		return plan.CutTwice
	case WholeSet, HalfSquareUnit, FourSided, InRow:
	}
	return plan.Whole
}

// Misfit is what a part is instead of what is wanted. Its zero value is any
// other part.
type Misfit struct {
	Segment plan.Length // cut width of the segments that a set is cut into
	Cut     bool        // it is cut from fabric, halved as Halving says
	Halving plan.Halving
	Loose   string // what it is that has no square corners: "hexagon"
	Sewn    string // the way for that to come into a row, as a verb phrase
}

// sewn is whether work with four sides and square corners is what is wanted.
func sewn(w Wanted) (Misfit, bool) { return Misfit{}, w == FourSided || w == InRow }

// standing are the cells of a row or grid, each part once.
func standing(by string, cells []plan.Cell, to Wanted) []Want {
	var all []Want
	seen := map[string]bool{}
	for _, c := range cells {
		if name := c.Part.Text; !seen[name] {
			seen[name] = true
			all = append(all, Want{Part: c.Part, Place: c.At, To: to, By: by})
		}
	}
	return all
}

// Wants is what the layout and its borders take.
func (s *Size) Wants() []Want {
	blocks := standing("the layout", gridCells(s.Of.Layout.Grid), InRow)
	return append(blocks, borderWants(s.Of.Layout.Borders)...)
}

// gridCells are the cells of a grid as the plan writes them.
func gridCells(g *plan.Grid) []plan.Cell {
	if g == nil {
		return nil
	}
	var cells []plan.Cell
	for _, rows := range [][][]plan.Cell{g.Blocks, g.Between} {
		for _, row := range rows {
			cells = append(cells, row...)
		}
	}
	return cells
}

// borderWants is what pieced borders repeat.
func borderWants(borders []plan.Border) []Want {
	var all []Want
	for _, b := range borders {
		if b.Part.Given() {
			all = append(all, Want{Part: b.Part, To: FourSided, By: fmt.Sprintf("border %q", b.Name.Text)})
		}
	}
	return all
}

// quoted is a part's name in quotation marks.
func (p *Part) quoted() string { return fmt.Sprintf("%q", p.Name.Text) }

func (p *Part) serves(w Wanted) bool {
	_, ok := p.Room.Serves(w)
	return ok
}
