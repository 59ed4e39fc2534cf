package cutting

import (
	"flag"
	"fmt"
	"hash/crc32"
	"math/rand"
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
	// Harder ones, with local search and long branching, by a sum of their layouts.
	r := rand.New(rand.NewSource(15))
	for _, sizes := range []int{5, 6, 7, 8, 12, 20} {
		p := quiltLike(r, sizes)
		got, err := Solve(p, Limits{Visits: 20_000_000})
		if err != nil {
			t.Fatal(err)
		}
		sum := crc32.ChecksumIEEE([]byte(describe(p, got.Layout, in(1))))
		fmt.Fprintf(&b, "random quilt of %d sizes: length %d, bound %d, %+v, layout %08x\n", sizes, got.Length/in(1), got.Bound/in(1), got.Steps, sum)
	}
	runs, err := SolveLengths(kitRuns(r, 12), Limits{})
	if err != nil {
		t.Fatal(err)
	}
	fmt.Fprintf(&b, "random run of 12 kits: cost %d, bound %d, %+v, plan %08x\n", runs.Cost, runs.Bound, runs.Steps, crc32.ChecksumIEEE(fmt.Append(nil, runs.Stocks)))
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
