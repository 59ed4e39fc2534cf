package tabulate

import (
	"fmt"
	"strings"

	"yardproof/pipeline/internal/derive"
)

// What the sheets say of strip sets that are joined end to end into the sides of
// tubes: each of these says nothing where none are.

// joinedStrips tells of strips for sets that are joined end to end, beside the
// cut list of their fabric.
func (c cutter) joinedStrips() []string {
	var out []string
	for _, n := range c.f.Needs {
		for _, p := range c.s.Parts {
			if p.Tube == nil || p.Tube.Aside == 1 || p.Needed == 0 || p.Tube.Takes(c.s.Part(n.For.Text)) == 0 {
				continue
			}
			out = append(out, fmt.Sprintf("%s: its sets are joined end to end, %d on each side of a tube of %s. Square both ends of its strips.", n.For.Text, p.Tube.Aside, p.Name.Text))
		}
	}
	return unique(out)
}

// joinCaption says below a drawn square that joins are not drawn.
func joinCaption(s *derive.Size, p *derive.Part) string {
	square := s.Square(p)
	if square == nil || square.Tube.Aside == 1 {
		return ""
	}
	_, apart := square.Tube.Crossed()
	return fmt.Sprintf("joins, not drawn, cross up to %d of a tube's %d", apart, square.Tube.Yield.Each)
}

// joinsUndrawn says of a drawn quilt that joins are not drawn.
func joinsUndrawn(s *derive.Size) string {
	var names []string
	for _, p := range s.Parts {
		if p.Tube != nil && p.Tube.Aside > 1 && p.Needed > 0 {
			names = append(names, p.Name.Text)
		}
	}
	if names == nil {
		return ""
	}
	return " The joins that cross some squares of " + strings.Join(names, ", ") + " are not drawn."
}
