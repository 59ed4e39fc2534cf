package derive

import (
	"fmt"

	"yardproof/pipeline/report"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// tubeLength is the length of a tube, and where sets are joined to it how it
// came about.
func (s *Size) tubeLength(p *Part) report.Term {
	t := p.Tube
	const strip = "usable length of the shortest strip"
	if t.Aside == 1 {
		return term("L", strip, s.length(t.Yield.Length), s.lengthAt(t.shorter()))
	}
	w := s.once(p.Name.Text+", length of a side L", func() *report.Work {
		return &report.Work{
			Formula: "k x l - (k-1) x 2s", Value: s.length(t.Yield.Length),
			Terms: []report.Term{
				term("k", "sets joined end to end into a side", report.N(t.Aside), p.Operation.(plan.Tube).Joined.At),
				term("l", strip, s.length(t.set()), s.lengthAt(t.shorter())),
				s.seamTerm(p.Seam),
			},
		}
	})
	return term("L", fmt.Sprintf("usable length of %d sets joined end to end", t.Aside), because(s.length(t.Yield.Length), w), source.Range{})
}
