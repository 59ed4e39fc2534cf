package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Border is a derived border.
type Border struct {
	Said   *plan.Border
	Inside figure.F // how wide what it goes round is
	piecing.Border
	Known     bool
	EndCut    measure.Length // width that the top and the bottom strip are cut; the sides' is Cut
	Seam      measure.Length
	Inner     piecing.Box // unfinished
	Strips    Joined      // of strips across the fabric
	EndStrips Joined      // of coping strips: the ends', Strips being the sides'
	Along     *piecing.Lengthwise
	Units     *Units // of a pieced border
	Pieces    bool   // the strips are cut as pieces, none of them joined
	Corners   int64  // squares of Cut in the corners, of fabric or of Corner
	Corner    *Part  // nil where they are of fabric
	Together  bool   // mitred as one with the border outside it
	Lines     *Lines // that coping strips were cut up to; nil where they are cut exactly
}

// Units is the parts that a pieced border repeats.
type Units struct {
	Part        *Part
	Unit        measure.Surd // finished length along the border
	Deep        measure.Surd // finished depth of a unit
	Sides, Ends int64        // on each, to the nearest whole number
	// What so many units exceed each side by, and each end; negative when they
	// are short of it.
	SideDrift, EndDrift measure.Surd
}

// frame sews borders round a size, each round what is inside it.
func (s *Size) frame(inner piecing.Box, said []plan.Border, seam measure.Length) []Border {
	var all []Border
	for i := range said {
		b := s.border(inner, &said[i], seam)
		all = append(all, b)
		inner = b.Outer
	}
	// Mitred borders that follow each other are one: all strips are as long as
	// the outermost, but for what each border allows for the mitre.
	for i := len(all) - 2; i >= 0; i-- {
		if b, next := &all[i], &all[i+1]; b.Said.Corners == plan.Mitred && next.Said.Corners == plan.Mitred {
			more := b.Said.Allowance.Length - next.Said.Allowance.Length
			of := next.Lengthened(more)
			b.Sides, b.Ends, b.Needed, b.Together = of.Sides, of.Ends, of.Needed, true
		}
	}
	return all
}

func (s *Size) border(inner piecing.Box, said *plan.Border, seam measure.Length) Border {
	if said.Seam != nil {
		seam = said.Seam.Allowance.Length
	}
	b := Border{Said: said, Seam: seam, Inner: inner, Known: true}
	width := said.Width.Length
	switch {
	case said.Copes():
		s.cope(&b)
	case said.On == plan.SidesOnly:
		b.Border = piecing.OnSides(inner, width, seam)
	case said.On == plan.EndsOnly:
		b.Border = piecing.OnEnds(inner, width, seam)
	case said.Corners == plan.CornerSquares:
		b.Border, b.Corners = piecing.CorneredBorder(inner, width, seam), 4
		b.Corner = s.byName[said.CornerPart.Text]
	case said.Corners == plan.Mitred:
		b.Border = piecing.MitredBorder(inner, width, seam).Lengthened(said.Allowance.Length)
	default:
		b.Border = piecing.ButtedBorder(inner, width, seam, said.EndsOn)
	}
	if !said.Copes() {
		b.EndCut = b.Cut
	}
	if said.Part.Given() {
		s.piece(&b)
	}
	return b
}

// cope makes the strips that bring what is inside to a size: half of what is
// missing on either side and none where nothing is, the strips cut up to the ruler's lines where that is
// on no ruler, and the whole trimmed to the size.
func (s *Size) cope(b *Border) {
	want := piecing.Box{Width: b.Said.To[0].Surd(), Height: b.Said.To[1].Surd()}
	sides, ends := piecing.Coping(b.Inner, want, b.Seam)
	both := (2 * b.Seam).Surd()
	lines := s.lines()
	b.Cut, b.EndCut = exactOr(sides.Add(both), lines.Apart), exactOr(ends.Add(both), lines.Apart)
	if !sides.Add(both).Equal(b.Cut.Surd()) || !ends.Add(both).Equal(b.EndCut.Surd()) {
		b.Lines = &lines
	}
	b.Outer = withSeams(want, b.Seam)
	b.Sides, b.Ends = b.Inner.Height, b.Outer.Width
	if b.Said.EndsOn {
		b.Sides, b.Ends = b.Outer.Height, b.Inner.Width
	}
	switch { // strips of one pair have one width
	case sides.IsZero():
		b.Sides, b.Cut = measure.Surd{}, b.EndCut
	case ends.IsZero():
		b.Ends, b.EndCut = measure.Surd{}, b.Cut
	}
	b.Needed = b.Sides.Add(b.Ends).MulInt(2)
	b.Known = sides.Sign() >= 0 && ends.Sign() >= 0 && sides.Add(ends).Sign() > 0
}

func (s *Size) piece(b *Border) {
	p := s.byName[b.Said.Part.Text]
	b.Known = p != nil && p.Known
	if !b.Known {
		return
	}
	both := (2 * b.Seam).Surd()
	unit, deep := p.Width.Sub(both), p.Height.Sub(both)
	b.Known = unit.Sign() > 0 && deep.Sign() > 0
	if !b.Known {
		return
	}
	u := &Units{Part: p, Unit: unit, Deep: deep}
	if b.Sides.Sign() > 0 {
		u.Sides, u.SideDrift = nearest(b.Sides.Sub(both), unit)
	}
	if b.Ends.Sign() > 0 {
		u.Ends, u.EndDrift = nearest(b.Ends.Sub(both), unit)
	}
	b.Units = u
}

// nearest is how many units come nearest to a side, and what they exceed it
// by.
func nearest(side, unit measure.Surd) (n int64, drift measure.Surd) {
	n, rest := piecing.PiecedCount(side, unit)
	if rest.MulInt(2).Cmp(unit) > 0 {
		return n + 1, unit.Sub(rest)
	}
	return n, rest.Neg()
}

// needBorder asks for the strips or units of a border, in each of a number of
// things: of the top, or of a part.
func (s *Size) needBorder(name plan.Text, b *Border, times int64, of *Part) {
	if !b.Known {
		return
	}
	if f := s.byFabric[b.Said.CornerFabric.Text]; f != nil && b.Corners > 0 {
		f.need(corners(name), b.Cut, b.Cut, b.Corners*times)
	}
	call := func(q *Part, words string, n int64) {
		each := figure.Given(figure.Count, measure.Rational(n, 1), words, b.Inside, q.Figures.Size)
		c := Call{By: of, of: each}
		if of == nil {
			c.In = plan.Text{Text: "border " + b.Said.Name.Text, At: b.Said.At}
		} else {
			c.of = of.NeededFigure().Times(each)
		}
		q.called(c)
	}
	if b.Corner != nil {
		call(b.Corner, "one for each corner", b.Corners)
		b.Corner.kinds.want(b.Said.CornerKind, b.Corners*times)
	}
	if b.Units != nil {
		n := min(2*(b.Units.Sides+b.Units.Ends), countless/times) * times
		call(b.Units.Part, "as many as come nearest to its sides", 2*(b.Units.Sides+b.Units.Ends))
		b.Units.Part.kinds.want(b.Said.Kind, n)
		return
	}
	f := s.byFabric[b.Said.Fabric.Text]
	switch {
	case f == nil:
	case b.Said.Lengthwise:
		s.needAlong(name, b, f, times)
	case of != nil && s.fits(b, f):
		b.Pieces = true
		if b.Sides.Sign() > 0 {
			s.needRectangle(f, name, piecing.Box{Width: b.Sides, Height: b.Cut.Surd()}, 2*times)
		}
		if b.Ends.Sign() > 0 {
			s.needRectangle(f, name, piecing.Box{Width: b.Ends, Height: b.EndCut.Surd()}, 2*times)
		}
	default:
		s.needAcross(name, b, f, times)
	}
}

func corners(border plan.Text) plan.Text {
	return plan.Text{Text: border.Text + " corners", At: border.At}
}

// fits reports whether no strip of a border has to be joined.
func (s *Size) fits(b *Border, f *Fabric) bool {
	return s.cutLength(measure.Max(b.Sides, b.Ends)) <= f.stripLength()
}

// needAcross asks for strips across the fabric, joined as the plan says.
func (s *Size) needAcross(name plan.Text, b *Border, f *Fabric, times int64) {
	l := f.stripLength()
	join := func(words string, need measure.Surd, cut measure.Length) Joined {
		width := figure.Said("w", "cut width", cut, b.Said.Width.At)
		if b.Said.Copes() {
			width = figure.Given(figure.Length, cut.Surd(), "half of what is missing, with the seams, up to the ruler's marks", b.Inside).Where(b.Said.To[0].At)
		}
		all := figure.Given(figure.Length, need.MulInt(times), words, b.Inside).Where(b.Said.At)
		return s.join("border "+b.Said.Name.Text, all, f, b.Said.Joins, width, b.seam(s))
	}
	const both = "both sides, top and bottom"
	switch {
	case b.Said.Copes():
		b.Strips, b.EndStrips = join("both sides", b.Sides.MulInt(2), b.Cut), join("top and bottom", b.Ends.MulInt(2), b.EndCut)
		f.needJoined(name, b.EndCut, b.EndStrips)
	case b.Said.EachSide:
		b.Strips = join(both, b.Needed, b.Cut)
		b.Strips.Count, b.Strips.OK = piecing.JoinedPerSide(b.Lengths(), l, b.Strips.Loss)
		b.Strips.Count *= times
		if b.Strips.OK {
			f.ask(Need{For: name, Strip: true, Across: l, Along: b.Cut, Count: b.Strips.Count})
			f.mustCover(measure.Area(b.Strips.Need, b.Cut.Surd()))
		}
		f.Missing = f.Missing || !b.Strips.OK
		return
	default:
		b.Strips = join(both, b.Needed, b.Cut)
	}
	f.needJoined(name, b.Cut, b.Strips)
}

// seam is the border's own seam, or the quilt's.
func (b *Border) seam(s *Size) plan.Seam {
	if b.Said.Seam != nil {
		return *b.Said.Seam
	}
	seam := s.Of.Seam
	seam.Allowance.Length = b.Seam
	return seam
}

// needAlong asks for strips along the fabric: as many side by side as go, the
// longest first, each row as long as its longest.
func (s *Size) needAlong(name plan.Text, b *Border, f *Fabric, times int64) {
	lengths := b.Lengths()
	strips := int64(len(lengths))
	along, ok := piecing.LengthwiseStrips(lengths, max(b.Cut, b.EndCut), f.stripLength())
	b.Along = &along
	if !ok {
		along.Side = 1 // too wide for the fabric, which then says so
	}
	long, short := measure.Max(b.Sides, b.Ends), measure.Min(lengths[0], lengths[strips-1])
	first := (2 + along.Side - 1) / along.Side * along.Side // strips of the rows that hold one of the long pair
	first = min(first, strips)
	need := func(length measure.Surd, count int64) {
		if count > 0 {
			n := Need{For: name, Across: max(b.Cut, b.EndCut), Along: s.cutLength(length), Count: count * times, Fixed: true, First: true}
			f.ask(n)
			f.mustHold(name, n.Across, n.Along, n.Count)
		}
	}
	need(long, first)
	need(short, strips-first)
}

// lying is how many strips a border has, and how many of them carry the print
// sideways: those of its sides where they are cut across the fabric, those of
// top and bottom where they are cut along it.
func (b *Border) lying() (strips, sideways int64) {
	coped := b.Said.Copes() && b.Known
	ends := b.Said.On == plan.EndsOnly || coped && b.Sides.IsZero()
	sides := b.Said.On == plan.SidesOnly || coped && b.Ends.IsZero()
	switch {
	case !ends && !sides:
		return 4, 2
	case ends == b.Said.Lengthwise:
		return 2, 2
	}
	return 2, 0
}

// AllBorders are the borders of the top, then those round parts.
func (s *Size) AllBorders() []Border {
	all := s.Top.Borders[:len(s.Top.Borders):len(s.Top.Borders)]
	for _, p := range s.Parts {
		all = append(all, p.Borders...)
	}
	return all
}
