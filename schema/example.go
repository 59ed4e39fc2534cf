package schema

import (
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"yardproof/schema/jsontree"
)

// example is the text of a value that a schema accepts: the one that it gives
// itself, or one made of what it demands. ok is false where the schema says too
// little for one. A test holds every one of them against the schema.
func (g guide) example(schema *jsontree.Node) (text string, ok bool) {
	for _, s := range []*jsontree.Node{schema, g.resolve(schema)} {
		if e := s.At("/examples/0"); e != nil {
			return onOneLine(e), true
		}
	}
	schema = g.resolve(schema)
	if values := allowed(schema); len(values) > 0 {
		return onOneLine(values[0]), true
	}
	if c := schema.Get("const"); c != nil {
		return onOneLine(c), true
	}
	switch types(schema)[0] {
	case "object":
		return g.exampleObject(schema)
	case "array":
		return g.exampleList(schema)
	case "integer", "number":
		if least := schema.Get("minimum"); least != nil && least.Text != "0" {
			return least.Text, true
		}
		return "1", true
	case "boolean":
		return "true", true
	}
	return "", false
}

func (g guide) exampleObject(schema *jsontree.Node) (string, bool) {
	var members []string
	for _, key := range wantedKeys(schema) {
		value, ok := g.example(schema.Get("properties").Get(key))
		if !ok {
			return "", false
		}
		members = append(members, fmt.Sprintf("%q: %s", key, value))
	}
	if of := schema.Get("additionalProperties"); of != nil && of.Kind == jsontree.Object {
		value, ok := g.example(of)
		return inBraces([]string{"\"name\": " + value}), ok
	}
	return inBraces(members), true
}

func (g guide) exampleList(schema *jsontree.Node) (string, bool) {
	item, ok := g.example(schema.Get("items"))
	if !ok {
		return "", false
	}
	items := []string{item}
	for least, _ := itemLimits(schema); len(items) < least; {
		items = append(items, item)
	}
	return "[" + strings.Join(items, ", ") + "]", true
}

// wantedKeys are the keys that an object must have, the first of its
// alternatives among them; its first key where it need not have any.
func wantedKeys(schema *jsontree.Node) []string {
	var names []string
	for _, r := range itemsOf(schema.Get("required")) {
		names = append(names, r.Text)
	}
	if others := alternatives(schema); len(others) > 0 {
		names = append(names, others[0])
	}
	if all := keys(schema); len(names) == 0 && len(all) > 0 {
		names = all[:1]
	}
	return names
}

func inBraces(members []string) string {
	if len(members) == 0 {
		return "{}"
	}
	return "{ " + strings.Join(members, ", ") + " }"
}

// onOneLine is a value as JSON.
func onOneLine(n *jsontree.Node) string {
	switch n.Kind {
	case jsontree.Object:
		var members []string
		for _, m := range n.Members {
			members = append(members, jsonText(m.Key)+": "+onOneLine(m.Value))
		}
		return inBraces(members)
	case jsontree.Array:
		items := make([]string, len(n.Items))
		for i, item := range n.Items {
			items[i] = onOneLine(item)
		}
		return "[" + strings.Join(items, ", ") + "]"
	case jsontree.String:
		return jsonText(n.Text)
	case jsontree.Null:
		return "null"
	}
	return n.Text
}

func itemsOf(list *jsontree.Node) []*jsontree.Node {
	if list == nil {
		return nil
	}
	return list.Items
}

func membersOf(object *jsontree.Node) []jsontree.Member {
	if object == nil {
		return nil
	}
	return object.Members
}

// itemLimits are the least and the most items that a list may have.
func itemLimits(schema *jsontree.Node) (least, most int) {
	bound := func(key string, otherwise int) int {
		if l := schema.Get(key); l != nil {
			if n, err := strconv.Atoi(l.Text); err == nil {
				return n
			}
		}
		return otherwise
	}
	return bound("minItems", 0), bound("maxItems", math.MaxInt)
}

// jsonText is a text in quotation marks as JSON has it.
func jsonText(s string) string {
	var b strings.Builder
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(s); err != nil {
		return quote(s)
	}
	return strings.TrimSuffix(b.String(), "\n")
}

// types are the types that a schema takes; one empty word where it does not say.
func types(schema *jsontree.Node) []string {
	switch t := schema.Get("type"); {
	case t == nil:
		return []string{""}
	case t.Kind == jsontree.String:
		return []string{t.Text}
	default:
		var names []string
		for _, item := range t.Items {
			names = append(names, item.Text)
		}
		return names
	}
}

// accepts reports whether a value could stand under a schema: it is of the right
// type and pattern, and its keys and items are such as the schema has.
func (g guide) accepts(schema, n *jsontree.Node) bool {
	schema = g.resolve(schema)
	if values := allowed(schema); len(values) > 0 && (schema.Get("then") == nil || n.Kind == jsontree.String) {
		return slices.ContainsFunc(values, func(v *jsontree.Node) bool { return v.Kind == n.Kind && v.Text == n.Text })
	}
	if schema.Get("type") != nil && !slices.Contains(types(schema), typeOf(n)) && (typeOf(n) != "integer" || !slices.Contains(types(schema), "number")) {
		return false
	}
	switch n.Kind {
	case jsontree.String:
		p := schema.Get("pattern")
		if p != nil {
			return regexp.MustCompile(p.Text).MatchString(n.Text)
		}
		// A length is a number or a text that has one.
		return (!slices.Contains(types(schema), "number") || strings.ContainsAny(n.Text, "0123456789")) &&
			(!alwaysWithUnit(schema) || withUnit.MatchString(n.Text)) && strings.HasSuffix(n.Text, "%") == inPercent(schema)
	case jsontree.Array:
		return g.acceptsItems(schema, n)
	case jsontree.Object:
		return g.acceptsMembers(schema, n)
	}
	return true
}

func (g guide) acceptsItems(schema, n *jsontree.Node) bool {
	if least, most := itemLimits(schema); len(n.Items) < least || len(n.Items) > most {
		return false
	}
	return !slices.ContainsFunc(n.Items, func(item *jsontree.Node) bool { return !g.accepts(schema.Get("items"), item) })
}

func (g guide) acceptsMembers(schema, n *jsontree.Node) bool {
	for _, r := range itemsOf(schema.Get("required")) {
		if n.Member(r.Text) == nil {
			return false
		}
	}
	if names := alternatives(schema); names != nil && !slices.ContainsFunc(names, func(k string) bool { return n.Member(k) != nil }) {
		return false
	}
	return !slices.ContainsFunc(n.Members, func(m jsontree.Member) bool { return g.member(schema, m.Key) == nil })
}

// typeOf is the schema's word for a value's type.
func typeOf(n *jsontree.Node) string {
	switch n.Kind {
	case jsontree.Bool:
		return "boolean"
	case jsontree.Number:
		if strings.ContainsAny(n.Text, ".eE") {
			return "number"
		}
		return "integer"
	}
	return n.Kind.String()
}
