package cutting

import (
	"cmp"
	"slices"

	"yardproof/schema/measure"
)

// LongStrip runs along the cloth: borders cut lengthwise, before anything else.
type LongStrip struct {
	Name   string
	Width  measure.Length
	Length measure.Length
	Count  int
}

// BesideResult is a layout with long strips side by side at one edge, a panel
// beside them cut into strips of its own, and strips of the whole width below.
// Reach is the length of the longest of the long strips. Nothing shorter than
// Bound can be had by any straight cutting; the layout itself is only the best
// of two.
type BesideResult struct {
	Reach      measure.Length
	PanelWidth measure.Length
	Panel      Layout
	Below      Layout
	Length     measure.Length
	Bound      measure.Length
}

// SolveBeside lays out long strips and, in the panel beside them and below,
// the rest of a problem. Long strips wider than the cloth in all are a
// *[TooWide]; otherwise the error is that of [Solve].
func SolveBeside(p Problem, long []LongStrip, limits Limits) (BesideResult, error) {
	r := BesideResult{PanelWidth: p.Cloth.Width}
	for _, s := range long {
		if s.Count == 0 {
			continue
		}
		if !side(s.Width) || !side(s.Length) || s.Count < 0 || s.Count > maxCount {
			return r, &Unusable{Piece: -1, Strip: -1, Name: s.Name, What: "sides must be positive and the count not negative"}
		}
		r.Reach = max(r.Reach, s.Length)
		if r.PanelWidth -= s.Width * measure.Length(s.Count); r.PanelWidth < 0 {
			return r, &TooWide{Piece: -1, Strip: -1, Name: s.Name, Needs: p.Cloth.Width - r.PanelWidth, Width: p.Cloth.Width}
		}
	}
	below, err := Solve(p, limits)
	if err != nil {
		return r, err
	}
	r.Below = below.Layout
	if rest, panel, ok := intoPanel(p, r, limits); ok && rest.Length < r.Below.Length {
		r.Panel, r.Below = panel, rest
	}
	r.Length = r.Reach + r.Below.Length
	r.Bound = besideBound(p, long)
	return r, nil
}

// intoPanel cuts what the panel holds from it and lays out the rest below.
func intoPanel(p Problem, r BesideResult, limits Limits) (below, panel Layout, ok bool) {
	if r.PanelWidth <= 0 || r.Reach == 0 {
		return below, panel, false
	}
	q := Problem{Cloth: p.Cloth, Pieces: slices.Clone(p.Pieces)}
	q.Cloth.Width = r.PanelWidth
	for i, piece := range q.Pieces {
		if shortestAlong(piece, r.PanelWidth) == 0 {
			q.Pieces[i].Count = 0
		}
	}
	solved, err := Solve(q, limits)
	if err != nil {
		return below, panel, false
	}
	panel = densest(p, solved.Layout, r.Reach)
	rest := p
	rest.Pieces = slices.Clone(p.Pieces)
	for _, row := range panel.Rows {
		for _, c := range row.Cuts {
			rest.Pieces[c.Piece].Count -= c.Count * row.Repeat
		}
	}
	left, err := Solve(rest, limits)
	return left.Layout, panel, err == nil
}

// densest keeps the strips with the most fabric in use for their height, as
// many as reach allows.
func densest(p Problem, l Layout, reach measure.Length) Layout {
	rows := slices.Clone(l.Rows)
	slices.SortStableFunc(rows, func(a, b Row) int { return cmp.Compare(b.meanWidth(p.Pieces), a.meanWidth(p.Pieces)) })
	var out Layout
	for _, r := range rows {
		r.Repeat = min(r.Repeat, int((reach-out.Length)/r.Height))
		out.add(r)
	}
	return out
}

// meanWidth is the area of a row's cuts over its height.
func (r Row) meanWidth(pieces []Piece) measure.Length {
	var a area
	for _, c := range r.Cuts {
		a.add(pieces[c.Piece].Across, pieces[c.Piece].Along, c.Count)
	}
	return a.over(r.Height)
}

// besideBound is the area bound with the long strips as pieces.
func besideBound(p Problem, long []LongStrip) measure.Length {
	p.Pieces = slices.Clone(p.Pieces)
	for _, s := range long {
		p.Pieces = append(p.Pieces, Piece{Name: s.Name, Across: max(1, s.Width), Along: max(1, s.Length), Count: s.Count})
	}
	return AreaBound(p)
}
