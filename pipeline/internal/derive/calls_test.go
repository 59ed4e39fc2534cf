package derive_test

import (
	"os"
	"path/filepath"
	"testing"
)

// TestNeededAddsUp: of every part of the demo line, what its sheet tells of who
// asks for it adds up to how many are needed.
func TestNeededAddsUp(t *testing.T) {
	files, err := filepath.Glob("../../../testdata/line/*.plan.json")
	if err != nil || len(files) == 0 {
		t.Fatal("no plans", err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for name, s := range derived(t, string(text)) {
			for _, p := range s.Parts {
				var sum int64
				work := s.NeededWork(p)
				for _, term := range work.Terms {
					sum += term.Value.Int
				}
				if sum != p.Needed {
					t.Errorf("%s, %s: %s: %d are needed, and %+v come to %d", filepath.Base(file), name, p.Name.Text, p.Needed, work.Terms, sum)
				}
			}
		}
	}
}
