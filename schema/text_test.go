package schema_test

import (
	"strings"
	"testing"

	"yardproof/schema"
	"yardproof/schema/jsontree"
)

// walk visits every schema of a schema file: the root, definitions,
// properties, items and branches, but not what is only text in it.
func walk(t *testing.T, name string, visit func(pointer string, s *jsontree.Node)) {
	t.Helper()
	text, ok := schema.Text(name)
	if !ok {
		t.Fatalf("there is no schema %q", name)
	}
	walkFrom("", parse(t, string(text)), visit)
}

func walkFrom(at string, s *jsontree.Node, visit func(string, *jsontree.Node)) {
	visit(at, s)
	for _, m := range s.Members {
		here := at + jsontree.Pointer(m.Key)
		switch m.Key {
		case "properties", "definitions":
			for _, p := range m.Value.Members {
				walkFrom(here+jsontree.Pointer(p.Key), p.Value, visit)
			}
		case "items", "additionalProperties", "propertyNames", "if", "then", "else", "not":
			if m.Value.Kind == jsontree.Object {
				walkFrom(here, m.Value, visit)
			}
		case "oneOf", "anyOf", "allOf":
			for _, branch := range m.Value.Items {
				walkFrom(here, branch, visit)
			}
		}
	}
}

func TestText(t *testing.T) {
	if _, ok := schema.Text("nothing"); ok {
		t.Error("there is a schema of nothing")
	}
}

// TestDescribed: an editor shows the description on hover, so every property
// has one, and so has every entry that the writer names.
func TestDescribed(t *testing.T) {
	for _, name := range []string{"plan", "project", "baseline"} {
		seen := map[string]string{}
		walk(t, name, func(at string, s *jsontree.Node) {
			parts := strings.Split(at, "/")
			last := parts[max(0, len(parts)-2)]
			named := parts[len(parts)-1] == "additionalProperties"
			if last != "properties" && !named {
				return
			}
			d := s.Get("description")
			if d == nil || len(d.Text) < 10 || !strings.HasSuffix(d.Text, ".") && !strings.HasSuffix(d.Text, "\"") {
				t.Errorf("%s %s: has no description that ends like a sentence", name, at)
				return
			}
			seen[d.Text] = at
		})
		if len(seen) < map[string]int{"plan": 20, "project": 20, "baseline": 10}[name] {
			t.Errorf("%s: only %d descriptions were looked at", name, len(seen))
		}
	}
}

// TestReferences: the validator would fetch any other reference from the net
// or the disk, and a sibling of a reference is ignored unless it only
// describes.
func TestReferences(t *testing.T) {
	for _, name := range []string{"plan", "project", "baseline"} {
		text, _ := schema.Text(name)
		root := parse(t, string(text))
		used := map[string]bool{}
		walk(t, name, func(at string, s *jsontree.Node) {
			ref := s.Get("$ref")
			if ref == nil {
				return
			}
			used[ref.Text] = true
			if !strings.HasPrefix(ref.Text, "#/definitions/") || root.At(ref.Text[1:]) == nil {
				t.Errorf("%s %s: reference %q", name, at, ref.Text)
			}
			for _, m := range s.Members {
				if m.Key != "$ref" && m.Key != "description" && m.Key != "examples" && m.Key != "default" {
					t.Errorf("%s %s: %q beside a reference is ignored", name, at, m.Key)
				}
			}
		})
		for _, m := range root.Get("definitions").Members {
			if !used["#/definitions/"+m.Key] {
				t.Errorf("%s: nothing uses the definition %q", name, m.Key)
			}
		}
	}
}

// TestKeywords allows those of draft-07 (JSON Schema Validation, draft
// handrews 01) that the wording of problems knows; newer ones would be ignored
// by the validator in silence.
func TestKeywords(t *testing.T) {
	const known = " $schema $ref title description default examples definitions type enum const " +
		"properties required additionalProperties propertyNames minProperties maxProperties dependencies " +
		"items minItems maxItems uniqueItems minLength maxLength pattern minimum maximum exclusiveMinimum oneOf if then "
	for _, name := range []string{"plan", "project", "baseline"} {
		walk(t, name, func(at string, s *jsontree.Node) {
			for _, m := range s.Members {
				if !strings.Contains(known, " "+m.Key+" ") {
					t.Errorf("%s %s: keyword %q", name, at, m.Key)
				}
			}
			closed(t, name, at, s)
			branches(t, name, at, s)
		})
	}
}

// closed: an object with properties takes no others.
func closed(t *testing.T, name, at string, s *jsontree.Node) {
	t.Helper()
	if a := s.Get("additionalProperties"); s.Get("properties") != nil && (a == nil || a.Text != "false") {
		t.Errorf("%s %s: the object is open", name, at)
	}
}

// branches: every oneOf asks for exactly one of some keys and nothing else,
// and branches hold no properties, because words are looked up along one path.
func branches(t *testing.T, name, at string, s *jsontree.Node) {
	t.Helper()
	if one := s.Get("oneOf"); one != nil {
		for _, b := range one.Items {
			if len(b.Members) != 1 || len(b.Get("required").Items) != 1 || s.Get("properties").Get(b.At("/required/0").Text) == nil {
				t.Errorf("%s %s: a branch is more than one required property", name, at)
			}
		}
	}
	if then := s.Get("then"); then != nil && (then.Get("properties") != nil || s.Get("else") != nil) {
		t.Errorf("%s %s: a branch with properties", name, at)
	}
}

// TestWholeVocabulary: the sample files use every property there is, so that
// the tests over them leave none out.
func TestWholeVocabulary(t *testing.T) {
	for name, files := range map[string][]string{
		"plan":    {"lattice-walk.plan.json", "unit-drawer.plan.json", "settings.plan.json", "tube-drawer.plan.json", "everything-later.plan.json"},
		"project": {"studio.project.json"},
	} {
		text, _ := schema.Text(name)
		root := parse(t, string(text))
		v := visitor{root: root, seen: map[*jsontree.Node]bool{}}
		for _, file := range files {
			v.visit(parse(t, sample(t, file)), root)
		}
		walkFrom("", root, func(at string, s *jsontree.Node) {
			parts := strings.Split(at, "/")
			if len(parts) > 1 && parts[len(parts)-2] == "properties" && !v.seen[s] && !elsewhere(at) {
				t.Errorf("%s: no sample uses %s", name, at)
			}
		})
	}
}

// elsewhere are the properties that cannot stand beside others in one file;
// the decoder's tests have them.
func elsewhere(at string) bool {
	const layout = "/definitions/layout/properties/"
	return at == layout+"rows" || strings.HasPrefix(at, layout+"map") || strings.HasPrefix(at, "/definitions/size/")
}

type visitor struct {
	root *jsontree.Node
	seen map[*jsontree.Node]bool
}

func (v visitor) visit(n, s *jsontree.Node) {
	for s != nil {
		v.seen[s] = true
		ref := s.Get("$ref")
		if ref == nil {
			break
		}
		s = v.root.At(ref.Text[1:])
	}
	for _, m := range n.Members {
		next := s.Get("properties").Get(m.Key)
		if next == nil {
			next = s.Get("additionalProperties")
		}
		v.visit(m.Value, next)
	}
	for _, item := range n.Items {
		v.visit(item, s.Get("items"))
	}
}
