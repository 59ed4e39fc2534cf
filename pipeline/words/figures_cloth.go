package words

import (
	"fmt"
	"slices"

	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// fabrics adds what is bought and what is cut.
func (b *book) fabrics() {
	t := newTally(b)
	for _, f := range b.s.Fabrics {
		if !f.Used() || f.Err != nil || !b.s.SureOfCloth(f) {
			continue
		}
		b.toBuy(f)
		b.strips(f)
		b.packed(f)
		for _, n := range f.Needs {
			t.need(f, n)
		}
	}
	t.done()
}

// toBuy adds what is bought of a fabric: what the pattern prints, where it prints it.
func (b *book) toBuy(f *derive.Fabric) {
	role := f.Role.Text
	keys := []key{fabricKey(role), cloth}
	for _, n := range f.Needs {
		keys = append(keys, b.places[n.For.Text]...)
	}
	if f.Panels > 0 {
		keys = append(keys, backing)
	}
	keys = append(keys, tradeKeys(f.Name.Text)...)
	if f.Form == plan.Yardage {
		g := b.add("the length of "+quoted(role)+" to buy", one(f.Buy), keys...)
		g.buy = true
		if said := f.Printed(); said > 0 {
			g.dims, g.printed = one(said), true
		}
		w := b.add("the usable width of "+quoted(role), one(f.UsableWidth.Length), fabricKey(role), usable, cloth)
		w.head[usable] = true
		return
	}
	kind := []key{piece, strip}
	if f.Piece[0].Length == f.Piece[1].Length {
		kind = []key{piece, square}
	}
	b.count("packs of "+quoted(role), f.Packs, []key{pack}, keys...).of(f.Piece[0].Surd(), f.Piece[1].Surd())
	b.count("pieces in a pack of "+quoted(role), int64(f.Pack.N), kind, fabricKey(role), pack).of(f.Piece[0].Surd(), f.Piece[1].Surd())
	b.add("the usable size of "+quoted(role), both(f.Usable[0].Surd(), f.Usable[1].Surd()), fabricKey(role), usable)
	b.count("pieces of "+quoted(role)+" left over", f.Left, append(kind, spare), fabricKey(role), spare)
	used := f.Packs*int64(f.Pack.N) - f.Left
	b.count("pieces of "+quoted(role)+" cut into", used, kind, fabricKey(role)).of(f.Piece[0].Surd(), f.Piece[1].Surd())
	var all int64
	for _, n := range f.Needs {
		all += n.Count
	}
	if used > 0 && all%used == 0 {
		b.count("pieces from each of "+quoted(role), all/used, []key{piece, square, rectangle, strip}, fabricKey(role), pack, piece).per = true
	}
}

// strips adds the strips that a fabric is cut into first, and what comes from each.
func (b *book) strips(f *derive.Fabric) {
	for _, layout := range []struct {
		name string
		rows []derivedRow
	}{{"", rowsOf(f, false)}, {", by the plain method", rowsOf(f, true)}} {
		b.stripTotals(f, layout.name, layout.rows)
	}
}

// cutOf is strips of one height from which the same is cut.
type cutOf struct {
	height measure.Length
	piece  int
}

// cutUp stands for all pieces: strips of which any are cut.
const cutUp = -1000

// stripTotals adds up strips: all of a height, and those of a height from which the
// same is cut.
func (b *book) stripTotals(f *derive.Fabric, name string, rows []derivedRow) {
	role := fabricKey(f.Role.Text)
	total, of := map[measure.Length]int64{}, map[cutOf]int64{}
	var order []measure.Length
	var kinds []cutOf
	var all int64
	for _, r := range rows {
		if total[r.height] == 0 {
			order = append(order, r.height)
		}
		k := cutOf{r.height, r.piece}
		if of[k] == 0 && r.piece >= 0 {
			kinds = append(kinds, k)
		}
		total[r.height] += r.n
		if r.piece >= 0 {
			of[cutOf{r.height, cutUp}] += r.n
		}
		of[k] += r.n
		all += r.n
		if r.each > 0 {
			b.count("pieces from each strip of "+quoted(f.Role.Text), r.each, []key{piece, square, rectangle, triangle}, role, strip).per = true
		}
	}
	what := fmt.Sprintf("strips of %s%s", quoted(f.Role.Text), name)
	for _, h := range order {
		b.count(what, total[h], []key{strip}, role).of(h.Surd()).is(raw).long = f.StripLength().Surd()
	}
	for _, h := range order {
		kinds = append(kinds, cutOf{h, cutUp})
	}
	for _, k := range kinds {
		if of[k] > 0 && of[k] != total[k.height] {
			g := b.count(what+" for one kind of piece", of[k], []key{strip}, role).of(k.height.Surd()).is(raw)
			g.last, g.long = true, f.StripLength().Surd()
		}
	}
	if len(order) > 1 {
		b.count("all strips of "+quoted(f.Role.Text)+name, all, []key{strip}, role).last = true
	}
}

// packed adds the strips of a packed layout one kind after the other, and the
// pieces of each: they are told so, for none is of one kind of piece alone.
func (b *book) packed(f *derive.Fabric) {
	if f.Cuts != plan.PackedCuts && !slices.ContainsFunc(f.Layout.Rows, func(r cutting.Row) bool { return len(r.Cuts) > 1 }) {
		return
	}
	role := fabricKey(f.Role.Text)
	all := append([]cutting.Row{}, f.Layout.Rows...)
	for _, r := range f.Layout.Rows {
		all = append(all, r.Panel...)
	}
	for _, r := range all {
		of := b.count("strips of "+quoted(f.Role.Text)+" in the packed layout", int64(r.Repeat), []key{strip}, role).of(r.Height.Surd()).is(raw)
		of.last, of.long = true, f.StripLength().Surd()
		for _, c := range r.Cuts {
			for _, n := range []int64{int64(c.Count), int64(c.Count) * int64(r.Repeat)} {
				g := b.count("pieces of each strip of "+quoted(f.Role.Text)+" in the layout", n, []key{piece, square, rectangle}, role)
				g.last, g.per = true, true
			}
		}
		for _, q := range r.Parts {
			g := b.add("what is used of a strip of "+quoted(f.Role.Text), one(q.Width), role)
			g.lengthy, g.last = true, true
		}
	}
}

// derivedRow is a run of equal strips; each is how many equal pieces come of one, 0
// where it is sewn whole or gives several.
type derivedRow struct {
	height measure.Length
	n      int64
	each   int64
	piece  int // which piece, counted from 0; -1 of strips that are sewn whole, and of several
}

func rowsOf(f *derive.Fabric, plain bool) []derivedRow {
	layout := f.Layout
	if plain {
		layout = f.Plain
	}
	var out []derivedRow
	for _, r := range layout.Rows {
		d := derivedRow{height: r.Height, n: int64(r.Repeat), piece: -1}
		if len(r.Cuts) == 1 {
			d.each, d.piece = int64(r.Cuts[0].Count), r.Cuts[0].Piece
		}
		out = append(out, d)
	}
	return out
}

// tally adds up what is cut, by everything that a text may add it up by.
type tally struct {
	b    *book
	sums map[string]*figure
	more []string
}

func newTally(b *book) *tally { return &tally{b: b, sums: map[string]*figure{}} }

// sum adds n to the figure of a name.
func (t *tally) sum(what string, n int64, head, keys []key, dims []measure.Surd, long measure.Length) *figure {
	f := t.sums[what]
	if f == nil {
		f = t.b.count(what, 0, head)
		f.dims = dims
		f.state = raw
		if long > 0 {
			f.long = long.Surd()
		}
		t.sums[what] = f
		t.more = append(t.more, what)
	}
	f.count += n
	for _, k := range keys {
		f.keys[k] = true
	}
	cloths := 0
	for k := range f.keys {
		if k.class() == ofCloth {
			cloths++
		}
	}
	f.several = f.several || cloths > 1
	return f
}

func (t *tally) need(f *derive.Fabric, n derive.Need) {
	b, role := t.b, f.Role.Text
	places := b.places[n.For.Text]
	places = append(slices.Clip(places), b.whatKeys(n)...)
	dims := both(n.Across.Surd(), n.Along.Surd())
	head := []key{piece, rectangle}
	kind := "rectangles"
	switch {
	case n.Strip:
		head, kind = []key{strip}, "strips"
		dims = one(n.Along)
	case n.Across == n.Along:
		head, kind = []key{piece, square}, "squares"
	case slices.Contains(places, sashing):
		head = append(head, strip, sashing)
	}
	if n.InLengths || !n.Strip && n.Along > 2*n.Across || !n.Strip && n.Across > 2*n.Along {
		head = append(head, strip, log_)
	}
	size := fmt.Sprintf(" %s x %s", n.Across.Format(b.units), n.Along.Format(b.units))
	if n.Strip {
		size = " " + n.Along.Format(b.units) + " wide"
	}
	long := measure.Length(0)
	if n.Strip {
		long = f.StripLength().Length
	}
	if n.Last > 0 {
		b.add(fmt.Sprintf("what is used of the last strip of %s for %s", quoted(role), quoted(n.For.Text)), one(n.Last), append([]key{fabricKey(role)}, places...)...).lengthy = true
	}
	fk := []key{fabricKey(role)}
	whole := append(slices.Clone(fk), places...)
	t.sum(fmt.Sprintf("%s of %s%s for %s", kind, quoted(role), size, quoted(n.For.Text)), n.Count, head, whole, dims, long)
	t.sum(fmt.Sprintf("%s of %s%s", kind, quoted(role), size), n.Count, head, whole, dims, long)
	t.sum(fmt.Sprintf("%s for %s%s", kind, quoted(n.For.Text), size), n.Count, head, whole, dims, long)
	t.sum(fmt.Sprintf("%s for %s", kind, quoted(n.For.Text)), n.Count, head, whole, nil, long)
	t.sum(fmt.Sprintf("%s of %s for %s", kind, quoted(role), quoted(n.For.Text)), n.Count, head, whole, nil, long)
	t.sum(fmt.Sprintf("%s of %s in all", kind, quoted(role)), n.Count, head, fk, nil, long).last = true
	t.sum(fmt.Sprintf("%s%s in all", kind, size), n.Count, head, fk, dims, long)
	if tri := n.Halving.Triangles(); tri > 1 {
		t.sum(fmt.Sprintf("triangles of %s for %s", quoted(role), quoted(n.For.Text)), n.Count*tri, []key{triangle, piece}, whole, nil, long)
	}
}

// whatKeys is which pieces of a part a need may be: those of one of its cut sizes.
func (b *book) whatKeys(n derive.Need) []key {
	p := b.s.Part(n.For.Text)
	if p == nil || p.Room == nil {
		return nil
	}
	var keys []key
	for _, r := range p.Room.OnRuler() {
		if l := r.Length.Length; l != n.Across && l != n.Along || !r.Given() {
			continue
		}
		for _, w := range stems(plainWords(r.What)) {
			if !plainSize[w] {
				keys = append(keys, whatKey(w))
			}
		}
	}
	return keys
}

// done drops the sums that only repeat another: what is cut for one thing only.
func (t *tally) done() {
	for _, what := range t.more {
		if f := t.sums[what]; len(f.keys) == 0 {
			f.last = true
		}
	}
}

// tradeKeys are the words of the trade in the name of a fabric.
func tradeKeys(name string) []key {
	var keys []key
	for _, w := range stems(plainWords(name)) {
		for _, k := range trade[w] {
			if k.class() == ofThing {
				keys = append(keys, k)
			}
		}
	}
	return keys
}
