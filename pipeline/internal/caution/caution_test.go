package caution

import (
	"slices"
	"strings"
	"testing"
)

// A caution is a reminder and no more: each refers its reader to whoever
// knows the tool, the body or the law.
func TestCautionsDefer(t *testing.T) {
	for _, key := range Keys() {
		sentence, ok := Sentence(key)
		if !ok {
			t.Errorf("%s has no sentence", key)
		}
		if !slices.ContainsFunc([]string{"instructions", "local rules", "as the fabric's maker allows"}, func(s string) bool { return strings.Contains(sentence, s) }) {
			t.Errorf("%s does not say whom to follow: %s", key, sentence)
		}
		if !strings.HasSuffix(sentence, ".") {
			t.Errorf("%s is no sentence: %s", key, sentence)
		}
	}
	if _, ok := Sentence("unheard-of"); ok {
		t.Error("a key that there is none for has a sentence")
	}
}
