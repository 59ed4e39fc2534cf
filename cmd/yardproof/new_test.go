package main

import (
	"strings"
	"testing"

	"yardproof/schema/starter"
)

// TestNew: whatever a plan begins as, nothing is found in it, notes included,
// and it is in the style.
func TestNew(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, shape := range starter.Shapes() {
		for _, units := range []string{"in", "cm"} {
			path := shape.Name + "-" + units + planSuffix
			if out, status := said("new", "--units", units, shape.Name, path); status != exitClean || out != path+"\n" {
				t.Errorf("%s: exit status %d:\n%s", path, status, out)
			}
			if out, status := said("check", "--fail-on", "note", path); status != exitClean || !strings.Contains(out, "1 plan, 2 sizes: no findings") {
				t.Errorf("%s: exit status %d:\n%s", path, status, out)
			}
		}
	}
	if out, status := said("fmt", "--check", "."); status != exitClean {
		t.Errorf("not in the style:\n%s", out)
	}
	if out, status := said("check", "--fail-on", "note", "."); status != exitClean {
		t.Errorf("together: exit status %d:\n%s", status, out)
	}
}
