package cutting

import (
	"cmp"
	"slices"

	"yardproof/schema/measure"
)

// solveBeside lays out a problem with lengthwise pieces: they are cut first,
// side by side, and the panel beside them is cut into strips of its own before
// strips of the whole width follow. Where that is longer than the two-stage
// layout, the answer is the latter. A panel beside is neither, so the bound is
// [StraightBound].
func solveBeside(p Problem, limits Limits) (Result, error) {
	limits.Settle = 0
	ordinary := p
	ordinary.Pieces = slices.Clone(p.Pieces)
	for i := range ordinary.Pieces {
		ordinary.Pieces[i].Lengthwise = false
	}
	best, err := Solve(ordinary, limits)
	if err != nil {
		return Result{}, err
	}
	l := beside(ordinary, lengthwise(p), limits, &best)
	if l.Length <= best.Length {
		best.Layout, best.Length = l, l.Length
	}
	bound, _, spent := StraightBound(p, limits)
	best.Spent.add(spent)
	best.Bound, best.Status, best.Certificate, best.best = bound, Gap, nil, nil
	if best.Bound == best.Length {
		best.Status = Proved
	}
	return best, nil
}

// lengthwise lists the pieces that are cut first, one by one, the longest first.
func lengthwise(p Problem) []int {
	var all []int
	for i, q := range p.Pieces {
		if q.Lengthwise {
			all = append(all, slices.Repeat([]int{i}, q.Count)...)
		}
	}
	slices.SortStableFunc(all, func(a, b int) int {
		x, y := p.Pieces[a], p.Pieces[b]
		return cmp.Or(cmp.Compare(y.Along, x.Along), cmp.Compare(y.Across, x.Across))
	})
	return all
}

// beside lays the pieces of long side by side in bands, as many as go, and the
// rest in the panels beside them and below. The work is added to that of done.
func beside(p Problem, long []int, limits Limits, done *Result) Layout {
	rest := p
	rest.Pieces, rest.Strips = slices.Clone(p.Pieces), slices.Clone(p.Strips)
	for _, i := range long {
		rest.Pieces[i].Count = 0
	}
	var l Layout
	for _, band := range bands(p, long) {
		width := p.Cloth.Width - band.used(p.Pieces)
		band.Panel = panel(rest, width, band.Height, limits, done)
		for _, r := range band.Panel {
			for _, c := range r.Cuts {
				rest.Pieces[c.Piece].Count -= c.Count * r.Repeat
			}
			for _, q := range r.Parts {
				rest.Strips[q.Strip].Count--
				rest.Strips[q.Strip].Last = 0
			}
		}
		l.add(band)
	}
	below, err := done.also(rest, limits)
	if err != nil { // the whole has been solved, so its parts can be
		return Layout{Length: none}
	}
	for _, r := range below.Layout.Rows {
		l.add(r)
	}
	return l
}

// also solves a further problem with what is left of the allowance.
func (r *Result) also(p Problem, limits Limits) (Result, error) {
	if limits.Allowance > 0 {
		limits.Allowance = max(1, limits.Allowance-r.Spent.Work)
	}
	also, err := Solve(p, limits)
	r.Steps.add(also.Steps)
	r.Spent.add(also.Spent)
	return also, err
}

// bands puts long pieces side by side, each band as tall as its first.
func bands(p Problem, long []int) []Row {
	var rows []Row
	room := measure.Length(0)
	for _, i := range long {
		q := p.Pieces[i]
		if q.Across > room {
			rows = append(rows, Row{Height: p.Cloth.whole(q.Along), Repeat: 1, Strip: -1})
			room = p.Cloth.Width
		}
		room -= q.Across
		band := &rows[len(rows)-1]
		if n := len(band.Cuts); n > 0 && band.Cuts[n-1].Piece == i {
			band.Cuts[n-1].Count++
			continue
		}
		band.Cuts = append(band.Cuts, Cut{Piece: i, Count: 1})
	}
	return rows
}

// panel cuts what a panel of that width holds, the densest strips first: pieces,
// and the last parts of joined lengths.
func panel(rest Problem, width, reach measure.Length, limits Limits, done *Result) []Row {
	if width <= 0 {
		return nil
	}
	q := Problem{Cloth: rest.Cloth, Pieces: slices.Clone(rest.Pieces), Strips: slices.Clone(rest.Strips)}
	q.Cloth.Width = width
	for i, s := range q.Strips {
		if _, part := s.split(rest.Cloth.Width); part > 0 && part < width {
			q.Strips[i].Count = 1
		} else {
			q.Strips[i].Count, q.Strips[i].Last = 0, 0
		}
	}
	for i, piece := range q.Pieces {
		if shortestAlong(piece, width) == 0 {
			q.Pieces[i].Count = 0
		}
	}
	solved, err := done.also(q, limits)
	if err != nil {
		return nil
	}
	return densest(q, solved.Layout, reach).Rows
}

// densest keeps the strips with the most fabric in use for their height, as
// many as reach allows.
func densest(p Problem, l Layout, reach measure.Length) Layout {
	rows := slices.Clone(l.Rows)
	slices.SortStableFunc(rows, func(a, b Row) int { return cmp.Compare(b.meanWidth(p), a.meanWidth(p)) })
	var out Layout
	for _, r := range rows {
		r.Repeat = min(r.Repeat, int((reach-out.Length)/r.Height))
		out.add(r)
	}
	return out
}

// meanWidth is the area of a row's cuts and parts over its height.
func (r Row) meanWidth(p Problem) measure.Length {
	var a area
	for _, c := range r.Cuts {
		a.add(p.Pieces[c.Piece].Across, p.Pieces[c.Piece].Along, c.Count)
	}
	for _, q := range r.Parts {
		a.add(q.Width, p.Strips[q.Strip].Height, 1)
	}
	return a.over(r.Height)
}
