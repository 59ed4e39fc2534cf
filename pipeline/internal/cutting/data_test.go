package cutting

import (
	"bufio"
	"os"
	"strconv"
	"strings"
	"testing"

	"yardproof/schema/measure"
)

// named is a strip instance with its known optimum, in the unit of its sizes.
type named struct {
	name    string
	problem Problem
	optimum measure.Length
}

// readStrips reads testdata/cutting/strips.txt: invented quilts, each optimum
// proved twice when they were made (column generation; an arc-flow integer
// program).
func readStrips(t testing.TB) []named {
	t.Helper()
	var all []named
	for _, f := range fields(t, "../../../testdata/cutting/strips.txt") {
		if f[0] == "inst" {
			all = append(all, named{f[1], Problem{Cloth: Cloth{Width: inches(t, f[2])}}, inches(t, f[4])})
			continue
		}
		p := &all[len(all)-1].problem
		p.Pieces = append(p.Pieces, Piece{Name: strings.Join(f[:2], "x"), Across: inches(t, f[0]), Along: inches(t, f[1]),
			Count: integer(t, f[2]), Turnable: f[3] == "1"})
	}
	return all
}

func fields(t testing.TB, path string) [][]string {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var out [][]string
	for s := bufio.NewScanner(f); s.Scan(); {
		if w := strings.Fields(s.Text()); len(w) > 0 && w[0] != "#" {
			out = append(out, w)
		}
	}
	return out
}

func inches(t testing.TB, s string) measure.Length {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return measure.Length(v * 203200)
}

func integer(t testing.TB, s string) int {
	t.Helper()
	v, err := strconv.Atoi(s)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
