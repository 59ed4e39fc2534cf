package topics

import (
	"io/fs"
	"strings"
	"testing"
)

// Every file is a topic, with its name as its title and a sentence below it.
func TestTopics(t *testing.T) {
	written, err := fs.Glob(files, "*.md")
	if err != nil || len(written) != len(names) {
		t.Errorf("%d files (%v) and %d topics", len(written), err, len(names))
	}
	for _, topic := range All() {
		if !strings.HasPrefix(topic.Text, "# "+topic.Name+"\n\n") {
			t.Errorf("%s has another title", topic.Name)
		}
		if s := topic.Summary; len(s) > 90 || !strings.HasSuffix(s, ".") || strings.Contains(s, "\n") {
			t.Errorf("%s: %q is no short sentence", topic.Name, s)
		}
		if found, ok := Find(topic.Name); !ok || found != topic {
			t.Errorf("%s is not found", topic.Name)
		}
		if strings.Count(topic.Text, "```")%2 != 0 {
			t.Errorf("%s: a block of code is not closed", topic.Name)
		}
	}
	if _, ok := Find("patchwork"); ok {
		t.Error("there is a topic that nobody has written")
	}
}
