package cutting

import (
	"slices"

	"yardproof/schema/measure"
)

// What is tried with panels beside long pieces that nobody has marked: so many sets of
// the longest, in so many bands.
const (
	mostSets  = 3
	mostBands = 12
)

// panels looks for a layout in which pieces that take at least half the width along the
// cloth, however they are turned, are cut first, side by side, and the panel beside
// them is used. It is no layout of strips. The length is that of none where there is
// nothing to try.
func panels(p Problem, limits Limits, spent *Spent) Layout {
	best := Layout{Length: none}
	done := Result{Spent: *spent}
	for _, least := range longest(p) {
		if limits.Allowance > 0 && done.Spent.Work >= limits.Allowance {
			done.Spent.Short = true
			break
		}
		q, turned := upright(p, least)
		long := lengthwise(q)
		for i := range q.Pieces {
			q.Pieces[i].Lengthwise = false
		}
		if len(bands(q, long)) > mostBands {
			continue
		}
		if l := beside(q, long, limits, &done); l.Length < best.Length {
			turn(l.Rows, turned)
			best = l
		}
	}
	*spent = done.Spent
	return best
}

// none is longer than any layout.
const none = maxSide << 20

// longest are the least extents along the cloth, longest first, from which pieces are
// tried beside a panel.
func longest(p Problem) []measure.Length {
	var all []measure.Length
	for _, q := range p.Pieces {
		if along := shortestAlong(q, p.Cloth.Width); q.Count > 0 && 2*along >= p.Cloth.Width {
			all = append(all, along)
		}
	}
	slices.Sort(all)
	all = slices.Compact(all)
	slices.Reverse(all)
	return all[:min(len(all), mostSets)]
}

// upright marks the pieces that take at least so much along the cloth as lengthwise,
// lying as they take least of it, and tells which of them are turned for it.
func upright(p Problem, least measure.Length) (Problem, []bool) {
	p.Pieces = slices.Clone(p.Pieces)
	turned := make([]bool, len(p.Pieces))
	for i := range p.Pieces {
		q := &p.Pieces[i]
		along := shortestAlong(*q, p.Cloth.Width)
		if q.Count == 0 || along < least {
			continue
		}
		if turned[i] = along != q.Along; turned[i] {
			q.Across, q.Along = q.Along, q.Across
		}
		q.Turnable, q.Lengthwise = false, true
	}
	return p, turned
}

// turn says of cuts that their pieces lie as upright has turned them.
func turn(rows []Row, turned []bool) {
	for _, r := range rows {
		for i := range r.Cuts {
			r.Cuts[i].Turned = r.Cuts[i].Turned != turned[r.Cuts[i].Piece]
		}
		turn(r.Panel, turned)
	}
}
