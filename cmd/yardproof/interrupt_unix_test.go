//go:build unix

package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	limit "yardproof/scripts/hostile"
)

// prompt is how long a program may take to end after a first interrupt. It
// takes less than a second; here many tests share the machine.
const prompt = 5 * time.Second

// TestInterruptedAnywhere: the first Ctrl-C or SIGTERM ends the program with 3
// wherever it comes, and the report that was asked for is written and says so.
func TestInterruptedAnywhere(t *testing.T) {
	cases := []struct {
		name string
		lay  func(t *testing.T)
		args []string
		says string
	}{
		{"a list that is a pipe nobody writes to", pipe("list"), []string{"check", "--files-from", "list"}, "before it began"},
		{"standard input that does not end", nothingLaid, []string{"check", "--files-from", "-"}, "before it began"},
		{"a million missing paths", missingPaths(1_000_000), []string{"check", "--files-from", "list"}, "the run was interrupted"},
		{"a long cutting search", longSearch, []string{"export", ".", "--draft", "--out", "out"}, "the run was interrupted"},
		{"a long cutting search of a check", longSearch, []string{"check", "."}, "the run was interrupted"},
		{"the most blocks, exported", limits("map"), []string{"export", ".", "--draft", "--out", "out"}, "the run was interrupted: 1 of 1 plans"},
		{"the most cut sizes, exported", limits("many-cuts", "many-cuts-printed", "mosaics"), []string{"export", ".", "--draft", "--out", "out"}, "the run was interrupted"},
		{"the most printed figures, kits and fabrics", limits("printed", "kits", "fabrics"), []string{"check", "."}, "the run was interrupted"},
		{"check of standard input", nothingLaid, []string{"check", "-"}, "before it began"},
		{"fmt of standard input", nothingLaid, []string{"fmt", "-"}, "before it began"},
	}
	for _, c := range cases {
		for _, signal := range []os.Signal{os.Interrupt, syscall.SIGTERM} {
			t.Run(fmt.Sprint(c.name, " ", signal), func(t *testing.T) {
				t.Chdir(t.TempDir())
				c.lay(t)
				args := c.args
				if args[0] != "fmt" {
					args = append(args, "--report", "text=report")
				}
				out := interruptAfter(t, signal, args)
				text, err := os.ReadFile("report")
				if args[0] == "fmt" {
					text, err = []byte(out), nil
				}
				if err != nil || !strings.Contains(string(text), c.says) || !strings.Contains(string(text), "[run/interrupted]") {
					t.Errorf("%v: the report is\n%.2000s\nand printed was\n%.2000s", err, text, out)
				}
			})
		}
	}
}

// interruptAfter runs yardproof, interrupts it when it is at work, and demands
// that it ends promptly with 3.
func interruptAfter(t *testing.T, signal os.Signal, args []string) string {
	t.Helper()
	exe, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	stdin, writer, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer writer.Close()
	var out bytes.Buffer
	cmd := &exec.Cmd{Path: exe, Args: append([]string{"yardproof"}, args...), Stdin: stdin, Stdout: &out, Stderr: &out, Env: append(os.Environ(), "NO_COLOR=")}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	stdin.Close()
	ended := make(chan error, 1)
	go func() { ended <- cmd.Wait() }()
	select {
	case err := <-ended:
		t.Fatalf("it ended before it could be interrupted: %v\n%s", err, out.String())
	case <-time.After(700 * time.Millisecond):
	}
	begin := time.Now()
	if err := cmd.Process.Signal(signal); err != nil {
		t.Fatal(err)
	}
	select {
	case <-ended:
	case <-time.After(60 * time.Second):
		cmd.Process.Kill()
		<-ended
	}
	took := time.Since(begin)
	t.Logf("it took %v", took.Round(time.Millisecond))
	if took > prompt || cmd.ProcessState.ExitCode() != exitStopped {
		t.Errorf("%v after the interrupt it ended with %d:\n%.2000s", took, cmd.ProcessState.ExitCode(), out.String())
	}
	return out.String()
}

func nothingLaid(*testing.T) {}

func pipe(name string) func(*testing.T) {
	return func(t *testing.T) {
		if err := syscall.Mkfifo(name, 0o666); err != nil {
			t.Skip(err)
		}
	}
}

func missingPaths(n int) func(*testing.T) {
	return func(t *testing.T) {
		f, err := os.Create("list")
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		for i := range n {
			if _, err := fmt.Fprintf(f, "gone/%d.plan.json\n", i); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// longSearch lays plans whose cuttings are each searched for as long as a plan's
// may be.
func longSearch(t *testing.T) {
	for n := range int64(12) {
		layPlan(t, limit.Near(9, n))
	}
}

// limits lays plans at limits of the schema.
func limits(names ...string) func(*testing.T) {
	return func(t *testing.T) {
		for _, p := range limit.Plans() {
			if slices.Contains(names, p.Name) {
				layPlan(t, p)
			}
		}
	}
}

func layPlan(t *testing.T, p limit.Plan) {
	t.Helper()
	if err := os.WriteFile(p.Name+".plan.json", p.Text, 0o666); err != nil {
		t.Fatal(err)
	}
}
