package words

import (
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// printed adds what the pattern prints, as the plan has it. A text agrees with
// either telling where the two differ: that they do is a finding of the plan.
func (b *book) printed() {
	p := b.s.Of.Printed
	if p == nil {
		return
	}
	from := len(b.figures)
	if p.Finished[0].Given() {
		b.add("the finished size", both(p.Finished[0].Surd(), p.Finished[1].Surd()), quilt).is(finished)
	}
	for _, m := range p.Measures {
		f := b.add(quoted(m.Of.Text), both(m.Width.Surd(), m.Height.Surd()), b.placeKeys(m.Of)...).is(raw)
		addHeads(f, b.headsOf(m.Of))
	}
	for _, c := range p.Parts {
		b.count(quoted(c.Of.Text), int64(c.N), b.headsOf(c.Of), b.placeKeys(c.Of)...)
	}
	for _, c := range p.Strips {
		keys := b.placeKeys(c.Of)
		if c.Fabric.Given() {
			keys = append(keys, fabricKey(c.Fabric.Text))
		}
		f := b.count("strips for "+quoted(c.Of.Text), int64(c.N), []key{strip}, keys...)
		if c.Width.Given() {
			f.of(c.Width.Surd())
		}
		if q := b.s.Part(c.Of.Text); q != nil && c.Whole() {
			for k := range b.cloths[q] {
				f.keys[k] = true
			}
			f.several = len(b.cloths[q]) > 1
		}
	}
	for _, l := range []struct {
		what string
		all  []plan.PrintedCount
		head []key
		per  bool
	}{
		{"strip sets", p.Sets, []key{stripSet}, false}, {"tubes for", p.Tubes, []key{tube}, false},
		{"squares from each tube of", p.PerTube, []key{square, unit}, true}, {"segments from each set of", p.PerSet, []key{segment, unit}, true},
		{"pieces left over of", p.Left, []key{piece, strip, square, spare}, false}, {"packs of", p.Precuts, []key{pack}, false},
	} {
		for _, c := range l.all {
			keys := b.placeKeys(c.Of)
			if b.s.Fabric(c.Of.Text) != nil {
				keys = []key{fabricKey(c.Of.Text)}
			}
			if l.what == "pieces left over of" {
				keys = append(keys, spare)
			}
			b.count(l.what+" "+quoted(c.Of.Text), int64(c.N), l.head, keys...).per = l.per
		}
	}
	b.pairs(p)
	for _, f := range b.figures[from:] {
		f.printed = true
	}
}

// pairs adds printed backing, batting and borders.
func (b *book) pairs(p *plan.Printed) {
	if p.Backing.Given() {
		b.add("the backing", both(p.Backing.Width.Surd(), p.Backing.Height.Surd()), backing)
	}
	if p.Batting.Given() {
		b.add("the batting", both(p.Batting.Width.Surd(), p.Batting.Height.Surd()), batting)
	}
	for _, d := range p.Borders {
		keys := []key{borderKey(d.Of.Text), border, strip}
		for _, l := range []struct {
			plan.Length
			what string
			key  key
		}{{d.Cut, "border as cut", strip}, {d.Sides, "the sides of border", sides}, {d.Ends, "top and bottom of border", ends}} {
			if l.Given() {
				b.add(l.what+" "+quoted(d.Of.Text), []measure.Surd{l.Surd()}, append(keys, l.key)...).is(raw).lengthy = l.key != strip
			}
		}
	}
}

// placeKeys is what a printed figure is about.
func (b *book) placeKeys(of plan.Text) []key {
	if keys := b.places[of.Text]; keys != nil {
		return append([]key{}, keys...)
	}
	return []key{partKey(of.Text)}
}

func (b *book) headsOf(of plan.Text) []key {
	if p := b.s.Part(of.Text); p != nil {
		return append(partHeads(p), b.places[of.Text]...)
	}
	return []key{piece, unit}
}
