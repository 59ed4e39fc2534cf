package buyer

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
)

// cutPacks stops her where the printed packs do not hold what she has to cut
// from them, or do not leave what is printed to be left over.
func (s supply) cutPacks() {
	have := s.bought.N * int64(s.f.Pack.N)
	if s.f.PackedPacks() > s.bought.N {
		return
	}
	s.cleverly(s.f.Packs > s.bought.N)
	s.all = s.whole()
	last := 0
	for i, c := range s.steps {
		if !c.over {
			continue
		}
		last = i
		if part := s.upTo(i); part.sheets() > have {
			part.stopPacks(i, have)
			return
		}
	}
	takes := s.sheets()
	if takes > have {
		s.stopPacks(last, have)
		return
	}
	s.left(last, takes, have)
}

func (s supply) stopPacks(step int, have int64) {
	stop := s.stop(Packs, step)
	stop.Takes, stop.Has = s.sheets(), have
	s.r.stop(stop)
}

// left stops her where so many pieces are printed to be left over as the recipe
// leaves, and what else is printed leaves fewer.
func (s supply) left(step int, takes, have int64) {
	_, left := packsOf(s.f, int64(s.f.Sheets.Count), s.bought.N)
	said := figure(LeftOf, s.r.said.Left, s.f.Role.Text, 0)
	if !said.Printed() || said.N != left || said.N <= have-takes {
		return
	}
	stop := s.stop(Packs, step)
	stop.With = append(stop.With, stop.Limit)
	stop.Limit, stop.Figure = stop.Figure, said
	stop.Takes, stop.Has, stop.Enough = takes, have, max(0, have-takes)
	s.r.stop(stop)
}

// packsOf is what so many packs are, and what they leave of what is used.
func packsOf(f *derive.Fabric, used, packs int64) (pieces, left int64) {
	pieces = packs * int64(f.Pack.N)
	return pieces, pieces - used
}

// sheets is a number of precut pieces that no way of cutting it all in strips
// goes below.
func (s supply) sheets() int64 {
	sheet := measure.Area(s.f.StripLength().Surd(), s.f.StripWidth().Surd())
	least := measure.CeilDiv(s.area(), sheet)
	for _, needs := range s.layouts() {
		if t := s.f.Taking(needs, 0); t.Err == nil {
			least = max(least, t.FloorPieces())
		}
	}
	return least
}

// area is that of the strips that are surely cut whole.
func (s supply) area() (sum measure.Surd) {
	for _, c := range s.steps {
		n, times := c.need, c.least()
		if !n.Strip {
			n, times = c.strips, c.strips.Count
		}
		each := measure.Area(s.f.StripLength().Surd(), s.f.Reserved(n.Along).Surd())
		sum = sum.Add(each.MulInt(times))
	}
	return sum
}
