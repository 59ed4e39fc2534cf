package check

import (
	"slices"
	"strconv"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/say"
	"yardproof/schema"
	"yardproof/schema/amend"
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// text is the plan's own text, for the edits that a finding tells.
func (p *Pass) text() amend.Text { return amend.Of(p.Plan.File, p.Plan.Tree) }

// ways are ways out without those that could not be made.
func ways(all ...diag.Way) []diag.Way {
	kept := []diag.Way{}
	for _, w := range all {
		if len(w.Edits) > 0 || w.Says != "" {
			kept = append(kept, w)
		}
	}
	return kept
}

// mend is a way out of edits that mend what is found. An edit that could not be made
// leaves no way.
func mend(edits ...diag.Edit) diag.Way { return editsAs(source.Mend, edits) }

// choice is a mend among others as good.
func choice(edits ...diag.Edit) diag.Way { return editsAs(source.Choice, edits) }

// example is a way out whose value is made up.
func example(edits ...diag.Edit) diag.Way { return editsAs(source.Example, edits) }

func editsAs(kind source.Kind, edits []diag.Edit) diag.Way {
	if slices.ContainsFunc(edits, func(e diag.Edit) bool { return e.Act == 0 }) {
		return diag.Way{}
	}
	return diag.Way{Kind: kind, Edits: edits}
}

// noted adds words after those of a way's edits.
func noted(w diag.Way, note string) diag.Way {
	if w.Note = note; note != "" && w.Kind == 0 {
		return diag.Way{}
	}
	return w
}

// advise is a way out that cannot be written into the plan, as a verb phrase.
func advise(says string) diag.Way { return diag.Way{Kind: source.Advice, Says: says} }

// lastly is advice that is told only where there is no other way.
func lastly(says string) diag.Way {
	w := advise(says)
	w.Else = true
	return w
}

// put is the edit that writes a JSON value in the place of the plan's value at a range;
// none where no value stands there, as where a default is at work.
func (p *Pass) put(verb string, at source.Range, value string) diag.Edit {
	if value == "" || p.text().Node(at) == nil {
		return diag.Edit{}
	}
	return p.text().Put(at, value).With(verb)
}

// putText writes a text.
func (p *Pass) putText(verb string, at source.Range, text string) diag.Edit {
	if strings.HasPrefix(text, "about ") {
		return diag.Edit{} // no plan may hold it
	}
	return p.put(verb, at, amend.Quote(text))
}

// putCount writes a count. What the plan writes as a text stays one.
func (p *Pass) putCount(verb string, at source.Range, n int64) diag.Edit {
	value := strconv.FormatInt(n, 10)
	if strings.HasPrefix(p.Plan.File.Slice(at), `"`) {
		value = amend.Quote(value)
	}
	return p.put(verb, at, value)
}

// printCount is the way out of printing another count.
func (p *Pass) printCount(at source.Range, n int64) diag.Way {
	return mend(p.putCount("print", at, n))
}

// printMany is the way out of printing another count of things.
func (p *Pass) printMany(at source.Range, n int64, thing string) diag.Way {
	return mend(of(p.putCount("print", at, n), things(n, thing)))
}

// of says what the text of an edit is of.
func of(e diag.Edit, thing string) diag.Edit {
	e.Thing = thing
	return e
}

// things is the noun of a number of things: "pack", "packs".
func things(n int64, thing string) string {
	_, noun, _ := strings.Cut(say.Many(n, thing), " ")
	return noun
}

// cutAs says which cutting instructions the pattern prints for a fabric.
func (p *Pass) cutAs(f *derive.Fabric, how, note string) diag.Way {
	return noted(mend(p.setIn(p.text().Node(f.At), "cutting", how).With("say")), note)
}

// putLength writes a length as the one at its place is written: a number where that is
// one, with its unit where it names it.
func (p *Pass) putLength(verb string, at source.Range, l measure.Length) diag.Edit {
	return p.put(verb, at, p.lengthText(at, l))
}

// lengthText is a length as a value of the plan, written as the one at a range is; empty
// where no plan may hold it.
func (p *Pass) lengthText(at source.Range, l measure.Length) string {
	return amend.LengthLike(p.Plan.File.Slice(at), l, p.Plan.Units)
}

// putPair writes a width and a height that stand in one array, of which only what is
// another one is touched.
func (p *Pass) putPair(verb string, w, h plan.Length, width, height measure.Length) diag.Edit {
	if w.At == h.At { // one length says both
		if width != height {
			return diag.Edit{}
		}
		return p.putLength(verb, w.At, width)
	}
	first, second := p.lengthText(w.At, width), p.lengthText(h.At, height)
	if first == "" || second == "" || w.At.End > h.At.Start || p.text().Parent(w.At) != p.text().Parent(h.At) {
		return diag.Edit{}
	}
	e := diag.Edit{}
	between := p.Plan.File.Slice(source.Range{Start: w.At.End, End: h.At.Start})
	switch {
	case w.Length == width:
		e = p.put(verb, h.At, second)
	case h.Length == height:
		e = p.put(verb, w.At, first)
	default:
		if e = p.put(verb, w.At, first); e.Act != 0 {
			e.Range.End, e.Text = h.At.End, first+between+second
		}
	}
	e.Shown = "[" + first + ", " + second + "]"
	return e
}

// add gives the object at a range a member; none where it cannot have it.
func (p *Pass) add(object source.Range, key, value string) diag.Edit {
	e, _ := p.text().Add(object, key, value)
	return e
}

// setIn says a text under a key of an object, whether the key is there or not.
func (p *Pass) setIn(object *jsontree.Node, key, text string) (e diag.Edit) {
	switch {
	case object == nil:
		return diag.Edit{}
	case object.Get(key) != nil:
		e = p.putText("say", object.Get(key).Range, text)
		e.Shown = amend.Quote(key) + ": " + e.Shown
		return e
	}
	return p.add(object.Range, key, amend.Quote(text))
}

// appendTo gives the array at a range an item; none where there is no array.
func (p *Pass) appendTo(array source.Range, value string) diag.Edit {
	e, _ := p.text().Append(array, value)
	return e
}

// remove takes the value at a range away, with its key; none where there is no value.
func (p *Pass) remove(at source.Range) diag.Edit {
	e, _ := p.text().Remove(at)
	return e
}

// removeFigure takes the printed pair away that holds the value at a range.
func (p *Pass) removeFigure(at source.Range) diag.Way {
	if pair := p.text().Parent(at); pair != nil && pair.Kind == jsontree.Array {
		at = pair.Range
	}
	return mend(p.remove(at))
}

// nameNear is the way out of a name that there is not: the one that is almost the same, or
// else any of those that there are.
func (p *Pass) nameNear(at source.Range, name string, names []string) []diag.Way {
	if near := schema.Nearest(name, names); near != "" {
		return ways(mend(p.renamed(at, near)))
	}
	if len(names) == 1 {
		return ways(choice(p.renamed(at, names[0])))
	}
	return ways(advise(writeName(name, names)))
}

// renamed writes a name where another stands, be it a key or a value.
func (p *Pass) renamed(at source.Range, name string) diag.Edit {
	n := p.text().Node(at)
	switch {
	case n == nil:
		return diag.Edit{}
	case n.Range != at:
		return p.text().Rename(at, name)
	}
	return p.putText("write", at, name)
}
