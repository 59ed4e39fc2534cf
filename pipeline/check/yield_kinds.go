package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// tubeKinds reports tubes that would give squares enough, and not enough of one
// kind. Where the pattern prints fewer from each than it gives, these count.
func tubeKinds(p *Pass) {
	for _, part := range p.slack().told.Parts {
		t := part.Tube
		if t == nil || !part.Known || t.Count == 0 {
			continue
		}
		plain := piecing.Batches(part.Needed, t.Yield.Each)
		tubes, said := p.tubesSaid(part)
		if t.Count == plain || said != (source.Range{}) && (tubes < plain || tubes >= t.Count) {
			continue // enough, or too few of both kinds, which other rules say
		}
		p.reportKinds(part, plain, tubes, said)
	}
}

func (p *Pass) reportKinds(part *derive.Part, plain, tubes int64, said source.Range) {
	t := part.Tube
	kind, wanted := t.Kinds.Leading()
	f := Finding{Level: diag.Warning, About: countOf(part), Root: true, Related: []Related{{part.Name.At, "the tube is made here"}}}
	last := "sew " + count(int(t.Count), "tube")
	if said == (source.Range{}) {
		tubes, last = plain, fmt.Sprintf("tell the maker that %s left over", areLeft(part.Made-part.Needed))
	} else {
		f.Level = diag.Error
		f.Related = append(f.Related, Related{said, "what limits the tubes, as printed"})
	}
	most, _ := piecing.Orientations(t.Yield.Each)
	of := fmt.Sprintf("%d of the", wanted)
	if wanted == part.Needed {
		of = say.Goes(wanted, "the", "all")
	}
	f.Message = fmt.Sprintf("%s %s of %q %s to be %s, and %s %s at most, %d of %d each: that takes %s", of, count(int(part.Needed), "square"),
		part.Name.Text, is(wanted), kind, gives(tubes), count(int(tubes*most), "such square"), most, t.Yield.Each, count(int(t.Count), "tube"))
	f.Hint = fmt.Sprintf("let %d of them be %s%s%s; or %s", wanted-tubes*most, other(kind), turnedSet(t), p.joinedForKinds(part, tubes), last)
	p.Report(p.squareAt(part, kind), f)
}

func gives(tubes int64) string {
	if tubes == 1 {
		return "1 tube gives"
	}
	return fmt.Sprintf("%d tubes give", tubes)
}

func areLeft(n int64) string {
	if n == 1 {
		return "1 square is"
	}
	return fmt.Sprintf("%d squares are", n)
}

func other(kind plan.SquareKind) plan.SquareKind {
	if kind == plan.NearKind {
		return plan.FarKind
	}
	return plan.NearKind
}

// tubesSaid is how many tubes the printed figures come to, by the first of them
// that does: tubes, strip sets or packs. The place is empty where none does.
func (p *Pass) tubesSaid(part *derive.Part) (tubes int64, at source.Range) {
	said, t := p.Size.Of.Printed, part.Tube
	if said == nil {
		return 0, at
	}
	if c, ok := printedFor(said.Tubes, part.Name.Text); ok {
		return int64(c.N), c.At
	}
	per := t.Takes(t.Sets[0])
	if c, ok := printedFor(said.Sets, t.Sets[0].Name.Text); ok && t.Sets[0].Needed == t.Count*per {
		return int64(c.N) / per, c.At
	}
	f := onlyFabric(t)
	if f == nil || f.Form != plan.Precut || f.Err != nil {
		return 0, at
	}
	if c, ok := printedFor(said.Precuts, f.Role.Text); ok {
		tubes, _ := p.tubesOf(part, f, c)
		return tubes, c.At
	}
	return 0, at
}

// tubesOf is how many tubes the printed packs give with all else that is cut
// from them, no more than are needed, and the pieces over.
func (p *Pass) tubesOf(part *derive.Part, f *derive.Fabric, packs plan.PrintedCount) (tubes, over int64) {
	return f.TubesFrom(part, int64(packs.N)*int64(f.Pack.N))
}

// shortOfKind reports whether so many tubes give squares enough and not enough of
// one kind.
func shortOfKind(part *derive.Part, tubes int64) bool {
	return tubes < part.Tube.Count && tubes >= piecing.Batches(part.Needed, part.Tube.Yield.Each)
}

// forKind says that one kind of square decides how many tubes there are.
func (p *Pass) forKind(part *derive.Part) string {
	t := part.Tube
	if piecing.Batches(part.Needed, t.Yield.Each) == t.Count {
		return ""
	}
	kind, wanted := t.Kinds.Leading()
	most, _ := piecing.Orientations(t.Yield.Each)
	return fmt.Sprintf(", %d of them %s at %d", wanted, kind, most)
}
