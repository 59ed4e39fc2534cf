package jsontree

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The document and the pointers are those of RFC 6901 (JSON Pointer), section 5.
func TestAtRFC6901(t *testing.T) {
	n := parse(t, `{
		"foo": ["bar", "baz"], "": 0, "a/b": 1, "c%d": 2, "e^f": 3,
		"g|h": 4, "i\\j": 5, "k\"l": 6, " ": 7, "m~n": 8
	}`)
	tests := []struct {
		pointer string
		want    string // JSON
	}{
		{"/foo", `["bar","baz"]`}, {"/foo/0", `"bar"`}, {"/", `0`}, {"/a~1b", `1`}, {"/c%d", `2`}, {"/e^f", `3`},
		{"/g|h", `4`}, {`/i\j`, `5`}, {`/k"l`, `6`}, {"/ ", `7`}, {"/m~0n", `8`},
	}
	for _, tt := range tests {
		got := n.At(tt.pointer)
		if diff := cmp.Diff(parse(t, tt.want).Interface(), got.Interface()); diff != "" {
			t.Errorf("At(%q) (-want +got):\n%s", tt.pointer, diff)
			continue
		}
		if back := n.PointerAt(got.Range.Start); back != tt.pointer {
			t.Errorf("PointerAt(where %q stands) = %q", tt.pointer, back)
		}
	}
	if n.At("") != n {
		t.Error("the empty pointer is not the whole document")
	}
}

func TestAtNothing(t *testing.T) {
	n := parse(t, `{"a":[1,2],"~":{"2":3},"s":"x"}`)
	for _, pointer := range []string{"a", "/x", "/a/2", "/a/-", "/a/-1", "/a/01", "/a/+1", "/a/", "/a/1e0", "/a/0/0", "/s/0", "/x/y/z", "/~", "/~2", "/~/2", "/a/99999999999999999999"} {
		if got := n.At(pointer); got != nil {
			t.Errorf("At(%q) = %v, want nothing", pointer, got.Interface())
		}
	}
	if (*Node)(nil).At("/a") != nil {
		t.Error("a nil node has a member")
	}
}

func TestPointer(t *testing.T) {
	for want, parts := range map[string][]string{
		"":             nil,
		"/":            {""},
		"/a/0":         {"a", "0"},
		"/~01":         {"~1"},
		"/~1~0/x~0~1y": {"/~", "x~/y"},
	} {
		got := Pointer(parts...)
		if got != want {
			t.Errorf("Pointer(%q) = %q, want %q", parts, got, want)
		}
	}
}

func TestPointerAt(t *testing.T) {
	text := ` {"a": [10, {"b~/": "x"}], "": {}} `
	n := parse(t, text)
	tests := []struct {
		at   string // the offset is where this begins
		want string
	}{
		{` {"a"`, ""}, {`{"a"`, ""}, {`"a"`, "/a"}, {`a": [`, "/a"}, {": [10", ""}, {"[10", "/a"}, {"10", "/a/0"}, {"0,", "/a/0"}, {", {", "/a"},
		{`{"b`, "/a/1"}, {`b~/`, "/a/1/b~0~1"}, {`"x"`, "/a/1/b~0~1"}, {"}]", "/a/1"}, {"], ", "/a"}, {`"": {`, "/"}, {"{}", "/"}, {"}} ", "/"}, {"} ", ""},
	}
	for _, tt := range tests {
		if got := n.PointerAt(strings.LastIndex(text, tt.at)); got != tt.want {
			t.Errorf("PointerAt(%q) = %q, want %q", tt.at, got, tt.want)
		}
	}
	for _, offset := range []int{-1, len(text), len(text) + 9} {
		if got := n.PointerAt(offset); got != "" {
			t.Errorf("PointerAt(%d), outside the file, = %q", offset, got)
		}
	}
}
