package derive

import (
	"slices"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// measure works out a part's unfinished size from its ingredients.
func (s *Size) measure(p *Part) {
	switch op := p.Operation.(type) {
	case plan.Cut:
		s.measureCut(p, op)
	case plan.WholeStrip:
		s.measureStrip(p, op)
	case plan.StripSet:
		s.measureSet(p, op)
	case plan.Tube:
		s.measureTube(p, op)
	case plan.HalfSquares:
		s.measureHalfSquares(p, op)
	case plan.TriangleSquare:
		s.measureTriangleSquare(p, op)
	case plan.Rows:
		s.measureRows(p, op)
	case plan.Trim:
		s.measureTrim(p, op)
	case plan.Setting:
		p.Setting = s.set(op, p.Seam.Allowance.Length)
		p.Known, p.Box = p.Setting.Known, p.Setting.Box
	case plan.Bordered:
		s.measureBordered(p, op)
	default:
		s.measureUnit(p)
	}
}

func square(side measure.Surd) piecing.Box { return piecing.Box{Width: side, Height: side} }

func (s *Size) measureCut(p *Part, op plan.Cut) {
	p.Known = s.byFabric[op.Fabric.Text] != nil
	p.Box = piecing.Box{Width: op.Width.Surd(), Height: op.Height.Surd()}
	// Cut once, the long side is on the bias; cut twice, the short sides.
	p.Bias = op.Halving != plan.Whole
}

func (s *Size) measureStrip(p *Part, op plan.WholeStrip) {
	f := s.byFabric[op.Fabric.Text]
	if f == nil {
		return
	}
	p.Known = true
	p.Box = piecing.Box{Width: f.stripLength().Surd(), Height: f.stripWidth(op.Width).Surd()}
}

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

func (s *Size) measureSet(p *Part, op plan.StripSet) {
	if op.Of.Given() {
		s.measureSegment(p, op)
		return
	}
	set := &Set{}
	var widths []measure.Length
	for i, strip := range op.Strips {
		f := s.byFabric[strip.Fabric.Text]
		if f == nil {
			return
		}
		w := f.stripWidth(strip.Width)
		set.Strips = append(set.Strips, Strip{Fabric: f, Width: w, At: strip.Fabric})
		widths = append(widths, w)
		if l := f.stripLength(); i == 0 || l < set.Length {
			set.Length = l
		}
	}
	set.Width = piecing.SetWidth(widths, p.Seam.Allowance.Length)
	p.Set, p.Known = set, set.Width > 0
	p.cutSet(set, op)
}

// measureSegment cuts segments from a set that another part makes.
func (s *Size) measureSegment(p *Part, op plan.StripSet) {
	of := s.byName[op.Of.Text]
	if of == nil || !of.Known || of.Set == nil || of.Set.Cut != nil {
		return
	}
	p.Set, p.Known, p.Seam = &Set{Width: of.Set.Width, Length: of.Set.Length, Strips: of.Set.Strips, Of: of}, true, of.Seam
	p.cutSet(p.Set, op)
}

func (p *Part) cutSet(set *Set, op plan.StripSet) {
	p.Box = piecing.Box{Width: set.Length.Surd(), Height: set.Width.Surd()}
	if op.Segment.Given() {
		set.Cut = segments(set.Length, op.Segment.Length)
		p.Width = op.Segment.Surd()
		if op.Angle.Given() {
			set.slant(piecing.Slant{Strip: set.Width.Surd(), Width: op.Segment.Surd(), Angle: piecing.Angle(op.Angle.N)})
			p.Width = set.Slant.LengthFor(1)
		}
	}
}

// slant cuts the set's segments at an angle. Of the box round one its width is
// the length of set that it takes.
func (set *Set) slant(c piecing.Slant) {
	length := func(n int64) measure.Length { return c.LengthFor(n).CeilTo(measure.Tick) }
	y := newYield(c.PerStrip(set.Length), set.Length, length)
	set.Slant, set.Cut = &c, &y
}

func segments(l, segment measure.Length) *Yield {
	y := newYield(piecing.PerStrip(l, segment), l, func(n int64) measure.Length { return measure.Length(n) * segment })
	return &y
}

func (s *Size) measureTube(p *Part, op plan.Tube) {
	a, b := s.byName[op.Sets[0].Text], s.byName[op.Sets[1].Text]
	if a == nil || b == nil || !a.Known || !b.Known || a.Set == nil || b.Set == nil || a.Set.Cut != nil || b.Set.Cut != nil {
		return
	}
	t := &Tube{Sets: [2]*Part{a, b}, Ends: op.Ends}
	t.Lie = [2][]Strip{a.Set.Strips, b.Set.Strips}
	if op.EndForEnd {
		t.Lie[1] = slices.Clone(t.Lie[1])
		slices.Reverse(t.Lie[1])
	}
	seam := p.Seam.Allowance.Length
	t.Tube = piecing.Tube{Width: min(a.Set.Width, b.Set.Width), Seam: seam, Beyond: op.Tip.Beyond.Length}
	if op.Tip.RawEdge {
		t.Beyond = seam
	}
	length, ears := min(a.Set.Length, b.Set.Length), op.Ends == plan.EarsKept
	t.Yield = newYield(t.Tube.Yield(length, ears), length, func(n int64) measure.Length { return t.LengthFor(n, ears) })
	p.Tube, p.Bias = t, true
	p.Known = t.Height() > 0 && a.Set.Width == b.Set.Width
	p.Box = square(t.Side())
	op.Trim = line(op.Trim, op.DownTo, t.Side())
	if op.Trim.Given() {
		p.Box = square(op.Trim.Surd())
	}
	s.comesTo(p, op)
}

func (s *Size) measureHalfSquares(p *Part, op plan.HalfSquares) {
	if s.byFabric[op.Fabrics[0].Text] == nil || s.byFabric[op.Fabrics[1].Text] == nil {
		return
	}
	seam := p.Seam.Allowance.Length
	t := &Triangle{Cut: op.Square.Length, AtATime: op.AtATime}
	t.Untrimmed = piecing.HalfSquareUnit(t.Cut, seam, op.AtATime)
	op.Trim = line(op.Trim, op.DownTo, t.Untrimmed)
	s.comesTo(p, op)
	p.trimTo(t, op.Trim)
	t.Exact = piecing.HalfSquareCut(p.Width, seam, op.AtATime)
	p.Bias = op.AtATime == 4
}

func (s *Size) measureTriangleSquare(p *Part, op plan.TriangleSquare) {
	t := &Triangle{}
	for i, name := range op.Of {
		q := s.byName[name.Text]
		if q == nil || !q.Known {
			return
		}
		cut, ok := q.Operation.(plan.Cut)
		if !ok {
			return
		}
		if i == 0 || cut.Width.Length < t.Cut {
			t.Cut = cut.Width.Length
		}
	}
	seam := p.Seam.Allowance.Length
	t.Quarter = len(op.Of) == 4
	t.Untrimmed = piecing.HalfSquareUnit(t.Cut, seam, 2)
	if t.Quarter {
		t.Untrimmed = piecing.QuarterSquareUnit(t.Cut, seam)
	}
	op.Trim = line(op.Trim, op.DownTo, t.Untrimmed)
	s.comesTo(p, op)
	p.trimTo(t, op.Trim)
	t.Exact = piecing.HalfSquareCut(p.Width, seam, 2)
	if t.Quarter {
		t.Exact = piecing.QuarterSquareCut(p.Width, seam)
	}
}

func (p *Part) trimTo(t *Triangle, trim plan.Length) {
	p.Triangle, p.Known = t, t.Untrimmed.Sign() > 0
	p.Box = square(t.Untrimmed)
	if trim.Given() {
		p.Box = square(trim.Surd())
	}
}

func (s *Size) measureRows(p *Part, op plan.Rows) {
	boxes, ok := s.boxes(len(op.Rows), func(r int) []plan.Cell { return op.Rows[r] })
	if !ok {
		return
	}
	a := piecing.Assemble(boxes, p.Seam.Allowance.Length)
	p.Rows, p.Known, p.Box = &a, true, a.Box
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

func (s *Size) measureTrim(p *Part, op plan.Trim) {
	q := s.byName[op.Part.Text]
	if q == nil || !q.Known {
		return
	}
	op.Width, op.Height = line(op.Width, op.DownTo, q.Width), line(op.Height, op.DownTo, q.Height)
	p.Known, p.Bias = true, q.Bias
	p.Box = q.Box // of a side that no line lies below
	if op.Width.Given() {
		p.Width = op.Width.Surd()
	}
	if op.Height.Given() {
		p.Height = op.Height.Surd()
	}
	s.comesTo(p, op)
}

func (s *Size) measureBordered(p *Part, op plan.Bordered) {
	q := s.byName[op.Part.Text]
	if q == nil || !q.Known {
		return
	}
	p.Known, p.Box = true, q.Box
	p.Borders = s.frame(q.Box, op.Borders, p.Seam.Allowance.Length)
	for _, b := range p.Borders {
		p.Known, p.Box = p.Known && b.Known, b.Outer
	}
}
