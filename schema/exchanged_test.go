package schema_test

import (
	"testing"

	"yardproof/schema"
)

// Two letters that have changed places are one slip, in a short name too.
func TestExchangedLetters(t *testing.T) {
	for _, c := range []struct{ word, want string }{
		{"egde", "edge"}, {"edeg", "edge"}, {"deeg", ""}, {"gede", ""}, {"SKEY", "skye"},
	} {
		if got := schema.Nearest(c.word, []string{"roll", "edge", "skye"}); got != c.want {
			t.Errorf("%q: %q, want %q", c.word, got, c.want)
		}
	}
}
