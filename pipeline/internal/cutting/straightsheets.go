package cutting

import (
	"slices"

	"yardproof/schema/measure"
)

// StraightSheets is a number of sheets that no straight cutting of the problem can do
// without, whatever its rounds of cuts and whichever way its first cuts run, and never
// less than [SheetAreaBound]. A problem that [PlainPieces] refuses has the bound 0.
//
// Pieces that a line across a sheet crosses are worth no more than so much by their
// widths, and those that a line along it crosses by their heights. A sheet then holds
// no more of the products than the product of both (conservative scales of Fekete and
// Schepers, Mathematical Methods of Operations Research 60, 2004, from memory). Each
// side's worths are the best for those of the other, in turn.
func StraightSheets(p SheetProblem, limits Limits) (int, *SheetsCertificate, Spent) {
	var spent Spent
	if _, err := PlainPieces(p); err != nil {
		return 0, nil, spent
	}
	kinds := slices.Concat(pieceKinds(p.Pieces, true), partKinds(p.Strips, p.Sheet.Across), wholeKinds(p.Strips, p.Sheet.Across))
	area := SheetAreaBound(p)
	if len(kinds) == 0 {
		return area, nil, spent
	}
	a := newScales(p.Sheet, kinds)
	steps := newMeter(limits.withDefaults(len(kinds)), &Steps{}, &spent)
	for _, start := range a.starts(p.Sheet.Along) {
		a.alternate(start, steps)
	}
	steps.hand(&Steps{}, &spent)
	c := a.certificate(kinds)
	c.Claim = max(area, c.Claim)
	return c.Claim, c, spent
}

// scales are worths of the ways that pieces may lie, by width and by height.
type scales struct {
	side  [2]*lines // across the sheet, and along it
	lying [][]oriented
	best  [2]worths
	claim measure.Length
}

func newScales(sheet Sheet, kinds []kind) *scales {
	s := &scales{}
	var tall [][]oriented
	for _, k := range kinds {
		ways := k.lie(Cloth{Width: sheet.Across}, sheet.Along)
		s.lying = append(s.lying, ways)
		var turned []oriented
		for _, o := range ways {
			turned = append(turned, oriented{o.height, o.width})
		}
		tall = append(tall, turned)
	}
	s.side[0], s.side[1] = newLines(sheet.Across, kinds, s.lying), newLines(sheet.Along, kinds, tall)
	return s
}

// starts are heights, and for each least height those that count all or nothing: what is
// lower counts nothing, and what leaves less than that beside it as the whole sheet.
func (s *scales) starts(along measure.Length) [][]measure.Length {
	var heights []measure.Length
	for _, o := range slices.Concat(s.lying...) {
		heights = append(heights, o.height)
	}
	all := [][]measure.Length{heights}
	distinct := slices.Clone(heights)
	slices.Sort(distinct)
	for _, least := range slices.Compact(distinct) {
		if 2*least > along {
			break
		}
		var start []measure.Length
		for _, h := range heights {
			switch {
			case h < least:
				h = 0
			case h > along-least:
				h = along
			}
			start = append(start, h)
		}
		all = append(all, start)
	}
	return all[:min(len(all), 12)]
}

// mostTurns is how often worths are found for those of the other side.
const mostTurns = 8

// alternate weighs widths for heights and heights for widths, in turn, while that brings
// anything.
func (s *scales) alternate(heights []measure.Length, steps *meter) {
	last, gained := s.side[0].weigh(heights, steps), 0.0
	for turn := 1; turn <= mostTurns && last.most > 0; turn++ {
		side := turn % 2
		w := s.side[side].weigh(last.weights(), steps)
		if w.most == 0 {
			return
		}
		all := s.side[side].sum(w, last.weights())
		if n := all.over(measure.Length(w.most * last.most)); n > s.claim {
			s.claim = n
			s.best[side], s.best[1-side] = w, last
		}
		gain := all.float() / float64(w.most) / float64(last.most)
		if gain < gained+1e-6 {
			return
		}
		last, gained = w, gain
	}
}

// weights are worths as what the other side weighs.
func (w worths) weights() []measure.Length {
	var all []measure.Length
	for _, v := range w.way {
		all = append(all, measure.Length(v))
	}
	return all
}

// SheetsCertificate lets anyone check a bound of [StraightSheets] with integers only: what
// a line across the sheet crosses is worth no more than Most[0] by width, and what a line
// along it crosses no more than Most[1] by height. Claim times both is no more than the
// sum, over all pieces, of the products of their worths, in the way that makes it least,
// rounded up; or SheetAreaBound where that is more.
type SheetsCertificate struct {
	Claim int
	Most  [2]int64
	Sizes []SheetsSize
}

// SheetsSize is a size with its worths by width and by height, as it is and turned; 0
// where it cannot lie so or would take more both ways.
type SheetsSize struct {
	Size
	Worth, Turned [2]int64
}

func (s *scales) certificate(kinds []kind) *SheetsCertificate {
	c := &SheetsCertificate{Claim: int(s.claim), Most: [2]int64{s.best[0].most, s.best[1].most}}
	way := 0
	for i, k := range kinds {
		size := SheetsSize{Size: Size{Across: k.across, Along: k.along, Count: k.demand, Turnable: k.turnable}}
		for _, o := range s.lying[i] {
			at := &size.Worth
			if o.width != k.across {
				at = &size.Turned
			}
			if s.claim > 0 {
				*at = [2]int64{s.best[0].way[way], s.best[1].way[way]}
			}
			way++
		}
		c.Sizes = append(c.Sizes, size)
	}
	return c
}
