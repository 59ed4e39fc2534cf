package check

import (
	"fmt"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

func seamDiffers(p *Pass) {
	base := p.Size.Of.Seam
	report := func(of string, s *plan.Seam) {
		if s == nil || s.Why.Given() {
			return
		}
		if s.Allowance.Length == base.Allowance.Length && s.Stitch.Text == base.Stitch.Text {
			return
		}
		p.Report(s.At, Finding{
			Message: fmt.Sprintf("%s is sewn with a %s seam, stitch %s; the plan's seam is %s, stitch %s", of,
				p.length(s.Allowance.Length), s.Stitch.Text, p.length(base.Allowance.Length), base.Stitch.Text),
			Hint:    "give the reason as its why, or use the plan's seam",
			Related: []Related{{base.At, "the plan's seam"}},
		})
	}
	for _, part := range p.Size.Parts {
		report(fmt.Sprintf("%q", part.Name.Text), part.Part.Seam)
	}
	for _, b := range p.Size.AllBorders() {
		report(fmt.Sprintf("border %q", b.Said.Name.Text), b.Said.Seam)
	}
}

func seamEatsPiece(p *Pass) {
	for _, part := range p.Size.Parts {
		for _, piece := range seamed(part) {
			if piece.width == 0 || piece.width.Surd().Cmp(piece.seams.Surd()) > 0 {
				continue
			}
			p.Report(piece.at, Finding{
				Message: fmt.Sprintf("%s of %q is cut %s and its seams take %s: nothing is left", piece.what, part.Name.Text,
					p.length(piece.width), p.length(piece.seams)),
				Hint:  "cut it wider than " + p.length(piece.seams),
				About: geometryOf(part), Root: true,
			})
			break
		}
	}
}

// seamedPiece is a piece and what its seams take of its width.
type seamedPiece struct {
	what         string
	width, seams measure.Length
	at           source.Range
}

func seamed(part *derive.Part) []seamedPiece {
	s := part.Seam.Allowance.Length
	switch op := part.Operation.(type) {
	case plan.Cut:
		if op.Halving == plan.Whole {
			return []seamedPiece{{"the width", op.Width.Length, 2 * s, op.Width.At}, {"the height", op.Height.Length, 2 * s, op.Height.At}}
		}
	case plan.StripSet:
		return seamedStrips(part, op, s)
	case plan.HalfSquares, plan.TriangleSquare:
		return seamedTriangles(part, s)
	}
	switch op := part.Operation.(type) {
	case plan.Loop:
		return []seamedPiece{{"the ring", op.Cut.Length, 2 * s, op.Cut.At}}
	case plan.Chain:
		if part.Chain != nil {
			return []seamedPiece{{"a strip", part.Chain.Width, 2 * s, op.At}}
		}
	}
	return seamedUnit(part)
}

func seamedStrips(part *derive.Part, op plan.StripSet, s measure.Length) []seamedPiece {
	var out []seamedPiece
	if part.Set == nil {
		return nil
	}
	for i, strip := range part.Set.Strips {
		at := op.Strips[i].Width.At
		if at == (source.Range{}) {
			at = strip.At.At
		}
		out = append(out, seamedPiece{fmt.Sprintf("strip %d", i+1), strip.Width, 2 * s, at})
	}
	if op.Segment.Given() {
		out = append(out, seamedPiece{"the segment", op.Segment.Length, 2 * s, op.Segment.At})
	}
	return out
}

// seamedTriangles compares the cut square with the cut size of a unit that
// finishes at nothing, rounded down to a tick: at that size or below, nothing
// is left.
func seamedTriangles(part *derive.Part, s measure.Length) []seamedPiece {
	t := part.Triangle
	if t == nil {
		return nil
	}
	nothing := (2 * s).Surd()
	at, cut := part.Name.At, piecing.QuarterSquareCut(nothing, s)
	switch op := part.Operation.(type) {
	case plan.HalfSquares:
		at, cut = op.Square.At, piecing.HalfSquareCut(nothing, s, op.AtATime)
	case plan.TriangleSquare:
		if len(op.Of) == 2 {
			cut = piecing.HalfSquareCut(nothing, s, 2)
		}
	}
	return []seamedPiece{{"the square", t.Cut, cut.FloorTo(measure.Tick), at}}
}
