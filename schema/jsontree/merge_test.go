package jsontree

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"yardproof/schema/source"
)

// The cases are those of RFC 7396 (JSON Merge Patch), Appendix A.
func TestMergePatchRFC7396(t *testing.T) {
	tests := []struct{ base, patch, want string }{
		{`{"a":"b"}`, `{"a":"c"}`, `{"a":"c"}`},
		{`{"a":"b"}`, `{"b":"c"}`, `{"a":"b","b":"c"}`},
		{`{"a":"b"}`, `{"a":null}`, `{}`},
		{`{"a":"b","b":"c"}`, `{"a":null}`, `{"b":"c"}`},
		{`{"a":["b"]}`, `{"a":"c"}`, `{"a":"c"}`},
		{`{"a":"c"}`, `{"a":["b"]}`, `{"a":["b"]}`},
		{`{"a":{"b":"c"}}`, `{"a":{"b":"d","c":null}}`, `{"a":{"b":"d"}}`},
		{`{"a":[{"b":"c"}]}`, `{"a":[1]}`, `{"a":[1]}`},
		{`["a","b"]`, `["c","d"]`, `["c","d"]`},
		{`{"a":"b"}`, `["c"]`, `["c"]`},
		{`{"a":"foo"}`, `null`, `null`},
		{`{"a":"foo"}`, `"bar"`, `"bar"`},
		{`{"e":null}`, `{"a":1}`, `{"e":null,"a":1}`},
		{`[1,2]`, `{"a":"b","c":null}`, `{"a":"b"}`},
		{`{}`, `{"a":{"bb":{"ccc":null}}}`, `{"a":{"bb":{}}}`},
	}
	for _, tt := range tests {
		got := MergePatch(parse(t, tt.base), parse(t, tt.patch))
		if diff := cmp.Diff(parse(t, tt.want).Interface(), got.Interface()); diff != "" {
			t.Errorf("%s patched with %s (-want +got):\n%s", tt.base, tt.patch, diff)
		}
	}
}

// A size patches the recipe of the same file, so that one file can show where
// each text of the result stands.
func TestMergePatchPlaces(t *testing.T) {
	f := source.New("f.json", []byte(`{
  "recipe": { "kept": [1], "grid": { "rows": 6, "gone": 0, "columns": 5 }, "width": 2 },
  "size":   { "new": { "x": null, "y": 1 }, "width": 3, "grid": { "columns": 4, "gone": null } },
  "other":  { "kept": { "y": 2 } }
}`))
	root, problems := Parse(f, DefaultLimits())
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	before := outline(f, "", root)
	want := strings.Join([]string{
		` object 2:13-2:88 ""`,
		`/kept key 4:15-4:21`,
		`/kept object 4:23-4:33 ""`,
		`/kept/y key 4:25-4:28`,
		`/kept/y number 4:30-4:31 "2"`,
		`/grid key 2:28-2:34`,
		`/grid object 2:36-2:74 ""`,
		`/grid/rows key 2:38-2:44`,
		`/grid/rows number 2:46-2:47 "6"`,
		`/grid/columns key 3:67-3:76`,
		`/grid/columns number 3:78-3:79 "4"`,
		`/width key 3:45-3:52`,
		`/width number 3:54-3:55 "3"`,
		`/new key 3:15-3:20`,
		`/new object 3:22-3:43 ""`,
		`/new/y key 3:35-3:38`,
		`/new/y number 3:40-3:41 "1"`,
		``,
	}, "\n")
	got := MergePatch(MergePatch(root.Get("recipe"), root.Get("size")), root.Get("other"))
	if diff := cmp.Diff(want, outline(f, "", got)); diff != "" {
		t.Errorf("merged (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff(before, outline(f, "", root)); diff != "" {
		t.Errorf("merging changed its inputs (-before +after):\n%s", diff)
	}
	if got.At("/grid/rows") != root.At("/recipe/grid/rows") {
		t.Error("an unchanged value is not shared")
	}
}

func TestMergePatchAbsent(t *testing.T) {
	n := parse(t, `{"a":null}`)
	if MergePatch(n, nil) != n {
		t.Error("no patch does not give the base")
	}
	if got := MergePatch(nil, n); got.Kind != Object || len(got.Members) != 0 {
		t.Errorf("a patch of nothing gives %v, want an object without its null members", got.Interface())
	}
	if MergePatch(nil, nil) != nil {
		t.Error("nothing and nothing gives something")
	}
}

// Objects with a map of their keys keep a true one through a merge.
func TestMergePatchManyMembers(t *testing.T) {
	var base, patch strings.Builder
	for i := range 3 * manyMembers {
		fmt.Fprintf(&base, `,"k%d":%d`, i, i)
		fmt.Fprintf(&patch, `,"k%d":null,"new%d":%d`, i*2, i, i)
	}
	got := MergePatch(parse(t, "{"+base.String()[1:]+"}"), parse(t, "{"+patch.String()[1:]+"}"))
	for i := range 3 * manyMembers {
		kept := got.Get(fmt.Sprintf("k%d", i))
		if removed := i%2 == 0; (kept == nil) != removed {
			t.Errorf("k%d = %v, removed should be %v", i, kept, removed)
		}
		if added := got.Get(fmt.Sprintf("new%d", i)); added == nil || added.Text != fmt.Sprint(i) {
			t.Errorf("new%d = %v", i, added)
		}
	}
}
