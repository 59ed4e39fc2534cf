package schema

import (
	"slices"
	"strconv"
	"strings"

	"github.com/xeipuuv/gojsonschema"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// The rules that a problem found here can belong to.
const (
	Missing    = "schema/missing"
	UnknownKey = "schema/unknown-key"
	WrongType  = "schema/wrong-type"
	NotAllowed = "schema/not-allowed"
	OutOfRange = "schema/out-of-range"
	OneOf      = "schema/one-of"
	NotChecked = "schema/not-checked" // the validator itself failed
)

// fault is one error of the validator and what it is about.
type fault struct {
	kind     string         // the validator's name for it
	path     []string       // keys and positions from the root
	node     *jsontree.Node // the value at the path
	holder   *jsontree.Node // the object or list that the value stands in; nil at the root
	schema   *jsontree.Node // the part of the schema that the value broke; may be nil
	says     *jsontree.Node // the same as it is written there: a reference, perhaps
	guide    guide
	property string // the key in question, where the error is about one
	meant    intent // what the key was probably meant to be
	holdsKey bool   // the value stands under a key, not in a list
	first    int    // the positions of two equal items of a list
	second   int
	what     string // what the whole file is called
	lost     bool   // the path holds a key with a NUL, at which it was split
}

func (r rules) problems(tree *jsontree.Node, errs []gojsonschema.ResultError) []source.Problem {
	var faults []fault
	r.choices(tree, r.guide.root, nil, &faults)
	for _, e := range errs {
		faults = append(faults, r.fault(tree, e))
	}
	if len(faults) > 0 {
		var whole []fault
		r.flattened(tree, r.guide.root, nil, &whole)
		faults = append(slices.DeleteFunc(faults, func(f fault) bool { return f.below(whole) }), whole...)
	}
	r.intents(faults)
	meant := meantKeys(faults)
	var problems []source.Problem
	for _, f := range faults {
		if !f.noise() && !f.follows(meant) {
			problems = append(problems, f.problem())
		}
	}
	source.SortProblems(problems)
	return slices.CompactFunc(problems, func(a, b source.Problem) bool { return a.Compare(b) == 0 })
}

func (r rules) fault(tree *jsontree.Node, e gojsonschema.ResultError) fault {
	f := fault{kind: e.Type(), node: tree, schema: r.guide.root, says: r.guide.root, guide: r.guide, what: r.what}
	// The context begins with the validator's name for the root.
	for _, key := range strings.Split(e.Context().String("\x00"), "\x00")[1:] {
		child := step(f.node, key)
		if child == nil {
			f.lost = true
			break
		}
		f.holder = f.node
		f.says, f.holdsKey = governs(f.schema, f.node, key), f.node.Kind == jsontree.Object
		f.schema = r.guide.resolve(f.says)
		f.path, f.node = append(f.path, key), child
	}
	details := e.Details()
	f.property, _ = details["property"].(string)
	f.first, _ = details["i"].(int)
	f.second, _ = details["j"].(int)
	return f
}

// governs is the schema of what an object or list has at a key or position, as
// it is written there.
func governs(schema, holder *jsontree.Node, key string) *jsontree.Node {
	if holder.Kind == jsontree.Array {
		return schema.Get("items")
	}
	return entry(schema, key)
}

// way is the way from the root to a value, its last step first.
type way struct {
	from *way
	key  string // or position
}

// path are the keys and positions from the root.
func (w *way) path() []string {
	var path []string
	for ; w != nil; w = w.from {
		path = append(path, w.key)
	}
	slices.Reverse(path)
	return path
}

// choices finds the objects that have none, or more than one, of the keys of
// which the schema's oneOf wants exactly one.
func (r rules) choices(n, schema *jsontree.Node, w *way, faults *[]fault) {
	if names := r.guide.alternatives[schema]; n.Kind == jsontree.Object && names != nil {
		if f := (fault{kind: "number_one_of", node: n, schema: schema, what: r.what}); len(f.present(names)) != 1 {
			f.path = w.path()
			*faults = append(*faults, f)
		}
	}
	for _, m := range n.Members {
		if s := r.guide.member(schema, m.Key); s != nil {
			r.choices(m.Value, s, &way{w, m.Key}, faults)
		}
	}
	if s := r.guide.item(schema); s != nil {
		for i, item := range n.Items {
			r.choices(item, s, &way{w, strconv.Itoa(i)}, faults)
		}
	}
}

func step(n *jsontree.Node, key string) *jsontree.Node {
	if n.Kind != jsontree.Array {
		return n.Get(key)
	}
	i, err := strconv.Atoi(key)
	if err != nil || i < 0 || i >= len(n.Items) {
		return nil
	}
	return n.Items[i]
}

// noise reports whether the error only repeats another one: the validator
// reports a branch beside what is wrong in it, and a key's pattern beside the
// key. What is wrong below a key with a NUL is left for when the key is mended:
// no name of the schemas may have one.
func (f fault) noise() bool {
	if f.lost || f.meant.told {
		return true
	}
	switch f.kind {
	case "condition_then", "condition_else":
		return true
	case "pattern":
		return f.node.Kind != jsontree.String
	case "enum":
		return len(allowed(f.schema)) == 0
	}
	return false
}

// unknownKey is the validator's name for a key that an object cannot have.
const unknownKey = "additional_property_not_allowed"

// meantKeys are the keys that an object lacks because another key was probably
// meant to be or to bring it.
func meantKeys(faults []fault) map[*jsontree.Node][]string {
	meant := map[*jsontree.Node][]string{}
	for _, f := range faults {
		if f.kind == unknownKey {
			meant[f.node] = append(meant[f.node], f.meant.fills(f.path)...)
		}
	}
	return meant
}

// follows reports whether a key is missing only because it is misspelt or
// misplaced.
func (f fault) follows(all map[*jsontree.Node][]string) bool {
	meant := all[f.node]
	switch f.kind {
	case "required":
		return slices.Contains(meant, f.property)
	case "number_one_of":
		names := alternatives(f.schema)
		return len(f.present(names)) == 0 && slices.ContainsFunc(meant, func(n string) bool { return slices.Contains(names, n) })
	}
	return false
}

// unused are the keys that the object could have and has not.
func (f fault) unused() []string {
	// A size's patch may give a key again that the plan has: what is misspelt
	// there is no longer for being present here.
	here := f.node.Range.Encloses(f.key(f.property))
	return slices.DeleteFunc(keys(f.schema), func(k string) bool {
		m := f.node.Member(k)
		return m != nil && f.node.Range.Encloses(m.KeyRange) == here
	})
}

// present are those of the names that the object has, in its own order.
func (f fault) present(names []string) []string {
	var have []string
	for _, m := range f.node.Members {
		if slices.Contains(names, m.Key) {
			have = append(have, m.Key)
		}
	}
	return have
}

// key is the range of one of the object's keys, or its opening brace.
func (f fault) key(name string) source.Range {
	if m := f.node.Member(name); m != nil {
		return m.KeyRange
	}
	return f.node.Open()
}

// hugeNumbers finds numbers that the validator cannot hold and no plan needs.
func hugeNumbers(n *jsontree.Node, problems []source.Problem) []source.Problem {
	if n.Kind == jsontree.Number {
		if _, err := strconv.ParseFloat(n.Text, 64); err != nil {
			return append(problems, source.Problem{
				Code: OutOfRange, Range: n.Range,
				Message: "the number " + show(n) + " is far beyond anything a plan can mean",
				Hint:    "write the number that is meant",
			})
		}
	}
	for _, m := range n.Members {
		problems = hugeNumbers(m.Value, problems)
	}
	for _, item := range n.Items {
		problems = hugeNumbers(item, problems)
	}
	return problems
}
