package cutting

import (
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"yardproof/schema/measure"
)

// outsideData is the folder of other people's instances, or the test is
// skipped; where YARDPROOF_OUTSIDE=require, their absence is a failure.
func outsideData(t testing.TB) string {
	t.Helper()
	if dir := os.Getenv("YARDPROOF_DATA"); dir != "" {
		return dir
	}
	if os.Getenv("YARDPROOF_OUTSIDE") == "require" {
		t.Fatal("YARDPROOF_DATA must name the folder with gcutd and binpack1.txt")
	}
	t.Skip("YARDPROOF_DATA is not set: the published instances are not checked")
	return ""
}

// readGcut reads one of Beasley's gcut instances with the demands of Cintra,
// Miyazawa, Wakabayashi and Xavier (EJOR 191, 2008).
func readGcut(t testing.TB, path string) (bins [][2]int, items [][3]int) {
	t.Helper()
	f := fields(t, path)
	nb := integer(t, f[0][1])
	for _, w := range f[1 : 1+nb] {
		bins = append(bins, [2]int{integer(t, w[0]), integer(t, w[1])})
	}
	for _, w := range f[1+nb:] {
		if len(w) >= 3 {
			items = append(items, [3]int{integer(t, w[0]), integer(t, w[1]), integer(t, w[2])})
		}
	}
	return bins, items
}

func gcutStrip(t testing.TB, dir, name string, turnable bool) Problem {
	bins, items := readGcut(t, filepath.Join(dir, "gcutd", name+".txt"))
	p := Problem{Cloth: Cloth{Width: measure.Length(bins[0][0])}}
	for _, it := range items {
		p.Pieces = append(p.Pieces, Piece{Across: measure.Length(it[0]), Along: measure.Length(it[1]), Count: it[2], Turnable: turnable})
	}
	return p
}

// The optima of gcut1d to 11d as strips of the first bin's width were proved
// by a prototype of this method and by an arc-flow integer program.
func TestGcutStrips(t *testing.T) {
	dir := outsideData(t)
	for _, c := range []struct {
		name     string
		fixed    measure.Length
		turnable measure.Length
	}{
		{name: "gcut1d", fixed: 51604, turnable: 50611},
		{name: "gcut3d", fixed: 80121, turnable: 77297},
		{name: "gcut5d", fixed: 91177, turnable: 78390},
		{name: "gcut7d", fixed: 243095, turnable: 226175},
		{name: "gcut9d", fixed: 122611, turnable: 119433},
		{name: "gcut11d", fixed: 314932, turnable: 285685},
	} {
		for _, turnable := range []bool{false, true} {
			want := c.fixed
			name := c.name
			if turnable {
				want, name = c.turnable, c.name+"-turnable"
			}
			t.Run(name, func(t *testing.T) {
				r, err := Solve(gcutStrip(t, dir, c.name, turnable), Limits{})
				if err != nil {
					t.Fatal(err)
				}
				t.Logf("%+v", r.Steps)
				if r.Length != want || r.Bound != want || r.Status != Proved {
					t.Errorf("length %d, bound %d, %v; the optimum is %d", r.Length, r.Bound, r.Status, want)
				}
				p := gcutStrip(t, dir, c.name, turnable)
				if err := illegal(p, r.Layout); err != nil {
					t.Error(err)
				}
				if err := verify(p, r.Certificate); err != nil {
					t.Error(err)
				}
			})
		}
	}
}

// The optima of Falkenauer's u120 set (OR-Library, binpack1). Two of the
// file's own best values, u120_08 and u120_19, are one too high.
func TestU120(t *testing.T) {
	f := fields(t, filepath.Join(outsideData(t), "binpack1.txt"))
	best := []int{48, 49, 46, 49, 50, 48, 48, 49, 50, 46, 52, 49, 48, 49, 50, 48, 52, 52, 49, 49}
	f = f[1:]
	for _, want := range best {
		name, n := f[0][0], integer(t, f[1][1])
		p := LengthProblem{Stocks: []Stock{{Length: measure.Length(integer(t, f[1][0])), Cost: 1, Count: Unlimited}}}
		for _, w := range f[2 : 2+n] {
			p.Wanted = append(p.Wanted, Wanted{Length: measure.Length(integer(t, w[0])), Count: 1})
		}
		f = f[2+n:]
		r, err := SolveLengths(p, Limits{})
		if err != nil {
			t.Fatal(err)
		}
		if r.Cost != int64(want) || r.Bound != r.Cost || r.Status != Proved {
			t.Errorf("%s: %d, bound %d, %v; the optimum is %d", name, r.Cost, r.Bound, r.Status, want)
		}
		if err := illegalLengths(p, r); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if err := verifyLengths(p, r.Certificate); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Lower bounds of two-stage cutting with three stock sizes, published by
// Cintra et al. (EJOR 191, 2008) and Furini et al. (2012) and supplied in
// three-bin-sizes-2nho.csv (not turnable) and -2nhr.csv (turnable), are the
// linear programming bound rounded up to five or six digits.
func TestThreeStockSizesBounds(t *testing.T) {
	dir := outsideData(t)
	for _, c := range []struct {
		file     string
		turnable bool
	}{{"three-bin-sizes-2nho.csv", false}, {"three-bin-sizes-2nhr.csv", true}} {
		published := publishedBounds(t, filepath.Join(dir, "gcutd", c.file))
		if len(published) < 6 {
			t.Errorf("%s: only %d instances found", c.file, len(published))
		}
		for name, want := range published {
			bins, items := readGcut(t, filepath.Join(dir, "gcutd", name+".txt"))
			got := stockBound(bins, items, c.turnable)
			if got > want*(1+1e-9) || got < want*(1-6e-5) {
				t.Errorf("%s turnable %v: %.1f, published %.0f", name, c.turnable, got, want)
			}
		}
	}
}

func publishedBounds(t *testing.T, path string) map[string]float64 {
	t.Helper()
	out := map[string]float64{}
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(strings.TrimSpace(string(data)), "\n")[1:] {
		f := strings.Split(line, ",")
		v, err := strconv.ParseFloat(f[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		name := strings.TrimSuffix(filepath.Base(f[0]), ".txt")
		if _, err := os.Stat(filepath.Join(filepath.Dir(path), name+".txt")); err == nil {
			out[name] = v
		}
	}
	return out
}

// stockBound is the linear programming bound of two-stage cutting from stock
// of several sizes, the cost of each its area, first cuts across.
func stockBound(bins [][2]int, items [][3]int, turnable bool) float64 {
	var demand []int
	var stacks []*stackKnapsack
	for _, b := range bins {
		p := Problem{Cloth: Cloth{Width: measure.Length(b[0])}}
		for _, it := range items {
			p.Pieces = append(p.Pieces, Piece{Across: measure.Length(it[0]), Along: measure.Length(it[1]), Count: it[2], Turnable: turnable})
		}
		in, order := stockInstance(p, b[1])
		demand = demand[:0]
		for _, i := range order {
			demand = append(demand, p.Pieces[i].Count)
		}
		stacks = append(stacks, &stackKnapsack{in: in, knap: newKnapsack(in, demand), limit: b[1],
			worth: make([]int64, len(in.heights)), strip: make([]pattern, len(in.heights)), table: make([]int64, b[1]+1)})
	}
	lp := newSimplex(len(demand), len(demand))
	for i, d := range demand {
		lp.lo[i] = float64(d)
		lp.addColumn(sparse{row: []int{i}, val: []float64{1}}, 1e9, 0, math.Inf(1))
	}
	const scale = 1 << 16
	for {
		lp.solve()
		value := make([]int64, len(demand))
		objective := 0.0
		for i, y := range lp.y {
			value[i] = int64(y * scale)
			objective += y * float64(demand[i])
		}
		found := false
		for b, k := range stacks {
			cost := float64(bins[b][0] * bins[b][1])
			if float64(k.price(value)) <= cost*scale*(1+1e-9) {
				continue
			}
			found = true
			count := make([]int, len(demand))
			for _, s := range k.best() {
				for i, n := range s.count {
					count[i] += n
				}
			}
			var c sparse
			for i, n := range count {
				if n > 0 {
					c.row, c.val = append(c.row, i), append(c.val, float64(n))
				}
			}
			lp.addColumn(c, cost, 0, math.Inf(1))
		}
		if !found {
			return objective
		}
	}
}

// stockInstance keeps the kinds in the order of the pieces, on the grid of one.
func stockInstance(p Problem, limit int) (*instance, []int) {
	var kinds []kind
	var lying [][]oriented
	var order []int
	for i, q := range p.Pieces {
		k := kind{demand: q.Count, across: q.Across, along: q.Along, turnable: q.Turnable, from: []source{{index: i, count: q.Count}}}
		kinds, order = append(kinds, k), append(order, i)
		lying = append(lying, k.lie(p.Cloth, measure.Length(limit)))
	}
	lying = append(lying, []oriented{{1, 1}}) // a piece of one tick keeps the grid
	in := assemble(p.Cloth.Width, 0, append(kinds, kind{}), lying, exact)
	in.kinds = in.kinds[:len(kinds)]
	return in, order
}
