package tabulate

import (
	"fmt"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
)

// What the sheets say of strip sets that are joined end to end into the sides of
// tubes: each of these says nothing where none are.

// joinedSides says in the making of a tube that each of its sides is of several
// sets.
func joinedSides(t *derive.Tube) string {
	if t.Aside == 1 {
		return ""
	}
	return fmt.Sprintf("%d sets joined end to end on each side, ", t.Aside)
}

// joinNotes tell how sets are joined, and how many squares a join crosses.
func joinNotes(t *derive.Tube) []string {
	if t.Aside == 1 {
		return nil
	}
	matched, apart := t.Crossed()
	text := fmt.Sprintf("square both ends of each set before it is joined; the %d joins of a tube cross %d of its %d squares at most", t.Joins(), matched, t.Yield.Each)
	if apart > matched {
		text += fmt.Sprintf(" where those of the two sides lie on each other, and %d where they do not", apart)
	}
	return []string{text + ": match the joins and press those of the two sides opposite ways"}
}

// ofEachSet is what is to spare of each joined set.
func ofEachSet(y derive.Yield, u measure.Unit) string {
	if y.Joined < 2 || y.Rest() == 0 {
		return ""
	}
	return ", " + y.Slack().AsThere(u) + " of each set"
}

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
