package buyer

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// Short is what she has too little of.
type Short int

// What there may be too little of.
const (
	Cloth  Short = iota // of a fabric, in the printed length
	Packs               // pieces, in the printed packs
	Strips              // for the strip sets
	Sets                // for the tubes
	Pieces              // from the sets or tubes, cut up as printed
	Length              // in the printed strips, joined
)

// What is the kind of a printed figure.
type What int

// The kinds of printed figure.
const (
	Unprinted What = iota
	StripsOf
	SetsOf
	TubesOf
	PerTube
	PerSet
	PartsOf
	LeftOf
	PacksOf
	YardsOf
	SidesOf
	EndsOf
	BackingOf
)

// Figure is a printed figure.
type Figure struct {
	What   What
	Name   string         // of the part, border or fabric
	N      int64          // of a count
	Of     string         // the fabric of strips, where it is printed
	Width  measure.Length // of strips, where it is printed, and of a backing; the length of yards, sides and ends
	Height measure.Length // of a backing
	At     source.Range
}

// Printed reports whether there is such a figure.
func (f Figure) Printed() bool { return f.What != Unprinted }

// Use is what a step takes of a fabric.
type Use struct {
	For    string
	Length measure.Surd // along the fabric
}

// Stop is a printed figure that she cannot carry out.
type Stop struct {
	Short  Short
	Figure Figure // that she cannot carry out
	Limit  Figure // that there is too little of
	With   []Figure
	About  derive.Quantity
	Part   *derive.Part   // the strip set or tube, of strips, sets and pieces
	Border *derive.Border // of lengths
	Fabric *derive.Fabric // of cloth and packs, as the recipe takes it
	Taken  *derive.Fabric // and as the printed figures take it

	Takes, Has   int64        // counts
	From, Each   int64        // of pieces the sets or tubes there are, and what each gives; of strips what a set takes
	Needs, There measure.Surd // of cloth and lengths: what the step takes, and what is there for it
	Beside       []Use        // what else is cut from the same cloth
	Bound        measure.Surd // where pieces are cut too: what all together takes at least, as is proved
	Enough       int64        // the figure that the recipe comes to; 0 where it is no count
	Least        measure.Surd // that a printed length of a border has to be
}

// reader is somebody who has the printed figures.
type reader struct {
	size  *derive.Size
	said  *plan.Printed
	sets  map[*derive.Part]*setWork
	stuck map[*derive.Part]bool // strip sets that she cannot sew
	order map[string]int        // of cutting, by part
	stops []Stop
}

// Follow follows the printed figures of a size. Nothing is said of what could
// not be counted. There is at most one stop for
// each fabric, each strip set or tube and each border; they come in the order
// of the work.
func Follow(s *derive.Size, said *plan.Printed) []Stop {
	if said == nil || !s.Top.Known {
		return nil
	}
	r := &reader{size: s, said: said, sets: map[*derive.Part]*setWork{}, stuck: map[*derive.Part]bool{}, order: map[string]int{}}
	for i, p := range s.Parts {
		r.order[p.Name.Text] = i
		if p.Set != nil && r.sure(p) {
			r.sets[p] = r.setWork(p)
		}
	}
	for _, f := range s.Fabrics {
		r.cut(f)
	}
	r.shareAll()
	for _, p := range s.Parts {
		r.sew(p)
	}
	for i := range s.Top.Borders {
		r.join(&s.Top.Borders[i])
	}
	return r.stops
}

// sure reports whether all that is needed of a part could be counted.
func (r *reader) sure(p *derive.Part) bool { return p.Derived() && r.size.Sure(count(p)) }

func (r *reader) stop(s Stop) { r.stops = append(r.stops, s) }

// figure finds a printed count that is no less than the recipe takes.
func figure(what What, counts []plan.PrintedCount, name string, least int64) Figure {
	for _, c := range counts {
		if c.Of.Text == name && int64(c.N) >= least {
			return Figure{What: what, Name: name, N: int64(c.N), At: c.At}
		}
	}
	return Figure{}
}
