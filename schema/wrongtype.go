package schema

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

func (f fault) wrongType() source.Problem {
	return source.Problem{
		Code: WrongType, Range: f.value(),
		Message: fmt.Sprintf("%s is %s; wanted: %s", f.place(), show(f.node), typeWords(f.schema.Get("type"))),
		Hint:    f.rightType(),
	}
}

// rightType shows a value of a type that is wanted: the one that is there, as
// it should be written, where that can be told.
func (f fault) rightType() string {
	want := types(f.schema)
	if f.node.Kind == jsontree.String && !slices.Contains(want, "string") && plainNumber(f.node.Text) &&
		(slices.Contains(want, "integer") || slices.Contains(want, "number")) {
		return "leave out the quotation marks"
	}
	if text := f.quotedNumber(); text != "" {
		return text
	}
	if f.node.Kind == jsontree.Number && slices.Contains(want, "integer") {
		return ""
	}
	if text := f.lengthToBuy(); text != "" {
		return text
	}
	if f.onePair() {
		return f.bothSides()
	}
	if text, ok := f.asWanted(); ok {
		return "write it like " + f.withKey(text)
	}
	shown := f.examples()
	if len(shown) == 0 || want[0] == "boolean" || want[0] == "integer" && f.says.Get("examples") == nil {
		return ""
	}
	shown[0] = f.withKey(shown[0])
	return "write it like " + list(shown, "or")
}

// withKey puts the value's key before an object or list, so that it can be
// copied.
func (f fault) withKey(text string) string {
	if len(f.path) == 0 || !strings.ContainsAny(text[:1], "[{") {
		return text
	}
	if key := f.path[len(f.path)-1]; f.holdsKey {
		return quote(key) + ": " + text
	}
	return text
}

// examples are the schema's own of the types it takes, or one that is made up.
func (f fault) examples() []string {
	for _, s := range []*jsontree.Node{f.says, f.schema} {
		if own := itemsOf(s.Get("examples")); len(own) > 0 {
			return manyExamples(own)
		}
	}
	if text, ok := f.guide.example(f.says); ok && len(f.path) > 0 {
		return []string{text}
	}
	return nil
}

// manyExamples is the first example of every kind of value.
func manyExamples(own []*jsontree.Node) []string {
	var shown []string
	seen := map[jsontree.Kind]bool{}
	for _, e := range own {
		kind := e.Kind
		if kind == jsontree.Number {
			kind = jsontree.String
		}
		if !seen[kind] {
			seen[kind] = true
			shown = append(shown, onOneLine(e))
		}
	}
	return shown
}

// asWanted is the value itself in the object or list that is wanted round it.
func (f fault) asWanted() (text string, ok bool) {
	want := types(f.schema)
	switch {
	case slices.Contains(want, "array") && f.node.Kind != jsontree.Array:
		return f.inList()
	case slices.Contains(want, "object") && (f.node.Kind == jsontree.String || f.node.Kind == jsontree.Number):
		return f.inObject()
	}
	return "", false
}

func (f fault) inList() (string, bool) {
	least, most := itemLimits(f.schema)
	text := onOneLine(f.node)
	if !f.guide.accepts(f.schema.Get("items"), f.node) || len(text) > mostShown {
		return "", false
	}
	switch {
	case least <= 1:
		return "[" + text + "]", true
	case least == 2 && most == 2:
		return "[" + text + ", " + text + "]", true
	}
	return "", false
}

// inObject puts the value under the first key of the wanted object that takes
// it.
func (f fault) inObject() (string, bool) {
	if f.says.Get("examples") != nil || f.schema.Get("examples") != nil && len(itemsOf(f.schema.Get("required"))) == 0 {
		return "", false
	}
	var members []string
	placed := false
	for _, key := range wantedKeys(f.schema) {
		schema := f.schema.Get("properties").Get(key)
		text, ok := f.guide.example(schema)
		if !placed && needs(f.schema) && f.guide.accepts(schema, f.node) && (alwaysWithUnit(f.guide.resolve(schema)) || !toBuy(f.node)) {
			text, ok, placed = onOneLine(f.node), true, true
		}
		if !ok {
			return "", false
		}
		members = append(members, fmt.Sprintf("%q: %s", key, text))
	}
	return inBraces(members), placed
}

var withUnit = regexp.MustCompile(`^[0-9./ ]*[0-9]( ?[A-Za-z%]+)$`)

// alwaysWithUnit reports whether a text is a number with its unit in all of the
// schema's examples.
func alwaysWithUnit(schema *jsontree.Node) bool {
	own := itemsOf(schema.Get("examples"))
	return len(own) > 0 && !slices.ContainsFunc(own, func(e *jsontree.Node) bool { return e.Kind != jsontree.String || !withUnit.MatchString(e.Text) })
}

// inPercent reports whether a schema's examples are percentages.
func inPercent(schema *jsontree.Node) bool {
	e := schema.At("/examples/0")
	return e != nil && strings.HasSuffix(e.Text, "%")
}

// quotedNumber is a number as the text that is wanted: in quotation marks, and
// with a unit where every example has one.
func (f fault) quotedNumber() string {
	if f.node.Kind != jsontree.Number || !slices.Contains(types(f.schema), "string") {
		return ""
	}
	own := itemsOf(f.says.Get("examples"))
	if len(own) == 0 {
		own = itemsOf(f.schema.Get("examples"))
	}
	var written []string
	for _, e := range own {
		if m := withUnit.FindStringSubmatch(e.Text); m != nil && alwaysWithUnit(f.schema) {
			if text := quote(f.node.Text + m[1]); !slices.Contains(written, text) {
				written = append(written, text)
			}
		}
	}
	if len(written) > 0 {
		return "write " + list(written, "or")
	}
	if p := f.schema.Get("pattern"); p != nil && !regexp.MustCompile(p.Text).MatchString(f.node.Text) {
		return ""
	}
	return "write " + quote(f.node.Text)
}

// longEnough shows a list or object that is not too short.
func (f fault) longEnough() string {
	for _, text := range f.examples() {
		if (text[0] == '[') == (f.node.Kind == jsontree.Array) {
			return "write it like " + f.withKey(text)
		}
	}
	return ""
}
