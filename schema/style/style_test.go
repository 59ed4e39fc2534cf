package style

import (
	"bytes"
	"encoding/json"
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

var update = flag.Bool("update", false, "rewrite testdata/styled.json")

// formatted is the text in style, with problems when it is not fit for it.
func formatted(text string) (string, []source.Problem) {
	f := source.New("t", []byte(text))
	tree, problems := jsontree.Parse(f, jsontree.DefaultLimits())
	if len(problems) > 0 {
		return "", problems
	}
	return string(Format(f, tree)), nil
}

func TestFormat(t *testing.T) {
	hundred := strings.Repeat("x", 100)
	cases := []struct{ name, text, want string }{
		{"a plain value", " 1.50 ", "1.50\n"},
		{"nothing in it", "{ }", "{}\n"},
		{"the root is spread", `{"a":1}`, "{\n  \"a\": 1\n}\n"},
		{"numbers and escapes as typed", `{"b":1.50e+2,"a":"\u00e9\/"}`, "{\n  \"b\": 1.50e+2,\n  \"a\": \"\\u00e9\\/\"\n}\n"},
		{"carriage returns", "{\r\n\"a\":\r\n[1,\r\n2]}\r\n", "{\n  \"a\": [1, 2]\n}\n"},
		{"one thing on a line", `{"b":{"x":{"w":1}}}`, "{\n  \"b\": { \"x\": { \"w\": 1 } }\n}\n"},
		{"two things on two", `{"b":{"x":{"w":1},"y":{"w":2}}}`, "{\n  \"b\": {\n    \"x\": { \"w\": 1 },\n    \"y\": { \"w\": 2 }\n  }\n}\n"},
		{"an empty object is no thing", `{"b":{"x":{},"y":{"w":2}}}`, "{\n  \"b\": { \"x\": {}, \"y\": { \"w\": 2 } }\n}\n"},
		{"a list of things inside an array", `[[{"x":{"w":1},"y":{"w":2}}]]`, "[\n  [\n    {\n      \"x\": { \"w\": 1 },\n      \"y\": { \"w\": 2 }\n    }\n  ]\n]\n"},
		{"a text that is too long stays whole", `["` + hundred + `"]`, "[\n  \"" + hundred + "\"\n]\n"},
	}
	for _, c := range cases {
		if got, problems := formatted(c.text); got != c.want {
			t.Errorf("%s: %v\n%s", c.name, problems, cmp.Diff(c.want, got))
		}
	}
}

// A value that ends in column 100 with its comma is on one line, and one that
// would end in column 101 is not. Columns are code points, not bytes.
func TestFormatWidth(t *testing.T) {
	for _, letter := range []string{"x", "é", "布"} {
		line := `  "a": { "b": "` // and two more characters at the end, and a comma
		most := Width - len(line) - len(`" },`)
		fits, _ := formatted(`{"a":{"b":"` + strings.Repeat(letter, most) + `"},"c":1}`)
		if got := utf8.RuneCountInString(strings.Split(fits, "\n")[1]); got != Width {
			t.Errorf("%s: the line has %d columns, not %d:\n%s", letter, got, Width, fits)
		}
		over, _ := formatted(`{"a":{"b":"` + strings.Repeat(letter, most+1) + `"},"c":1}`)
		if got := strings.Split(over, "\n")[1]; got != `  "a": {` {
			t.Errorf("%s: one column more still begins with %s", letter, got)
		}
	}
}

// Plain values fill lines of the same width.
func TestFormatFills(t *testing.T) {
	for n := range 200 {
		got, _ := formatted("[" + strings.Repeat("12345678,", n) + "1]")
		lines := strings.Split(strings.TrimSuffix(got, "\n"), "\n")
		for i, line := range lines[1 : len(lines)-1] {
			full := len(line)+len(" 12345678,") > Width
			if len(line) > Width || i < len(lines)-3 && !full {
				t.Fatalf("%d numbers: a line of %d columns:\n%s", n, len(line), got)
			}
		}
	}
}

// One plan in the style, to be looked at.
func TestFormatPlan(t *testing.T) {
	text, err := os.ReadFile("testdata/typed.json")
	if err != nil {
		t.Fatal(err)
	}
	got, problems := formatted(string(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	want, err := os.ReadFile("testdata/styled.json")
	if *update {
		err = os.WriteFile("testdata/styled.json", []byte(got), 0o644)
		want = []byte(got)
	}
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Error(diff)
	}
}

// The demo line is written as the program writes plans.
func TestDemoLineIsInStyle(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/line/*.json")
	if err != nil || len(paths) < 20 {
		t.Fatal(len(paths), err)
	}
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if got, problems := formatted(string(text)); got != string(text) {
			t.Errorf("%s is not in style: yardproof fmt writes it anew (%v)", path, problems)
		}
	}
}

// FuzzFormat holds Format to its promise that it never changes meaning. The
// judge is encoding/json: without blanks (RFC 8259, section 2) both texts are
// the same bytes.
func FuzzFormat(f *testing.F) {
	seed(f)
	f.Fuzz(func(t *testing.T, text string) {
		got, problems := formatted(text)
		if len(problems) > 0 {
			t.Skip()
		}
		if was, is := compact(t, text), compact(t, got); was != is {
			t.Fatalf("%q became %q", was, is)
		}
		again, problems := formatted(got)
		if len(problems) > 0 || again != got {
			t.Fatalf("the second time it becomes\n%s\nnot\n%s\n%v", again, got, problems)
		}
		if !strings.HasSuffix(got, "\n") || strings.HasSuffix(got, "\n\n") || strings.ContainsAny(got, "\r\t") || strings.Contains(got, " \n") {
			t.Fatalf("blanks that do not belong to the style: %q", got)
		}
	})
}

func compact(t *testing.T, text string) string {
	t.Helper()
	var b bytes.Buffer
	if err := json.Compact(&b, []byte(text)); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func seed(f *testing.F) {
	for _, text := range []string{`{}`, `[]`, `[[[{}]]]`, `{"a":[1,"\u00e9",null,true,{"b":1e9}]}`, "\r\n{\"a\"\r\n:1}", `[{"a":{"b":1},"c":{"d":[]}}]`, `"x"`} {
		f.Add(text)
	}
	err := filepath.WalkDir("../../testdata", func(path string, e fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".json") {
			return err
		}
		text, err := os.ReadFile(path)
		f.Add(string(text))
		return err
	})
	if err != nil {
		f.Fatal(err)
	}
}
