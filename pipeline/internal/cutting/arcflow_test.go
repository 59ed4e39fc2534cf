package cutting

import (
	"context"
	"fmt"
	"math"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"yardproof/schema/measure"
)

// arcflow writes a strip problem as an integer program over paths: for every
// strip height a graph whose nodes are positions across the cloth and whose
// arcs are pieces, taken in one order (Valério de Carvalho's arc-flow model of
// cutting stock, one graph a strip height). It shares nothing with the solver
// and writes CPLEX LP text.
func arcflow(p Problem) string {
	m := &arcModel{p: p}
	var heights []measure.Length
	for _, q := range p.Pieces {
		for _, s := range m.ways(q) {
			heights = append(heights, s[1])
		}
	}
	slices.Sort(heights)
	heights = slices.Compact(heights)
	m.supply = make([][]string, len(p.Pieces))
	var goal []string
	for k, h := range heights {
		goal = append(goal, fmt.Sprintf("%d z%d", h/m.unit(), k))
		m.general = append(m.general, fmt.Sprintf("z%d", k))
		m.graph(k, h)
	}
	var b strings.Builder
	fmt.Fprintf(&b, "Minimize\n obj: %s\nSubject To\n", strings.Join(goal, "\n + "))
	for i, arcs := range m.supply {
		fmt.Fprintf(&b, " d%d: %s >= %d\n", i, strings.Join(arcs, "\n + "), p.Pieces[i].Count)
	}
	b.WriteString(m.balance.String())
	fmt.Fprintf(&b, "Generals\n %s\nEnd\n", strings.Join(m.general, "\n "))
	return b.String()
}

type arcModel struct {
	p       Problem
	supply  [][]string
	general []string
	balance strings.Builder
}

// ways are the extents (across, along) in which a piece may lie.
func (m *arcModel) ways(q Piece) [][2]measure.Length {
	var w [][2]measure.Length
	if q.Across <= m.p.Cloth.Width {
		w = append(w, [2]measure.Length{q.Across, q.Along})
	}
	if q.Turnable && q.Along != q.Across && q.Along <= m.p.Cloth.Width {
		w = append(w, [2]measure.Length{q.Along, q.Across})
	}
	return w
}

// unit is the greatest common divisor of all heights.
func (m *arcModel) unit() measure.Length {
	g := measure.Length(0)
	for _, q := range m.p.Pieces {
		for _, w := range m.ways(q) {
			for a := w[1]; a != 0; {
				g, a = a, g%a
			}
		}
	}
	return g
}

type arcNode struct {
	at   measure.Length
	from int
}

// graph adds the paths of strips of height h.
func (m *arcModel) graph(k int, h measure.Length) {
	type item struct {
		piece int
		w     measure.Length
	}
	var items []item
	for i, q := range m.p.Pieces {
		for _, w := range m.ways(q) {
			if w[1] <= h {
				items = append(items, item{i, w[0]})
			}
		}
	}
	slices.SortStableFunc(items, func(a, b item) int { return int(b.w - a.w) })
	in := map[arcNode][]string{}
	out := map[arcNode][]string{}
	start := arcNode{0, 0}
	todo := []arcNode{start}
	seen := map[arcNode]bool{start: true}
	var order []arcNode
	for len(todo) > 0 {
		n := todo[0]
		todo, order = todo[1:], append(order, n)
		for t := n.from; t < len(items); t++ {
			to := arcNode{n.at + items[t].w, t}
			if to.at > m.p.Cloth.Width {
				continue
			}
			x := fmt.Sprintf("x%d_%d", k, len(m.general))
			m.general = append(m.general, x)
			m.supply[items[t].piece] = append(m.supply[items[t].piece], x)
			out[n], in[to] = append(out[n], x), append(in[to], x)
			if !seen[to] {
				seen[to] = true
				todo = append(todo, to)
			}
		}
	}
	in[start] = append(in[start], fmt.Sprintf("z%d", k))
	for t, n := range order {
		if len(out[n]) == 0 {
			continue // a strip may end anywhere
		}
		fmt.Fprintf(&m.balance, " b%d_%d: %s - %s >= 0\n", k, t, strings.Join(in[n], "\n + "), strings.Join(out[n], "\n - "))
	}
}

// outsideSolver is a program that solves a model to proved optimality within
// so many seconds, or reports false.
type outsideSolver struct {
	name string
	path string
	args func(model, answer string, seconds int) []string
	read func(answer string) (float64, bool)
}

func outsideSolvers(t testing.TB) []outsideSolver {
	t.Helper()
	var found []outsideSolver
	for _, s := range []outsideSolver{
		{name: "cbc", args: func(model, answer string, seconds int) []string {
			return []string{model, "sec", strconv.Itoa(seconds), "ratio", "0", "solve", "solution", answer}
		}, read: func(answer string) (float64, bool) {
			first, _, _ := strings.Cut(answer, "\n")
			if !strings.HasPrefix(first, "Optimal") {
				return 0, false
			}
			v, err := strconv.ParseFloat(strings.TrimSpace(first[strings.LastIndex(first, " ")+1:]), 64)
			return v, err == nil
		}},
		{name: "glpsol", args: func(model, answer string, seconds int) []string {
			return []string{"--lp", model, "--tmlim", strconv.Itoa(seconds), "-w", answer}
		}, read: func(answer string) (float64, bool) {
			for _, line := range strings.Split(answer, "\n") {
				if f := strings.Fields(line); len(f) == 6 && f[0] == "s" && f[1] == "mip" {
					v, err := strconv.ParseFloat(f[5], 64)
					return v, err == nil && f[4] == "o"
				}
			}
			return 0, false
		}},
	} {
		if path, err := exec.LookPath(s.name); err == nil {
			s.path = path
			found = append(found, s)
		}
	}
	if len(found) == 0 && os.Getenv("YARDPROOF_OUTSIDE") == "require" {
		t.Fatal("no outside solver: install coinor-cbc or glpk-utils")
	}
	return found
}

// solve runs the program on a problem and returns the length in ticks.
func (s outsideSolver) solve(t testing.TB, p Problem, seconds int) (measure.Length, bool, time.Duration) {
	t.Helper()
	dir := t.TempDir()
	model, answer := filepath.Join(dir, "model.lp"), filepath.Join(dir, "answer")
	if err := os.WriteFile(model, []byte(arcflow(p)), 0o600); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(context.Background(), time.Duration(seconds+10)*time.Second)
	defer cancel()
	start := time.Now()
	err := exec.CommandContext(ctx, s.path, s.args(model, answer, seconds)...).Run()
	took := time.Since(start)
	text, readErr := os.ReadFile(answer)
	if err != nil || readErr != nil {
		return 0, false, took
	}
	v, ok := s.read(string(text))
	return measure.Length(math.Round(v)) * (&arcModel{p: p}).unit(), ok, took
}

// TestAgainstOutsideSolvers compares random quilts with an outside integer
// program, as many as YARDPROOF_OUTSIDE_COUNT says (none where unset).
func TestAgainstOutsideSolvers(t *testing.T) {
	count, _ := strconv.Atoi(os.Getenv("YARDPROOF_OUTSIDE_COUNT"))
	solvers := outsideSolvers(t)
	if count == 0 || len(solvers) == 0 {
		t.Skip("YARDPROOF_OUTSIDE_COUNT is not set, or neither cbc nor glpsol is installed")
	}
	r := rand.New(rand.NewSource(2024))
	both, ours, theirs := 0, 0, 0
	for n := 0; n < count; n++ {
		p := quiltLike(r, 2+r.Intn(5))
		got, err := Solve(p, Limits{})
		if err != nil {
			t.Fatal(err)
		}
		want, proved, _ := solvers[0].solve(t, p, 5)
		if got.Status == Proved {
			ours++
		}
		if proved {
			theirs++
			if got.Status == Proved {
				both++
			}
			if got.Bound > want || got.Length < want || got.Status == Proved && got.Length != want {
				t.Errorf("problem %d %+v:\nlength %d, bound %d, %v; %s proves %d", n, p, got.Length, got.Bound, got.Status, solvers[0].name, want)
			}
		}
	}
	t.Logf("%d problems: %d proved here, %d by %s in 5 s, %d by both", count, ours, theirs, solvers[0].name, both)
	if both*10 < count*8 {
		t.Errorf("only %d of %d proved by both", both, count)
	}
}

// TestBaseline prints, for the invented instances, our time beside that of the
// outside solvers on the same machine in the same run. It asserts only that
// values agree; no time is tested.
func TestBaseline(t *testing.T) {
	solvers := outsideSolvers(t)
	if os.Getenv("YARDPROOF_BASELINE") == "" || len(solvers) == 0 {
		t.Skip("YARDPROOF_BASELINE is not set, or neither cbc nor glpsol is installed")
	}
	for _, n := range readStrips(t) {
		const runs = 5
		var mine []time.Duration
		var r Result
		for range runs {
			start := time.Now()
			r, _ = Solve(n.problem, Limits{})
			mine = append(mine, time.Since(start))
		}
		slices.Sort(mine)
		line := fmt.Sprintf("%-18s ours %9.3f ms", n.name, float64(mine[runs/2].Microseconds())/1000)
		for _, s := range solvers {
			want, proved, took := s.solve(t, n.problem, 60)
			line += fmt.Sprintf("  %s %9.1f ms proved %-5v x%.0f", s.name, float64(took.Microseconds())/1000, proved, float64(took)/float64(mine[runs/2]))
			if proved && want != r.Length {
				t.Errorf("%s: %d here, %d by %s", n.name, r.Length, want, s.name)
			}
		}
		t.Log(line)
	}
}
