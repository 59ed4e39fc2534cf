package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/plan"
)

// PackGives is what packs of strips would give, were all of their strips that
// nothing else is cut from sewn into one kind of strip set, and its sets into
// tubes.
type PackGives struct {
	Packs      int64 // as printed, else as many as are needed
	Strips     int64 // in them, and not for anything else
	Sets       int64 // rounded down
	StripsOver int64
}

// Tubes is how many tubes the sets make, rounded down, of so many sets each, and
// the sets over.
func (g PackGives) Tubes(each int64) (tubes, over int64) { return piecing.Groups(g.Sets, each) }

// PackGives works out what packs give of a strip set; ok is false where its strips
// are not all of one precut and one width, where pieces that give several of them
// are cut into other things too, and where other parts are cut from its sets.
func (s *Size) PackGives(p *Part) (g PackGives, ok bool) {
	f := p.Set.pack()
	if f == nil || p.Set.Count == 0 || f.Packs == 0 || !s.SureOfCloth(f) {
		return g, false
	}
	n, each := int64(len(p.Set.Strips)), piecing.PerStrip(f.StripWidth().Length, p.Set.Strips[0].Width)
	elsewhere := int64(0)
	switch {
	case each == 1:
		elsewhere = int64(f.Sheets.Count) - n*p.Set.Count
	case each == 0 || len(f.Needs) > 1:
		return g, false
	}
	g.Packs = f.Packs
	if said := s.PrintedPacks(f); said > 0 {
		g.Packs = said
	}
	g.Strips = max(0, g.Packs*int64(f.Pack.N)-elsewhere) * each
	g.Sets, g.StripsOver = piecing.Groups(g.Strips, n)
	return g, true
}

// pack is the precut that all strips of a set are cut from, at one width; nil where
// they are not.
func (set *Set) pack() *Fabric {
	if set == nil || len(set.Strips) == 0 {
		return nil
	}
	first := set.Strips[0]
	for _, strip := range set.Strips {
		if strip.Fabric != first.Fabric || strip.Width != first.Width || first.Fabric.Form != plan.Precut {
			return nil
		}
	}
	return first.Fabric
}

// PrintedPacks is how many packs the pattern asks for, 0 where it prints none.
func (s *Size) PrintedPacks(f *Fabric) int64 {
	if s.Of.Printed == nil {
		return 0
	}
	for _, said := range s.Of.Printed.Precuts {
		if said.Of.Text == f.Role.Text {
			return int64(said.N)
		}
	}
	return 0
}
