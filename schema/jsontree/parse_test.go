package jsontree

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"yardproof/schema/source"
)

func parse(t *testing.T, text string) *Node {
	t.Helper()
	n, problems := Parse(source.New("f.json", []byte(text)), DefaultLimits())
	if n == nil || len(problems) > 0 {
		t.Fatalf("Parse(%q) found %v", text, problems)
	}
	return n
}

func sample(t testing.TB) []byte {
	t.Helper()
	b, err := os.ReadFile("testdata/steps.json")
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// decode is the outside opinion: encoding/json, numbers kept as they are typed.
func decode(t testing.TB, b []byte) any {
	t.Helper()
	d := json.NewDecoder(bytes.NewReader(b))
	d.UseNumber()
	var v any
	if err := d.Decode(&v); err != nil {
		t.Fatalf("encoding/json refuses %q: %v", b, err)
	}
	return v
}

// outline writes a tree as one line a node: pointer, kind, place and text.
func outline(f *source.File, pointer string, n *Node) string {
	s := fmt.Sprintf("%s %v %s %q\n", pointer, n.Kind, span(f, n.Range), n.Text)
	for _, m := range n.Members {
		s += fmt.Sprintf("%s key %s\n", pointer+Pointer(m.Key), span(f, m.KeyRange))
		s += outline(f, pointer+Pointer(m.Key), m.Value)
	}
	for i, item := range n.Items {
		s += outline(f, pointer+Pointer(fmt.Sprint(i)), item)
	}
	return s
}

func span(f *source.File, r source.Range) string {
	a, b := f.Position(r.Start), f.Position(r.End)
	return fmt.Sprintf("%d:%d-%d:%d", a.Line, a.Column, b.Line, b.Column)
}

// The line endings, the tab and the characters outside ASCII are what this is about.
func TestPlaces(t *testing.T) {
	text := "{\r\n\t\"é\" : [ 1.50 ,\rtrue],\n \"½\":{\"\\u0061\":\"x\\n\U0001F9F5\"} ,\"n\":null}\n"
	f := source.New("f.json", []byte(text))
	n, problems := Parse(f, DefaultLimits())
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	want := strings.Join([]string{
		` object 1:1-4:34 ""`,
		`/é key 2:2-2:5`,
		`/é array 2:8-3:6 ""`,
		`/é/0 number 2:10-2:14 "1.50"`,
		`/é/1 boolean 3:1-3:5 "true"`,
		`/½ key 4:2-4:5`,
		`/½ object 4:6-4:23 ""`,
		`/½/a key 4:7-4:15`,
		`/½/a string 4:16-4:22 "x\n🧵"`,
		`/n key 4:25-4:28`,
		`/n null 4:29-4:33 ""`,
		``,
	}, "\n")
	if diff := cmp.Diff(want, outline(f, "", n)); diff != "" {
		t.Errorf("outline (-want +got):\n%s", diff)
	}
}

func TestInterfaceAgreesWithEncodingJSON(t *testing.T) {
	documents := []string{
		string(sample(t)), plan(8 << 10),
		`null`, ` true `, `false`, `0`, `-0.0`, `1E+2`, `""`, `"\"\\\/\n\r\t\u00e9\ud83e\uddf5"`, `[]`, `{}`, `[[],{}]`, `{"":""}`,
		`[1e400, -1e-400, 1e0400]`, `{"a":{"b":{"c":[1,[2,[3]]]}}}`, "\t\r\n[\n1\n]\r\n",
	}
	for _, text := range documents {
		if diff := cmp.Diff(decode(t, []byte(text)), parse(t, text).Interface()); diff != "" {
			t.Errorf("%.60q (-encoding/json +Interface):\n%s", text, diff)
		}
	}
	if (*Node)(nil).Interface() != nil {
		t.Error("a nil node is not nil")
	}
}

func TestGet(t *testing.T) {
	n := parse(t, `{"a":{"b":[7]},"n":null}`)
	if got := n.Get("a").Get("b").Items[0].Text; got != "7" {
		t.Errorf("a, b, 0 = %q, want 7", got)
	}
	if n.Get("x").Get("b") != nil || n.Get("a").Get("b").Get("0") != nil || n.Member("x") != nil {
		t.Error("a lookup of what is not there gives something")
	}
	if got := n.Get("n"); got == nil || got.Kind != Null {
		t.Errorf("a null member gives %v, want a node of kind null", got)
	}
	if got := n.Member("a").KeyRange; got != (source.Range{Start: 1, End: 4}) {
		t.Errorf("range of the key a = %v", got)
	}
	if got := n.Get("a").Open(); got != (source.Range{Start: 5, End: 6}) {
		t.Errorf("opening bracket of a = %v", got)
	}
	if n := n.Get("n"); n.Open() != n.Range {
		t.Errorf("a null opens at %v, want its range %v", n.Open(), n.Range)
	}
}

// Objects large enough to have a map of their keys must not behave otherwise.
func TestManyMembers(t *testing.T) {
	for _, count := range []int{manyMembers - 1, manyMembers, 5 * manyMembers} {
		var b strings.Builder
		for i := range count {
			fmt.Fprintf(&b, `,"k%d":%d`, i, i)
		}
		n := parse(t, "{"+b.String()[1:]+"}")
		for i := range count {
			if got := n.Get(fmt.Sprintf("k%d", i)); got == nil || got.Text != fmt.Sprint(i) {
				t.Errorf("of %d members, k%d = %v", count, i, got)
			}
		}
		if n.Get("k") != nil {
			t.Errorf("of %d members, one has the name k", count)
		}
	}
}

func TestKindNames(t *testing.T) {
	for kind, want := range map[Kind]string{Null: "null", Bool: "boolean", Number: "number", String: "string", Array: "array", Object: "object", -1: "no JSON type", 6: "no JSON type"} {
		if kind.String() != want {
			t.Errorf("Kind(%d) = %q, want %q", int(kind), kind, want)
		}
	}
}
