package bolts

import (
	"context"
	"fmt"
	"math"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"yardproof/schema/measure"
)

// TestAgainstIntegerProgram holds random runs against cbc or glpsol, as many as
// YARDPROOF_OUTSIDE_COUNT says (none where unset). The model is none of ours:
// each bolt is a path over its eighths of a yard, whose arcs are kits.
func TestAgainstIntegerProgram(t *testing.T) {
	count, _ := strconv.Atoi(os.Getenv("YARDPROOF_OUTSIDE_COUNT"))
	program := integerProgram(t)
	if count == 0 || program == "" {
		t.Skip("YARDPROOF_OUTSIDE_COUNT is not set, or neither cbc nor glpsol is installed")
	}
	r := rand.New(rand.NewSource(1915))
	ours, theirs, both := 0, 0, 0
	for n := range count {
		a, wants := studioRun(r)
		p, err := Solve(a, wants)
		if err != nil {
			t.Fatalf("%+v %+v: %v", a, wants, err)
		}
		if fault := illegal(a, wants, p); fault != "" {
			t.Errorf("run %d: %s", n, fault)
		}
		want, proved := ask(t, program, model(a, wants))
		if p.Proved {
			ours++
		}
		if !proved {
			continue
		}
		theirs++
		if p.Proved {
			both++
		}
		if p.Bound > want || p.Cost != want {
			t.Errorf("run %d %+v %+v:\ncost %d, bound %d, proved %v; %s proves %d", n, a, wants, p.Cost, p.Bound, p.Proved, program, want)
		}
	}
	t.Logf("%d runs: %d proved here, %d by %s, %d by both and equal", count, ours, theirs, filepath.Base(program), both)
	if both*10 < count*9 || ours*100 < count*99 {
		t.Errorf("only %d of %d proved here, and %d by both", ours, count, both)
	}
}

func integerProgram(t *testing.T) string {
	t.Helper()
	for _, name := range []string{"cbc", "glpsol"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	if os.Getenv("YARDPROOF_OUTSIDE") == "require" {
		t.Fatal("no integer program: install coinor-cbc or glpk-utils")
	}
	return ""
}

// unit is the grid of the random runs: an eighth of a yard.
const unit = yard / 8

// studioRun is an invented run: up to five kit lengths of 3/8 to 2 1/2 yd, bolts
// of 8 to 20 yd, part-bolts, a smallest order and a multiple. Losses are left out,
// since they leave the grid; they only shorten bolts.
func studioRun(r *rand.Rand) (Article, []Want) {
	lengths := []measure.Length{8, 10, 12, 15, 20}
	r.Shuffle(len(lengths), func(i, j int) { lengths[i], lengths[j] = lengths[j], lengths[i] })
	var a Article
	for _, l := range lengths[:1+r.Intn(3)] {
		a.Offers = append(a.Offers, Offer{l * yard, int64(l)*600 - int64(r.Intn(4))*75})
	}
	for range r.Intn(4) {
		a.OnHand = append(a.OnHand, measure.Length(4+r.Intn(50))*unit)
	}
	if r.Intn(2) == 0 {
		a.Least = measure.Length(10+r.Intn(60)) * yard
	}
	if r.Intn(3) == 0 {
		a.Multiple = measure.Length(2+r.Intn(5)) * yard
	}
	var wants []Want
	for range 1 + r.Intn(5) {
		wants = append(wants, Want{Length: measure.Length(3+r.Intn(18)) * unit, Count: 5 + r.Intn(26)})
	}
	return a, wants
}

// model is the run as an integer program in the LP format: x orders, y arcs by
// kind of bolt, kit and place, z skipped eighths, o whether anything is
// ordered, k multiples.
func model(a Article, wants []Want) string {
	var kinds []measure.Length
	for _, o := range a.Offers {
		kinds = append(kinds, o.Length)
	}
	kinds = append(kinds, a.OnHand...)
	var cost, kits, flow, whole strings.Builder
	made := make([]strings.Builder, len(wants))
	for i, o := range a.Offers {
		fmt.Fprintf(&cost, " + %d x%d", o.Cost, i)
		fmt.Fprintf(&whole, " x%d", i)
	}
	for i, l := range kinds {
		end := int(l / unit)
		into := make([]strings.Builder, end+1)
		for at := range end {
			fmt.Fprintf(&into[at], " - z%d_%d", i, at)
			fmt.Fprintf(&into[at+1], " + z%d_%d", i, at)
			fmt.Fprintf(&whole, "\n z%d_%d", i, at)
			for j, w := range wants {
				if to := at + int(w.Length/unit); to <= end {
					arc := fmt.Sprintf("y%d_%d_%d", i, j, at)
					into[at].WriteString(" - " + arc)
					into[to].WriteString(" + " + arc)
					made[j].WriteString(" + " + arc)
					whole.WriteString("\n " + arc)
				}
			}
		}
		for at := 1; at < end; at++ {
			fmt.Fprintf(&flow, "%s = 0\n", into[at].String())
		}
		if i < len(a.Offers) {
			fmt.Fprintf(&flow, " x%d%s >= 0\n", i, into[0].String())
		} else {
			fmt.Fprintf(&flow, "%s >= -1\n", into[0].String())
		}
	}
	for j, w := range wants {
		fmt.Fprintf(&kits, "%s = %d\n", made[j].String(), w.Count)
	}
	length := ""
	for i, o := range a.Offers {
		length += fmt.Sprintf(" + %d x%d", o.Length/yard, i)
	}
	supplier := ""
	if a.Least > 0 {
		supplier += fmt.Sprintf("%s - %d o >= 0\n%s - 100000 o <= 0\n", length, a.Least/yard, length)
		whole.WriteString("\n o")
	}
	if a.Multiple > 0 {
		supplier += fmt.Sprintf("%s - %d k = 0\n", length, a.Multiple/yard)
		whole.WriteString("\n k")
	}
	bound := ""
	if a.Least > 0 {
		bound = "Bounds\n o <= 1\n"
	}
	var rows strings.Builder
	for i, row := range strings.Split(strings.TrimSpace(kits.String()+flow.String()+supplier), "\n") {
		row = strings.ReplaceAll(strings.TrimPrefix(strings.TrimSpace(row), "+ "), " + ", "\n + ") // cbc reads no long lines
		fmt.Fprintf(&rows, " c%d: %s\n", i, strings.ReplaceAll(row, " - ", "\n - "))
	}
	return "Minimize\n cost:" + cost.String() + "\nSubject To\n" + rows.String() + bound + "Generals\n" + whole.String() + "\nEnd\n"
}

// ask gives the program 20 seconds.
func ask(t *testing.T, program, text string) (cost int64, proved bool) {
	t.Helper()
	dir := t.TempDir()
	file, answer := filepath.Join(dir, "model.lp"), filepath.Join(dir, "answer")
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(context.Background(), 30*time.Second)
	defer cancel()
	args := []string{file, "sec", "20", "ratio", "0", "allow", "0", "solve", "solution", answer}
	if filepath.Base(program) == "glpsol" {
		args = []string{"--lp", file, "--tmlim", "20", "-w", answer}
	}
	out, err := exec.CommandContext(ctx, program, args...).CombinedOutput()
	if err != nil && ctx.Err() == nil { // it ran out of memory, say: nothing is proved then
		t.Logf("%s: %v\n%s", program, err, out)
		return 0, false
	}
	b, _ := os.ReadFile(answer)
	for line := range strings.SplitSeq(string(b), "\n") {
		f := strings.Fields(line)
		if len(f) == 5 && f[0] == "Optimal" || len(f) == 6 && f[0] == "s" && f[1] == "mip" && f[4] == "o" {
			v, err := strconv.ParseFloat(f[len(f)-1], 64)
			return int64(math.Round(v)), err == nil
		}
	}
	return 0, false
}
