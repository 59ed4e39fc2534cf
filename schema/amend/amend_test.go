package amend

import (
	"strings"
	"testing"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// made is a text with what a test makes of it. The place that it speaks of is
// marked with two strokes each side.
func made(t *testing.T, marked string, edit func(Text, source.Range) (source.Edit, bool)) string {
	t.Helper()
	start := strings.Index(marked, "<<")
	end := strings.Index(marked, ">>") - len("<<")
	text := strings.NewReplacer("<<", "", ">>", "").Replace(marked)
	file := source.New("a.json", []byte(text))
	tree, problems := jsontree.Parse(file, jsontree.DefaultLimits())
	if len(problems) > 0 {
		t.Fatalf("%s: %v", text, problems)
	}
	e, ok := edit(Of(file, tree), source.Range{Start: start, End: end})
	if !ok {
		return "none"
	}
	out, err := Apply(file.Bytes, []source.Edit{e})
	if err != nil {
		t.Fatal(err)
	}
	if _, problems := jsontree.Parse(source.New("b.json", out), jsontree.DefaultLimits()); len(problems) > 0 {
		t.Errorf("%s is no JSON any more: %v", out, problems)
	}
	return string(out)
}

// What is added is written as what stands before it is.
func TestAddKeepsTheStyle(t *testing.T) {
	add := func(x Text, at source.Range) (source.Edit, bool) { return x.Add(at, "c", `"3"`) }
	for marked, want := range map[string]string{
		`<<{"a":1,"b":2}>>`:                             `{"a":1,"b":2,"c":"3"}`,
		`<<{ "a": 1, "b": 2 }>>`:                        `{ "a": 1, "b": 2, "c": "3" }`,
		`<<{ "a" : 1 }>>`:                               `{ "a" : 1, "c" : "3" }`,
		`<<{"a":1}>>`:                                   `{"a":1,"c":"3"}`,
		"<<{\n\t\"a\": 1\n}>>\n":                        "{\n\t\"a\": 1,\n\t\"c\": \"3\"\n}\n",
		"<<{\r\n  \"a\": 1,\r\n  \"b\": [2]\r\n}>>\r\n": "{\r\n  \"a\": 1,\r\n  \"b\": [2],\r\n  \"c\": \"3\"\r\n}\r\n",
		"<<{\n  \"a\": 1, \"b\": {}\n}>>":               "{\n  \"a\": 1, \"b\": {}, \"c\": \"3\"\n}",
		"<<{\n    \"a\" : 1\n  , \"b\" : 2\n}>>":        "{\n    \"a\" : 1\n  , \"b\" : 2, \"c\" : \"3\"\n}",
		`{ "x": <<{}>> }`:                               `{ "x": { "c": "3" } }`,
		`{"x":<<{ }>>}`:                                 `{"x":{"c":"3"}}`,
		`<<{}>>`:                                        `{ "c": "3" }`,
		`<<{ "c": 1 }>>`:                                "none",
		`{ "x": <<[]>> }`:                               "none",
	} {
		if got := made(t, marked, add); got != want {
			t.Errorf("%q\n got %q\nwant %q", marked, got, want)
		}
	}
}

func TestAppendKeepsTheStyle(t *testing.T) {
	add := func(x Text, at source.Range) (source.Edit, bool) { return x.Append(at, `"c"`) }
	for marked, want := range map[string]string{
		`<<[]>>`:                          `["c"]`,
		`<<["a"]>>`:                       `["a", "c"]`,
		`<<["a","b"]>>`:                   `["a","b","c"]`,
		"<<[\n  \"a\"\n]>>":               "[\n  \"a\",\n  \"c\"\n]",
		"{ \"x\": <<[\n  \"a\", 2]>> }\n": "{ \"x\": [\n  \"a\", 2, \"c\"] }\n",
		`{ "x": <<{}>> }`:                 "none",
	} {
		if got := made(t, marked, add); got != want {
			t.Errorf("%q\n got %q\nwant %q", marked, got, want)
		}
	}
}

func TestRemove(t *testing.T) {
	for marked, want := range map[string]string{
		`{ <<"a">>: 1, "b": 2 }`:            `{ "b": 2 }`,
		`{ "a": 1, "b": <<2>> }`:            `{ "a": 1 }`,
		`{ "a": 1, <<"b">>: 2, "c": 3 }`:    `{ "a": 1, "c": 3 }`,
		`{ "a": <<1>> }`:                    `{}`,
		`[1, <<2>>, 3]`:                     `[1, 3]`,
		"{\n  \"a\": 1,\n  \"b\": <<2>>\n}": "{\n  \"a\": 1\n}",
		`<<{ "a": 1 }>>`:                    "none",
	} {
		if got := made(t, marked, Text.Remove); got != want {
			t.Errorf("%q\n got %q\nwant %q", marked, got, want)
		}
	}
}

func TestPutAndRename(t *testing.T) {
	put := func(x Text, at source.Range) (source.Edit, bool) { return x.Put(at, `"5 1/2"`), true }
	if got, want := made(t, "{\t\"é\":<<\"5\">> ,\r\"b\":[] }", put), "{\t\"é\":\"5 1/2\" ,\r\"b\":[] }"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	rename := func(x Text, at source.Range) (source.Edit, bool) { return x.Rename(at, "a<\"b"), true }
	if got, want := made(t, `{ <<"é">>: 1 }`, rename), `{ "a<\"b": 1 }`; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestApplyRefuses(t *testing.T) {
	at := func(start, end int, text string) source.Edit {
		return source.Edit{Range: source.Range{Start: start, End: end}, Text: text}
	}
	for name, edits := range map[string][]source.Edit{
		"outside":     {at(3, 9, "x")},
		"backwards":   {at(3, 2, "x")},
		"before":      {at(-1, 2, "x")},
		"overlapping": {at(0, 3, "x"), at(2, 4, "y")},
		"twice":       {at(0, 3, "x"), at(0, 3, "y")},
	} {
		if got, err := Apply([]byte("abcdef"), edits); err == nil {
			t.Errorf("%s: made %q", name, got)
		}
	}
	got, err := Apply([]byte("abcdef"), []source.Edit{at(4, 5, "!"), at(2, 2, "1"), at(2, 2, "2"), at(4, 5, "!"), at(0, 1, "")})
	if want := "b12cd!f"; err != nil || string(got) != want {
		t.Errorf("made %q, %v, want %q", got, err, want)
	}
}

// Edits of a text and then of what came of it are the same as all at once.
func TestThen(t *testing.T) {
	at := func(start, end int, text string) source.Edit {
		return source.Edit{Range: source.Range{Start: start, End: end}, Text: text}
	}
	text := []byte("abcdef")
	first := []source.Edit{at(1, 2, "BBB"), at(4, 5, "")} // aBBBcdf
	for name, c := range map[string]struct {
		second []source.Edit
		want   string // empty when the second touch what the first wrote
	}{
		"before":        {[]source.Edit{at(0, 1, "x")}, "xBBBcdf"},
		"between":       {[]source.Edit{at(4, 5, "yy")}, "aBBByydf"},
		"after":         {[]source.Edit{at(6, 7, "z")}, "aBBBcdz"},
		"what it wrote": {[]source.Edit{at(1, 4, "b")}, ""},
		"a part of it":  {[]source.Edit{at(3, 5, "b")}, ""},
	} {
		all, ok := Then(first, c.second)
		if !ok {
			if c.want != "" {
				t.Errorf("%s: none", name)
			}
			continue
		}
		if got, err := Apply(text, all); err != nil || string(got) != c.want {
			t.Errorf("%s: %q, %v, want %q", name, got, err, c.want)
		}
	}
}
