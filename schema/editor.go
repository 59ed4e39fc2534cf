package schema

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// ForEditors is the text of a schema as editors should have it. It demands what
// [Text] demands, and says more.
func ForEditors(name string) ([]byte, bool) {
	if name == "plan" {
		return []byte(forEditors(planText)), true
	}
	return Text(name)
}

// forEditors is the schema of a plan with words for what a size may change. A
// size is checked once it is merged with the recipe, so the schema itself asks
// next to nothing of it, and an editor would have nothing to offer there. What
// is added says what is said of the recipe, and asks for nothing.
func forEditors(text string) string {
	tree, problems := jsontree.Parse(source.New("", []byte(text)), jsontree.Limits{})
	if len(problems) > 0 {
		panic(fmt.Sprintf("schema of the plan: %v", problems))
	}
	w := wording{definitions: tree.Get("definitions"), made: map[string]string{}}
	var added []insertion
	for _, m := range tree.At("/definitions/size/properties").Members {
		words := encoded([]any{w.of(tree.Get("properties").Get(m.Key).Interface())})
		added = append(added, insertion{m.Value.Range.End - 1, `, "allOf": ` + words + " "})
	}
	var definitions strings.Builder
	for _, name := range slices.Sorted(maps.Keys(w.made)) {
		fmt.Fprintf(&definitions, ",\n    %q: %s", wordsOf+name, w.made[name])
	}
	last := w.definitions.Members[len(w.definitions.Members)-1].Value
	added = append(added, insertion{last.Range.End, definitions.String()})
	return insert(text, added)
}

// wordsOf begins the names of definitions that hold words only.
const wordsOf = "words_of_"

// wording takes from schemas what they say and leaves what they demand.
type wording struct {
	definitions *jsontree.Node
	made        map[string]string // by name of the definition they were taken from
}

// of is what a schema says: of itself, its members and its items.
func (w wording) of(schema any) any {
	from, ok := schema.(map[string]any)
	if !ok {
		return true // a schema of true or false says nothing
	}
	words := map[string]any{}
	for _, key := range []string{"description", "default", "examples"} {
		if value, ok := from[key]; ok {
			words[key] = value
		}
	}
	if values, ok := from["enum"]; ok && words["examples"] == nil {
		words["examples"] = values
	}
	for _, key := range []string{"items", "additionalProperties"} {
		if below, ok := from[key].(map[string]any); ok {
			words[key] = w.of(below)
		}
	}
	if members, ok := from["properties"].(map[string]any); ok {
		below := map[string]any{}
		for name, member := range members {
			below[name] = w.of(member)
		}
		words["properties"] = below
	}
	if ref, ok := from["$ref"].(string); ok {
		words["$ref"] = w.refer(strings.TrimPrefix(ref, "#/definitions/"))
	}
	return words
}

// refer is where the words of a definition are found, which are made on the
// first call.
func (w wording) refer(name string) string {
	if _, ok := w.made[name]; !ok {
		w.made[name] = "" // a definition may refer to itself
		w.made[name] = encoded(w.of(w.definitions.Get(name).Interface()))
	}
	return "#/definitions/" + wordsOf + name
}

// encoded is a value as JSON, members by name. It was decoded from JSON.
func encoded(value any) string {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(value); err != nil {
		panic(err)
	}
	return strings.TrimSpace(b.String())
}

// insertion is a text to stand before an offset.
type insertion struct {
	at   int
	text string
}

func insert(text string, added []insertion) string {
	slices.SortStableFunc(added, func(a, b insertion) int { return a.at - b.at })
	var out strings.Builder
	done := 0
	for _, i := range added {
		out.WriteString(text[done:i.at])
		out.WriteString(i.text)
		done = i.at
	}
	out.WriteString(text[done:])
	return out.String()
}
