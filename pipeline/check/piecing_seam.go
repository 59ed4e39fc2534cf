package check

import (
	"fmt"

	"yardproof/schema/plan"
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
			Ways:    ways(advise("give the reason as its \"why\""), noted(mend(p.remove(s.At)), "to use the plan's seam")),
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
		for _, piece := range part.Room.Seamed() {
			if piece.Width == 0 || piece.Width > piece.Seams {
				continue
			}
			p.Report(piece.At, Finding{
				Message: fmt.Sprintf("%s of %q is cut %s and its seams take %s: nothing is left", piece.What, part.Name.Text,
					p.there(piece.Width), p.needs(piece.Seams)),
				Ways:  ways(advise("cut it wider than " + p.needs(piece.Seams))),
				About: geometryOf(part), Root: true,
			})
			break
		}
	}
}
