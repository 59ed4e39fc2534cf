package check

import (
	"fmt"
	"slices"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/plan"
)

// eachPrinted runs a comparison over printed counts of parts that could be
// derived.
func (p *Pass) eachPrinted(counts func(*plan.Printed) []plan.PrintedCount, compare func(*derive.Part, plan.PrintedCount)) {
	if p.Size.Of.Printed == nil {
		return
	}
	for _, said := range counts(p.Size.Of.Printed) {
		if part := p.Size.Part(said.Of.Text); part != nil && part.Derived() && p.Size.Sure(countOf(part)) {
			compare(part, said)
		}
	}
}

// takes is what the number of a part's strip sets or strips decides: how much
// of its first ingredient there must be.
func takes(part *derive.Part) Subject {
	all := part.Operation.Ingredients()
	switch {
	case len(all) == 0:
		return Subject{}
	case all[0].Fabric:
		return Subject{Kind: derive.Cloth, Name: all[0].Name.Text}
	}
	return Subject{Kind: derive.Count, Name: all[0].Name.Text}
}

func printedParts(p *Pass) {
	p.eachPrinted(func(s *plan.Printed) []plan.PrintedCount { return s.Parts }, func(part *derive.Part, said plan.PrintedCount) {
		n := int64(said.N)
		if n == part.Needed || part.Needed > 0 && n == part.Made {
			return // what comes out of whole tubes and pairs may be printed too
		}
		message := fmt.Sprintf("the pattern prints %d of %q; the layout calls for %d", said.N, part.Name.Text, part.Needed)
		if c := part.Cut; c != nil && c.Squares > 0 && n == c.Squares {
			message += fmt.Sprintf(" (%d is the number of squares)", said.N)
		}
		p.Report(said.At, Finding{
			Message: message,
			Ways:    ways(p.printCount(said.At, part.Needed), advise("change the layout")),
			About:   countOf(part), Root: true,
		})
	})
}

func printedPerTube(p *Pass) {
	p.eachPrinted(func(s *plan.Printed) []plan.PrintedCount { return s.PerTube }, func(part *derive.Part, said plan.PrintedCount) {
		if part.Tube != nil {
			p.yieldSaid(part, said, part.Tube.Yield, "tube", "square", takes(part))
		}
	})
}

func printedPerSet(p *Pass) {
	p.eachPrinted(func(s *plan.Printed) []plan.PrintedCount { return s.PerSet }, func(part *derive.Part, said plan.PrintedCount) {
		if part.Set != nil && part.Set.Cut != nil {
			p.yieldSaid(part, said, *part.Set.Cut, "strip set", "segment", countOf(part))
		}
	})
}

// batches is how many sets, tubes or strips of a part there may be: as many as
// are needed, and as many as that is with slack.
func (p *Pass) batches(part *derive.Part) []int64 {
	var all []int64
	for _, s := range p.withSlack() {
		if q := s.Part(part.Name.Text); q != nil {
			all = append(all, q.Batches())
		}
	}
	return all
}

// batched is how many there must be of something that is counted.
type batched struct {
	needed int64
	group  int64   // so many belong together, and an incomplete group is for family yield
	strips int64   // strips in each
	right  []int64 // numbers that are right too
}

// tooFewOrMany reports a printed count below what is needed, and with less
// weight one above it. A count that leaves an incomplete group over, of strips
// to a set or sets to a tube, is left to the rules of family yield; one that
// leaves slack where the strips give none is right.
func (p *Pass) tooFewOrMany(said plan.PrintedCount, b batched, f Finding) {
	switch n := int64(said.N); {
	case n < b.needed:
	case n > b.needed && n%b.group == 0:
		f.Level = surplus(n*b.strips, b.needed*b.strips, surplusStrips)
		if f.Level == diag.Note && slices.Contains(b.right, n) {
			return
		}
	default:
		return
	}
	p.Report(said.At, f)
}

// yieldSaid compares what a tube or set is printed to give. What follows from
// it begins with about.
func (p *Pass) yieldSaid(part *derive.Part, said plan.PrintedCount, y derive.Yield, from, piece string, about Subject) {
	n := int64(said.N)
	if n == y.Each || n < y.Each && part.Pool != nil { // what is cut of other widths from a set decides
		return
	}
	f := Finding{
		Message: fmt.Sprintf("the pattern prints %s from each %s of %q; %s of it%s give %d, and one more needs %s", count(said.N, piece), from,
			part.Name.Text, p.there(y.Length), ofJoined(y), y.Each, p.needs(y.Next)),
		Ways:  ways(p.printCount(said.At, y.Each), p.joinedAsPrinted(part, n)),
		About: about, Root: true,
	}
	if 0 < n && n < y.Each {
		if p.slackSaid(part, n, y) {
			return
		}
		f.Level = diag.Note
		f.Message = fmt.Sprintf("the pattern prints %s from each %s of %q; %s of it%s give %d", count(said.N, piece), from,
			part.Name.Text, p.there(y.Length), ofJoined(y), y.Each)
	}
	p.Report(said.At, f)
}

// slackSaid reports whether a printed yield below what comes from a set or tube
// leaves slack on purpose: the last piece would leave nothing to straighten the
// ends, and so many as are printed are enough at that yield.
func (p *Pass) slackSaid(part *derive.Part, n int64, y derive.Yield) bool {
	if y.Slack() >= slackWanted(p.Plan.Units) {
		return false
	}
	if batches := p.printedBatches(part); batches > 0 {
		return batches*n >= part.Needed
	}
	return n == y.Each-1
}

func printedSets(p *Pass) {
	p.eachPrinted(func(s *plan.Printed) []plan.PrintedCount { return s.Sets }, func(part *derive.Part, said plan.PrintedCount) {
		if part.Set == nil {
			return
		}
		if part.Pool != nil {
			p.sharedSets(part, said, p.Size.Of.Printed.Sets, "strip set", 1)
			return
		}
		b := batched{part.Set.Count, p.setsATube(part), int64(len(part.Set.Strips)), p.batches(part)}
		p.tooFewOrMany(said, b, Finding{
			Message: fmt.Sprintf("the pattern prints %s of %q; %d %s needed", count(said.N, "strip set"), part.Name.Text, part.Set.Count, is(part.Set.Count)) + p.forWhat(part),
			Ways:    ways(p.printCount(said.At, part.Set.Count)),
			About:   takes(part),
		})
	})
}

func (p *Pass) forWhat(part *derive.Part) string {
	if part.Set.Cut == nil {
		return ""
	}
	return fmt.Sprintf(" for %s at %d a set", count(int(part.Needed), "segment"), part.Set.Cut.Each)
}

// setsATube is how many of a set go into a tube, where any is sewn of it; else 1.
func (p *Pass) setsATube(set *derive.Part) int64 {
	for _, q := range p.Size.Parts {
		if q.Tube != nil && q.Tube.Takes(set) > 1 {
			return q.Tube.Takes(set)
		}
	}
	return 1
}

func printedTubes(p *Pass) {
	p.eachPrinted(func(s *plan.Printed) []plan.PrintedCount { return s.Tubes }, func(part *derive.Part, said plan.PrintedCount) {
		if part.Tube == nil {
			return
		}
		if shortOfKind(p.slack().told.Part(part.Name.Text), int64(said.N)) {
			return // yield/tube-kinds says it
		}
		strips := int64(len(part.Tube.Sets[0].Set.Strips)+len(part.Tube.Sets[1].Set.Strips)) * part.Tube.Aside
		p.tooFewOrMany(said, batched{part.Tube.Count, 1, strips, p.batches(part)}, Finding{
			Message: fmt.Sprintf("the pattern prints %s of %q; %d %s needed for %s at %d a tube", count(said.N, "tube"), part.Name.Text,
				part.Tube.Count, is(part.Tube.Count), count(int(part.Needed), "square"), part.Tube.Yield.Each) + p.forKind(part),
			Ways:  ways(p.printCount(said.At, part.Tube.Count)),
			About: takes(part.Tube.Sets[0]),
		})
	})
}

func printedLeft(p *Pass) {
	if p.Size.Of.Printed == nil {
		return
	}
	for _, said := range p.Size.Of.Printed.Left {
		f := p.Size.Fabric(said.Of.Text)
		if f == nil || f.Form != plan.Precut || !p.Size.SureOfCloth(f) {
			continue
		}
		packs := f.Packs
		bought, printed := printedFor(p.Size.Of.Printed.Precuts, f.Role.Text)
		if printed {
			packs = int64(bought.N)
		}
		left := packs*int64(f.Pack.N) - int64(f.Sheets.Count)
		n := int64(said.N)
		if left < 0 || n == left || p.leftWithSlack(f, packs, n) || printed && p.tooManyPacks(f, bought) {
			continue // whoever reports the packs says what is left of the right ones
		}
		finding := Finding{
			Message: fmt.Sprintf("the pattern says that %s of %q %s left over and %d %s: %d %s used of %s of %d", count(said.N, "piece"), f.Role.Text, is(n),
				left, is(left), f.Sheets.Count, is(int64(f.Sheets.Count)), count(int(packs), "pack"), f.Pack.N),
			Ways:  ways(p.printCount(said.At, left)),
			About: cloth(f),
		}
		if n < left {
			finding.Level = diag.Warning
		}
		if printed {
			finding.Related = []Related{{bought.At, "the printed packs"}}
		}
		p.Report(said.At, finding)
	}
}

// leftWithSlack reports whether so many pieces are left of the packs where the
// printed figures leave slack in the sets.
func (p *Pass) leftWithSlack(f *derive.Fabric, packs, n int64) bool {
	return slices.ContainsFunc(p.withSlack(), func(s *derive.Size) bool {
		return n == packs*int64(f.Pack.N)-int64(s.Fabric(f.Role.Text).Sheets.Count)
	})
}
