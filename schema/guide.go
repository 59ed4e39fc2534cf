package schema

import (
	"yardproof/schema/jsontree"
)

// guide looks things up in the text of a schema. A schema here keeps all its
// properties in one place and not in branches, so that one path through the
// data leads to one place of the schema; a test sees to it.
type guide struct {
	root         *jsontree.Node
	refs         map[*jsontree.Node]*jsontree.Node // what a reference stands for
	alternatives map[*jsontree.Node][]string       // keys of which an object must have exactly one
	homes        map[string][]home                 // where keys stand, by their words
}

func newGuide(root *jsontree.Node) guide {
	g := guide{root, map[*jsontree.Node]*jsontree.Node{}, map[*jsontree.Node][]string{}, map[string][]home{}}
	g.learn(root)
	g.learnHomes(root, nil)
	return g
}

// learn looks up once what would otherwise be looked up for every value.
func (g guide) learn(n *jsontree.Node) {
	if n.Get("$ref") != nil {
		g.refs[n] = g.follow(n)
	}
	if names := alternatives(n); names != nil {
		g.alternatives[n] = names
	}
	for _, m := range n.Members {
		g.learn(m.Value)
	}
	for _, item := range n.Items {
		g.learn(item)
	}
}

// member is the schema of an object's member, nil when it may not have it.
func (g guide) member(object *jsontree.Node, key string) *jsontree.Node {
	return g.resolve(entry(object, key))
}

// entry is the schema of an object's member as it is written there: a reference
// with words and examples of its own, perhaps.
func entry(object *jsontree.Node, key string) *jsontree.Node {
	if p := object.Get("properties").Get(key); p != nil {
		return p
	}
	return object.Get("additionalProperties")
}

// item is the schema of a list's items.
func (g guide) item(list *jsontree.Node) *jsontree.Node { return g.resolve(list.Get("items")) }

// resolve gives what a reference stands for, and any other schema itself.
func (g guide) resolve(n *jsontree.Node) *jsontree.Node {
	if meant := g.refs[n]; meant != nil {
		return meant
	}
	return n
}

// follow follows references, which all stay within the schema.
func (g guide) follow(n *jsontree.Node) *jsontree.Node {
	for ref := n.Get("$ref"); ref != nil; ref = n.Get("$ref") {
		n = g.root.At(ref.Text[1:])
	}
	return n
}

// keys are the properties that an object may have, in the schema's order.
func keys(n *jsontree.Node) []string {
	var names []string
	if p := n.Get("properties"); p != nil {
		for _, m := range p.Members {
			names = append(names, m.Key)
		}
	}
	return names
}

// alternatives are the keys of which an object must have exactly one.
func alternatives(n *jsontree.Node) []string {
	var names []string
	if branches := n.Get("oneOf"); branches != nil {
		for _, b := range branches.Items {
			names = append(names, b.At("/required/0").Text)
		}
	}
	return names
}

// allowed are the values of an enumeration, wherever the schema keeps it.
func allowed(n *jsontree.Node) []*jsontree.Node {
	for _, at := range []string{"/enum", "/then/enum"} {
		if e := n.At(at); e != nil {
			return e.Items
		}
	}
	return nil
}
