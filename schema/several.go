package schema

import (
	"cmp"
	"fmt"
	"slices"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// severalAsOne makes one of the keys that an object cannot have where it has none
// of the keys of which it must have one, and several others in their place: the
// sides of a piece, say, as another operation calls them. The first says it all.
func severalAsOne(faults []fault) {
	apart := map[*jsontree.Node][]*fault{}
	for i := range faults {
		if f := &faults[i]; f.kind == unknownKey && f.meant.unsure() && len(alternatives(f.schema)) > 0 && len(f.present(alternatives(f.schema))) == 0 {
			apart[f.node] = append(apart[f.node], f)
		}
	}
	for _, all := range apart {
		if len(all) < 2 {
			continue
		}
		slices.SortFunc(all, func(a, b *fault) int { return cmp.Compare(a.key(a.property).Start, b.key(b.property).Start) })
		first := intent{oneOf: alternatives(all[0].schema)}
		for i, f := range all {
			first.several = append(first.several, f.property)
			if i > 0 {
				f.meant = intent{told: true}
			}
		}
		all[0].meant = first
	}
}

// unsure reports whether nothing certain is known of what a key was meant to be.
func (i intent) unsure() bool {
	return i.write == "" && !i.near && len(i.instead) == 0 && len(i.oneOf) == 0 && len(i.into) == 0 && !i.told
}

// several says of all keys at once that the object cannot have them.
func (f fault) several() source.Problem {
	return source.Problem{
		Code: UnknownKey, Range: f.key(f.property),
		Message: fmt.Sprintf("there is no %s in %s, and %s is missing", list(quoted(f.meant.several), "or"), f.place(), list(quoted(f.meant.oneOf), "or")),
		Hint:    f.inTheirPlace(),
	}
}

// inTheirPlace puts two sides into the pair that is wanted, and names what is
// wanted in place of anything else.
func (f fault) inTheirPlace() string {
	w, h := f.node.Get("width"), f.node.Get("height")
	if w != nil && h != nil && slices.Contains(f.meant.oneOf, "size") && slices.Contains(f.meant.several, "width") && slices.Contains(f.meant.several, "height") {
		if item := f.guide.item(f.guide.resolve(entry(f.schema, "size"))); f.guide.accepts(item, w) && f.guide.accepts(item, h) {
			return fmt.Sprintf("write \"size\": [%s, %s]", onOneLine(w), onOneLine(h))
		}
	}
	return "write one of these in their place: " + list(quoted(f.meant.oneOf), "or")
}
