package check

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/plan"
)

// unknownPrinted reports printed figures that nothing can be compared with.
func unknownPrinted(p *Pass) {
	said := p.Size.Of.Printed
	if said == nil {
		return
	}
	for _, m := range said.Measures {
		p.printedPart("measures", m.Of, anyPart, "part")
	}
	p.printedParts("parts", said.Parts, anyPart, "part")
	p.printedStrips(said.Strips)
	p.printedParts("sets", said.Sets, isSet, "strip set")
	p.printedParts("tubes", said.Tubes, isTube, "tube")
	p.printedParts("per_tube", said.PerTube, isTube, "tube")
	p.printedParts("per_set", said.PerSet, isCutSet, "strip set that is cut into segments")
	for _, c := range said.Left {
		p.printedFabric("left", c.Of, plan.Precut)
	}
	for _, c := range said.Precuts {
		p.printedFabric("precuts", c.Of, plan.Precut)
	}
	for _, c := range said.Fabric {
		p.printedFabric("fabric", c.Of, plan.Yardage)
	}
	p.printedTop(said)
	p.printedFinish(said)
	p.printedClasses(said)
}

// printedClasses are of stitch classes that sew something.
func (p *Pass) printedClasses(said *plan.Printed) {
	if !p.Size.Top.Known || !p.Size.Of.Seam.Stitch.Given() {
		return
	}
	t := p.Size.Thread
	var classes []string
	for _, use := range t.Uses {
		classes = append(classes, use.Class)
	}
	for _, l := range said.Thread {
		if !slices.Contains(classes, l.Of.Text) && len(t.Unknown) == 0 {
			p.strayFigure("thread", l.Of, "names a stitch class that no seam of the plan has", p.nameNear(l.Of.At, l.Of.Text, slices.Compact(classes)))
		}
	}
}

func anyPart(derive.Traits) bool { return true }

func isTube(t derive.Traits) bool { return t.From == derive.FromTubes }

func isSet(t derive.Traits) bool { return t.From == derive.FromSets || isCutSet(t) }

func isCutSet(t derive.Traits) bool { return t.From == derive.FromCutSets }

func (p *Pass) printedParts(under string, counts []plan.PrintedCount, fits func(derive.Traits) bool, want string) {
	for _, c := range counts {
		p.printedPart(under, c.Of, fits, want)
	}
}

func (p *Pass) printedPart(under string, of plan.Text, fits func(derive.Traits) bool, want string) {
	s := p.Size.Of
	part := p.Size.Part(of.Text)
	var fitting []string
	for _, q := range s.Parts {
		if fits(p.Size.Part(q.Name.Text).Room.Traits()) {
			fitting = append(fitting, q.Name.Text)
		}
	}
	switch {
	case part == nil:
		p.strayFigure(under, of, fmt.Sprintf("names no %s of the plan", want), p.nameNear(of.At, of.Text, fitting))
	case !fits(part.Room.Traits()):
		p.strayFigure(under, of, "names a part that is no "+want, p.nameNear(of.At, of.Text, fitting))
	}
}

// printedStrips may also be about borders, the binding and the layout's own
// pieces.
func (p *Pass) printedStrips(counts []plan.PrintedStrips) {
	s := p.Size.Of
	names := partNames(s)
	for _, b := range s.Layout.Borders {
		names = append(names, b.Name.Text)
	}
	names = append(names, joinedFinish(s)...)
	for _, name := range settingStrips {
		if _, ok := settingLabel(s.Layout.Setting, name); ok {
			names = append(names, name)
		}
	}
	for _, own := range p.ownCut() {
		names = append(names, own.label.Text)
	}
	for i, c := range counts {
		part := p.Size.Part(c.Of.Text)
		if i > 0 && counts[i-1].Of == c.Of {
			p.printedStripsOf(c)
			continue
		}
		switch {
		case part != nil && !part.Room.Traits().Cut:
			p.strayFigure("strips", c.Of, "names a part that is not cut from fabric", p.whatIsCut(c.Of))
		case part == nil && slices.Contains(settingStrips, c.Of.Text) && !slices.Contains(names, c.Of.Text):
			p.strayFigure("strips", c.Of, settingMissing(c.Of.Text), ways(mend(p.remove(c.Of.At)), advise("write the figure under what is cut")))
		case part == nil && !slices.Contains(names, c.Of.Text):
			p.strayFigure("strips", c.Of, "names no part or border of the plan, nor what else of it is cut from strips", p.nameNear(c.Of.At, c.Of.Text, names))
		default:
			p.printedStripsOf(c)
		}
	}
}

// whatIsCut names the pieces that a part has of its own, where it has any.
func (p *Pass) whatIsCut(part plan.Text) []diag.Way {
	var own []diag.Way
	for _, o := range p.ownCut() {
		if strings.HasPrefix(o.label.Text, part.Text+" ") {
			own = append(own, choice(p.renamed(part.At, o.label.Text).With("write it under")))
		}
	}
	if len(own) == 0 {
		return ways(advise("write the figure under what is cut"))
	}
	return ways(own...)
}

// settingMissing says why the layout has none of its own pieces of a name.
func settingMissing(name string) string {
	switch name {
	case "sashing":
		return "is of a layout with sashing, and this one has none"
	case "cornerstones":
		return "is of sashing with cornerstones, and this layout has none"
	}
	return "is of blocks on point, and these stand straight"
}

// printedStripsOf is about the fabric that strips are said to be cut from.
func (p *Pass) printedStripsOf(c plan.PrintedStrips) {
	if !c.Fabric.Given() {
		return
	}
	roles := p.stripRoles(c.Of.Text)
	switch {
	case p.Size.Fabric(c.Fabric.Text) == nil:
		p.strayFigure("strips", c.Fabric, "names no fabric of the plan", p.nameNear(c.Fabric.At, c.Fabric.Text, roles))
	case len(roles) > 0 && !slices.Contains(roles, c.Fabric.Text):
		p.strayFigure("strips", c.Fabric, fmt.Sprintf("is no fabric that %q is cut from", c.Of.Text), p.nameNear(c.Fabric.At, c.Fabric.Text, roles))
	}
}

// stripRoles are the fabrics that something is cut from, as far as they are
// known.
func (p *Pass) stripRoles(name string) []string {
	c, _ := p.stripsSaid(plan.PrintedStrips{Of: plan.Text{Text: name}, Each: true})
	var roles []string
	for _, f := range c.fabrics {
		roles = append(roles, f.Fabric.Role.Text)
	}
	return roles
}

// joinedFinish are the parts of the finish that are joined strips: a bias
// binding is cut from squares.
func joinedFinish(s *plan.Size) []string {
	var names []string
	if b := s.Finish.Binding; b != nil && b.Kind == plan.StraightGrain {
		names = append(names, "binding")
	}
	if s.Finish.Sleeve != nil {
		names = append(names, "sleeve")
	}
	return names
}

// border finds a border as written, nil when there is none.
func (p *Pass) border(name string) *plan.Border {
	for i := range p.Size.Of.Layout.Borders {
		if b := &p.Size.Of.Layout.Borders[i]; b.Name.Text == name {
			return b
		}
	}
	return nil
}

func (p *Pass) printedFabric(under string, of plan.Text, form plan.Form) {
	s := p.Size.Of
	f := s.Fabric(of.Text)
	var fitting []string
	for _, q := range s.Fabrics {
		if q.Form == form {
			fitting = append(fitting, q.Role.Text)
		}
	}
	switch {
	case f == nil:
		p.strayFigure(under, of, "names no fabric of the plan", p.nameNear(of.At, of.Text, fitting))
	case f.Form != form && form == plan.Precut:
		p.strayFigure(under, of, "names a fabric that is sold by length, not in packs", ways(advise("print its length under fabric")))
	case f.Form != form:
		p.strayFigure(under, of, "names a fabric that is sold in packs, not by length", ways(advise("print its packs under precuts")))
	}
}

func (p *Pass) strayFigure(under string, of plan.Text, fault string, out []diag.Way) {
	p.Report(of.At, Finding{
		Message: fmt.Sprintf("%q, printed under %s, %s", of.Text, under, fault),
		Ways:    out,
	})
}

// printedTop is about sashes, setting triangles and borders that the layout has.
func (p *Pass) printedTop(said *plan.Printed) {
	l := p.Size.Of.Layout
	for _, c := range said.Setting {
		switch {
		case (c.Of.Text == "sashes" || c.Of.Text == "cornerstones") && l.Sashing == nil:
			p.strayFigure("setting", c.Of, "is of a layout with sashing, and this one has none", ways(mend(p.remove(c.Of.At)), advise("add the sashing")))
		case c.Of.Text == "cornerstones" && !l.Sashing.Cornerstones.Given():
			p.strayFigure("setting", c.Of, "is of sashing with cornerstones, and this one runs through", ways(mend(p.remove(c.Of.At)), advise("name the cornerstones' fabric")))
		case strings.HasSuffix(c.Of.Text, "_triangles") && l.Triangles == nil, strings.HasSuffix(c.Of.Text, "_squares") && l.Triangles == nil:
			p.strayFigure("setting", c.Of, "is of blocks on point, and these stand straight", ways(mend(p.remove(c.Of.At)), advise("set the blocks on point")))
		}
	}
	var names []string
	for _, b := range l.Borders {
		names = append(names, b.Name.Text)
	}
	for _, b := range said.Borders {
		if !slices.Contains(names, b.Of.Text) {
			p.strayFigure("borders", b.Of, "names no border of the layout", p.nameNear(b.Of.At, b.Of.Text, names))
		}
	}
}

func (p *Pass) printedFinish(said *plan.Printed) {
	finish := p.Size.Of.Finish
	if said.Backing.Given() && finish.Backing == nil {
		p.Report(said.Backing.Width.At, Finding{
			Message: fmt.Sprintf("a backing of %s is printed, and the plan has no backing", p.pair(said.Backing.Width.Length, said.Backing.Height.Length)),
			Ways:    ways(p.removeFigure(said.Backing.Width.At), advise("add the backing to finish")),
		})
	}
	if said.Batting.Given() && finish.Batting == nil {
		p.Report(said.Batting.Width.At, Finding{
			Message: fmt.Sprintf("a batting of %s is printed, and the plan has no batting", p.pair(said.Batting.Width.Length, said.Batting.Height.Length)),
			Ways:    ways(p.removeFigure(said.Batting.Width.At), advise("add the batting to finish")),
		})
	}
}
