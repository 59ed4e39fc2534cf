package text

import (
	"slices"
	"strings"
	"testing"
)

func TestFold(t *testing.T) {
	red := "\x1b[31;1m"
	cases := []struct {
		name, line string
		width      int
		want       []string
	}{
		{"nothing", "", 4, []string{""}},
		{"no width", "abcdef", 0, []string{"abcdef"}},
		{"fits exactly", "abcd", 4, []string{"abcd"}},
		{"one more", "abcde", 4, []string{"abcd", "e"}},
		{"wide characters", "布布布", 5, []string{"布布", "布"}},
		{"wider than the terminal", "布布", 1, []string{"布", "布"}},
		{"marks that combine", "e\u0301e\u0301", 1, []string{"e\u0301", "e\u0301"}},
		{"a colour that ends", red + "ab" + reset + "cd", 2, []string{red + "ab" + reset, "cd"}},
		{"a colour over a break", "a" + red + "bcd" + reset, 2, []string{"a" + red + "b" + reset, red + "cd" + reset}},
		{"an escape cut off", "ab\x1b[3", 2, []string{"ab\x1b[3"}},
	}
	for _, c := range cases {
		if got := Fold(c.line, c.width); !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, wanted %q", c.name, got, c.want)
		}
	}
}

// Nothing but colours is added and nothing is lost, at any width.
func FuzzFold(f *testing.F) {
	f.Add("plans/a.plan.json:1:2: \x1b[31merror:\x1b[0m a message, 布 and e\u0301", 7)
	f.Fuzz(func(t *testing.T, line string, width int) {
		plain := func(s string) string {
			var out strings.Builder
			for s != "" {
				n := max(escapeLen(s), 0)
				if n == 0 {
					out.WriteByte(s[0])
					n = 1
				}
				s = s[n:]
			}
			return out.String()
		}
		if got := plain(strings.Join(Fold(line, width), "")); got != plain(line) {
			t.Fatalf("%q became %q", line, got)
		}
	})
}
