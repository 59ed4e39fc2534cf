package schema

import (
	"path"
	"strconv"

	"yardproof/schema/jsontree"
)

// Value is a value of a plan that is neither object nor list, and what the schema
// takes it for.
type Value struct {
	Node  *jsontree.Node
	In    *jsontree.Node // the object or list that it stands in
	Keys  []string       // and positions, from the root
	Means string         // the definition that governs it, such as "length"; else its type
}

// Values are the values of a plan, in the order of the file. Those of a size's
// patch are taken for what they change of the recipe. What the schema does not
// know is left out.
func Values(tree *jsontree.Node) []Value {
	r := planRules().guide
	w := walker{guide: r}
	w.walk(Value{Node: tree}, r.root)
	return w.found
}

type walker struct {
	guide guide
	found []Value
}

func (w *walker) walk(at Value, says *jsontree.Node) {
	schema := w.guide.resolve(says)
	if schema == nil {
		return
	}
	switch at.Node.Kind {
	case jsontree.Object:
		for _, m := range at.Node.Members {
			entry := entry(schema, m.Key)
			if len(at.Keys) == 1 && at.Keys[0] == "sizes" {
				entry = w.guide.root // a patch of the whole recipe
			}
			w.walk(at.below(m.Value, m.Key), entry)
		}
	case jsontree.Array:
		for i, item := range at.Node.Items {
			w.walk(at.below(item, strconv.Itoa(i)), schema.Get("items"))
		}
	default:
		at.Means = meaning(says, schema)
		w.found = append(w.found, at)
	}
}

func (v Value) below(n *jsontree.Node, key string) Value {
	keys := make([]string, len(v.Keys), len(v.Keys)+1)
	copy(keys, v.Keys)
	return Value{Node: n, In: v.Node, Keys: append(keys, key)}
}

// meaning is the definition that a schema refers to, or the type that it wants.
func meaning(says, schema *jsontree.Node) string {
	if ref := says.Get("$ref"); ref != nil {
		return path.Base(ref.Text)
	}
	if t := schema.Get("type"); t != nil && t.Kind == jsontree.String {
		return t.Text
	}
	return ""
}

// MayHave reports whether the object at the end of keys from the root, each a member
// that the schema knows, may have a member, and what that would be taken for.
func MayHave(keys []string, member string) (means string, ok bool) {
	g := planRules().guide
	if len(keys) > 2 && keys[0] == "sizes" {
		keys = keys[2:]
	}
	at := g.root
	for _, key := range keys {
		if at = g.member(at, key); at == nil {
			return "", false
		}
	}
	says := at.Get("properties").Get(member)
	if says == nil {
		return "", false
	}
	return meaning(says, g.resolve(says)), true
}
