package check

import (
	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// surplus is the level at which a printed figure above what is needed is told:
// a warning where it is more than twice the need and the surplus is more than
// a limit, and a note otherwise.
func surplus[N int64 | measure.Length](printed, needed, limit N) diag.Level {
	if over := printed - needed; over > needed && over > limit {
		return diag.Warning
	}
	return diag.Note
}

// The limits of a surplus that is only noted. Whoever is told to buy one pack
// or a yard too much has some left; whoever is told to buy three times as much
// has been told wrong. Common practice, no source.
const (
	surplusPacks  = 1
	surplusStrips = 4
)

// surplusCloth is 1 yd, or 1 m in a metric plan.
func surplusCloth(u measure.Unit) measure.Length {
	if u == measure.Cm {
		return measure.Metre
	}
	return measure.Yard
}

// slack is a size as its pattern may leave slack in it.
type slack struct {
	printed *derive.Size // where what fits leaves nothing to straighten the ends, no more is taken from each set or tube than is printed
	careful *derive.Size // and one fewer than fits where nothing less is printed
	told    *derive.Size // no more is taken from any tube than is printed, whatever it leaves
}

// slack derives the size with the slack that its printed figures leave, once.
func (p *Pass) slack() slack {
	if known, ok := p.slacks[p.Size]; ok {
		return known
	}
	printed, careful, told := map[string]int64{}, map[string]int64{}, map[string]int64{}
	for _, part := range p.Size.Parts {
		y := part.Yield()
		if y == nil || y.Each == 0 || part.Needed == 0 {
			continue
		}
		name, each := part.Name.Text, p.printedYield(part)
		if part.Tube != nil && 0 < each && each < y.Each {
			told[name] = each
		}
		if y.Slack() >= slackWanted(p.Plan.Units) {
			continue
		}
		if 0 < each && each < y.Each {
			printed[name], careful[name] = each, each
		} else if y.Each > 1 {
			careful[name] = y.Each - 1
		}
	}
	known := slack{p.Size, p.Size, p.Size}
	if len(told) > 0 {
		known.told = p.Size.Allowing(told)
	}
	if len(printed) > 0 {
		known.printed = p.Size.Allowing(printed)
	}
	if len(careful) > len(printed) {
		known.careful = p.Size.Allowing(careful)
	} else {
		known.careful = known.printed
	}
	if p.slacks == nil {
		p.slacks = map[*derive.Size]slack{}
	}
	p.slacks[p.Size] = known
	return known
}

// sizes are the size itself and as it is with slack.
func (p *Pass) withSlack() []*derive.Size {
	s := p.slack()
	return []*derive.Size{p.Size, s.printed, s.careful}
}

// printedYield is how many pieces are printed to come from each set or tube of
// a part, 0 where the pattern does not say.
func (p *Pass) printedYield(part *derive.Part) int64 {
	if p.Size.Of.Printed == nil {
		return 0
	}
	counts := p.Size.Of.Printed.PerSet
	if part.Tube != nil {
		counts = p.Size.Of.Printed.PerTube
	}
	said, _ := printedFor(counts, part.Name.Text)
	return int64(said.N)
}

// printedBatches is how many strip sets, tubes or strips of a part are
// printed, 0 where it cannot be told.
func (p *Pass) printedBatches(part *derive.Part) int64 {
	said := p.Size.Of.Printed
	switch {
	case part.Set != nil:
		if n, ok := printedFor(said.Sets, part.Name.Text); ok {
			return int64(n.N)
		}
		return int64(p.allStrips(part.Name.Text).N) / int64(len(part.Set.Strips))
	case part.Tube != nil:
		if n, ok := printedFor(said.Tubes, part.Name.Text); ok {
			return int64(n.N)
		}
		return p.printedBatches(part.Tube.Sets[0]) / part.Tube.Takes(part.Tube.Sets[0])
	case part.Loop != nil:
		return p.printedBatches(part.Loop.Set)
	case part.Shape != nil && part.Shape.Set != nil:
		return p.printedBatches(part.Shape.Set)
	case part.Shape != nil:
		return int64(p.allStrips(part.Name.Text).N)
	}
	return 0
}

// allStrips is the printed number of all strips of something; it is not given
// where the pattern prints none, or only some of them.
func (p *Pass) allStrips(of string) plan.PrintedCount {
	var all plan.PrintedCount
	for _, s := range p.Size.Of.Printed.Strips {
		if s.Of.Text != of {
			continue
		}
		if !s.Whole() {
			return plan.PrintedCount{}
		}
		all = plan.PrintedCount{Of: s.Of, Count: s.Count}
	}
	return all
}

// leavesSlack reports whether more sets, tubes or strips of a part are printed
// than are needed when each is used up, or cloth for more.
func (p *Pass) leavesSlack(part *derive.Part) bool {
	if p.Size.Of.Printed == nil {
		return false
	}
	careful := p.slack().careful.Part(part.Name.Text)
	if p.printedBatches(part) >= careful.Batches() {
		return true
	}
	told := false
	for _, f := range stripFabrics(careful) {
		enough, printed := p.printedHolds(f)
		if printed && !enough {
			return false
		}
		told = told || printed
	}
	return told
}

// printedHolds reports whether the printed length or packs of a fabric, if there
// are any, hold what is derived of it.
func (p *Pass) printedHolds(f *derive.Fabric) (enough, printed bool) {
	for _, said := range p.Size.Of.Printed.Fabric {
		if said.Of.Text == f.Role.Text {
			return f.Err == nil && said.Length.Length >= f.Gross, true
		}
	}
	packs, ok := printedFor(p.Size.Of.Printed.Precuts, f.Role.Text)
	return ok && f.Err == nil && int64(packs.N) >= f.Packs, ok
}

// stripFabrics are the fabrics of the strips that a part is cut from.
func stripFabrics(part *derive.Part) []*derive.Fabric {
	var all []*derive.Fabric
	switch {
	case part.Set != nil:
		for _, s := range part.Set.Strips {
			all = append(all, s.Fabric)
		}
	case part.Tube != nil:
		all = append(stripFabrics(part.Tube.Sets[0]), stripFabrics(part.Tube.Sets[1])...)
	case part.Loop != nil:
		all = stripFabrics(part.Loop.Set)
	case part.Shape != nil && part.Shape.Set != nil:
		all = stripFabrics(part.Shape.Set)
	case part.Shape != nil:
		all = append(all, part.Shape.Fabric)
	}
	return all
}
