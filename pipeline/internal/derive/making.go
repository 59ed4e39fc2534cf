package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// Operation is one operation at work on one part of one size. Each has a room,
// a file of its own, which holds whatever is peculiar to it; nothing else
// distinguishes operations.
type Operation interface {
	// Measure works out the part's unfinished size from what it is made of. What does
	// not follow from that, as something is missing or does not fit, stays unknown.
	Measure()
	// Covers is what one of known size covers once it is sewn in with a seam all
	// round, in square ticks: at the least and at the most. ok is false where that is
	// not known.
	Covers(seam measure.Length) (least, most measure.Surd, ok bool)
	// Ask asks for what it takes to make the part as often as it is needed, and
	// notes how many come out where that is more.
	Ask()
	// Seams is the length of the seams in all that are sewn of the part, from
	// raw edge to raw edge; ok is false when it is not known how it is sewn.
	Seams() (l measure.Surd, ok bool)
	// OnRuler are the lengths that somebody has to find on a ruler. One that the
	// plan does not give is 0.
	OnRuler() []OnRuler
	// Seamed are the pieces, and what their seams take; one that is not given is
	// 0 wide.
	Seamed() []Seamed
	// Trims is what it is trimmed to, where the plan says so, and what from:
	// width and height, where they are said apart. None of a part of unknown size.
	Trims() []Trimming
	// Gives is what it is cut into, and from what; nil where it is cut into no
	// number of pieces, or they are unknown. How many they are says Part.Yield.
	Gives() *Giving
	// Wants are the parts that it takes, where they have to be of a kind.
	Wants() []Want
	// Serves reports whether its part is what is wanted, and what it is instead.
	Serves(Wanted) (Misfit, bool)
	// Lay passes on how its needed parts are turned in the quilt to what they are made
	// of, or lists how the prints of its fabrics lie.
	Lay(*Laying, Turns)
	// Draft is the patches of one of known size as it is before it is sewn on, in
	// the fabrics that the drafts number; ok is false where they are not known.
	Draft(Drafts) (w piecing.Patchwork, ok bool)
	// How says how as many as are needed are made, of a part of known size; nothing
	// where the cut list says it.
	How() say.Sentence
	// Traits are what else tells its parts from those of other operations.
	Traits() Traits
}

// Some questions have an answer for few operations only; to all others there is
// nothing that it could be. Their rooms do not have the method.
type (
	// Carrier is a room, or what it opens for, of which the part is made of one other
	// alone, so that a square of a tube remains one.
	Carrier interface{ Carries() plan.Cell }

	// celled is a room of which the part shows others as they lie in rows, from the
	// top; whatever is inside borders or under corners is alone.
	celled interface{ Cells() [][]plan.Cell }

	// twofold is a room of which the part is a square of a tube and comes in two kinds;
	// nil as long as it cannot be worked out.
	twofold interface{ Kinds() *Kinds }

	// InOrder is a room whose pieces are sewn on one by one round the first, in the order
	// of its draft's patches.
	InOrder interface{ InOrder() }

	// cautioned is a room that tells the keys of the cautions that making its part
	// calls for.
	cautioned interface{ Cautions() []string }
)

// alone is one part that is not turned.
func alone(part plan.Text) [][]plan.Cell { return [][]plan.Cell{{{Part: part}}} }

// OnRuler is a length that somebody has to find on a ruler.
type OnRuler struct {
	What string // "cut width"
	plan.Length
}

// Seamed is a piece and what its seams take of its width.
type Seamed struct {
	What         string // "the segment"
	Width, Seams measure.Length
	At           source.Range
}

// Trimming is a side trimmed to a length.
type Trimming struct {
	To     plan.Length // not given where it is not trimmed
	From   measure.Surd
	DownTo plan.Length // the grid that it is trimmed down to, where that decides
}

// opening opens the room of a part's operation. Its methods, one for each
// operation, stand in the rooms.
type opening struct {
	s    *Size
	p    *Part
	room Operation
}

var _ plan.Maker = (*opening)(nil)

// Giving is what a strip set, tube, loop or strip is cut into.
type Giving struct {
	Each string       // "segment"
	From string       // "strip set"
	At   source.Range // where the plan says its length
}

// unitRoom is what the rooms of units share: they are made of pieces that are cut
// for them.
type unitRoom struct {
	p *Part
	s *Size
}

// told is what is told of how wide the unit is as sewn: what it is made of, by the
// symbols of the formula, and what it is trimmed to.
func (r unitRoom) told(wide figure.F) []figure.F {
	u := r.p.Unit
	var all []figure.F
	symbols := symbolsOf(wide)
	symbol := func() (next string) {
		if len(symbols) > 0 {
			next, symbols = symbols[0], symbols[1:]
		}
		return next
	}
	for _, t := range u.Of {
		all = append(all, t.Part.side(false).As(symbol(), t.Part.Name.Text).Where(t.Part.Name.At))
	}
	for _, c := range u.Pieces {
		all = append(all, c.figure().As(symbol(), c.What+", cut"))
		if !c.Width.Surd().Equal(c.Exact.Width) {
			exact := figure.Given(figure.Length, c.Exact.Width, "by geometry, of the finished size", r.p.Figures.seam)
			all = append(all, exact.As("", c.What+", exact"))
		}
	}
	if l := u.Lines; l != nil {
		all = append(all, l.figure())
	}
	all = append(all, r.p.Figures.seam)
	if t := u.Trim; t[0].Given() {
		all = append(all, figure.Said("", "trimmed to", t[0].Length, t[0].At))
	}
	return all
}

// symbolsOf are the symbols of a formula but for the seam allowance, in their order;
// none of one that is told in words.
func symbolsOf(f figure.F) (all []string) {
	if f.Worded() {
		return nil
	}
	for _, t := range f.Terms() {
		if t.Symbol() != "s" {
			all = append(all, t.Symbol())
		}
	}
	return all
}

// figure is how far apart the lines are that cuts go up to.
func (l *Lines) figure() figure.F {
	at := source.Range{}
	if l.Ruler != nil {
		at = l.Ruler.Lines.At
	}
	return figure.Said("", "cuts up to lines so far apart, as it is trimmed", l.Apart, at)
}

// figure is how wide a piece is cut.
func (c Piece) figure() figure.F {
	if c.Said {
		return figure.Said("", c.What+", cut", c.Width, c.At)
	}
	return figure.Given(figure.Length, c.Width.Surd(), "by geometry, on the ruler").Where(c.At)
}

// becomes takes the unit for the part's, as wide as it is sewn.
func (r unitRoom) becomes(u *Unit, wide figure.F) {
	r.p.becomes(u)
	r.p.Figures.Size = wide.Is(r.p.Name.Text, "width as sewn").As("", "").Telling(r.told(wide)...)
	if u.Each > 1 {
		r.p.Figures.Count = figure.Unknown(wide)
	}
}

// Ask implements Operation: it counts batches, and what they are cut and sewn from.
func (r unitRoom) Ask() {
	p, u := r.p, r.p.Unit
	if u == nil || !p.Known {
		return
	}
	batches := p.NeededFigure()
	if u.Each > 1 {
		batches = p.inBatches("batches", u.asks(p), figure.Whole(u.Each))
		if u.Hands {
			batches = batches.Telling(p.neededTerm(), p.mirroredTerm(), figure.Whole(u.Each).As("each", "from one, half of them mirror images"))
		}
		p.Figures.Count = batches
	}
	u.Batches = batches.N()
	p.Made = u.Batches * u.Each
	for _, c := range alike(u.Pieces) {
		c.Fabric.needPiece(p.Name, c, min(u.Batches*c.Count, countless))
	}
	for _, t := range u.Of {
		t.Part.call(batches.By(t.Count), p)
	}
}

// Covers implements Operation.
func (r unitRoom) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	return r.p.rectangle(seam)
}

// OnRuler implements Operation.
func (r unitRoom) OnRuler() []OnRuler {
	u := r.p.Unit
	if u == nil {
		return nil
	}
	out := []OnRuler{{"trim", u.Trim[0]}, {"trim", u.Trim[1]}}
	for _, c := range u.Pieces {
		out = append(out, OnRuler{c.What, plan.Length{Length: c.Width, At: c.At}})
		if c.Height != c.Width {
			out = append(out, OnRuler{c.What, plan.Length{Length: c.Height, At: c.At}})
		}
	}
	return out
}

// Seamed implements Operation.
func (r unitRoom) Seamed() []Seamed {
	if r.p.Unit == nil {
		return nil
	}
	var out []Seamed
	for _, c := range r.p.Unit.Pieces {
		out = append(out, Seamed{"the " + c.What, min(c.Width, c.Height), c.Nothing, c.At})
	}
	return out
}

// Trims implements Operation.
func (r unitRoom) Trims() []Trimming {
	u := r.p.Unit
	if u == nil || !r.p.Known {
		return nil
	}
	return []Trimming{{u.Trim[0], u.Sewn.Width, u.DownTo}, {u.Trim[1], u.Sewn.Height, u.DownTo}}
}

// Gives implements Operation.
func (r unitRoom) Gives() *Giving { return nil }

// open finds the room of a part's operation.
func (s *Size) open(p *Part) Operation {
	o := opening{s: s, p: p}
	p.Part.Operation.Make(&o)
	return o.room
}
