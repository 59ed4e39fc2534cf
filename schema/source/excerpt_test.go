package source

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
)

func TestExcerpt(t *testing.T) {
	long := strings.Repeat("é", 200) + "HERE" + strings.Repeat("z", 200)
	tests := []struct {
		name string
		text string
		r    Range
		want Excerpt
	}{
		{"empty file", "", At(0), Excerpt{Line: 1, Column: 1, Start: 1, End: 2}},
		{"a word", "ab\ncd efg\nh", Range{6, 9}, Excerpt{Line: 2, Text: "cd efg", Column: 1, Start: 4, End: 7}},
		{"missing text at the end of a line", "ab\r\ncd", At(2), Excerpt{Line: 1, Text: "ab", Column: 1, Start: 3, End: 4}},
		{"over several lines", "a{\n}\n", Range{1, 4}, Excerpt{Line: 1, Text: "a{", Column: 1, Start: 2, End: 3}},
		{"begins at the line ending", "ab\r\ncd", Range{3, 6}, Excerpt{Line: 1, Text: "ab", Column: 1, Start: 3, End: 4}},
		{"past the end", "ab", Range{50, 60}, Excerpt{Line: 1, Text: "ab", Column: 1, Start: 3, End: 4}},
		{"end before start", "abcd", Range{2, 1}, Excerpt{Line: 1, Text: "abcd", Column: 1, Start: 3, End: 4}},
		{"not for a terminal", "\x1b[31m\xff\u202ex", Range{5, 6}, Excerpt{Line: 1, Text: "\ufffd[31m\ufffd\ufffdx", Column: 1, Start: 6, End: 7}},
		{"inside a character", "½x", Range{1, 3}, Excerpt{Line: 1, Text: "½x", Column: 1, Start: 1, End: 3}},
		{"middle of a long line", long, Range{400, 404}, Excerpt{
			Line: 1, Text: strings.Repeat("é", 24) + "HERE" + strings.Repeat("z", 60),
			Column: 177, Start: 25, End: 29, CutLeft: true, CutRight: true,
		}},
		{"start of a long line", long, Range{2, 4}, Excerpt{
			Line: 1, Text: strings.Repeat("é", 88), Column: 1, Start: 2, End: 3, CutRight: true,
		}},
		{"end of a long line", long, At(604), Excerpt{
			Line: 1, Text: strings.Repeat("z", 88), Column: 317, Start: 89, End: 90, CutLeft: true,
		}},
		{"longer than the window", long, Range{0, 604}, Excerpt{
			Line: 1, Text: strings.Repeat("é", 88), Column: 1, Start: 1, End: 89, CutRight: true,
		}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff(tt.want, New("f", []byte(tt.text)).Excerpt(tt.r)); diff != "" {
				t.Errorf("Excerpt (-want +got):\n%s", diff)
			}
		})
	}
}

func TestUnderline(t *testing.T) {
	tests := []struct {
		text string
		r    Range
		want string
	}{
		{"ab cd", Range{3, 5}, "   ^^"},
		{"\t\"é\": x", Range{7, 8}, "\t     ^"},
		{"ab", At(2), "  ^"},
		{"a\tb", Range{0, 3}, "^^^"},
	}
	for _, tt := range tests {
		if got := New("f", []byte(tt.text)).Excerpt(tt.r).Underline(); got != tt.want {
			t.Errorf("underline of %v in %q = %q, want %q", tt.r, tt.text, got, tt.want)
		}
	}
}

// checkExcerpt compares an excerpt with the runes of the whole line.
func checkExcerpt(t *testing.T, f *File, r Range, at Position) {
	t.Helper()
	e := f.Excerpt(r)
	line, text := []rune(f.Line(at.Line)), []rune(e.Text)
	first := e.Column - 1
	switch {
	case e.Line != at.Line, !utf8.ValidString(e.Text), first < 0, first+len(text) > len(line), len(text) > excerptWidth:
		t.Fatalf("excerpt %+v does not fit position %v", e, at)
	case e.CutLeft != (first > 0), e.CutRight != (first+len(text) < len(line)):
		t.Fatalf("excerpt %+v is cut otherwise than it says; the line has %d columns", e, len(line))
	case min(at.Column, len(line)+1) != first+e.Start, e.End <= e.Start, e.End > max(len(text), e.Start)+1:
		t.Fatalf("excerpt %+v underlines another place than %v", e, at)
	case len(line) > excerptWidth && len(text) < excerptWidth:
		t.Fatalf("excerpt %+v shows less of the line than there is room for", e)
	}
	for i, c := range text {
		if c != utf8.RuneError && c != line[first+i] {
			t.Fatalf("excerpt %+v has %q in column %d, the line has %q", e, c, i+1, line[first+i])
		}
	}
}

func TestRange(t *testing.T) {
	r := Range{2, 5}
	for offset, want := range map[int]bool{1: false, 2: true, 4: true, 5: false} {
		if r.Contains(offset) != want {
			t.Errorf("%v contains %d: %v, want %v", r, offset, !want, want)
		}
	}
	for s, want := range map[Range]bool{{2, 5}: true, {3, 3}: true, {5, 5}: true, {1, 3}: false, {4, 6}: false} {
		if r.Encloses(s) != want {
			t.Errorf("%v encloses %v: %v, want %v", r, s, !want, want)
		}
	}
	for s, want := range map[Range]bool{{0, 0}: true, {2, 5}: true, {-1, 2}: false, {3, 2}: false} {
		if s.Valid() != want {
			t.Errorf("%v valid: %v, want %v", s, !want, want)
		}
	}
	if r.Empty() || !At(3).Empty() || r.Len() != 3 {
		t.Errorf("Empty or Len of %v and %v", r, At(3))
	}
}

func TestSortProblems(t *testing.T) {
	want := []Problem{
		{Code: "b", Range: Range{1, 2}, Message: "m"},
		{Code: "a", Range: Range{1, 3}, Message: "m"},
		{Code: "b", Range: Range{1, 3}, Message: "m"},
		{Code: "b", Range: Range{1, 3}, Message: "n"},
		{Code: "a", Range: Range{2, 2}, Message: "a"},
	}
	got := []Problem{want[4], want[2], want[3], want[0], want[1]}
	SortProblems(got)
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("order (-want +got):\n%s", diff)
	}
}
