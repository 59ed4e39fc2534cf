package derive

import (
	"fmt"
	"slices"

	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// StripWay is one way of cutting all strips that something takes of one
// fabric: how many of each width.
type StripWay struct {
	Strips []StripCount // by width, each once
	// Shared tells that pieces of several lengths are cut from the same strips;
	// otherwise each size has strips of its own.
	Shared bool
}

// StripCount is strips of one width.
type StripCount struct {
	Width measure.Length
	Count int64
}

// Total is the number of strips of every width.
func (w StripWay) Total() int64 {
	sum := int64(0)
	for _, c := range w.Strips {
		sum += c.Count
	}
	return sum
}

// At is the number of strips of a width, 0 where there are none.
func (w StripWay) At(width measure.Length) int64 {
	for _, c := range w.Strips {
		if c.Width == width {
			return c.Count
		}
	}
	return 0
}

func (w *StripWay) add(width measure.Length, count int64) {
	for i := range w.Strips {
		if w.Strips[i].Width == width {
			w.Strips[i].Count += count
			return
		}
	}
	w.Strips = append(w.Strips, StripCount{width, count})
}

// FabricStrips is the ways of cutting what something takes of one fabric: the
// first is the plain method's.
type FabricStrips struct {
	Fabric *Fabric
	Pieces int64 // that are cut from the strips; 0 of strips that are used whole
	Ways   []StripWay
}

// StripWays is how the strips of a part, a border, the binding or the like may
// be cut, by fabric. There are none where a piece fits in no way.
func (s *Size) StripWays(of plan.Text) []FabricStrips {
	var all []FabricStrips
	for _, f := range s.Fabrics {
		var needs []Need
		for _, n := range f.Needs {
			if n.For == of && n.Count > 0 {
				needs = f.collect(needs, n)
			}
		}
		if len(needs) == 0 {
			continue
		}
		fs := FabricStrips{Fabric: f, Ways: f.stripWays(needs)}
		if fs.Ways == nil {
			return nil
		}
		for _, n := range needs {
			if !n.Strip && !n.First {
				fs.Pieces += n.Count
			}
		}
		all = append(all, fs)
	}
	return all
}

// collect adds a need to others, together with one for pieces of the same size.
func (f *Fabric) collect(needs []Need, n Need) []Need {
	for i, m := range needs {
		same := m.Across == n.Across && m.Along == n.Along
		turned := f.Turnable(n) && f.Turnable(m) && m.Across == n.Along && m.Along == n.Across
		if m.Strip == n.Strip && m.First == n.First && m.Fixed == n.Fixed && (same || turned) {
			needs[i].Count += n.Count
			return needs
		}
	}
	return append(needs, n)
}

// lie is how all pieces of a need lie in their strips.
type lie struct {
	across, along measure.Length // extent along the strip, and the strip's width
}

// stripWays lists the ways once each, nil where a piece fits in none:
//
//   - each size as the plain method lays it, from strips of its own;
//   - each size one way or turned, from strips of its own, and with what comes
//     from strips of one width sharing these, the fewest that were found;
//   - pieces as the packed layout has them, where the pattern prints that one.
//
// Logs are cut from strips of their common width (common practice, no source), so
// that turning them is no way for them. Of more sizes than are tried in every
// way, all lie as the plan gives them, or all turned.
func (f *Fabric) stripWays(needs []Need) []StripWay {
	lies := make([][]lie, len(needs))
	for i, n := range needs {
		if lies[i] = f.lies(n); lies[i] == nil {
			return nil
		}
	}
	var ways []StripWay
	take := func(w StripWay) {
		if !slices.ContainsFunc(ways, w.equal) {
			ways = append(ways, w)
		}
	}
	plain := make([]lie, len(needs))
	for i, n := range needs {
		plain[i] = f.plainLie(n, lies[i])
	}
	take(f.ownWay(needs, plain))
	share := f.sharing(needs)
	for _, pick := range picks(needs, lies) {
		take(f.ownWay(needs, pick))
		if w, ok := share(pick); ok {
			take(w)
		}
	}
	if f.Form == plan.Yardage && f.Cuts == plan.PackedCuts && !slices.ContainsFunc(needs, func(n Need) bool { return n.Strip }) {
		take(f.packedWay(needs))
	}
	return ways
}

func (w StripWay) equal(v StripWay) bool {
	return len(w.Strips) == len(v.Strips) && !slices.ContainsFunc(w.Strips, func(c StripCount) bool { return v.At(c.Width) != c.Count })
}

// lies are the ways a need's pieces may lie in a strip, as given first; nil
// where they fit in none.
func (f *Fabric) lies(n Need) []lie {
	if n.Strip || n.First {
		width := n.Along
		if n.First {
			width = n.Across // cut along the cloth, each by itself
		}
		return []lie{{0, width}}
	}
	length, height := f.stripLength(), measure.Length(0)
	if f.Form == plan.Precut {
		height = f.StripWidth().Length
	}
	var all []lie
	try := func(across, along measure.Length) {
		if across > 0 && across <= length && (height == 0 || along <= height) {
			all = append(all, lie{across, along})
		}
	}
	try(n.Across, n.Along)
	if (f.Turnable(n) || n.Stood) && n.Across != n.Along {
		try(n.Along, n.Across)
	}
	return all
}

// plainLie is how the plain method lays a size: in the fewest inches, and at
// equal inches in the wider strips; see [cutting.Plain].
func (f *Fabric) plainLie(n Need, lies []lie) lie {
	best := lies[0]
	if n.Stood {
		return best
	}
	for _, l := range lies[1:] {
		here, there := l.along*measure.Length(f.own(n, l)), best.along*measure.Length(f.own(n, best))
		if here < there || here == there && l.along > best.along {
			best = l
		}
	}
	return best
}

// own is how many strips of their own a need's pieces take.
func (f *Fabric) own(n Need, l lie) int64 {
	if l.across == 0 {
		return n.Count
	}
	return piecing.Batches(n.Count, piecing.PerStrip(f.stripLength(), l.across))
}

// ownWay cuts each size from strips of its own.
func (f *Fabric) ownWay(needs []Need, pick []lie) StripWay {
	var w StripWay
	for i, n := range needs {
		w.add(pick[i].along, f.own(n, pick[i]))
	}
	return w
}

// mostPicks is how many ways of lying are tried.
const mostPicks = 64

// picks are the ways in which the sizes may lie, one beside the other: those in
// which all come from strips of one width first.
func picks(needs []Need, lies [][]lie) (all [][]lie) {
	for _, w := range commonWidths(needs, lies) {
		pick := make([]lie, len(lies))
		for i := range lies {
			pick[i], _ = lieAlong(lies[i], w)
		}
		all = append(all, pick)
	}
	if len(all) > 0 && slices.ContainsFunc(needs, func(n Need) bool { return n.InLengths || n.Stood }) {
		return append(all, asGiven(lies))
	}
	count := 1
	for _, l := range lies {
		if count *= len(l); count > mostPicks {
			return append(all, turnedAll(lies)...)
		}
	}
	for k := range count {
		pick := make([]lie, len(lies))
		for i, l := range lies {
			pick[i], k = l[k%len(l)], k/len(l)
		}
		all = append(all, pick)
	}
	return all
}

// asGiven is all sizes as the plan gives them: a log whose print stands upright
// lies across a strip as wide as it is long.
func asGiven(lies [][]lie) []lie {
	given := make([]lie, len(lies))
	for i, l := range lies {
		given[i] = l[0]
	}
	return given
}

// turnedAll is all sizes as they are given, and all turned where they may be.
func turnedAll(lies [][]lie) [][]lie {
	turned := make([]lie, len(lies))
	for i, l := range lies {
		turned[i] = l[len(l)-1]
	}
	return [][]lie{asGiven(lies), turned}
}

// commonWidths are the widths of strip in which every piece may lie, of pieces
// of several sizes.
func commonWidths(needs []Need, lies [][]lie) []measure.Length {
	var common []measure.Length
	if len(needs) < 2 {
		return nil
	}
	for _, l := range lies[0] {
		in := func(of []lie) bool { _, ok := lieAlong(of, l.along); return ok && of[0].across > 0 }
		if !slices.Contains(common, l.along) && !slices.ContainsFunc(lies, func(of []lie) bool { return !in(of) }) {
			common = append(common, l.along)
		}
	}
	return common
}

func lieAlong(lies []lie, width measure.Length) (lie, bool) {
	for _, l := range lies {
		if l.along == width {
			return l, true
		}
	}
	return lie{}, false
}

// sharing gives a function that cuts what comes from strips of one width from
// the same strips, lengths mixed, in the fewest that were found; ok is false where
// no two sizes do.
func (f *Fabric) sharing(needs []Need) func(pick []lie) (w StripWay, ok bool) {
	type group struct {
		width measure.Length
		of    string // which sizes
	}
	found := map[group]int64{}
	return func(pick []lie) (w StripWay, ok bool) {
		w.Shared = true
		for i, l := range pick {
			if slices.ContainsFunc(pick[:i], func(m lie) bool { return m.along == l.along }) {
				continue // with the first of that width
			}
			g := group{width: l.along}
			var pieces []cutting.Piece
			for j, m := range pick {
				if m.along == l.along && m.across > 0 {
					g.of += fmt.Sprintf("%d ", j)
					pieces = append(pieces, cutting.Piece{Name: needs[j].For.Text, Across: m.across, Along: m.along, Count: int(needs[j].Count)})
				}
			}
			n, known := found[g]
			if !known {
				n = f.fewest(pieces)
				found[g] = n
			}
			if n < 0 {
				return w, false
			}
			for j, m := range pick { // strips used whole
				if m.along == l.along && m.across == 0 {
					n += needs[j].Count
				}
			}
			w.add(l.along, n)
			ok = ok || len(pieces) > 1
		}
		return w, ok
	}
}

// fewest is the fewest strips found that hold pieces which lie in strips of one
// width, below 0 where they fit in none.
func (f *Fabric) fewest(pieces []cutting.Piece) int64 {
	if len(pieces) == 0 {
		return 0
	}
	r, err := f.solver.Strips(cutting.Problem{Cloth: cutting.Cloth{Width: f.stripLength()}, Pieces: pieces}, 0)
	if err != nil {
		return -1
	}
	return int64(r.Length / pieces[0].Along)
}

// packedWay counts the strips of the printed layout in which the pieces lie.
func (f *Fabric) packedWay(needs []Need) StripWay {
	w := StripWay{Shared: true}
	pieces, _ := f.split()
	for _, row := range f.Layout.Rows {
		if slices.ContainsFunc(row.Cuts, func(c cutting.Cut) bool { return pieces[c.Piece].Name == needs[0].For.Text }) {
			w.add(row.Height, int64(row.Repeat))
		}
	}
	return w
}
