package schema

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// problem words a fault: what is wrong, where, the value, what is wanted.
func (f fault) problem() source.Problem {
	switch f.kind {
	case "required":
		return f.missing()
	case "missing_dependency":
		return f.alone()
	case unknownKey:
		return f.unknownKey()
	case "invalid_property_name":
		return f.badKey()
	case "invalid_type":
		return f.wrongType()
	case "enum", "const":
		return f.notListed()
	case "pattern":
		return f.badPattern()
	case "unique":
		return f.twice()
	case "number_one_of":
		return f.oneOf()
	case nameless:
		return f.nameless()
	case flat:
		return f.flat()
	}
	return f.outOfRange()
}

func (f fault) missing() source.Problem {
	return source.Problem{
		Code: Missing, Range: f.node.Open(),
		Message: fmt.Sprintf("%q is missing from %s", f.property, f.place()),
		Hint:    "add " + f.keyToAdd(),
	}
}

// keyToAdd is the key that is missing, with an example where it takes an object
// or a list.
func (f fault) keyToAdd() string {
	text, ok := f.guide.example(entry(f.schema, f.property))
	if !ok || !strings.ContainsAny(text[:1], "[{") {
		return quote(f.property)
	}
	return quote(f.property) + ": " + text
}

// alone is a key that makes sense only beside another. The validator names
// only the absent one.
func (f fault) alone() source.Problem {
	for _, d := range f.schema.Get("dependencies").Members {
		if needs := d.Value.Items[0].Text; f.node.Member(d.Key) != nil && f.node.Member(needs) == nil {
			return source.Problem{
				Code: Missing, Range: f.key(d.Key),
				Message: fmt.Sprintf("%q is possible only beside %q, which is missing from %s", d.Key, needs, f.place()),
				Hint:    fmt.Sprintf("add %q or remove %q", needs, d.Key),
			}
		}
	}
	return f.outOfRange()
}

// badKey is a key that somebody chose and that is no name.
func (f fault) badKey() source.Problem {
	words, example := patternWords(f.schema.Get("propertyNames"), f.property)
	if f.schema.At("/propertyNames/$ref") != nil {
		words, example = nameWords, slug(f.property)
	}
	if values := f.schema.At("/propertyNames/enum"); values != nil {
		var names []string
		for _, v := range values.Items {
			names = append(names, v.Text)
		}
		words, example = list(quoted(names), "or"), Nearest(f.property, names)
	}
	return source.Problem{
		Code: NotAllowed, Range: f.key(f.property),
		Message: fmt.Sprintf("%s cannot be a name in %s; wanted: %s", quote(f.property), f.place(), words),
		Hint:    writeHint(example),
	}
}

func (f fault) notListed() source.Problem {
	values, names := allowed(f.schema), []string{}
	for _, key := range []string{"/const", "/then/const"} {
		if c := f.schema.At(key); c != nil {
			values = append(values, c)
		}
	}
	shown := make([]string, len(values))
	for i, v := range values {
		shown[i] = show(v)
		names = append(names, v.Text)
	}
	wanted := shown
	if slices.Contains(types(f.schema), "object") {
		wanted = append(slices.Clip(shown), typeWord("object"))
	}
	p := source.Problem{
		Code: NotAllowed, Range: f.value(),
		Message: fmt.Sprintf("%s is %s; wanted: %s", f.place(), show(f.node), list(wanted, "or")),
	}
	if slices.Contains(types(f.schema), "object") {
		p.Hint = "write " + list(f.examples(), "or")
	}
	if name := Nearest(f.node.Text, names); name != "" && (f.node.Kind == jsontree.String || f.node.Kind == jsontree.Number && name == f.node.Text) {
		p.Hint = "write " + shown[slices.Index(names, name)]
	} else if len(shown) == 1 && p.Hint == "" {
		p.Hint = "write " + shown[0]
	}
	return p
}

func (f fault) badPattern() source.Problem {
	words, example := patternWords(f.schema, f.node.Text)
	if !regexp.MustCompile(f.schema.Get("pattern").Text).MatchString(example) {
		example = ""
	}
	return source.Problem{
		Code: NotAllowed, Range: f.value(),
		Message: fmt.Sprintf("%s is %s; wanted: %s", f.place(), show(f.node), words),
		Hint:    writeHint(example),
	}
}

func (f fault) twice() source.Problem {
	again := f.node.Items[f.second]
	return source.Problem{
		Code: NotAllowed, Range: again.Range,
		Message: fmt.Sprintf("%s stands in %s twice, as item %d and item %d", show(again), f.place(), f.first+1, f.second+1),
		Hint:    "remove one of them",
	}
}

func (f fault) oneOf() source.Problem {
	names := alternatives(f.schema)
	have := f.present(names)
	if len(have) == 0 {
		p := source.Problem{
			Code: OneOf, Range: f.node.Open(),
			Message: fmt.Sprintf("%s has none of %s; exactly one is wanted", f.place(), list(quoted(names), "and")),
			Hint:    "add " + list(quoted(names), "or"),
		}
		const few = 6 // more are named only once
		if len(names) > few {
			p.Message = f.place() + " has none of the keys of which exactly one is wanted"
		}
		return p
	}
	return source.Problem{
		Code: OneOf, Range: f.key(have[len(have)-1]),
		Message: fmt.Sprintf("%s has %s; exactly one of %s is wanted", f.place(), list(quoted(have), "and"), list(quoted(names), "and")),
		Hint:    "keep one of them and remove the rest",
	}
}

// limits says for each of the validator's errors about a bound which keyword
// holds it, what is counted, and how the bound is told.
func limits(kind string) (keyword, unit, words string) {
	switch kind {
	case "number_gte":
		return "minimum", "", "the least is %s"
	case "number_lte":
		return "maximum", "", "the most is %s"
	case "number_gt":
		return "exclusiveMinimum", "", "it must be more than %s"
	case "string_gte":
		return "minLength", "character", "the least is %s"
	case "string_lte":
		return "maxLength", "character", "the most is %s"
	case "array_min_items":
		return "minItems", "item", "the least is %s"
	case "array_max_items":
		return "maxItems", "item", "the most is %s"
	case "array_min_properties":
		return "minProperties", "entry", "the least is %s"
	case "array_max_properties":
		return "maxProperties", "entry", "the most is %s"
	}
	return "", "", ""
}

func (f fault) outOfRange() source.Problem {
	keyword, unit, words := limits(f.kind)
	bound := f.schema.Get(keyword)
	p := source.Problem{Code: OutOfRange, Range: f.value()}
	switch {
	case bound == nil:
		p.Code = NotChecked
		p.Message = fmt.Sprintf("%s is %s, which the schema does not accept (%s)", f.place(), show(f.node), f.kind)
	case unit == "":
		p.Message = fmt.Sprintf("%s is %s; "+words, f.place(), show(f.node), bound.Text)
	default:
		if exact := f.schema.Get("minItems"); unit == "item" && exact != nil && f.schema.Get("maxItems") != nil && exact.Text == f.schema.Get("maxItems").Text {
			words = "exactly %s are wanted"
		}
		p.Message = fmt.Sprintf("%s has %s; "+words, f.place(), count(f.node, unit), bound.Text)
		if keyword == "minItems" || keyword == "minProperties" {
			p.Hint = f.longEnough()
		}
	}
	return p
}

// value is where to point for a value: at all of it, or at the bracket that
// opens it when it may go on for pages.
func (f fault) value() source.Range { return f.node.Open() }

// place names the value in the words of the file: its position in lists, its
// key, and the key about it.
func (f fault) place() string {
	var words []string
	for i, names := len(f.path)-1, 0; i >= 0 && names < 2; i-- {
		if n, err := strconv.Atoi(f.path[i]); err == nil {
			words = append(words, fmt.Sprintf("item %d", n+1))
			continue
		}
		words = append(words, quote(f.path[i]))
		names++
	}
	if len(words) == 0 {
		return f.what
	}
	return strings.Join(words, " of ")
}

func count(n *jsontree.Node, unit string) string {
	total := len(n.Members) + len(n.Items)
	if n.Kind == jsontree.String {
		total = utf8.RuneCountInString(n.Text)
	}
	switch {
	case total == 1:
		return "1 " + unit
	case unit == "entry":
		return fmt.Sprintf("%d entries", total)
	}
	return fmt.Sprintf("%d %ss", total, unit)
}

// typeWords says what types a value may have, in words for people who have
// not read the JSON standard.
func typeWords(types *jsontree.Node) string {
	if types == nil {
		return "something else"
	}
	if types.Kind == jsontree.String {
		return typeWord(types.Text)
	}
	words := make([]string, len(types.Items))
	for i, t := range types.Items {
		words[i] = typeWord(t.Text)
	}
	return list(words, "or")
}

func typeWord(name string) string {
	switch name {
	case "string":
		return "text in quotation marks"
	case "integer":
		return "a whole number"
	case "number":
		return "a number"
	case "boolean":
		return "true or false"
	case "array":
		return "a list in square brackets"
	case "object":
		return "an object in braces"
	}
	return name
}

// show prints a value for a message, long ones cut short.
func show(n *jsontree.Node) string {
	switch n.Kind {
	case jsontree.String:
		return quote(n.Text)
	case jsontree.Object:
		return "an object"
	case jsontree.Array:
		return "a list"
	case jsontree.Null:
		return "null"
	}
	return shorten(n.Text)
}

func quote(s string) string { return strconv.Quote(shorten(s)) }

func shorten(s string) string {
	const most = 40
	if utf8.RuneCountInString(s) <= most {
		return s
	}
	return string([]rune(s)[:most]) + "..."
}

func quoted(names []string) []string {
	out := make([]string, len(names))
	for i, n := range names {
		out[i] = quote(n)
	}
	return out
}

func list(words []string, conjunction string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " " + conjunction + " " + words[last]
}
