package jsontree

import (
	"encoding/json"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"yardproof/schema/source"
)

// FuzzParse holds Parse to its promises about places and pointers, and to the
// opinion of encoding/json on what JSON is.
func FuzzParse(f *testing.F) {
	f.Add(sample(f))
	for _, text := range []string{
		``, `{"a":1,"a":2}`, `[1,]`, `{'a':1}`, `{“a”:1}`, `[1 2]`, `{"a":2 1/2}`, `{"a":2,5}`, `[01]`, `"\ud800"`, "\ufeff{}", "{} {}", "[\x00]", `{"a":"b"c"}`, "{\n\"a\": [\n1}", `{a:1}`, `[tru`, `[-`, `{"a"=1}`, `/*`,
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, b []byte) {
		file := source.New("f", b)
		root, problems := Parse(file, DefaultLimits())
		checkProblemPlaces(t, b, problems)
		checkVerdict(t, b, root, problems)
		if root != nil {
			checkTree(t, root, root, source.Range{Start: 0, End: len(b)}, "")
		}
	})
}

func checkProblemPlaces(t *testing.T, b []byte, problems []source.Problem) {
	t.Helper()
	for i, p := range problems {
		if !p.Range.Valid() || p.Range.End > len(b) || i > 0 && problems[i-1].Compare(p) > 0 {
			t.Fatalf("problem %d of %v is out of place in %d bytes", i, problems, len(b))
		}
		if !utf8.ValidString(p.Message) || strings.HasPrefix(p.Message, "this is not JSON: ") {
			t.Fatalf("no words of our own for %q: %+v", b, p)
		}
	}
}

// checkVerdict uses what encoding/json is known to be lax about: encoding, equal keys, limits.
func checkVerdict(t *testing.T, b []byte, root *Node, problems []source.Problem) {
	t.Helper()
	valid := json.Valid(b)
	for _, p := range problems {
		switch p.Code {
		case codeEmpty, codeNotJSON, codeTrailing:
			if valid {
				t.Fatalf("%q is JSON, but Parse says %+v", b, p)
			}
		}
	}
	if root != nil && !valid {
		t.Fatalf("%q is not JSON, but Parse gives a tree", b)
	}
	if root != nil && len(problems) == 0 {
		if diff := cmp.Diff(decode(t, b), root.Interface()); diff != "" {
			t.Fatalf("%q (-encoding/json +Interface):\n%s", b, diff)
		}
	}
	if root == nil && len(problems) == 0 {
		t.Fatalf("%q gives neither a tree nor a problem", b)
	}
}

func checkTree(t *testing.T, root, n *Node, outer source.Range, pointer string) {
	t.Helper()
	if !n.Range.Valid() || n.Range.Empty() || !outer.Encloses(n.Range) {
		t.Fatalf("%s at %v does not lie in %v", pointer, n.Range, outer)
	}
	if got := root.PointerAt(n.Range.Start); got != pointer || root.At(got) != n {
		t.Fatalf("PointerAt(%d) = %q, want %q and to find the node again", n.Range.Start, got, pointer)
	}
	inner := source.Range{Start: n.Range.Start + 1, End: n.Range.End - 1}
	for _, m := range n.Members {
		if !inner.Encloses(m.KeyRange) || m.KeyRange.End >= m.Value.Range.Start || n.Get(m.Key) != m.Value {
			t.Fatalf("key %q of %s at %v is out of place", m.Key, pointer, m.KeyRange)
		}
		checkTree(t, root, m.Value, inner, pointer+Pointer(m.Key))
		inner.Start = m.Value.Range.End
	}
	for i, item := range n.Items {
		checkTree(t, root, item, inner, pointer+Pointer(strconv.Itoa(i)))
		inner.Start = item.Range.End
	}
}

// FuzzMergePatch compares with the pseudocode of RFC 7396, section 2, over maps.
func FuzzMergePatch(f *testing.F) {
	f.Add(`{"a":{"b":"c"}}`, `{"a":{"b":"d","c":null}}`)
	f.Add(`[1]`, `{"a":{"bb":{"ccc":null}}}`)
	f.Fuzz(func(t *testing.T, base, patch string) {
		b, _ := Parse(source.New("b", []byte(base)), DefaultLimits())
		p, _ := Parse(source.New("p", []byte(patch)), DefaultLimits())
		if b == nil || p == nil {
			return
		}
		want := mergeMaps(b.Interface(), p.Interface())
		if diff := cmp.Diff(want, MergePatch(b, p).Interface()); diff != "" {
			t.Fatalf("%s patched with %s (-RFC 7396 +got):\n%s", base, patch, diff)
		}
	})
}

func mergeMaps(target, patch any) any {
	changes, ok := patch.(map[string]any)
	if !ok {
		return patch
	}
	result, ok := target.(map[string]any)
	if !ok {
		result = map[string]any{}
	}
	for name, value := range changes {
		if value == nil {
			delete(result, name)
		} else {
			result[name] = mergeMaps(result[name], value)
		}
	}
	return result
}
