package derive

import (
	"sort"

	"yardproof/pipeline/internal/cutting"
	"yardproof/schema/plan"
)

// PackZone tells where a number of packs of a precut fabric lies. The packed
// layout is solved only when they are too few for the pattern's own
// instructions.
func (f *Fabric) PackZone(packs int64) Zone {
	switch {
	case packs > f.Packs:
		return Generous
	case packs == f.Packs:
		return Comfortable
	case packs*int64(f.Pack.N) < f.LeastPieces():
		return Impossible
	case f.Cuts == plan.PlainCuts:
		return PlainShort
	case packs >= f.PackedPacks():
		return Tight
	case packs*int64(f.Pack.N) < f.FloorPieces():
		return OutOfStrips
	}
	return Unsettled
}

// FloorPieces is a number of precut pieces that no cutting into strips, and of
// these into what is needed, can do without. What may be cut in another shape
// than is laid out counts by its area alone.
func (f *Fabric) FloorPieces() int64 {
	bound := int64(0)
	if !f.Loose() {
		bound = int64(f.PackedSheets().Bound)
	} else if r, err := f.solver.Sheets(f.sheetProblemOf(Need.fixedShape)); err == nil {
		bound = int64(r.Bound)
	}
	return max(bound, f.LeastPieces())
}

// TubesFrom is how many of a part's tubes so many precut pieces hold, with all
// else that is cut from the fabric, and how many pieces are then left over. They
// are cut as the pattern's instructions say, or packed where the plan does not
// say.
func (f *Fabric) TubesFrom(p *Part, pieces int64) (tubes, over int64) {
	fewer := func(n int64) bool { return f.piecesFor(p, p.Tube.Count-n) <= pieces }
	less := int64(sort.Search(int(p.Tube.Count), func(n int) bool { return fewer(int64(n)) }))
	tubes = p.Tube.Count - less
	return tubes, max(0, pieces-f.piecesFor(p, tubes))
}

// piecesFor is how many precut pieces are cut into when so many tubes of a part
// are made.
func (f *Fabric) piecesFor(p *Part, tubes int64) int64 {
	problem := f.sheetProblemWith(p, tubes)
	if f.Cuts == plan.PlainCuts {
		l, _ := cutting.PlainPieces(problem) // it holds more as it is
		return int64(l.Count)
	}
	r, _ := f.solver.Sheets(problem)
	return int64(r.Layout.Count)
}

// sheetProblemWith is sheetProblem with fewer tubes of a part.
func (f *Fabric) sheetProblemWith(p *Part, tubes int64) cutting.SheetProblem {
	fewer := *f
	fewer.Needs = append([]Need(nil), f.Needs...)
	for _, set := range p.Tube.Sets {
		for _, strip := range set.Set.Strips {
			for i := range fewer.Needs {
				if n := &fewer.Needs[i]; strip.Fabric == f && n.Strip && n.For == set.Name && n.Along == strip.Width {
					n.Count = max(0, n.Count-(p.Tube.Count-tubes)*p.Tube.Aside)
					break
				}
			}
		}
	}
	return fewer.sheetProblem()
}
