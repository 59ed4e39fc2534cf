package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
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
		if part.Squares > 0 && n == part.Squares {
			message += fmt.Sprintf(" (%d is the number of squares)", said.N)
		}
		p.Report(said.At, Finding{
			Message: message,
			Hint:    fmt.Sprintf("print %d, or change the layout", part.Needed),
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

// yieldSaid compares what a tube or set is printed to give. What follows from
// it begins with about.
func (p *Pass) yieldSaid(part *derive.Part, said plan.PrintedCount, y derive.Yield, from, piece string, about Subject) {
	n := int64(said.N)
	if n == y.Each {
		return
	}
	f := Finding{
		Message: fmt.Sprintf("the pattern prints %s from each %s of %q; %s of it give %d, and one more needs %s", count(said.N, piece), from,
			part.Name.Text, p.length(y.Length), y.Each, p.length(y.Next)),
		Hint:  fmt.Sprintf("print %d", y.Each),
		About: about, Root: true,
	}
	if n < y.Each {
		f.Level = diag.Note
		f.Message = fmt.Sprintf("the pattern prints %s from each %s of %q; %s of it give %d", count(said.N, piece), from,
			part.Name.Text, p.length(y.Length), y.Each)
	}
	p.Report(said.At, f)
}

func printedSets(p *Pass) {
	p.eachPrinted(func(s *plan.Printed) []plan.PrintedCount { return s.Sets }, func(part *derive.Part, said plan.PrintedCount) {
		if part.Set == nil {
			return
		}
		f := Finding{
			Message: fmt.Sprintf("the pattern prints %s of %q; %d are needed", count(said.N, "strip set"), part.Name.Text, part.Set.Count) + p.forWhat(part),
			Hint:    fmt.Sprintf("print %d", part.Set.Count),
			About:   takes(part),
		}
		if p.makesTubes(part) {
			p.tooFewOrMany(said, part.Set.Count, 2, f)
			return
		}
		p.tooFewOrMany(said, part.Set.Count, 1, f)
	})
}

func (p *Pass) forWhat(part *derive.Part) string {
	if part.Set.Cut == nil {
		return ""
	}
	return fmt.Sprintf(" for %s at %d a set", count(int(part.Needed), "segment"), part.Set.Cut.Each)
}

// makesTubes tells whether a tube is sewn of two of the set.
func (p *Pass) makesTubes(set *derive.Part) bool {
	for _, q := range p.Size.Parts {
		if q.Tube != nil && q.Tube.Sets[0] == set && q.Tube.Sets[1] == set {
			return true
		}
	}
	return false
}

func printedTubes(p *Pass) {
	p.eachPrinted(func(s *plan.Printed) []plan.PrintedCount { return s.Tubes }, func(part *derive.Part, said plan.PrintedCount) {
		if part.Tube == nil {
			return
		}
		p.tooFewOrMany(said, part.Tube.Count, 1, Finding{
			Message: fmt.Sprintf("the pattern prints %s of %q; %d are needed for %s at %d a tube", count(said.N, "tube"), part.Name.Text,
				part.Tube.Count, count(int(part.Needed), "square"), part.Tube.Yield.Each),
			Hint:  fmt.Sprintf("print %d", part.Tube.Count),
			About: takes(part.Tube.Sets[0]),
		})
	})
}

// tooFewOrMany reports a printed count below what is needed, and as a note
// one above it. A count that leaves an incomplete group over, of strips to a
// set or sets to a tube, is left to the rules of family yield.
func (p *Pass) tooFewOrMany(said plan.PrintedCount, needed, group int64, f Finding) {
	switch n := int64(said.N); {
	case n < needed:
	case n > needed && n%group == 0:
		f.Level = diag.Note
	default:
		return
	}
	p.Report(said.At, f)
}

func printedStripCounts(p *Pass) {
	p.eachPrinted(func(s *plan.Printed) []plan.PrintedCount { return s.Strips }, func(part *derive.Part, said plan.PrintedCount) {
		switch part.Operation.(type) {
		case plan.StripSet:
			each := int64(len(part.Set.Strips))
			p.tooFewOrMany(said, part.Set.Count*each, each, Finding{
				Message: fmt.Sprintf("the pattern prints %s for %q; %s of %d strips take %d", count(said.N, "strip"), part.Name.Text,
					count(int(part.Set.Count), "strip set"), each, part.Set.Count*each),
				Hint:  fmt.Sprintf("print %d", part.Set.Count*each),
				About: takes(part),
			})
		case plan.Chain:
			p.tooFewOrMany(said, part.Chain.Joined.Count, 1, Finding{
				Message: fmt.Sprintf("the pattern prints %s for %q; %d give the %s that are needed", count(said.N, "strip"), part.Name.Text,
					part.Chain.Joined.Count, part.Chain.Joined.Need.Format(p.Plan.Units)),
				Hint:  fmt.Sprintf("print %d", part.Chain.Joined.Count),
				About: takes(part),
			})
		case plan.Shape:
			p.tooFewOrMany(said, part.Shape.Count, 1, Finding{
				Message: fmt.Sprintf("the pattern prints %s for %q; %s at %d a strip take %d", count(said.N, "strip"), part.Name.Text,
					count(int(part.Needed), "piece"), part.Shape.Yield.Each, part.Shape.Count),
				Hint:  fmt.Sprintf("print %d", part.Shape.Count),
				About: takes(part),
			})
		case plan.WholeStrip:
			p.tooFewOrMany(said, part.Needed, 1, Finding{
				Message: fmt.Sprintf("the pattern prints %s for %q; the layout calls for %d", count(said.N, "strip"), part.Name.Text, part.Needed),
				Hint:    fmt.Sprintf("print %d", part.Needed),
				About:   takes(part),
			})
		case plan.Cut, plan.HalfSquares, plan.Hourglass, plan.FlyingGeese, plan.FlipCorners, plan.SquareInSquare, plan.Logs, plan.Template:
			p.stripsOfPieces(part, said)
		}
	})
	p.joinedTooMany()
}

// stripsOfPieces compares with the strips that the pieces take: as few as the
// better way to lie takes, as many as the worse does.
func (p *Pass) stripsOfPieces(part *derive.Part, said plan.PrintedCount) {
	var least, most, pieces int64
	for _, f := range p.Size.Fabrics {
		for _, n := range f.Needs {
			if n.Strip || n.For.Text != part.Name.Text {
				continue
			}
			few, many := stripsFor(f, n)
			if few == 0 {
				return // fits in no way
			}
			least, most, pieces = least+few, most+many, pieces+n.Count
		}
	}
	f := Finding{
		Message: fmt.Sprintf("the pattern prints %s for %q; %s take %d", count(said.N, "strip"), part.Name.Text, count(int(pieces), "piece"), least),
		Hint:    fmt.Sprintf("print %d", least),
		About:   takes(part),
	}
	if int64(said.N) < least {
		p.Report(said.At, f)
	} else if int64(said.N) > most {
		f.Level = diag.Note
		p.Report(said.At, f)
	}
}

// stripsFor is how many strips of their own the pieces take, in the way that
// takes the fewest and in the one that takes the most; 0 when they fit in
// none.
func stripsFor(f *derive.Fabric, n derive.Need) (few, many int64) {
	width, height := f.Width, measure.Length(0)
	if f.Form == plan.Precut {
		width, height = f.StripLength().Length, f.StripWidth().Length
	}
	try := func(across, along measure.Length) {
		each := piecing.PerStrip(width, across)
		if each == 0 || height > 0 && along > height {
			return
		}
		strips := piecing.Batches(n.Count, each)
		if few == 0 || strips < few {
			few = strips
		}
		many = max(many, strips)
	}
	try(n.Across, n.Along)
	if f.Turnable(n) {
		try(n.Along, n.Across)
	}
	return few, many
}

// joinedTooMany notes more strips of a border or the binding than their
// length takes; too few are for family finish.
func (p *Pass) joinedTooMany() {
	for _, j := range p.joinedLengths() {
		if said, ok := p.saidStrips(j); ok && int64(said.N) > j.strips.Count {
			p.Report(said.At, Finding{
				Level: diag.Note,
				Message: fmt.Sprintf("the pattern prints %s for %s; %d give the %s that are needed", count(said.N, "strip"), j.what,
					j.strips.Count, j.strips.Need.Format(p.Plan.Units)),
				Hint:  fmt.Sprintf("print %d", j.strips.Count),
				About: Subject{Kind: derive.Finish, Name: j.name},
			})
		}
	}
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
		if bought, ok := printedFor(p.Size.Of.Printed.Precuts, f.Role.Text); ok {
			packs = int64(bought.N)
		}
		left := packs*int64(f.Pack.N) - int64(f.Sheets.Count)
		n := int64(said.N)
		if left < 0 || n == left {
			continue // too few packs are fabric/pack-short's to report
		}
		finding := Finding{
			Message: fmt.Sprintf("the pattern says that %s of %q are left over and %d are: %d are used of %s of %d", count(said.N, "piece"), f.Role.Text,
				left, f.Sheets.Count, count(int(packs), "pack"), f.Pack.N),
			Hint:  fmt.Sprintf("print %d", left),
			About: cloth(f),
		}
		if n < left {
			finding.Level = diag.Warning
		}
		p.Report(said.At, finding)
	}
}
