package schema

import (
	"fmt"
	"slices"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// intent is what a key that an object cannot have was probably meant to be.
type intent struct {
	write   string   // a key that the same object may have
	instead []string // keys that the object lacks and whose value this could be
	oneOf   []string // keys of which the object has none and must have one
	homes   []home   // other places that have the key
	near    bool     // the homes lie in or beside the object
	several []string // keys of the object that are told of with it
	into    []string // keys that the object lacks, into one of which these belong
	told    bool     // it is told of with another
	file    string   // another file that has the key
}

// fills are the keys of the object itself that the intent would bring.
func (i intent) fills(path []string) []string {
	names := slices.Concat(i.instead, i.oneOf, i.into)
	if i.write != "" {
		names = append(names, i.write)
	}
	for _, h := range i.homes {
		if i.near && len(h.path) > len(path) {
			names = append(names, h.path[len(path)])
		}
	}
	return names
}

// intents says of every fault what was probably meant; only keys that an object
// cannot have are meant to be something else.
func (r rules) intents(faults []fault) {
	strangers := map[*jsontree.Node]int{}
	for _, f := range faults {
		if f.kind == unknownKey {
			strangers[f.node]++
		}
	}
	for i := range faults {
		if f := &faults[i]; f.kind == unknownKey {
			f.meant = r.intent(f, strangers[f.node] == 1)
		}
	}
	r.astray(faults)
	severalAsOne(faults)
}

// intent is what the key of a fault was probably meant to be; alone tells
// whether it is the only one that its object cannot have.
func (r rules) intent(f *fault, alone bool) (meant intent) {
	var instead []string
	if alone {
		instead = f.lacking()
	}
	near := Nearest(f.property, f.unused())
	if near != "" && (len(instead) == 0 || f.guide.accepts(entry(f.schema, near), f.node.Get(f.property))) {
		return intent{write: near}
	}
	if part := partOf(f.property, f.unused()); part != "" && f.guide.accepts(entry(f.schema, part), f.node.Get(f.property)) {
		return intent{write: part}
	}
	if homes, near := f.homes(); near || len(homes) > 0 && len(instead) == 0 {
		return intent{homes: homes, near: near}
	}
	if len(instead) == 0 && r.beside != nil && slices.ContainsFunc(r.beside().homes[plainWords(f.property)], f.couldStand(r.beside())) {
		return intent{file: r.other}
	}
	if others := alternatives(f.schema); alone && len(instead) == 0 && len(f.present(others)) == 0 {
		return intent{oneOf: others}
	}
	return intent{instead: instead}
}

// homes are the places elsewhere that the key belongs in, where its value could
// stand as it is. An object or list that is not yet complete may still be led
// to one further away, which is only named.
func (f fault) homes() (homes []home, near bool) {
	all, near := f.guide.homesOf(f.property, f.path, f.schema)
	for _, h := range all {
		if f.guide.accepts(h.value, f.node.Get(f.property)) {
			homes = append(homes, h)
		}
	}
	if !near && len(homes) == 0 && f.holdsMore() {
		homes = all
	}
	return homes, near && len(homes) > 0
}

// holdsMore reports whether the key in question holds an object or a list.
func (f fault) holdsMore() bool {
	kind := f.node.Get(f.property).Kind
	return kind == jsontree.Object || kind == jsontree.Array
}

// couldStand tells of a home in another file whether the key's value could be
// meant for it.
func (f fault) couldStand(other guide) func(home) bool {
	return func(h home) bool { return f.holdsMore() || other.accepts(h.value, f.node.Get(f.property)) }
}

// lacking are the keys that the object must have and has not, and whose place
// the value of the key in question could take.
func (f fault) lacking() []string {
	var names []string
	for _, r := range itemsOf(f.schema.Get("required")) {
		if f.node.Member(r.Text) == nil {
			names = append(names, r.Text)
		}
	}
	if others := alternatives(f.schema); len(f.present(others)) == 0 {
		names = append(names, others...)
	}
	value := f.node.Get(f.property)
	names = slices.DeleteFunc(names, func(name string) bool {
		return !f.guide.accepts(f.schema.Get("properties").Get(name), value)
	})
	const most = 2
	if len(names) > most {
		return nil
	}
	return names
}

func (f fault) unknownKey() source.Problem {
	p := source.Problem{
		Code: UnknownKey, Range: f.key(f.property),
		Message: fmt.Sprintf("there is no %s in %s", quote(f.property), f.place()),
	}
	left := "remove it"
	if names := f.unused(); len(names) > 0 {
		left = "remove it, or use " + list(quoted(names), "or")
	}
	switch m := f.meant; {
	case len(m.into) > 0:
		return f.moveInto()
	case len(m.several) > 0:
		return f.several()
	case f.buysLength():
		p.Hint = f.toPrinted("remove it")
	case m.write != "":
		p.Hint = fmt.Sprintf("write %q", m.write)
	case m.near:
		p.Hint = f.moveHome()
	case len(m.instead) > 0:
		p.Message += fmt.Sprintf(", and %s is missing", list(quoted(m.instead), "or"))
		p.Hint = fmt.Sprintf("write %s if that is what is meant", list(quoted(m.instead), "or"))
	case len(m.oneOf) > 0:
		p.Hint = "write one of these in its place: " + list(quoted(m.oneOf), "or")
	case len(m.homes) > 0:
		p.Hint = fmt.Sprintf("%s; %s is a key of %s", left, quote(f.property), f.where())
	case m.file != "":
		p.Hint = fmt.Sprintf("remove it; %s is a key of %s", quote(f.property), m.file)
	default:
		p.Hint = left
	}
	return p
}

// where names the homes.
func (f fault) where() string {
	places := make([]string, len(f.meant.homes))
	for i, h := range f.meant.homes {
		if places[i] = h.place(f.path); places[i] == "" {
			places[i] = f.what
		}
	}
	return list(places, "or")
}

func (f fault) moveHome() string {
	homes := f.meant.homes
	hint := "it belongs in " + f.where()
	if len(homes) > 1 {
		return hint
	}
	if len(homes[0].path) < len(f.path) {
		return fmt.Sprintf("%s, beside %s", hint, quote(f.path[len(f.path)-1]))
	}
	if shown := homes[0].show(f.node.Get(f.property)); shown != "" {
		hint += ": write " + shown
	}
	return hint
}
