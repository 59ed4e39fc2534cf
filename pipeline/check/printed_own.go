package check

import (
	"strings"

	"yardproof/schema/plan"
)

// ownPieces is what is cut from fabric and is neither a part nor a border of the
// quilt, nor its binding and the like: the squares in a border's corners, the
// borders of a part, and the sashing and setting triangles of one. Its name, of
// several words, is that of the cut list.
type ownPieces struct {
	label plan.Text
	about Subject
}

// ownOf finds such pieces by their name.
func (p *Pass) ownOf(name string) (own ownPieces, ok bool) {
	for _, o := range p.ownCut() {
		if o.label.Text == name {
			return o, true
		}
	}
	return own, false
}

// ownCut are all of them, each once.
func (p *Pass) ownCut() []ownPieces {
	var all []ownPieces
	seen := map[string]bool{}
	for _, f := range p.Size.Fabrics {
		for _, n := range f.Needs {
			first, _, several := strings.Cut(n.For.Text, " ")
			if !several || seen[n.For.Text] {
				continue
			}
			seen[n.For.Text] = true
			if of, ok := strings.CutSuffix(n.For.Text, " corners"); ok && p.border(of) != nil {
				all = append(all, ownPieces{n.For, finishAbout(of)})
			} else if part := p.Size.Part(first); part != nil {
				all = append(all, ownPieces{n.For, countOf(part)})
			}
		}
	}
	return all
}
