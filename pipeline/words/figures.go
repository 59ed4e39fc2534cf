package words

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// state reports whether a length is that of something sewn in.
type state int

const (
	unsaid   state = iota
	finished       // seams taken
	raw            // as cut, or with its seam allowances
)

// figure is something that a plan knows of one size: a count, lengths, or both.
type figure struct {
	size    int   // counted from 1
	count   int64 // -1 where nothing is counted
	dims    []measure.Surd
	head    map[key]bool // what is counted or measured
	keys    map[key]bool // what else it is about
	state   state
	buy     bool         // a length of fabric to buy
	per     bool         // so many of each of something
	lengthy bool         // a length along a strip, a panel or an edge
	several bool         // added up over several fabrics
	need    key          // what the text has to speak of for it to be meant; empty where nothing
	long    measure.Surd // the other side of a strip, which is as long as its fabric is wide
	printed bool         // by the pattern, as the plan has it
	what    string
	last    bool // compared only where nothing else is
}

// on reports whether the figure is about any of the keys.
func (f *figure) on(keys []key) bool {
	for _, k := range keys {
		if f.keys[k] || f.head[k] {
			return true
		}
	}
	return false
}

// book is all figures of a plan.
type book struct {
	figures []*figure
	units   measure.Unit
	sizes   []*derive.Size
	size    int // being read
	s       *derive.Size
	places  map[string][]key
	cloths  map[*derive.Part]map[key]bool // the fabrics that are in a part
}

func newBook(p *plan.Plan, sizes []*derive.Size) *book {
	b := &book{units: p.Units, sizes: sizes}
	for i, s := range sizes {
		b.size, b.s = i+1, s
		b.places = b.forKeys()
		b.cloths = clothsIn(s)
		b.whole()
		b.fabrics()
		for _, q := range s.Parts {
			b.part(q)
		}
		b.finish()
		b.printed()
	}
	return b
}

// add adds a figure without a count.
func (b *book) add(what string, dims []measure.Surd, keys ...key) *figure {
	f := &figure{size: b.size, count: -1, dims: dims, head: map[key]bool{}, keys: map[key]bool{}, what: what}
	for _, k := range keys {
		f.keys[k] = true
	}
	b.figures = append(b.figures, f)
	return f
}

// count adds a count.
func (b *book) count(what string, n int64, head []key, keys ...key) *figure {
	f := b.add(what, nil, keys...)
	f.count = n
	for _, k := range head {
		f.head[k] = true
	}
	return f
}

func (f *figure) is(s state) *figure {
	f.state = s
	return f
}

func (f *figure) of(dims ...measure.Surd) *figure {
	f.dims = dims
	return f
}

func one(l measure.Length) []measure.Surd { return []measure.Surd{l.Surd()} }

func both(a, b measure.Surd) []measure.Surd { return []measure.Surd{a, b} }

// forKeys is what pieces are cut for, by the names that needs give it.
func (b *book) forKeys() map[string][]key {
	m := map[string][]key{
		"binding": {binding}, "backing": {backing}, "sleeve": {sleeve}, "label": {label_}, "sashing": {sashing}, "cornerstones": {cornerstone},
		"side triangles": {sideTriangle, setting_}, "corner triangles": {cornerTriangle, setting_},
	}
	for _, d := range b.s.Top.Borders {
		name := d.Said.Name.Text
		m[name] = []key{borderKey(name), border}
		m[name+" corners"] = []key{borderKey(name), border, cornerSquare}
	}
	for _, q := range b.s.Parts {
		keys := []key{partKey(q.Name.Text)}
		if q.Set != nil {
			keys = append(keys, stripSet)
		}
		for _, k := range b.s.Top.Blocks {
			if k.Part == q {
				keys = append(keys, block)
			}
		}
		m[q.Name.Text] = keys
	}
	return m
}

// whole adds what is of the quilt as a whole.
func (b *book) whole() {
	s := b.s
	if seamed := s.Of.Seam.Allowance; seamed.Given() {
		f := b.add("the seam allowance", one(seamed.Length), seam)
		f.head[seam] = true
	}
	if s.Top.Known {
		b.add("the finished size", both(s.Top.Finished.Width, s.Top.Finished.Height), quilt).is(finished)
		b.add("the top, unfinished", both(s.Top.Width, s.Top.Height), top, quilt).is(raw)
	}
	if st := s.Top.Setting; st != nil && st.Known {
		box := st.Box.Finished(s.Of.Seam.Allowance.Length)
		b.add("the middle, unfinished", both(st.Width, st.Height), middle, top, quilt).is(raw)
		b.add("the middle, finished", both(box.Width, box.Height), middle).is(finished)
	}
	b.grid(s)
	b.count("sizes", int64(len(b.sizes)), []key{oneSize})
	for i := range s.Of.Tools.Rulers {
		r := &s.Of.Tools.Rulers[i]
		b.add("a ruler", both(r.Width.Surd(), r.Length.Surd()), ruler).head[ruler] = true
	}
	if m := s.Of.Tools.Mat; m[0].Given() {
		b.add("the mat", both(m[0].Surd(), m[1].Surd()), mat).head[mat] = true
	}
}

// grid adds rows, and blocks in them.
func (b *book) grid(s *derive.Size) {
	var total int64
	var inRow []key
	for _, k := range s.Top.Blocks {
		total += k.Count
		name := k.Part.Name.Text
		inRow = append(inRow, partKey(name))
		b.count("blocks "+quoted(name), k.Count, append(partHeads(k.Part), block), partKey(name))
	}
	if total > 0 && len(s.Top.Blocks) > 1 {
		b.count("blocks in all", total, []key{block, unit, square})
	}
	g := s.Of.Layout.Grid
	if g == nil || g.Rows.N == 0 {
		return
	}
	b.count("rows", int64(g.Rows.N), []key{row})
	if g.Columns.N > 0 {
		f := b.count("blocks in a row", int64(g.Columns.N), append([]key{column, block, square, unit, piece}, inRow...), row)
		f.per = true
	}
}

// partHeads is what a part may be called when it is counted.
func partHeads(p *derive.Part) []key {
	head := []key{partKey(p.Name.Text), piece, unit}
	switch {
	case p.Set != nil && p.Set.Cut == nil:
		head = append(head, stripSet)
	case p.Set != nil:
		head = append(head, segment)
	case p.Tube != nil:
		head = append(head, square)
	case p.Shape != nil:
		head = append(head, triangle)
	case p.Rows != nil, p.Recut != nil, p.Mosaic != nil:
		head = append(head, block)
	case p.Triangle != nil && p.Triangle.Quarter:
		head = append(head, block)
	case p.Triangle == nil && p.Unit == nil && p.Known && p.Width.Equal(p.Height):
		head = append(head, square)
	}
	return head
}

// finish adds borders, backing, batting, binding and the like.
func (b *book) finish() {
	s := b.s
	for _, d := range s.Top.Borders {
		b.border(d)
	}
	if d := s.Backing; d != nil && d.Known {
		b.count("panels of the backing", d.Panels, []key{panel, piece}, backing).of(d.Each)
		f := b.add("the length of a panel of the backing", []measure.Surd{d.Each}, backing, panel)
		f.head[panel], f.lengthy = true, true
		b.add("the backing", both(d.Size.Width, d.Size.Height), backing)
		f = b.add("the seam of the backing", one(d.Said.Seam.Length), backing, seam)
		f.head[seam], f.need = true, backing
		b.add("the overhang of the backing", one(d.Said.Overhang.Length), backing, overhang, quilt)
	}
	if d := s.Batting; d != nil {
		b.add("the batting", both(d.Size.Width, d.Size.Height), batting)
		b.add("the overhang of the batting", one(d.Said.Overhang.Length), batting, overhang, quilt)
		if d.Said.Package[0].Given() {
			b.add("the package of batting", both(d.Said.Package[0].Surd(), d.Said.Package[1].Surd()), batting, package_)
		}
		if d.Cut > 0 {
			b.add("the batting off the roll", one(d.Buy), batting).buy = true
			b.add("the width of the roll of batting", one(d.Said.Roll.Length), batting, usable)
		}
	}
	if d := s.Binding; d != nil {
		b.binding(d)
	}
	if d := s.Sleeve; d != nil && d.Strips.OK {
		b.add("the sleeve", both(d.Each, d.Said.Cut.Surd()), sleeve)
		b.add("the depth of the sleeve", []measure.Surd{d.Depth}, sleeve).is(finished)
		b.count("pieces of the sleeve", d.Pieces, []key{piece, strip}, sleeve)
	}
	b.sashing()
}

func (b *book) binding(d *derive.Binding) {
	b.add("the binding as cut", one(d.Said.Cut.Length), binding, strip).is(raw)
	b.add("the binding on the front", one(d.Said.Finished.Length), binding).is(finished)
	b.add("the way round the quilt", []measure.Surd{d.Round}, binding, quilt).lengthy = true
	b.add("the length of binding needed", []measure.Surd{d.Strips.Need}, binding).lengthy = true
	if d.Bias != nil {
		b.count("squares for bias binding", d.Bias.Squares, []key{square}, binding).of(d.Bias.Square.Surd())
		b.add("the length of the bias binding", []measure.Surd{d.Bias.Length}, binding).lengthy = true
		if d.Bias.Loops > 0 {
			b.count("loops of bias binding", d.Bias.Loops, []key{round}, binding)
		}
	} else if d.Strips.OK {
		b.add("the length of the binding, joined", one(d.Strips.Length), binding).lengthy = true
	}
}

func (b *book) border(d derive.Border) {
	name := d.Said.Name.Text
	keys := []key{borderKey(name), border}
	if d.Said.Width.Given() {
		b.add("border "+quoted(name)+", finished", one(d.Said.Width.Length), keys...).is(finished)
	}
	if !d.Known {
		return
	}
	if d.Cut > 0 {
		b.add("border "+quoted(name)+" as cut", one(d.Cut), append(keys, strip)...).is(raw)
	}
	if d.Sides.Sign() > 0 {
		b.count("the sides of border "+quoted(name), 2, []key{strip, sides}, append(keys, sides)...).of(d.Cut.Surd(), d.Sides).is(raw).lengthy = true
	}
	if d.Ends.Sign() > 0 {
		width := d.EndCut
		if width == 0 {
			width = d.Cut
		}
		b.count("top and bottom of border "+quoted(name), 2, []key{strip, ends}, append(keys, ends)...).of(width.Surd(), d.Ends).is(raw).lengthy = true
	}
	if d.Along == nil && d.Units == nil && d.Strips.Count > 0 {
		b.count("strips for border "+quoted(name), d.Strips.Count+d.EndStrips.Count, []key{strip}, keys...).of(d.Cut.Surd())
		b.add("all strips of border "+quoted(name), []measure.Surd{d.Strips.Need}, keys...).lengthy = true
		b.add("all strips of border "+quoted(name)+", joined", one(d.Strips.Length), keys...).lengthy = true
	}
	b.add("the quilt with border "+quoted(name), both(d.Outer.Width, d.Outer.Height), append(keys, quilt, top)...).is(raw)
	if u := d.Units; u != nil {
		b.count("units on each side of border "+quoted(name), u.Sides, partHeads(u.Part), append(keys, sides, partKey(u.Part.Name.Text))...)
		b.count("units on top and bottom of border "+quoted(name), u.Ends, partHeads(u.Part), append(keys, ends, partKey(u.Part.Name.Text))...)
	}
	if d.Corners > 0 {
		b.count("corners of border "+quoted(name), d.Corners, []key{square, cornerSquare, block}, append(keys, cornerSquare)...).of(d.Cut.Surd(), d.Cut.Surd())
	}
}

func (b *book) sashing() {
	st := b.s.Top.Setting
	if st == nil {
		return
	}
	if g := st.Sashing; g != nil {
		b.add("the sashing, finished", one(g.Said.Width.Length), sashing).is(finished)
		if g.Through == nil {
			b.count("sashes", g.Sashes(), []key{sashing, strip, rectangle, piece}, sashing).of(g.UprightCut.Width, g.UprightCut.Height)
			b.count("upright sashes", g.Upright(), []key{sashing, strip, rectangle, piece}, sashing).of(g.UprightCut.Width, g.UprightCut.Height)
			b.count("level sashes", g.Level(), []key{sashing, strip, rectangle, piece}, sashing).of(g.LevelCut.Width, g.LevelCut.Height)
		}
		if g.Rows > 0 && g.Columns > 0 {
			b.count("sashes in a row of blocks", g.Upright()/g.Rows, []key{sashing, strip, piece}, sashing, row).per = true
			b.count("rows of sashes", g.Level()/g.Columns, []key{row}, sashing).per = true
			if g.Said.Cornerstones.Given() {
				b.count("cornerstones in a row", g.Upright()/g.Rows, []key{cornerstone, square}, cornerstone, sashing, row).per = true
			}
		}
		if g.Said.Cornerstones.Given() {
			b.count("cornerstones", g.Cornerstones(), []key{cornerstone, square}, cornerstone, sashing).of(g.Stone.Width, g.Stone.Height)
		}
	}
	if o := st.OnPoint; o != nil {
		b.count("rows between the full ones", o.Rows-1, []key{row}).last = true
		b.count("blocks in a row between the full ones", o.Columns-1, []key{column}).last = true
		b.count("side triangles", o.Side.Triangles, []key{triangle, sideTriangle}, setting_, sideTriangle)
		b.count("corner triangles", o.Corner.Triangles, []key{triangle, cornerTriangle}, setting_, cornerTriangle)
		if o.Sashing != nil {
			b.add("the sashing, finished", one(o.Sashing.Width.Length), sashing).is(finished)
			b.count("sashes", o.Sashes(), []key{sashing, strip, rectangle, piece}, sashing).of(o.Sash.Width, o.Sash.Height)
			b.count("cornerstones", o.Cornerstones(), []key{cornerstone, square}, cornerstone, sashing).of(o.Stone.Width, o.Stone.Height)
			b.count("cornerstones on the edge", o.EdgeStones(), []key{cornerstone, square}, cornerstone, sashing).last = true
		}
	}
}

func quoted(name string) string { return `"` + name + `"` }
