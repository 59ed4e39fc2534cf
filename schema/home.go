package schema

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/schema/jsontree"
)

// home is a place of a schema that has a key.
type home struct {
	key    string
	path   []string       // keys from the root to the object that holds it; chosen where the writer names it, item in a list
	holder *jsontree.Node // the schema of that object
	value  *jsontree.Node // the schema of the key, as written
}

const (
	chosen = "*"
	item   = "#"
)

// learnHomes lists every key under the words that somebody may look for it by:
// its own, and those of what holds it and its own.
func (g guide) learnHomes(schema *jsontree.Node, path []string) {
	schema = g.resolve(schema)
	for _, m := range membersOf(schema.Get("properties")) {
		if slices.Contains(types(g.resolve(m.Value)), "null") {
			continue // only what changes another place may be null
		}
		h := home{m.Key, slices.Clone(path), schema, m.Value}
		for _, words := range h.words() {
			g.homes[words] = append(g.homes[words], h)
		}
		g.learnHomes(m.Value, append(path, m.Key))
	}
	if entries := schema.Get("additionalProperties"); entries != nil && entries.Kind == jsontree.Object {
		g.learnHomes(entries, append(path, chosen))
	}
	if items := schema.Get("items"); items != nil {
		g.learnHomes(items, append(path, item))
	}
}

// words are what the key may be called: "allowance", and "seam allowance".
func (h home) words() []string {
	all := []string{plainWords(h.key)}
	for i := len(h.path) - 1; i >= 0; i-- {
		if h.path[i] != chosen && h.path[i] != item {
			of := plainWords(h.path[i])
			return slices.Compact(append(all, of+all[0], strings.TrimSuffix(of, "s")+all[0]))
		}
	}
	return all
}

// plainWords is a key without what people write between words, in small letters.
func plainWords(key string) string {
	return strings.NewReplacer("_", "", "-", "", " ", "").Replace(strings.ToLower(key))
}

// distance is how many keys lead from a place down to the home, or -1 from the
// object that a part's operation stands in to what stands beside it; ok is
// false for a home elsewhere.
func (h home) distance(path []string, holder *jsontree.Node) (steps int, ok bool) {
	if len(h.path) < len(path) {
		beside := len(h.path) == len(path)-1 && samePlace(h.path, path[:len(h.path)]) && h.holder.Get("properties").Get(path[len(path)-1]) != nil
		return -1, beside
	}
	if !samePlace(h.path[:len(path)], path) || h.holder == holder {
		return 0, false
	}
	for _, step := range h.path[len(path):] {
		if step != chosen && step != item {
			steps++
		}
	}
	return steps, true
}

func samePlace(pattern, path []string) bool {
	for i, step := range pattern {
		if step != chosen && step != item && step != path[i] {
			return false
		}
	}
	return true
}

// homesOf are the places that a key which an object cannot have belongs in:
// those nearest to the object, or else the only ones there are. None where it
// could be many.
func (g guide) homesOf(key string, path []string, holder *jsontree.Node) (homes []home, near bool) {
	const far, most = 3, 2
	least := far + 1
	for _, h := range g.homes[plainWords(key)] {
		steps, ok := h.distance(path, holder)
		switch {
		case !ok || steps > least || steps > far:
		case steps < least:
			least, homes = steps, []home{h}
		default:
			homes = append(homes, h)
		}
	}
	if len(homes) > 0 && len(homes) <= most {
		return homes, true
	}
	if len(homes) == 0 {
		homes = distinct(g.homes[plainWords(key)])
	}
	if len(homes) > most || slices.ContainsFunc(homes, func(h home) bool { return h.holder == holder }) {
		return nil, false
	}
	return homes, false
}

// distinct leaves one home for each object of the schema, however many ways
// lead there.
func distinct(homes []home) []home {
	var out []home
	for _, h := range homes {
		if !slices.ContainsFunc(out, func(o home) bool { return o.holder == h.holder }) {
			out = append(out, h)
		}
	}
	return out
}

// place is the home's path in words, with the names of the path that it shares:
// "fabrics.red.yardage".
func (h home) place(path []string) string {
	var steps []string
	for i, step := range h.path {
		switch {
		case step == item:
		case step != chosen:
			steps = append(steps, step)
		case i < len(path) && samePlace(h.path[:i], path):
			steps = append(steps, path[i])
		default:
			steps = append(steps, "X")
		}
	}
	return strings.Join(steps, ".")
}

// show is the home's object with the key in it: "yardage": { "usable_width": "40" }.
func (h home) show(value *jsontree.Node) string {
	text := onOneLine(value)
	if len(text) > mostShown || len(h.path) == 0 {
		return ""
	}
	last := h.path[len(h.path)-1]
	if last == chosen || last == item {
		return fmt.Sprintf("%q: %s", h.key, text)
	}
	return fmt.Sprintf("%q: { %q: %s }", last, h.key, text)
}

// mostShown is the longest text of a value that a hint repeats.
const mostShown = 80
