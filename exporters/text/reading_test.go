package text

import (
	"strings"
	"testing"

	"yardproof/exporters/internal/sample"
)

// What the numbers of a text were taken for is counted, and listed where it is
// asked for.
func TestReading(t *testing.T) {
	var plain, verbose strings.Builder
	if err := Write(&plain, sample.Read(), Options{}); err != nil {
		t.Fatal(err)
	}
	if err := Write(&verbose, sample.Read(), Options{Verbose: true}); err != nil {
		t.Fatal(err)
	}
	const counts = "1 plan, 1 size: 1 error; worst: error; 4 numbers in the text: 1 agree, 1 disagree, 1 not placed, 1 no quantities\n"
	if !strings.HasSuffix(plain.String(), counts) || strings.Contains(plain.String(), "agrees with") {
		t.Errorf("plain:\n%s", plain.String())
	}
	want := `pattern.txt:1:1: "1": no quantity, label
pattern.txt:1:8: "7": disagrees with strips for "a | <b> c", throw: 6 (derived)
pattern.txt:2:1: "2½\"": agrees with strips for "a | <b> c", throw: 2 1/2 in (printed)
pattern.txt:2:11: "4": not placed

` + counts
	if !strings.HasSuffix(verbose.String(), want) {
		t.Errorf("verbose:\n%s", verbose.String())
	}
}
