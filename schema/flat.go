package schema

import (
	"fmt"
	"slices"
	"strconv"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// Kinds of faults that the validator does not see: it reports every value of an
// entry whose name is missing, and every item of a row whose brackets are.
const (
	nameless = "entry_without_name"
	flat     = "list_without_rows"
)

// flattened finds objects that hold one entry where they should hold entries by
// name, and lists that hold what should stand in lists of their own.
func (r rules) flattened(n, schema *jsontree.Node, w *way, faults *[]fault) {
	kind := ""
	switch {
	case n.Kind == jsontree.Object && r.withoutName(n, schema):
		kind = nameless
	case n.Kind == jsontree.Array && r.withoutRows(n, schema):
		kind = flat
	}
	if kind != "" {
		*faults = append(*faults, fault{kind: kind, node: n, schema: schema, says: schema, guide: r.guide, what: r.what, path: w.path()})
		return
	}
	for _, m := range n.Members {
		if s := r.guide.member(schema, m.Key); s != nil {
			r.flattened(m.Value, s, &way{w, m.Key}, faults)
		}
	}
	if s := r.guide.item(schema); s != nil {
		for i, item := range n.Items {
			r.flattened(item, s, &way{w, strconv.Itoa(i)}, faults)
		}
	}
}

// withoutName reports whether an object that should hold entries by name holds
// the keys of one instead.
func (r rules) withoutName(n, schema *jsontree.Node) bool {
	entry := r.guide.resolve(schema.Get("additionalProperties"))
	if entry.Get("properties") == nil || len(n.Members) == 0 {
		return false
	}
	misfit := false
	for _, m := range n.Members {
		if entry.Get("properties").Get(m.Key) == nil {
			return false
		}
		misfit = misfit || !r.couldBe(entry, m.Value)
	}
	return misfit
}

// couldBe reports whether a value is of the right type and, if it has keys, has
// one that is known.
func (r rules) couldBe(schema, n *jsontree.Node) bool {
	if !slices.Contains(types(schema), typeOf(n)) {
		return false
	}
	return n.Kind != jsontree.Object || len(n.Members) == 0 ||
		slices.ContainsFunc(n.Members, func(m jsontree.Member) bool { return schema.Get("properties").Get(m.Key) != nil })
}

// withoutRows reports whether a list that should hold lists holds their items
// instead.
func (r rules) withoutRows(n, schema *jsontree.Node) bool {
	row := r.guide.item(schema)
	if row == nil || len(n.Items) == 0 || !slices.Equal(types(row), []string{"array"}) {
		return false
	}
	return !slices.ContainsFunc(n.Items, func(item *jsontree.Node) bool {
		return item.Kind == jsontree.Array || !r.guide.accepts(row.Get("items"), item)
	})
}

// below reports whether a fault lies at or below another's place.
func (f fault) below(others []fault) bool {
	return slices.ContainsFunc(others, func(o fault) bool {
		return len(f.path) >= len(o.path) && slices.Equal(f.path[:len(o.path)], o.path)
	})
}

func (f fault) nameless() source.Problem {
	have := make([]string, len(f.node.Members))
	for i, m := range f.node.Members {
		have[i] = m.Key
	}
	verb := "are keys"
	if len(have) == 1 {
		verb = "is a key"
	}
	name := "name"
	if e := f.schema.At("/examples/0"); e != nil && len(e.Members) > 0 {
		name = e.Members[0].Key
	}
	inner := onOneLine(f.node)
	if len(inner) > mostShown {
		inner = "{ ... }"
	}
	return source.Problem{
		Code: WrongType, Range: f.value(),
		Message: fmt.Sprintf("what stands in %s has names, and here is one without: %s %s of what is named", f.place(), list(quoted(have), "and"), verb),
		Hint:    fmt.Sprintf("give it a name: %q: { %q: %s }", f.path[len(f.path)-1], name, inner),
	}
}

func (f fault) flat() source.Problem {
	text := "[" + onOneLine(f.node) + "]"
	if len(text) > mostShown {
		text, _ = f.guide.example(f.says)
	}
	return source.Problem{
		Code: WrongType, Range: f.value(),
		Message: fmt.Sprintf("the items of %s stand in it by themselves; wanted: a list of rows, each a list in square brackets", f.place()),
		Hint:    fmt.Sprintf("write it like %q: %s", f.path[len(f.path)-1], text),
	}
}
