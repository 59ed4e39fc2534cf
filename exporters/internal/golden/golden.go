// Package golden compares what a format wrote with a file of what it should
// write, byte for byte. Only tests may import it; run them with -update to
// write the files anew, and read every difference before it is kept.
package golden

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The flag is set once, by the testing package, before any test runs.
var update = flag.Bool("update", false, "write golden files anew")

// Check fails the test if got is not what testdata/name holds.
func Check(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, got, 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(want, got) {
		t.Errorf("%s differs (-want +got):\n%s", path, cmp.Diff(string(want), string(got)))
	}
}
