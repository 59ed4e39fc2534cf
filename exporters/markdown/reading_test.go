package markdown

import (
	"strings"
	"testing"

	"yardproof/exporters/internal/sample"
)

// Every number of a text is a row, whatever is in the names; where there is no room
// for all, the others are counted.
func TestReading(t *testing.T) {
	run := sample.Read()
	text := comment(run, Limit)
	for _, row := range []string{
		"| 1:1 | 1 | no quantity | label |  |  |  |\n",
		"| 1:8 | 7 | disagrees | strips for \"a \\| &lt;b&gt; c\" | throw | 6 | derived |\n",
		"| 2:11 | 4 | not placed |  |  |  |  |\n",
	} {
		if !strings.Contains(text, row) {
			t.Errorf("there is no row %q in:\n%s", row, text)
		}
	}
	for range 9 {
		run.Text.Numbers = append(run.Text.Numbers, run.Text.Numbers...)
	}
	if text := comment(run, Limit); len(text) > Limit || !strings.Contains(text, " more numbers.\n\n</details>\n") {
		t.Errorf("%d bytes of at most %d, ending %q", len(text), Limit, text[len(text)-60:])
	}
}
