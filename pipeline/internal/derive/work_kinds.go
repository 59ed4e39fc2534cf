package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/report"
	"yardproof/schema/source"
)

// tubesWork tells why so many tubes are sewn: as many as all squares take or,
// where more, as many as the kind most wanted takes.
func (s *Size) tubesWork(p *Part, needed report.Term) *report.Work {
	t := p.Tube
	each := because(report.N(t.Yield.Each), s.YieldWork(p))
	if piecing.Batches(p.Needed, max(1, t.Yield.Each)) >= t.Count {
		return s.batches(p.Name.Text+", tubes", t.Count, needed, each)
	}
	return s.once(p.Name.Text+", tubes", func() *report.Work {
		kind, wanted := t.Kinds.Leading()
		most, _ := piecing.Orientations(t.Yield.Each)
		return &report.Work{
			Formula: "max(ceil(N / each), ceil(kind / most))", Value: report.N(t.Count),
			Terms: []report.Term{
				needed, term("each", "squares from one tube", each, source.Range{}),
				term("kind", kind.String()+" squares wanted", report.N(wanted), source.Range{}),
				term("most", "squares of one kind from a tube, ceil(each / 2)", report.N(most), source.Range{}),
			},
		}
	})
}
