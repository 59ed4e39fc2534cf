package check

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

func kindsUnsaid(p *Pass) {
	for _, part := range p.slack().told.Parts {
		t := part.Tube
		if t == nil || t.Count == 0 || !t.Kinds.TakeTurns() || t.Kinds.Near == 0 || t.Kinds.Far == 0 {
			continue
		}
		more, less := piecing.Orientations(t.Yield.Each)
		p.Report(p.squareAt(part, plan.EitherKind), Finding{
			Message: fmt.Sprintf("a tube of %q gives %s with %s along the diagonal and %s, and the plan does not say where which goes", part.Name.Text,
				count(int(more), "square"), edgeStrips(t, plan.NearKind), fmt.Sprintf("%d with %s", less, edgeStrips(t, plan.FarKind))+otherwise(more, less)),
			Ways:    ways(advise(fmt.Sprintf("write { \"part\": %q, \"kind\": \"near\" }, or \"far\", at each place", part.Name.Text) + turnedSet(t))),
			Related: []Related{{part.Name.At, "the tube is made here"}},
		})
	}
}

// otherwise adds how an odd number divides where a tube is begun the other way.
func otherwise(more, less int64) string {
	if more == less {
		return ""
	}
	return fmt.Sprintf(" (or %d and %d, as it is begun)", less, more)
}

// edgeStrips names the strips along the diagonal of a kind.
func edgeStrips(t *derive.Tube, kind plan.SquareKind) string {
	var names []string
	for _, strips := range t.Lie {
		strip := strips[0]
		if kind == plan.FarKind {
			strip = strips[len(strips)-1]
		}
		if !slices.Contains(names, strip.Fabric.Role.Text) {
			names = append(names, strip.Fabric.Role.Text)
		}
	}
	return strings.Join(names, " and ")
}

// turnedSet is the way out that makes both kinds alike, where there is one.
func turnedSet(t *derive.Tube) string {
	if t.Sets[0] != t.Sets[1] {
		return ""
	}
	return "; or lay the second set \"end for end\", and all are alike but for a half turn"
}

// squareAt is the first place of the layout where a square of a tube stands and
// says its kind, or says none; else where the tube is made.
func (p *Pass) squareAt(tube *derive.Part, kind plan.SquareKind) source.Range {
	for _, c := range p.Size.Of.Layout.Places() {
		q := p.Size.Part(c.Part.Text)
		if q == nil || c.Kind != kind {
			continue
		}
		if square := p.Size.SquareOf(q); square != nil && square.Name == tube.Name {
			return c.At
		}
	}
	return tube.Name.At
}

// wrongSquares reports kinds that are said of anything else than squares of a
// tube.
func (p *Pass) wrongSquares() {
	s := p.Size.Of
	for i := range s.Parts {
		if room, ok := p.Size.Part(s.Parts[i].Name.Text).Room.(derive.Seating); ok {
			for _, c := range room.Places() {
				p.wrongKind(fmt.Sprintf("%q", s.Parts[i].Name.Text), c)
			}
		}
	}
	for _, c := range s.Layout.Places() {
		p.wrongKind("the layout", c)
	}
}

// wrongKind reports a kind where no square of a tube stands.
func (p *Pass) wrongKind(by string, c plan.Cell) {
	part := p.Size.Part(c.Part.Text)
	if part == nil || c.Kind == plan.EitherKind || p.Size.SquareOf(part) != nil {
		return
	}
	p.Report(c.At, Finding{
		Message: fmt.Sprintf("%s asks for a %s %q, and only squares of a tube are near or far", by, c.Kind, c.Part.Text),
		Ways:    ways(p.removeKind(c), advise("say it inside the part, of the squares it is made of")),
		Related: []Related{{part.Name.At, "it is made here"}},
	})
}

// removeKind is the way out of a kind that only a tube's squares have.
func (p *Pass) removeKind(c plan.Cell) diag.Way {
	kind := p.text().Node(c.At).Get("kind")
	if kind == nil {
		return diag.Way{}
	}
	return mend(p.remove(kind.Range))
}
