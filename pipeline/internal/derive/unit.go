package derive

import (
	"fmt"
	"slices"

	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// Unit is a derived unit of pieces that are cut for it: what its method takes,
// and how it comes out.
type Unit struct {
	Pieces  []Piece // cut for one batch, in order of sewing
	Of      []Taken // parts that one batch takes
	Each    int64   // units from one batch
	Batches int64   // rounded up
	Sewn    piecing.Box
	Wanted  *piecing.Box // unfinished, of the finished size that the plan states; nil when it states none
	Trim    [2]plan.Length
	DownTo  plan.Length   // the grid that it is trimmed down to, where that decides
	Lines   *Lines        // that its cuts were rounded up to; nil where they go to the ruler's grid, or need not be rounded
	Point   *measure.Surd // how far its points lie inside the raw edge, or can where it is trimmed; nil when it has none
	Bonus   []Bonus       // by the corners cut away from one unit
	Keep    bool          // the corners cut away are sewn into units; otherwise they are waste
	Hands   bool          // half of each batch are mirror images
}

// Piece is one size of piece that a unit is cut from.
type Piece struct {
	What          string // "goose square"
	Fabric        *Fabric
	Width, Height measure.Length
	Exact         piecing.Box    // the cut size that leaves nothing over
	Fitted        measure.Length // the cut that follows from the finished size; 0 where it is the exact one
	ToMark        bool           // it goes to the nearest mark of the ruler though the unit is trimmed
	Nothing       measure.Length // a cut size of which nothing is left once it is sewn
	Count         int64          // in one batch
	Halving       plan.Halving
	Triangles     int64        // of those that it is cut into, in one batch; 0 where all are
	At            source.Range // where the plan says the size, or what it follows from
	Fixed         bool         // it lies as said, width across the fabric, though the print would let it turn
	Said          bool         // the plan says the size; otherwise it was derived
	InLengths     bool         // cut in lengths from strips as wide as it is high
	Stood         bool         // a log that stands along the fabric for its print's sake
	// Within is the area, in square ticks and 0 where it is not known, of what is
	// cut from the piece and might be cut from cloth of another shape; nil where
	// the piece itself is what is wanted.
	Within *measure.Surd
	OnBias *OnBias // what bias strips would give it; nil where it is not on the bias
}

// Taken is a part that goes into a unit.
type Taken struct {
	Part  *Part
	Count int64 // to one batch
}

// Bonus is the half-square units that corners cut away give.
type Bonus struct {
	Square measure.Length // the flip square
	Side   measure.Surd   // unfinished
	Count  int64          // from one unit of the recipe
}

// Left is what the unit comes out larger than drafted, smaller if negative;
// ok is false when the plan states no finished size.
func (p *Part) Left() (left piecing.Box, ok bool) {
	if p.Unit == nil || p.Unit.Wanted == nil || !p.Known {
		return left, false
	}
	w := p.Unit.Wanted
	return piecing.Box{Width: p.Width.Sub(w.Width), Height: p.Height.Sub(w.Height)}, true
}

// Over is what the larger cut side is over the exact one, negative when short.
func (c Piece) Over() measure.Surd {
	return measure.Max(c.Width.Surd().Sub(c.Exact.Width), c.Height.Surd().Sub(c.Exact.Height))
}

// becomes takes the unit for the part's, trimmed where the plan says so.
func (p *Part) becomes(u *Unit) {
	both := (2 * p.Seam.Allowance.Length).Surd()
	p.Unit, p.Box = u, u.Sewn
	p.Known = u.Sewn.Width.Cmp(both) > 0 && u.Sewn.Height.Cmp(both) > 0
	if u.Trim[0].Given() {
		p.Box = piecing.Box{Width: u.Trim[0].Surd(), Height: u.Trim[1].Surd()}
	}
}

// asks is how many units have to be made for those that are needed: where half of
// each batch are mirror images, twice as many as of the hand that is needed more.
func (u *Unit) asks(p *Part) figure.F {
	if !u.Hands {
		return p.neededTerm()
	}
	m := p.mirroredTerm()
	return figure.Most(m, p.neededTerm().Less(m)).By(2)
}

// mirroredTerm is how many of the needed ones are mirror images, as a symbol.
func (p *Part) mirroredTerm() figure.F {
	return figure.Given(figure.Count, measure.Rational(p.Mirrored, 1), "as they stand in what is made of it", p.NeededFigure()).As("M", "of them mirror images")
}

// Comes says how many units one batch gives.
func (u *Unit) Comes() string {
	if u.Hands {
		return fmt.Sprintf("%d at a time, half of them mirror images", u.Each)
	}
	return fmt.Sprintf("%d at a time", u.Each)
}

// needPiece asks for so many of a unit's pieces.
func (f *Fabric) needPiece(by plan.Text, c Piece, count int64) {
	if c.Within != nil {
		f.needWithin(Need{For: by, At: c.At, Across: c.Width, Along: c.Height, Count: count, Fixed: c.Fixed, OnBias: c.OnBias}, *c.Within)
		return
	}
	each := c.Halving.Triangles()
	if c.Triangles > 0 {
		each = c.Triangles
	}
	f.needCut(by, c.Width, c.Height, count*each, c.Halving)
	n := f.last()
	n.at(c.At)
	n.Fixed, n.InLengths, n.Stood = c.Fixed, c.InLengths, c.Stood
}

// alike are the pieces with equal ones counted together, in order of first
// appearance.
func alike(pieces []Piece) []Piece {
	type kind struct {
		f             *Fabric
		width, height measure.Length
		halving       plan.Halving
		fixed         bool
		lengths       bool
		stood         bool
	}
	at := map[kind]int{}
	var out []Piece
	for _, c := range pieces {
		k := kind{c.Fabric, c.Width, c.Height, c.Halving, c.Fixed, c.InLengths, c.Stood}
		if i, seen := at[k]; seen {
			out[i].Count += c.Count
			continue
		}
		at[k] = len(out)
		out = append(out, c)
	}
	return out
}

// sewn takes a size for the unit's as sewn, and trims it down to the grid where
// the plan says so; a unit of which one side has no line below it is not trimmed.
// Cuts that follow from the finished size may be up by more than the grid: then it
// is trimmed to the lines that it is to finish on.
func (u *Unit) sewn(b piecing.Box) {
	u.Sewn = b
	if w := u.Wanted; w != nil && !u.CutSaid() && w.Width.Cmp(b.Width) <= 0 && w.Height.Cmp(b.Height) <= 0 {
		b = *w
	}
	w, h := line(u.Trim[0], u.DownTo, b.Width), line(u.Trim[1], u.DownTo, b.Height)
	if w.Given() && h.Given() {
		u.Trim = [2]plan.Length{w, h}
	}
}

// CutSaid reports whether the plan says a cut size of the unit.
func (u *Unit) CutSaid() bool {
	return slices.ContainsFunc(u.Pieces, func(c Piece) bool { return c.Said })
}

// rounding is the direction that a cut goes to the ruler in: up when the unit
// is trimmed afterwards, to the nearest line when it is not.
func rounding(trim plan.Length) piecing.Rounding {
	if trim.Given() {
		return piecing.Up
	}
	return piecing.Nearest
}

func (s *Size) rulerGrid() measure.Length { return s.Plan.Defaults.RulerGrid }

// Lines are the lines that cuts go up to where the unit is trimmed afterwards.
type Lines struct {
	Apart measure.Length
	Ruler *plan.Ruler // that the lines are those of; nil where no ruler names its lines
}

// lines are the finest that a ruler of the size names, or else the project's or
// the trade's.
func (s *Size) lines() Lines {
	l := Lines{Apart: s.Plan.Defaults.TrimGrid}
	for i := range s.Of.Tools.Rulers {
		r := &s.Of.Tools.Rulers[i]
		if r.Lines.Given() && (l.Ruler == nil || r.Lines.Length < l.Apart) {
			l = Lines{r.Lines.Length, r}
		}
	}
	return l
}

// cutTo is the grid that the unit's cuts go to, and notes the lines where it is
// trimmed afterwards.
func (u *Unit) cutTo(s *Size, trim plan.Length) measure.Length {
	if !trim.Given() {
		return s.rulerGrid()
	}
	lines := s.lines()
	u.Lines = &lines
	return lines.Apart
}

// unfinished is a finished box with its seam allowances.
func unfinished(width, height plan.Length, seam measure.Length) *piecing.Box {
	return &piecing.Box{Width: (width.Length + 2*seam).Surd(), Height: (height.Length + 2*seam).Surd()}
}

// squarePiece is a square cut to a fit, or to what the plan says.
func squarePiece(what string, f *Fabric, fit piecing.Fit, said plan.Length, from source.Range) Piece {
	c := Piece{What: what, Fabric: f, Width: fit.Cut, Height: fit.Cut, Exact: square(fit.Exact), Fitted: fit.Cut, Count: 1, At: from}
	if said.Given() {
		c.Width, c.Height, c.At, c.Said = said.Length, said.Length, said.At, true
	}
	return c
}

// exactly is a cut that is what geometry asks for, rounded to a tick if it is
// none.
func exactly(cut measure.Surd) piecing.Fit {
	return piecing.Fit{Exact: cut, Cut: cut.NearestTo(measure.Tick)}
}
