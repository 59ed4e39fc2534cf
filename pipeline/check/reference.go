package check

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

var referenceChecks = []Check{
	{
		Rule: "reference/cycle", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "a part is made of itself",
		Why:     "Nothing can be cut first. Where a star is sewn of corners, corners are trimmed from tiles and tiles are sewn of stars, there is no piece that the cutter could begin with, and nothing of it can be counted.",
		Fix:     "make one part of the ring from fabric, or from parts outside the ring",
		Run:     cycles,
	},
	{
		Rule: "reference/duplicate-id", Level: diag.Error, Since: "0.1.0", Scope: Line,
		Summary: "two plans of the line have the same id",
		Why:     "Output files are named after the id, so that one plan's cut list would replace the other's: 'tidal-pool' of spring and 'tidal-pool' of autumn give one workbook, and half the line is cut from the wrong one. Ids that differ only in upper and lower case are one file on many systems.",
		Fix:     "give one of the plans another id",
	},
	{
		Rule: "reference/duplicate-title", Level: diag.Warning, Since: "0.1.0", Scope: Line,
		Summary: "two plans of the line have the same title",
		Why:     "The title is on the cover, on the kit's label and on the order sheet. Of two patterns called 'Tidal Pool' a shop orders the one and is sent the other, and a kit is packed from the wrong cut list. An edition of the same pattern in the other unit may share it.",
		Fix:     "give one of the plans another title, or take the old plan out of the line",
	},
	{
		Rule: "reference/unknown-fabric", Level: diag.Error, Since: "0.1.0", Scope: Size, Hides: true,
		Summary: "a fabric is named that the plan does not have",
		Why:     "What is cut from it is missing from the fabric list. A border of 'sklye' beside a fabric 'sky' needs 5/8 yd that no customer is told to buy.",
		Fix:     "write the role as it stands under fabrics, or add the fabric",
		Run:     unknownFabrics,
	},
	{
		Rule: "reference/unknown-part", Level: diag.Error, Since: "0.1.0", Scope: Size, Hides: true,
		Summary: "a part is named that the plan does not have",
		Why:     "A block that is laid out and never made has no pieces to cut: twelve 'setp' in a grid and a part 'step' give a cut list without a single strip.",
		Fix:     "write the part's name as it stands under parts, or add the part",
		Run:     unknownParts,
	},
	{
		Rule: "reference/unknown-printed", Level: diag.Error, Since: "0.1.0", Scope: Size, Hides: true,
		Summary: "a printed figure is about nothing in the plan",
		Why:     "A figure that is compared with nothing passes unproved. '9 tubes' printed under the name of a strip set, or 1/2 yd of a fabric since renamed, is read by the customer all the same.",
		Fix:     "write the figure under the name of what it is about, or remove it",
		Run:     unknownPrinted,
	},
	{
		Rule: "reference/unused-fabric", Level: diag.Warning, Since: "0.1.0", Scope: Plan,
		Summary: "a fabric is listed and nothing is made of it in any size",
		Why:     "The customer buys it and has it left. Half a yard of an accent that an earlier draft had in its corners is paid for at every sale.",
		Fix:     "remove the fabric, or make something of it",
		Run:     unusedFabrics,
	},
	{
		Rule: "reference/unused-part", Level: diag.Warning, Since: "0.1.0", Scope: Plan,
		Summary: "a part stands in no layout and in no other part",
		Why:     "Its pieces are in nobody's cut list. Either it was left behind by an earlier draft, or a block that should stand in the layout does not: a sampler of nine blocks with eight laid out finishes a row short.",
		Fix:     "remove the part, or put it into the layout",
		Run:     unusedParts,
	},
	{
		Rule: "reference/wrong-kind", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "what is named is not what is wanted there",
		Why:     "A tube is sewn of two whole strip sets, a triangle square of triangles, a row of four-sided parts. A tube of sets that are also cut into segments has nothing left to be sewn of: 42 in of strip set are either eight 5-in segments or a tube.",
		Fix:     "name a part of the kind that is wanted, or make one",
		Run:     wrongKinds,
	},
}

// stray reports whether a mention names neither a fabric nor a part.
func (p *Pass) stray(m plan.Mention) bool {
	return p.Size.Fabric(m.Name.Text) == nil && p.Size.Part(m.Name.Text) == nil
}

// strays reports each name that the size's plan does not have, once: where it is
// written first, and beside it where it is written again.
func (p *Pass) strays(kind string, fabric bool, names []string) {
	var order []string
	places := map[string][]plan.Mention{}
	for _, m := range p.Size.Of.Strays() {
		if m.Fabric != fabric || !p.stray(m) {
			continue
		}
		name := m.Name.Text
		if len(places[name]) == 0 {
			order = append(order, name)
		}
		places[name] = append(places[name], m)
	}
	for _, name := range order {
		first, others := places[name][0], places[name][1:]
		finding := Finding{
			Message: fmt.Sprintf("%s names the %s %q, and the plan has none of that name", first.By, kind, name),
			Ways:    p.spelt(kind, places[name], names),
		}
		for _, m := range others {
			finding.Related = append(finding.Related, Related{m.Name.At, m.By + " names it too"})
		}
		p.Report(first.Name.At, finding)
	}
}

// spelt are the ways out of a name that there is not, wherever it is written: the one
// that is almost the same in all places or, of several, the other way round.
func (p *Pass) spelt(kind string, places []plan.Mention, names []string) []diag.Way {
	name := places[0].Name.Text
	near := schema.Nearest(name, names)
	if near == "" || len(places) == 1 {
		return p.nameNear(places[0].Name.At, name, names)
	}
	var edits []diag.Edit
	for _, m := range places {
		edits = append(edits, of(p.renamed(m.Name.At, near), fmt.Sprintf("in all %d places", len(places))))
	}
	return ways(mend(edits...), advise(fmt.Sprintf("call the %s %q", kind, name)))
}

func unknownFabrics(p *Pass) {
	s := p.Size.Of
	p.strays("fabric", true, roles(s))
	for _, way := range p.Plan.Colourways {
		for _, role := range way.Roles {
			if !p.somewhere(role.Text) {
				p.Report(role.At, Finding{
					Message: fmt.Sprintf("the colourway %q changes the fabric %q, and the plan has none of that name", way.Name.Text, role.Text),
					Ways:    p.nameNear(role.At, role.Text, roles(s)),
				})
			}
		}
	}
}

// somewhere reports whether any size has a fabric.
func (p *Pass) somewhere(role string) bool {
	return slices.ContainsFunc(p.Plan.Sizes, func(s plan.Size) bool { return s.Fabric(role) != nil })
}

func unknownParts(p *Pass) { p.strays("part", false, partNames(p.Size.Of)) }

func roles(s *plan.Size) []string {
	var names []string
	for _, f := range s.Fabrics {
		names = append(names, f.Role.Text)
	}
	return names
}

func partNames(s *plan.Size) []string {
	var names []string
	for _, p := range s.Parts {
		names = append(names, p.Name.Text)
	}
	return names
}

// cycles reports each ring of parts once, at the mention that closes it.
func cycles(p *Pass) {
	told := map[string]bool{}
	for _, part := range p.Size.Cycle {
		if told[part.Name.Text] {
			continue
		}
		ring, at := ringFrom(p.Size, part)
		if ring == nil {
			continue // made of a ring, not one of it
		}
		for _, name := range ring {
			told[name] = true
		}
		message := fmt.Sprintf("%q is made of itself", part.Name.Text)
		if len(ring) > 1 {
			message += ": of " + strings.Join(append(ring[1:], part.Name.Text), ", which is made of ")
		}
		p.Report(at, Finding{
			Message: message,
			Ways:    ways(advise(fmt.Sprintf("make one of %s from fabric", strings.Join(ring, ", ")))),
		})
	}
}

// ringFrom is the shortest ring of parts through one, by name, and the place
// of the mention that closes it; nil when there is none.
func ringFrom(s *derive.Size, start *derive.Part) ([]string, source.Range) {
	type step struct {
		part *derive.Part
		path []string
	}
	seen := map[string]bool{}
	for queue := []step{{start, []string{start.Name.Text}}}; len(queue) > 0; queue = queue[1:] {
		here := queue[0]
		for _, in := range here.part.Operation.Ingredients() {
			next := s.Part(in.Name.Text)
			switch {
			case in.Fabric || next == nil:
			case next == start:
				return here.path, in.Name.At
			case !seen[in.Name.Text]:
				seen[in.Name.Text] = true
				queue = append(queue, step{next, append(here.path[:len(here.path):len(here.path)], in.Name.Text)})
			}
		}
	}
	return nil, source.Range{}
}

// resolved reports whether every name of every size stands for something of
// the kind that is meant. Until it does, nothing can be called unused.
func resolved(p *plan.Plan) bool {
	for i := range p.Sizes {
		if s := &p.Sizes[i]; s.Layout.Grid == nil || len(s.Strays()) > 0 {
			return false
		}
	}
	return true
}

func unusedParts(p *Pass) {
	if !resolved(p.Plan) {
		return
	}
	named := p.named(func(m plan.Mention) bool { return !m.Fabric })
	seen := map[string]bool{}
	for _, s := range p.Plan.Sizes {
		for _, part := range s.Parts {
			name := part.Name.Text
			if named[name] || seen[name] {
				continue
			}
			seen[name] = true
			p.Report(part.Name.At, Finding{
				Message: fmt.Sprintf("part %q stands in no layout and in no other part", name),
				Ways:    ways(mend(p.remove(part.Name.At)), advise("put it into the layout")),
			})
		}
	}
}

func unusedFabrics(p *Pass) {
	if !resolved(p.Plan) {
		return
	}
	named := p.named(func(m plan.Mention) bool { return m.Fabric && m.Made })
	seen := map[string]bool{}
	for _, s := range p.Plan.Sizes {
		for _, f := range s.Fabrics {
			role := f.Role.Text
			if named[role] || seen[role] {
				continue
			}
			seen[role] = true
			p.Report(f.Role.At, Finding{
				Message: fmt.Sprintf("nothing is made of the fabric %q in any size", role),
				Ways:    ways(mend(p.remove(f.Role.At)), advise("name it where it is used")),
			})
		}
	}
}

// named are the names that some mention of some size brings.
func (p *Pass) named(which func(plan.Mention) bool) map[string]bool {
	names := map[string]bool{}
	for i := range p.Plan.Sizes {
		for _, m := range p.Plan.Sizes[i].Once() {
			if which(m) {
				names[m.Name.Text] = true
			}
		}
	}
	return names
}

// writeName is the hint for a name that stands for nothing.
func writeName(word string, names []string) string {
	if near := schema.Nearest(word, names); near != "" {
		return fmt.Sprintf("write %q", near)
	}
	if len(names) == 0 {
		return "add it to the plan"
	}
	if len(names) == 1 {
		return fmt.Sprintf("write %q", names[0])
	}
	const most = 12
	if len(names) > most {
		names = append(names[:most:most], "...")
	}
	return "write one of " + strings.Join(names, ", ")
}
