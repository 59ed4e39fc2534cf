package derive

import (
	"slices"

	"yardproof/schema/plan"
)

// Flips names the tubes whose near and far squares are exchanged in a part: one
// bit a tube, by its index. The schema allows fewer parts than there are bits.
type Flips [5]uint64

func flipOf(t *Tube) (f Flips) {
	f[t.index/64] = 1 << (t.index % 64)
	return f
}

func (f Flips) exchanged(by Flips) Flips {
	for i := range f {
		f[i] ^= by[i]
	}
	return f
}

func (f Flips) among(mask Flips) Flips {
	for i := range f {
		f[i] &= mask[i]
	}
	return f
}

func (f Flips) and(with Flips) Flips {
	for i := range f {
		f[i] |= with[i]
	}
	return f
}

// Has reports whether the squares of a tube are among those exchanged.
func (f Flips) Has(t *Tube) bool { return f.among(flipOf(t)) != Flips{} }

// taking is the tubes whose squares in a part take turns: all of them, and those
// of which it holds an odd number, so that after it the turn is the other's. Of
// an even number a part holds equally many of both, and is always made alike.
type taking struct{ all, odd Flips }

func (k *taking) add(of taking, times int64) {
	if times == 0 {
		return
	}
	k.all = k.all.and(of.all)
	if times%2 == 1 {
		k.odd = k.odd.exchanged(of.odd)
	}
}

// takeTurns finds out for each part which squares in it take turns.
func (s *Size) takeTurns() {
	tubes := 0
	for _, p := range s.Parts {
		if p.Tube != nil {
			p.Tube.index = tubes
			tubes++
			if p.Tube.Count > 0 && p.Tube.Kinds.TakeTurns() {
				p.taking = taking{flipOf(p.Tube), flipOf(p.Tube)}
			}
			continue
		}
		p.taking = s.turnsIn(p)
	}
}

func (s *Size) turnsIn(p *Part) (k taking) {
	if c, ok := p.Room.(Carrier); ok {
		k.add(s.turnsAt(c.Carries()), 1)
	} else if p.Setting != nil {
		for _, b := range p.Setting.Blocks {
			k.add(b.Part.taking, b.Count-b.kinds.near-b.kinds.far)
		}
	} else if room, ok := p.Room.(celled); ok {
		for _, c := range slices.Concat(room.Cells()...) {
			k.add(s.turnsAt(c), 1)
		}
	}
	for _, b := range p.Borders {
		k.add(s.turnsAt(b.Said.Unit()), 2) // opposite sides are alike
		k.add(s.turnsAt(b.Said.CornerBlock()), 4)
	}
	return k
}

func (s *Size) turnsAt(c plan.Cell) taking {
	if q := s.byName[c.Part.Text]; q != nil && c.Kind == plan.EitherKind {
		return q.taking
	}
	return taking{}
}

// Placed is a part at a place, with the kind of square that stands there where
// the two differ or the plan says it, and what is exchanged in it.
type Placed struct {
	plan.Cell
	Flips Flips
}

// Walk goes from place to place in the one order in which the squares that no
// place says the kind of take turns: the blocks, row by row to and fro, then the
// borders, clockwise from the top left.
type Walk struct {
	s  *Size
	at Flips
}

// WalkTop begins in the layout.
func (s *Size) WalkTop() *Walk { return &Walk{s: s} }

// WalkIn begins in a part in which some kinds are exchanged.
func (s *Size) WalkIn(exchanged Flips) *Walk { return &Walk{s, exchanged} }

// Cell comes to the next place.
func (w *Walk) Cell(c plan.Cell) Placed {
	q := w.s.byName[c.Part.Text]
	if q == nil {
		return Placed{Cell: c}
	}
	placed := Placed{Cell: c}
	if c.Kind == plan.EitherKind {
		placed.Flips = w.at.among(q.taking.odd) // as many of both are as good begun either way
		w.at = w.at.exchanged(q.taking.odd)
	}
	if square := w.s.Square(q); square != nil {
		placed.settle(square.Tube)
	}
	return placed
}

// Carried comes to the part that a part is made of alone, in which all is
// exchanged that is exchanged in the other.
func (w *Walk) Carried(of Carrier) Placed {
	c, at := of.Carries(), w.at
	placed := w.Cell(c)
	if q := w.s.byName[c.Part.Text]; q != nil && c.Kind == plan.EitherKind {
		placed.Flips = at
		if square := w.s.Square(q); square != nil {
			placed.settle(square.Tube)
		}
	}
	return placed
}

// settle names the kind of a square where the plan leaves it open, and exchanges
// it for the far one where that is meant.
func (p *Placed) settle(t *Tube) {
	switch {
	case p.Kind == plan.FarKind && t.Kinds.Look != Alike:
		p.Flips = flipOf(t)
	case p.Kind != plan.EitherKind || !t.Kinds.Matter():
	case p.Flips.Has(t):
		p.Kind = plan.FarKind
	default:
		p.Kind = plan.NearKind
	}
}

// Rows comes to all places of rows: from the left, from the right, and so on.
func (w *Walk) Rows(rows int, row func(int) []plan.Cell) [][]Placed {
	var all [][]Placed
	for r := range rows {
		var line []Placed
		cells := row(r)
		for i := range cells {
			if r%2 == 1 {
				i = len(cells) - 1 - i
			}
			line = append(line, w.Cell(cells[i]))
		}
		if r%2 == 1 {
			slices.Reverse(line)
		}
		all = append(all, line)
	}
	return all
}

// Setting comes to the blocks of a setting; on point those of the full rows
// first, then those of the shorter ones between.
func (w *Walk) Setting(of plan.Setting) (full, short [][]Placed) {
	if of.Grid == nil {
		return nil, nil
	}
	full = w.Rows(of.Grid.Rows.N, of.Grid.Row)
	if of.Triangles != nil {
		short = w.Rows(of.Grid.Rows.N-1, of.Grid.Short)
	}
	return full, short
}

// Surround is the parts of a border: the units of each side and the blocks of the
// corners, clockwise, from the top and from the top left.
type Surround struct {
	Sides   [4][]Placed
	Corners []Placed
}

// Border comes to the parts of a border, if it has any.
func (w *Walk) Border(b Border) (a Surround) {
	if u := b.Units; u != nil {
		for side, n := range [4]int64{u.Ends, u.Sides, u.Ends, u.Sides} {
			for range min(n, mostUnits) {
				a.Sides[side] = append(a.Sides[side], w.turned(b.Said.Unit(), side))
			}
		}
	}
	if b.Said.CornerPart.Given() {
		for corner := range 4 {
			a.Corners = append(a.Corners, w.turned(b.Said.CornerBlock(), corner))
		}
	}
	return a
}

// mostUnits is how many units of a side are gone through one by one: more than
// any picture shows.
const mostUnits = 1 << 16

// turned comes to a part of a border that is turned by quarters.
func (w *Walk) turned(c plan.Cell, quarters int) Placed {
	p := w.Cell(c)
	p.Turn = 90 * quarters
	return p
}

// Part comes to all parts that a part is sewn of, in their order.
func (w *Walk) Part(p *Part) (all []Placed) {
	if of, ok := p.Room.(Carrier); ok {
		all = append(all, w.Carried(of))
	} else if p.Setting != nil {
		full, short := w.Setting(p.Setting.Said)
		all = slices.Concat(append(full, short...)...)
	} else if room, ok := p.Room.(celled); ok {
		cells := room.Cells()
		all = slices.Concat(w.Rows(len(cells), func(i int) []plan.Cell { return cells[i] })...)
	}
	return append(all, w.borders(p.Borders)...)
}

func (w *Walk) borders(of []Border) (all []Placed) {
	for _, b := range of {
		a := w.Border(b)
		all = append(append(all, slices.Concat(a.Sides[:]...)...), a.Corners...)
	}
	return all
}

// LayoutTakesTurns reports whether a block of the layout holds squares that take
// turns, so that no arrangement as written repeats.
func (s *Size) LayoutTakesTurns() bool {
	return slices.ContainsFunc(s.Top.Blocks, func(b Block) bool { return b.Part.taking != taking{} })
}

// Variant is a part in which the squares of some tubes are exchanged, and how
// many of the part are to be made so.
type Variant struct {
	Flips Flips
	Count int64
}

// Variants counts how many of each part the layout places, by what is exchanged
// in it. What goes into mosaics is not among them: they may be either.
func (s *Size) Variants() map[*Part][]Variant {
	counts := map[*Part]map[Flips]int64{}
	count := func(places []Placed, times int64) {
		for _, c := range places {
			if q := s.byName[c.Part.Text]; q != nil {
				if counts[q] == nil {
					counts[q] = map[Flips]int64{}
				}
				counts[q][c.Flips] = min(counts[q][c.Flips]+times, countless)
			}
		}
	}
	top := s.WalkTop()
	full, short := top.Setting(s.Of.Layout.Setting)
	count(slices.Concat(append(full, short...)...), 1)
	count(top.borders(s.Top.Borders), 1)
	all := map[*Part][]Variant{}
	for _, p := range slices.Backward(s.Parts) {
		for flips, n := range counts[p] {
			all[p] = append(all[p], Variant{flips, n})
		}
		slices.SortFunc(all[p], func(a, b Variant) int { return slices.Compare(a.Flips[:], b.Flips[:]) })
		for _, v := range all[p] {
			count(s.WalkIn(v.Flips).Part(p), v.Count)
		}
	}
	return all
}
