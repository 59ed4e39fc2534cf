package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// sharedSets judges what is printed of parts that are cut from the same sets,
// all of it together, at the first of them that is printed; unit is how many of
// what is printed go into one set. Each width cut from sets of its own may be
// printed, too.
func (p *Pass) sharedSets(part *derive.Part, said plan.PrintedCount, all []plan.PrintedCount, noun string, unit int64) {
	pool := part.Pool
	parts, total := printedOf(pool, all)
	if parts[0] != part {
		return
	}
	found, least, apart := pool.Fewest(parts...)
	f := Finding{
		Message: fmt.Sprintf("the pattern prints %s for %s; %s", count(int(total), noun), quoted(parts), p.shared(pool, parts, found)),
		Ways:    ways(p.printInAll(said, found*unit, total, len(parts) > 1)),
		About:   takes(part),
	}
	if unit > 1 {
		f.Message += fmt.Sprintf(", %d", found*unit)
	}
	switch {
	case total < least*unit:
	case total < found*unit:
		f.Level = diag.Warning
		f.Message += fmt.Sprintf(", and that fewer than %d do not hold them is proved", least)
	case total > apart*unit && total%unit == 0:
		strips := int64(len(part.Set.Strips)) / unit
		f.Level = surplus(total*strips, apart*unit*strips, surplusStrips)
	default:
		return
	}
	p.Report(said.At, f)
}

// printInAll is the way out of printing so many of several parts together: of the first
// as many as the others leave.
func (p *Pass) printInAll(said plan.PrintedCount, wanted, total int64, several bool) diag.Way {
	n := int64(said.N) + wanted - total
	switch {
	case n <= 0:
		return advise(fmt.Sprintf("print %d in all", wanted))
	case several:
		return noted(p.printCount(said.At, n), fmt.Sprintf(", which makes %d in all", wanted))
	}
	return p.printCount(said.At, n)
}

// printedOf are the parts of a pool that are printed, and what they come to.
func printedOf(pool *derive.Pool, all []plan.PrintedCount) (parts []*derive.Part, total int64) {
	for _, q := range pool.Parts {
		if of, ok := printedFor(all, q.Name.Text); ok {
			parts, total = append(parts, q), total+int64(of.N)
		}
	}
	return parts, total
}

// printedApart is how much more of a fabric is cut in strips where the pattern
// prints a set for each width that could share one.
func (p *Pass) printedApart(f *derive.Fabric) measure.Length {
	var more measure.Length
	for _, part := range p.Size.Parts {
		pool := part.Pool
		if pool == nil || pool.Parts[0] != part || part.Set == nil {
			continue
		}
		_, _, apart := pool.Fewest(pool.Parts...)
		_, sets := printedOf(pool, p.Size.Of.Printed.Sets)
		for _, strip := range part.Set.Strips {
			if extra := min(sets, apart) - pool.Sets; strip.Fabric == f && extra > 0 {
				more += strip.Width * measure.Length(extra)
			}
		}
	}
	return more
}

// shared says how many sets hold what is cut of some parts of a pool.
func (p *Pass) shared(pool *derive.Pool, parts []*derive.Part, sets int64) string {
	var cut []string
	for _, q := range parts {
		cut = append(cut, fmt.Sprintf("%s of %s", count(int(q.Needed), "segment"), p.needs(q.Subcut.Width)))
	}
	verb := "take"
	if len(parts) == 1 && parts[0].Needed == 1 {
		verb = "takes"
	}
	return fmt.Sprintf("%s %s %s of %s", inWords(cut), verb, count(int(sets), "strip set"), p.there(pool.Length))
}

// setsPrinted is how many sets of a pool there are: as many as are printed, or as
// are needed.
func (p *Pass) setsPrinted(pool *derive.Pool) int64 {
	if p.Size.Of.Printed == nil {
		return pool.Sets
	}
	_, total := printedOf(pool, p.Size.Of.Printed.Sets)
	return max(total, pool.Sets)
}

// quoted names parts: "a", "b" and "c".
func quoted(parts []*derive.Part) string {
	var names []string
	for _, q := range parts {
		names = append(names, fmt.Sprintf("%q", q.Name.Text))
	}
	return inWords(names)
}

// sharedSlack tells of shared sets that hold all only if they are cut without
// losing half an inch.
func (p *Pass) sharedSlack(part *derive.Part, y pieceLength) {
	pool, wanted := part.Pool, slackWanted(p.Plan.Units)
	if pool.Parts[0] != part || !p.Size.Sure(countOf(part)) || p.setsPrinted(pool) >= pool.Shorter(wanted) {
		return
	}
	names := quoted(pool.Parts)
	p.Report(y.At, Finding{
		Message: fmt.Sprintf("%s share %s: that takes %s of the %s of one and leaves %s to straighten the ends, and %s shorter they are not enough",
			names, count(int(pool.Sets), y.From), p.needs(pool.Fill), p.there(pool.Length), p.rest(pool.Length-pool.Fill), p.needs(wanted)),
		Ways:  ways(advise("allow for another " + y.From)),
		About: countOf(part),
	})
}
