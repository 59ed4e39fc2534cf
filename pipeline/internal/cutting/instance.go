package cutting

import (
	"cmp"
	"slices"

	"yardproof/schema/measure"
)

// instance is a strip problem in the terms of the literature on two-stage
// cutting: a strip width, strip classes by height, and item types with demands.
// Widths are divided by their common divisor and heights by theirs, so that
// neither speed nor result depends on the grid the sizes were written in.
type instance struct {
	width   int
	heights []int64 // of the strip classes, ascending
	kinds   []kind

	unitH measure.Length

	// coarse says that the common divisors of sheets were too small to work with: sizes
	// were rounded to a coarser grid. Rounded up, plans are right and bounds are
	// not; rounded down, bounds are right and plans need not be.
	coarse bool
	unitW  measure.Length
	round  rounding

	sheets *sheetAxes    // set when the "strips" are whole sheets, all of one class
	stacks *stackColumns // set when pieces may be stacked in a strip
	cells  cells         // columns of knapsack tables, where they are not units of width
	stock  *stockRooms   // set when the classes are stocks to cut lengths from
}

// kind is an item type: everything that is cut to one size.
type kind struct {
	demand int
	shapes []shape        // one an orientation, in rising class and falling width
	from   []source       // by name
	across measure.Length // unturned, of the first source
	along  measure.Length

	turnable bool
	together int // so many must come from one sheet
}

// shape is one orientation of a kind: it lies in strips of its class or of any
// taller one.
type shape struct {
	width  int
	class  int
	across measure.Length // the width in ticks
	along  measure.Length // the height in ticks
}

// mostCells is the largest width of a knapsack table of sheets, in units. On a finer
// common grid sizes are rounded (rounding.go).
const mostCells = 1 << 14

// source is a demand of the caller behind a kind: a piece, or with strip set
// the last part of a whole strip (in sheets, also a strip used whole).
type source struct {
	index, count int
	name         string
	strip        bool
	width        measure.Length // of the strip that is used
}

// oriented is a shape in ticks.
type oriented struct {
	width, height measure.Length
}

// newInstance normalises a problem. Strips that are used whole are left out:
// they share a strip with nothing. The kinds are in an order that does not
// depend on the caller's.
func newInstance(p Problem, round rounding) (*instance, error) {
	raw := append(pieceKinds(p.Pieces, false), partKinds(p.Strips, p.Cloth.Width)...)
	lying := make([][]oriented, len(raw))
	for i := range raw {
		lying[i] = raw[i].lie(p.Cloth, maxSide)
		if len(lying[i]) == 0 {
			return nil, tooWide(p, raw[i].from[0].index)
		}
	}
	kinds, order := distinct(raw, lying)
	return assemble(p.Cloth.Width, 0, kinds, pickLying(lying, order), round), nil
}

func pieceKinds(pieces []Piece, matching bool) []kind {
	var kinds []kind
	for _, group := range sizes(pieces, matching) {
		var k kind
		for _, i := range group {
			k.demand += pieces[i].Count
			k.from = append(k.from, source{index: i, count: pieces[i].Count, name: pieces[i].Name})
		}
		k.sortSources()
		first := pieces[k.from[0].index]
		k.across, k.along = first.Across, first.Along
		if k.together = 1; matching {
			k.together = first.matching()
		}
		k.turnable = first.Turnable && first.Across != first.Along
		kinds = append(kinds, k)
	}
	return kinds
}

// sortSources makes the order in which names are dealt independent of the
// order in which they were asked for.
func (k *kind) sortSources() {
	slices.SortFunc(k.from, func(a, b source) int {
		return cmp.Or(cmp.Compare(a.name, b.name), cmp.Compare(a.index, b.index))
	})
}

// partKinds are the last parts of joined lengths. They are never turned:
// binding and borders keep the direction of their whole strips.
func partKinds(strips []WholeStrip, width measure.Length) []kind {
	var kinds []kind
	for i, s := range strips {
		if _, part := s.split(width); part > 0 {
			kinds = append(kinds, kind{demand: 1, together: 1, across: part, along: s.Height,
				from: []source{{index: i, count: 1, name: s.Name, strip: true, width: part}}})
		}
	}
	return kinds
}

// lie lists the orientations of a kind that fit and are of use in strips no
// taller than limit, lower strips first: a taller strip must make room by a
// narrower width.
func (k kind) lie(c Cloth, limit measure.Length) []oriented {
	all := []oriented{{k.across, c.whole(k.along)}}
	if k.turnable {
		all = append(all, oriented{k.along, c.whole(k.across)})
	}
	all = slices.DeleteFunc(all, func(o oriented) bool { return o.width > c.Width || o.height > limit })
	slices.SortFunc(all, compareOriented)
	if len(all) == 2 && all[1].width >= all[0].width {
		all = all[:1]
	}
	return all
}

func compareOriented(a, b oriented) int {
	return cmp.Or(cmp.Compare(a.height, b.height), cmp.Compare(a.width, b.width))
}

// distinct merges kinds that lie and match alike and returns, for each that is left, the
// index of one of them. Kinds come taller first, then wider.
func distinct(raw []kind, lying [][]oriented) (kinds []kind, order []int) {
	all := make([]int, len(raw))
	for i := range all {
		all[i] = i
	}
	slices.SortStableFunc(all, func(a, b int) int {
		return cmp.Or(-slices.CompareFunc(reversed(lying[a]), reversed(lying[b]), compareOriented),
			cmp.Compare(raw[b].together, raw[a].together))
	})
	for _, i := range all {
		if n := len(order); n > 0 && slices.Equal(lying[order[n-1]], lying[i]) && kinds[n-1].together == raw[i].together {
			k := &kinds[n-1]
			k.demand += raw[i].demand
			k.from = append(k.from, raw[i].from...)
			k.sortSources()
			continue
		}
		kinds, order = append(kinds, raw[i]), append(order, i)
	}
	return kinds, order
}

func reversed(o []oriented) []oriented {
	r := slices.Clone(o)
	slices.Reverse(r)
	return r
}

func pickLying(lying [][]oriented, order []int) [][]oriented {
	var out [][]oriented
	for _, i := range order {
		out = append(out, lying[i])
	}
	return out
}

func tooWide(p Problem, i int) error {
	q := p.Pieces[i]
	needs := q.Across
	if q.Turnable {
		needs = min(needs, q.Along)
	}
	return &TooWide{Piece: i, Strip: -1, Name: q.Name, Needs: needs, Width: p.Cloth.Width}
}

// assemble divides out the grid. Where strips are stacked in a sheet, stack is
// its other side, else 0.
func assemble(width, stack measure.Length, kinds []kind, lying [][]oriented, round rounding) *instance {
	in := &instance{round: round}
	var widths, heights []measure.Length
	for _, o := range slices.Concat(lying...) {
		in.unitW, in.unitH = gcd(in.unitW, o.width), gcd(in.unitH, o.height)
		widths, heights = append(widths, o.width), append(heights, o.height)
	}
	if len(kinds) == 0 {
		return in
	}
	if stack == 0 {
		in.cellsOfWidths(width, kinds, lying)
		if round == down {
			in.unitH = roughHeights(in.unitH, width, kinds, lying)
		}
	} else if w := ceilLength(width, mostCells); w > in.unitW {
		in.unitW, in.coarse = coarser(w, widths), true
	}
	if h := ceilLength(stack, mostCells); h > in.unitH {
		in.unitH, in.coarse = coarser(h, heights), true
	}
	for _, o := range slices.Concat(lying...) {
		in.heights = append(in.heights, in.tall(o, stack))
	}
	slices.Sort(in.heights)
	in.heights = slices.Compact(in.heights)
	in.width = int(width / in.unitW)
	for i, k := range kinds {
		for _, o := range lying[i] {
			k.shapes = append(k.shapes, shape{
				width:  min(in.width, int(round.to(o.width, in.unitW))),
				class:  in.classOf(in.tall(o, stack)),
				across: o.width, along: o.height,
			})
		}
		in.kinds = append(in.kinds, k)
	}
	return in
}

// fewCells is a width, in units, up to which a column of the tables for each unit is
// cheap enough.
const fewCells = 1 << 10

// cellsOfWidths makes the columns of tables where the common grid of the widths is fine.
func (in *instance) cellsOfWidths(width measure.Length, kinds []kind, lying [][]oriented) {
	room := int(width / in.unitW)
	if room <= fewCells {
		return
	}
	var sizes []sized
	for i, k := range kinds {
		for _, o := range lying[i] {
			sizes = append(sizes, sized{int(o.width / in.unitW), k.demand})
		}
	}
	in.cells = newCells(sizes, room, mostCoarse)
}

// tall is a height in units, rounded to the grid but never beyond the sheet
// that strips are stacked in: what fits is then alone there.
func (in *instance) tall(o oriented, stack measure.Length) int64 {
	h := int64(in.round.to(o.height, in.unitH))
	if stack > 0 {
		h = min(h, int64(stack/in.unitH))
	}
	return h
}

// rowHeight is the cloth a strip takes, in ticks: the height of its tallest
// piece.
func (in *instance) rowHeight(p pattern) measure.Length {
	h := measure.Length(0)
	for i, n := range p.count {
		if n > 0 {
			h = max(h, in.fit(i, p.class).along)
		}
	}
	return h
}

// classOf is the lowest class of strips at least so high.
func (in *instance) classOf(h int64) int {
	class, _ := slices.BinarySearch(in.heights, h)
	return class
}

func ceilLength(a, b measure.Length) measure.Length { return (a + b - 1) / b }

func gcd(a, b measure.Length) measure.Length {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// fit is the narrowest orientation of kind i that a strip of the class takes,
// or nil.
func (in *instance) fit(i, class int) *shape {
	var s *shape
	for t := range in.kinds[i].shapes {
		if in.kinds[i].shapes[t].class <= class {
			s = &in.kinds[i].shapes[t]
		}
	}
	return s
}

func (in *instance) demands() []int {
	d := make([]int, len(in.kinds))
	for i := range in.kinds {
		d[i] = in.kinds[i].demand
	}
	return d
}
