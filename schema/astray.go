package schema

import (
	"cmp"
	"fmt"
	"slices"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// astray makes one of several keys that stand beside where they belong: a part's
// fabric and square without the "cut" around them. The first says it all.
func (r rules) astray(faults []fault) {
	apart := map[*jsontree.Node][]*fault{}
	for i := range faults {
		if f := &faults[i]; f.kind == unknownKey && !f.misspelt() {
			apart[f.node] = append(apart[f.node], f)
		}
	}
	for n, all := range apart {
		slices.SortFunc(all, func(a, b *fault) int { return cmp.Compare(a.key(a.property).Start, b.key(b.property).Start) })
		outside := all[0].outside(all)
		if len(outside.into) == 0 {
			continue
		}
		first := true
		for _, f := range all {
			if !slices.Contains(outside.several, f.property) {
				continue
			}
			if f.meant = (intent{told: true}); first {
				f.meant, first = outside, false
			}
		}
		r.silence(faults, n, outside.several)
	}
}

// silence tells nothing of values at or below the keys of an object that are to
// be moved: their types may be right where they belong.
func (r rules) silence(faults []fault, n *jsontree.Node, keys []string) {
	for i := range faults {
		if f := &faults[i]; f.holder == n && f.kind == "invalid_type" && slices.Contains(keys, f.path[len(f.path)-1]) {
			f.meant = intent{told: true}
		}
	}
}

// misspelt reports whether a key is surely another key of its object.
func (f fault) misspelt() bool {
	return f.meant.write != "" && f.guide.accepts(entry(f.schema, f.meant.write), f.node.Get(f.property))
}

// outside is what the keys that an object cannot have are meant to be where they
// belong in an object that it lacks. Where that could be one of several, those
// that then lack nothing come first. None where it could be many, or where only
// one key would move, unless all that is known of that is what it resembles.
func (f fault) outside(all []*fault) intent {
	const most = 4
	var into, whole, keys []string
	for _, k := range f.couldHold() {
		held := f.held(k, all)
		switch {
		case len(held) < len(keys) || len(held) == 0:
			continue
		case len(held) > len(keys):
			into, whole, keys = nil, nil, held
		}
		into = append(into, k)
		if f.guide.accepts(entry(f.schema, k), f.taken(held)) {
			whole = append(whole, k)
		}
	}
	if len(whole) > 0 {
		into = whole
	}
	moved := slices.DeleteFunc(slices.Clone(all), func(o *fault) bool { return !slices.Contains(keys, o.property) })
	if len(into) > most || len(moved) == 0 || len(keys) == 1 && !moved[0].guessed() {
		return intent{}
	}
	return intent{into: into, several: keys}
}

// guessed reports whether a key only resembles one whose value it cannot be.
func (f fault) guessed() bool { return f.meant.write != "" && !f.misspelt() }

// couldHold are the keys that an object lacks and that hold an object; where it
// must have one of several keys and has none, one of these. One that it has with
// a value that it cannot have counts as lacking.
func (f fault) couldHold() []string {
	names := keys(f.schema)
	if others := alternatives(f.schema); others != nil && len(f.present(others)) == len(f.unfit(others)) {
		names = others
	}
	return slices.DeleteFunc(names, func(k string) bool {
		s := f.guide.resolve(entry(f.schema, k))
		return f.node.Member(k) != nil || s.Get("properties") == nil
	})
}

// unfit are those of the keys that the object has with a value of a wrong type.
func (f fault) unfit(names []string) []string {
	var out []string
	for _, k := range names {
		if m := f.node.Member(k); m != nil && !slices.Contains(types(f.guide.resolve(entry(f.schema, k))), typeOf(m.Value)) {
			out = append(out, k)
		}
	}
	return out
}

// held are the keys that would move into an object under another key: those that
// may not stand here, and those whose value may stand only there.
func (f fault) held(into string, all []*fault) []string {
	inner := f.guide.resolve(entry(f.schema, into)).Get("properties")
	var names []string
	for _, m := range f.node.Members {
		stranger := slices.ContainsFunc(all, func(o *fault) bool { return o.property == m.Key })
		if s := inner.Get(m.Key); s != nil && (stranger || len(f.unfit([]string{m.Key})) > 0 && f.guide.accepts(s, m.Value)) {
			names = append(names, m.Key)
		}
	}
	return names
}

// taken is an object of some of the members of the fault's own.
func (f fault) taken(names []string) *jsontree.Node {
	n := &jsontree.Node{Kind: jsontree.Object}
	for _, m := range f.node.Members {
		if slices.Contains(names, m.Key) {
			n.Members = append(n.Members, m)
		}
	}
	return n
}

// moveInto says of keys that stand beside where they belong where that is.
func (f fault) moveInto() source.Problem {
	are, them := "they are keys", "them"
	if len(f.meant.several) == 1 {
		are, them = "it is a key", "it"
	}
	into := list(quoted(f.meant.into), "or")
	p := source.Problem{
		Code: UnknownKey, Range: f.key(f.property),
		Message: fmt.Sprintf("there is no %s in %s; %s of %s", list(quoted(f.meant.several), "or"), f.place(), are, into),
		Hint:    fmt.Sprintf("put %s into %s", them, into),
	}
	if inner := onOneLine(f.taken(f.meant.several)); len(f.meant.into) == 1 && len(inner) <= mostShown {
		p.Hint += fmt.Sprintf(": write %s: %s", into, inner)
	}
	return p
}
