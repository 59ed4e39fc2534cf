package words

import (
	"fmt"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
)

// part adds what is known of a part.
func (b *book) part(p *derive.Part) {
	s := b.s
	name := p.Name.Text
	if p.Needed == 0 || !p.Known || !s.Sure(derive.Quantity{Kind: derive.Count, Name: name}) {
		return
	}
	k := partKey(name)
	head := partHeads(p)
	for _, c := range s.Top.Blocks {
		if c.Part == p {
			head = append(head, block)
		}
	}
	size := both(p.Width, p.Height)
	if p.Shape != nil {
		size = both(p.Shape.Cut.Width, p.Shape.Cut.Height)
	}
	from := len(b.figures)
	defer func() {
		for _, f := range b.figures[from:] {
			if !f.of2(ofCloth) {
				for c := range b.cloths[p] {
					f.keys[c] = true
				}
			}
		}
	}()
	of := append([]key{k}, sourceOf(p)...)
	b.count(quoted(name), p.Needed, head, of...).of(size...).is(raw)
	if p.Made != p.Needed {
		b.count(quoted(name)+" made", p.Made, head, of...).of(size...).is(raw)
		b.count("spare "+quoted(name), p.Made-p.Needed, append(head, spare), append(of, spare)...)
	}
	sewn := p.Box.Finished(p.Seam.Allowance.Length)
	f := b.add(quoted(name)+", finished", both(sewn.Width, sewn.Height), k).is(finished)
	addHeads(f, head)
	b.onRuler(p, head)
	if t := p.Room.Trims(); len(t) > 0 && t[0].To.Given() {
		other := t[len(t)-1].To
		if !other.Given() {
			other = t[0].To
		}
		addHeads(b.add(quoted(name)+" trimmed", both(t[0].To.Surd(), other.Surd()), k, trimmed).is(raw), head)
	}
	for _, d := range p.Borders {
		b.border(d)
		seam := p.Seam.Allowance.Length
		outer := d.Outer.Finished(seam)
		b.add("the part with border "+quoted(d.Said.Name.Text)+", finished", both(outer.Width, outer.Height), k, borderKey(d.Said.Name.Text), border).is(finished)
	}
	b.yields(p, head, size)
	b.sets(p)
	b.units2(p, head)
	b.calls(p, head)
}

// sourceOf is what a part is cut from, where it is cut from something sewn.
func sourceOf(p *derive.Part) []key {
	switch {
	case p.Tube != nil:
		return []key{tube}
	case p.Set != nil && p.Set.Cut != nil:
		return []key{stripSet}
	case p.Triangle != nil:
		return []key{pair}
	}
	return nil
}

// onRuler adds the lengths of a part that its maker has to find on a ruler, and
// what is left of each once it is sewn in.
func (b *book) onRuler(p *derive.Part, head []key) {
	k, both := partKey(p.Name.Text), 2*p.Seam.Allowance.Length
	for _, r := range p.Room.OnRuler() {
		if !r.Given() {
			continue
		}
		var heads []key
		for _, w := range stems(plainWords(r.What)) {
			heads = append(heads, trade[w]...)
			if !plainSize[w] {
				heads = append(heads, whatKey(w))
			}
		}
		if len(heads) == 0 || r.What == "segment" {
			heads = append(heads, head...)
		}
		of := r.What + " of " + quoted(p.Name.Text)
		addHeads(b.add(of, one(r.Length.Length), k).is(raw), heads)
		if r.Length.Length > both {
			addHeads(b.add(of+", finished", one(r.Length.Length-both), k).is(finished), heads)
		}
	}
}

func addHeads(f *figure, head []key) {
	for _, k := range head {
		f.head[k] = true
	}
}

// yields adds how many come from one strip, set, tube, pair or square.
func (b *book) yields(p *derive.Part, head []key, size []measure.Surd) {
	name := p.Name.Text
	k := partKey(name)
	if y := p.Yield(); y != nil && y.Each > 0 {
		from := []key{k, strip, stripSet, tube}
		f := b.count(quoted(name)+" from each", y.Each, head, from...)
		f.of(size...).is(raw).per = true
	}
	if t := p.Triangle; t != nil {
		cut := []key{k, square}
		if t.Pairs > 0 {
			b.count("pairs of squares for "+quoted(name), t.Pairs, []key{pair}, cut...).of(t.Cut.Surd(), t.Cut.Surd())
		}
		if t.AtATime > 0 {
			b.count(quoted(name)+" from each pair of squares", int64(t.AtATime), head, k, pair, square).of(size...).is(raw).per = true
		}
	}
	if u := p.Unit; u != nil && u.Each > 1 {
		b.count(quoted(name)+" from each lot", u.Each, head, k, pair, square).of(size...).is(raw).per = true
	}
	if r := p.Recut; r != nil && r.Piece.Width.Sign() > 0 && r.Piece.Height.Sign() > 0 {
		n := measure.FloorDiv(r.Of.Width, r.Piece.Width) * measure.FloorDiv(r.Of.Height, r.Piece.Height)
		b.count("pieces that each is cut into", n, []key{piece}, k, partKey(r.Of.Name.Text)).of(r.Piece.Width, r.Piece.Height).per = true
	}
}

// sets adds strip sets and tubes.
func (b *book) sets(p *derive.Part) {
	name := p.Name.Text
	k := partKey(name)
	if p.Pool != nil && p.Pool.Parts[0] == p {
		keys := []key{}
		for _, q := range p.Pool.Parts {
			keys = append(keys, partKey(q.Name.Text))
		}
		b.count("strip sets for "+quoted(name), p.Pool.Sets, []key{stripSet}, keys...)
	}
	if t := p.Set; t != nil {
		if p.Pool == nil {
			b.count("strip sets "+quoted(name), t.Count, []key{stripSet, k}, k, stripSet).of(t.Width.Surd())
		}
		f := b.add("the width of strip set "+quoted(name), one(t.Width), k, stripSet).is(raw)
		f.head[stripSet] = true
		b.count("strips in a set "+quoted(name), int64(len(t.Strips)), []key{strip}, k, stripSet).per = true
		of := map[string]int64{}
		var roles []string
		for _, q := range t.Strips {
			role := q.Fabric.Role.Text
			if of[role] == 0 {
				roles = append(roles, role)
			}
			of[role]++
		}
		for _, role := range roles {
			b.count(fmt.Sprintf("strips of %s in a set %s", quoted(role), quoted(name)), of[role], []key{strip}, k, stripSet, fabricKey(role)).per = true
		}
	}
	if t := p.Tube; t != nil {
		b.count("tubes for "+quoted(name), t.Count, []key{tube}, k)
		b.count("sets in a tube", 2, []key{stripSet}, k, tube).per = true
	}
	if t := p.Shape; t != nil {
		b.count("strips for "+quoted(name), t.Count, []key{strip, stripSet}, k).of(t.Height.Surd())
	}
}

// units2 adds the pieces of a unit and what it is sewn to.
func (b *book) units2(p *derive.Part, head []key) {
	u := p.Unit
	if u == nil {
		return
	}
	k := partKey(p.Name.Text)
	both2 := 2 * p.Seam.Allowance.Length
	b.count("lots for "+quoted(p.Name.Text), u.Batches, []key{lot}, k)
	for _, c := range u.Pieces {
		keys := []key{k, fabricKey(c.Fabric.Role.Text)}
		if c.What == "centre square" {
			keys = append(keys, centre)
		}
		heads := []key{piece, rectangle, strip, log_}
		if c.Width == c.Height {
			heads = []key{piece, square}
		}
		if c.Triangles == 0 { // whole squares
			b.count(c.What+" for each "+quoted(p.Name.Text), c.Count, heads, keys...).of(c.Width.Surd(), c.Height.Surd()).is(raw).per = true
		}
		if c.Halving.Triangles() == 1 && c.Width > both2 && c.Height > both2 {
			g := b.add(c.What+" of "+quoted(p.Name.Text)+", finished", both((c.Width-both2).Surd(), (c.Height-both2).Surd()), keys...).is(finished)
			addHeads(g, heads)
		}
	}
	b.count("pieces for each "+quoted(p.Name.Text), int64(len(u.Pieces)), []key{piece}, k).per = true
}

// calls adds how many of a part one of another takes.
func (b *book) calls(p *derive.Part, head []key) {
	all := map[*derive.Part]int64{}
	var order []*derive.Part
	for _, c := range p.Calls {
		if c.By == nil {
			continue
		}
		if all[c.By] == 0 {
			order = append(order, c.By)
		}
		all[c.By] += c.N
	}
	for _, by := range order {
		n, made := all[by], by.Needed
		if made == 0 || n%made != 0 {
			made = by.Made
		}
		if made == 0 || n%made != 0 {
			continue
		}
		keys := append([]key{partKey(by.Name.Text), partKey(p.Name.Text)}, b.fabricsOf(p)...)
		b.count(fmt.Sprintf("%s in each %s", quoted(p.Name.Text), quoted(by.Name.Text)), n/made, append(append([]key{}, head...), triangle), append(keys, partHeads(by)...)...).per = true
	}
	b.composed(p)
}

// composed adds how many parts of one size one of another is made of, of
// whatever fabric.
func (b *book) composed(p *derive.Part) {
	var total int64
	heads := map[key]bool{}
	for _, q := range b.s.Parts {
		for _, c := range q.Calls {
			if c.By != p || p.Needed == 0 || c.N%p.Needed != 0 {
				continue
			}
			total += c.N / p.Needed
			for _, h := range append(partHeads(q), triangle) {
				heads[h] = true
			}
		}
	}
	if total > 0 {
		f := b.count("parts in each "+quoted(p.Name.Text), total, nil, append(partHeads(p), partKey(p.Name.Text))...)
		f.head, f.per, f.several = heads, true, true
	}
}

// clothsIn is which fabrics are in each part: what it is cut from, and what is in
// the parts that it is made of, which come first.
func clothsIn(s *derive.Size) map[*derive.Part]map[key]bool {
	all := map[*derive.Part]map[key]bool{}
	for _, p := range s.Parts {
		all[p] = map[key]bool{}
	}
	for _, f := range s.Fabrics {
		for _, n := range f.Needs {
			if p := s.Part(n.For.Text); p != nil {
				all[p][fabricKey(f.Role.Text)] = true
			}
		}
	}
	for _, p := range s.Parts {
		for _, c := range p.Calls {
			if c.By != nil && all[c.By] != nil {
				for k := range all[p] {
					all[c.By][k] = true
				}
			}
		}
	}
	return all
}

// fabricsOf is the fabrics that a part is cut from.
func (b *book) fabricsOf(p *derive.Part) []key {
	var keys []key
	for _, f := range b.s.Fabrics {
		for _, n := range f.Needs {
			if n.For.Text == p.Name.Text {
				keys = append(keys, fabricKey(f.Role.Text))
			}
		}
	}
	return keys
}
