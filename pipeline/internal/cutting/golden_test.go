package cutting

import (
	"flag"
	"os"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite testdata/cutting/layouts.golden")

// The layouts themselves, not only their lengths, are the same on every
// machine; this guards against fused multiply-add (GOAMD64=v3, arm64) and
// against map order. The file is rewritten by -update and read by a person.
func TestLayoutsGolden(t *testing.T) {
	const path = "../../../testdata/cutting/layouts.golden"
	var b strings.Builder
	for _, n := range readStrips(t) {
		r := solved(t, n.problem)
		b.WriteString(n.name + ", heights and lengths in eighths of an inch\n")
		b.WriteString(describe(n.problem, r.Layout, in(1)))
	}
	if *update {
		if err := os.WriteFile(path, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if b.String() != string(want) {
		t.Errorf("layouts differ from %s:\n%s", path, b.String())
	}
}
