package check

import (
	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
)

// faults is the rule about faults of a kind that only an operation itself knows of.
func faults(kind derive.FaultKind) func(*Pass) {
	return func(p *Pass) {
		for _, part := range p.Size.Parts {
			room, ok := part.Room.(derive.Faulty)
			if !ok {
				continue
			}
			for _, f := range room.Faults() {
				if f.Kind == kind {
					p.reportFault(part, f)
				}
			}
		}
	}
}

func (p *Pass) reportFault(part *derive.Part, f derive.Fault) {
	u := p.Plan.Units
	found := Finding{Message: f.Message.In(u), Hint: f.Hint.In(u), Root: f.Root}
	if f.Root {
		found.About = geometryOf(part)
	}
	if f.Slight {
		found.Level = diag.Note
	}
	for _, r := range f.Related {
		found.Related = append(found.Related, Related{r.At, r.Says})
	}
	p.Report(f.At, found)
}
