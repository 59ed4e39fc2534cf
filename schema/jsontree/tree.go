package jsontree

import (
	"encoding/json"

	"yardproof/schema/source"
)

// Kind is the JSON type of a value.
type Kind int

// The JSON types of RFC 8259, section 3; the booleans share one.
const (
	Null Kind = iota
	Bool
	Number
	String
	Array
	Object
)

// String is the type's name with its article left off, in the words of RFC 8259.
func (k Kind) String() string {
	names := [...]string{"null", "boolean", "number", "string", "array", "object"}
	if k < 0 || int(k) >= len(names) {
		return "no JSON type"
	}
	return names[k]
}

// Member is one name and value of an object.
type Member struct {
	Key      string       // decoded
	KeyRange source.Range // with its quotation marks
	Value    *Node
}

// Node is one value and where it stands. A tree from [Parse] is never changed
// after it was made, so that parts of it can be shared and read from many
// goroutines; [MergePatch] relies on that.
type Node struct {
	Kind    Kind
	Range   source.Range // with the quotation marks or brackets
	Text    string       // the decoded string, the number as it was typed, "true" or "false"
	Members []Member     // of an object, in the order of the file, no two with one key
	Items   []*Node      // of an array

	keys map[string]int // where a key stands in Members; only for large objects
}

// manyMembers is the size from which an object keeps a map of its keys: below
// it, looking through the members is quicker than hashing.
const manyMembers = 12

// Get is the value of a key, or nil when n is no object or has no such key. It
// may be asked of a nil node, so that lookups can be chained.
func (n *Node) Get(key string) *Node {
	if m := n.Member(key); m != nil {
		return m.Value
	}
	return nil
}

// Member is the member with a key, or nil.
func (n *Node) Member(key string) *Member {
	if n == nil {
		return nil
	}
	if i := n.find(key); i >= 0 {
		return &n.Members[i]
	}
	return nil
}

func (n *Node) find(key string) int {
	if len(n.keys) > 0 {
		if i, ok := n.keys[key]; ok {
			return i
		}
		return -1
	}
	for i := range n.Members {
		if n.Members[i].Key == key {
			return i
		}
	}
	return -1
}

// add appends a member whose key is known to be new.
func (n *Node) add(m Member) {
	n.Members = append(n.Members, m)
	switch {
	case n.keys != nil:
		n.keys[m.Key] = len(n.Members) - 1
	case len(n.Members) >= manyMembers:
		n.keys = make(map[string]int, 2*manyMembers)
		for i := range n.Members {
			n.keys[n.Members[i].Key] = i
		}
	}
}

// Open is the range of the bracket that opens an object or array: the place to
// point at when something is missing from it. For other values it is the value.
func (n *Node) Open() source.Range {
	if n.Kind == Object || n.Kind == Array {
		return source.Range{Start: n.Range.Start, End: n.Range.Start + 1}
	}
	return n.Range
}

// Interface is the value as encoding/json would give it with UseNumber:
// map[string]any, []any, string, json.Number, bool or nil. A nil node gives nil.
func (n *Node) Interface() any {
	if n == nil {
		return nil
	}
	switch n.Kind {
	case Bool:
		return n.Text == "true"
	case Number:
		return json.Number(n.Text)
	case String:
		return n.Text
	case Array:
		return n.slice()
	case Object:
		return n.dict()
	default:
		return nil
	}
}

func (n *Node) slice() []any {
	items := make([]any, len(n.Items))
	for i, item := range n.Items {
		items[i] = item.Interface()
	}
	return items
}

func (n *Node) dict() map[string]any {
	members := make(map[string]any, len(n.Members))
	for _, m := range n.Members {
		members[m.Key] = m.Value.Interface()
	}
	return members
}
